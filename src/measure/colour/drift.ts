/**
 * How far the colour of the neutral parts goes over a clip, and how surely that is told.
 *
 *     drift = mean of the last tenth − mean of the first        its error: the larger of
 *         s·√(1/n + 1/m), s from how neighbouring samples differ, and
 *         the spread of the parts' own drifts, 1.2533·s/√p as of a median
 *     and with it what may hide between code values
 *
 * n, m samples of both tenths        p parts
 */
import { bulkSpreadOf } from '../../base/median.ts';
import { apart, chromaticityOf, type Chromaticity, type Matrix3 } from './chromaticity.ts';
import type { ColourSeries } from './series.ts';
import { temperatureOf } from './temperature.ts';

/** Red and blue over green. */
export interface Balance {
  readonly red_stops: number;
  readonly blue_stops: number;
}

/** From one colour of a neutral part to another. */
export interface ColourShift {
  /** Distance in the CIE 1976 diagram, and its standard deviation. */
  readonly distance: number;
  readonly deviation: number;
  readonly u: number;
  readonly v: number;
  readonly red_stops: number;
  readonly blue_stops: number;
  /** Warmer above 0; absent where either is too far from any black body. */
  readonly warmer_mired?: number;
  readonly deviation_mired?: number;
  /** Greener above 0, pinker below, in CIE 1960 u, v. */
  readonly greenerDuv?: number;
}

/** Where a balance lies. */
export const chromaticityOfBalance = (matrix: Matrix3, { red_stops, blue_stops }: Balance): Chromaticity =>
  chromaticityOf(matrix, 2 ** red_stops, 1, 2 ** blue_stops)!;

/** Of a balance: how far its place goes with a small error of red and of blue. */
function errorOf(matrix: Matrix3, at: Balance, error: Balance): { readonly place: number; readonly warmth_mired: number | undefined } {
  const middle = chromaticityOfBalance(matrix, at);
  const redder = chromaticityOfBalance(matrix, { ...at, red_stops: at.red_stops + error.red_stops });
  const bluer = chromaticityOfBalance(matrix, { ...at, blue_stops: at.blue_stops + error.blue_stops });
  const [from, red, blue] = [middle, redder, bluer].map((of) => temperatureOf(of)?.place_mired);
  return {
    place: Math.hypot(apart(middle, redder), apart(middle, bluer)),
    warmth_mired: from === undefined || red === undefined || blue === undefined ? undefined : Math.hypot(red - from, blue - from),
  };
} // prettier-ignore

/** The shift from one balance to another, whose difference is known to so much. */
export function shiftOf(matrix: Matrix3, from: Balance, to: Balance, error: Balance): ColourShift {
  const [a, b] = [chromaticityOfBalance(matrix, from), chromaticityOfBalance(matrix, to)];
  const [before, after] = [temperatureOf(a), temperatureOf(b)];
  const { place, warmth_mired } = errorOf(matrix, to, error);
  return {
    distance: apart(a, b),
    deviation: place,
    u: b.u - a.u,
    v: b.v - a.v,
    red_stops: to.red_stops - from.red_stops,
    blue_stops: to.blue_stops - from.blue_stops,
    ...(before &&
      after && { warmer_mired: after.place_mired - before.place_mired, greenerDuv: after.duv - before.duv }),
    ...(before && after && warmth_mired !== undefined && { deviation_mired: warmth_mired }),
  };
}

const TENTHS = 10;

/** Samples that count, by the tenth of the clip they lie in. */
function tenthsOf(places: Float32Array, weight: Uint8Array): readonly (readonly number[])[] {
  const tenths: number[][] = Array.from({ length: TENTHS }, () => []);
  const [first, last] = [places[0]!, places.at(-1)!];
  for (let i = 0; i < places.length; i += 1)
    if (weight[i]! > 0) tenths[Math.min(TENTHS - 1, Math.floor((TENTHS * (places[i]! - first)) / Math.max(1, last - first)))]!.push(i); // prettier-ignore
  return tenths.filter((tenth) => tenth.length > 0);
}

const meanOf = (values: Float64Array, at: readonly number[]): number => {
  const told = at.filter((i) => !Number.isNaN(values[i]!));
  return told.reduce((sum, i) => sum + values[i]!, 0) / told.length;
};

/** How samples scatter, from how each differs from the one before. */
function scatterOf(values: Float64Array, weight: Uint8Array): number {
  const steps: number[] = [];
  for (let i = 1; i < values.length; i += 1) if (weight[i]! * weight[i - 1]! > 0) steps.push(values[i]! - values[i - 1]!);
  return steps.length > 0 ? bulkSpreadOf(steps) / Math.SQRT2 : Infinity;
} // prettier-ignore

/** Error of the difference of two tenths of a series, told by its parts too, with what may hide between codes in both. */
function differenceError(whole: Float64Array, parts: readonly Float64Array[], weight: Uint8Array, [a, b]: readonly [readonly number[], readonly number[]], hidden: number): number {
  const byTime = scatterOf(whole, weight) * Math.sqrt(1 / a.length + 1 / b.length);
  const own = parts.map((values) => meanOf(values, b) - meanOf(values, a)).filter((of) => !Number.isNaN(of));
  const byParts = own.length > 1 ? (1.2533 * bulkSpreadOf(own)) / Math.sqrt(own.length) : 0;
  return Math.hypot(Math.max(byTime, byParts), Math.SQRT2 * hidden);
} // prettier-ignore

export interface Drift {
  /** From the first tenth to the last. */
  readonly over: ColourShift;
  /** Between the two tenths farthest from each other, where that is more. */
  readonly most: ColourShift;
}

/** Drift of a series, of which so much may hide between code values; undefined where the clip holds too little of it. */
export function driftOf(matrix: Matrix3, { red_stops, blue_stops, weight, parts }: ColourSeries, places: Float32Array, hidden: Balance): Drift | undefined {
  const tenths = tenthsOf(places, weight);
  if (tenths.length < 2 || ![red_stops, blue_stops].every((of) => Number.isFinite(scatterOf(of, weight)))) return undefined;
  const balance = (at: readonly number[]): Balance => ({ red_stops: meanOf(red_stops, at), blue_stops: meanOf(blue_stops, at) });
  const shift = (a: readonly number[], b: readonly number[]): ColourShift =>
    shiftOf(matrix, balance(a), balance(b), {
      red_stops: differenceError(red_stops, parts.map((part) => part.red_stops), weight, [a, b], hidden.red_stops),
      blue_stops: differenceError(blue_stops, parts.map((part) => part.blue_stops), weight, [a, b], hidden.blue_stops),
    });
  const over = shift(tenths[0]!, tenths.at(-1)!);
  const middles = tenths.map((tenth) => chromaticityOfBalance(matrix, balance(tenth)));
  let [from, to, farthest] = [0, tenths.length - 1, over.distance];
  for (let i = 0; i < tenths.length; i += 1)
    for (let j = i + 1; j < tenths.length; j += 1)
      if (apart(middles[i]!, middles[j]!) > farthest) [from, to, farthest] = [i, j, apart(middles[i]!, middles[j]!)];
  return { over, most: from === 0 && to === tenths.length - 1 ? over : shift(tenths[from]!, tenths[to]!) };
} // prettier-ignore
