import fc from 'fast-check';
import { expect, test } from 'vitest';
import { framesInMemory, memoryNeeded_B, recordTime_s } from './recordTime.ts';

test('64 GB last 4.8225 s at 1000 fps of 4096 × 2160 in 12 bits, worked by hand', () => {
  const given = { memory_B: 64e9, frameSize_B: 13_271_040 };
  expect(recordTime_s({ ...given, frameRate_fps: 1000 })).toBeCloseTo(4.8225, 4);
  expect(framesInMemory(given)).toBe(4822);
});

const size = fc.integer({ min: 1000, max: 50_000_000 });
const rate = fc.double({ min: 24, max: 1e5, noNaN: true });
const memory = fc.double({ min: 1e9, max: 1e12, noNaN: true });

test('the memory that a time needs lasts that time', () => {
  fc.assert(
    fc.property(size, rate, fc.double({ min: 1e-3, max: 100, noNaN: true }), (frameSize_B, frameRate_fps, time_s) => {
      const memory_B = memoryNeeded_B({ recordTime_s: time_s, frameSize_B, frameRate_fps });
      expect(recordTime_s({ memory_B, frameSize_B, frameRate_fps }) / time_s).toBeCloseTo(1, 12);
    }),
  );
});

test('the frames it holds fit, and one more would not', () => {
  fc.assert(
    fc.property(memory, size, (memory_B, frameSize_B) => {
      const frames = framesInMemory({ memory_B, frameSize_B });
      expect(frames * frameSize_B).toBeLessThanOrEqual(memory_B * (1 + 1e-12));
      expect((frames + 1) * frameSize_B).toBeGreaterThan(memory_B * (1 - 1e-12));
    }),
  );
});

test('twice the rate lasts half as long', () => {
  fc.assert(
    fc.property(memory, size, rate, (memory_B, frameSize_B, frameRate_fps) => {
      const once_s = recordTime_s({ memory_B, frameSize_B, frameRate_fps });
      expect(recordTime_s({ memory_B, frameSize_B, frameRate_fps: 2 * frameRate_fps }) / once_s).toBeCloseTo(0.5, 12);
    }),
  );
});

test('faults are refused by name', () => {
  const given = { memory_B: 64e9, frameSize_B: 13_271_040, frameRate_fps: 1000 };
  expect(() => recordTime_s({ ...given, memory_B: 0 })).toThrow('memory_B must be positive');
  expect(() => recordTime_s({ ...given, frameRate_fps: NaN })).toThrow('frameRate_fps must be positive');
  expect(() => framesInMemory({ memory_B: 1, frameSize_B: 0 })).toThrow('frameSize_B must be positive');
  expect(() => memoryNeeded_B({ ...given, recordTime_s: -1 })).toThrow('recordTime_s must be positive');
});
