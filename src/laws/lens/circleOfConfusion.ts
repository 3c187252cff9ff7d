/**
 * How much blur passes for sharp: two conventions, neither a fact of optics.
 *
 *     c = n · a          c = d / q
 *
 * c circle of confusion on the sensor, m
 * a pixel pitch, m       n pixels that the blur may cover
 * d picture diagonal, m  q divisor, fixed by how large and from where the picture is looked at
 *
 * The first keeps what the sensor can show; the second what an audience sees of the whole picture, and should follow
 * the window or the delivered crop, not the sensor.
 *
 * @source circles-per-diagonal a diagonal divisor, tabulated (1750 there)
 * @source diagonal-divisor the divisor 1500
 * @source two-pixels two pixels for sharp digital work
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

/** @source two-pixels */
export const SHARP_PIXEL_COUNT = 2;

/** @source diagonal-divisor */
export const DIAGONAL_DIVISOR = 1500;

/** A blur of so many picture pixels. Throws RangeError outside positive inputs; the count need not be whole. */
export function circleOfConfusionByPixels_m(given: {
  readonly pixelPitch_m: number;
  readonly pixelCount?: number;
}): number {
  const { pixelPitch_m, pixelCount = SHARP_PIXEL_COUNT } = given;
  requirePositive({ pixelPitch_m, pixelCount });
  return pixelPitch_m * pixelCount;
}

/** A blur that is one part in so many of the picture's diagonal. Throws RangeError outside positive inputs. */
export function circleOfConfusionByDiagonal_m(given: {
  readonly diagonal_m: number;
  readonly divisor?: number;
}): number {
  const { diagonal_m, divisor = DIAGONAL_DIVISOR } = given;
  requirePositive({ diagonal_m, divisor });
  return diagonal_m / divisor;
}

const GIVES = { circleOfConfusion_m: 'Circle of confusion' };
const WORDS = ['circle of confusion', 'CoC', 'acceptable sharpness', 'depth of field'];

export const circleOfConfusionByPixels = law(circleOfConfusionByPixels_m, {
  id: 'circle-of-confusion-by-pixels',
  title: 'Circle of confusion in pixels',
  says: 'The blur that passes for sharp, as so many pixels of the picture.',
  equation: 'c = n · a',
  takes: {
    pixelPitch_m: { title: 'Pixel pitch', note: 'of the picture: the sensor pitch times the binning' },
    pixelCount: {
      title: 'Pixels the blur may cover',
      // May be a fraction of a pixel, which a count may not.
      as: 'ratio',
      default: SHARP_PIXEL_COUNT,
      note: 'a convention: common practice, no source',
    },
  },
  gives: GIVES,
  holds:
    'A convention. Right where the picture is delivered pixel for pixel; stricter than need be where it is reduced.',
  sources: ['two-pixels'],
  words: WORDS,
  example: { pixelPitch_m: 1e-5, pixelCount: 2 },
});

export const circleOfConfusionByDiagonal = law(circleOfConfusionByDiagonal_m, {
  id: 'circle-of-confusion-by-diagonal',
  title: 'Circle of confusion from the diagonal',
  says: "The blur that passes for sharp, as a small part of the picture's diagonal.",
  equation: 'c = d / q',
  takes: {
    diagonal_m: { title: 'Diagonal of the picture on the sensor', note: 'of the window, or of the crop delivered' },
    divisor: {
      title: 'Parts in the diagonal',
      as: 'ratio',
      default: DIAGONAL_DIVISOR,
      note: 'a convention, from memory; 1730 and 1750 are in use too and a little stricter',
    },
  },
  gives: GIVES,
  holds:
    'A convention for a whole picture seen from about its diagonal away; larger screens and closer seats ask for less blur.',
  sources: ['diagonal-divisor'],
  words: WORDS,
  example: { diagonal_m: 0.0294, divisor: 1500 },
});
