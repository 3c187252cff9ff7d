import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../../test/published.ts';
import { parallelDiscFactor } from './disc.ts';
import { nearnessOf, pointDistance_m } from './nearness.ts';

describe('published values', () => {
  published(
    'times its size that a point needs',
    (allowedFraction: number) => pointDistance_m({ size_m: 1, allowedFraction }),
    [{ source: 'ies-inverse-square', at: 'within 1 % from five times the largest size', given: 0.01, expected: '5.0' }],
  );
  published(
    'promised too much',
    (sizes: number) => 100 * nearnessOf({ size_m: 0.4, distance_m: 0.4 * sizes }).overstatedFraction,
    [{ source: 'ies-inverse-square', at: 'a disc five diameters away, per cent', given: 5, expected: '1.0' }],
  );
});

test.each([
  [1, 32.9],
  [2, 8.3],
  [3, 3.7],
  [5, 1.33],
])('a square %s sides away is promised %s %% too much, integrated independently', (sizes, percent) => {
  const { overstatedFraction } = nearnessOf({ size_m: 0.7, distance_m: 0.7 * sizes, shape: 'square' });
  expect(Math.abs(100 * overstatedFraction - percent)).toBeLessThanOrEqual(sizes === 5 ? 0.005 : 0.05);
});

test('for a disc it is the point’s share over the true one, and it falls with distance', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.1, max: 20, noNaN: true }), (sizes) => {
      const point = 0.25 / sizes ** 2;
      const truth = parallelDiscFactor({ diameter_m: 1, distance_m: sizes });
      const { overstatedFraction, overstated_stops } = nearnessOf({ size_m: 1, distance_m: sizes });
      expect(overstatedFraction).toBeCloseTo(point / truth - 1, 9);
      expect(2 ** overstated_stops).toBeCloseTo(1 + overstatedFraction, 9);
      expect(nearnessOf({ size_m: 1, distance_m: 2 * sizes }).overstatedFraction).toBeLessThan(overstatedFraction);
    }),
  );
});

test('nearer than five times its size is said, at five it is not', () => {
  expect(nearnessOf({ size_m: 0.3, distance_m: 1.49 }).isNear).toBe(true);
  expect(nearnessOf({ size_m: 0.3, distance_m: 1.5 }).isNear).toBe(false);
});

test('what has no meaning is refused by name', () => {
  expect(() => nearnessOf({ size_m: 0, distance_m: 1 })).toThrow('size_m must be positive');
  expect(() => nearnessOf({ size_m: 1, distance_m: NaN })).toThrow('distance_m must be positive');
  expect(() => pointDistance_m({ size_m: 1, allowedFraction: 2 })).toThrow('allowedFraction must be from 0 to 1');
});
