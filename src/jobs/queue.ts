/**
 * Long work on clips, one thing after the other: first looks at all clips before any is measured whole, and small copies when
 * nothing is to be measured. What waits and runs is on disk, so that it survives the program; what was stopped goes on.
 */
import { Fault } from '../base/fault.ts';
import type { JobRow } from '../store/footageTypes.ts';
import { writeKept } from '../turnover/keptMeasurement.ts';
import type { JobAsked, MeasuredAlone, Queue, QueueGiven } from './queueTypes.ts';
import type { MeasureInput, ProxyInput } from './types.ts';

/** One attempt at a job. */
interface Run {
  readonly stop: AbortController;
  /** Whether it is a whole pass, which gives way to a first look. */
  readonly isWhole: boolean;
  /** What it finds is not wanted any more. */
  isDropped: boolean;
}

interface Entry {
  row: JobRow;
  /** How far it could be gone on from. */
  kept: number;
  /** Of the clip as it is asked for now; then it is measured whole. */
  isLooked: boolean;
  run?: Run | undefined;
}

type Slot = JobRow['kind'];

const idOf = ({ kind, shootId, clipId }: Pick<JobRow, 'kind' | 'shootId' | 'clipId'>): string => `${kind} ${shootId} ${clipId}`; // prettier-ignore
const isOpen = ({ state }: JobRow): boolean => state === 'waiting' || state === 'running';

function faultOf(error: unknown, where: string): Fault {
  if (error instanceof Fault) return error;
  return new Fault({
    code: 'job.broke-off',
    what: `It broke off: ${error instanceof Error ? error.message : String(error)}`,
    where,
    mend: 'Ask for it again; report it if it happens twice.',
    cause: error,
  });
}

const basisText = ({ input }: JobRow): string => JSON.stringify((JSON.parse(input) as MeasureInput).basis);

