import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitModes, misfitFraction, type ListedMode } from './modesFit.ts';
import { fitRows, frameRateByRows_fps } from './rows.ts';

const timings = fc.record({
  rowTime_s: fc.double({ min: 1e-7, max: 1e-5, noNaN: true }),
  overhead_s: fc.double({ min: 0, max: 1e-4, noNaN: true }),
});
const heights = fc.uniqueArray(fc.integer({ min: 64, max: 4320 }), {
  minLength: 5,
  maxLength: 12,
  comparator: (a, b) => Math.abs(a - b) < 32,
});

describe('modes that follow one timing', () => {
  test('give that timing back, and each its own rate', () => {
    fc.assert(
      fc.property(timings, heights, (of, rows) => {
        const modes = rows.map((rowCount) => ({ rowCount, frameRate_fps: frameRateByRows_fps({ rowCount, ...of }) }));
        const fitted = fitModes(modes);
        expect(fitted.rowTime_s / of.rowTime_s).toBeCloseTo(1, 6);
        for (const mode of modes) expect(misfitFraction({ ...mode, ...fitted })).toBeCloseTo(0, 6);
      }),
    );
  });

  test('show one slip among five or more as the slip it is, and leave the others alone', () => {
    fc.assert(
      fc.property(timings, heights, fc.nat(), fc.constantFrom(0.7, 0.85, 1.18, 1.4), (of, rows, pick, factor) => {
        const wrong = pick % rows.length;
        const modes = rows.map((rowCount, i): ListedMode => {
          const frameRate_fps = frameRateByRows_fps({ rowCount, ...of });
          return { rowCount, frameRate_fps: i === wrong ? frameRate_fps * factor : frameRate_fps };
        });
        const fitted = fitModes(modes);
        modes.forEach((mode, i) =>
          expect(misfitFraction({ ...mode, ...fitted })).toBeCloseTo(i === wrong ? factor - 1 : 0, 6),
        );
      }),
    );
  });
});

test('two modes are fitted as the law for two modes does', () => {
  const [a, b] = [
    { rowCount: 2160, frameRate_fps: 1000 },
    { rowCount: 1080, frameRate_fps: 1950 },
  ] as const;
  const two = fitRows({
    firstRowCount: a.rowCount,
    firstFrameRate_fps: a.frameRate_fps,
    secondRowCount: b.rowCount,
    secondFrameRate_fps: b.frameRate_fps,
  });
  const fitted = fitModes([a, b]);
  expect(fitted.rowTime_s).toBeCloseTo(two.rowTime_s, 12);
  expect(fitted.overhead_s).toBeCloseTo(two.overhead_s, 12);
});

test('0.4 µs a row and 20 µs besides, worked by hand: 1000 rows are 2380.95 fps, and 2809.5 fps is 18 % too fast', () => {
  const timing = { rowTime_s: 0.4e-6, overhead_s: 20e-6 };
  expect(misfitFraction({ rowCount: 1000, frameRate_fps: 2380.95, ...timing })).toBeCloseTo(0, 5);
  expect(misfitFraction({ rowCount: 1000, frameRate_fps: 2809.5, ...timing })).toBeCloseTo(0.18, 3);
});

test('faults are refused by name', () => {
  expect(() => fitModes([{ rowCount: 1080, frameRate_fps: 1000 }])).toThrow('two different row counts');
  expect(() =>
    fitModes([
      { rowCount: 1080, frameRate_fps: 1000 },
      { rowCount: 1080, frameRate_fps: 900 },
    ]),
  ).toThrow('two different row counts');
  expect(() =>
    fitModes([
      { rowCount: 1080, frameRate_fps: 1000 },
      { rowCount: 2160, frameRate_fps: 1100 },
    ]),
  ).toThrow('rowTime_s must be positive');
  expect(() => fitModes([{ rowCount: 10.5, frameRate_fps: 1000 }])).toThrow('rowCount must be a whole number');
  expect(() => fitModes([{ rowCount: 10, frameRate_fps: 0 }])).toThrow('frameRate_fps must be positive');
});
