import fc from 'fast-check';
import { expect, test } from 'vitest';
import { crownRadius_m } from './crown.ts';

const CROWN = { diameter_m: 0.003, speed_m_per_s: 2, filmDepth_m: 0.002, time_s: 0.006 };

test('where the film is two thirds of the drop the radius is √τ diameters, worked by hand: 3 mm, 2 m/s, 6 ms, 6 mm', () => {
  expect(crownRadius_m(CROWN)).toBeCloseTo(0.006, 12);
});

test('a delay of two times of the impact leaves √2 diameters, worked by hand', () => {
  expect(crownRadius_m({ ...CROWN, delayRatio: 2 })).toBeCloseTo(0.003 * Math.SQRT2, 12);
});

test('four times as long is twice as wide, and a sixteenth of the film is twice as wide too', () => {
  const time = fc.double({ min: 1e-4, max: 0.1, noNaN: true });
  const depth = fc.double({ min: 1e-4, max: 0.004, noNaN: true });
  fc.assert(
    fc.property(time, depth, (time_s, filmDepth_m) => {
      const once_m = crownRadius_m({ ...CROWN, time_s, filmDepth_m });
      expect(crownRadius_m({ ...CROWN, time_s: 4 * time_s, filmDepth_m }) / once_m).toBeCloseTo(2, 9);
      expect(crownRadius_m({ ...CROWN, time_s, filmDepth_m: filmDepth_m / 16 }) / once_m).toBeCloseTo(2, 9);
    }),
  );
});

test('a moment before the crown begins is refused, and so are faults, by name', () => {
  expect(() => crownRadius_m({ ...CROWN, time_s: 0.001, delayRatio: 2 })).toThrow('time_s must be at least 2 times');
  expect(() => crownRadius_m({ ...CROWN, time_s: 0 })).toThrow('time_s must be positive');
  expect(() => crownRadius_m({ ...CROWN, filmDepth_m: 0 })).toThrow('filmDepth_m must be positive');
  expect(() => crownRadius_m({ ...CROWN, delayRatio: -1 })).toThrow('delayRatio must be zero or above');
  expect(() => crownRadius_m({ ...CROWN, speed_m_per_s: NaN })).toThrow('speed_m_per_s must be positive');
});