/** Goes on with what an earlier queue on the shelf left, and does what is asked for. */
export function createQueue({ shelf, runners, clock, changed }: QueueGiven): Queue {
  const entries = new Map<string, Entry>();
  const busy = new Map<Slot, { readonly entry: Entry; readonly run: Run; readonly ended: Promise<void> }>();
  let isClosed = false;

  /** A clip that something was found in, measured by the same, or that was begun to be, needs no first look. */
  const isLooked = (row: JobRow): boolean =>
    row.kind === 'measure' &&
    (row.done > 0 ||
      shelf.measured(row.shootId).some(({ clipId, basis }) => clipId === row.clipId && basis === basisText(row)));

  /** On disk first: what is told is so. */
  const put = (entry: Entry, row: JobRow): void => {
    shelf.putJob(row);
    entry.row = row;
    changed(row.shootId);
  };

  const keep = ({ row }: Entry, clip: MeasuredAlone): void => {
    const { shootId, clipId } = row;
    shelf.keepMeasurement(shootId, clipId, { at: clock(), isWhole: clip.isWhole, basis: basisText(row), body: writeKept(clip) }); // prettier-ignore
    changed(shootId);
  };

  const finish = (entry: Entry): void => {
    const { row } = entry;
    put(entry, { ...row, state: 'done', done: row.total ?? row.done });
    // Only now that all it led to is kept.
    shelf.keepCheckpoint(row.id, { done: entry.row.done, bytes: undefined });
  };

  const hooksOf = (entry: Entry, run: Run) => ({
    signal: run.stop.signal,
    onProgress: (done: number, total: number | undefined): void => {
      if (run.isDropped) return;
      const { total: _, ...row } = entry.row;
      entry.row = { ...row, done, ...(total !== undefined && { total }) };
      changed(row.shootId);
    },
  });

  const look = async (entry: Entry, run: Run): Promise<void> => {
    const before = entry.row;
    const onLook = (clip: MeasuredAlone): void => void (run.isDropped || keep(entry, clip));
    const clip = await runners.look(JSON.parse(before.input) as MeasureInput, { ...hooksOf(entry, run), onLook });
    if (run.isDropped) return;
    entry.isLooked = true;
    if (clip.isWhole) {
      keep(entry, clip);
      finish(entry);
    } else if (entry.row.state === 'running') {
      put(entry, { ...before, state: 'waiting' });
    }
  };

  const measure = async (entry: Entry, run: Run): Promise<void> => {
    const { id, input } = entry.row;
    const onCheckpoint = (done: number, bytes: Uint8Array): void => {
      if (run.isDropped) return;
      shelf.keepCheckpoint(id, { done, bytes });
      entry.kept = done;
      entry.row = { ...entry.row, done };
    };
    const saved = shelf.checkpoint(id);
    const clip = await runners.measure(JSON.parse(input) as MeasureInput, { ...hooksOf(entry, run), saved, onCheckpoint }); // prettier-ignore
    if (run.isDropped) return;
    keep(entry, clip);
    finish(entry);
  };

  const copy = async (entry: Entry, run: Run): Promise<void> => {
    await runners.proxy(JSON.parse(entry.row.input) as ProxyInput, hooksOf(entry, run));
    if (!run.isDropped) finish(entry);
  };

  const work = async (entry: Entry, run: Run): Promise<void> => {
    try {
      put(entry, { ...entry.row, state: 'running' });
      await (entry.row.kind === 'proxy' ? copy : entry.isLooked ? measure : look)(entry, run);
    } catch (error) {
      if (run.isDropped || isClosed) return;
      const state = run.stop.signal.aborted ? 'waiting' : 'failed';
      // One that was stopped, or asked for again, says so already.
      if (entry.row.state !== 'running') return;
      const row: JobRow = { ...entry.row, state, done: entry.kept, ...(state === 'failed' && { fault: faultOf(error, entry.row.clipId).toJSON() }) }; // prettier-ignore
      try {
        put(entry, row);
      } catch {
        // The disk refuses even that, or the shoot is gone: it is told for as long as the program runs.
        entry.row = row;
        changed(row.shootId);
      }
    }
  };

  const start = (slot: Slot, entry: Entry): void => {
    const run: Run = { stop: new AbortController(), isWhole: entry.isLooked, isDropped: false };
    entry.run = run;
    const ended = work(entry, run).finally(() => {
      entry.run = undefined;
      busy.delete(slot);
      next();
    });
    busy.set(slot, { entry, run, ended });
  };

  const waiting = (isWanted: (entry: Entry) => boolean): Entry | undefined =>
    [...entries.values()].find((entry) => entry.row.state === 'waiting' && !entry.run && isWanted(entry));

  const next = (): void => {
    if (isClosed) return;
    const unseen = waiting(({ row, isLooked: is }) => row.kind === 'measure' && !is);
    const measuring = busy.get('measure');
    const toMeasure = unseen ?? waiting(({ row }) => row.kind === 'measure');
    if (!measuring && toMeasure) return start('measure', toMeasure);
    if (unseen && measuring?.run.isWhole) return measuring.run.stop.abort(new Error('a first look goes before'));
    const toCopy = waiting(({ row }) => row.kind === 'proxy');
    if (toCopy && !measuring && !busy.has('proxy')) start('proxy', toCopy);
  };

  const ask = ({ isAnew, ...asked }: JobAsked): JobRow => {
    const id = idOf(asked);
    const before = entries.get(id);
    const isSame = before?.row.input === asked.input && !isAnew;
    // A copy that was made may have been cleared away; what was measured is kept.
    if (before && isSame && (isOpen(before.row) || (before.row.state === 'done' && asked.kind === 'measure'))) return before.row; // prettier-ignore
    if (before && !isSame) shelf.keepCheckpoint(id, { done: 0, bytes: undefined });
    const kept = isSame && before ? before.kept : 0;
    const row: JobRow = { id, ...asked, state: 'waiting', done: kept, at: clock() };
    const entry: Entry = before ?? { row, kept, isLooked: false };
    put(entry, row);
    entry.kept = kept;
    entry.isLooked = isLooked(row);
    if (entry.run) {
      entry.run.isDropped ||= !isSame;
      entry.run.stop.abort(new Error('asked for again'));
    }
    // It waits behind those that were asked for before.
    entries.delete(id);
    entries.set(id, entry);
    next();
    return entry.row;
  };

  const stop: Queue['stop'] = (shootId, clipId, kind) => {
    for (const entry of entries.values()) {
      const { row, run } = entry;
      if (row.shootId !== shootId || row.clipId !== clipId || (kind && row.kind !== kind) || !isOpen(row)) continue;
      put(entry, { ...row, state: 'stopped', done: entry.kept });
      run?.stop.abort(new Error('stopped'));
    }
  };

  for (const row of shelf.jobs()) {
    const entry: Entry = {
      row: row.state === 'running' ? { ...row, state: 'waiting' } : row,
      kept: row.done,
      isLooked: false,
    };
    entry.isLooked = isOpen(entry.row) && isLooked(entry.row);
    entries.set(row.id, entry);
  }
  next();

  return {
    ask,
    stop,
    jobs: (shootId) => [...entries.values()].map(({ row }) => row).filter((row) => row.shootId === shootId),
    close: async () => {
      isClosed = true;
      const running = [...busy.values()];
      for (const { run } of running) run.stop.abort(new Error('closed'));
      await Promise.all(running.map(({ ended }) => ended));
    },
  };
}
