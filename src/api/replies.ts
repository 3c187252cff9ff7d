/** What each route answers. Types only, so that a client may have them without the schemas. */
import type * as z from 'zod';
import type { Patch } from '../document/patch.ts';
import type { Written } from '../document/written.ts';
import type { EditRequest, ImportRequest, StepRequest } from './schemas.ts';

export type Edit = Readonly<z.infer<typeof EditRequest>>;
export type Step = Readonly<z.infer<typeof StepRequest>>;
export type Import = Readonly<z.infer<typeof ImportRequest>>;

export interface ShootEntry {
  readonly id: string;
  readonly title: string;
  readonly revision: number;
  /** ISO 8601, UTC. */
  readonly created: string;
  readonly updated: string;
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

/** GET /api/shoots/:shootId, and the answer to bringing one in. */
export interface ShootReply extends Steps {
  readonly id: string;
  readonly revision: number;
  readonly title: string;
  /** The written form: quantities as people write them. */
  readonly written: Written;
}

/** The answer to an edit, an undo and a redo. */
export interface EditReply extends Steps {
  /** Of the shoot with this edit in it. */
  readonly revision: number;
  /** What the edit does to the shoot at the revision before that one. */
  readonly patch: Patch;
  /** Entries came out in another order than the patch alone leaves them in: open the shoot anew. */
  readonly reorders?: true;
}

/** One edit, undo or redo. Its number is the revision that it made. */
export interface JournalRow {
  readonly number: number;
  readonly editId: string;
  readonly who: string;
  /** ISO 8601, UTC, by the server's clock. */
  readonly at: string;
  readonly kind: 'edit' | 'undo' | 'redo';
  readonly patch: Patch;
  /** For an undo or redo: the words of the edit concerned. */
  readonly summary: string;
  /** For an undo or redo: the number of the row that it takes back. */
  readonly undoes?: number;
  readonly reorders?: true;
}

/** GET /api/shoots/:shootId/journal: oldest first. */
export interface JournalReply {
  /** The newest there is; more rows are to be had while the last one's number is below it. */
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
