/** Where cues, action, trigger and memory lie on one strip of real time, in hundredths of its width. */
import type { CueTiming, ShotTiming } from '../../../plan/timing/types.ts';
import { labelTick, ticksWithin, tickStep_s } from '../../parts/ticks.ts';

export interface Span {
  readonly from_s: number;
  readonly to_s: number;
}

export type Reach = 'action' | 'memory';

/** Room at both ends, as a share of what is shown. */
const EDGE = 0.05;
/** A spread is drawn to this many standard deviations: eight times in ten it lies within. */
export const DRAWN_SPREADS = 1.2816;

const known = (values: readonly (number | undefined)[]): readonly number[] =>
  values.filter((value) => value !== undefined && Number.isFinite(value)) as readonly number[];

/** What the strip shows: everything that happens about the action, or all that the memory holds. */
export function spanOf(timing: ShotTiming, reach: Reach): Span {
  const { cues, action_s, handle_s, trigger, memory, meeting } = timing;
  const times = known([
    -handle_s,
    action_s + handle_s,
    meeting?.at_s,
    trigger?.comesLow_s,
    trigger?.comesHigh_s,
    ...cues.flatMap(({ fire_s, rests_s }) => [fire_s, rests_s]),
    ...(reach === 'memory' ? [trigger?.keepsFrom_s, trigger?.keepsTo_s, memory?.trimFrom_s, memory?.trimTo_s] : []),
  ]);
  const [from_s, to_s] = [Math.min(...times), Math.max(...times)];
  const edge_s = Math.max(1e-4, (to_s - from_s) * EDGE);
  return { from_s: from_s - edge_s, to_s: to_s + edge_s };
}

export const placeOf = (time_s: number, { from_s, to_s }: Span): number =>
  Math.min(100, Math.max(0, (100 * (time_s - from_s)) / (to_s - from_s)));

export interface Tick {
  readonly at: number;
  readonly real: string;
  /** On the screen, where the shot plays at one speed and there is film there. */
  readonly screen?: string;
}

/** Ticks of both rulers: real time, and the screen time that it becomes within what is kept. */
export function ticksOf(timing: ShotTiming, span: Span, mostCount: number): readonly Tick[] {
  const { screenStretchRatio: stretch, action_s, handle_s } = timing;
  const step_s = tickStep_s({ span_s: span.to_s - span.from_s, most: Math.max(2, mostCount) });
  return ticksWithin({ ...span, step_s }).map((time_s) => {
    const isKept = time_s >= -handle_s - 1e-9 && time_s <= action_s + handle_s + 1e-9;
    return {
      at: placeOf(time_s, span),
      real: labelTick({ time_s, step_s, secondsFrom_s: 1 }),
      ...(stretch !== undefined && isKept ? { screen: labelTick({ time_s: time_s * stretch, step_s: step_s * stretch }) } : {}),
    };
  });
} // prettier-ignore

export interface CueLane {
  readonly id: string;
  readonly title: string;
  readonly fire: number;
  readonly moves: number;
  readonly arrives: number;
  readonly rests: number;
  /** How far its arrival varies, eight times in ten. */
  readonly low: number;
  readonly high: number;
}

/** Nothing where its time is not known. */
export function laneOf(cue: CueTiming, span: Span): CueLane | undefined {
  const { id, title, fire_s, moves_s, arrives_s, rests_s, spread_s = 0 } = cue;
  if (fire_s === undefined || moves_s === undefined || arrives_s === undefined || rests_s === undefined) return undefined;
  const half_s = DRAWN_SPREADS * spread_s;
  return {
    id,
    title,
    fire: placeOf(fire_s, span),
    moves: placeOf(moves_s, span),
    arrives: placeOf(arrives_s, span),
    rests: placeOf(rests_s, span),
    low: placeOf(arrives_s - half_s, span),
    high: placeOf(arrives_s + half_s, span),
  };
} // prettier-ignore

/** The share of the memory after the trigger that puts the end of what is kept so much later, to a hundredth. */
export function postAfterDrag(postTriggerFraction: number, dragged_s: number, recordTime_s: number): number {
  const post = postTriggerFraction + dragged_s / recordTime_s;
  return Math.min(1, Math.max(0, Math.round(post * 100) / 100));
}
