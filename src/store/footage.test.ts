import Sqlite from 'better-sqlite3';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SMALL_SHOOT, tempFolder, tempStore } from '../../test/tempStore.ts';
import { Fault } from '../base/fault.ts';
import { clipsOf, type FootageEvent } from '../record/footage.ts';
import type { JobRow } from './footageTypes.ts';
import { openStore } from './openStore.ts';
import type { ShootStore } from './types.ts';

const AT = '2027-03-09T07:30:00.000Z';

const ADDED: FootageEvent = { kind: 'added', clipId: 'clip-00001', folder: 'day-1', path: 'takes/pour 1.mov', shotId: 'splash' }; // prettier-ignore

const happening = (eventId: string, event: FootageEvent = ADDED) => ({ eventId, who: 'ada', name: 'Ada', at: AT, event }); // prettier-ignore

const JOB: JobRow = { id: 's/clip-00001/measure', shootId: 's', clipId: 'clip-00001', kind: 'measure', state: 'waiting', input: '{"path":"/x"}', done: 0, at: AT }; // prettier-ignore

function withShoots(store: ShootStore): ShootStore {
  for (const id of ['s', 'other']) store.bringIn({ editId: `import-${id}`, at: AT, text: SMALL_SHOOT, id });
  return store;
}

const shelf = async () => withShoots(await tempStore()).footage;

function codeOf(act: () => unknown): string {
  try {
    act();
  } catch (error) {
    if (error instanceof Fault) return error.code;
    throw error;
  }
  return 'nothing was refused';
}

describe('what happened', () => {
  test('is numbered by the server, shoot by shoot, and told with who did it', async () => {
    const footage = await shelf();
    footage.addHappening('s', happening('event-0001'));
    footage.addHappening('other', happening('event-0002'));
    footage.addHappening('s', { ...happening('event-0003', { kind: 'aside', clipId: 'clip-00001', isAside: true }), name: undefined }); // prettier-ignore
    expect(footage.happenings('s')).toEqual([
      { number: 1, eventId: 'event-0001', who: 'ada', name: 'Ada', at: AT, event: ADDED },
      { number: 2, eventId: 'event-0003', who: 'ada', at: AT, event: { kind: 'aside', clipId: 'clip-00001', isAside: true } }, // prettier-ignore
    ]);
    expect(footage.happenings('other')).toMatchObject([{ number: 1, eventId: 'event-0002' }]);
  });

  test('happens once, in whatever order and however often it is sent', async () => {
    const footage = await shelf();
    let run = 0;
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 40 }), (sent) => {
        run += 1;
        const eventOf = (n: number): FootageEvent => ({ kind: 'added', clipId: `clip-${run}-${n}`, folder: 'f', path: `${n}` });
        const before = footage.happenings('s').length;
        const isNew = sent.map((n) => footage.addHappening('s', happening(`event-${run}-${n}`, eventOf(n))));
        const firsts = [...new Set(sent)];
        expect(isNew).toEqual(sent.map((n, i) => sent.indexOf(n) === i));
        const added = footage.happenings('s').slice(before);
        expect(added.map(({ event }) => event.clipId)).toEqual(firsts.map((n) => `clip-${run}-${n}`));
        expect(added.map(({ number }) => number)).toEqual(firsts.map((_, i) => before + i + 1));
      }),
      { numRuns: 30 },
    );
  }); // prettier-ignore

  test('of another kind, or in another shoot, is refused under an id that was used', async () => {
    const footage = await shelf();
    footage.addHappening('s', happening('event-0001'));
    expect(codeOf(() => footage.addHappening('other', happening('event-0001')))).toBe('footage.id-reused');
    const other: FootageEvent = { kind: 'aside', clipId: 'clip-00001', isAside: true };
    expect(codeOf(() => footage.addHappening('s', happening('event-0001', other)))).toBe('footage.id-reused');
    expect(footage.happenings('s')).toHaveLength(1);
  });

  test('can be neither changed nor taken away, not even by the database', async () => {
    const store = withShoots(await tempStore());
    store.footage.addHappening('s', happening('event-0001'));
    const db = new Sqlite(store.file);
    expect(() => db.exec("UPDATE happenings SET who = 'bo'")).toThrow('what happened is never changed');
    expect(() => db.exec('DELETE FROM happenings')).toThrow('what happened is never removed');
    db.close();
  });

  test.each([
    ['happenings', (footage: ShootStore['footage']) => footage.happenings('gone')],
    ['a happening', (footage: ShootStore['footage']) => footage.addHappening('gone', happening('event-0001'))],
    ['a job', (footage: ShootStore['footage']) => footage.putJob({ ...JOB, shootId: 'gone' })],
    ['a measurement', (footage: ShootStore['footage']) => footage.keepMeasurement('gone', 'clip-00001', { at: AT, isWhole: true, basis: '{}', body: '{}' })],
  ])('%s of a shoot that is not there is refused', async (_, act) => {
    const footage = await shelf();
    expect(codeOf(() => act(footage))).toBe('shoot.unknown');
  }); // prettier-ignore

  test('does not come along when a shoot is duplicated, and stays when it is archived', async () => {
    const store = withShoots(await tempStore());
    store.footage.addHappening('s', happening('event-0001'));
    const copy = store.duplicate('s', { editId: 'copy-000001', at: AT, title: 'Again' });
    expect(store.footage.happenings(copy.id)).toEqual([]);
    store.setStanding('s', 'archived');
    expect(clipsOf(store.footage.happenings('s'))).toHaveLength(1);
  });
});

