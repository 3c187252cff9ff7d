/**
 * Depth of field of a thin lens at any magnification and with any pupils, in one exact form.
 *
 *     s = f · (1/m + 1/p)      k = N · c / (m · f)
 *     near = s · k/(1 + k)     far = s · k/(1 − k)     total = 2 · s · k/(1 − k²) = 2 · N · c · (1 + m/p) / (m² · (1 − k²))
 *
 * s subject to entrance pupil, m          f focal length       m magnification    p pupil magnification
 * near, far the sharp depth before and behind the subject, m   N f-number         c circle of confusion, m
 * k the circle of confusion as it lies in the plane of focus, c/m, over the entrance pupil, f/N
 *
 * A cone from the pupil to a point at distance t cuts the plane of focus in a disc (f/N) · |t − s|/t, which the lens
 * draws m times as large; it is c at t = s/(1 ± k). From k = 1 on, the far side is sharp to infinity.
 * Two published forms are its limits. Small k leaves the macro form 2·N·c·(1 + m/p)/m². With p = 1, s is the distance
 * from the principal plane, k = (s − f)/(H − f) with the hyperfocal distance H = f²/(N·c) + f, and the limits lie at
 * s·(H − f)/(H + s − 2·f) and s·(H − f)/(H − s). Focused at H from the front principal plane, k is 1 for every p.
 *
 * N is the f-number for distant focus and c a choice. Holds for a lens that focuses by moving as a whole; blur of
 * defocus alone, without diffraction or aberration. Depth follows the f-number; only exposure follows the T-stop.
 *
 * @source dof-derivation the pupils' places and the exact limits for an asymmetrical lens
 * @source lens-tutorial the blur of a point out of focus, and N · (1 + m/p)
 * @source hyperfocal-algebra H = f²/(N·c) + f
 * @source macro-depth-table the macro form, tabulated for p = 1
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import {
  CIRCLE_OF_CONFUSION,
  F_NUMBER,
  FOCAL_LENGTH,
  MAGNIFICATION,
  PUPIL_MAGNIFICATION,
  SYMMETRIC_PUPIL_RATIO,
} from './given.ts';

interface FocusedLens {
  readonly focalLength_mm: number;
  readonly magnificationRatio: number;
  readonly pupilMagnificationRatio?: number;
  readonly circleOfConfusion_m: number;
}

export interface DepthSetting extends FocusedLens {
  readonly fNumber: number;
}

/** Subject to entrance pupil. */
function pupilDistance_m(lens: FocusedLens): number {
  const { focalLength_mm, magnificationRatio, pupilMagnificationRatio = SYMMETRIC_PUPIL_RATIO } = lens;
  requirePositive({ focalLength_mm, magnificationRatio, pupilMagnificationRatio });
  return (focalLength_mm / 1000) * (1 / magnificationRatio + 1 / pupilMagnificationRatio);
}

/** k of the head of this file. */
function pupilShare(setting: DepthSetting): number {
  const { focalLength_mm, magnificationRatio, fNumber, circleOfConfusion_m } = setting;
  requirePositive({ fNumber, circleOfConfusion_m });
  return (fNumber * circleOfConfusion_m) / (magnificationRatio * (focalLength_mm / 1000));
}

/**
 * Focused here, measured from the front principal plane, the lens is sharp to infinity. Throws RangeError outside
 * positive inputs.
 */
export function hyperfocal_m(given: {
  readonly focalLength_mm: number;
  readonly fNumber: number;
  readonly circleOfConfusion_m: number;
}): number {
  const { focalLength_mm, fNumber, circleOfConfusion_m } = given;
  requirePositive({ focalLength_mm, fNumber, circleOfConfusion_m });
  const focalLength_m = focalLength_mm / 1000;
  return focalLength_m ** 2 / (fNumber * circleOfConfusion_m) + focalLength_m;
}

/** Sharp depth in front of the subject. Throws RangeError outside positive inputs. */
export function depthNear_m(setting: DepthSetting): number {
  const distance_m = pupilDistance_m(setting);
  const share = pupilShare(setting);
  return (distance_m * share) / (1 + share);
}

/** Sharp depth behind the subject; Infinity from the hyperfocal distance on. Throws RangeError outside positive inputs. */
export function depthFar_m(setting: DepthSetting): number {
  const distance_m = pupilDistance_m(setting);
  const share = pupilShare(setting);
  return share >= 1 ? Infinity : (distance_m * share) / (1 - share);
}

/** Sharp depth in all; Infinity from the hyperfocal distance on. Throws RangeError outside positive inputs. */
export function depthOfField_m(setting: DepthSetting): number {
  const distance_m = pupilDistance_m(setting);
  const share = pupilShare(setting);
  return share >= 1 ? Infinity : (2 * distance_m * share) / ((1 - share) * (1 + share));
}

/** Sharp depth in all by the macro form, which leaves out the factor 1/(1 − k²). Throws RangeError outside positive inputs. */
export function macroDepthOfField_m(setting: Omit<DepthSetting, 'focalLength_mm'>): number {
  const { magnificationRatio, pupilMagnificationRatio = SYMMETRIC_PUPIL_RATIO, fNumber, circleOfConfusion_m } = setting;
  requirePositive({ magnificationRatio, pupilMagnificationRatio, fNumber, circleOfConfusion_m });
  return (
    (2 * fNumber * circleOfConfusion_m * (1 + magnificationRatio / pupilMagnificationRatio)) / magnificationRatio ** 2
  );
}

/**
 * The smallest f-number that holds a wanted depth W, from the positive root of W·k² + 2·s·k − W = 0. Throws RangeError
 * outside positive, finite inputs.
 */
