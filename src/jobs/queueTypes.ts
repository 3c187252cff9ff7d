/** Long work on clips, one thing after the other: how it is asked for, how it stands, and what does it. */
import type { ClipJob } from '../record/footage.ts';
import type { FootageShelf, JobRow } from '../store/footageTypes.ts';
import type { MeasuredClip } from '../turnover/measureReply.ts';
import type { MeasureInput, ProxyInput } from './types.ts';

/** What is kept of a measured clip: everything but the shot that it is held against. */
export type MeasuredAlone = Omit<MeasuredClip, 'shot'>;

export interface JobAsked {
  readonly shootId: string;
  readonly clipId: string;
  readonly kind: ClipJob['kind'];
  /** As JSON: a `MeasureInput` or a `ProxyInput`. */
  readonly input: string;
  /** Whether what was done of it before is dropped; else it goes on from there, where it was asked with the same input. */
  readonly isAnew: boolean;
}

/** There is one job of a kind for a clip: asked for again, it takes the place of the one before. */
export interface Queue {
  /** Has it done in its turn; on disk when it returns. One that waits or runs with the same input already goes on. */
  readonly ask: (job: JobAsked) => JobRow;
  /** Ends what waits or runs of a clip, of one kind or of both; measuring can be gone on from by asking again. */
  readonly stop: (shootId: string, clipId: string, kind?: ClipJob['kind']) => void;
  /** Jobs of a shoot as they now stand, progress among them, oldest first. */
  readonly jobs: (shootId: string) => readonly JobRow[];
  /** Ends what runs so that the next queue on this shelf goes on with it. */
  readonly close: () => Promise<void>;
}

export interface Hooks {
  readonly signal: AbortSignal;
  /** Units done so far, and how many there may be. */
  readonly onProgress: (done: number, total: number | undefined) => void;
}

export interface MeasureHooks extends Hooks {
  /** What an earlier run gave to `onCheckpoint` last. */
  readonly saved: Uint8Array | undefined;
  /** Told now and then, and once more when the signal ends it. */
  readonly onCheckpoint: (done: number, bytes: Uint8Array) => void;
}

/** What does the work. Each rejects with a Fault, or with anything at all once its signal has gone off. */
export interface Runners {
  /** A first look at a few stretches, told after each; a clip that is hardly longer than they are is measured whole. */
  readonly look: (input: MeasureInput, hooks: Hooks & { readonly onLook: (clip: MeasuredAlone) => void }) => Promise<MeasuredAlone>;
  readonly measure: (input: MeasureInput, hooks: MeasureHooks) => Promise<MeasuredAlone>;
  readonly proxy: (input: ProxyInput, hooks: Hooks) => Promise<void>;
} // prettier-ignore

export interface QueueGiven {
  readonly shelf: FootageShelf;
  readonly runners: Runners;
  /** ISO 8601, UTC. */
  readonly clock: () => string;
  /** Told after every change, progress among them. */
  readonly changed: (shootId: string) => void;
}

/** Small copies that a browser plays, in a folder that is kept to a size: `createProxies({ folder })` of proxies.ts. */
export interface Proxies {
  /** The file of a copy, where it is there. */
  readonly find: (input: ProxyInput) => Promise<string | undefined>;
  /** Makes the copy unless it is there, and gives its file. */
  readonly make: (input: ProxyInput, hooks: Hooks) => Promise<string>;
}

export interface StillFrom {
  readonly path: string;
  readonly file: ProxyInput['file'];
  /** From 0, missing frames counted; of one that is missing, the one before it is given. */
  readonly frame: number;
  readonly width: number;
}

/** Single frames, kept in a folder that is kept to a size: `createStills({ folder })` of stills.ts. */
export interface Stills {
  /** A JPEG. Rejects with Fault `media.no-such-frame` for a frame beyond the last. */
  readonly still: (asked: StillFrom) => Promise<Uint8Array<ArrayBuffer>>;
}
