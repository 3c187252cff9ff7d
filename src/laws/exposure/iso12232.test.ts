import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import {
  exposureIndex,
  focalPlaneExposure_lx_s,
  lensFactor,
  midGreyExposure_lx_s,
  saturationSpeed,
} from './iso12232.ts';

const bright = { luminance_cd_per_m2: 4000, fNumber: 8, exposureTime_s: 1 / 250 };

/** How far an exposure lies towards clipping, 1 being there. */
function shareOfClipping(given: Parameters<typeof focalPlaneExposure_lx_s>[0] & { readonly isoSpeed: number }): number {
  return given.isoSpeed / saturationSpeed({ clippingExposure_lx_s: focalPlaneExposure_lx_s(given) });
}

describe('published values', () => {
  published('lens factor', lensFactor, [
    { source: 'colour-hdri', at: 'TestQFactor, first', given: {}, expected: '0.65157483' },
    {
      source: 'colour-hdri',
      at: 'TestQFactor, second',
      given: { transmittanceFraction: 0.8, vignettingFraction: 0.98, fieldAngle_deg: 10 },
      expected: '0.57917763',
    },
    {
      source: 'colour-hdri',
      at: 'TestQFactor, third',
      given: { transmittanceFraction: 0.9, vignettingFraction: 0.94, fieldAngle_deg: 20 },
      expected: '0.51808797',
    },
  ]);
  published('exposure at the sensor', focalPlaneExposure_lx_s, [
    { source: 'colour-hdri', at: 'arithmetic mean, first', given: bright, expected: '0.16289371' },
    {
      source: 'colour-hdri',
      at: 'arithmetic mean, second',
      given: { luminance_cd_per_m2: 2000, fNumber: 5.6, exposureTime_s: 1 / 500 },
      expected: '0.08310904',
    },
    {
      source: 'colour-hdri',
      at: 'focal plane exposure with flare, third',
      given: { luminance_cd_per_m2: 1000, fNumber: 2.8, exposureTime_s: 1 / 1000, flareExposure_lx_s: 0.01 },
      expected: '0.09310904',
    },
  ]);
  published('exposure index', exposureIndex, [
    {
      source: 'colour-hdri',
      at: 'exposure_index_values, documentation example, digits cut at the seventh',
      given: { exposure_lx_s: 0.1628937086212269 },
      expected: '61.389725',
    },
    {
      source: 'colour-hdri',
      at: 'TestExposureIndexValues, second',
      given: { exposure_lx_s: 0.08810904 },
      expected: '113.49573211',
    },
  ]);
  published('share of clipping', shareOfClipping, [
    {
      source: 'colour-hdri',
      at: 'saturation based, first',
      given: { ...bright, flareExposure_lx_s: 0.0015, isoSpeed: 100 },
      expected: '0.21076116',
    },
    {
      source: 'colour-hdri',
      at: 'saturation based, second',
      given: {
        luminance_cd_per_m2: 2000,
        fNumber: 5.6,
        exposureTime_s: 1 / 500,
        flareExposure_lx_s: 0.005,
        isoSpeed: 800,
      },
      expected: '0.90368241',
    },
  ]);

  test('clipping lies above middle grey as a 141 % reflectance lies above an 18 % one, to a hundredth of a stop', () => {
    const clip = saturationSpeed({ clippingExposure_lx_s: 1 }) / exposureIndex({ exposure_lx_s: 1 });
    expect(Math.abs(Math.log2(clip) - Math.log2(141 / 18))).toBeLessThan(0.01);
  });
});

describe('true of every exposure', () => {
  test('the index comes back from the middle grey it places', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1e6, noNaN: true }), (isoSpeed) => {
        const exposure_lx_s = midGreyExposure_lx_s({ isoSpeed });
        expect(exposureIndex({ exposure_lx_s }) / isoSpeed).toBeCloseTo(1, 12);
      }),
    );
  });

  test('a close-up at magnification m sees the f-number times 1 + m', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 64, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (fNumber, magnificationRatio) => {
          const near = focalPlaneExposure_lx_s({ ...bright, fNumber, magnificationRatio });
          const far = focalPlaneExposure_lx_s({ ...bright, fNumber: fNumber * (1 + magnificationRatio) });
          expect(near / far).toBeCloseTo(1, 12);
        },
      ),
    );
  });
});

test('what has no meaning is refused by name', () => {
  expect(() => focalPlaneExposure_lx_s({ ...bright, fNumber: 0 })).toThrow('fNumber must be positive');
  expect(() => focalPlaneExposure_lx_s({ ...bright, lensFactor: 0 })).toThrow('lensFactor must be positive');
  expect(() => focalPlaneExposure_lx_s({ ...bright, magnificationRatio: -1 })).toThrow('magnificationRatio must be');
  expect(() => lensFactor({ transmittanceFraction: 1.1 })).toThrow(
    'transmittanceFraction must be from 0 to 1, got 1.1',
  );
  expect(() => lensFactor({ fieldAngle_deg: 90 })).toThrow('fieldAngle_deg must be from 0 to 89, got 90');
  expect(() => exposureIndex({ exposure_lx_s: 0 })).toThrow('exposure_lx_s must be positive and finite, got 0');
  expect(() => saturationSpeed({ clippingExposure_lx_s: -1 })).toThrow('clippingExposure_lx_s must be positive');
  expect(() => midGreyExposure_lx_s({ isoSpeed: Infinity })).toThrow('isoSpeed must be positive and finite');
});
