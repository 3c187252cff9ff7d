/** The lamps of a shot as moves look at them: how each flickers alone, and which of them matters most. */
import { flickerFound, type FlickerAt, type FlickerFound } from '../flicker.ts';
import { gather, lampAt, seenOf, waveformAt, type LitLamp } from '../flickerGroups.ts';
import type { MoveContext } from './move.ts';

/** A lamp that gives light, with what it does alone. */
export interface FlickeringLamp extends LitLamp {
  /** What it adds to the swing, in stops: its own, by its share. */
  readonly adds_stops: number;
  readonly ripple_Hz: number;
  /** Its pace is known, from the mains or from what somebody wrote or measured. */
  readonly isRateKnown: boolean;
  readonly isMainsLocked: boolean;
}

export interface FlickerNow {
  readonly setupId: string;
  readonly at: FlickerAt;
  readonly found: FlickerFound;
  /** Those that flicker, the one that adds most first. */
  readonly lamps: readonly FlickeringLamp[];
}

/** A lamp that adds less than this is not worth a move. */
const LEAST_stops = 1e-4;

/** The shot's lamps at its settings; undefined where it has none. */
export function flickerNow({ shoot, effective, settings, number }: MoveContext): FlickerNow | undefined {
  const setupId = effective.shot.lighting;
  const { captureRate_fps: frameRate_fps, exposureTime_s } = settings;
  const [playback_fps, recorded_s] = [number('playRate_fps'), number('recordedTime_s')];
  if (setupId === undefined || !(playback_fps > 0 && recorded_s > 0)) return undefined;
  const frameCount = Math.max(1, Math.round(recorded_s * frameRate_fps));
  const at: FlickerAt = { frameRate_fps, exposureTime_s, playback_fps, frameCount };
  const found = flickerFound(shoot, effective, at);
  if (!found) return undefined;
  const lamps = found.lit.map((lit): FlickeringLamp => {
    const lamp = lampAt(lit, 'lamp', at);
    const alone = gather([{ ...lit, shareFraction: 1 }], 'lamp', at, found.mains_Hz);
    const { depthFraction, peakToPeak_stops } = seenOf(alone, at).worst;
    return {
      ...lit,
      adds_stops: lit.shareFraction * (Number.isFinite(peakToPeak_stops) ? peakToPeak_stops : 10 * depthFraction),
      ripple_Hz: 1 / waveformAt(lamp, lit.taken.inStepWith).period_s,
      isRateKnown: lit.taken.hasUnknownRate !== true,
      isMainsLocked: alone.groups[0]!.isMainsLocked,
    };
  });
  const flickering = lamps.filter(({ adds_stops }) => adds_stops > LEAST_stops);
  return { setupId, at, found, lamps: flickering.sort((a, b) => b.adds_stops - a.adds_stops) };
}

/** Ripples of some lamps, each once. */
export const ripplesOf = (lamps: readonly FlickeringLamp[]): readonly number[] => [...new Set(lamps.map(({ ripple_Hz }) => ripple_Hz))]; // prettier-ignore
