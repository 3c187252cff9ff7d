/** What a person does to a shoot: edit, undo, redo and restore, each one row of the journal. */
import { Fault } from '../base/fault.ts';
import { invertPatch, writtenValueAt } from '../document/patch.ts';
import { applySplices, undoSplices, type Splice } from '../document/splice.ts';
import { editText } from '../document/textEdit.ts';
import type { Written } from '../document/written.ts';
import { differenceOf, splicesBetween } from './difference.ts';
import type { History } from './history.ts';
import { findMeeting, standing, type Conflict } from './meeting.ts';
import { record, repeated, type Recorded } from './record.ts';
import type { Shelf } from './shelf.ts';
import { journalRow, patchOf, type JournalRow, type Row } from './statements.ts';
import type { Act, Edit, EditResult, OpenShoot, Restore } from './types.ts';

export interface Acts {
  readonly edit: (shootId: string, edit: Edit) => EditResult;
  readonly undo: (shootId: string, act: Act) => EditResult;
  readonly redo: (shootId: string, act: Act) => EditResult;
  readonly restore: (shootId: string, restore: Restore) => EditResult;
}

interface Refusal {
  readonly code: string;
  readonly what: string;
  readonly shootId: string;
  readonly conflict: Conflict;
  readonly mend: string;
}

const refuse = ({ code, what, shootId, conflict, mend }: Refusal) =>
  new Fault({
    code,
    what: `${what}: ${conflict.name ?? conflict.who} did "${conflict.summary}" at ${conflict.at}`,
    where: `${shootId}${conflict.path}`,
    mend,
    cause: conflict,
  });

function requireKnown(revision: number, shoot: OpenShoot): void {
  if (revision <= shoot.revision) return;
  throw new Fault({
    code: 'edit.revision-unknown',
    what: `The edit was made on revision ${revision}; this shoot is at ${shoot.revision}`,
    where: shoot.id,
    mend: 'Open the shoot anew: an older copy of it was put back.',
  });
}

/** Where somebody else's row and the text that is to come back differ, with both values. */
function conflictWith(theirs: JournalRow, now: Written, then: Written): Conflict {
  const path = theirs.patch[0]?.path ?? '';
  const [yours, there] = [writtenValueAt(then, path), writtenValueAt(now, path)];
  const { number, who, name, at, summary } = theirs;
  return {
    path,
    ...(yours === undefined || path === '' ? {} : { yours }),
    ...(there === undefined || path === '' ? {} : { theirs: there }),
    number,
    who,
    ...(name === undefined ? {} : { name }),
    at,
    summary,
  };
}

