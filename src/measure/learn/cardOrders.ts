/**
 * Which harmonics of a lamp frames can tell apart: those that the shutter does not average out, that beat apart from one
 * another, and neither so slowly that they pass for a change of light nor at half the frame rate, where only half of a
 * wave is met.
 *
 *     order k beats at |k·f − R·round(k·f/R)| and is left |sinc(k·f·T)| of by the shutter
 *
 * f rate of the lamp, Hz        R frames a second        T exposure time, s        a beat is known to R/N over N frames
 *
 * @source exposure-mean
 * @source wagon-wheel the folding
 */
import { requirePositive } from '../../base/domain.ts';
import { alias_Hz } from '../../laws/flicker/alias.ts';
import { sinc } from '../../laws/flicker/waveform.ts';

export interface OrdersGiven {
  readonly rate_Hz: number;
  readonly frameRate_fps: number;
  readonly exposureTime_s: number;
  readonly frameCount: number;
}

export interface SeenOrder {
  readonly order: number;
  /** Share of it that the shutter leaves. */
  readonly leftFraction: number;
  /** Orders that cannot be told from this one, were they there. */
  readonly meets: readonly number[];
}

export interface Orders {
  readonly seen: readonly SeenOrder[];
  /** Orders up to the last that is looked at, that beat where they cannot be told. */
  readonly unseen: readonly number[];
}

/** Highest harmonic that is looked at: a pulse a fiftieth of its period wide still shows. */
export const MOST_ORDER = 64;
/** Highest harmonic of a lamp that may beat like one that is told. */
const FARTHEST_MET = 256;
/** A shutter that leaves less than this of a harmonic hides it: its noise is five times as large in the lamp. */
export const LEAST_LEFT = 0.2;
/** Beats nearer than this many steps of what the clip tells apart meet. */
const APART = 2;
/** The rate of a wave is known far better than that: nearer than this, two are one. */
const SAME = 0.5;
/** Slower than this many steps, a beat passes for a change of light. */
export const SLOWEST = 3;
/** Nearer to half the frame rate than this many steps, only half of a wave is met. */
const BELOW_HALF = 1;

/** The harmonics that a clip can tell. Throws RangeError outside positive inputs. */
export function ordersOf({ rate_Hz, frameRate_fps, exposureTime_s, frameCount }: OrdersGiven): Orders {
  requirePositive({ rate_Hz, frameRate_fps, exposureTime_s, frameCount });
  const step_Hz = frameRate_fps / frameCount;
  const beats = Float64Array.from({ length: FARTHEST_MET + 1 }, (_, order) =>
    alias_Hz({ ripple_Hz: order * rate_Hz, frameRate_fps }),
  );
  const leftOf = (order: number): number => Math.abs(sinc(order * rate_Hz * exposureTime_s));
  // Past the first order that the shutter hides, what it leaves is little and turned over.
  let last = 0;
  while (last < MOST_ORDER && leftOf(last + 1) >= LEAST_LEFT) last += 1;
  const taken: number[] = [];
  const unseen: number[] = [];
  for (let order = 1; order <= MOST_ORDER; order += 1) {
    const beat_Hz = beats[order]!;
    const isTold = beat_Hz >= SLOWEST * step_Hz && frameRate_fps / 2 - beat_Hz >= BELOW_HALF * step_Hz;
    const isApart = taken.every((other) => Math.abs(beats[other]! - beat_Hz) >= APART * step_Hz);
    if (order <= last && isTold && isApart) taken.push(order);
    else unseen.push(order);
  }
  const beyond = Array.from({ length: FARTHEST_MET - MOST_ORDER }, (_, i) => MOST_ORDER + 1 + i);
  const others = [...unseen, ...beyond];
  const meetsOf = (order: number) => others.filter((other) => Math.abs(beats[other]! - beats[order]!) < APART * step_Hz);
  const seen = taken.map((order) => ({ order, leftFraction: leftOf(order), meets: meetsOf(order) }));
  return { seen, unseen };
} // prettier-ignore

/** Whether a beat is that of some harmonic of a lamp, as far as a clip tells beats apart. */
export function isOfLamp(beat_Hz: number, { rate_Hz, frameRate_fps, step_Hz }: Pick<OrdersGiven, 'rate_Hz' | 'frameRate_fps'> & { readonly step_Hz: number }): boolean {
  for (let order = 1; order <= FARTHEST_MET; order += 1)
    if (Math.abs(alias_Hz({ ripple_Hz: order * rate_Hz, frameRate_fps }) - beat_Hz) < SAME * step_Hz) return true;
  return false;
} // prettier-ignore

/** Harmonics from the first on without one missing: what a shape can be put together from. */
export const unbrokenOrders = ({ seen }: Orders): number => seen.findIndex(({ order }, i) => order !== i + 1) < 0 ? seen.length : seen.findIndex(({ order }, i) => order !== i + 1); // prettier-ignore

/** Frame rates looked at for a better one, either side, and by how much each is off the one before. */
const TRIED = 30;
const STEP = 0.005;

/** A frame rate not far off that tells most harmonics apart, if it tells more than this one. */
export function betterRate_fps(given: OrdersGiven): number | undefined {
  const toldAt = (frameRate_fps: number): number =>
    frameRate_fps * given.exposureTime_s > 1 ? 0 : unbrokenOrders(ordersOf({ ...given, frameRate_fps }));
  let best = { frameRate_fps: given.frameRate_fps, told: toldAt(given.frameRate_fps) };
  for (let i = 1; i <= TRIED; i += 1)
    for (const times of [1 - i * STEP, 1 + i * STEP]) {
      const frameRate_fps = Math.round(given.frameRate_fps * times);
      const told = frameRate_fps > 0 ? toldAt(frameRate_fps) : 0;
      if (told > best.told) best = { frameRate_fps, told };
    }
  return best.frameRate_fps === given.frameRate_fps ? undefined : best.frameRate_fps;
}
