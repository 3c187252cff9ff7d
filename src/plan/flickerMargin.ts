/** The limit on flicker: the swing of the frames against what is allowed, judged once the settings are found. */
import type { Swing } from '../laws/flicker/seen.ts';
import type { FlickerAt, FlickerFound } from './flicker.ts';
import { CEILING_STOPS, stateOf, stopsOf } from './limits.ts';
import type { GivenEntry } from './givens.ts';
import type { Assumption, Margin, Missing } from './types.ts';

/** The two figures compared. */
export const SWING = 'flickerSwing_stops';
export const SWING_ALLOWED = 'flickerAllowed_stops';

export interface FlickerJudged {
  readonly found: FlickerFound;
  readonly at: FlickerAt | undefined;
  /** What the shot allows. */
  readonly allowed: GivenEntry;
  /** What keeps rate, shutter, playback or length from being known. */
  readonly lacks: readonly Missing[];
}

/** The swing of the frames as it is told: one that can be dark swings without end, and as far as anything is said to. */
export const swingSaid = ({ peakToPeak_stops }: Swing): number => Math.min(peakToPeak_stops, CEILING_STOPS);

/** The margin of a shot whose set-up has lamps. */
export function flickerMargin({ found, at, allowed, lacks }: FlickerJudged): Margin {
  const { seen, most_stops = NaN, least_stops = NaN } = found;
  const need = allowed.value;
  const have = at && seen ? swingSaid(seen.worst) : NaN;
  const stopsAt = (swing_stops: number) => stopsOf('ratio', 'at-most', swing_stops, need);
  const value = stopsAt(have);
  const isKnown = Number.isFinite(value);
  const stops = { value, low: Math.min(value, stopsAt(most_stops)), high: Math.max(value, stopsAt(least_stops)) };
  const missing = isKnown ? [] : [...found.missing, ...lacks, ...(Number.isNaN(need) ? [lackOf(allowed)] : [])];
  return {
    id: 'flicker',
    title: 'Flicker',
    isHard: false,
    state: isKnown ? stateOf(stops) : 'unknown',
    kind: 'stops',
    sense: 'at-most',
    ...(have >= 0 ? { have } : {}),
    ...(Number.isFinite(need) ? { need } : {}),
    ...(isKnown ? { stops, spare: need - have } : {}),
    path: allowed.path,
    haveName: SWING,
    needName: SWING_ALLOWED,
    missing,
    assumed: [...allowedAssumed(allowed), ...found.assumed],
  };
}

const lackOf = ({ title, path, isUnread }: GivenEntry): Missing => ({ name: SWING_ALLOWED, title, path, because: isUnread === true ? 'unread' : 'absent' }); // prettier-ignore

function allowedAssumed({ title, value, path, assumed }: GivenEntry): readonly Assumption[] {
  return assumed === undefined ? [] : [{ name: SWING_ALLOWED, title, value, kind: 'stops', why: assumed, path }];
}
