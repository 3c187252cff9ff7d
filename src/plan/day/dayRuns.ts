/** What many drawn days came to, in columns: a row a day, or a row for each shot of each day. */
import type { DayWork } from './types.ts';

/** Kinds of work by their column. */
export const WORKS = ['change', 'reference', 'element', 'reset', 'safety', 'wait', 'roll', 'review', 'meal', 'save', 'copy'] as const satisfies readonly DayWork[]; // prettier-ignore

export const WORK_COUNT = WORKS.length;

export const WORK = Object.fromEntries(WORKS.map((work, i) => [work, i])) as Readonly<Record<DayWork, number>>;

export interface DayRuns {
  readonly dayCount: number;
  readonly shotCount: number;
  /** By day, then shot, seconds of the day. */
  readonly starts_s: Float64Array;
  readonly ends_s: Float64Array;
  readonly takes: Float64Array;
  /** By day. */
  readonly wrap_s: Float64Array;
  readonly copied_s: Float64Array;
  readonly saved_B: Float64Array;
  /** By day, then work: time on the floor. */
  readonly work_s: Float64Array;
  /** By shot, then work: summed over the days. */
  readonly spent_s: Float64Array;
  /** By body: waits for its memory, summed over the days. */
  readonly memoryWait_s: Float64Array;
  /** By shot: takes dressed again because the hero waited too long; days on which its pieces ran out, or it was given up. */
  readonly dressedAgain: Float64Array;
  readonly ranOut: Float64Array;
  readonly gaveUp: Float64Array;
  /** Waits for room on what is saved to, summed over the days; days on which no more could be cleared. */
  readonly totals: { mediaWait_s: number; fullDays: number; longWorkDays: number };
}

export function emptyRuns(dayCount: number, shotCount: number, bodyCount: number): DayRuns {
  const byShot = () => new Float64Array(dayCount * shotCount);
  const byDay = () => new Float64Array(dayCount);
  return {
    dayCount,
    shotCount,
    starts_s: byShot(),
    ends_s: byShot(),
    takes: byShot(),
    wrap_s: byDay(),
    copied_s: byDay(),
    saved_B: byDay(),
    work_s: new Float64Array(dayCount * WORK_COUNT),
    spent_s: new Float64Array(shotCount * WORK_COUNT),
    memoryWait_s: new Float64Array(bodyCount),
    dressedAgain: new Float64Array(shotCount),
    ranOut: new Float64Array(shotCount),
    gaveUp: new Float64Array(shotCount),
    totals: { mediaWait_s: 0, fullDays: 0, longWorkDays: 0 },
  };
}

/** One stretch of a day that is looked at closely. */
export interface Logged {
  readonly work: DayWork;
  readonly lane: 'floor' | 'save' | 'copy';
  /** Place of the shot in the order; -1 for a meal. */
  readonly shot: number;
  /** From 1; 0 where it is of no take. */
  readonly take: number;
  readonly from_s: number;
  readonly to_s: number;
}
