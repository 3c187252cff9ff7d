/**
 * Where subject, lens and sensor stand for a magnification: the thin lens, written in the magnification.
 *
 *     u = f · (1 + 1/m)      v = f · (1 + m)      D = u + v = f · (2 + m + 1/m)      e = f · m
 *
 * m magnification, image over subject        f focal length
 * u subject to front principal plane, m      v rear principal plane to sensor, m
 * D sensor to subject, m                     e extension beyond distant focus, m
 *
 * Holds for a lens that focuses by moving as a whole. The hiatus, the gap between the two principal planes, is left
 * out: for a real lens it adds (or, where the planes are crossed, takes away) some millimetres of D. A lens that
 * focuses inside shortens its focal length as it comes close, and may reach nearer than four focal lengths.
 *
 * @source thin-lens-bellows the equations, with worked examples
 * @source four-focal-lengths no real image is formed nearer than D = 4f, where m = 1
 * @source extension-tubes m = e/f, with worked examples
 */
import { requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { FOCAL_LENGTH, MAGNIFICATION } from './given.ts';

export interface FocusSetting {
  readonly focalLength_mm: number;
  readonly magnificationRatio: number;
}

/** Image size over subject size. Throws RangeError outside positive inputs. */
export function magnification(given: { readonly subjectWidth_m: number; readonly imageWidth_m: number }): number {
  const { subjectWidth_m, imageWidth_m } = given;
  requirePositive({ subjectWidth_m, imageWidth_m });
  return imageWidth_m / subjectWidth_m;
}

/** Subject to the front principal plane. Throws RangeError outside positive inputs. */
export function objectDistance_m({ focalLength_mm, magnificationRatio }: FocusSetting): number {
  requirePositive({ focalLength_mm, magnificationRatio });
  return (focalLength_mm / 1000) * (1 + 1 / magnificationRatio);
}

/** Rear principal plane to the sensor; the focal length at magnification 0. Throws RangeError below magnification 0. */
export function imageDistance_m({ focalLength_mm, magnificationRatio }: FocusSetting): number {
  requirePositive({ focalLength_mm });
  requireNotNegative({ magnificationRatio });
  return (focalLength_mm / 1000) * (1 + magnificationRatio);
}

/** Sensor to subject, without the lens's hiatus. Throws RangeError outside positive inputs. */
export function sensorToSubject_m(setting: FocusSetting): number {
  return objectDistance_m(setting) + imageDistance_m(setting);
}

/** How far the whole lens moves out from distant focus. Throws RangeError below magnification 0. */
export function extensionNeeded_m({ focalLength_mm, magnificationRatio }: FocusSetting): number {
  requirePositive({ focalLength_mm });
  requireNotNegative({ magnificationRatio });
  return (focalLength_mm / 1000) * magnificationRatio;
}

/** The root of m² − (D/f − 2)·m + 1 = 0 with m at most 1; `name` is the distance as the caller knows it. */
function smallerMagnification(focalLength_mm: number, distance_m: number, name: string): number {
  const focalLength_m = focalLength_mm / 1000;
  const sum = distance_m / focalLength_m - 2;
  // At D = 4f rounding may leave the sum a hair below 2, and that point belongs to the domain.
  if (sum < 2 * (1 - 1e-12))
    throw new RangeError(`${name} must be at least four focal lengths, ${4 * focalLength_m} m, got ${distance_m}`);
  return 2 / (sum + Math.sqrt(Math.max(0, sum ** 2 - 4)));
}

/**
 * The magnification, at most 1, of a subject this far from the sensor; the other root is its reciprocal, with lens
 * and subject changed about. Throws RangeError where the distance is below four focal lengths.
 */
export function magnificationAtDistance(given: {
  readonly focalLength_mm: number;
  readonly sensorToSubject_m: number;
}): number {
  const { focalLength_mm, sensorToSubject_m: distance_m } = given;
  requirePositive({ focalLength_mm, sensorToSubject_m: distance_m });
  return smallerMagnification(focalLength_mm, distance_m, 'sensorToSubject_m');
}

/**
 * The lens's own greatest extension, from the closest distance it focuses to, measured from the sensor as lenses are
 * marked. Throws RangeError where that is below four focal lengths: such a lens focuses inside.
 */
export function lensExtension_m(given: { readonly focalLength_mm: number; readonly closeFocus_m: number }): number {
  const { focalLength_mm, closeFocus_m } = given;
  requirePositive({ focalLength_mm, closeFocus_m });
  return (focalLength_mm / 1000) * smallerMagnification(focalLength_mm, closeFocus_m, 'closeFocus_m');
}

const HOLDS =
  'A lens that focuses by moving as a whole; the gap between its principal planes (hiatus) is left out. Lenses that focus inside reach nearer than this.';

export const magnificationOfFrame = law(magnification, {
  id: 'magnification',
  title: 'Magnification of a frame',
  says: 'How large the subject is drawn on the sensor, from the width to be seen and the width of the sensor.',
  equation: 'm = w / W',
  takes: { subjectWidth_m: 'Width of the subject that is seen', imageWidth_m: 'Width of the picture on the sensor' },
  gives: { magnificationRatio: { title: 'Magnification', as: 'ratio' } },
  holds: 'A flat field square to the lens.',
  sources: ['magnification-tables'],
  words: ['macro', '1:1', 'life size', 'reproduction ratio', 'frame width'],
  example: { subjectWidth_m: 0.12, imageWidth_m: 0.0256 },
});

export const objectDistance = law(objectDistance_m, {
  id: 'object-distance',
  title: 'Subject distance for a magnification',
  says: "How far the subject stands from the lens's front principal plane.",
  equation: 'u = f · (1 + 1/m)',
  takes: { focalLength_mm: FOCAL_LENGTH, magnificationRatio: MAGNIFICATION },
  gives: { objectDistance_m: 'Subject to front principal plane' },
  holds: HOLDS,
  sources: ['thin-lens-bellows'],
  words: ['focus distance', 'working distance', 'thin lens'],
  example: { focalLength_mm: 100, magnificationRatio: 0.5 },
});

export const imageDistance = law(imageDistance_m, {
  id: 'image-distance',
  title: 'Image distance for a magnification',
  says: "How far the sensor stands behind the lens's rear principal plane.",
  equation: 'v = f · (1 + m)',
  takes: { focalLength_mm: FOCAL_LENGTH, magnificationRatio: MAGNIFICATION },
  gives: { imageDistance_m: 'Rear principal plane to sensor' },
  holds: HOLDS,
  sources: ['thin-lens-bellows'],
  words: ['bellows draw', 'bellows extension', 'thin lens'],
  example: { focalLength_mm: 210, magnificationRatio: 0.4 },
});

export const sensorToSubject = law(sensorToSubject_m, {
  id: 'sensor-to-subject',
  title: 'Sensor to subject for a magnification',
  says: 'How far the subject stands from the sensor, the distance that focus scales are marked in.',
  equation: 'D = f · (2 + m + 1/m)',
  takes: { focalLength_mm: FOCAL_LENGTH, magnificationRatio: MAGNIFICATION },
  gives: { sensorToSubject_m: 'Sensor to subject' },
  holds: HOLDS,
  sources: ['thin-lens-bellows', 'four-focal-lengths'],
  words: ['focus distance', 'film plane', 'tape measure', 'camera distance'],
  example: { focalLength_mm: 100, magnificationRatio: 0.25 },
});

export const extensionNeeded = law(extensionNeeded_m, {
  id: 'extension-needed',
  title: 'Extension for a magnification',
  says: 'How far a lens must stand out from its place for distant focus, by its own mount and by tubes together.',
  equation: 'e = f · m',
  takes: { focalLength_mm: FOCAL_LENGTH, magnificationRatio: MAGNIFICATION },
  gives: { extension_m: 'Extension' },
  holds: HOLDS,
  sources: ['extension-tubes'],
  words: ['extension tube', 'bellows', 'macro', 'rings'],
  example: { focalLength_mm: 85, magnificationRatio: 0.6 },
});

export const magnificationReached = law(magnificationAtDistance, {
  id: 'magnification-at-distance',
  title: 'Magnification at a distance',
  says: 'How large a subject is drawn from a given distance, sensor to subject.',
  equation: 'm² − (D/f − 2) · m + 1 = 0, the smaller root',
  takes: { focalLength_mm: FOCAL_LENGTH, sensorToSubject_m: 'Sensor to subject' },
  gives: { magnificationRatio: { title: 'Magnification', as: 'ratio' } },
  holds: `From four focal lengths on. ${HOLDS}`,
  sources: ['thin-lens-bellows', 'four-focal-lengths'],
  words: ['close focus', 'macro', 'reproduction ratio'],
  example: { focalLength_mm: 50, sensorToSubject_m: 0.45 },
});

export const lensExtension = law(lensExtension_m, {
  id: 'lens-extension',
  title: "Lens's own extension",
  says: 'The most a lens moves out by its own focus ring, from its closest marked distance; tubes add to it.',
  equation: 'e = f · m, with m from the closest distance',
  takes: {
    focalLength_mm: FOCAL_LENGTH,
    closeFocus_m: { title: 'Closest focus', note: 'from the sensor, as marked on the lens' },
  },
  gives: { extension_m: 'Extension of the lens itself' },
  holds: `From four focal lengths on. ${HOLDS}`,
  sources: ['thin-lens-bellows', 'extension-tubes'],
  words: ['close focus', 'minimum focus', 'MFD', 'MOD', 'focus throw'],
  example: { focalLength_mm: 50, closeFocus_m: 0.45 },
});
