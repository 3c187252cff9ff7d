/** The footage of shoots: what happened to clips, exactly once, the long work on them, and what was measured. */
import { Fault, type FaultDetails } from '../base/fault.ts';
import type { FootageEvent, Happening } from '../record/footage.ts';
import type { FootageShelf, IncomingHappening, JobRow, KeptMeasurement } from './footageTypes.ts';
import type { Shelf } from './shelf.ts';
import type { Database } from './sqlite.ts';

interface HappeningRow {
  readonly shoot: string;
  readonly number: number;
  readonly eventId: string;
  readonly who: string;
  readonly name: string | null;
  readonly at: string;
  readonly event: string;
}

interface StoredJob {
  readonly id: string;
  readonly shoot: string;
  readonly clip: string;
  readonly kind: JobRow['kind'];
  readonly state: JobRow['state'];
  readonly input: string;
  readonly done: number;
  readonly total: number | null;
  readonly fault: string | null;
  readonly at: string;
}

interface StoredMeasurement {
  readonly at: string;
  readonly isWhole: number;
  readonly basis: string;
  readonly body: string;
}

const JOB = 'id, shoot, clip, kind, state, input, done, total, fault, at';

function prepare(db: Database) {
  return {
    happenings: db.prepare<[string], HappeningRow>('SELECT * FROM happenings WHERE shoot = ? ORDER BY number'),
    sent: db.prepare<[string], HappeningRow>('SELECT * FROM happenings WHERE eventId = ?'),
    newest: db.prepare<[string], number>('SELECT COALESCE(MAX(number), 0) FROM happenings WHERE shoot = ?').pluck(),
    add: db.prepare<[HappeningRow]>(
      `INSERT INTO happenings (shoot, number, eventId, who, name, at, event)
        VALUES (@shoot, @number, @eventId, @who, @name, @at, @event)`,
    ),
    // One asked for in the same millisecond as another keeps its place: rows are numbered as they come.
    jobs: db.prepare<[], StoredJob>(`SELECT ${JOB} FROM jobs ORDER BY at, rowid`),
    jobsOf: db.prepare<[string], StoredJob>(`SELECT ${JOB} FROM jobs WHERE shoot = ? ORDER BY at, rowid`),
    putJob: db.prepare<[StoredJob]>(
      `INSERT INTO jobs (${JOB}) VALUES (@id, @shoot, @clip, @kind, @state, @input, @done, @total, @fault, @at)
        ON CONFLICT (id) DO UPDATE SET shoot = @shoot, clip = @clip, kind = @kind, state = @state, input = @input,
          done = @done, total = @total, fault = @fault, at = @at`,
    ),
    checkpoint: db.prepare<[string], Buffer | null>('SELECT checkpoint FROM jobs WHERE id = ?').pluck(),
    keepCheckpoint: db.prepare<[{ id: string; done: number; bytes: Uint8Array | null }]>(
      'UPDATE jobs SET done = @done, checkpoint = @bytes WHERE id = @id',
    ),
    measurement: db.prepare<[string, string], StoredMeasurement>(
      'SELECT at, isWhole, basis, body FROM measurements WHERE shoot = ? AND clip = ?',
    ),
    measured: db.prepare<[string], Omit<StoredMeasurement, 'body'> & { readonly clip: string }>(
      'SELECT clip, at, isWhole, basis FROM measurements WHERE shoot = ? ORDER BY clip',
    ),
    keepMeasurement: db.prepare<[StoredMeasurement & { readonly shoot: string; readonly clip: string }]>(
      `INSERT INTO measurements (shoot, clip, at, isWhole, basis, body) VALUES (@shoot, @clip, @at, @isWhole, @basis, @body)
        ON CONFLICT (shoot, clip) DO UPDATE SET at = @at, isWhole = @isWhole, basis = @basis, body = @body`,
    ),
  };
} // prettier-ignore

function happeningOf({ number, eventId, who, name, at, event }: HappeningRow): Happening {
  return { number, eventId, who, ...(name !== null && { name }), at, event: JSON.parse(event) as FootageEvent };
}

function jobOf({ id, shoot, clip, kind, state, input, done, total, fault, at }: StoredJob): JobRow {
  return {
    id,
    shootId: shoot,
    clipId: clip,
    kind,
    state,
    input,
    done,
    ...(total !== null && { total }),
    ...(fault !== null && { fault: JSON.parse(fault) as FaultDetails }),
    at,
  };
}

/** What went wrong without what it came from, which is for logs. */
const faultText = ({ code, what, where, mend, retry }: FaultDetails) => JSON.stringify({ code, what, where, mend, retry }); // prettier-ignore

export function openFootage(db: Database, { find, reading, writing }: Shelf): FootageShelf {
  const sql = prepare(db);

  const add = (shootId: string, { eventId, who, name, at, event }: IncomingHappening): boolean => {
    find(shootId);
    const told = JSON.stringify(event);
    const first = sql.sent.get(eventId);
    if (first?.shoot === shootId && first.event === told) return false;
    if (first)
      throw new Fault({
        code: 'footage.id-reused',
        what: `Something else happened under the id ${eventId}`,
        where: shootId,
        mend: 'Send each happening under an id of its own.',
      });
    sql.add.run({ shoot: shootId, number: sql.newest.get(shootId)! + 1, eventId, who, name: name ?? null, at, event: told }); // prettier-ignore
    return true;
  };

  return {
    happenings: (shootId) =>
      reading(() => {
        find(shootId);
        return sql.happenings.all(shootId).map(happeningOf);
      }),

    addHappening: (shootId, happening) => writing(() => add(shootId, happening)),

    jobs: (shootId) => reading(() => (shootId === undefined ? sql.jobs.all() : sql.jobsOf.all(shootId)).map(jobOf)),

    putJob: ({ id, shootId, clipId, kind, state, input, done, total, fault, at }) =>
      writing(() => {
        find(shootId);
        sql.putJob.run({
          id,
          shoot: shootId,
          clip: clipId,
          kind,
          state,
          input,
          done,
          total: total ?? null,
          fault: fault ? faultText(fault) : null,
          at,
        });
      }),

    checkpoint: (jobId) => reading(() => sql.checkpoint.get(jobId) ?? undefined),

    keepCheckpoint: (jobId, { done, bytes }) =>
      writing(() => {
        const { changes } = sql.keepCheckpoint.run({ id: jobId, done, bytes: bytes ?? null });
        if (changes === 0) throw new Error(`There is no job ${jobId} to keep a checkpoint of`);
      }),

    measurement: (shootId, clipId) =>
      reading(() => {
        const kept = sql.measurement.get(shootId, clipId);
        return kept && { ...kept, isWhole: kept.isWhole === 1 };
      }),

    measured: (shootId) =>
      reading(() => sql.measured.all(shootId).map(({ clip, at, isWhole, basis }) => ({ clipId: clip, at, isWhole: isWhole === 1, basis }))), // prettier-ignore

    keepMeasurement: (shootId, clipId, { at, isWhole, basis, body }: KeptMeasurement) =>
      writing(() => {
        find(shootId);
        sql.keepMeasurement.run({ shoot: shootId, clip: clipId, at, isWhole: isWhole ? 1 : 0, basis, body });
      }),
  };
}
