/**
 * Which rates a beat seen from frame to frame may come from, and which of them several clips agree on.
 *
 *     f ∈ { |n·R ± a| }
 *
 * a beat, 0 to R/2        R frame rate        n 0, 1, 2 …
 *
 * @source wagon-wheel the same folding, the other way round
 */
import { requirePositive, requireWithin } from '../../base/domain.ts';
import { alias_Hz } from '../../laws/flicker/alias.ts';

export interface Beat {
  readonly beat_Hz: number;
  readonly frameRate_fps: number;
}

/** Rates up to a limit that would all look like this beat, slowest first. Throws RangeError for a beat beyond half the frame rate. */
export function candidates_Hz({ beat_Hz, frameRate_fps, limit_Hz }: Beat & { readonly limit_Hz: number }): readonly number[] {
  requirePositive({ frameRate_fps, limit_Hz });
  requireWithin(0, frameRate_fps / 2, { beat_Hz });
  const found: number[] = [];
  for (let n = 0; n * frameRate_fps - beat_Hz <= limit_Hz; n += 1)
    for (const rate_Hz of [n * frameRate_fps - beat_Hz, n * frameRate_fps + beat_Hz])
      if (rate_Hz > 0 && rate_Hz <= limit_Hz && rate_Hz !== found.at(-1)) found.push(rate_Hz);
  return found;
} // prettier-ignore

/** A beat found in a clip, with the standard deviation of its rate. */
export type FoundBeat = Beat & { readonly deviation_Hz: number };

/** Farther off than this many standard deviations a rate is another one. */
const FARTHEST = 4;

/** Rates that would give every one of these beats, best first: those that lie nearest to all of them together. */
export function agreedOn_Hz(beats: readonly FoundBeat[], limit_Hz: number): readonly number[] {
  const [first, ...others] = beats;
  if (!first) return [];
  const offOf = (rate_Hz: number, { beat_Hz, frameRate_fps, deviation_Hz }: FoundBeat): number =>
    Math.abs(alias_Hz({ ripple_Hz: rate_Hz, frameRate_fps }) - beat_Hz) / Math.hypot(deviation_Hz, first.deviation_Hz);
  return candidates_Hz({ ...first, limit_Hz })
    .map((rate_Hz) => ({ rate_Hz, offs: others.map((beat) => offOf(rate_Hz, beat)) }))
    .filter(({ offs }) => offs.every((off) => off <= FARTHEST))
    .sort((a, b) => squares(a.offs) - squares(b.offs) || a.rate_Hz - b.rate_Hz)
    .map(({ rate_Hz }) => rate_Hz);
}

const squares = (values: readonly number[]): number => values.reduce((sum, value) => sum + value * value, 0);
