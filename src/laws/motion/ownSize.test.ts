import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exposureToFreeze_s, frameRateToFollow_fps } from './ownSize.ts';

const DROP = { speed_m_per_s: 3.13, size_m: 0.004 };

test('common practice, no source: a 4 mm drop at 3.13 m/s is followed from 3130 fps and frozen in 25.6 µs', () => {
  expect(frameRateToFollow_fps(DROP)).toBeCloseTo(3130, 9);
  expect(exposureToFreeze_s(DROP) * 1e6).toBeCloseTo(25.6, 1);
});

test('at the rate that follows it a thing moves by its share from frame to frame, in the exposure by its share too', () => {
  const speed = fc.double({ min: 0.01, max: 100, noNaN: true });
  const size = fc.double({ min: 1e-4, max: 0.1, noNaN: true });
  const share = fc.double({ min: 0.01, max: 1, noNaN: true });
  fc.assert(
    fc.property(speed, size, share, (speed_m_per_s, size_m, part) => {
      const thing = { speed_m_per_s, size_m };
      const step_m = speed_m_per_s / frameRateToFollow_fps({ ...thing, stepFraction: part });
      const smear_m = speed_m_per_s * exposureToFreeze_s({ ...thing, smearFraction: part });
      expect(step_m / size_m).toBeCloseTo(part, 9);
      expect(smear_m / size_m).toBeCloseTo(part, 9);
    }),
  );
});

test('a thing at rest is followed at any rate, and faults are refused by name', () => {
  expect(frameRateToFollow_fps({ ...DROP, speed_m_per_s: 0 })).toBe(0);
  expect(() => frameRateToFollow_fps({ ...DROP, size_m: 0 })).toThrow('size_m must be positive');
  expect(() => frameRateToFollow_fps({ ...DROP, speed_m_per_s: -1 })).toThrow('speed_m_per_s must be zero or above');
  expect(() => exposureToFreeze_s({ ...DROP, speed_m_per_s: 0 })).toThrow('speed_m_per_s must be positive');
  expect(() => exposureToFreeze_s({ ...DROP, smearFraction: 2 })).toThrow('smearFraction must be from 0 to 1');
});
