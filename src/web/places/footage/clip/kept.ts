/** The part of a clip that is kept: from its first frame to its last. Nothing is ever trimmed; it is what goes on from here. */
import type { Measurement } from '../../../../measure/types.ts';
import { clampFrame } from './axis.ts';
import { sayTime, type ClipRates } from './clipTimes.ts';

export interface Kept {
  readonly inFrame: number;
  readonly outFrame: number;
}

export type End = 'in' | 'out';

/** What is suggested: the action with its handles, or all of it where none was found. */
export function suggestedOf({ action, frameCount }: Pick<Measurement, 'action' | 'frameCount'>): Kept {
  return action ? { inFrame: action.in, outFrame: action.out } : { inFrame: 0, outFrame: Math.max(0, frameCount - 1) };
}

/** What was kept, as far as the clip has it, or what is suggested. */
export function keptOf(kept: Kept | undefined, suggested: Kept, frameCount: number): Kept {
  if (!kept) return suggested;
  const inFrame = clampFrame(kept.inFrame, frameCount);
  return { inFrame, outFrame: Math.max(inFrame, clampFrame(kept.outFrame, frameCount)) };
}

/** One end at another frame: within the clip, and never past the other end. */
export function withEnd(kept: Kept, end: End, frame: number, frameCount: number): Kept {
  const at = clampFrame(frame, frameCount);
  return end === 'in'
    ? { ...kept, inFrame: Math.min(at, kept.outFrame) }
    : { ...kept, outFrame: Math.max(at, kept.inFrame) };
}

export const isSame = (a: Kept, b: Kept): boolean => a.inFrame === b.inFrame && a.outFrame === b.outFrame;

export const frameOfEnd = ({ inFrame, outFrame }: Kept, end: End): number => (end === 'in' ? inFrame : outFrame);

export const countOf = ({ inFrame, outFrame }: Kept): number => outFrame - inFrame + 1;

export interface KeptSaid {
  readonly frames: string;
  readonly real: string;
  readonly screen: string;
}

export function sayKept(kept: Kept, { frameRate_fps, playback_fps }: ClipRates): KeptSaid {
  const count = countOf(kept);
  return {
    frames: `${count} ${count === 1 ? 'frame' : 'frames'}`,
    real: sayTime(count / frameRate_fps, frameRate_fps),
    screen: sayTime(count / playback_fps, playback_fps),
  };
}
