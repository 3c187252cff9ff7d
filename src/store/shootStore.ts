/**
 * Shoots and their journal, kept so that nothing acknowledged is lost. The text is the truth: an edit changes it node by
 * node, and text and journal row are written in one transaction. Times are given by the caller.
 */
import { Fault } from '../base/fault.ts';
import { applyPatch, invertPatch, writtenValueAt, type Patch } from '../document/patch.ts';
import { readShootText } from '../document/text.ts';
import { isSame, type Written } from '../document/written.ts';
import { applySplices, undoSplices, type Splice } from '../document/splice.ts';
import { editText } from '../document/textEdit.ts';
import { findMeeting, standing, type Conflict } from './meeting.ts';
import { idFrom, ID_PATTERN } from './shootId.ts';
import { journalRow, patchOf, prepareStatements, type JournalRow, type Row, type ShootEntry } from './statements.ts';
import { guarded, type Database } from './sqlite.ts';

export interface OpenShoot {
  readonly id: string;
  readonly title: string;
  readonly revision: number;
  readonly text: string;
  readonly written: Written;
}

/** What a client could take back or make again. */
export interface Steps {
  readonly undoSummary?: string;
  readonly redoSummary?: string;
}

export interface EditResult extends Steps {
  readonly revision: number;
  readonly patch: Patch;
  readonly reorders?: true;
}

/** Who does something, when, and under which id it may be repeated. */
export interface Act {
  readonly editId: string;
  readonly who: string;
  /** ISO 8601, UTC. */
  readonly at: string;
}

export interface ShootStore {
  /** The database's file. */
  readonly file: string;
  /** Copies made because opening brought the file to a newer form. */
  readonly backups: readonly string[];
  /** The one changed last comes first. */
  readonly list: () => readonly ShootEntry[];
  readonly open: (shootId: string) => OpenShoot;
  readonly steps: (shootId: string, who: string) => Steps;
  /** Brings a shoot in; repeated under the same edit id it answers the shoot brought in first, as it now is. */
  readonly bringIn: (shoot: { readonly editId: string; readonly at: string; readonly text: string; readonly id?: string | undefined }) => OpenShoot;
  readonly edit: (shootId: string, edit: Act & { readonly revision: number; readonly patch: Patch; readonly summary: string }) => EditResult;
  /** Takes back the newest edit of the one who asks. */
  readonly undo: (shootId: string, act: Act) => EditResult;
  /** Makes again what was last taken back, unless something was edited in between. */
  readonly redo: (shootId: string, act: Act) => EditResult;
  /** Oldest first; fewer rows than asked for where they are large. */
  readonly journal: (shootId: string, range: { readonly after: number; readonly limit: number }) => { readonly revision: number; readonly rows: readonly JournalRow[] };
  /** How much there is to tell about what followed a revision. */
  readonly since: (shootId: string, after: number) => { readonly revision: number; readonly rowCount: number; readonly patch_B: number };
  /** Calls back after every change that is on disk; returns how to stop that. */
  readonly watch: (changed: (shootId: string) => void) => () => void;
  readonly close: () => void;
} // prettier-ignore

interface Change extends Act {
  readonly kind: JournalRow['kind'];
  readonly patch: Patch;
  readonly inverse: Patch;
  readonly splices: readonly Splice[];
  readonly summary: string;
  readonly undoes?: number;
  readonly text: string;
  /** Where the text is one that an earlier row left. */
  readonly textOf?: number;
}

/** Shoots held read; the journal of a day touches one or two. */
const HELD_COUNT = 8;

/** Characters of patches told at once, one row being told whatever its size. */
const LARGEST_PAGE = 4_000_000;

function titleOf(written: Written, id: string): string {
  const title = writtenValueAt(written, '/shoot/title');
  return typeof title === 'string' && title.trim() !== '' ? title.trim() : id;
}

