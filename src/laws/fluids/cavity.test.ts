import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cavityClosingTime_s, cavityRadius_m, pinchOffTime_s } from './cavity.ts';

test('the cavity of a drop holds as much energy as the drop brought, checked by summing the lifted liquid in layers', () => {
  const size = fc.double({ min: 0.001, max: 0.01, noNaN: true });
  const speed = fc.double({ min: 0.3, max: 9, noNaN: true });
  fc.assert(
    fc.property(size, speed, (diameter_m, speed_m_per_s) => {
      const radius_m = cavityRadius_m({ diameter_m, speed_m_per_s });
      const layers = 2000;
      let lifted = 0;
      for (let i = 0; i < layers; i += 1) {
        const depth_m = ((i + 0.5) / layers) * radius_m;
        lifted += (Math.PI * (radius_m ** 2 - depth_m ** 2) * 9.80665 * depth_m * radius_m) / layers;
      }
      const brought = ((Math.PI / 6) * diameter_m ** 3 * speed_m_per_s ** 2) / 2;
      expect(lifted / brought).toBeCloseTo(1, 4);
    }),
  );
});

test.each([
  [12.5, 74],
  [37.5, 127],
])(
  'the cavity behind a fruit of radius %f mm pinches off after %i ms, by an independent numpy reckoning',
  (radius_mm, time_ms) => {
    expect(Math.round(pinchOffTime_s({ radius_m: radius_mm / 1000 }) * 1000)).toBe(time_ms);
  },
);

test('four times the radius closes in twice the time, and one and a half √(R/g) is midway in the range', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.001, max: 0.2, noNaN: true }), (radius_m) => {
      const once_s = cavityClosingTime_s({ radius_m });
      expect(cavityClosingTime_s({ radius_m: 4 * radius_m }) / once_s).toBeCloseTo(2, 9);
      expect(cavityClosingTime_s({ radius_m, closingFactor: 1 }) / once_s).toBeCloseTo(1 / 1.5, 9);
      expect(cavityClosingTime_s({ radius_m, closingFactor: 2 }) / once_s).toBeCloseTo(2 / 1.5, 9);
    }),
  );
});

test('faults are refused by name', () => {
  expect(() => cavityRadius_m({ diameter_m: 0, speed_m_per_s: 1 })).toThrow('diameter_m must be positive');
  expect(() => cavityRadius_m({ diameter_m: 1, speed_m_per_s: NaN })).toThrow('speed_m_per_s must be positive');
  expect(() => cavityClosingTime_s({ radius_m: -1 })).toThrow('radius_m must be positive');
  expect(() => cavityClosingTime_s({ radius_m: 1, closingFactor: 0 })).toThrow('closingFactor must be positive');
  expect(() => pinchOffTime_s({ radius_m: 1, gravity_m_per_s2: 0 })).toThrow('gravity_m_per_s2 must be positive');
});
