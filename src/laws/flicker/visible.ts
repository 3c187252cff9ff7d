/**
 * Whether anybody will see it: the frames' swing against the gates that grading keeps, and their beats against the eye.
 *
 *     q = (Σ (mₖ·S(fₖ))^β)^(1/β), β 3.7; seen at q ≥ 1
 *
 * mₖ amplitude of a beat over the mean      S sensitivity at its rate on the screen, as in `eye.ts`
 *
 * Gates from dimmest to brightest: 0.01 stop passes, to 0.03 look at plain backgrounds, to 0.1 seen and repairable, beyond
 * that shoot again.
 *
 * @source flicker-practice the gates
 * @source eye-choices the power that beats are added with
 */
import { eyeSensitivity, type Viewing } from './eye.ts';
import type { SeenFlicker, SeenTone } from './seen.ts';

/** Stops from dimmest to brightest. @source flicker-practice */
export const FLICKER_GATES_stops = { passes: 0.01, look: 0.03, repair: 0.1 } as const;

const POOLING = 3.7;

export interface FlickerVerdict {
  readonly verdict: 'invisible' | 'marginal' | 'visible';
  /** What can be done about it in the grade. */
  readonly remedy: 'none needed' | 'look at plain backgrounds' | 'can be repaired' | 'shoot again';
  /** Times the least that an eye sees; at 1 it is seen. */
  readonly timesThreshold: number;
  readonly why: string;
}

/** Beats at one rate on the screen count as one, at their worst: their amplitudes add. */
function byRate(tones: readonly SeenTone[]): ReadonlyMap<number, number> {
  const rates = new Map<number, number>();
  for (const { screen_Hz, alias_Hz, amplitudeFraction } of tones) {
    if (alias_Hz === 0) continue;
    const rate_Hz = Number(screen_Hz.toPrecision(9));
    rates.set(rate_Hz, (rates.get(rate_Hz) ?? 0) + amplitudeFraction);
  }
  return rates;
}

/** How many times the least that an eye sees these beats are, taken together. */
export function timesThreshold(tones: readonly SeenTone[], viewing: Viewing = {}): number {
  const sensitivity = eyeSensitivity(viewing);
  let sum = 0;
  for (const [screen_Hz, amplitude] of byRate(tones)) sum += (amplitude * sensitivity(screen_Hz)) ** POOLING;
  return sum ** (1 / POOLING);
}

function figure(value: number): string {
  return value === Infinity ? 'without limit' : String(Number(value.toPrecision(2)));
}

function whyOf(seen: SeenFlicker, times: number): string {
  const swing_stops = seen.worst.peakToPeak_stops;
  const swing = swing_stops === Infinity ? 'Some frames are dark' : `Frames swing by ${figure(swing_stops)} stop`;
  if (seen.looksLike === 'steady') {
    const drift_stops = seen.betweenTakes.peakToPeak_stops;
    if (drift_stops <= FLICKER_GATES_stops.passes) return 'Every frame gets the same light.';
    return `Every frame of a take gets the same light, but takes can differ by ${figure(drift_stops)} stop, and mains that drift show as a slow change.`;
  }
  const beat = seen.dominant ? `, ${figure(seen.dominant.screen_Hz)} times a second on the screen` : '';
  const eye = times >= 1 ? `${figure(times)} times what an eye sees` : 'below what an eye sees';
  return `${swing}${beat}, ${eye}.${seen.cannotTell === undefined ? '' : ` ${seen.cannotTell}`}`;
}

/** Whether a flicker will be seen, and in one sentence why. Throws RangeError for viewing without light or field. */
export function judgeFlicker(seen: SeenFlicker, viewing: Viewing = {}): FlickerVerdict {
  const swing_stops = seen.worst.peakToPeak_stops;
  const times = timesThreshold(seen.tones, viewing);
  const why = whyOf(seen, times);
  const { passes, look, repair } = FLICKER_GATES_stops;
  const reply = (verdict: FlickerVerdict['verdict'], remedy: FlickerVerdict['remedy']) => ({
    verdict,
    remedy,
    timesThreshold: times,
    why,
  });
  if (swing_stops <= passes)
    return times < 1 ? reply('invisible', 'none needed') : reply('marginal', 'look at plain backgrounds');
  if (swing_stops <= look || times < 1) return reply('marginal', 'look at plain backgrounds');
  return reply('visible', swing_stops <= repair ? 'can be repaired' : 'shoot again');
}