export function openActs(shelf: Shelf, history: History, tell: (shootId: string) => void): Acts {
  const { sql, find } = shelf;

  const act = (shootId: string, work: () => EditResult | Recorded): EditResult => {
    const done = shelf.writing(work);
    if (!('after' in done)) return done;
    shelf.hold(done.after);
    tell(shootId);
    return done.result;
  };

  const rowsSince = (shootId: string, revision: number) =>
    standing(sql.rows.all(shootId, revision, -1).map(journalRow));

  const textOf = (shootId: string, number: number) => sql.row.get(shootId, number)?.textOf ?? 0;

  /** Takes a row's effect back: byte for byte where nothing happened since that still stands, else value by value. */
  const revert = (shoot: OpenShoot, of: Row, kind: 'undo' | 'redo', by: Act) => {
    const change = { ...by, kind, patch: patchOf(of.inverse), summary: of.summary, undoes: of.number };
    if (textOf(shoot.id, shoot.revision) === of.textOf) {
      const splices = undoSplices(JSON.parse(of.splices) as readonly Splice[]);
      const text = applySplices(shoot.text, splices);
      const before = textOf(shoot.id, of.number - 1);
      return record(shelf, shoot, { ...change, inverse: patchOf(of.patch), splices, text, textOf: before });
    }
    const since = rowsSince(shoot.id, of.number);
    const conflict = findMeeting({ patch: change.patch, since, written: shoot.written });
    if (conflict)
      throw refuse({
        code: `${kind}.touched-since`,
        what: `"${of.summary}" was changed since`,
        shootId: shoot.id,
        conflict,
        mend: 'Look at what is there now, and set it by hand if you still want it otherwise.',
      });
    const { text, splices } = editText(shoot.text, change.patch);
    return record(shelf, shoot, { ...change, inverse: invertPatch(shoot.written, change.patch), splices, text });
  };

  return {
    edit: (shootId, { revision, patch, summary, ...by }) =>
      act(shootId, () => {
        const shoot = find(shootId);
        const sent = JSON.stringify(patch);
        const first = repeated(shelf, shootId, by, (row) => row.kind === 'edit' && row.patch === sent);
        if (first) return first;
        requireKnown(revision, shoot);
        const conflict = findMeeting({ patch, since: rowsSince(shootId, revision), written: shoot.written });
        if (conflict)
          throw refuse({
            code: 'edit.conflict',
            what: 'Somebody changed the same place first',
            shootId,
            conflict,
            mend: 'Compare both values, then make the edit again on the shoot as it now is, or leave theirs.',
          });
        const { text, splices } = editText(shoot.text, patch);
        const inverse = invertPatch(shoot.written, patch);
        return record(shelf, shoot, { ...by, kind: 'edit', patch, inverse, splices, summary, text });
      }),

    undo: (shootId, by) =>
      act(shootId, () => {
        const shoot = find(shootId);
        const first = repeated(shelf, shootId, by, ({ kind }) => kind === 'undo');
        if (first) return first;
        const last = sql.lastDone.get({ shoot: shootId, who: by.who, upTo: shoot.revision });
        if (last) return revert(shoot, last, 'undo', by);
        throw new Fault({
          code: 'undo.none',
          what: 'There is nothing of yours to take back',
          where: shootId,
          mend: 'Change it by hand: undo takes back only what the same window did.',
        });
      }),

    redo: (shootId, by) =>
      act(shootId, () => {
        const shoot = find(shootId);
        const first = repeated(shelf, shootId, by, ({ kind }) => kind === 'redo');
        if (first) return first;
        const last = sql.lastUndone.get({ shoot: shootId, who: by.who, upTo: shoot.revision });
        if (last) return revert(shoot, last, 'redo', by);
        throw new Fault({
          code: 'redo.none',
          what: 'There is nothing of yours to make again',
          where: shootId,
          mend: 'Make the edit anew: redo follows an undo, until something else is edited.',
        });
      }),

    restore: (shootId, { revision, to, ...by }) =>
      act(shootId, () => {
        const shoot = find(shootId);
        const first = repeated(shelf, shootId, by, ({ kind, restores }) => kind === 'restore' && restores === to);
        if (first) return first;
        requireKnown(revision, shoot);
        const then = history.at(shootId, to);
        const theirs = rowsSince(shootId, revision).findLast(({ who }) => who !== by.who);
        if (theirs)
          throw refuse({
            code: 'restore.touched-since',
            what: `Since revision ${revision}, which you were looking at, the shoot was changed`,
            shootId,
            conflict: conflictWith(theirs, shoot.written, then.written),
            mend: 'Look at what is there now, then restore again if you still want to.',
          });
        if (then.text === shoot.text)
          throw new Fault({
            code: 'restore.same',
            what: `The shoot reads as it did at revision ${to} already`,
            where: shootId,
            mend: 'Choose a revision that reads otherwise; nothing needs doing for this one.',
          });
        const patch = differenceOf(shoot.written, then.written);
        return record(shelf, shoot, {
          ...by,
          kind: 'restore',
          patch,
          inverse: differenceOf(then.written, shoot.written),
          splices: splicesBetween(shoot.text, then.text),
          summary: `Restored revision ${to}`,
          restores: to,
          text: then.text,
          textOf: to === 0 ? 0 : textOf(shootId, to),
        });
      }),
  };
}
