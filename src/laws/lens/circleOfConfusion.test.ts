import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { circleOfConfusionByDiagonal_m, circleOfConfusionByPixels_m } from './circleOfConfusion.ts';

describe('published values', () => {
  published(
    'circleOfConfusionByDiagonal in mm',
    (given: Parameters<typeof circleOfConfusionByDiagonal_m>[0]) => 1000 * circleOfConfusionByDiagonal_m(given),
    [
      {
        source: 'circles-per-diagonal',
        at: '24 × 36 mm',
        given: { diagonal_m: Math.hypot(0.024, 0.036), divisor: 1750 },
        expected: '0.024724',
      },
      {
        source: 'circles-per-diagonal',
        at: '60 × 70 mm',
        given: { diagonal_m: Math.hypot(0.06, 0.07), divisor: 1750 },
        expected: '0.052683',
      },
      {
        source: 'circles-per-diagonal',
        at: '8 × 10 inches',
        given: { diagonal_m: Math.hypot(8, 10) * 0.0254, divisor: 1750 },
        expected: '0.185874',
      },
    ],
  );
});

test('without a count the blur may cover two pixels, without a divisor a 1500th of the diagonal', () => {
  expect(circleOfConfusionByPixels_m({ pixelPitch_m: 1e-5 })).toBeCloseTo(2e-5, 15);
  expect(circleOfConfusionByDiagonal_m({ diagonal_m: 0.03 })).toBeCloseTo(2e-5, 15);
});

test('twice the pitch, or twice the pixels, is twice the blur', () => {
  const pitch = fc.double({ min: 1e-6, max: 5e-5, noNaN: true });
  const pixels = fc.double({ min: 0.5, max: 10, noNaN: true });
  fc.assert(
    fc.property(pitch, pixels, (pixelPitch_m, pixelCount) => {
      const once_m = circleOfConfusionByPixels_m({ pixelPitch_m, pixelCount });
      expect(circleOfConfusionByPixels_m({ pixelPitch_m: 2 * pixelPitch_m, pixelCount }) / once_m).toBeCloseTo(2, 12);
      expect(circleOfConfusionByPixels_m({ pixelPitch_m, pixelCount: 2 * pixelCount }) / once_m).toBeCloseTo(2, 12);
    }),
  );
});

test('a pitch, a diagonal or a divisor of nothing is refused by name', () => {
  expect(() => circleOfConfusionByPixels_m({ pixelPitch_m: 0 })).toThrow('pixelPitch_m must be positive');
  expect(() => circleOfConfusionByPixels_m({ pixelPitch_m: 1e-5, pixelCount: 0 })).toThrow(
    'pixelCount must be positive',
  );
  expect(() => circleOfConfusionByDiagonal_m({ diagonal_m: -1 })).toThrow('diagonal_m must be positive');
  expect(() => circleOfConfusionByDiagonal_m({ diagonal_m: 0.03, divisor: 0 })).toThrow('divisor must be positive');
});
