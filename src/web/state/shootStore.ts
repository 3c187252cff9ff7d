/**
 * The open shoot: the server's document, what this browser has not sent yet, and what follows from both. Plain code with
 * everything it leans on passed in; the screens see it through `hooks.ts`.
 */
import { Fault } from '../../base/fault.ts';
import type { Edit, EditReply, JournalRow } from '../../api/replies.ts';
import { applyPatch, withParents } from '../../document/patch.ts';
import { shareUnchanged, type Written } from '../../document/written.ts';
import type { PatchOperation, Trace } from '../../plan/types.ts';
import type { OpenShoot, Saving } from './contract.ts';
import type { Derive, Derived } from './derive.ts';
import type { Draft, Keep, Unsent } from './keep.ts';
import type { LampDesk } from './lampShelf.ts';
import { afterRow, fold, patchesMeet, screenOf, stepsOf, tryPatch, type Outbox, type Row, type Standing, type Steps } from './outbox.ts'; // prettier-ignore
import type { PresenceDesk } from './presence.ts';
import { refusedOf } from './refusal.ts';
import { openRefusals } from './refusalDesk.ts';
import type { Server } from './server.ts';
import type { WaysDesk } from './waysDesk.ts';

export type Opening =
  | { readonly state: 'opening' }
  | { readonly state: 'failed'; readonly fault: Fault; readonly isAway: boolean }
  | { readonly state: 'open'; readonly open: OpenShoot };

export interface ShootStore {
  readonly subscribe: (changed: () => void) => () => void;
  readonly current: () => Opening;
  /** Tries again at once what waits for the network. */
  readonly wake: () => void;
  /** Sends what is only typed so far: the page may be gone in a moment. */
  readonly leave: () => void;
  readonly close: () => void;
}

export interface ShootStoreNeeds {
  readonly shootId: string;
  readonly server: Server;
  readonly keep: Keep;
  /** This browser's name, as the server knows it. */
  readonly client: string;
  readonly derive: Derive;
  readonly explain: (derived: Derived, shotId: string, name: string) => Trace | undefined;
  readonly openFiles: (changed: () => void) => LampDesk;
  readonly openWays: (changed: () => void) => WaysDesk;
  readonly makeId: () => string;
  /** Milliseconds since 1970. */
  readonly now: () => number;
  readonly after: (wait_ms: number, run: () => void) => () => void;
  /** Hears what the live events tell of people. */
  readonly presence: Pick<PresenceDesk, 'onPresent' | 'onLive'>;
}

interface Posting {
  readonly kind: Unsent['kind'];
  readonly patch?: readonly PatchOperation[];
  readonly summary: string;
  readonly revision: number;
  readonly to?: number;
}

interface Confirmed {
  readonly revision: number;
  readonly written: Written;
}

/** Waits between tries while the network is away. */
const RETRY_ms = [1000, 2000, 4000, 8000, 15_000] as const;

/** Rows that are looked through for edits that landed before this page was opened; beyond, the server judges alone. */
const MOST_ROWS_READ = 2000;

const SUMMARY_LENGTH = 200;

/** No answer at all, or one that asks to be tried again. */
const isAwayError = (error: unknown): boolean => !(error instanceof Fault) || error.retry;

const faultOf = (error: unknown, where: string): Fault =>
  error instanceof Fault
    ? error
    : new Fault({
        code: 'server.away',
        what: 'The server cannot be reached',
        where,
        mend: 'Check that Longsecond is running and that this device is on its network.',
        retry: true,
        cause: error,
      });

const oneLine = (summary: string): string => {
  const line = summary.replace(/\p{Cc}+/gu, ' ').trim();
  return line === '' ? 'Edit' : line.slice(0, SUMMARY_LENGTH);
};

