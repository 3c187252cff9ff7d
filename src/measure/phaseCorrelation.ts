/**
 * How far one picture is shifted against another, from the phases of their spectra alone, so that neither a change of
 * light nor a large plain area pulls it.
 *
 *     r = F⁻¹[ G · conj(A)·B / (|conj(A)·B| + n) ]        the shift is where r is largest
 *
 * A, B spectra of both pictures under a Hann window, their means taken off        n what is left at the finest detail, so
 * that rates of nothing but noise have little say        G a Gaussian in rate, which makes the peak one too, so that a
 * parabola through the logarithms of three points finds its top
 *
 * The window itself does not move, and would pull the shift towards none: so the second is looked at again where the first
 * has been found in it. The peak is 1 for pictures that differ by a shift alone. A texture of few waves, or two things that move differently,
 * has a low one, and the shift then means nothing.
 *
 * @source phase-correlation
 */
import { requireCount } from '../base/domain.ts';
import { createSquareTransform, type SquareTransform } from '../base/fourierSquare.ts';

export interface Shift {
  readonly x: number;
  readonly y: number;
  /** 0 to 1. */
  readonly peak: number;
}

/** Numbers in rows of `stride`. */
export interface Picture {
  readonly values: Float32Array;
  readonly stride: number;
}

/** The corner of a window. */
export interface Corner {
  readonly left: number;
  readonly top: number;
}

export interface Correlator {
  /** Shift of `b` against `a` as the windows at these corners say together; a thing that moves in one of many has little say. */
  readonly shift: (a: Picture, b: Picture, corners: readonly Corner[]) => Shift;
  /** A peak below this may be chance: at least 0.1, and more in a small window. */
  readonly leastPeak: number;
}

/** Width of the Gaussian, in turns a pixel. */
const SPREAD = 0.25;
/** From here on a rate is fine detail, turns a pixel. */
const FINE = 0.4;
/** The least peak that means anything, and how far above the highest of so many chance ones it must lie. */
const LEAST_PEAK = 0.1;
const ABOVE_CHANCE = 2.2;
/** A window that varies by no more than this, of its mean, shows nothing. */
const PLAIN = 1e-5;

function hann(n: number): Float64Array {
  return Float64Array.from({ length: n }, (_, i) => Math.sin((Math.PI * (i + 0.5)) / n) ** 2);
}

/** One of every two opposite rates, whose values mirror each other, fine ones first; how often each counts and its weight. */
interface Rates {
  readonly at: Uint32Array;
  readonly opposite: Uint32Array;
  readonly times: Float64Array;
  readonly weights: Float64Array;
  readonly fineCount: number;
  /** Root of the sum of squares of all weights, which together are 1. */
  readonly spread: number;
}

function ratesOf({ across, down, opposite }: SquareTransform, side: number): Rates {
  const folded = (rate: number): number => Math.min(rate, side - rate) / side;
  const turns = Float64Array.from(across, (x, i) => Math.hypot(folded(x), folded(down[i]!)));
  const all = turns.map((rate) => (rate === 0 ? 0 : Math.exp(-(rate ** 2) / (2 * SPREAD * SPREAD))));
  const whole = all.reduce((sum, weight) => sum + weight, 0);
  const halves = Uint32Array.from(turns.keys()).filter((i) => i <= opposite[i]!);
  const isFine = (i: number): boolean => turns[i]! >= FINE;
  const at = Uint32Array.of(...halves.filter(isFine), ...halves.filter((i) => !isFine(i)));
  return {
    at,
    opposite: at.map((i) => opposite[i]!),
    times: Float64Array.from(at, (i) => (i === opposite[i]! ? 1 : 2)),
    weights: Float64Array.from(at, (i) => all[i]! / whole),
    fineCount: halves.filter(isFine).length,
    spread: Math.sqrt(all.reduce((sum, weight) => sum + (weight / whole) ** 2, 0)),
  };
}

/** The top of a peak between its neighbours, off its middle by at most half a step. */
function topOf(before: number, here: number, after: number): number {
  const least = 1e-6 * here;
  const [a, b, c] = [Math.log(Math.max(before, least)), Math.log(here), Math.log(Math.max(after, least))];
  const bend = a - 2 * b + c;
  return bend < 0 ? Math.max(-0.5, Math.min(0.5, (0.5 * (a - c)) / bend)) : 0;
}

const NONE: Shift = { x: 0, y: 0, peak: 0 };

/** The top of a map of shifts, which wraps round at its sides. */
function topOfMap(map: Float64Array, side: number, whole: number): Shift {
  let best = 0;
  for (let k = 1; k < map.length; k += 1) if (map[k]! > map[best]!) best = k;
  const peak = map[best]!;
  if (!(peak > 0)) return NONE;
  const [x, y] = [best % side, Math.floor(best / side)];
  const at = (column: number, row: number): number => map[((row + side) % side) * side + ((column + side) % side)]!;
  return {
    x: (x < side / 2 ? x : x - side) + topOf(at(x - 1, y), peak, at(x + 1, y)),
    y: (y < side / 2 ? y : y - side) + topOf(at(x, y - 1), peak, at(x, y + 1)),
    peak: Math.min(1, peak / whole),
  };
}

