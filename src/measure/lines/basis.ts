/**
 * How much of a series a wave of each rate would take up, fitted together with a slow trend by least squares.
 *
 *     z[n] = Σ aⱼ·qⱼ[n] + c·cos(2πf·n/R) + s·sin(2πf·n/R) + rest        power(f) = what the wave takes off the rest
 *
 * q polynomials        f rate, Hz        R frames a second        n frame, from 0
 *
 * With the polynomials made orthonormal under the weights of the frames, the fit at a rate needs only transforms of
 * weights, polynomials and series: the whole spectrum costs a few of them and is exactly the joint fit, at every rate.
 * Frames that are missing, or are not to be trusted, weigh nothing and keep their place in time.
 *
 * @source harmonic-fit
 * @source gap-spectrum least squares at each rate, for samples that are missing
 */
import { requireCount, requirePositive } from '../../base/domain.ts';
import { fourier, powerOfTwoFrom } from '../../base/fourier.ts';

export interface Basis {
  readonly frameRate_fps: number;
  readonly frameCount: number;
  readonly weights: Float64Array;
  /** What the weights add up to. */
  readonly weight: number;
  /** Frames of equal weight that would tell as much: (Σw)² / Σw². */
  readonly effectiveCount: number;
  /** Orthonormal under the weights. */
  readonly polynomials: readonly Float64Array[];
}

/** Points of a spectrum for each independent rate of the series, at the least. */
const OVERSAMPLING = 4;

/** Polynomials up to a degree, orthonormal under the weights; fewer where there are not frames enough for all. */
function orthonormal(weights: Float64Array, degree: number): readonly Float64Array[] {
  const n = weights.length;
  const found: Float64Array[] = [];
  for (let power = 0; power <= degree; power += 1) {
    const next = new Float64Array(n);
    for (let i = 0; i < n; i += 1) next[i] = n > 1 ? ((2 * i) / (n - 1) - 1) ** power : 1;
    // Twice is enough: the second pass takes off what rounding left of the first.
    for (let pass = 0; pass < 2; pass += 1) for (const before of found) takeOff(next, before, weights);
    let size = 0;
    for (let i = 0; i < n; i += 1) size += weights[i]! * next[i]! ** 2;
    if (size < 1e-18 * n) break;
    for (let i = 0; i < n; i += 1) next[i] = next[i]! / Math.sqrt(size);
    found.push(next);
  }
  return found;
}

function takeOff(values: Float64Array, unit: Float64Array, weights: Float64Array): void {
  let share = 0;
  for (let i = 0; i < values.length; i += 1) share += weights[i]! * values[i]! * unit[i]!;
  for (let i = 0; i < values.length; i += 1) values[i] = values[i]! - share * unit[i]!;
}

/** The trends that waves are fitted beside. Throws RangeError for a rate not positive or weights that add up to none. */
export function basisOf(given: {
  readonly frameRate_fps: number;
  readonly weights: Float64Array;
  readonly degree: number;
}): Basis {
  const { frameRate_fps, weights, degree } = given;
  requirePositive({ frameRate_fps });
  requireCount({ degree });
  let [weight, squares] = [0, 0];
  for (let i = 0; i < weights.length; i += 1) {
    weight += weights[i]!;
    squares += weights[i]! ** 2;
  }
  requirePositive({ weight });
  const polynomials = orthonormal(weights, degree);
  const effectiveCount = weight ** 2 / squares;
  return { frameRate_fps, frameCount: weights.length, weights, weight, effectiveCount, polynomials };
}

/**
 * Weights that fade in and out over the clip. What the trend cannot follow of an action ends abruptly with the clip, and
 * its edge would reach across the whole spectrum; faded, it stays at its own slow rates.
 */
export function faded(weights: Float64Array): Float64Array {
  return weights.map((weight, i) => weight * Math.sin((Math.PI * (i + 0.5)) / weights.length) ** 2);
}

/** A series without its trend. Where a frame weighs nothing, what is left is 0. */
export function withoutTrend({ weights, polynomials }: Basis, series: Float64Array): Float64Array {
  const rest = series.slice();
  for (const unit of polynomials) takeOff(rest, unit, weights);
  for (let i = 0; i < rest.length; i += 1) if (weights[i] === 0) rest[i] = 0;
  return rest;
}

/** Spectra on an even grid of rates, from 0 to half the frame rate. */
export interface SpectrumGrid {
  readonly basis: Basis;
  readonly step_Hz: number;
  /** Points of the grid for one independent rate. */
  readonly pointsPerRate: number;
  readonly points: number;
  /** The power of a series that has no trend left. */
  readonly powerOf: (rest: Float64Array) => Float64Array;
}

/** Sums of a weighted series over e^(−2πi·k·n/M). */
function transformOf(values: (i: number) => number, n: number, size: number): readonly [Float64Array, Float64Array] {
  const [real, imaginary] = [new Float64Array(size), new Float64Array(size)];
  for (let i = 0; i < n; i += 1) real[i] = values(i);
  fourier(real, imaginary);
  return [real, imaginary];
}