export function openShootStore(needs: ShootStoreNeeds): ShootStore {
  const { shootId, server, keep, client, derive, makeId } = needs;
  const listeners = new Set<() => void>();
  let confirmed: Confirmed | undefined;
  let failure: { readonly fault: Fault; readonly isAway: boolean } | undefined;
  let outbox: Outbox = [];
  let draft: Standing<Draft> | undefined;
  let steps: Steps = {};
  let isAway = false;
  let isSending = false;
  let isClosed = false;
  let failureCount = 0;
  let cancelRetry: (() => void) | undefined;
  let stopListening: (() => void) | undefined;
  let catching: Promise<void> | undefined;
  let lastSequence = 0;

  let shown: { readonly written: Written; readonly of: readonly unknown[] } | undefined;
  let snapshot: Opening | undefined;

  const changed = () => {
    snapshot = undefined;
    if (!isClosed) for (const listener of [...listeners]) listener();
  };

  const refusals = openRefusals({
    shootId,
    keep,
    at: async (revision) => (await server.at(shootId, revision)).written,
  });
  const files = needs.openFiles(changed);
  const ways = needs.openWays(changed);

  /** Made of the same parts again, what did not change stays the very same value, so that nothing is planned twice. */
  const screen = (from: Confirmed): Written => {
    const of = [from.written, outbox, draft];
    if (shown?.of.every((part, i) => part === of[i])) return shown.written;
    const next = screenOf(from.written, outbox, draft);
    shown = { written: shown ? shareUnchanged(shown.written, next) : next, of };
    return shown.written;
  };

  const savingNow = (): Saving => {
    if (outbox.length > 0 || draft) return isAway ? 'unsent' : 'saving';
    return refusals.isEmpty() ? 'saved' : 'refused';
  };

  // --- towards the server

  const post = ({ kind, patch = [], summary, revision, to }: Posting) => {
    lastSequence = Math.max(lastSequence + 1, needs.now());
    const unsent: Unsent = {
      editId: makeId(),
      kind,
      patch,
      summary: oneLine(summary),
      revision,
      sequence: lastSequence,
      ...(to === undefined ? {} : { to }),
    };
    keep.put(shootId, unsent);
    outbox = [...outbox, unsent];
    refusals.goOn();
    changed();
    void send();
  };

  const forget = (editId: string) => {
    if (!outbox.some((item) => item.editId === editId)) return;
    keep.drop(shootId, editId);
    outbox = outbox.filter((item) => item.editId !== editId);
  };

  const setDraft = (next: Standing<Draft> | undefined) => {
    draft = next;
    keep.setDraft(shootId, next);
  };

  const refuse = (item: Unsent, fault: Fault) => {
    // What was built on the refused edit falls with it; an undo behind it was meant for it or for what falls, has done
    // its work here, and would now take back another.
    const later = outbox.slice(outbox.findIndex(({ editId }) => editId === item.editId) + 1);
    const { standing } = fold([item, ...later]);
    const onTop = later.filter(
      (each) => each.kind === 'edit' && patchesMeet(each.patch, item.patch) && standing.includes(each),
    );
    forget(item.editId);
    for (const each of later) if (!standing.includes(each) || onTop.includes(each)) forget(each.editId);
    // Steps pressed faster than answers come may reach past the last: there is nothing there, and nothing is wrong.
    if (fault.code === `${item.kind}.none`) return;
    if (item.kind === 'edit' && !standing.includes(item)) return;
    refusals.add(refusedOf({ ...item, onTop }, fault, client));
  };

  const away = () => {
    isAway = true;
    cancelRetry?.();
    cancelRetry = needs.after(RETRY_ms[Math.min(failureCount, RETRY_ms.length - 1)]!, () => {
      cancelRetry = undefined;
      void resume();
    });
    failureCount += 1;
  };

  const reached = () => {
    isAway = false;
    failureCount = 0;
    cancelRetry?.();
    cancelRetry = undefined;
  };

  const request = (item: Unsent): Promise<EditReply> => {
    const { editId, kind, revision, patch, summary, to = 0 } = item;
    if (kind === 'restore') return server.restore(shootId, { editId, revision, to });
    if (kind === 'edit') return server.edit(shootId, { editId, revision, patch: patch as Edit['patch'], summary });
    return server[kind](shootId, { editId });
  };

  const send = async (): Promise<void> => {
    const [item] = outbox;
    if (!confirmed || !item || isSending || cancelRetry || isClosed) return;
    isSending = true;
    try {
      const reply = await request(item);
      reached();
      const { revision, patch, reorders, undoSummary, redoSummary } = reply;
      steps = stepsFrom({ undoSummary, redoSummary });
      await arrive({ number: revision, editId: item.editId, patch, isOwn: true }, reorders === true);
      forget(item.editId);
    } catch (error) {
      if (isAwayError(error)) away();
      else {
        reached();
        refuse(item, faultOf(error, shootId));
        await catchUp().catch(away);
        if (confirmed) refusals.settle(confirmed.written);
      }
    } finally {
      isSending = false;
    }
    changed();
    if (!isAway) void send();
  };

  // --- from the server

  /** Takes a row in; false where rows before it are missing or it cannot be told from the patch alone. */
  const take = (row: Row, isReordered: boolean): boolean => {
    if (!confirmed) return false;
    if (row.number <= confirmed.revision) {
      forget(row.editId);
      return true;
    }
    if (row.number > confirmed.revision + 1 || isReordered) return false;
    confirmed = { revision: row.number, written: applyPatch(confirmed.written, row.patch) };
    noteRow(row);
    return true;
  };

  /** What a row means for edits still on their way. */
  const noteRow = (row: Row) => {
    forget(row.editId);
    outbox = outbox.map((item) => {
      const next = afterRow(item, row);
      if (next !== item) keep.put(shootId, next);
      return next;
    });
    if (draft) draft = afterRow(draft, row);
  };

  const arrive = async (row: Row, isReordered: boolean): Promise<void> => {
    if (isReordered && confirmed && row.number > confirmed.revision) await reload();
    else if (!take(row, isReordered)) await catchUp();
  };

  /** Our own is what this page sent: what another window of this browser did, this one did not know of. */
  const rowOf = ({ number, editId, patch }: JournalRow): Row => ({
    number,
    editId,
    patch,
    isOwn: outbox.some((item) => item.editId === editId),
  });

  /** Brings in the rows that are missing, in order; one such fetch at a time. */
  const catchUp = (): Promise<void> => {
    catching ??= (async () => {
      try {
        for (let isBehind = true; isBehind && confirmed && !isClosed;) {
          const { revision, rows } = await server.journal(shootId, confirmed.revision);
          const isWhole = rows.every((row) => take(rowOf(row), row.reorders === true));
          if (!isWhole) return await reload();
          isBehind = rows.length > 0 && confirmed.revision < revision;
        }
      } finally {
        catching = undefined;
      }
    })();
    return catching;
  };

  /** Takes the whole document anew, then looks through the rows it skipped for what they mean to unsent edits. */
  const reload = async (): Promise<void> => {
    const reply = await server.open(shootId);
    if (isClosed) return;
    confirmed = { revision: reply.revision, written: reply.written };
    steps = stepsFrom(reply);
    await readSkipped();
  };

  const readSkipped = async (): Promise<void> => {
    const { revision = 0 } = confirmed ?? {};
    const oldest = Math.min(...[...outbox, ...(draft ? [draft] : [])].map((unsent) => unsent.revision), revision);
    for (let at = oldest; at < revision && at < oldest + MOST_ROWS_READ;) {
      const { rows } = await server.journal(shootId, at);
      for (const row of rows) if (row.number <= revision) noteRow(rowOf(row));
      const last = rows.at(-1);
      if (!last) return;
      at = last.number;
    }
  };

  const stepsFrom = ({ undoSummary, redoSummary }: { readonly undoSummary?: string | undefined; readonly redoSummary?: string | undefined }): Steps => ({
    ...(undoSummary === undefined ? {} : { undoSummary }),
    ...(redoSummary === undefined ? {} : { redoSummary }),
  }); // prettier-ignore

  /** Another window of this browser did something: what can be taken back is then the server's to say. */
  const refreshSteps = async () => {
    const reply = await server.open(shootId);
    steps = stepsFrom(reply);
    changed();
  };

  const onRow = (row: JournalRow) => {
    const isElsewhere = row.who === client && !outbox.some(({ editId }) => editId === row.editId);
    const isNew = confirmed !== undefined && row.number > confirmed.revision;
    arrive(rowOf(row), row.reorders === true)
      .then(() => (isElsewhere && isNew ? refreshSteps() : undefined))
      .catch((error: unknown) => isAwayError(error) && away())
      .finally(changed);
  };

  const listen = () => {
    if (!confirmed || stopListening || isClosed) return;
    stopListening = server.listen(shootId, confirmed.revision, {
      onRow,
      onReload: () => void reload().catch(away).finally(changed),
      onPresent: needs.presence.onPresent,
      onLive: (isLive) => {
        needs.presence.onLive(isLive);
        if (isLive) wake();
      },
    });
  };

  const openIt = async () => {
    try {
      const reply = await server.open(shootId);
      if (isClosed) return;
      confirmed = { revision: reply.revision, written: reply.written };
      steps = stepsFrom(reply);
      outbox = keep.unsent(shootId);
      draft = keep.draft(shootId);
      lastSequence = outbox.at(-1)?.sequence ?? 0;
      failure = undefined;
      reached();
      await readSkipped();
      listen();
    } catch (error) {
      failure = confirmed ? undefined : { fault: faultOf(error, shootId), isAway: isAwayError(error) };
      if (isAwayError(error)) away();
    }
    // What was typed before the page closed was meant to be kept.
    if (draft) commitDraft('What was typed before the page closed');
    changed();
    void send();
  };

  const resume = async () => {
    if (!confirmed) return openIt();
    listen();
    if (outbox.length > 0) return send();
    await catchUp().then(reached, away);
    changed();
  };

  const wake = () => {
    if (!isAway) return;
    cancelRetry?.();
    cancelRetry = undefined;
    failureCount = 0;
    void resume();
  };

  // --- what a person does

  const whole = (patch: readonly PatchOperation[], on: Written): readonly PatchOperation[] | undefined => {
    try {
      return withParents(on, patch);
    } catch (error) {
      const { what, mend } = faultOf(error, shootId);
      refusals.add({ id: makeId(), says: `That was not done. ${what}.`, mend });
      return undefined;
    }
  };

  const withoutDraft = (from: Confirmed) => screenOf(from.written, outbox, undefined);

  const commit = (patch: readonly PatchOperation[], summary: string) => {
    if (!confirmed || patch.length === 0) return;
    let { revision } = confirmed;
    if (draft && patchesMeet(draft.patch, patch)) {
      // This is what was being typed: it was begun on the shoot as it was then, and is judged by that.
      ({ revision } = draft);
      setDraft(undefined);
    } else if (draft) commitDraft('Edit');
    const on = screen(confirmed);
    const edit = whole(patch, on);
    if (edit && shareUnchanged(on, tryPatch(on, edit)) !== on) post({ kind: 'edit', patch: edit, summary, revision });
    else changed();
  };

  const makeDraft = (patch: readonly PatchOperation[]) => {
    if (!confirmed || (patch.length === 0 && !draft)) return;
    const edit = patch.length === 0 ? undefined : whole(patch, withoutDraft(confirmed));
    const isSamePlace = draft && edit && patchesMeet(draft.patch, edit);
    const { revision, isMet } = isSamePlace ? draft! : { revision: confirmed.revision, isMet: false };
    setDraft(edit && { patch: edit, revision, ...(isMet === true ? { isMet } : {}) });
    changed();
  };

  const commitDraft = (summary: string) => {
    if (!confirmed || !draft) return;
    const { patch, revision } = draft;
    setDraft(undefined);
    const on = withoutDraft(confirmed);
    if (shareUnchanged(on, tryPatch(on, patch)) !== on) post({ kind: 'edit', patch, summary, revision });
    else changed();
  };

  const go = (kind: 'undo' | 'redo') => {
    if (!confirmed) return;
    // What is only typed so far is the newest thing done.
    if (kind === 'undo' && draft) {
      setDraft(undefined);
      changed();
      return;
    }
    const { undoSummary, redoSummary } = stepsOf(outbox, steps);
    const summary = kind === 'undo' ? undoSummary : redoSummary;
    if (summary !== undefined) post({ kind, summary, revision: confirmed.revision });
  };

  const restore = (to: number) => {
    if (!confirmed) return;
    if (draft) commitDraft('Edit');
    post({ kind: 'restore', summary: `Restored revision ${to}`, revision: confirmed.revision, to });
  };

  // --- what becomes of a refused edit

  const keepTheirs = (id: string) => {
    refusals.drop(id);
    changed();
  };

  const useMine = async (id: string): Promise<void> => {
    if (!confirmed) return;
    const from = confirmed;
    const again = await refusals.again(id, () => screen(confirmed ?? from));
    if (!again) return;
    keepTheirs(id);
    commit(again.patch, again.summary);
  };

  const actions = {
    commit,
    draft: makeDraft,
    commitDraft,
    undo: () => go('undo'),
    redo: () => go('redo'),
    restore,
    useMine,
    keepTheirs,
  };

  const build = (): Opening => {
    if (!confirmed) return failure ? { state: 'failed', ...failure } : { state: 'opening' };
    const written = screen(confirmed);
    const derived = derive(written, files.tell);
    ways.settle({ written, shoot: derived.shoot, plan: derived.plan });
    return {
      state: 'open',
      open: {
        id: shootId,
        revision: confirmed.revision,
        written,
        ...derived,
        saving: savingNow(),
        refusals: refusals.on(written),
        ...stepsOf(outbox, steps),
        ...actions,
        ways: ways.ask,
        explain: (shotId, name) => needs.explain(derived, shotId, name),
      },
    };
  };

  void openIt();

  return {
    subscribe: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    current: () => (snapshot ??= build()),
    wake,
    leave: () => commitDraft('What was typed before the page was left'),
    close: () => {
      isClosed = true;
      cancelRetry?.();
      stopListening?.();
      files.close();
      ways.close();
      listeners.clear();
    },
  };
}
