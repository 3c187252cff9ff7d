/**
 * What a lens sees: the width of the subject plane that fills the picture, and the angle it comes from.
 *
 *     W = w · (u − f) / f = w / m          θ = 2 · atan( w / (2 · f · (1 + m/p)) )
 *
 * W width seen at the subject, m      w width of the picture on the sensor, m
 * u subject to front principal plane  f focal length
 * m magnification                     p pupil magnification
 * θ angle at the entrance pupil, degrees
 *
 * Holds for a lens that draws straight lines straight and focuses by moving as a whole. With p = 1 the angle is
 * 2 · atan(w / 2v), v = f · (1 + m); at m = 0 it is the angle lenses are sold by, whatever the pupils.
 *
 * @source thin-lens-bellows the magnification f/(u − f)
 * @source field-angle-note the angle with its factor 1 + m, for p = 1
 * @source dof-derivation where the pupils stand for other p
 */
import { requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { FOCAL_LENGTH, MAGNIFICATION, PUPIL_MAGNIFICATION, SYMMETRIC_PUPIL_RATIO } from './given.ts';

export interface FieldSetting {
  readonly focalLength_mm: number;
  readonly objectDistance_m: number;
  readonly imageWidth_m: number;
}

/** Width of the subject plane that fills the picture. Throws RangeError unless the subject is beyond the focal length. */
export function fieldWidth_m({ focalLength_mm, objectDistance_m, imageWidth_m }: FieldSetting): number {
  requirePositive({ focalLength_mm, objectDistance_m, imageWidth_m });
  const focalLength_m = focalLength_mm / 1000;
  if (objectDistance_m <= focalLength_m)
    throw new RangeError(
      `objectDistance_m must be above the focal length, ${focalLength_m} m, got ${objectDistance_m}`,
    );
  return (imageWidth_m * (objectDistance_m - focalLength_m)) / focalLength_m;
}

export interface AngleSetting {
  readonly focalLength_mm: number;
  readonly imageWidth_m: number;
  readonly magnificationRatio?: number;
  readonly pupilMagnificationRatio?: number;
}

/** The angle, at the entrance pupil, that fills the picture. Throws RangeError outside positive inputs, or m below 0. */
export function angleOfView_deg(setting: AngleSetting): number {
  const { focalLength_mm, imageWidth_m } = setting;
  const { magnificationRatio = 0, pupilMagnificationRatio = SYMMETRIC_PUPIL_RATIO } = setting;
  requirePositive({ focalLength_mm, imageWidth_m, pupilMagnificationRatio });
  requireNotNegative({ magnificationRatio });
  const reach_m = (focalLength_mm / 1000) * (1 + magnificationRatio / pupilMagnificationRatio);
  return (2 * Math.atan(imageWidth_m / (2 * reach_m)) * 180) / Math.PI;
}

export const fieldWidth = law(fieldWidth_m, {
  id: 'field-width',
  title: 'Width a lens sees',
  says: 'How wide a piece of the table fills the picture from a given distance.',
  equation: 'W = w · (u − f) / f',
  takes: {
    focalLength_mm: FOCAL_LENGTH,
    objectDistance_m: 'Subject to front principal plane',
    imageWidth_m: 'Width of the picture on the sensor',
  },
  gives: { fieldWidth_m: 'Width seen at the subject' },
  holds: 'A subject beyond the focal length, a lens without distortion. Give a height or a diagonal to get the same.',
  sources: ['thin-lens-bellows'],
  words: ['field of view', 'frame width', 'coverage', 'how wide'],
  example: { focalLength_mm: 100, objectDistance_m: 0.6, imageWidth_m: 0.0256 },
});

export const angleOfView = law(angleOfView_deg, {
  id: 'angle-of-view',
  title: 'Angle of view',
  says: 'The angle a lens takes in across the picture; it narrows as the lens is moved out to focus close.',
  equation: 'θ = 2 · atan( w / (2 · f · (1 + m/p)) )',
  takes: {
    focalLength_mm: FOCAL_LENGTH,
    imageWidth_m: 'Width of the picture on the sensor',
    magnificationRatio: { ...MAGNIFICATION, default: 0, note: '0 for a distant subject, as lenses are sold by' },
    pupilMagnificationRatio: PUPIL_MAGNIFICATION,
  },
  gives: { angle_deg: 'Angle of view' },
  holds: 'A lens without distortion that focuses by moving as a whole; the angle is the one at the entrance pupil.',
  sources: ['field-angle-note', 'angle-of-view-page', 'dof-derivation'],
  words: ['field of view', 'FOV', 'wide', 'tele'],
  example: { focalLength_mm: 50, imageWidth_m: 0.0256 },
});
