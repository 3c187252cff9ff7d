/** What each route answers. Types only, so that a client may have them without the schemas. */
import type * as z from 'zod';
import type { Patch } from '../document/patch.ts';
import type { Written } from '../document/written.ts';
import type { DuplicateRequest, EditRequest, ImportRequest, PresenceRequest, RestoreRequest, StandingRequest, StepRequest } from './schemas.ts'; // prettier-ignore

export type Edit = Readonly<z.infer<typeof EditRequest>>;
export type Step = Readonly<z.infer<typeof StepRequest>>;
export type Import = Readonly<z.infer<typeof ImportRequest>>;
export type Restore = Readonly<z.infer<typeof RestoreRequest>>;
export type Presence = Readonly<z.infer<typeof PresenceRequest>>;
export type Duplicate = Readonly<z.infer<typeof DuplicateRequest>>;

/** What a shoot is to those who look through the list. */
export type Standing = z.infer<typeof StandingRequest>['standing'];

export interface ShootEntry {
  readonly id: string;
  readonly title: string;
  readonly revision: number;
  /** ISO 8601, UTC. */
  readonly created: string;
  readonly updated: string;
  readonly standing: Standing;
}

/** GET /api/shoots: the one changed last comes first. */
export interface ShootListReply {
  readonly shoots: readonly ShootEntry[];
}

/** What the client who asks could take back or make again, in the words of its own edits. */
export interface Steps {
  readonly undoSummary?: string;
  readonly redoSummary?: string;
}

/** GET /api/shoots/:shootId/at/:revision: the shoot as it was, for looking at. */
export interface ShootAtReply {
  readonly id: string;
  readonly revision: number;
  readonly title: string;
  /** The written form: quantities as people write them. */
  readonly written: Written;
}

/** GET /api/shoots/:shootId, and the answer to bringing one in or duplicating one. */
export interface ShootReply extends ShootAtReply, Steps {}

/** A file that a shoot names and that is not here: what needs it is unknown until it is sent. */
export interface MissingFile {
  /** Its id under `files` in the shoot. */
  readonly id: string;
  readonly name?: string;
  readonly sha256?: string;
}

/** The answer to bringing in a zip. */
export interface ImportZipReply extends ShootReply {
  readonly missingFiles: readonly MissingFile[];
}

/** POST /api/shoots/:shootId/files: what an entry under `files` of the shoot then says of it. */
export interface FileReply {
  /** 64 lower-case hexadecimal digits. */
  readonly sha256: string;
  readonly size_B: number;
  readonly name: string;
  /** By what its bytes are, not by what it was sent as. */
  readonly kind: FileKind;
}

export type FileKind = 'image/png' | 'image/jpeg' | 'image/webp' | 'image/gif' | 'application/octet-stream';

/** The answer to an edit, an undo, a redo and a restore. */
export interface EditReply extends Steps {
  /** Of the shoot with this edit in it. */
  readonly revision: number;
  /** What the edit does to the shoot at the revision before that one. */
  readonly patch: Patch;
  /** Entries came out in another order than the patch alone leaves them in: open the shoot anew. */
  readonly reorders?: true;
}

/** One edit, undo, redo or restore. Its number is the revision that it made. */
export interface JournalRow {
  readonly number: number;
  readonly editId: string;
  readonly who: string;
  /** What the person called themself then. */
  readonly name?: string;
  /** ISO 8601, UTC, by the server's clock. */
  readonly at: string;
  readonly kind: 'edit' | 'undo' | 'redo' | 'restore';
  readonly patch: Patch;
  /** For an undo or redo: the words of the edit concerned. */
  readonly summary: string;
  /** For an undo or redo: the number of the row that it takes back. */
  readonly undoes?: number;
  /** For a restore: the revision whose text it brought back. */
  readonly restores?: number;
  readonly reorders?: true;
}

/** GET /api/shoots/:shootId/journal: oldest first after a number, newest first before one. */
export interface JournalReply {
  /** The newest there is. Oldest first, more rows are to be had while the last one's number is below it; newest first, while the last one's is above 1. */
  readonly revision: number;
  readonly rows: readonly JournalRow[];
}

/**
 * GET /api/shoots/:shootId/events, `text/event-stream`. Event `edit` carries a journal row, and `reload` this: too much
 * happened to tell it one by one, so open the shoot anew. The id of either is the revision that it brings one to.
 */
export interface ReloadEvent {
  readonly revision: number;
}

/** Somebody who has the shoot open, and where they are. */
export interface Present {
  readonly who: string;
  readonly name?: string;
  /** JSON Pointer of what they are editing; empty where it is nothing in particular. */
  readonly at: string;
  /** Where that is, in words. */
  readonly place?: string;
  /** When they came: ISO 8601, UTC, by the server's clock. */
  readonly since: string;
}

/**
 * Event `presence` of the same stream, and the answer to POST /api/shoots/:shootId/presence: all who are here, the one
 * who came first leading, the one who asks among them. A stream begins with one. It has no id of its own.
 */
export interface PresenceReply {
  readonly present: readonly Present[];
}

/** What an edit ran into, where it was refused for that. */
export interface Conflict {
  /** JSON Pointer of the place that both change. */
  readonly path: string;
  /** What the refused edit would put there; absent if it would remove it. */
  readonly yours?: Written;
  /** What is there; absent if nothing is. */
  readonly theirs?: Written;
  /** The edit that it met. */
  readonly number: number;
  readonly who: string;
  readonly name?: string;
  readonly at: string;
  readonly summary: string;
}

/** Every answer outside 200 to 299. */
export interface FaultReply {
  readonly code: string;
  readonly what: string;
  readonly where: string;
  readonly mend: string;
  readonly retry: boolean;
  readonly conflict?: Conflict;
}
