/**
 * The light in the picture that shows when something was fired: small, dark before, and fully lit within a frame or two,
 * from where on it stays as it is. What moves does not: it comes from beside, and goes on moving.
 *
 *     lit share of the first frame = (b − before) / (after − before)        b brightest cell of a tile, or its mean
 *
 * before, after: medians over the frames on either side
 */
import { medianOf } from '../base/median.ts';
import type { Grid } from './grid.ts';
import { tilesBeside } from './movement.ts';
import type { Signal, SignalGiven } from './signalTypes.ts';

export type { Signal, SignalGiven } from './signalTypes.ts';

/** How much brighter its place becomes, at the least. */
const LEAST_RISE_stops = 0.3;
/** Frames that it must have been dark before, and stay lit after, and those that are looked at where there are as many. */
const FEWEST_BEFORE = 3;
const FEWEST_AFTER = 4;
const LOOKED_AT = 12;
/** How far the light may stray before and after, of the step between. */
const STRAYS = 0.2;
/** A first frame with less than this of the step is noise. */
const LEAST_LIT = 0.05;
/** Half of the step down again, and it is out. */
const OUT = 0.5;
/** More of the picture than this that brightens as much at once is a lamp. */
const MOST_OF_PICTURE = 0.25;
/** What its tile may still move once it is lit, over what the step itself did. */
const STILL_MOVES = 0.2;

/** Finds the brightest cell of each tile of a frame, into the same array every time. */
export function createBrightest(grid: Grid): (cells: Float32Array) => Float32Array {
  const { cellColumns, cellRows, columns, rows, columnOf, rowOf } = grid;
  const brightest = new Float32Array(columns * rows);
  return (cells) => {
    brightest.fill(0);
    for (let y = 0, i = 0; y < cellRows; y += 1) {
      const row = rowOf[y]! * columns;
      for (let x = 0; x < cellColumns; x += 1, i += 1) {
        const tile = row + columnOf[x]!;
        if (cells[i]! > brightest[tile]!) brightest[tile] = cells[i]!;
      }
    }
    return brightest;
  };
}

/** Light of each frame by the tile in the middle, over that of all frames: what lamps that pulse do to the whole picture. */
function pulseOf({ columns, rows, light, weights }: SignalGiven): Float64Array {
  const tiles = columns * rows;
  const middles = Float64Array.from(weights, (_, i) => medianOf(light.subarray(i * tiles, (i + 1) * tiles)));
  const middle = medianOf(middles.filter((_, i) => weights[i]! > 0));
  return middles.map((value) => (value > 0 && middle > 0 ? value / middle : 1));
}

/** A tile's values at all frames, those that do not count being as the frame before. */
function seriesOf(values: Float32Array, tile: number, tiles: number, weights: Float64Array): Float64Array {
  const series = new Float64Array(weights.length);
  for (let i = 0; i < series.length; i += 1)
    series[i] = weights[i]! > 0 || i === 0 ? values[i * tiles + tile]! : series[i - 1]!;
  return series;
}

interface Step {
  readonly frame: number;
  readonly before: number;
  readonly after: number;
}

const rise = ({ before, after }: Pick<Step, 'before' | 'after'>): number => Math.log2(Math.max(after, 1e-6) / Math.max(before, 1e-6)); // prettier-ignore

/** A step up at a frame, where there is one: flat before, up within two frames, flat after. */
function stepAt(light: Float64Array, frame: number): Step | undefined {
  const from = Math.max(0, frame - LOOKED_AT);
  const to = Math.min(light.length, frame + 2 + LOOKED_AT);
  if (frame - from < FEWEST_BEFORE || to - frame - 2 < FEWEST_AFTER) return undefined;
  const before = medianOf(light.subarray(from, frame));
  const after = medianOf(light.subarray(frame + 2, Math.min(to, frame + 2 + FEWEST_AFTER)));
  const step = after - before;
  if (rise({ before, after }) < LEAST_RISE_stops || light[frame]! - before < LEAST_LIT * step) return undefined;
  for (let i = from; i < frame; i += 1) if (Math.abs(light[i]! - before) > STRAYS * step) return undefined;
  for (let i = frame + 1; i < frame + 2 + FEWEST_AFTER; i += 1) if (Math.abs(light[i]! - after) > STRAYS * step) return undefined; // prettier-ignore
  // A frame before that was lit a little already would be the first.
  return light[frame - 1]! - before < LEAST_LIT * step ? { frame, before, after } : undefined;
}

