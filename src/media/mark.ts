/**
 * Where the reading of a clip was stopped, and how the place is found again: by the time of the frame read last, or by
 * counting, and in either case by what that frame holds, so that what follows is what would have followed.
 */
import { createHash } from 'node:crypto';
import { Fault } from '../base/fault.ts';

/** The frame that was read last. */
export interface Mark {
  /** Frames read, this one among them. */
  readonly count: number;
  readonly place: number;
  /** In ticks of the clip's clock from where the clip begins; absent where it has no time. */
  readonly pts?: number;
  readonly isVariable: boolean;
  /** Of all its code values. */
  readonly digest: string;
  /** What was wrong with the clip up to there. */
  readonly notes: readonly string[];
}

export function digestOf(buffer: ArrayBuffer): string {
  return createHash('sha1').update(new Uint8Array(buffer)).digest('hex');
}

/** Tells of each frame from somewhere before the mark on whether it is the one. */
export type Finder = (frame: { readonly buffer: ArrayBuffer; readonly pts: number | undefined; readonly count: number }) => boolean; // prettier-ignore

export function notAsBefore(where: string): Fault {
  return new Fault({
    code: 'media.not-as-before',
    what: 'The frame at which reading was stopped is not there any more, or is another',
    where,
    mend: 'Measure it from its beginning.',
  });
}

interface FinderGiven {
  readonly mark: Mark;
  /** By time, to half a frame; or by so many frames counted from where reading begins. */
  readonly by: { readonly pts: number; readonly ticksPerFrame: number } | { readonly count: number };
  readonly where: string;
}

/** Throws Fault `media.not-as-before` from what it returns, for a frame that should be it and is not, or lies past it. */
export function createFinder({ mark, by, where }: FinderGiven): Finder {
  return ({ buffer, pts, count }) => {
    const off = 'count' in by ? count + 1 - by.count : ((pts ?? Infinity) - by.pts) / by.ticksPerFrame;
    if (off <= -0.5) return false;
    if (off < 0.5 && digestOf(buffer) === mark.digest) return true;
    throw notAsBefore(where);
  };
}
