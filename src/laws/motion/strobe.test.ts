import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { apparentRotation_rev_per_s, standstillRotation_rev_per_s, trueRotationRate_fps } from './strobe.ts';

const WHEEL = { repeatCount: 6, frameRate_fps: 24 };
const degreesAFrame = (degrees: number) => (degrees / 360) * WHEEL.frameRate_fps;

describe('published values', () => {
  const degreesASecond = (given: Parameters<typeof standstillRotation_rev_per_s>[0]) =>
    360 * standstillRotation_rev_per_s(given);
  published('standstill in degrees a second', degreesASecond, [
    { source: 'wagon-wheel', at: 'six spokes at 24 fps', given: WHEEL, expected: '1440' },
  ]);
});

test.each([
  [60, 0],
  [59, -1],
  [61, 1],
])('a wheel of six spokes turning %i degrees a frame seems to turn %i, as wagon-wheel says', (turns_deg, seen_deg) => {
  const seen = apparentRotation_rev_per_s({ ...WHEEL, rotation_rev_per_s: degreesAFrame(turns_deg) });
  expect((seen / WHEEL.frameRate_fps) * 360).toBeCloseTo(seen_deg, 9);
});

const rotation = fc.double({ min: 0.001, max: 500, noNaN: true });
const repeats = fc.integer({ min: 1, max: 60 });
const rate = fc.double({ min: 12, max: 10_000, noNaN: true });

test('nothing seems to turn faster than half a repeat a frame', () => {
  fc.assert(
    fc.property(rotation, repeats, rate, (rotation_rev_per_s, repeatCount, frameRate_fps) => {
      const seen = apparentRotation_rev_per_s({ rotation_rev_per_s, repeatCount, frameRate_fps });
      expect(Math.abs(seen * repeatCount)).toBeLessThanOrEqual((frameRate_fps / 2) * (1 + 1e-9));
    }),
  );
});

test('above the rate that shows it a wheel seems to turn as it does', () => {
  fc.assert(
    fc.property(rotation, repeats, (rotation_rev_per_s, repeatCount) => {
      const frameRate_fps = 1.001 * trueRotationRate_fps({ rotation_rev_per_s, repeatCount });
      expect(apparentRotation_rev_per_s({ rotation_rev_per_s, repeatCount, frameRate_fps })).toBe(rotation_rev_per_s);
    }),
  );
});

test('a wheel at rest stays at rest, and faults are refused by name', () => {
  expect(apparentRotation_rev_per_s({ ...WHEEL, rotation_rev_per_s: 0 })).toBe(0);
  expect(() => apparentRotation_rev_per_s({ ...WHEEL, rotation_rev_per_s: -1 })).toThrow('rotation_rev_per_s must be');
  expect(() => standstillRotation_rev_per_s({ ...WHEEL, repeatCount: 0 })).toThrow(
    'repeatCount must be a whole number',
  );
  expect(() => standstillRotation_rev_per_s({ ...WHEEL, frameRate_fps: 0 })).toThrow('frameRate_fps must be positive');
  expect(() => trueRotationRate_fps({ rotation_rev_per_s: 0, repeatCount: 1 })).toThrow('rotation_rev_per_s must be');
  expect(() => trueRotationRate_fps({ rotation_rev_per_s: 1, repeatCount: 1.5 })).toThrow(
    'repeatCount must be a whole',
  );
});
