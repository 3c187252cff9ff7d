/**
 * Close-ups: the light lost to a lens racked out, and the stop that is left of the marked one.
 *
 *     B = (1 + m/p)²        Nw = N · (1 + m/p)
 *
 * B exposure factor            m magnification, image over subject        p pupil magnification, exit over entrance
 * N stop marked at infinity    Nw effective stop
 *
 * Holds for a lens focused by moving whole, tubes and bellows included. A lens that shortens its focal length to focus
 * close, or whose iris makes up for extension, loses less: where its marks already allow for it, pass m = 0.
 * p is 1 for a symmetric lens, above 1 for a wide lens of reversed telephoto build, below 1 for a telephoto.
 *
 * @source army-copy-course the factor for p = 1, worked
 * @source pupil-thread the form with pupils of unequal size
 */
import { requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

export interface CloseUp {
  /** Size of the image over size of the subject. */
  readonly magnificationRatio: number;
  /** Diameter of the exit pupil over that of the entrance pupil. */
  readonly pupilMagnificationRatio?: number;
}

function extension({ magnificationRatio, pupilMagnificationRatio = 1 }: CloseUp): number {
  requireNotNegative({ magnificationRatio });
  requirePositive({ pupilMagnificationRatio });
  return 1 + magnificationRatio / pupilMagnificationRatio;
}

/** By how much the light must be multiplied to make up for extension. Throws RangeError outside its domain. */
export function extensionFactor(closeUp: CloseUp): number {
  return extension(closeUp) ** 2;
}

/** The stop that governs exposure at this magnification. Throws RangeError outside its domain. */
export function effectiveStop({ stop, ...closeUp }: CloseUp & { readonly stop: number }): number {
  requirePositive({ stop });
  return stop * extension(closeUp);
}

const TAKES = {
  magnificationRatio: { title: 'Magnification', as: 'ratio', note: 'size on the sensor over size on the table' },
  pupilMagnificationRatio: {
    title: 'Pupil magnification',
    as: 'ratio',
    default: 1,
    note: 'exit pupil over entrance pupil, as seen from either end',
  },
} as const;

const COMMON = {
  holds:
    'A lens that focuses by moving whole, tubes and bellows included. Where its marks allow for extension, use 0 for magnification.',
  sources: ['army-copy-course', 'close-up-textbook', 'pupil-thread'],
  words: ['macro', 'bellows', 'extension tube', 'close-up', 'probe'],
};

export const closeUpFactor = law(extensionFactor, {
  id: 'close-up-factor',
  title: 'Light a close-up asks for',
  says: 'By how much the light must be multiplied because the lens is racked out.',
  equation: 'B = (1 + m/p)²',
  takes: TAKES,
  gives: { factor: { title: 'Exposure factor', as: 'ratio' } },
  example: { magnificationRatio: 0.5, pupilMagnificationRatio: 1 },
  ...COMMON,
});

export const closeUpStop = law(effectiveStop, {
  id: 'effective-stop',
  title: 'Stop that is left in a close-up',
  says: 'The stop that the sensor sees when the lens is racked out.',
  equation: 'Nw = N · (1 + m/p)',
  takes: { stop: { title: 'Marked stop', as: 'tStop' }, ...TAKES },
  gives: { effectiveStop: { title: 'Effective stop', as: 'tStop' } },
  example: { stop: 8, magnificationRatio: 1, pupilMagnificationRatio: 1 },
  ...COMMON,
});
