/**
 * The chart of flicker over rate and shutter: which rates and shutters are worked out, and the swing between them. Rates
 * that keep step with a lamp, and shutters that hold whole periods of it, are worked out where they are: between even
 * steps they would be missed.
 */
import type { SetupGroup } from '../../../plan/flickerGroups.ts';
import type { InputField } from '../../../laws/law.ts';
import { inputAxis, placeOn, roundDown, roundUp, valueAt, type Axis } from '../reckoner/axis.ts';
import type { Grid } from '../reckoner/contour.ts';

const PLAIN = { note: undefined, choices: undefined, default: undefined } as const;

/** The two settings as a picture's axes know them. */
export const RATE: InputField = {
  ...PLAIN,
  name: 'captureRate_fps',
  title: 'Frame rate',
  kind: 'rate',
  as: 'rational',
};
export const SHUTTER: InputField = { ...PLAIN, name: 'exposureTime_s', title: 'Shutter', kind: 'time', as: 'quantity' };

export interface ChartAxes {
  readonly rate: Axis;
  readonly shutter: Axis;
}

export interface Standing {
  readonly rate_fps: number;
  readonly exposureTime_s: number;
}

/** Below this there is hardly a picture left to choose in. */
const LEAST_TIMES = 4;

/** How far the chart runs: to a little beyond the highest rate there is, and to the longest shutter that fits. */
export function axesAround({ rate_fps, exposureTime_s }: Standing, highest_fps: number | undefined): ChartAxes {
  const { from, to } = inputAxis(RATE, { value: rate_fps });
  const most = highest_fps === undefined ? to : roundUp(Math.max(highest_fps, rate_fps) * 1.02);
  const rate: Axis = { scale: 'log', from, to: Math.max(from * LEAST_TIMES, Math.min(to, most)) };
  const longest_s = 1 / rate.from;
  return {
    rate,
    shutter: { scale: 'log', from: roundDown(Math.min(exposureTime_s / LEAST_TIMES, longest_s / 50)), to: longest_s },
  };
}

const COLUMNS = 56;
const ROWS = 44;
/** Whole periods, and parts of one, that are looked for. */
const MOST_MULTIPLES = 12;
/** How narrow the way past an exact value is drawn. */
const BESIDE = 0.004;

const even = (axis: Axis, count: number) => Array.from({ length: count }, (_, i) => valueAt(axis, i / (count - 1)));

/** Sorted, none twice, none so near another that they would be one. */
function sortedApart(values: readonly number[]): readonly number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.filter((value, i) => i === 0 || value > sorted[i - 1]! * (1 + 1e-9));
}

/** Ends of an axis are round, and a round rate is in step with lamps by chance: they are worked out this far within. */
const WITHIN = 1 + 1e-5;

/** Even steps with exact values put in, each between two close beside it; even steps that close are left out. */
function withExact(axis: Axis, count: number, exact: readonly number[]): Float64Array {
  const isOn = (value: number) => value >= axis.from && value <= axis.to;
  const kept = sortedApart(exact.filter(isOn));
  const isApart = (value: number) => kept.every((each) => Math.abs(value / each - 1) >= 2 * BESIDE);
  const beside = kept.flatMap((value) => [value * (1 - BESIDE), value, value * (1 + BESIDE)]).filter(isOn);
  const inner = even(axis, count).slice(1, -1);
  const ends = [axis.from * WITHIN, axis.to / WITHIN];
  return Float64Array.from(sortedApart([...[...ends, ...inner].filter(isApart), ...beside]));
}

const multiples = Array.from({ length: MOST_MULTIPLES }, (_, i) => i + 1);

/**
 * Rates worked out: even steps, where the shot stands, and those at which every frame meets the same light of the lamps on
 * the mains. A lamp with a rate of its own keeps it too loosely for that.
 */
export function ratesAlong(axis: Axis, groups: readonly SetupGroup[], now_fps: number): Float64Array {
  const locked = groups.filter(({ isMainsLocked }) => isMainsLocked);
  const inStep = locked.flatMap(({ waveform }) => multiples.map((n) => 1 / (n * waveform.period_s)));
  return withExact(axis, COLUMNS, [now_fps, ...inStep]);
}

/** Shutters worked out: even steps, where the shot stands, and those that hold whole periods of some lamps. */
export function exposuresAlong(axis: Axis, groups: readonly SetupGroup[], now_s: number): Float64Array {
  const nulls = groups.flatMap(({ waveform }) => multiples.map((n) => n * waveform.period_s));
  return withExact(axis, ROWS, [now_s, ...nulls]);
}

export interface Swings {
  readonly rates_fps: Float64Array;
  readonly exposures_s: Float64Array;
  /** Stops, rate after rate, the shutters of each side by side; NaN where one does not fit. */
  readonly stops: Float32Array;
}

/** The least and the most that are told apart, in stops; a frame that can be dark swings without end. */
export const SWING_SCALE = { least: 0.001, most: 4 } as const;

/** A swing's place on the scale of the chart, 0 to 1. */
export function placeOfSwing(stops: number): number {
  const { least, most } = SWING_SCALE;
  return Math.log(Math.min(most, Math.max(least, stops)) / least) / Math.log(most / least);
}

/** Swings as places on the scale. Shutters that do not fit go on as the longest that does, to be cut off when drawn. */
export function placesOf({ rates_fps, exposures_s, stops }: Swings): Grid {
  const [columns, rows] = [rates_fps.length, exposures_s.length];
  const values = new Float64Array(columns * rows);
  for (let column = 0; column < columns; column += 1) {
    let last = NaN;
    for (let row = 0; row < rows; row += 1) {
      const swing = stops[column * rows + row]!;
      if (!Number.isNaN(swing)) last = placeOfSwing(swing);
      values[row * columns + column] = last;
    }
  }
  return { columns, rows, values };
}

/** The place of a value among sorted ones, between them by how many times: 2.5 is half way from the third to the fourth. */
export function indexOf(sorted: Float64Array, value: number): number {
  const last = sorted.length - 1;
  if (!(value > sorted[0]!)) return 0;
  if (value >= sorted[last]!) return last;
  let [low, high] = [0, last];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! <= value) low = middle;
    else high = middle;
  }
  return low + Math.log(value / sorted[low]!) / Math.log(sorted[high]! / sorted[low]!);
}

/** Where a place among sorted values lies on an axis, 0 to 1. */
export function fractionAt(axis: Axis, sorted: Float64Array, index: number): number {
  const low = Math.min(Math.floor(index), sorted.length - 2);
  const [from, to] = [placeOn(axis, sorted[low]!), placeOn(axis, sorted[low + 1]!)];
  return from + (index - low) * (to - from);
}

/** Between the four grid points around a place; NaN where one of them has none. */
export function between({ columns, rows, values }: Grid, column: number, row: number): number {
  const left = Math.min(Math.floor(column), columns - 2);
  const low = Math.min(Math.floor(row), rows - 2);
  const [x, y] = [column - left, row - low];
  const at = (right: number, up: number) => values[(low + up) * columns + left + right]!;
  return (at(0, 0) * (1 - x) + at(1, 0) * x) * (1 - y) + (at(0, 1) * (1 - x) + at(1, 1) * x) * y;
}
