/** Edits on their way to the server: what they make of the shoot, and which revision each may say it was made on. */
import { applyPatch, pathsMeet, touchedPaths, type Patch } from '../../document/patch.ts';
import type { Written } from '../../document/written.ts';
import type { PatchOperation } from '../../plan/types.ts';
import type { Draft, Unsent } from './keep.ts';

/** A draft or unsent edit, with whether somebody else has since changed the same place: then the server is to judge. */
export type Standing<Of> = Of & { readonly isMet?: boolean };

export type Outbox = readonly Standing<Unsent>[];

/** What a journal row, or an answer to one of our own edits, does. */
export interface Row {
  readonly number: number;
  readonly editId: string;
  readonly patch: Patch;
  readonly isOwn: boolean;
}

/** Whether two edits change the same place, one within the other included. */
export function patchesMeet(a: Patch, b: Patch): boolean {
  return touchedPaths(a).some((one) => touchedPaths(b).some((other) => pathsMeet(one, other)));
}

/**
 * An unsent edit after a row came in. It was made knowing our own rows but not others': its revision moves on with ours
 * as long as nobody else changed the same place, so that an edit never meets the one we made just before it.
 */
export function afterRow<Of extends Draft>(unsent: Standing<Of>, row: Row): Standing<Of> {
  if (row.number <= unsent.revision || unsent.isMet === true) return unsent;
  if (row.isOwn) return { ...unsent, revision: row.number };
  return patchesMeet(unsent.patch, row.patch) ? { ...unsent, isMet: true } : unsent;
}

export interface Folded {
  /** Edits that stand, in order: an undo on its way takes the newest of them back at once. */
  readonly standing: Outbox;
  readonly undone: Outbox;
  /** How many undos, less redos, reach beyond what is unsent. */
  readonly beyond: number;
}

export function fold(outbox: Outbox): Folded {
  const standing: Standing<Unsent>[] = [];
  let undone: Standing<Unsent>[] = [];
  let beyond = 0;
  for (const item of outbox) {
    const from = item.kind === 'undo' ? standing.pop() : item.kind === 'redo' ? undone.pop() : undefined;
    if (item.kind === 'edit' || item.kind === 'restore') {
      standing.push(item);
      undone = [];
    } else if (from) (item.kind === 'undo' ? undone : standing).push(from);
    else beyond += item.kind === 'undo' ? 1 : -1;
  }
  return { standing, undone, beyond };
}

/** The shoot with a patch in it, or as it was where the patch no longer fits: the server will say so. */
export function tryPatch(written: Written, patch: readonly PatchOperation[]): Written {
  try {
    return applyPatch(written, patch);
  } catch {
    return written;
  }
}

/** What is on the screen: the server's shoot with all that was not sent yet in it. */
export function screenOf(written: Written, outbox: Outbox, draft: Draft | undefined): Written {
  const sent = fold(outbox).standing.reduce((now, { patch }) => tryPatch(now, patch), written);
  return draft ? tryPatch(sent, draft.patch) : sent;
}

export interface Steps {
  readonly undoSummary?: string;
  readonly redoSummary?: string;
}

const step = (undoSummary: string | undefined, redoSummary: string | undefined): Steps => ({
  ...(undoSummary === undefined ? {} : { undoSummary }),
  ...(redoSummary === undefined ? {} : { redoSummary }),
});

/** Stand for edits that only the server can name, while steps over others are still on their way to it. */
const EDIT_BEFORE = 'the edit before';
const STEP_AFTER = 'the next that was taken back';

/** What could be taken back or made again, given what the server said and what it has not heard yet. */
export function stepsOf(outbox: Outbox, server: Steps): Steps {
  const { standing, undone, beyond } = fold(outbox);
  if (outbox.length === 0) return server;
  const newest = standing.at(-1)?.summary;
  const taken = undone.at(-1)?.summary;
  if (newest !== undefined) return step(newest, taken);
  if (beyond === 0) return step(server.undoSummary, taken);
  // One step back makes the server's newest the next to make again, and the other way round.
  if (beyond > 0) return step(EDIT_BEFORE, taken ?? (beyond === 1 ? server.undoSummary : STEP_AFTER));
  return step(beyond === -1 ? server.redoSummary : EDIT_BEFORE, taken ?? STEP_AFTER);
}
