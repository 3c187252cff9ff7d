/** A value of every frame as a drawing: the least and the most of it in each pixel, however many frames fall into one. */
import type { View } from './axis.ts';

/** Of each column of pixels; NaN where no frame in it has a value. */
export interface Columns {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/**
 * The least and the most of a series in each column of pixels. Frames wider than a pixel give all their columns the same.
 * A value that is not finite counts as none.
 */
export function columnsOf(values: ArrayLike<number>, { from, to }: View, width_px: number): Columns {
  const count = Math.max(0, Math.floor(width_px));
  const low = new Float64Array(count).fill(NaN);
  const high = new Float64Array(count).fill(NaN);
  const perColumn = (to - from) / count;
  for (let column = 0; column < count; column += 1) {
    const first = Math.max(0, Math.floor(from + column * perColumn));
    // A frame belongs to every column that it reaches into by more than rounding.
    const last = Math.min(values.length - 1, Math.ceil(from + (column + 1) * perColumn - 1e-9) - 1);
    for (let frame = first; frame <= Math.max(first, last) && frame < values.length; frame += 1) {
      const value = values[frame]!;
      if (!Number.isFinite(value)) continue;
      if (!(value >= low[column]!)) low[column] = value;
      if (!(value <= high[column]!)) high[column] = value;
    }
  }
  return { low, high };
}

/** What a strip reaches from its foot to its head. */
export interface Scale {
  readonly least: number;
  readonly most: number;
}

export const heightOf_px = (value: number, { least, most }: Scale, height_px: number): number =>
  height_px * (1 - Math.min(1, Math.max(0, (value - least) / (most - least))));

const at = (px: number): string => String(Math.round(px * 10) / 10);

/** One edge of an outline from a column to another, whichever way, with one step for columns that are level. */
function edge(heights_px: Float64Array, from: number, to: number): string {
  const way = from <= to ? 1 : -1;
  let path = '';
  for (let column = from; way * (to - column) >= 0; column += way) {
    const begin = column;
    const level = at(heights_px[begin]!);
    while (column !== to && at(heights_px[column + way]!) === level) column += way;
    path += way > 0 ? `L${begin} ${level}H${column + 1}` : `L${begin + 1} ${level}H${column}`;
  }
  return path;
}

/** Closed outlines from the one edge to the other, one for each stretch without a gap. */
export function bandPath(low: Float64Array, high: Float64Array, scale: Scale, height_px: number): string {
  const [below, above] = [low, high].map((values) => values.map((value) => heightOf_px(value, scale, height_px)));
  const isThere = (column: number) => !Number.isNaN(below![column]!) && !Number.isNaN(above![column]!);
  let path = '';
  for (let from = 0; from < high.length; from += 1) {
    if (!isThere(from)) continue;
    let to = from;
    while (to + 1 < high.length && isThere(to + 1)) to += 1;
    path += `M${edge(above!, from, to).slice(1)}${edge(below!, to, from)}Z`;
    from = to;
  }
  return path;
}

/** The columns in which any of these frames lies, each once, in order. */
export function columnsWith(frames: readonly number[], { from, to }: View, width_px: number): readonly number[] {
  const found = new Set<number>();
  for (const frame of frames)
    if (frame + 1 > from && frame < to)
      found.add(Math.min(Math.floor(width_px) - 1, Math.max(0, Math.floor(((frame + 0.5 - from) / (to - from)) * width_px)))); // prettier-ignore
  return [...found].sort((a, b) => a - b);
}

/** The least scale of these that reaches a value; the last where none does. */
export const roomFor = (value: number, steps: readonly number[]): number =>
  steps.find((step) => step >= value) ?? steps.at(-1)!;

/** Round numbers that scales end at. */
export const ROUND: readonly number[] = Array.from({ length: 11 }, (_, i) => [1, 2, 5].map((step) => step * 10 ** (i - 4))).flat(); // prettier-ignore
