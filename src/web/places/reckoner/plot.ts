/** The room of a picture: its size in CSS pixels, and where its axes run. */
import { placeOn, type Axis } from './axis.ts';

export interface Plot {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export function plotOf(width: number, height: number): Plot {
  const left = width < 520 ? 56 : 70;
  return { width, height, left, right: width - 14, top: 30, bottom: height - 44 };
}

export const innerWidth = ({ left, right }: Plot) => right - left;
export const innerHeight = ({ top, bottom }: Plot) => bottom - top;

/** Across the picture for a fraction of its axis. */
export const across = (plot: Plot, fraction: number) => plot.left + fraction * innerWidth(plot);

/** Down the picture for a fraction of its axis. */
export const down = (plot: Plot, fraction: number) => plot.bottom - fraction * innerHeight(plot);

/** Where a value lies, held just outside the picture where it is far beyond it. */
export function heldPlace(axis: Axis, value: number): number {
  const at = placeOn(axis, value);
  return Number.isNaN(at) ? -0.5 : Math.min(1.5, Math.max(-0.5, at));
}

/** To a tenth of a pixel, which is as fine as can be seen. */
export const px = (value: number) => Math.round(value * 10) / 10;

/** As many ticks as can be read. */
export const ticksAcross = (plot: Plot) => Math.max(2, Math.floor(innerWidth(plot) / 56));
export const ticksDown = (plot: Plot) => Math.max(2, Math.floor(innerHeight(plot) / 28));

/** Where a pointer is within the picture, as fractions of its axes. */
export function pointedAt(
  plot: Plot,
  svg: Element,
  { clientX, clientY }: { readonly clientX: number; readonly clientY: number },
) {
  const box = svg.getBoundingClientRect();
  const x = ((clientX - box.left) * plot.width) / box.width;
  const y = ((clientY - box.top) * plot.height) / box.height;
  return { x: (x - plot.left) / innerWidth(plot), y: (plot.bottom - y) / innerHeight(plot) };
}

/** The smallest part of an axis of this many pixels that a hand can mean. */
export const grainOf = (length: number) => 3 / Math.max(1, length);

/** Width of a letter of a label, near enough to keep labels apart. */
export const LETTER_px = 7.1;
