/**
 * Clips that came back, as a fold of what happened to them: added from a folder, told more about, marked with the part to
 * keep, set aside. What happened is only ever added to, and each happening carries an id made by whoever sent it, so that
 * one that is sent twice happens once.
 */
import type { FaultDetails } from '../base/fault.ts';

export type FootageEvent =
  | {
      readonly kind: 'added';
      readonly clipId: string;
      /** Name of a folder that was opened to the server, and the clip's path below it, parted by `/`. */
      readonly folder: string;
      readonly path: string;
      readonly shotId?: string | undefined;
    }
  | {
      readonly kind: 'told';
      readonly clipId: string;
      /** What is left out stays as it is; null takes back what was told. */
      readonly shotId?: string | null | undefined;
      readonly captureRate_fps?: number | null | undefined;
      /** As `longsecond measure --curve` takes it. */
      readonly curve?: string | null | undefined;
      readonly blackCode?: number | null | undefined;
      readonly note?: string | null | undefined;
    }
  | {
      readonly kind: 'kept';
      readonly clipId: string;
      /** First and last frame to keep; null goes back to what is suggested. */
      readonly kept: { readonly inFrame: number; readonly outFrame: number } | null;
    }
  | { readonly kind: 'aside'; readonly clipId: string; readonly isAside: boolean };

export interface Happening {
  /** Of the shoot, from 1. */
  readonly number: number;
  readonly eventId: string;
  readonly who: string;
  readonly name?: string;
  /** ISO 8601, UTC, by the server's clock. */
  readonly at: string;
  readonly event: FootageEvent;
}

/** What is known of a clip before anybody measures it. */
export interface ClipRecord {
  readonly id: string;
  readonly folder: string;
  readonly path: string;
  readonly addedAt: string;
  readonly shotId?: string;
  readonly captureRate_fps?: number;
  readonly curve?: string;
  readonly blackCode?: number;
  readonly note?: string;
  readonly kept?: { readonly inFrame: number; readonly outFrame: number };
  readonly isAside: boolean;
}

/** Long work on a clip, as far as it has come. */
export interface ClipJob {
  readonly kind: 'measure' | 'proxy';
  readonly state: 'waiting' | 'running' | 'done' | 'failed' | 'stopped';
  readonly done: number;
  /** Frames there may be. */
  readonly total?: number;
  /** Why it failed, and how to mend that. */
  readonly fault?: Pick<FaultDetails, 'code' | 'what' | 'where' | 'mend'>;
}

/** One clip of a shoot with what was found in it. */
export interface ClipEntry extends ClipRecord {
  /** The name of its file, or of the first picture of a sequence. */
  readonly name: string;
  /** Whether its file is there now. */
  readonly isHere: boolean;
  /** Only the browser where it was added knows of it as yet: nothing of it can be had. */
  readonly isUnsent?: true;
  readonly size_B?: number;
  readonly measuring?: ClipJob;
  /** A small copy that a browser plays. */
  readonly proxy: { readonly state: 'none' | 'waiting' | 'making' | 'ready' | 'failed'; readonly job?: ClipJob };
  readonly brief?: ClipBrief;
}

/** What measuring came to, held against the plan as it now is. */
export interface ClipBrief {
  readonly measuredAt: string;
  /** False for a first look at a few stretches. */
  readonly isWhole: boolean;
  /** Why it should be measured again: its file was written to since, or what was told of it has changed. */
  readonly isStale?: string;
  readonly width: number;
  readonly height: number;
  readonly frameCount: number;
  readonly frameRate_fps: number;
  readonly frameRateBasis: 'given' | 'plan' | 'file';
  readonly playback_fps: number;
  readonly flicker: 'steady' | 'flicker' | 'cannot tell';
  /** What matters, in sentences, most important first. */
  readonly verdict: readonly string[];
  readonly against: readonly {
    readonly what: string;
    readonly says: string;
    readonly state: 'as planned' | 'better' | 'worse' | 'differs';
  }[];
  readonly action?: { readonly onset: number; readonly peak: number; readonly end: number; readonly inFrame: number; readonly outFrame: number };
} // prettier-ignore

/** What lies in a folder that was opened to the server. */
export interface FolderListing {
  readonly folder: string;
  /** Below it, parted by `/`; empty for the folder itself. */
  readonly path: string;
  readonly entries: readonly FolderEntry[];
  /** How many more there are than are listed. */
  readonly more: number;
  /** How many have names that are no text, and have to be renamed first. */
  readonly unnamed?: number;
}

export interface FolderEntry {
  readonly name: string;
  readonly kind: 'folder' | 'movie' | 'sequence';
  readonly size_B?: number;
  /** ISO 8601, UTC. */
  readonly modified?: string;
  /** Pictures of a sequence. */
  readonly pictures?: number;
}

/** All that the footage of a shoot is. */
export interface FootageState {
  readonly clips: readonly ClipEntry[];
  /** Folders that clips may be taken from, and whether each is there. */
  readonly folders: readonly { readonly name: string; readonly isThere: boolean }[];
  /** Absent where ffmpeg is there; else what is missing and how to get it. */
  readonly ffmpegMissing?: Pick<FaultDetails, 'what' | 'mend'>;
}

type Told = Extract<FootageEvent, { readonly kind: 'told' }>;

/** A clip with what was told put in, and what was taken back left out. */
function told(clip: ClipRecord, { kind: _, clipId: __, ...changes }: Told): ClipRecord {
  const entries = Object.entries({ ...clip, ...Object.fromEntries(Object.entries(changes).filter(([, value]) => value !== undefined)) }); // prettier-ignore
  return Object.fromEntries(entries.filter(([, value]) => value !== null)) as unknown as ClipRecord;
}

/** A clip after something happened to it; nothing happens to one that was never added. */
export function clipAfter(clip: ClipRecord | undefined, { event, at }: Pick<Happening, 'event' | 'at'>): ClipRecord | undefined {
  if (event.kind === 'added') {
    if (clip) return clip;
    const { clipId, folder, path, shotId } = event;
    return { id: clipId, folder, path, addedAt: at, ...(shotId !== undefined && { shotId }), isAside: false };
  }
  if (!clip) return undefined;
  if (event.kind === 'told') return told(clip, event);
  if (event.kind === 'aside') return { ...clip, isAside: event.isAside };
  const { kept: _, ...rest } = clip;
  return event.kept === null ? rest : { ...rest, kept: event.kept };
} // prettier-ignore

/** The clips of a shoot, in the order in which they were added. */
export function clipsOf(happenings: readonly Happening[]): readonly ClipRecord[] {
  const clips = new Map<string, ClipRecord>();
  for (const happening of happenings) {
    const clip = clipAfter(clips.get(happening.event.clipId), happening);
    if (clip) clips.set(clip.id, clip);
  }
  return [...clips.values()];
}
