/** The day as it may go: many days drawn by chance, told as when each shot and the day itself will end. */
import type { Duty } from '../../document/schema.ts';
import type { Assumption, Missing } from '../types.ts';

/** What time is spent on. */
export type DayWork =
  | 'change' // set, light, camera, lens or format from the shot before
  | 'reference'
  | 'element'
  | 'reset'
  | 'safety'
  | 'wait' // for the memory, for media, for a hero
  | 'roll'
  | 'review'
  | 'meal'
  | 'save'
  | 'copy';

/** When something happens, seconds of the day: nine days in ten it is no later than `late_s`. */
export interface Moment {
  readonly early_s: number;
  readonly middle_s: number;
  readonly late_s: number;
}

export interface DayShot {
  readonly shotId: string;
  readonly title: string;
  readonly starts: Moment;
  readonly ends: Moment;
  readonly takes: { readonly early: number; readonly middle: number; readonly late: number };
  readonly piecesUsed?: { readonly product: string; readonly middle: number; readonly late: number };
  /** Mean time spent on each kind of work, seconds. */
  readonly spent_s: Readonly<Partial<Record<DayWork, number>>>;
  /** Why it stands where it does: what it shares with the shot before. */
  readonly because: string;
  /** Nothing is shot of it any more. */
  readonly isDone: boolean;
}

/** One stretch of the middle day, for drawing: the day of those drawn whose wrap is nearest the median. */
export interface DayBlock {
  readonly work: DayWork;
  readonly lane: 'floor' | 'save' | 'copy';
  readonly shotId?: string;
  readonly take?: number;
  readonly from_s: number;
  readonly to_s: number;
  readonly says: string;
}

/** What would end the day sooner, each found by drawing the same days again. */
export interface DaySaving {
  readonly title: string;
  readonly says: string;
  /** Of the late end, seconds. */
  readonly saves_s: number;
}

export interface DriveFill {
  readonly drive: string;
  readonly title: string;
  readonly holds: 'saves' | 'copies';
  readonly free_B: number;
  /** On it at the end, from this day: middle and late. */
  readonly middle_B: number;
  readonly late_B: number;
  readonly isShort: boolean;
}

export interface DayJob {
  readonly by: Duty;
  readonly title: string;
  readonly time_s: number;
}

export interface DayPlan {
  readonly dayCount: number;
  readonly seedCount: number;
  readonly starts_s: number;
  readonly wrapsBy_s?: number;
  readonly shots: readonly DayShot[];
  /** The order that was judged, and whether a person fixed it, it was proven best, or is the best found. */
  readonly order: readonly string[];
  readonly orderBy: 'fixed' | 'proven' | 'found';
  /** Time that changes take in this order, and in the order as written. */
  readonly changes_s: number;
  readonly changesAsWritten_s: number;
  readonly wrap: Moment;
  /** When the last copy is verified. */
  readonly copied: Moment;
  /** Share of days that end by the wrap, where one is set. */
  readonly inTimeFraction?: number;
  readonly overtime?: { readonly middle_s: number; readonly late_s: number; readonly latePrice?: number };
  /** What the late end hangs on: shares of the time of the day by kind of work, largest first. */
  readonly path: readonly { readonly work: DayWork; readonly shareFraction: number; readonly time_s: number }[];
  readonly savings: readonly DaySaving[];
  readonly blocks: readonly DayBlock[];
  readonly drives: readonly DriveFill[];
  /** In plain words: "nine days in ten, wrap by 21:40". */
  readonly says: readonly string[];
  readonly warnings: readonly { readonly says: string; readonly path: string }[];
  readonly missing: readonly Missing[];
  readonly assumed: readonly Assumption[];
}
