/**
 * Frames that seem to have changed places with the ones after them, where no time of the file shows it: there the picture
 * steps forth by two, back by one and forth by two again.
 *
 *     D₁(n) = mean (s_n − g·s_{n−1})² − F        D₂(n) = mean (s_n − g·s_{n−2})² − F
 *     q(i) = (D₂(i+1) + D₂(i+2)) / (D₁(i) + D₁(i+2))
 *
 * s a fixed sample of the picture's code values above black        g its mean over that of the other frame, so that a light that
 * pulses is no step        F what noise alone does        q is 4 where things move evenly by a little, 1 where they move too far to be
 * known again, and ¼ where frames i and i+1 have changed places. What goes to and fro by itself has a small q all along, and
 * is left out.
 */
import { bulkSpreadOf, quantileInPlace } from '../base/median.ts';

/** The samples of the two frames before, and how many there were. */
export interface OrderState {
  readonly before: Uint16Array;
  readonly beforeThat: Uint16Array;
  readonly seen: number;
}

export interface Changes {
  /** Mean square of the change against the frame before, and against the one before that. */
  readonly one: number;
  readonly two: number;
}

export interface OrderMeter {
  readonly next: (sample: Uint16Array) => Changes;
  /** What comes next does not follow on what was before. */
  readonly breakOff: () => void;
  readonly state: () => OrderState;
}

/** A q below this, while a little before and after it is above the other. */
const SWAPPED = 0.5;
const IN_ORDER = 0.8;
/** Deviations of noise by which the steps must exceed what is left of them over two frames. */
const CLEAR = 12;
/** Frames away at which things must be in order again. */
const AWAY = [-4, -3, -2, 2, 3, 4] as const;

function squaresOf(now: Uint16Array, then: Uint16Array, black: number): number {
  let [sumNow, sumThen] = [0, 0];
  for (let i = 0; i < now.length; i += 1) {
    sumNow += now[i]! - black;
    sumThen += then[i]! - black;
  }
  const gain = sumThen > 0 ? sumNow / sumThen : 1;
  let squares = 0;
  for (let i = 0; i < now.length; i += 1) squares += (now[i]! - black - gain * (then[i]! - black)) ** 2;
  return squares / now.length;
}

/** A meter of samples of as many pixels, black being this code; from the first frame or from where it was saved. */
export function createOrderMeter(count: number, black: number, saved?: OrderState): OrderMeter {
  const before = saved?.before.slice() ?? new Uint16Array(count);
  const beforeThat = saved?.beforeThat.slice() ?? new Uint16Array(count);
  let seen = saved?.seen ?? 0;
  const next = (sample: Uint16Array): Changes => {
    const one = seen > 0 ? squaresOf(sample, before, black) : 0;
    const two = seen > 1 ? squaresOf(sample, beforeThat, black) : 0;
    beforeThat.set(before);
    before.set(sample);
    seen = Math.min(2, seen + 1);
    return { one, two };
  };
  return { next, breakOff: () => (seen = 0), state: () => ({ before, beforeThat, seen }) };
}

export interface OrderGiven {
  readonly one: Float64Array;
  readonly two: Float64Array;
  /** Of each frame: 0 where it is missing or repeated. */
  readonly weights: Float64Array;
}

/** First frames of pairs that seem to have changed places. */
export function outOfOrder({ one, two, weights }: OrderGiven): readonly number[] {
  const frames = one.length;
  const counted = one.filter((value, frame) => frame > 0 && weights[frame]! > 0 && value > 0);
  if (counted.length < 8) return [];
  const noise = quantileInPlace(counted.slice(), 0.1);
  const quiet = counted.filter((value) => value <= quantileInPlace(counted.slice(), 0.25));
  const deviation = Math.max(bulkSpreadOf(quiet), 0.02 * noise, Number.MIN_VALUE);
  const sums = (i: number): readonly [steps: number, left: number] | undefined => {
    for (let frame = i - 1; frame <= i + 2; frame += 1) if (!(weights[frame]! > 0)) return undefined;
    const over = (value: number): number => Math.max(0, value - noise);
    return [over(one[i]!) + over(one[i + 2]!), over(two[i + 1]!) + over(two[i + 2]!)];
  };
  const isInOrder = (i: number): boolean => {
    const of = sums(i);
    return !of || of[0] <= CLEAR * deviation || of[1] > IN_ORDER * of[0];
  };
  const found: number[] = [];
  for (let i = 2; i + 2 < frames; i += 1) {
    const of = sums(i);
    if (!of || of[1] >= SWAPPED * of[0] || of[0] - of[1] <= CLEAR * deviation) continue;
    const beside = AWAY.filter((off) => i + off >= 2 && i + off + 2 < frames);
    if (beside.every((off) => isInOrder(i + off))) found.push(i);
  }
  return found;
}
