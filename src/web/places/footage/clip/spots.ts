/** Places in the picture where the sensor or the glass before it is at fault, as they are marked. */
import type { Measurement } from '../../../../measure/types.ts';

export interface Spot {
  readonly kind: 'dust' | 'pixel';
  /** In pixels of the clip. */
  readonly x: number;
  readonly y: number;
  readonly radius_px: number;
}

/** More are told by their number only: a picture full of marks shows nothing. */
export const MOST_MARKED = 60;

/** Of the height of the picture: no mark is smaller, however small its fault. */
const LEAST_SHARE = 0.02;

/** The dust first, which covers most; then pixels, as they lie in the picture. */
export function spotsOf({ dust = [], fixedPixels, height }: Pick<Measurement, 'dust' | 'fixedPixels' | 'height'>): readonly Spot[] {
  const least_px = LEAST_SHARE * height;
  const spots = [
    ...dust.map(({ x, y, size_px }): Spot => ({ kind: 'dust', x, y, radius_px: Math.max(least_px, 0.75 * size_px) })),
    ...fixedPixels.map(({ x, y }): Spot => ({ kind: 'pixel', x: x + 0.5, y: y + 0.5, radius_px: least_px })),
  ];
  return spots.slice(0, MOST_MARKED);
} // prettier-ignore

/** How many there are of what, for whoever chooses to see them. */
export function spotsSaid({ dust = [], fixedPixels }: Pick<Measurement, 'dust' | 'fixedPixels'>): string {
  const said = [
    ...(dust.length > 0 ? [`dust ${dust.length}`] : []),
    ...(fixedPixels.length > 0 ? [`pixels ${fixedPixels.length}`] : []),
  ];
  return said.join(', ');
}
