import fc from 'fast-check';
import { expect, test } from 'vitest';
import { discLight, edgeOnDiscFactor, parallelDiscFactor } from './disc.ts';

const size = fc.double({ min: 0.05, max: 3, noNaN: true });
const away = fc.double({ min: 0.01, max: 50, noNaN: true });

test('on its axis a disc gives the square of the sine of half the angle it fills', () => {
  fc.assert(
    fc.property(size, away, (diameter_m, distance_m) => {
      const half_rad = Math.atan(diameter_m / 2 / distance_m);
      expect(parallelDiscFactor({ diameter_m, distance_m })).toBeCloseTo(Math.sin(half_rad) ** 2, 12);
    }),
  );
});

test('off its axis it gives the form of the catalogue, and less the farther off', () => {
  fc.assert(
    fc.property(size, away, size, size, (diameter_m, distance_m, a, more) => {
      const [h, r] = [distance_m / a, diameter_m / 2 / a];
      const z = 1 + h * h + r * r;
      const catalogued = (1 - (1 + h * h - r * r) / Math.sqrt(z * z - 4 * r * r)) / 2;
      const factor = parallelDiscFactor({ diameter_m, distance_m, offAxis_m: a });
      expect(factor).toBeCloseTo(catalogued, 9);
      expect(parallelDiscFactor({ diameter_m, distance_m, offAxis_m: a + more })).toBeLessThan(factor);
    }),
  );
});

test('far away a disc is its area over the distance squared, and digits are kept', () => {
  const factor = parallelDiscFactor({ diameter_m: 0.1, distance_m: 1e4, offAxis_m: 1 });
  expect((factor * Math.PI) / ((Math.PI * 0.05 ** 2) / 1e8)).toBeCloseTo(1, 7);
  const edgeOn = edgeOnDiscFactor({ diameter_m: 0.1, distance_m: 1e3, offAxis_m: 1e3 });
  expect((edgeOn * Math.PI) / ((Math.PI * 0.05 ** 2) / 2e6 / 2)).toBeCloseTo(1, 6);
});

test('close against a large disc the surface sees nothing else', () => {
  expect(parallelDiscFactor({ diameter_m: 2, distance_m: 1e-6, offAxis_m: 0.3 })).toBeCloseTo(1, 9);
  expect(parallelDiscFactor({ diameter_m: 2, distance_m: 1e-6, offAxis_m: 1.3 })).toBeCloseTo(0, 9);
});

test('what has no meaning is refused by name', () => {
  const given = { diameter_m: 1, distance_m: 1, luminance_cd_per_m2: 1 };
  expect(() => discLight({ ...given, diameter_m: 0 })).toThrow('diameter_m must be positive');
  expect(() => discLight({ ...given, offAxis_m: -1 })).toThrow('offAxis_m must be zero or above');
  expect(() => discLight({ ...given, luminance_cd_per_m2: -1 })).toThrow('luminance_cd_per_m2 must be zero or above');
  expect(() => edgeOnDiscFactor({ diameter_m: 1, distance_m: 1, offAxis_m: 0.4 })).toThrow(
    'offAxis_m must be at least',
  );
});
