/** Looking back: pages of the journal, and shoots as they were. */
import { Fault } from '../base/fault.ts';
import { applySplices, undoSplices, type Splice } from '../document/splice.ts';
import { readShootText } from '../document/text.ts';
import { titleOf, type Shelf } from './shelf.ts';
import { journalRow, type JournalRow, type Row } from './statements.ts';
import type { JournalPage, ShootAt } from './types.ts';

export interface History {
  readonly journal: (shootId: string, range: { readonly after: number; readonly limit: number }) => JournalPage;
  readonly history: (shootId: string, range: { readonly before: number; readonly limit: number }) => JournalPage;
  /** Throws Fault `revision.unknown`. */
  readonly at: (shootId: string, revision: number) => ShootAt;
}

/** Characters of patches told at once, one row being told whatever its size. */
const LARGEST_PAGE = 4_000_000;

/** Shoots of which the text last gone back to is held: people go through a history step by step. */
const REBUILT_COUNT = 4;

function pageOf(rows: IterableIterator<Row>): readonly JournalRow[] {
  const page: JournalRow[] = [];
  let room = LARGEST_PAGE;
  for (const row of rows) {
    room -= row.patch.length;
    if (room < 0 && page.length > 0) break;
    page.push(journalRow(row));
  }
  return page;
}

interface TextAt {
  readonly revision: number;
  readonly text: string;
}

export function openHistory({ sql, find }: Shelf): History {
  /** What once was never changes. */
  const rebuilt = new Map<string, TextAt>();

  /** Splices are taken back one row at a time, except where a row left the very text of an earlier one. */
  const goBack = (shootId: string, from: TextAt, revision: number): string => {
    let at = from.revision;
    let { text } = from;
    for (const row of sql.steps.iterate(shootId, revision, at)) {
      if (row.number > at) continue;
      if (row.textOf < at && row.textOf >= revision) at = row.textOf;
      else {
        text = applySplices(text, undoSplices(JSON.parse(row.splices) as readonly Splice[]));
        at -= 1;
      }
    }
    return text;
  };

  const textAt = (shootId: string, revision: number): string => {
    const now = find(shootId);
    if (revision === now.revision) return now.text;
    const known = rebuilt.get(shootId);
    const text = goBack(shootId, known && known.revision >= revision ? known : now, revision);
    rebuilt.delete(shootId);
    rebuilt.set(shootId, { revision, text });
    const [oldest] = rebuilt.keys();
    if (rebuilt.size > REBUILT_COUNT && oldest !== undefined) rebuilt.delete(oldest);
    return text;
  };

  return {
    journal: (shootId, { after, limit }) => {
      const { revision } = find(shootId);
      return { revision, rows: pageOf(sql.rows.iterate(shootId, after, limit)) };
    },

    history: (shootId, { before, limit }) => {
      const { revision } = find(shootId);
      return { revision, rows: pageOf(sql.rowsBefore.iterate(shootId, before, limit)) };
    },

    at: (shootId, revision) => {
      const now = find(shootId);
      if (revision === now.revision) return now;
      if (revision > now.revision)
        throw new Fault({
          code: 'revision.unknown',
          what: `There is no revision ${revision} yet; this shoot is at ${now.revision}`,
          where: shootId,
          mend: `Ask for one from 0 to ${now.revision}.`,
        });
      const text = textAt(shootId, revision);
      const { written } = readShootText(text);
      return { id: shootId, revision, title: titleOf(written, shootId), text, written };
    },
  };
}
