/**
 * Shake of a picture that should stand still: how far it strays from its own slow path, how fast, and from when on.
 *
 *     shake² = stray² − n²        n = spread of x_{k−1} − 2·x_k + x_{k+1} over √6
 *
 * n how finely the place of one frame is told: what jumps to and fro from each frame to the next is taken for that, since a
 * camera or a table has too much mass to.
 */
import { bulkSpreadOf, medianOf } from '../base/median.ts';
import { onsetOf } from './action.ts';
import { basisOf, faded, spectrumGrid, withoutTrend } from './lines/basis.ts';
import { findLines } from './lines/findLines.ts';

export interface Shake {
  readonly verdict: 'still' | 'shakes' | 'moves' | 'cannot tell';
  /** Root of the mean square about the slow path, both directions together, and the most. */
  readonly rms_px: number;
  readonly most_px: number;
  /** How far the slow path goes. */
  readonly drift_px: number;
  /** Of the strongest wave in it, where one stands out. */
  readonly rate_Hz?: number;
  /** First frame of the shaking, where it begins within the clip. */
  readonly onset?: number;
  readonly why: string;
}

export interface ShakeGiven {
  readonly x_px: Float64Array;
  readonly y_px: Float64Array;
  /** Of each frame: 0 where it is missing or its place could not be told. */
  readonly weights: Float64Array;
  readonly frameRate_fps: number;
  /** Pixels along the side of a cell, which is how finely shifts are told. */
  readonly cell_px: number;
}

const FEWEST_FRAMES = 12;
const DEGREE = 3;
/** Shifts are told to about this share of a cell; less is taken for none. */
const TOLD = 0.15;
/** Stray this many times how finely it is told is shake. */
const CLEAR = 1.25;
/** A slow path longer than this, in cells, is a move and not a drift. */
const MOVE = 4;
const CHANCE = 0.001;
/** Cycles of shaking that a clip must hold. */
const FEWEST_CYCLES = 3;

const hypot = (x: Float64Array, y: Float64Array): Float64Array => x.map((value, i) => Math.hypot(value, y[i]!));

/** How finely a place is told, from how it jumps about between neighbours. */
function jitterOf(series: Float64Array, weights: Float64Array): number {
  const bends: number[] = [];
  for (let i = 1; i + 1 < series.length; i += 1)
    if (weights[i - 1]! * weights[i]! * weights[i + 1]! > 0)
      bends.push(series[i - 1]! - 2 * series[i]! + series[i + 1]!);
  return bends.length > 0 ? bulkSpreadOf(bends) / Math.sqrt(6) : 0;
}

/** The first frame in which the picture strays from where it lay at first, where it then lay still. */
function startOf(x_px: Float64Array, y_px: Float64Array, rms_px: number, told_px: number): number | undefined {
  const length = Math.max(8, Math.floor(x_px.length / 10));
  const [x, y] = [medianOf(x_px.subarray(0, length)), medianOf(y_px.subarray(0, length))];
  const off_px = x_px.map((value, i) => Math.hypot(value - x, y_px[i]! - y));
  const head = off_px.subarray(0, length);
  const mean = head.reduce((sum, value) => sum + value, 0) / length;
  if (mean > rms_px / 2) return undefined;
  return onsetOf(off_px, { mean, deviation: Math.max(bulkSpreadOf(head), told_px) });
}

/** The shake of a clip. */
export function shakeOf({ x_px, y_px, weights, frameRate_fps, cell_px }: ShakeGiven): Shake {
  const counted = weights.reduce((sum, weight) => sum + (weight > 0 ? 1 : 0), 0);
  const none = { rms_px: 0, most_px: 0, drift_px: 0 };
  if (counted < FEWEST_FRAMES) return { verdict: 'cannot tell', ...none, why: 'Too few frames in which the picture can be laid on the first.' }; // prettier-ignore
  const basis = basisOf({ frameRate_fps, weights, degree: DEGREE });
  const [x, y] = [withoutTrend(basis, x_px), withoutTrend(basis, y_px)];
  const off_px = hypot(x, y);
  let [squares, most_px] = [0, 0];
  for (let i = 0; i < off_px.length; i += 1) {
    squares += weights[i]! * off_px[i]! ** 2;
    if (weights[i]! > 0) most_px = Math.max(most_px, off_px[i]!);
  }
  const stray_px = Math.sqrt(squares / basis.weight);
  const jitter_px = Math.hypot(jitterOf(x_px, weights), jitterOf(y_px, weights));
  const rms_px = stray_px > CLEAR * jitter_px ? Math.sqrt(stray_px ** 2 - jitter_px ** 2) : 0;
  const path = hypot(x_px.map((value, i) => value - x[i]!), y_px.map((value, i) => value - y[i]!)).filter((_, i) => weights[i]! > 0); // prettier-ignore
  const drift_px = Math.max(...path) - Math.min(...path);
  const told_px = TOLD * cell_px;
  const sizes = { rms_px, most_px, drift_px };
  if (drift_px > MOVE * cell_px) return { verdict: 'moves', ...sizes, why: 'The whole picture moves: the camera, or everything it sees.' }; // prettier-ignore
  if (rms_px <= told_px) return { verdict: 'still', ...sizes, why: 'The picture lies where it lay, as finely as can be told.' }; // prettier-ignore
  const grid = spectrumGrid(basisOf({ frameRate_fps, weights: faded(weights), degree: DEGREE }));
  const search = { least_Hz: (FEWEST_CYCLES * frameRate_fps) / weights.length, mostChance: CHANCE, mostLines: 1 };
  const lines = [x, y].flatMap((series) => findLines(grid, series, search));
  const [line] = lines.sort((a, b) => b.wave.power - a.wave.power);
  const onset = startOf(x_px, y_px, rms_px, told_px);
  return {
    verdict: 'shakes',
    ...sizes,
    ...(line && { rate_Hz: line.wave.rate_Hz }),
    ...(onset !== undefined && onset > 0 && { onset }),
    why: 'The whole picture shakes together: the camera, or the table with all that is seen; which, cannot be told from one view.',
  };
}
