import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../../test/published.ts';
import { panelLight, parallelPanelFactor, standingPanelFactor, standingPanelLight } from './rectangle.ts';

describe('published values', () => {
  published('corner of a very large rectangle', parallelPanelFactor, [
    {
      source: 'factor-examples',
      at: 'a and b very large beside c: a quarter, seen from the corner',
      given: { width_m: 2e6, height_m: 2e6, distance_m: 1, right_m: -1e6, up_m: -1e6 },
      expected: '.2500',
    },
  ]);
});

test('a softbox of a metre, a metre away, gives three quarters of what the inverse square promises', () => {
  // From light's own integral, worked independently: 0.7523 times its luminance.
  const { illuminance_lx } = panelLight({ width_m: 1, height_m: 1, distance_m: 1, luminance_cd_per_m2: 1 });
  expect(illuminance_lx).toBeCloseTo(0.7523, 4);
});

const size = fc.double({ min: 0.05, max: 3, noNaN: true });
const away = fc.double({ min: 0.05, max: 4, noNaN: true });

test('turning the panel on its side, or moving to the other side, changes nothing', () => {
  fc.assert(
    fc.property(size, size, away, size, size, (width_m, height_m, distance_m, x, y) => {
      const factor = parallelPanelFactor({ width_m, height_m, distance_m, right_m: x, up_m: y });
      const turned = parallelPanelFactor({ width_m: height_m, height_m: width_m, distance_m, right_m: y, up_m: -x });
      expect(turned).toBeCloseTo(factor, 12);
    }),
  );
});

test('only proportions matter, more panel never gives less, and no panel gives more than a whole half sphere', () => {
  fc.assert(
    fc.property(size, size, away, size, (width_m, height_m, distance_m, more_m) => {
      const given = { width_m, height_m, distance_m };
      const factor = parallelPanelFactor(given);
      expect(
        parallelPanelFactor({ width_m: 3 * width_m, height_m: 3 * height_m, distance_m: 3 * distance_m }),
      ).toBeCloseTo(factor, 12);
      expect(parallelPanelFactor({ ...given, width_m: width_m + more_m })).toBeGreaterThan(factor);
      expect(factor).toBeLessThan(1);
      const beside = standingPanelFactor(given);
      expect(standingPanelFactor({ ...given, height_m: height_m + more_m })).toBeGreaterThan(beside);
      expect(beside).toBeLessThan(0.5);
    }),
  );
});

test('an endless wall at the edge gives a table half a half sphere, and the raised part and the lower part make the whole', () => {
  expect(standingPanelFactor({ width_m: 1e7, height_m: 1e7, distance_m: 1 })).toBeCloseTo(0.5, 6);
  const given = { width_m: 1.3, distance_m: 0.4, right_m: 0.9 };
  const parts =
    standingPanelFactor({ ...given, height_m: 0.3 }) + standingPanelFactor({ ...given, height_m: 0.5, raised_m: 0.3 });
  expect(parts).toBeCloseTo(standingPanelFactor({ ...given, height_m: 0.8 }), 12);
});

test('what has no meaning is refused by name', () => {
  const given = { width_m: 1, height_m: 1, distance_m: 1, luminance_cd_per_m2: 1 };
  expect(() => panelLight({ ...given, distance_m: 0 })).toThrow('distance_m must be positive');
  expect(() => panelLight({ ...given, luminance_cd_per_m2: -1 })).toThrow('luminance_cd_per_m2 must be zero or above');
  expect(() => panelLight({ ...given, right_m: Infinity })).toThrow('right_m must be finite');
  expect(() => standingPanelLight({ ...given, raised_m: -0.1 })).toThrow('raised_m must be zero or above');
  expect(() => standingPanelLight({ ...given, luminance_cd_per_m2: NaN })).toThrow('luminance_cd_per_m2 must be zero');
});
