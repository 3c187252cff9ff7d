/**
 * The crop a delivery takes out of the captured picture, and how much it is then enlarged.
 *
 *     w = min(nw, nh · A) · (1 − r)      h = min(nh, nw / A) · (1 − r)      g = W / w
 *
 * w, h crop, pixels          nw, nh captured picture, pixels      A width over height of the delivery
 * r share of the crop's width and height held back for repositioning
 * g enlargement: above 1 pixels are made up      W width of the delivery, pixels
 *
 * Square pixels. The crop is the exact figure; what is set in the edit is rounded to even pixels.
 *
 * @source cinema-containers frame sizes that are the largest of their shape in a container
 */
import { requireCount, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

export interface CropSetting {
  readonly widthCount: number;
  readonly heightCount: number;
  readonly aspectRatio: number;
  readonly reframeFraction?: number;
}

function keptFraction(setting: CropSetting): number {
  const { widthCount, heightCount, aspectRatio, reframeFraction = 0 } = setting;
  requireCount({ widthCount, heightCount }, 1);
  requirePositive({ aspectRatio });
  if (!(reframeFraction >= 0 && reframeFraction < 1))
    throw new RangeError(`reframeFraction must be from 0 to below 1, got ${reframeFraction}`);
  return 1 - reframeFraction;
}

/**
 * Width of the largest crop of a shape, less the share held back. Throws RangeError unless the counts are whole, the
 * aspect positive and the share from 0 to below 1.
 */
export function cropWidth_px(setting: CropSetting): number {
  const { widthCount, heightCount, aspectRatio } = setting;
  return keptFraction(setting) * Math.min(widthCount, heightCount * aspectRatio);
}

/** Height of the same crop. Throws RangeError as `cropWidth_px`. */
export function cropHeight_px(setting: CropSetting): number {
  const { widthCount, heightCount, aspectRatio } = setting;
  return keptFraction(setting) * Math.min(heightCount, widthCount / aspectRatio);
}

/** Pixels in the same crop, width times height. Throws RangeError as `cropWidth_px`. */
export function cropPixels(setting: CropSetting): number {
  return cropWidth_px(setting) * cropHeight_px(setting);
}

/** Delivered pixels over captured ones, along the width; above 1, pixels are made up. Throws RangeError outside positive inputs. */
export function enlargementRatio(given: { readonly deliveredWidth_px: number; readonly cropWidth_px: number }): number {
  const { deliveredWidth_px, cropWidth_px: width_px } = given;
  requirePositive({ deliveredWidth_px, cropWidth_px: width_px });
  return deliveredWidth_px / width_px;
}

const TAKES = {
  widthCount: { title: 'Pixels across the captured picture', as: 'count' },
  heightCount: { title: 'Pixels down the captured picture', as: 'count' },
  aspectRatio: { title: 'Shape of the delivery', as: 'ratio', note: 'width over height: 1.778, 1, 0.5625' },
  reframeFraction: {
    title: 'Held back for repositioning',
    as: 'fraction',
    default: 0,
    note: "share of the crop's width and height",
  },
} as const;

const COMMON = {
  takes: TAKES,
  holds: 'Square pixels, no rounding to even numbers.',
  sources: ['cinema-containers'],
  words: ['crop', 'aspect ratio', 'vertical', 'reframe', 'punch in', 'extraction'],
  example: { widthCount: 2048, heightCount: 1152, aspectRatio: 0.5625, reframeFraction: 0.1 },
};

export const cropWidth = law(cropWidth_px, {
  id: 'crop-width',
  title: 'Width of a delivery crop',
  says: 'How many captured pixels wide the widest crop of a shape is, less what is kept for repositioning.',
  equation: 'w = min(nw, nh · A) · (1 − r)',
  gives: { cropWidth_px: 'Width of the crop' },
  ...COMMON,
});

export const cropHeight = law(cropHeight_px, {
  id: 'crop-height',
  title: 'Height of a delivery crop',
  says: 'How many captured pixels high the largest crop of a shape is, less what is kept for repositioning.',
  equation: 'h = min(nh, nw / A) · (1 − r)',
  gives: { cropHeight_px: 'Height of the crop' },
  ...COMMON,
});

export const cropArea = law(cropPixels, {
  id: 'crop-pixels',
  title: 'Pixels in a delivery crop',
  says: 'How many captured pixels a delivery is made from in all.',
  equation: 'w · h',
  gives: { cropPixels_px: 'Pixels in the crop' },
  ...COMMON,
});

export const enlargement = law(enlargementRatio, {
  id: 'enlargement',
  title: 'Enlargement of a crop',
  says: 'How much a crop is blown up for delivery; above 1, pixels are made up.',
  equation: 'g = W / w',
  takes: { deliveredWidth_px: 'Width delivered', cropWidth_px: 'Width of the crop' },
  gives: { enlargementRatio: { title: 'Enlargement', as: 'ratio' } },
  holds: 'Square pixels; the same for the height where crop and delivery have one shape.',
  sources: ['cinema-containers'],
  words: ['blow-up', 'upscale', 'resolution', 'oversampling'],
  example: { deliveredWidth_px: 3840, cropWidth_px: 2048 },
});
