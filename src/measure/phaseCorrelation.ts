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
import { fourierOfPicture } from '../base/fourier.ts';

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

/** Turns a pixel of a place in a spectrum. */
function rateOf(i: number, side: number): number {
  const [x, y] = [i % side, Math.floor(i / side)];
  return Math.hypot(Math.min(x, side - x), Math.min(y, side - y)) / side;
}

/** Weights of all rates of a window, together 1. */
function gaussian(side: number): Float64Array {
  const weights = Float64Array.from({ length: side * side }, (_, i) =>
    i === 0 ? 0 : Math.exp(-(rateOf(i, side) ** 2) / (2 * SPREAD * SPREAD)),
  );
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / whole);
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
  const [real, imaginary] = [new Float64Array(size), new Float64Array(size)];
  const [phases, turned] = [new Float64Array(size), new Float64Array(size)];
  const [sums, turnedSums] = [new Float64Array(size), new Float64Array(size)];
  const [fade, weights] = [hann(side), gaussian(side)];
  const fine = Uint32Array.from({ length: size }, (_, i) => i).filter((i) => rateOf(i, side) >= FINE);

  /** Takes a window, its mean off; false where nothing is left. */
  const fill = ({ values, stride }: Picture, left: number, top: number, into: Float64Array): boolean => {
    let sum = 0;
    let whole = 0;
    for (let y = 0; y < side; y += 1) {
      const row = (top + y) * stride + left;
      for (let x = 0; x < side; x += 1) {
        const weight = fade[x]! * fade[y]!;
        sum += weight * values[row + x]!;
        whole += weight;
      }
    }
    const mean = sum / whole;
    let squares = 0;
    for (let y = 0; y < side; y += 1) {
      const row = (top + y) * stride + left;
      for (let x = 0; x < side; x += 1) {
        const value = fade[x]! * fade[y]! * (values[row + x]! - mean);
        into[y * side + x] = value;
        squares += value * value;
      }
    }
    return squares > (PLAIN * mean) ** 2 * whole;
  };

  /** Adds the phases of one pair of windows; how much they can add at most. */
  const addPhases = (a: Picture, b: Picture, x: readonly [number, number], y: readonly [number, number]): number => {
    // Two real pictures share one transform: their spectra are its even and odd parts.
    if (!fill(a, x[0], y[0], real) || !fill(b, x[1], y[1], imaginary)) return 0;
    fourierOfPicture(real, imaginary, side, side);
    for (let row = 0; row < side; row += 1) {
      const mirrored = row === 0 ? 0 : (side - row) * side;
      for (let column = 0; column < side; column += 1) {
        const k = row * side + column;
        const m = mirrored + (column === 0 ? 0 : side - column);
        const ar = real[k]! + real[m]!;
        const ai = imaginary[k]! - imaginary[m]!;
        const br = imaginary[k]! + imaginary[m]!;
        const bi = real[m]! - real[k]!;
        // Backwards is forwards with both parts exchanged.
        phases[k] = ar * bi - ai * br;
        turned[k] = ar * br + ai * bi;
      }
    }
    let left = 0;
    for (let i = 0; i < fine.length; i += 1) {
      const k = fine[i]!;
      left += Math.sqrt(phases[k]! * phases[k]! + turned[k]! * turned[k]!);
    }
    const noise = Math.max(left / fine.length, 1e-30);
    let whole = 0;
    for (let k = 0; k < size; k += 1) {
      const length = Math.sqrt(phases[k]! * phases[k]! + turned[k]! * turned[k]!);
      const weight = weights[k]! / (length + noise);
      whole += weight * length;
      sums[k] = sums[k]! + weight * phases[k]!;
      turnedSums[k] = turnedSums[k]! + weight * turned[k]!;
    }
    return whole;
  };

  /** The shift that is left once `b` is looked at so many whole pixels on. */
  const beyond = (a: Picture, b: Picture, corners: readonly Corner[], dx: number, dy: number): Shift => {
    sums.fill(0);
    turnedSums.fill(0);
    let whole = 0;
    for (const { left, top } of corners) {
      const x = cornerAt(left, dx, a.stride - side);
      const y = cornerAt(top, dy, a.values.length / a.stride - side);
      if (x && y) whole += addPhases(a, b, x, y);
    }
    if (whole === 0) return NONE;
    fourierOfPicture(sums, turnedSums, side, side);
    return topOfMap(turnedSums, side, whole);
  };

  const shift: Correlator['shift'] = (a, b, corners) => {
    const first = beyond(a, b, corners, 0, 0);
    const [dx, dy] = [Math.round(first.x), Math.round(first.y)];
    if (dx === 0 && dy === 0) return first;
    const second = beyond(a, b, corners, dx, dy);
    // A peak that does not grow was no shift to begin with.
    return second.peak > first.peak ? { x: dx + second.x, y: dy + second.y, peak: second.peak } : first;
  };
  const chance = Math.sqrt(2 * Math.log(size) * weights.reduce((sum, weight) => sum + weight * weight, 0));
  return { shift, leastPeak: Math.max(LEAST_PEAK, ABOVE_CHANCE * chance) };
}