/** What turns the sums of a series into power, rate by rate: worked out once for all series of one basis. */
export function spectrumGrid(basis: Basis): SpectrumGrid {
  const { frameCount, frameRate_fps, weights, weight, effectiveCount, polynomials } = basis;
  const size = powerOfTwoFrom(OVERSAMPLING * frameCount);
  const points = size / 2 + 1;
  const [doubleReal, doubleImaginary] = transformOf((i) => weights[i]!, frameCount, size);
  const cosines = new Float64Array(points);
  const sines = new Float64Array(points);
  const crossed = new Float64Array(points);
  for (let k = 0; k < points; k += 1) {
    const twice = (2 * k) % size;
    cosines[k] = (weight + doubleReal[twice]!) / 2;
    sines[k] = (weight - doubleReal[twice]!) / 2;
    crossed[k] = -doubleImaginary[twice]! / 2;
  }
  for (const unit of polynomials) {
    const [real, imaginary] = transformOf((i) => weights[i]! * unit[i]!, frameCount, size);
    for (let k = 0; k < points; k += 1) {
      cosines[k] = cosines[k]! - real[k]! ** 2;
      sines[k] = sines[k]! - imaginary[k]! ** 2;
      crossed[k] = crossed[k]! + real[k]! * imaginary[k]!;
    }
  }
  const powerOf = (rest: Float64Array): Float64Array => {
    const [real, imaginary] = transformOf((i) => weights[i]! * rest[i]!, frameCount, size);
    const power = new Float64Array(points);
    for (let k = 0; k < points; k += 1)
      power[k] = solved(real[k]!, -imaginary[k]!, cosines[k]!, sines[k]!, crossed[k]!, weight).power;
    return power;
  };
  return { basis, step_Hz: frameRate_fps / size, pointsPerRate: size / effectiveCount, points, powerOf };
}

/** Two unknowns are told apart where the weaker of their directions has this share of the weight at least. */
const TOLD_APART = 1e-4;

interface Shares {
  readonly cosine: number;
  readonly sine: number;
  readonly power: number;
}

/**
 * The solution of G·a = (b, d) and what it takes up. A direction that the trend takes up itself, or that falls between the
 * frames, gives nothing.
 */
function solved(b: number, d: number, cc: number, ss: number, cs: number, weight: number): Shares {
  const middle = (cc + ss) / 2;
  const apart = Math.hypot((cc - ss) / 2, cs);
  if (middle - apart > TOLD_APART * weight) {
    const whole = cc * ss - cs * cs;
    const [cosine, sine] = [(b * ss - d * cs) / whole, (d * cc - b * cs) / whole];
    return { cosine, sine, power: Math.max(0, b * cosine + d * sine) };
  }
  const most = middle + apart;
  if (most <= TOLD_APART * weight) return { cosine: 0, sine: 0, power: 0 };
  const turn = Math.atan2(2 * cs, cc - ss) / 2;
  const along = (b * Math.cos(turn) + d * Math.sin(turn)) / most;
  return { cosine: along * Math.cos(turn), sine: along * Math.sin(turn), power: along * along * most };
}

/** The wave of one rate that fits a series best beside the trend. */
export interface Wave {
  readonly rate_Hz: number;
  readonly cosine: number;
  readonly sine: number;
  /** What it takes off the weighted squares of the rest. */
  readonly power: number;
}

/** Frames over which a turn is carried on. */
const SET_RIGHT = 64;

/** Fits a wave at any rate to a series without trend. */
export function waveAt(basis: Basis, rest: Float64Array, rate_Hz: number): Wave {
  const { frameCount, frameRate_fps, weights, polynomials, weight } = basis;
  const turn = (2 * Math.PI * rate_Hz) / frameRate_fps;
  const [stepCosine, stepSine] = [Math.cos(turn), Math.sin(turn)];
  const [cosines, sines] = [new Float64Array(frameCount), new Float64Array(frameCount)];
  let [cc, ss, cs, b, d] = [0, 0, 0, 0, 0];
  let [c, s] = [1, 0];
  for (let i = 0; i < frameCount; i += 1) {
    // Turned on from frame to frame, and set right now and then.
    if (i % SET_RIGHT === 0) {
      c = Math.cos(turn * i);
      s = Math.sin(turn * i);
    }
    const wc = weights[i]! * c;
    const ws = weights[i]! * s;
    cosines[i] = wc;
    sines[i] = ws;
    cc += wc * c;
    ss += ws * s;
    cs += wc * s;
    b += wc * rest[i]!;
    d += ws * rest[i]!;
    const next = c * stepCosine - s * stepSine;
    s = s * stepCosine + c * stepSine;
    c = next;
  }
  for (const unit of polynomials) {
    let [alongCosine, alongSine] = [0, 0];
    for (let i = 0; i < frameCount; i += 1) {
      alongCosine += cosines[i]! * unit[i]!;
      alongSine += sines[i]! * unit[i]!;
    }
    cc -= alongCosine ** 2;
    ss -= alongSine ** 2;
    cs -= alongCosine * alongSine;
  }
  return { rate_Hz, ...solved(b, d, cc, ss, cs, weight) };
}

/** A series without trend, with a wave taken off it and the trend taken off again. */
export function withoutWave(basis: Basis, rest: Float64Array, { rate_Hz, cosine, sine }: Wave): Float64Array {
  const turn = (2 * Math.PI * rate_Hz) / basis.frameRate_fps;
  const left = new Float64Array(rest.length);
  for (let i = 0; i < rest.length; i += 1) left[i] = rest[i]! - cosine * Math.cos(turn * i) - sine * Math.sin(turn * i);
  return withoutTrend(basis, left);
}
