/**
 * The window of the sensor that a mode reads, and the image circle it asks of the lens.
 *
 *     w = n · b · a          d = b · a · √(nw² + nh²)          Ø = d / (1 + m/p)
 *
 * w width (or height) of the window, m    n its picture pixels       a pixel pitch, m
 * b sensor pixels across one picture pixel: 1, or more where a mode bins or skips
 * d diagonal of the window, m             nw, nh picture pixels across and down
 * Ø image circle the lens must have for distant focus, m    m magnification    p pupil magnification
 *
 * A smaller mode reads a window in the middle of the sensor and sees less; a binned one keeps the window and sees the
 * same with fewer pixels.
 *
 * The image circle of a lens that is moved out as a whole grows with the distance from its exit pupil, by 1 + m/p,
 * since its cone of light keeps its angle. Lenses that focus inside give no such promise: for those, and where in
 * doubt, leave the magnification at 0, which asks for the whole diagonal.
 *
 * @source sensor-regions regions and binning of a sensor, as camera manuals describe them
 * @source image-circle-close the circle at a magnification, for p = 1
 * @source dof-derivation where the exit pupil stands for other p
 */
import { requireCount, requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { BINNING, MAGNIFICATION, PUPIL_MAGNIFICATION, SYMMETRIC_PUPIL_RATIO } from './given.ts';

interface Sampling {
  readonly pixelPitch_m: number;
  readonly binningCount?: number;
}

/** Pitch of the picture's pixels on the sensor. Throws RangeError unless the pitch is positive and the binning whole. */
export function sampledPitch_m({ pixelPitch_m, binningCount = 1 }: Sampling): number {
  requirePositive({ pixelPitch_m });
  requireCount({ binningCount }, 1);
  return pixelPitch_m * binningCount;
}

/** Width of the window on the sensor; a height if given rows. Throws RangeError unless the counts are whole, 1 or above. */
export function windowWidth_m(given: Sampling & { readonly pixelCount: number }): number {
  const { pixelCount } = given;
  requireCount({ pixelCount }, 1);
  return pixelCount * sampledPitch_m(given);
}

/** Diagonal of the window on the sensor. Throws RangeError unless the counts are whole, 1 or above. */
export function windowDiagonal_m(
  given: Sampling & { readonly widthCount: number; readonly heightCount: number },
): number {
  const { widthCount, heightCount } = given;
  requireCount({ widthCount, heightCount }, 1);
  return Math.hypot(widthCount, heightCount) * sampledPitch_m(given);
}

/**
 * The image circle, as a lens is marked for distant focus, that covers a window's diagonal. Throws RangeError outside
 * positive inputs, or magnification below 0.
 */
export function imageCircleNeeded_m(given: {
  readonly diagonal_m: number;
  readonly magnificationRatio?: number;
  readonly pupilMagnificationRatio?: number;
}): number {
  const { diagonal_m, magnificationRatio = 0, pupilMagnificationRatio = SYMMETRIC_PUPIL_RATIO } = given;
  requirePositive({ diagonal_m, pupilMagnificationRatio });
  requireNotNegative({ magnificationRatio });
  return diagonal_m / (1 + magnificationRatio / pupilMagnificationRatio);
}

const PITCH = 'Pixel pitch of the sensor';

const COMMON = {
  holds: 'Square pixels. A mode that skips pixels keeps the window too, but sees fine patterns falsely.',
  sources: ['sensor-regions'],
  words: ['region of interest', 'ROI', 'window', 'crop factor', 'binning', 'active area'],
};

export const sampledPitch = law(sampledPitch_m, {
  id: 'sampled-pitch',
  title: "Pitch of the picture's pixels",
  says: "How far apart the picture's pixels lie on the sensor in this mode.",
  equation: 'a · b',
  takes: { pixelPitch_m: PITCH, binningCount: BINNING },
  gives: { sampledPitch_m: 'Pitch of the picture' },
  example: { pixelPitch_m: 5e-6, binningCount: 2 },
  ...COMMON,
});

export const windowWidth = law(windowWidth_m, {
  id: 'window-width',
  title: 'Width of a sensor window',
  says: 'How wide a piece of the sensor a mode reads.',
  equation: 'w = n · b · a',
  takes: {
    pixelCount: { title: 'Pixels across the picture', as: 'count' },
    pixelPitch_m: PITCH,
    binningCount: BINNING,
  },
  gives: { windowWidth_m: 'Width on the sensor' },
  example: { pixelCount: 1280, pixelPitch_m: 1e-5, binningCount: 1 },
  ...COMMON,
});

export const windowDiagonal = law(windowDiagonal_m, {
  id: 'window-diagonal',
  title: 'Diagonal of a sensor window',
  says: 'The diagonal of the piece of the sensor that a mode reads, which the lens must cover.',
  equation: 'd = b · a · √(nw² + nh²)',
  takes: {
    widthCount: { title: 'Pixels across the picture', as: 'count' },
    heightCount: { title: 'Pixels down the picture', as: 'count' },
    pixelPitch_m: PITCH,
    binningCount: BINNING,
  },
  gives: { diagonal_m: 'Diagonal on the sensor' },
  example: { widthCount: 2560, heightCount: 1600, pixelPitch_m: 1e-5, binningCount: 1 },
  ...COMMON,
});

export const imageCircleNeeded = law(imageCircleNeeded_m, {
  id: 'image-circle-needed',
  title: 'Image circle a window needs',
  says: 'The image circle a lens must be marked with to cover a window; tubes and bellows make its circle grow.',
  equation: 'Ø = d / (1 + m/p)',
  takes: {
    diagonal_m: 'Diagonal of the window',
    magnificationRatio: {
      ...MAGNIFICATION,
      default: 0,
      note: 'only as far as it comes from moving the whole lens; 0 for lenses that focus inside, or in doubt',
    },
    pupilMagnificationRatio: PUPIL_MAGNIFICATION,
  },
  gives: { imageCircle_m: 'Image circle for distant focus' },
  holds:
    'A lens moved out as a whole, whose cone of light keeps its angle. At magnification 0, the whole diagonal, for any lens. Shifts and tilts need more.',
  sources: ['image-circle-close', 'dof-derivation'],
  words: ['coverage', 'vignetting', 'image circle', 'format'],
  example: { diagonal_m: 0.0302, magnificationRatio: 0.5 },
});
