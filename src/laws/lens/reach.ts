/**
 * How much of the set a crop shows.
 *
 *     Wc = W · w / nw
 *
 * Wc width of the field that the crop shows, m      W width of the field that the whole picture shows, m
 * w width of the crop, pixels                       nw pixels across the captured picture
 *
 * Holds at the plane of focus, for a lens without distortion.
 *
 * @source magnification-tables sensor width over field width is one number across the picture
 */
import { requireCount, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

/** Width of the field that a crop shows. Throws RangeError unless the crop lies within the captured picture. */
export function fieldAtCrop_m(given: {
  readonly fieldWidth_m: number;
  readonly cropWidth_px: number;
  readonly widthCount: number;
}): number {
  const { fieldWidth_m, cropWidth_px, widthCount } = given;
  requirePositive({ fieldWidth_m, cropWidth_px });
  requireCount({ widthCount }, 1);
  if (cropWidth_px > widthCount)
    throw new RangeError(`cropWidth_px must be at most widthCount, ${widthCount}, got ${cropWidth_px}`);
  return (fieldWidth_m * cropWidth_px) / widthCount;
}

export const fieldAtCrop = law(fieldAtCrop_m, {
  id: 'field-at-crop',
  title: 'Field a crop shows',
  says: 'How wide a piece of the set a delivery crop shows, to hold against how far the action reaches.',
  equation: 'Wc = W · w / nw',
  takes: {
    fieldWidth_m: 'Width the whole picture sees',
    cropWidth_px: 'Width of the crop',
    widthCount: { title: 'Pixels across the captured picture', as: 'count' },
  },
  gives: { fieldWidth_m: 'Width the crop sees' },
  holds: 'At the plane of focus, for a lens without distortion. Give heights to get a height.',
  sources: ['magnification-tables'],
  words: ['reach', 'in the picture', 'safe', 'framing', 'vertical'],
  example: { fieldWidth_m: 0.24, cropWidth_px: 648, widthCount: 2048 },
});
