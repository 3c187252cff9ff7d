/** What the store keeps of footage: what happened to clips, long work on them, and what was measured. */
import type { FaultDetails } from '../base/fault.ts';
import type { ClipJob, FootageEvent, Happening } from '../record/footage.ts';

export interface IncomingHappening {
  readonly eventId: string;
  readonly who: string;
  readonly name?: string | undefined;
  readonly at: string;
  readonly event: FootageEvent;
}

export interface JobRow {
  readonly id: string;
  readonly shootId: string;
  readonly clipId: string;
  readonly kind: ClipJob['kind'];
  readonly state: ClipJob['state'];
  /** As JSON: what it works from. */
  readonly input: string;
  readonly done: number;
  readonly total?: number;
  readonly fault?: FaultDetails;
  /** ISO 8601, UTC: when it was asked for. */
  readonly at: string;
}

export interface KeptMeasurement {
  readonly at: string;
  readonly isWhole: boolean;
  /** As JSON: the file's size and time, and what it was read by, so that it is known when that no longer holds. */
  readonly basis: string;
  /** As `writeKept` in turnover gives it. */
  readonly body: string;
}

export interface FootageShelf {
  readonly happenings: (shootId: string) => readonly Happening[];
  /** False where it was there already. Throws Fault `shoot.unknown`, and `footage.id-reused` where another has its id. */
  readonly addHappening: (shootId: string, happening: IncomingHappening) => boolean;
  /** Jobs of a shoot, or of all shoots, oldest first. */
  readonly jobs: (shootId?: string) => readonly JobRow[];
  /** Adds a job, or replaces the one of the same id; on disk when it returns. */
  readonly putJob: (job: JobRow) => void;
  readonly checkpoint: (jobId: string) => Uint8Array | undefined;
  /** Keeps how far a job has come together with what it can be gone on from, in one transaction; undefined drops it. */
  readonly keepCheckpoint: (jobId: string, at: { readonly done: number; readonly bytes: Uint8Array | undefined }) => void;
  /** The newest of a clip. */
  readonly measurement: (shootId: string, clipId: string) => KeptMeasurement | undefined;
  /** The newest of each clip of a shoot, without what was measured. */
  readonly measured: (shootId: string) => readonly (Omit<KeptMeasurement, 'body'> & { readonly clipId: string })[];
  readonly keepMeasurement: (shootId: string, clipId: string, measurement: KeptMeasurement) => void;
} // prettier-ignore
