import fc from 'fast-check';
import { expect, test } from 'vitest';
import { capillaryTime_s } from './capillaryTime.ts';

test('a bubble of 1 mm radius in water takes 3.7 ms, worked by hand', () => {
  expect(capillaryTime_s({ radius_m: 0.001 }) * 1000).toBeCloseTo(3.7, 2);
});

test('four times the radius takes eight times as long, a quarter of the surface tension twice', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-5, max: 0.05, noNaN: true }), (radius_m) => {
      const once_s = capillaryTime_s({ radius_m, surfaceTension_N_per_m: 0.06 });
      expect(capillaryTime_s({ radius_m: 4 * radius_m, surfaceTension_N_per_m: 0.06 }) / once_s).toBeCloseTo(8, 9);
      expect(capillaryTime_s({ radius_m, surfaceTension_N_per_m: 0.015 }) / once_s).toBeCloseTo(2, 9);
    }),
  );
});

test('faults are refused by name', () => {
  expect(() => capillaryTime_s({ radius_m: 0 })).toThrow('radius_m must be positive and finite, got 0');
  expect(() => capillaryTime_s({ radius_m: 1, density_kg_per_m3: 0 })).toThrow('density_kg_per_m3 must be positive');
  expect(() => capillaryTime_s({ radius_m: 1, surfaceTension_N_per_m: NaN })).toThrow('surfaceTension_N_per_m must be');
});
