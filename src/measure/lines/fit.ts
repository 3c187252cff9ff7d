/**
 * The rate of a wave in a series to a small part of what the grid of its spectrum tells apart, and its size, with frames
 * that lie far off weighing less.
 *
 *     sd A = s·√(2·Σw²) / Σw        sd f = R/2π · s/A · √(2·Σw²·t²) / Σw·t²        t from the middle of the weights
 *
 * and with all frames weighing the same, the bound below which no method gets:
 *
 *     sd A = s·√(2/N)        sd f = R·√6·s / (π·A·√(N(N²−1)))        sd phase ≈ 2·sd A / A, at the start of the clip
 *
 * A amplitude        s spread of what is left about it        N frames        R frames a second
 *
 * @source harmonic-fit the search, and the bound on how well the rate can be known
 * @source huber-weights weight 1 up to 1.345 spreads, then falling with the distance
 */
import { requireCount, requirePositive } from '../../base/domain.ts';
import { highest } from '../../base/highest.ts';
import { bulkSpreadOf } from '../../base/median.ts';
import { basisOf, waveAt, withoutTrend, withoutWave, type Basis, type Wave } from './basis.ts';

/** Beyond this many spreads a frame weighs less. */
const HUBER = 1.345;
/** Share of the reach to which a rate is looked for: nearer, powers differ by less than their rounding. */
const ENOUGH = 1e-7;
const MOST_ROUNDS = 12;

export const amplitudeOf = ({ cosine, sine }: Wave): number => Math.hypot(cosine, sine);

/** Of A·cos(2πft + phase), in (−π, π]. */
export const phaseOf_rad = ({ cosine, sine }: Wave): number => Math.atan2(-sine, cosine);

/**
 * The rate within reach of another at which a wave takes up most. One that cannot be told from half the frame rate is taken
 * to be that: a little beside it, a large wave that falls between the frames would fit a small one.
 */
export function refined(basis: Basis, rest: Float64Array, about_Hz: number, reach_Hz: number): Wave {
  const most_Hz = basis.frameRate_fps / 2;
  if (most_Hz - about_Hz < basis.frameRate_fps / basis.effectiveCount) return waveAt(basis, rest, most_Hz);
  const stretch = { low: Math.max(0, about_Hz - reach_Hz), high: Math.min(most_Hz, about_Hz + reach_Hz) };
  const lookAt = (rate_Hz: number) => {
    const wave = waveAt(basis, rest, rate_Hz);
    return { x: rate_Hz, height: wave.power, wave };
  };
  return highest(lookAt, { ...stretch, first: about_Hz, enough: ENOUGH * reach_Hz }).wave;
}

export interface FittedWave {
  readonly wave: Wave;
  /** Spread of what is left about trend and wave. */
  readonly spread: number;
  /** What is left, trend and wave taken off. */
  readonly rest: Float64Array;
}

/** A wave and the trend beside it, fitted again and again with frames that lie far off weighing less each time. */
export function fittedRobustly(basis: Basis, series: Float64Array, about: Wave, reach_Hz: number): FittedWave {
  let wave = about;
  let rest = withoutWave(basis, withoutTrend(basis, series), wave);
  let spread = spreadOf(basis, rest);
  for (let round = 0; round < MOST_ROUNDS && spread > 0; round += 1) {
    const weights = basis.weights.map((weight, i) => weight * Math.min(1, (HUBER * spread) / Math.abs(rest[i]!)));
    const weighed = basisOf({ frameRate_fps: basis.frameRate_fps, weights, degree: basis.polynomials.length - 1 });
    const next = refined(weighed, withoutTrend(weighed, series), wave.rate_Hz, reach_Hz);
    const settled = Math.abs(amplitudeOf(next) - amplitudeOf(wave)) < 1e-6 * amplitudeOf(next);
    wave = next;
    rest = withoutWave(weighed, withoutTrend(weighed, series), wave);
    spread = spreadOf(basis, rest);
    if (settled) break;
  }
  return { wave, spread, rest };
}

/** Spread of what is left, of the frames that count. */
function spreadOf({ weights }: Basis, rest: Float64Array): number {
  const counted = rest.filter((_, i) => weights[i]! > 0);
  return bulkSpreadOf(counted);
}

export interface Precision {
  readonly rate_Hz: number;
  readonly amplitude: number;
  readonly phase_rad: number;
}

/**
 * Standard deviations with which a wave is known; with all frames weighing the same, the least that any method can reach.
 * Throws RangeError outside positive inputs or for one frame.
 */
export function precisionOf(given: {
  readonly frameRate_fps: number;
  /** Of the frames, 0 for those that do not count. */
  readonly weights: ArrayLike<number>;
  readonly amplitude: number;
  /** Spread of what is left about it. */
  readonly spread: number;
}): Precision {
  const { frameRate_fps, weights, amplitude, spread } = given;
  requirePositive({ frameRate_fps, amplitude, spread });
  requireCount({ frameCount: weights.length }, 2);
  let [whole, first] = [0, 0];
  for (let i = 0; i < weights.length; i += 1) {
    whole += weights[i]!;
    first += weights[i]! * i;
  }
  const middle = first / whole;
  let [squares, lever, squaredLever] = [0, 0, 0];
  for (let i = 0; i < weights.length; i += 1) {
    const w = weights[i]!;
    squares += w * w;
    lever += w * (i - middle) ** 2;
    squaredLever += w * w * (i - middle) ** 2;
  }
  requirePositive({ whole, lever });
  const ofAmplitude = (spread * Math.sqrt(2 * squares)) / whole;
  const ofTurn = (Math.SQRT2 * spread * Math.sqrt(squaredLever)) / (amplitude * lever);
  return {
    rate_Hz: (frameRate_fps * ofTurn) / (2 * Math.PI),
    amplitude: ofAmplitude,
    phase_rad: Math.hypot(ofAmplitude / amplitude, ofTurn * middle),
  };
}
