/** The flicker of a shot as a reply for programs. */
import type { SeenTone } from '../laws/flicker/seen.ts';
import { swingSaid } from '../plan/flickerMargin.ts';
import type { Assumption, FlickerLamp, ShotFlicker } from '../plan/types.ts';

/** Harmonics that are told, strongest first. */
const MOST_TONES = 8;

/** The flicker of a shot, its assumptions told as elsewhere in the reply. */
export function flickerReply<T>({ lamps, seen, verdict }: ShotFlicker, assumption: (of: Assumption) => T) {
  return {
    lamps: lamps.map((lamp) => lampReply(lamp, assumption)),
    ...(seen && {
      seen: {
        worst_stops: swingSaid(seen.worst),
        best_stops: swingSaid(seen.best),
        betweenTakes_stops: swingSaid(seen.betweenTakes),
        looksLike: seen.looksLike,
        tones: seen.tones.slice(0, MOST_TONES).map(toneReply),
        ...(seen.cannotTell === undefined ? {} : { cannotTell: seen.cannotTell }),
      },
    }),
    ...(verdict && {
      verdict: {
        verdict: verdict.verdict,
        remedy: verdict.remedy,
        thresholdRatio: verdict.timesThreshold,
        why: verdict.why,
      },
    }),
  };
}

function lampReply<T>(lamp: FlickerLamp, assumption: (of: Assumption) => T) {
  const { id, title, shareFraction, says, basis, assumed, ripple_Hz, depthFraction, unknown } = lamp;
  const common = { id, title, shareFraction, says, basis, assumed: assumed.map(assumption), ripple_Hz, depthFraction };
  return { ...common, ...(unknown === undefined ? {} : { unknown }) };
}

const toneReply = ({ lamp_Hz, alias_Hz, screen_Hz, amplitudeFraction }: SeenTone) => ({ lamp_Hz, alias_Hz, screen_Hz, amplitudeFraction }); // prettier-ignore
