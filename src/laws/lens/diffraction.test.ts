import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { airyDiameter_m, airyDiameter_px, combinedBlur_m, fNumberAtAiry } from './diffraction.ts';

type Airy = Parameters<typeof airyDiameter_m>[0];
const airy_um = (given: Airy) => 1e6 * airyDiameter_m(given);

describe('published values', () => {
  const at520 = (fNumber: number, expected: string) => ({
    source: 'airy-guide',
    at: `table for 520 nm, f/${fNumber}`,
    given: { fNumber, magnificationRatio: 0, wavelength_m: 520e-9 },
    expected,
  });
  published('airyDiameter in µm', airy_um, [
    at520(1.4, '1.78'),
    at520(2, '2.54'),
    at520(2.8, '3.55'),
    at520(4, '5.08'),
    at520(5.6, '7.11'),
    at520(8, '10.15'),
    at520(11, '13.96'),
    at520(16, '20.30'),
    {
      source: 'airy-examples',
      at: '550 nm, f/4',
      given: { fNumber: 4, magnificationRatio: 0 },
      expected: '5.37',
    },
    {
      source: 'airy-examples',
      at: '532 nm, f/8',
      given: { fNumber: 8, magnificationRatio: 0, wavelength_m: 532e-9 },
      expected: '10.38',
    },
  ]);

  published(
    'the effective f-number that airyDiameter uses',
    (given: Airy) => airyDiameter_m(given) / airyDiameter_m({ fNumber: 1, magnificationRatio: 0 }),
    [
      {
        source: 'macro-depth-table',
        at: 'effective aperture, magnification 0.3, f/2.8',
        given: { fNumber: 2.8, magnificationRatio: 0.3 },
        expected: '3.6',
      },
      {
        source: 'macro-depth-table',
        at: 'effective aperture, magnification 2.5, f/4',
        given: { fNumber: 4, magnificationRatio: 2.5 },
        expected: '14',
      },
      {
        source: 'macro-depth-table',
        at: 'effective aperture, magnification 10, f/1.4',
        given: { fNumber: 1.4, magnificationRatio: 10 },
        expected: '15',
      },
    ],
  );
});

test('the factor 2.44 is the first zero of the Bessel function J1, found from its series, to a tenth of a per cent', () => {
  const j1 = (x: number) => {
    let term = x / 2;
    let sum = term;
    for (let k = 1; k < 40; k += 1) {
      term *= -((x / 2) ** 2) / (k * (k + 1));
      sum += term;
    }
    return sum;
  };
  let low = 3;
  let high = 4.5;
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (j1(middle) > 0) low = middle;
    else high = middle;
  }
  const factor = airyDiameter_m({ fNumber: 1, magnificationRatio: 0, wavelength_m: 1 });
  expect(factor / ((2 * low) / Math.PI)).toBeCloseTo(1, 3);
});

const setting = fc.record({
  fNumber: fc.double({ min: 1, max: 64, noNaN: true }),
  magnificationRatio: fc.double({ min: 0, max: 5, noNaN: true }),
  pupilMagnificationRatio: fc.double({ min: 0.4, max: 3, noNaN: true }),
  wavelength_m: fc.double({ min: 400e-9, max: 700e-9, noNaN: true }),
});

test('the f-number comes back from the spot it draws', () => {
  fc.assert(
    fc.property(setting, (given) => {
      const back = fNumberAtAiry({ ...given, airyDiameter_m: airyDiameter_m(given) });
      expect(back / given.fNumber).toBeCloseTo(1, 12);
    }),
  );
});

test('the spot follows the angle of the cone that a traced beam of a lens with unlike pupils makes', () => {
  // A stop before a thin lens, as in the depth of field's bench: the exit pupil lies behind the front focal point.
  const focal_m = 0.08;
  const stopBefore_m = 0.03;
  const fNumber = 4;
  const magnificationRatio = 1.2;
  const radius_m = focal_m / fNumber / 2;
  const subject_m = focal_m * (1 + 1 / magnificationRatio);
  const slope = radius_m / (subject_m - stopBefore_m);
  const slopeBehind = slope - (slope * subject_m) / focal_m;
  const effective = 1 / (2 * Math.abs(slopeBehind));
  const pupilMagnificationRatio = 1 / (1 - stopBefore_m / focal_m);
  expect(airyDiameter_m({ fNumber, magnificationRatio, pupilMagnificationRatio })).toBeCloseTo(
    2.44 * 550e-9 * effective,
    15,
  );
});

test('the spot in pixels is the spot over the pitch, and binning by three makes it three times fewer pixels', () => {
  fc.assert(
    fc.property(setting, fc.double({ min: 2e-6, max: 3e-5, noNaN: true }), (given, pixelPitch_m) => {
      const pixels_px = airyDiameter_px({ ...given, pixelPitch_m });
      expect((pixels_px * pixelPitch_m) / airyDiameter_m(given)).toBeCloseTo(1, 12);
      const binned_px = airyDiameter_px({ ...given, pixelPitch_m, binningCount: 3 });
      expect(pixels_px / binned_px).toBeCloseTo(3, 12);
    }),
  );
});

test('defocus and diffraction together are at least the larger and at most the sum, whichever is which', () => {
  const blur = fc.double({ min: 0, max: 1e-3, noNaN: true });
  fc.assert(
    fc.property(blur, blur, (defocusBlur_m, spot_m) => {
      const both_m = combinedBlur_m({ defocusBlur_m, airyDiameter_m: spot_m });
      expect(both_m).toBeGreaterThanOrEqual(Math.max(defocusBlur_m, spot_m) * (1 - 1e-12));
      expect(both_m).toBeLessThanOrEqual((defocusBlur_m + spot_m) * (1 + 1e-12));
      expect(combinedBlur_m({ defocusBlur_m: spot_m, airyDiameter_m: defocusBlur_m })).toBe(both_m);
    }),
  );
  expect(combinedBlur_m({ defocusBlur_m: 3e-6, airyDiameter_m: 4e-6 })).toBeCloseTo(5e-6, 15);
});

test('a stop, a spot, a wavelength, a pitch or a binning of nothing is refused by name', () => {
  const given = { fNumber: 8, magnificationRatio: 1 };
  expect(() => airyDiameter_m({ ...given, fNumber: 0 })).toThrow('fNumber must be positive');
  expect(() => airyDiameter_m({ ...given, magnificationRatio: -1 })).toThrow(
    'magnificationRatio must be zero or above',
  );
  expect(() => airyDiameter_m({ ...given, pupilMagnificationRatio: 0 })).toThrow('pupilMagnificationRatio must be');
  expect(() => fNumberAtAiry({ magnificationRatio: 1, airyDiameter_m: 0 })).toThrow('airyDiameter_m must be positive');
  expect(() => fNumberAtAiry({ magnificationRatio: 1, airyDiameter_m: 1e-5, wavelength_m: 0 })).toThrow(
    'wavelength_m must be positive',
  );
  expect(() => airyDiameter_px({ ...given, pixelPitch_m: 0 })).toThrow('pixelPitch_m must be positive');
  expect(() => airyDiameter_px({ ...given, pixelPitch_m: 1e-5, binningCount: 1.5 })).toThrow(
    'binningCount must be a whole number',
  );
  expect(() => combinedBlur_m({ defocusBlur_m: -1e-6, airyDiameter_m: 0 })).toThrow('defocusBlur_m must be zero');
});
