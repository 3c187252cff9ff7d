/** Two clips in one time: that of the set, counted from a moment that both have. */
import type { ClipBrief, ClipEntry } from '../../../record/footage.ts';

export type Alignment = 'onset' | 'peak' | 'first';

export type PairBrief = Pick<ClipBrief, 'frameCount' | 'frameRate_fps' | 'action'>;
type Pair<Of> = readonly [Of, Of];

export const alignmentsOf = (briefs: Pair<PairBrief>): readonly Alignment[] =>
  briefs.every(({ action }) => action !== undefined) ? ['peak', 'onset', 'first'] : ['first'];

export const anchorOf = ({ action }: PairBrief, alignment: Alignment): number =>
  alignment === 'first' || !action ? 0 : action[alignment];

export interface PairReach {
  readonly from_s: number;
  readonly to_s: number;
  /** A frame of the faster one. */
  readonly step_s: number;
}

export function reachOf(briefs: Pair<PairBrief>, alignment: Alignment): PairReach {
  const from = briefs.map((brief) => -anchorOf(brief, alignment) / brief.frameRate_fps);
  const to = briefs.map((brief) => (brief.frameCount - 1 - anchorOf(brief, alignment)) / brief.frameRate_fps);
  return {
    from_s: Math.min(...from),
    to_s: Math.max(...to),
    step_s: 1 / Math.max(...briefs.map(({ frameRate_fps }) => frameRate_fps)),
  };
}

export interface FrameAt {
  /** Within the clip. */
  readonly frame: number;
  /** The moment lies before its first frame, or after its last. */
  readonly beyond?: 'before' | 'after';
}

export function frameAt(brief: PairBrief, alignment: Alignment, time_s: number): FrameAt {
  const frame = Math.round(anchorOf(brief, alignment) + time_s * brief.frameRate_fps);
  const last = brief.frameCount - 1;
  if (frame < 0) return { frame: 0, beyond: 'before' };
  return frame > last ? { frame: last, beyond: 'after' } : { frame };
}

/** Clips that a clip may stand beside: those that were measured, takes of the same shot first. */
export function besides(clips: readonly ClipEntry[], of: ClipEntry | undefined): readonly ClipEntry[] {
  const others = clips.filter(({ id, isAside, brief }) => id !== of?.id && !isAside && brief !== undefined);
  return [
    ...others.filter(({ shotId }) => shotId === of?.shotId),
    ...others.filter(({ shotId }) => shotId !== of?.shotId),
  ];
}
