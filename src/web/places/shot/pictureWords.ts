/** The picture and the side view in words: for whoever hears them, and for the figures on the drawings. */
import { showNumber, showQuantity, type Shown, type UnitSystem } from '../../../base/quantity.ts';
import type { Picture } from '../../../plan/types.ts';
import { said } from '../../../turnover/words.ts';
import { standingsOf, type CropStanding } from './frameLayout.ts';
import type { SideFigures } from './sideLayout.ts';

/** Less than this is told in parts of a millimetre: nobody frames in micrometres. */
const SMALL_m = 1e-3;

const show = (length_m: number, system: UnitSystem): Shown =>
  system === 'metric' && length_m < SMALL_m
    ? { number: showNumber(length_m * 1000, 2), unit: 'mm' }
    : showQuantity('length', length_m, { digits: 3, system });

export const lengthWords = (length_m: number, system: UnitSystem): string => said(show(length_m, system));

/** "142 × 80 mm": one unit for both where they share it. */
export function sizeWords(width_m: number, height_m: number, system: UnitSystem): string {
  const [width, height] = [show(width_m, system), show(height_m, system)];
  return width.unit === height.unit ? `${width.number} × ${said(height)}` : `${said(width)} × ${said(height)}`;
}

/** What is left on one side: "11 mm", or less than nothing where it is cut. */
export function leftWords(left_m: number | undefined, system: UnitSystem): string {
  if (left_m === undefined) return '';
  return left_m < 0 ? `−${lengthWords(-left_m, system)}` : lengthWords(left_m, system);
}

const STATES: Readonly<Record<CropStanding['state'], string>> = {
  cut: 'cuts the action',
  'over-safe': 'holds the action, past what is sure to be seen',
  whole: 'holds the whole action',
  unknown: 'shown without the action, which has no reach yet',
};

/** The frame drawing in a sentence for each crop. */
export function sayFrame(picture: Picture, system: UnitSystem): string {
  const { fieldWidth_m, fieldHeight_m, reachWidth_m, reachHeight_m } = picture;
  const reach = [
    reachWidth_m === undefined ? [] : `${lengthWords(reachWidth_m, system)} across`,
    reachHeight_m === undefined ? [] : `${lengthWords(reachHeight_m, system)} up and down`,
  ].flat();
  return [
    `The recorded picture shows ${sizeWords(fieldWidth_m, fieldHeight_m, system)}.`,
    ...(reach.length === 0 ? [] : [`The action reaches ${reach.join(' and ')}.`]),
    ...standingsOf(picture).map(
      ({ crop, state }) => `${crop.title}, ${sizeWords(crop.width_m, crop.height_m, system)}, ${STATES[state]}.`,
    ),
  ].join(' ');
}

/** How deep it is sharp: "3.08 mm, 1.52 mm before the subject and 1.56 mm behind". */
export function sharpWords({ sharpNear_m, sharpFar_m }: SideFigures, system: UnitSystem): string | undefined {
  if (sharpNear_m === undefined) return undefined;
  const near = lengthWords(sharpNear_m, system);
  if (sharpFar_m === undefined) return `from ${near} before the subject on, without end`;
  return `${lengthWords(sharpNear_m + sharpFar_m, system)}, ${near} before the subject and ${lengthWords(sharpFar_m, system)} behind`;
}

/** The side drawing in sentences. */
export function saySide(figures: SideFigures, system: UnitSystem): string {
  const { workingDistance_m, clearanceWanted_m, reachTowardsLens_m, depthWanted_m } = figures;
  const sharp = sharpWords(figures, system);
  return [
    `From the side: the front of the lens stands ${lengthWords(workingDistance_m, system)} from the subject.`,
    ...(clearanceWanted_m === undefined ? [] : [`${lengthWords(clearanceWanted_m, system)} is to stay clear.`]),
    ...(reachTowardsLens_m === undefined ? [] : [`The action flies ${lengthWords(reachTowardsLens_m, system)} towards the lens.`]),
    ...(sharp === undefined ? [] : [`Sharp: ${sharp}${depthWanted_m === undefined ? '' : `; ${lengthWords(depthWanted_m, system)} is asked for`}.`]),
  ].join(' ');
} // prettier-ignore