/** A corner so moved by a whole shift that both windows stay within the picture; undefined where none does. */
function cornerAt(from: number, shift: number, most: number): readonly [a: number, b: number] | undefined {
  const b = Math.max(0, Math.min(most, from + shift));
  return b - shift >= 0 && b - shift <= most ? [b - shift, b] : undefined;
}

/** A correlator for square windows whose side is a power of two, 8 or above. Throws RangeError for others. */
export function createCorrelator(side: number): Correlator {
  requireCount({ side }, 8);
  const size = side * side;
  const transform = createSquareTransform(side);
  const { at, opposite, times, weights, fineCount, spread } = ratesOf(transform, side);
  const [real, imaginary] = [new Float64Array(size), new Float64Array(size)];
  const room = () => new Float64Array(at.length);
  const [phaseReal, phaseImaginary, lengths, sumReal, sumImaginary] = [room(), room(), room(), room(), room()];
  const edge = hann(side);
  const fade = Float64Array.from({ length: size }, (_, i) => edge[i % side]! * edge[Math.floor(i / side)]!);
  const faded = fade.reduce((sum, weight) => sum + weight, 0);
  const fineTimes = times.subarray(0, fineCount).reduce((sum, count) => sum + count, 0);

  /** Takes a window, its mean off; false where nothing is left. */
  const fill = ({ values, stride }: Picture, left: number, top: number, into: Float64Array): boolean => {
    let sum = 0;
    for (let y = 0, i = 0; y < side; y += 1)
      for (let from = (top + y) * stride + left, x = from; x < from + side; x += 1, i += 1) {
        const value = fade[i]! * values[x]!;
        into[i] = value;
        sum += value;
      }
    const mean = sum / faded;
    let squares = 0;
    for (let i = 0; i < size; i += 1) {
      const value = into[i]! - mean * fade[i]!;
      into[i] = value;
      squares += value * value;
    }
    return squares > (PLAIN * mean) ** 2 * faded;
  };

  /** Adds the phases of one pair of windows; how much they can add at most. */
  const addPhases = (a: Picture, b: Picture, x: readonly [number, number], y: readonly [number, number]): number => {
    // Two real pictures share one transform: their spectra are its even and odd parts.
    if (!fill(a, x[0], y[0], real) || !fill(b, x[1], y[1], imaginary)) return 0;
    transform.forth(real, imaginary);
    let left = 0;
    for (let i = 0; i < at.length; i += 1) {
      const k = at[i]!;
      const m = opposite[i]!;
      const ar = real[k]! + real[m]!;
      const ai = imaginary[k]! - imaginary[m]!;
      const br = imaginary[k]! + imaginary[m]!;
      const bi = real[m]! - real[k]!;
      const phaseOfReal = ar * br + ai * bi;
      const phaseOfImaginary = ar * bi - ai * br;
      const length = Math.sqrt(phaseOfReal * phaseOfReal + phaseOfImaginary * phaseOfImaginary);
      phaseReal[i] = phaseOfReal;
      phaseImaginary[i] = phaseOfImaginary;
      lengths[i] = length;
      if (i < fineCount) left += times[i]! * length;
    }
    const noise = Math.max(left / fineTimes, 1e-30);
    let whole = 0;
    for (let i = 0; i < at.length; i += 1) {
      const weight = weights[i]! / (lengths[i]! + noise);
      whole += times[i]! * weight * lengths[i]!;
      sumReal[i]! += weight * phaseReal[i]!;
      sumImaginary[i]! += weight * phaseImaginary[i]!;
    }
    return whole;
  };

  /** The shift that is left once `b` is looked at so many whole pixels on. */
  const beyond = (a: Picture, b: Picture, corners: readonly Corner[], dx: number, dy: number): Shift => {
    sumReal.fill(0);
    sumImaginary.fill(0);
    let whole = 0;
    for (const { left, top } of corners) {
      const x = cornerAt(left, dx, a.stride - side);
      const y = cornerAt(top, dy, a.values.length / a.stride - side);
      if (x && y) whole += addPhases(a, b, x, y);
    }
    if (whole === 0) return NONE;
    for (let i = 0; i < at.length; i += 1) {
      // A real map: opposite rates mirror each other.
      real[at[i]!] = real[opposite[i]!] = sumReal[i]!;
      imaginary[opposite[i]!] = -sumImaginary[i]!;
      imaginary[at[i]!] = sumImaginary[i]!;
    }
    transform.back(real, imaginary);
    return topOfMap(real, side, whole);
  };

  const shift: Correlator['shift'] = (a, b, corners) => {
    const first = beyond(a, b, corners, 0, 0);
    const [dx, dy] = [Math.round(first.x), Math.round(first.y)];
    if (dx === 0 && dy === 0) return first;
    const second = beyond(a, b, corners, dx, dy);
    // A peak that does not grow was no shift to begin with.
    return second.peak > first.peak ? { x: dx + second.x, y: dy + second.y, peak: second.peak } : first;
  };
  const chance = Math.sqrt(2 * Math.log(size)) * spread;
  return { shift, leastPeak: Math.max(LEAST_PEAK, ABOVE_CHANCE * chance) };
}
