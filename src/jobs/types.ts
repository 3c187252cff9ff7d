/** The footage of shoots as the server deals with it: what is there, what is done to it, and what comes of that. */
import type { FolderListing, FootageEvent, FootageState } from '../record/footage.ts';

/** Who does something, when, and under which id it may be sent again. */
export interface FootageAct {
  readonly eventId: string;
  readonly who: string;
  readonly name?: string | undefined;
  /** ISO 8601, UTC. */
  readonly at: string;
  readonly event: FootageEvent;
}

export interface StillAsked {
  readonly clipId: string;
  /** From 0, missing frames counted. */
  readonly frame: number;
  /** Of the picture asked for; never more than the clip has. */
  readonly width: number;
}

/** A folder that clips may be taken from. */
export interface OpenedFolder {
  readonly name: string;
  readonly path: string;
}

/** Everything rejects with a Fault for a shoot or a clip that is not there, and for a path that leaves its folder. */
export interface FootageDesk {
  readonly look: (shootId: string) => Promise<FootageState>;
  /** Adds what happened, once however often it is sent. A clip that is added is looked at, and then measured whole. */
  readonly happen: (shootId: string, act: FootageAct) => Promise<FootageState>;
  readonly folder: (shootId: string, at: { readonly folder: string; readonly path: string }) => Promise<FolderListing>;
  /** Measures a clip, going on from where that was stopped unless it is to be done anew. */
  readonly measure: (shootId: string, clipId: string, how: { readonly isAnew: boolean }) => Promise<FootageState>;
  readonly stop: (shootId: string, clipId: string) => Promise<FootageState>;
  /** What was measured of a clip, as it is kept; see `readKept` in turnover. Undefined where nothing was yet. */
  readonly measured: (shootId: string, clipId: string) => Promise<string | undefined>;
  /** What is the same for as long as a clip's file is. */
  readonly mark: (shootId: string, clipId: string) => Promise<string>;
  /** One frame as a JPEG. */
  readonly still: (shootId: string, asked: StillAsked) => Promise<Uint8Array<ArrayBuffer>>;
  /** The file of a clip's small copy; undefined while there is none. */
  readonly proxyFile: (shootId: string, clipId: string) => Promise<string | undefined>;
  /** Has the small copy made, unless it is there or being made. */
  readonly makeProxy: (shootId: string, clipId: string) => Promise<FootageState>;
  /** Calls back after every change, progress among them, at most four times a second; returns how to stop that. */
  readonly watch: (changed: (shootId: string) => void) => () => void;
  /** Stops what is running where it can be gone on from. */
  readonly close: () => Promise<void>;
} // prettier-ignore

/** What a clip's file was like, so that it is known when it was written to since. Of pictures: of the first of them. */
export interface FileMark {
  readonly size_B: number;
  readonly modified_ms: number;
  /** Of a sequence. */
  readonly pictures?: number;
}

/** What a clip is measured by: as JSON the `basis` of what is kept of it. What is left out is taken from the file. */
export interface MeasureBasis {
  readonly file: FileMark;
  readonly captureRate_fps?: number;
  /** Whether somebody told the rate or the plan has it. */
  readonly rateFrom: 'given' | 'plan' | 'file';
  readonly playback_fps?: number;
  /** As it was told; see `parseCurve`. */
  readonly curve?: string;
  readonly blackCode?: number;
}

/** As JSON the `input` of a job of kind `measure`. */
export interface MeasureInput {
  /** Of the movie or the first picture, every link followed. */
  readonly path: string;
  readonly basis: MeasureBasis;
}

/** As JSON the `input` of a job of kind `proxy`. */
export interface ProxyInput {
  readonly path: string;
  readonly file: FileMark;
  /** At which the copy plays, a frame of it for every frame of the clip; left out, at that of the file, or slowed to 25 where that is over 60; pictures at 24. */
  readonly playback_fps?: number;
}

/** Where a clip is, every link followed, and what its file is like. */
export interface ClipAt {
  readonly path: string;
  readonly mark: FileMark;
}
