/**
 * A server for tests of the screens' state: one shoot in memory with its journal, refusing and repeating as the real one
 * does, on a network that can be cut before a request arrives or before its answer does.
 */
import { Fault } from '../src/base/fault.ts';
import type { Conflict, EditReply, JournalRow, Steps } from '../src/api/replies.ts';
import {
  applyPatch,
  invertPatch,
  pathsMeet,
  writtenValueAt,
  type Operation,
  type Patch,
} from '../src/document/patch.ts';
import type { Written } from '../src/document/written.ts';
import type { Listener, Server } from '../src/web/state/server.ts';

export type Network = 'up' | 'cut' | 'answers-lost';

export interface FakeServer {
  readonly written: () => Written;
  readonly rows: () => readonly JournalRow[];
  /** Every request that arrived, by name. */
  readonly arrived: string[];
  network: Network;
  /** Whether live events are told. */
  isTelling: boolean;
  /** A server as one client sees it. */
  readonly as: (client: string) => Server;
}

interface Kept extends JournalRow {
  readonly inverse: Patch;
}

const refuse = (code: string, what: string, cause?: Conflict) =>
  new Fault({ code, what, where: 'cup', mend: 'Look at it again', cause });

export function fakeServer(first: Written): FakeServer {
  let written = first;
  const rows: Kept[] = [];
  const listeners = new Set<Listener>();

  const lastOf = (who: string, kinds: readonly JournalRow['kind'][]) =>
    rows.findLast(
      (row) => row.who === who && kinds.includes(row.kind) && !rows.some(({ undoes }) => undoes === row.number),
    );

  const stepsOf = (who: string): Steps => {
    const done = lastOf(who, ['edit', 'redo', 'restore']);
    const undone = lastOf(who, ['undo']);
    const isOver = undone && rows.some((row) => row.who === who && row.kind === 'edit' && row.number > undone.number);
    return {
      ...(done ? { undoSummary: done.summary } : {}),
      ...(undone && !isOver ? { redoSummary: undone.summary } : {}),
    };
  };

  const record = (row: Omit<Kept, 'number' | 'at' | 'inverse'>): EditReply => {
    const inverse = invertPatch(written, row.patch);
    written = applyPatch(written, row.patch);
    const kept: Kept = { ...row, number: rows.length + 1, at: '2030-01-01T00:00:00Z', inverse };
    rows.push(kept);
    if (fake.isTelling) for (const listener of [...listeners]) listener.onRow(kept);
    return { revision: kept.number, patch: kept.patch, ...stepsOf(row.who) };
  };

  const writtenAt = (revision: number): Written =>
    rows.slice(revision).reduceRight((then, { inverse }) => applyPatch(then, inverse), written);

  const conflict = ({ number, who, at, summary }: JournalRow, mine: Operation): Conflict => {
    const there = writtenValueAt(written, mine.path);
    return {
      path: mine.path,
      ...('value' in mine ? { yours: mine.value } : {}),
      ...(there === undefined ? {} : { theirs: there }),
      number,
      who,
      at,
      summary,
    };
  };

  const replyOf = ({ number, patch, who }: Kept): EditReply => ({ revision: number, patch, ...stepsOf(who) });

  const fake: FakeServer = {
    written: () => written,
    rows: () => rows,
    arrived: [],
    network: 'up',
    isTelling: true,
    as: (who) => {
      const arrive = async <Reply>(name: string, work: () => Reply): Promise<Reply> => {
        await Promise.resolve();
        if (fake.network === 'cut') throw new TypeError('fetch failed');
        fake.arrived.push(name);
        const reply = work();
        await Promise.resolve();
        // The answer to a refusal is lost as well as any other.
        if (fake.network === 'answers-lost') throw new TypeError('fetch failed');
        return structuredClone(reply);
      };
      const step = (kind: 'undo' | 'redo', editId: string): EditReply => {
        const repeated = rows.find((row) => row.editId === editId);
        if (repeated) return replyOf(repeated);
        const of = kind === 'undo' ? lastOf(who, ['edit', 'redo', 'restore']) : lastOf(who, ['undo']);
        if (!of) throw refuse(`${kind}.none`, 'There is nothing of yours');
        return record({ editId, who, kind, patch: of.inverse, summary: of.summary, undoes: of.number });
      };
      /** Nothing that the screens' state does; a test that comes here has gone astray. */
      const noRoute = () => Promise.reject(refuse('route.unknown', 'This server has no such route'));
      const client: Server = {
        history: noRoute,
        setStanding: noRoute,
        duplicate: noRoute,
        upload: noRoute,
        bringInZip: noRoute,
        list: () => arrive('list', () => ({ shoots: [] })),
        text: () => arrive('text', () => ''),
        bringIn: () => arrive('bringIn', () => ({ id: 'cup', revision: 0, title: 'Cup', written })),
        open: () =>
          arrive('open', () => ({ id: 'cup', revision: rows.length, title: 'Cup', written, ...stepsOf(who) })),
        journal: (_shootId, after = 0) =>
          arrive('journal', () => ({ revision: rows.length, rows: rows.filter(({ number }) => number > after) })),
        edit: (_shootId, { editId, revision, patch, summary }) =>
          arrive(`edit ${summary}`, () => {
            const repeated = rows.find((row) => row.editId === editId);
            if (repeated) return replyOf(repeated);
            const met = rows
              .slice(revision)
              .flatMap((row) =>
                patch
                  .filter(({ path }) => row.patch.some((theirs) => pathsMeet(theirs.path, path)))
                  .map((mine) => ({ row, mine })),
              )
              .at(0);
            if (met)
              throw refuse(
                'edit.conflict',
                `Somebody changed the same place first: ${met.row.summary}`,
                conflict(met.row, met.mine),
              );
            return record({ editId, who, kind: 'edit', patch, summary });
          }),
        undo: (_shootId, { editId }) => arrive('undo', () => step('undo', editId)),
        redo: (_shootId, { editId }) => arrive('redo', () => step('redo', editId)),
        at: (_shootId, revision) =>
          arrive('at', () => ({ id: 'cup', revision, title: 'Cup', written: writtenAt(revision) })),
        restore: (_shootId, { editId, revision, to }) =>
          arrive(`restore ${to}`, () => {
            const repeated = rows.find((row) => row.editId === editId);
            if (repeated) return replyOf(repeated);
            if (rows.slice(revision).some((row) => row.who !== who))
              throw refuse('restore.touched-since', 'The shoot was changed since');
            const patch: Patch = [{ op: 'replace', path: '', value: writtenAt(to) }];
            return record({ editId, who, kind: 'restore', patch, summary: `Restored revision ${to}`, restores: to });
          }),
        present: (_shootId, { at }) =>
          arrive('present', () => ({ present: [{ who, at, since: '2030-01-01T00:00:00Z' }] })),
        listen: (_shootId, _after, listener) => {
          listeners.add(listener);
          return () => void listeners.delete(listener);
        },
      };
      return client;
    },
  };
  return fake;
}
