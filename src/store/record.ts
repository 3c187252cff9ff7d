/** Writing one journal row down with the text that it leaves, and telling what it was when it is sent again. */
import { Fault } from '../base/fault.ts';
import { applyPatch, type Patch } from '../document/patch.ts';
import type { Splice } from '../document/splice.ts';
import { readShootText } from '../document/text.ts';
import { isSame } from '../document/written.ts';
import { titleOf, type Shelf } from './shelf.ts';
import { patchOf, type Row } from './statements.ts';
import type { Act, EditResult, OpenShoot, Steps } from './types.ts';

export interface Change extends Act {
  readonly kind: Row['kind'];
  readonly patch: Patch;
  readonly inverse: Patch;
  readonly splices: readonly Splice[];
  readonly summary: string;
  readonly undoes?: number;
  readonly restores?: number;
  readonly text: string;
  /** Where the text is one that an earlier row left. */
  readonly textOf?: number;
}

export interface Recorded {
  readonly after: OpenShoot;
  readonly result: EditResult;
}

/** What a client could take back or make again when the shoot was at a revision. */
export function stepsAt({ sql }: Shelf, shoot: string, who: string, upTo: number): Steps {
  const done = sql.lastDone.get({ shoot, who, upTo });
  const undone = sql.lastUndone.get({ shoot, who, upTo });
  return {
    ...(done ? { undoSummary: done.summary } : {}),
    ...(undone ? { redoSummary: undone.summary } : {}),
  };
}

function resultOf(shelf: Shelf, shootId: string, row: Pick<Row, 'number' | 'patch' | 'reorders' | 'who'>): EditResult {
  return {
    revision: row.number,
    patch: patchOf(row.patch),
    ...(row.reorders === 1 ? { reorders: true } : {}),
    ...stepsAt(shelf, shootId, row.who, row.number),
  };
}

/**
 * The first result of what was sent before under the same id, if it was. Throws Fault `edit.id-reused` where that was
 * something else.
 */
export function repeated(
  shelf: Shelf,
  shootId: string,
  { editId, who }: Act,
  isAlike: (first: Row) => boolean,
): EditResult | undefined {
  const first = shelf.sql.sent.get(editId);
  if (!first) return undefined;
  if (first.shoot === shootId && first.who === who && isAlike(first)) return resultOf(shelf, shootId, first);
  throw new Fault({
    code: 'edit.id-reused',
    what: `Another edit was made under the id ${editId}: "${first.summary}"`,
    where: shootId,
    mend: 'Send each edit under an id of its own.',
  });
}

/** Writes a change down inside the transaction; what is held changes only once that is on disk. */
export function record(shelf: Shelf, before: OpenShoot, change: Change): Recorded {
  const { id } = before;
  const { written } = readShootText(change.text);
  const patched = applyPatch(before.written, change.patch);
  const isInOrder = JSON.stringify(patched) === JSON.stringify(written);
  if (!isInOrder && !isSame(patched, written))
    throw new Error(`Carried into the text, the ${change.kind} "${change.summary}" reads differently from its patch`);
  const number = before.revision + 1;
  const title = titleOf(written, id);
  const row: Row = {
    number,
    editId: change.editId,
    who: change.who,
    name: change.name ?? null,
    at: change.at,
    kind: change.kind,
    patch: JSON.stringify(change.patch),
    inverse: JSON.stringify(change.inverse),
    splices: JSON.stringify(change.splices),
    summary: change.summary,
    undoes: change.undoes ?? null,
    restores: change.restores ?? null,
    textOf: change.textOf ?? number,
    reorders: isInOrder ? 0 : 1,
  };
  shelf.sql.record.run({ ...row, shoot: id });
  shelf.sql.change.run({ id, title, text: change.text, at: change.at, number });
  return {
    after: { id, title, revision: number, text: change.text, written },
    result: resultOf(shelf, id, row),
  };
}
