/** How rigs and triggers usually behave, where nobody has measured them. */
import { NINETIETH_SPREADS } from '../../laws/chance/normal.ts';
import type { Rig, Shot } from '../../document/schema.ts';

/** Least, usual and most of a figure, in milliseconds. */
type Range_ms = readonly [least: number, usual: number, most: number];

interface Usual {
  /** What works it, for the words of an assumption. */
  readonly says: string;
  readonly latency_ms: Range_ms;
  readonly jitter_ms: Range_ms;
}

const NO_SOURCE = 'common practice, no source';

/** @source cue-practice */
const RIGS: Readonly<Record<NonNullable<Rig['kind']>, Usual>> = {
  relay: { says: 'a relay', latency_ms: [3, 8, 15], jitter_ms: [0.2, 0.5, 1] },
  latch: { says: 'a spring latch', latency_ms: [15, 27, 40], jitter_ms: [1, 2, 3] },
  solenoid: { says: 'a solenoid', latency_ms: [10, 20, 30], jitter_ms: [0.5, 1, 2] },
  valve: { says: 'a fast valve', latency_ms: [1, 3, 5], jitter_ms: [0.05, 0.1, 0.2] },
  pneumatic: { says: 'compressed air', latency_ms: [20, 60, 100], jitter_ms: [2, 5, 10] },
  motor: { says: 'a motor or arm', latency_ms: [10, 30, 80], jitter_ms: [0.5, 2, 5] },
  person: { says: 'a hand on a count', latency_ms: [-20, 0, 20], jitter_ms: [25, 35, 45] },
};

export type TriggerBy = NonNullable<Shot['trigger']['by']>;

/** A person's are those of reaction.ts: 230 ms on average, 45 ms either way. @source reaction-practice @source cue-practice */
const TRIGGERS: Readonly<Record<TriggerBy, Usual>> = {
  person: { says: 'a person at a button', latency_ms: [200, 230, 260], jitter_ms: [35, Math.hypot(20, 40), 55] },
  electric: { says: 'an electric signal', latency_ms: [0, 0.5, 1], jitter_ms: [0, 0.1, 0.2] },
  beam: { says: 'a light gate', latency_ms: [0.2, 1, 2], jitter_ms: [0.1, 0.2, 0.5] },
  sound: { says: 'a microphone within a metre', latency_ms: [1, 4, 8], jitter_ms: [0.5, 1, 2] },
  contact: { says: 'a contact', latency_ms: [0.5, 2, 5], jitter_ms: [0.2, 0.5, 1] },
  picture: { says: 'a change in the picture', latency_ms: [2, 10, 30], jitter_ms: [1, 3, 8] },
};

/** A figure somebody may assume: half the width of its band as its spread, and why. */
export interface UsualFigure {
  readonly value: number;
  readonly spread: number;
  readonly why: string;
}

export interface UsualDelay {
  readonly latency_s: UsualFigure;
  readonly jitter_s: UsualFigure;
}

const figureOf = (says: string, [least, usual, most]: Range_ms): UsualFigure => ({
  value: usual / 1000,
  spread: (most - least) / 2000,
  why: `usual for ${says}: ${least} to ${most} ms; ${NO_SOURCE}`,
});

const delayOf = ({ says, latency_ms, jitter_ms }: Usual): UsualDelay => ({
  latency_s: figureOf(says, latency_ms),
  jitter_s: figureOf(says, jitter_ms),
});

/** How a rig of this kind usually behaves; undefined where its kind is not known. */
export function usualRig(kind: Rig['kind']): UsualDelay | undefined {
  return kind === undefined ? undefined : delayOf(RIGS[kind]);
}

export function usualTrigger(by: TriggerBy): UsualDelay {
  return delayOf(TRIGGERS[by]);
}

/** Jitter that somebody states is this near, P10 to P90; common practice, no source. */
export const STATED_JITTER_RATIO = 0.3;

const USUAL_FIRINGS = 30;

/**
 * How near a jitter measured by so many firings is, P10 to P90: a standard deviation of n normal values strays by
 * 1/√(2(n − 1)) of itself. Of one firing none is told, and it is no nearer than to itself.
 */
export function measuredJitterRatio(firingCount = USUAL_FIRINGS): number {
  return firingCount < 2 ? 1 : Math.min(1, NINETIETH_SPREADS / Math.sqrt(2 * (firingCount - 1)));
}

/** Share of takes in which things should meet, and in which the memory should hold the action, where nobody says. */
export const WANTED = { meeting: 0.8, catch: 0.95 } as const;

/** What passes for meeting where nobody says: within this share of the frame of one another. */
export const MEETING_SHARE = 0.05;