export function fNumberForDepth(setting: FocusedLens & { readonly depthWanted_m: number }): number {
  const { depthWanted_m, focalLength_mm, magnificationRatio, circleOfConfusion_m } = setting;
  requirePositive({ depthWanted_m, circleOfConfusion_m });
  const distance_m = pupilDistance_m(setting);
  const share = depthWanted_m / (distance_m + Math.hypot(distance_m, depthWanted_m));
  return (share * magnificationRatio * (focalLength_mm / 1000)) / circleOfConfusion_m;
}

const LENS = {
  focalLength_mm: FOCAL_LENGTH,
  magnificationRatio: MAGNIFICATION,
  pupilMagnificationRatio: PUPIL_MAGNIFICATION,
  circleOfConfusion_m: CIRCLE_OF_CONFUSION,
} as const;

const COMMON = {
  holds:
    'A lens that focuses by moving as a whole; blur of defocus alone, without diffraction. Exact for any magnification; the subject plane is where the lens is focused.',
  sources: ['dof-derivation', 'lens-tutorial'],
  words: ['depth of field', 'DoF', 'focus', 'sharp', 'macro'],
};

const EXAMPLE = {
  focalLength_mm: 100,
  magnificationRatio: 0.25,
  pupilMagnificationRatio: 0.9,
  fNumber: 8,
  circleOfConfusion_m: 2e-5,
};

export const hyperfocal = law(hyperfocal_m, {
  id: 'hyperfocal-distance',
  title: 'Hyperfocal distance',
  says: 'The nearest focus at which the far background is still sharp.',
  equation: 'H = f² / (N · c) + f',
  takes: { focalLength_mm: FOCAL_LENGTH, fNumber: F_NUMBER, circleOfConfusion_m: CIRCLE_OF_CONFUSION },
  gives: { hyperfocal_m: 'Hyperfocal distance, from the front principal plane' },
  holds: 'Defocus alone, without diffraction. Handbooks often leave the last f out: one focal length less.',
  sources: ['hyperfocal-algebra', 'hyperfocal-page'],
  words: ['depth of field', 'infinity', 'background'],
  example: { focalLength_mm: 35, fNumber: 11, circleOfConfusion_m: 2.5e-5 },
});

export const depthNear = law(depthNear_m, {
  id: 'depth-near',
  title: 'Sharp depth in front',
  says: 'How far in front of the subject things still look sharp.',
  equation: 'near = s · k/(1 + k), s = f · (1/m + 1/p), k = N · c / (m · f)',
  takes: { ...LENS, fNumber: F_NUMBER },
  gives: { depthNear_m: 'Sharp depth in front of the subject' },
  example: EXAMPLE,
  ...COMMON,
});

export const depthFar = law(depthFar_m, {
  id: 'depth-far',
  title: 'Sharp depth behind',
  says: 'How far behind the subject things still look sharp; without end from the hyperfocal distance on.',
  equation: 'far = s · k/(1 − k), s = f · (1/m + 1/p), k = N · c / (m · f)',
  takes: { ...LENS, fNumber: F_NUMBER },
  gives: { depthFar_m: 'Sharp depth behind the subject' },
  example: EXAMPLE,
  ...COMMON,
});

export const depthOfField = law(depthOfField_m, {
  id: 'depth-of-field',
  title: 'Depth of field',
  says: 'How deep a slice of the set looks sharp, front to back; without end from the hyperfocal distance on.',
  equation: 'depth = 2 · N · c · (1 + m/p) / (m² · (1 − k²)), k = N · c / (m · f)',
  takes: { ...LENS, fNumber: F_NUMBER },
  gives: { depth_m: 'Sharp depth in all' },
  example: EXAMPLE,
  ...COMMON,
});

export const macroDepthOfField = law(macroDepthOfField_m, {
  id: 'macro-depth-of-field',
  title: 'Depth of field, macro form',
  says: 'How deep a slice looks sharp close up, where the focal length no longer matters.',
  equation: 'depth = 2 · N · c · (1 + m/p) / m²',
  takes: {
    magnificationRatio: MAGNIFICATION,
    pupilMagnificationRatio: PUPIL_MAGNIFICATION,
    fNumber: F_NUMBER,
    circleOfConfusion_m: CIRCLE_OF_CONFUSION,
  },
  gives: { depth_m: 'Sharp depth in all' },
  holds:
    'Close up: it falls short of the exact depth by the share (N · c / (m · f))². Defocus alone, without diffraction.',
  sources: ['macro-depth-table', 'macro-depth-forum', 'dof-derivation'],
  words: ['depth of field', 'DoF', 'macro', 'close-up'],
  example: { magnificationRatio: 1.5, pupilMagnificationRatio: 0.7, fNumber: 8, circleOfConfusion_m: 2e-5 },
});

export const fNumberForDepthWanted = law(fNumberForDepth, {
  id: 'stop-for-depth',
  title: 'Stop a depth needs',
  says: 'The widest f-number that keeps a wanted depth sharp.',
  equation: 'N = k · m · f / c, k = W / (s + √(s² + W²)), s = f · (1/m + 1/p)',
  takes: { depthWanted_m: 'Depth wanted, front to back', ...LENS },
  gives: { fNumber: { title: 'Smallest f-number', as: 'fStop' } },
  example: {
    depthWanted_m: 0.012,
    focalLength_mm: 100,
    magnificationRatio: 0.25,
    pupilMagnificationRatio: 0.9,
    circleOfConfusion_m: 2e-5,
  },
  ...COMMON,
});