/** The first step of a tile's light; undefined where it has none. */
function firstStep(light: Float64Array): Step | undefined {
  for (let frame = FEWEST_BEFORE; frame + 1 < light.length; frame += 1) {
    if (light[frame]! <= light[frame - 1]! || light[frame + 1]! < light[frame - 1]! * 2 ** (LEAST_RISE_stops / 2)) continue;
    const step = stepAt(light, frame);
    if (step) return step;
  }
  return undefined;
} // prettier-ignore

/** Whether a tile is still once its light is on, and all about it before, as where a thing comes in they would not be. */
function isStill({ columns, rows, activity, weights }: SignalGiven, { frame, tile }: Step & { readonly tile: number }): boolean {
  const most = (of: number, from: number, to: number): number => {
    const series = seriesOf(activity, of, columns * rows, weights);
    return series.subarray(Math.max(0, from), to).reduce((largest, value) => Math.max(largest, value), 0);
  };
  const still = STILL_MOVES * most(tile, frame, frame + 2);
  const beside = new Set(tilesBeside({ columns, rows }, tile));
  const about = Array.from({ length: columns * rows }, (_, i) => i).filter((other) => !beside.has(other));
  return about.every((other) => most(other, frame - FEWEST_BEFORE, frame) <= still) && most(tile, frame + 2, frame + 2 + FEWEST_AFTER) <= still;
} // prettier-ignore

/** The light that comes on in a clip; undefined where none does. */
export function signalOf(given: SignalGiven): Omit<Signal, 'movement'> | undefined {
  const { columns, rows, brightest, light: whole, weights } = given;
  const tiles = columns * rows;
  const pulse = pulseOf(given);
  const found: (Step & { readonly tile: number; readonly light: Float64Array })[] = [];
  for (let tile = 0; tile < tiles; tile += 1) {
    // A small light outshines the rest of its tile; a larger one, no brighter than what lies about it, lights more of it.
    for (const values of [brightest, whole]) {
      const light = seriesOf(values, tile, tiles, weights).map((value, i) => value / pulse[i]!);
      const step = firstStep(light);
      if (step) found.push({ ...step, tile, light });
    }
  }
  const lit = found.filter((step) => isStill(given, step));
  for (const first of lit.sort((a, b) => a.frame - b.frame || rise(b) - rise(a))) {
    const together = new Set(found.filter(({ frame }) => Math.abs(frame - first.frame) <= 1).map(({ tile }) => tile));
    if (together.size > Math.max(4, MOST_OF_PICTURE * tiles)) continue;
    const best = lit.filter(({ frame }) => Math.abs(frame - first.frame) <= 1).reduce((most, of) => (rise(of) > rise(most) ? of : most), first); // prettier-ignore
    const { frame, before, after, tile, light } = best;
    const out = light.findIndex((value, i) => i > frame + 1 && value < before + OUT * (after - before));
    return {
      frame,
      ...(out > 0 && { lastFrame: out - 1 }),
      tile,
      rise_stops: rise(best),
      litFraction: Math.min(1, (light[frame]! - before) / (after - before)),
    };
  }
  return undefined;
}

/** Activity of each frame without a signal: not in its tile and those about it, nor as it comes on and goes out. */
export function withoutSignal({ columns, rows, activity, weights }: SignalGiven, { frame, lastFrame, tile }: Pick<Signal, 'frame' | 'lastFrame' | 'tile'>): Float64Array {
  const tiles = columns * rows;
  const counted = tilesBeside({ columns, rows }, tile);
  const mean = weights.map((_, i) => counted.reduce((sum, other) => sum + activity[i * tiles + other]!, 0) / tiles);
  const quiet = mean.slice();
  for (const at of [frame, ...(lastFrame === undefined ? [] : [lastFrame])])
    for (let i = at; i < Math.min(at + 3, quiet.length); i += 1) quiet[i] = mean[Math.max(0, at - 1)]!;
  return quiet;
} // prettier-ignore
