import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../../test/published.ts';
import {
  exitanceOfLuminance_lm_per_m2,
  luminanceOfDiffusion_cd_per_m2,
  luminanceOfExitance_cd_per_m2,
  luminanceOfOpening_cd_per_m2,
} from './exitance.ts';
import { discLight } from './disc.ts';

describe('published values', () => {
  published('luminance of a matte surface from its exitance', luminanceOfExitance_cd_per_m2, [
    {
      source: 'paper-exercise',
      at: 'paper of reflectance 0.7 under 450 lx sends out 315 lm/m²; printed 100.26, its digits cut at the second',
      given: { exitance_lm_per_m2: 0.7 * 450 },
      expected: '100.3',
    },
  ]);
});

const light = fc.double({ min: 0.001, max: 1e8, noNaN: true });

test('exitance and luminance give each other back', () => {
  fc.assert(
    fc.property(light, (luminance_cd_per_m2) => {
      const exitance_lm_per_m2 = exitanceOfLuminance_lm_per_m2({ luminance_cd_per_m2 });
      expect(luminanceOfExitance_cd_per_m2({ exitance_lm_per_m2 }) / luminance_cd_per_m2).toBeCloseTo(1, 12);
    }),
  );
});

test('what leaves the front of the diffusion is its share of what reached it, over its whole area', () => {
  const luminance_cd_per_m2 = luminanceOfDiffusion_cd_per_m2({
    flux_lm: 6000,
    transmittanceFraction: 0.4,
    width_m: 1.5,
    height_m: 2,
  });
  expect(exitanceOfLuminance_lm_per_m2({ luminance_cd_per_m2 }) * 3).toBeCloseTo(2400, 9);
});

test('a far disc of a lamp’s own luminance gives what the lamp was measured to give', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.02, max: 0.5, noNaN: true }), light, (openingDiameter_m, illuminance_lx) => {
      const measuredAt_m = 500 * openingDiameter_m;
      const luminance_cd_per_m2 = luminanceOfOpening_cd_per_m2({ illuminance_lx, measuredAt_m, openingDiameter_m });
      const back = discLight({ diameter_m: openingDiameter_m, distance_m: measuredAt_m, luminance_cd_per_m2 });
      expect(back.illuminance_lx / illuminance_lx).toBeCloseTo(1, 5);
    }),
  );
});

test('200 klx at a metre from an opening of 100 mm is 25 million candelas a square metre, worked by hand', () => {
  const given = { illuminance_lx: 200_000, measuredAt_m: 1, openingDiameter_m: 0.1 };
  expect(luminanceOfOpening_cd_per_m2(given) / (2e5 / (Math.PI * 0.0025))).toBeCloseTo(1, 12);
});

test('what has no meaning is refused by name', () => {
  const frame = { flux_lm: 1, transmittanceFraction: 1, width_m: 1, height_m: 1 };
  expect(() => exitanceOfLuminance_lm_per_m2({ luminance_cd_per_m2: -1 })).toThrow('luminance_cd_per_m2 must be zero');
  expect(() => luminanceOfExitance_cd_per_m2({ exitance_lm_per_m2: NaN })).toThrow('exitance_lm_per_m2 must be zero');
  expect(() => luminanceOfDiffusion_cd_per_m2({ ...frame, transmittanceFraction: 2 })).toThrow('transmittanceFraction');
  expect(() => luminanceOfDiffusion_cd_per_m2({ ...frame, height_m: 0 })).toThrow('height_m must be positive');
  expect(() => luminanceOfOpening_cd_per_m2({ illuminance_lx: 1, measuredAt_m: 1, openingDiameter_m: 0 })).toThrow(
    'openingDiameter_m must be positive',
  );
});
