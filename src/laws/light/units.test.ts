import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import {
  footcandlesOfLux,
  inverseSquareIlluminance_lx,
  luminanceOfMatte_cd_per_m2,
  luxOfFootcandles,
} from './units.ts';

describe('published values', () => {
  published('lux', luxOfFootcandles, [
    { source: 'footcandle-entry', at: 'one foot-candle', given: { illuminance_fc: 1 }, expected: '10.764' },
  ]);
  published('luminance of a matte surface', luminanceOfMatte_cd_per_m2, [
    {
      source: 'paper-exercise',
      at: 'paper of reflectance 0.7 under 450 lx, printed 100.26, its digits cut at the second',
      given: { illuminance_lx: 450, reflectanceFraction: 0.7 },
      expected: '100.3',
    },
  ]);
  published('light at another distance', inverseSquareIlluminance_lx, [
    {
      source: 'lighting-textbook',
      at: '100 lx at 1 m, two metres away',
      given: { illuminance_lx: 100, measuredAt_m: 1, distance_m: 2 },
      expected: '25',
    },
    {
      source: 'lighting-textbook',
      at: '100 lx at 1 m, three metres away',
      given: { illuminance_lx: 100, measuredAt_m: 1, distance_m: 3 },
      expected: '11.1',
    },
  ]);

  test.each([
    [5, 1],
    [10, 0.25],
  ])(
    'of a disc %s diameters away the inverse square promises %s %% too much, where ies-inverse-square allows 1 %% from 5 on',
    (far, less) => {
      // On its axis a disc of radius r gives M · r²/(r² + h²) at distance h; here r is ½, so far is in diameters.
      const onAxis_lx = (distance_m: number) => 0.25 / (0.25 + distance_m ** 2);
      const measuredAt_m = 1e6;
      const promised_lx = inverseSquareIlluminance_lx({
        illuminance_lx: onAxis_lx(measuredAt_m),
        measuredAt_m,
        distance_m: far,
      });
      expect(100 * (promised_lx / onAxis_lx(far) - 1)).toBeCloseTo(less, 6);
    },
  );

  test('one candela a foot away gives one footcandle, which is what the unit is', () => {
    const illuminance_lx = inverseSquareIlluminance_lx({ illuminance_lx: 1, measuredAt_m: 1, distance_m: 0.3048 });
    expect(footcandlesOfLux({ illuminance_lx })).toBeCloseTo(1, 12);
  });
});

describe('true of every light', () => {
  const light = fc.double({ min: 0.001, max: 1e7, noNaN: true });
  const distance_m = fc.double({ min: 0.01, max: 100, noNaN: true });

  test('footcandles come back from lux', () => {
    fc.assert(
      fc.property(light, (illuminance_fc) => {
        const illuminance_lx = luxOfFootcandles({ illuminance_fc });
        expect(Math.abs(footcandlesOfLux({ illuminance_lx }) - illuminance_fc)).toBeLessThanOrEqual(
          1e-12 * illuminance_fc,
        );
      }),
    );
  });

  test('a matte surface sends back, over the half sphere, its reflectance of what it is given', () => {
    fc.assert(
      fc.property(light, fc.double({ min: 0, max: 1, noNaN: true }), (illuminance_lx, reflectanceFraction) => {
        const sent = Math.PI * luminanceOfMatte_cd_per_m2({ illuminance_lx, reflectanceFraction });
        expect(Math.abs(sent - reflectanceFraction * illuminance_lx)).toBeLessThanOrEqual(1e-12 * illuminance_lx);
      }),
    );
  });

  test('the intensity of a lamp is the same from every distance, and going back gives the light it started from', () => {
    fc.assert(
      fc.property(light, distance_m, distance_m, (illuminance_lx, measuredAt_m, far_m) => {
        const there_lx = inverseSquareIlluminance_lx({ illuminance_lx, measuredAt_m, distance_m: far_m });
        const intensity_cd = illuminance_lx * measuredAt_m ** 2;
        expect(Math.abs(there_lx * far_m ** 2 - intensity_cd)).toBeLessThanOrEqual(1e-12 * intensity_cd);
      }),
    );
  });
});

test('what has no meaning is refused by name', () => {
  expect(() => footcandlesOfLux({ illuminance_lx: -1 })).toThrow('illuminance_lx must be zero or above and finite');
  expect(() => luxOfFootcandles({ illuminance_fc: NaN })).toThrow('illuminance_fc must be zero or above and finite');
  expect(() => luminanceOfMatte_cd_per_m2({ illuminance_lx: 100, reflectanceFraction: 1.5 })).toThrow(
    'reflectanceFraction must be from 0 to 1, got 1.5',
  );
  expect(() => inverseSquareIlluminance_lx({ illuminance_lx: 100, measuredAt_m: 1, distance_m: 0 })).toThrow(
    'distance_m must be positive and finite, got 0',
  );
});