/** A store over a database that is open, of the newest form and ours alone. */
export function shootStore({ db, file, backups, release }: { readonly db: Database; readonly file: string; readonly backups: readonly string[]; readonly release: () => void }): ShootStore {
  const sql = prepareStatements(db);
  const held = new Map<string, OpenShoot>();
  const watchers = new Set<(shootId: string) => void>();

  const unknown = (shootId: string) =>
    new Fault({
      code: 'shoot.unknown',
      what: 'There is no such shoot here',
      where: shootId,
      mend: 'Open one from the list of shoots.',
    });

  const hold = (shoot: OpenShoot) => {
    held.delete(shoot.id);
    held.set(shoot.id, shoot);
    const [oldest] = held.keys();
    if (held.size > HELD_COUNT && oldest !== undefined) held.delete(oldest);
    return shoot;
  };

  const find = (shootId: string): OpenShoot => {
    const known = held.get(shootId);
    if (known) return hold(known);
    const stored = sql.shoot.get(shootId);
    if (!stored) throw unknown(shootId);
    return hold({ id: shootId, ...stored, written: readShootText(stored.text).written });
  };

  const stepsAt = (shoot: string, who: string, upTo: number): Steps => {
    const done = sql.lastDone.get({ shoot, who, upTo });
    const undone = sql.lastUndone.get({ shoot, who, upTo });
    return {
      ...(done ? { undoSummary: done.summary } : {}),
      ...(undone ? { redoSummary: undone.summary } : {}),
    };
  };

  const resultOf = (shootId: string, who: string, row: Pick<Row, 'number' | 'patch' | 'reorders'>): EditResult => ({
    revision: row.number,
    patch: patchOf(row.patch),
    ...(row.reorders === 1 ? { reorders: true } : {}),
    ...stepsAt(shootId, who, row.number),
  });

  /** The first result of what was sent before under the same id, if it was. */
  const repeated = (shootId: string, { editId, who }: Act, kind: Row['kind'], patch?: Patch): EditResult | undefined => {
    const first = sql.sent.get(editId);
    if (!first) return undefined;
    const isAlike = first.shoot === shootId && first.who === who && first.kind === kind;
    if (isAlike && (patch === undefined || first.patch === JSON.stringify(patch))) return resultOf(shootId, who, first);
    throw new Fault({
      code: 'edit.id-reused',
      what: `Another edit was made under the id ${editId}: "${first.summary}"`,
      where: shootId,
      mend: 'Send each edit under an id of its own.',
    });
  };

  /** Writes a change down inside the transaction; what is held changes only once that is on disk. */
  const record = (before: OpenShoot, change: Change): { readonly after: OpenShoot; readonly result: EditResult } => {
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
      at: change.at,
      kind: change.kind,
      patch: JSON.stringify(change.patch),
      inverse: JSON.stringify(change.inverse),
      splices: JSON.stringify(change.splices),
      summary: change.summary,
      undoes: change.undoes ?? null,
      textOf: change.textOf ?? number,
      reorders: isInOrder ? 0 : 1,
    };
    sql.record.run({ ...row, shoot: id });
    sql.change.run({ id, title, text: change.text, at: change.at, number });
    return {
      after: { id, title, revision: number, text: change.text, written },
      result: resultOf(id, change.who, row),
    };
  };

  const act = (shootId: string, work: () => EditResult | ReturnType<typeof record>): EditResult => {
    const done = guarded(file, () => db.transaction(work).immediate());
    if (!('after' in done)) return done;
    hold(done.after);
    for (const changed of [...watchers]) changed(shootId);
    return done.result;
  };

  const refuse = (code: string, what: string, shootId: string, conflict: Conflict, mend: string) =>
    new Fault({
      code,
      what: `${what}: ${conflict.who} did "${conflict.summary}" at ${conflict.at}`,
      where: `${shootId}${conflict.path}`,
      mend,
      cause: conflict,
    });

  /** Takes a row's effect back: byte for byte where nothing happened since that still stands, else value by value. */
  const revert = (shoot: OpenShoot, of: Row, kind: 'undo' | 'redo', who: Act) => {
    const before = sql.row.get(shoot.id, of.number - 1)?.textOf ?? 0;
    const now = sql.row.get(shoot.id, shoot.revision)?.textOf ?? 0;
    const change = { ...who, kind, patch: patchOf(of.inverse), summary: of.summary, undoes: of.number };
    if (now === of.textOf) {
      const splices = undoSplices(JSON.parse(of.splices) as readonly Splice[]);
      const text = applySplices(shoot.text, splices);
      return record(shoot, { ...change, inverse: patchOf(of.patch), splices, text, textOf: before });
    }
    const since = standing(sql.rows.all(shoot.id, of.number, -1).map(journalRow));
    const conflict = findMeeting({ patch: change.patch, since, written: shoot.written });
    if (conflict)
      throw refuse(
        `${kind}.touched-since`,
        `"${of.summary}" was changed since`,
        shoot.id,
        conflict,
        'Look at what is there now, and set it by hand if you still want it otherwise.',
      );
    const { text, splices } = editText(shoot.text, change.patch);
    return record(shoot, { ...change, inverse: invertPatch(shoot.written, change.patch), splices, text });
  };

  return {
    file,
    backups,

    list: () => guarded(file, () => sql.list.all()),

    open: (shootId) => guarded(file, () => find(shootId)),

    steps: (shootId, who) => guarded(file, () => stepsAt(shootId, who, find(shootId).revision)),

    bringIn: ({ editId, at, text, id: asked }) => {
      const { written } = readShootText(text);
      const shootId = guarded(file, () =>
        db
          .transaction(() => {
            const first = sql.brought.get(editId);
            if (first !== undefined) return first;
            const isTaken = (id: string) => sql.revision.get(id) !== undefined;
            if (asked !== undefined && (!ID_PATTERN.test(asked) || isTaken(asked)))
              throw new Fault({
                code: 'shoot.id-taken',
                what: 'There is a shoot under this id already',
                where: asked,
                mend: 'Choose another id, or leave it out to have one made from the title.',
              });
            const id = asked ?? idFrom(titleOf(written, 'shoot'), isTaken);
            sql.add.run({ id, title: titleOf(written, id), text, at, editId });
            return id;
          })
          .immediate(),
      );
      return guarded(file, () => find(shootId));
    },

    edit: (shootId, { revision, patch, summary, ...who }) =>
      act(shootId, () => {
        const shoot = find(shootId);
        const first = repeated(shootId, who, 'edit', patch);
        if (first) return first;
        if (revision > shoot.revision)
          throw new Fault({
            code: 'edit.revision-unknown',
            what: `The edit was made on revision ${revision}; this shoot is at ${shoot.revision}`,
            where: shootId,
            mend: 'Open the shoot anew: an older copy of it was put back.',
          });
        const since = standing(sql.rows.all(shootId, revision, -1).map(journalRow));
        const conflict = findMeeting({ patch, since, written: shoot.written });
        if (conflict)
          throw refuse(
            'edit.conflict',
            'Somebody changed the same place first',
            shootId,
            conflict,
            'Compare both values, then make the edit again on the shoot as it now is, or leave theirs.',
          );
        const { text, splices } = editText(shoot.text, patch);
        const inverse = invertPatch(shoot.written, patch);
        return record(shoot, { ...who, kind: 'edit', patch, inverse, splices, summary, text });
      }),

    undo: (shootId, who) =>
      act(shootId, () => {
        const shoot = find(shootId);
        const first = repeated(shootId, who, 'undo');
        if (first) return first;
        const last = sql.lastDone.get({ shoot: shootId, who: who.who, upTo: shoot.revision });
        if (last) return revert(shoot, last, 'undo', who);
        throw new Fault({
          code: 'undo.none',
          what: 'There is nothing of yours to take back',
          where: shootId,
          mend: 'Change it by hand: undo takes back only what the same window did.',
        });
      }),

    redo: (shootId, who) =>
      act(shootId, () => {
        const shoot = find(shootId);
        const first = repeated(shootId, who, 'redo');
        if (first) return first;
        const last = sql.lastUndone.get({ shoot: shootId, who: who.who, upTo: shoot.revision });
        if (last) return revert(shoot, last, 'redo', who);
        throw new Fault({
          code: 'redo.none',
          what: 'There is nothing of yours to make again',
          where: shootId,
          mend: 'Make the edit anew: redo follows an undo, until something else is edited.',
        });
      }),

    journal: (shootId, { after, limit }) =>
      guarded(file, () => {
        const rows: JournalRow[] = [];
        let room = LARGEST_PAGE;
        for (const row of sql.rows.iterate(shootId, after, limit)) {
          room -= row.patch.length;
          if (room < 0 && rows.length > 0) break;
          rows.push(journalRow(row));
        }
        return { revision: find(shootId).revision, rows };
      }),

    since: (shootId, after) =>
      guarded(file, () => {
        const { revision } = find(shootId);
        return { revision, ...(sql.since.get(shootId, after) ?? { rowCount: 0, patch_B: 0 }) };
      }),

    watch: (changed) => {
      watchers.add(changed);
      return () => void watchers.delete(changed);
    },

    close: () => {
      db.close();
      release();
    },
  };
} // prettier-ignore
