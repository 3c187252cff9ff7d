/** The shot in time: what fires when, what meets, which part of the memory is kept. The clock's zero is the start of the action. */
import type { Cue, Rig } from '../../document/schema.ts';
import type { Assumption, Missing } from '../lacks.ts';

/** One cue, worked back from the moment at which it must arrive. A time that rests on what is missing is absent. */
export interface CueTiming {
  readonly id: string;
  /** Start of the names of its numbers, for `explain`: `cue0` of `cue0Fire_s`, `cue0Travel_s`, `cue0Spread_s`. */
  readonly prefix: string;
  readonly title: string;
  readonly rig: string | undefined;
  readonly rigTitle: string;
  readonly rigKind: Rig['kind'];
  readonly does: NonNullable<Cue['does']>;
  /** From signal to movement. */
  readonly latency_s?: number;
  /** From movement to arrival. */
  readonly travel_s?: number;
  readonly settle_s: number;
  /** When its signal is given, when it moves, when it has arrived and when it rests. */
  readonly fire_s?: number;
  readonly moves_s?: number;
  readonly arrives_s?: number;
  readonly rests_s?: number;
  /** When its signal is given after the first of all signals: what is set on the controller, never below zero. */
  readonly afterFirst_s?: number;
  /** How far its arrival varies, one standard deviation: signal, release and place together. */
  readonly spread_s?: number;
  /** Share of the variance of all that must meet that is this one's. */
  readonly shareOfSpreadFraction: number;
  /** Speed with which it arrives, where it has one. */
  readonly arrivalSpeed_m_per_s?: number;
  /** What one millisecond of delay moves it at the meeting: along its path, and in frames. */
  readonly millisecondMoves_m?: number;
  readonly millisecondFrames?: number;
  /** What one centimetre more of path or height delays it by. */
  readonly centimetreDelays_s?: number;
  /** It need not meet the others. */
  readonly isApart: boolean;
  readonly missing: readonly Missing[];
  readonly assumed: readonly Assumption[];
}

export interface Meeting {
  /** After the start of the action. */
  readonly at_s: number;
  /** All must arrive within this time of one another. */
  readonly tolerance_s: number;
  readonly toleranceFrames?: number;
  /** Chance that they do, in closed form; undefined while an input is missing. */
  readonly chanceFraction?: number;
  readonly wantedFraction: number;
  /** Id of the cue whose spread counts most. */
  readonly dominant?: string;
  /** How small that one's spread would have to be for the chance wanted, the others as they are; undefined where none would do. */
  readonly dominantSpreadNeeded_s?: number;
  /** Whether a spread behind it was neither measured nor stated. */
  readonly isAssumed: boolean;
}

export interface Catching {
  readonly postTriggerFraction: number;
  readonly caughtFraction: number;
  readonly headLostFraction: number;
  readonly tailLostFraction: number;
}

/**
 * The trigger and what it keeps of a memory that records round and round; absent while something it rests on is missing,
 * which the margin `trigger-catch` names. The shares of `set` and `best` are of takes in which it fires as it should.
 */
export interface TriggerTiming {
  readonly by: 'person' | 'electric' | 'beam' | 'sound' | 'contact' | 'picture';
  /** When what it answers happens. */
  readonly answers_s: number;
  /** When the trigger comes: median, P10 and P90. */
  readonly comes_s: number;
  readonly comesLow_s: number;
  readonly comesHigh_s: number;
  /** As it is set: what was fixed, else the best. */
  readonly set: Catching;
  readonly best: Catching;
  readonly isFixed: boolean;
  /** Share of all takes whose whole action is kept, as it is set. */
  readonly chanceFraction: number;
  /** Shares of takes lost to firing early and to not firing at all. */
  readonly falseFireFraction: number;
  readonly noFireFraction: number;
  readonly wantedFraction: number;
  /** What is kept at the median: from and to. */
  readonly keepsFrom_s: number;
  readonly keepsTo_s: number;
  readonly assumed: readonly Assumption[];
}

/** What the memory holds and what is saved of it. */
export interface MemoryTiming {
  /** One partition. */
  readonly recordTime_s: number;
  readonly frameCount: number;
  readonly partitionCount: number;
  /** What is trimmed to: the action with its handles. */
  readonly trimFrom_s: number;
  readonly trimTo_s: number;
  readonly trimmedFrameCount: number;
  readonly trimmedSize_B: number;
  readonly saveTime_s?: number;
  /** How long the reset takes, on average. */
  readonly reset_s: number;
  /** Whether the next roll waits for the save, with the reset as long as it is. */
  readonly waits_s?: number;
  readonly rollsBeforeSaving: number;
  /** Where each signal, each arrival, the trigger and the action lie in the memory, or where no trigger is known in what is kept: frames from its start. */
  readonly marks: readonly { readonly title: string; readonly at_s: number; readonly frame: number }[];
  readonly assumed: readonly Assumption[];
}

export interface ShotTiming {
  /** Real length of the action, with the handles kept before and after it. */
  readonly action_s: number;
  readonly handle_s: number;
  readonly captureRate_fps: number;
  /** Screen seconds for each real second at constant speed; absent for a speed profile. */
  readonly screenStretchRatio?: number;
  /** In the order in which they fire; those whose time is not known come last. */
  readonly cues: readonly CueTiming[];
  readonly meeting?: Meeting;
  readonly trigger?: TriggerTiming;
  readonly memory?: MemoryTiming;
  /** Why rigs can never meet or the memory never hold it, and by how much. */
  readonly impossible: readonly { readonly says: string; readonly path: string }[];
  /** Who arms, who calls clear, what disarms and shields, in the order of the cues. */
  readonly safety: readonly { readonly rig: string; readonly arms?: string; readonly clears?: string; readonly disarm?: string; readonly shield?: string }[];
} // prettier-ignore

/** The same shot rolled many times by chance. */
export interface SampledTiming {
  readonly sampleCount: number;
  readonly seedCount: number;
  /** Shares of takes, each with its standard error. */
  readonly meets?: Share;
  readonly inTheFrame?: Share;
  readonly inDepth?: Share;
  readonly inMemory?: Share;
  /** All of them in the same take. */
  readonly all: Share;
  /** Takes to allow for one good one, nine days in ten. */
  readonly takesAllowedCount?: number;
}

export interface Share {
  readonly fraction: number;
  readonly standardErrorFraction: number;
}