describe('jobs', () => {
  test('are told oldest first, of a shoot or of all, and each comes back as it was put', async () => {
    const footage = await shelf();
    const second: JobRow = { ...JOB, id: 'second', state: 'failed', done: 7, total: 90, at: '2027-03-09T07:31:00.000Z', fault: { code: 'media.cut-short', what: 'It breaks off', where: 'x', mend: 'Copy it again.', retry: false } }; // prettier-ignore
    const elsewhere: JobRow = { ...JOB, id: 'elsewhere', shootId: 'other', at: '2027-03-09T07:29:00.000Z' };
    for (const job of [second, JOB, elsewhere]) footage.putJob(job);
    expect(footage.jobs('s')).toEqual([JOB, second]);
    expect(footage.jobs()).toEqual([elsewhere, JOB, second]);
  });

  test('asked for in the same moment keep the order in which they came, however they go on', async () => {
    const footage = await shelf();
    for (const id of ['b', 'a', 'c']) footage.putJob({ ...JOB, id });
    footage.putJob({ ...JOB, id: 'b', state: 'running' });
    expect(footage.jobs('s').map(({ id, state }) => [id, state])).toEqual([['b', 'running'], ['a', 'waiting'], ['c', 'waiting']]); // prettier-ignore
  });

  test('put again, a job loses its fault and its total where it has none, and keeps its checkpoint', async () => {
    const footage = await shelf();
    footage.putJob({ ...JOB, state: 'failed', total: 90, fault: { code: 'x.y', what: 'w', where: 'w', mend: 'm' } });
    footage.keepCheckpoint(JOB.id, { done: 40, bytes: Uint8Array.of(1, 2, 3) });
    footage.putJob({ ...JOB, done: 40 });
    expect(footage.jobs('s')).toEqual([{ ...JOB, done: 40 }]);
    expect(footage.checkpoint(JOB.id)).toEqual(Buffer.of(1, 2, 3));
  });

  test('what a fault came from is for logs, and is not kept', async () => {
    const footage = await shelf();
    const fault = new Fault({ code: 'x.y', what: 'w', where: 'w', mend: 'm', cause: new Error('secret') });
    footage.putJob({ ...JOB, state: 'failed', fault });
    expect(JSON.stringify(footage.jobs('s'))).not.toContain('secret');
  });
});

describe('checkpoints', () => {
  test('come back byte for byte, and go when they are dropped', async () => {
    const footage = await shelf();
    footage.putJob(JOB);
    expect(footage.checkpoint(JOB.id)).toBeUndefined();
    expect(footage.checkpoint('gone')).toBeUndefined();
    const bytes = Uint8Array.from({ length: 100_000 }, (_, i) => (i * 7919) % 256);
    footage.keepCheckpoint(JOB.id, { done: 5, bytes });
    expect(new Uint8Array(footage.checkpoint(JOB.id)!)).toEqual(bytes);
    footage.keepCheckpoint(JOB.id, { done: 9, bytes: undefined });
    expect(footage.checkpoint(JOB.id)).toBeUndefined();
    expect(footage.jobs('s')).toMatchObject([{ done: 9 }]);
  });

  test('are kept together with how far the job has come, or not at all', async () => {
    const store = withShoots(await tempStore());
    store.footage.putJob(JOB);
    store.footage.keepCheckpoint(JOB.id, { done: 5, bytes: Uint8Array.of(5) });
    // The disk refuses the second: neither the number nor the bytes may be of it.
    const db = new Sqlite(store.file);
    db.exec("CREATE TRIGGER refuse AFTER UPDATE OF checkpoint ON jobs BEGIN SELECT RAISE(ABORT, 'no'); END");
    expect(() => store.footage.keepCheckpoint(JOB.id, { done: 6, bytes: Uint8Array.of(6) })).toThrow('no');
    db.exec('DROP TRIGGER refuse');
    db.close();
    expect(store.footage.jobs('s')).toMatchObject([{ done: 5 }]);
    expect(store.footage.checkpoint(JOB.id)).toEqual(Buffer.of(5));
  });

  test('of a job that was never put are a bug, not lost in silence', async () => {
    const footage = await shelf();
    expect(() => footage.keepCheckpoint('gone', { done: 1, bytes: Uint8Array.of(1) })).toThrow('no job gone');
  });
});

describe('measurements', () => {
  test('of a clip the newest is kept, and its words are only told where they are asked for', async () => {
    const footage = await shelf();
    expect(footage.measurement('s', 'clip-00001')).toBeUndefined();
    footage.keepMeasurement('s', 'clip-00001', { at: AT, isWhole: false, basis: '{"a":1}', body: 'first look' });
    footage.keepMeasurement('s', 'clip-00001', { at: AT, isWhole: true, basis: '{"a":2}', body: 'whole' });
    footage.keepMeasurement('other', 'clip-00001', { at: AT, isWhole: true, basis: '{}', body: 'elsewhere' });
    expect(footage.measurement('s', 'clip-00001')).toEqual({ at: AT, isWhole: true, basis: '{"a":2}', body: 'whole' });
    expect(footage.measured('s')).toEqual([{ clipId: 'clip-00001', at: AT, isWhole: true, basis: '{"a":2}' }]);
  });
});

test('all of it is there when the store is opened again', async () => {
  const folder = tempFolder();
  const first = withShoots(await openStore({ folder }));
  first.footage.addHappening('s', happening('event-0001'));
  first.footage.putJob({ ...JOB, state: 'running' });
  first.footage.keepCheckpoint(JOB.id, { done: 40, bytes: Uint8Array.of(4, 0) });
  first.footage.keepMeasurement('s', 'clip-00001', { at: AT, isWhole: false, basis: '{}', body: '{"x":1}' });
  first.close();
  const { footage } = await tempStore(folder);
  expect(footage.addHappening('s', happening('event-0001'))).toBe(false);
  expect(footage.happenings('s')).toHaveLength(1);
  expect(footage.jobs()).toEqual([{ ...JOB, state: 'running', done: 40 }]);
  expect(footage.checkpoint(JOB.id)).toEqual(Buffer.of(4, 0));
  expect(footage.measurement('s', 'clip-00001')?.body).toBe('{"x":1}');
});
