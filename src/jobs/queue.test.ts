/** Jobs one after the other, stopped, closed and killed wherever that may be. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Fault } from '../base/fault.ts';
import type { FootageShelf, JobRow, KeptMeasurement } from '../store/footageTypes.ts';
import { createQueue } from './queue.ts';
import type { Hooks, MeasuredAlone, Queue, Runners } from './queueTypes.ts';

const SHOOT = 'shoot-1';
const input = (name: string, more: object = {}) =>
  JSON.stringify({ path: `/${name}.mov`, basis: { file: { size_B: 9, modified_ms: 1 }, rateFrom: 'file', ...more } });

interface Disk {
  readonly jobs: Map<string, JobRow>;
  readonly checkpoints: Map<string, Uint8Array>;
  readonly measurements: Map<string, KeptMeasurement>;
}

const emptyDisk = (): Disk => ({ jobs: new Map(), checkpoints: new Map(), measurements: new Map() });
/** What a program that was killed now would leave. */
const leftOn = ({ jobs, checkpoints, measurements }: Disk): Disk => ({ jobs: new Map(jobs), checkpoints: new Map(checkpoints), measurements: new Map(measurements) }); // prettier-ignore

function shelfOn({ jobs, checkpoints, measurements }: Disk): FootageShelf {
  return {
    happenings: () => [],
    addHappening: () => true,
    jobs: () => [...jobs.values()],
    putJob: (job) => void jobs.set(job.id, job),
    checkpoint: (id) => checkpoints.get(id),
    keepCheckpoint: (id, { done, bytes }) => {
      jobs.set(id, { ...jobs.get(id)!, done });
      if (bytes) checkpoints.set(id, bytes);
      else checkpoints.delete(id);
    },
    measurement: (_, clipId) => measurements.get(clipId),
    measured: () => [...measurements].map(([clipId, { at, isWhole, basis }]) => ({ clipId, at, isWhole, basis })),
    keepMeasurement: (_, clipId, measurement) => void measurements.set(clipId, measurement),
  };
}

const FRAMES = 12;
const found = (name: string, frames: readonly number[], isWhole: boolean) => ({ name, frames, isWhole }) as unknown as MeasuredAlone; // prettier-ignore
const wholeOf = (name: string) => ({ name, frames: Array.from({ length: FRAMES }, (_, i) => i), isWhole: true });

/** Work that takes its time, frame by frame, and writes down what it did in which order. */
function slowRunners(log: string[], { checkpointEach = 3, turn = () => new Promise<void>((resolve) => setImmediate(resolve)) } = {}): Runners {
  const nameIn = (path: string) => path.slice(1, -4);
  const step = async ({ signal }: Hooks): Promise<void> => {
    await turn();
    signal.throwIfAborted();
  };
  return {
    look: async ({ path }, hooks) => {
      log.push(`look ${nameIn(path)}`);
      for (let i = 0; i < 3; i += 1) {
        await step(hooks);
        hooks.onLook(found(nameIn(path), [i], false));
      }
      if (!path.includes('short')) return found(nameIn(path), [], false);
      return found(nameIn(path), wholeOf('').frames, true);
    },
    measure: async ({ path }, hooks) => {
      log.push(`measure ${nameIn(path)}`);
      const frames: number[] = hooks.saved ? [...hooks.saved] : [];
      while (frames.length < FRAMES) {
        await turn();
        if (path.includes('broken') && frames.length === 5) throw new Fault({ code: 'media.stalled', what: 'Nothing came', where: path, mend: 'Try again.' });
        frames.push(frames.length);
        if (hooks.signal.aborted || frames.length % checkpointEach === 0) hooks.onCheckpoint(frames.length, Uint8Array.from(frames));
        hooks.signal.throwIfAborted();
        hooks.onProgress(frames.length, FRAMES);
      }
      return found(nameIn(path), frames, true);
    },
    proxy: async ({ path }, hooks) => {
      log.push(`copy ${nameIn(path)}`);
      for (let i = 0; i < 4; i += 1) await step(hooks);
    },
  };
} // prettier-ignore

interface Bench {
  readonly disk: Disk;
  readonly log: string[];
  readonly queue: Queue;
  readonly told: () => number;
}

function begin(disk = emptyDisk(), log: string[] = [], how?: Parameters<typeof slowRunners>[1]): Bench {
  let [told, minute] = [0, 0];
  const queue = createQueue({
    shelf: shelfOn(disk),
    runners: slowRunners(log, how),
    clock: () => `2030-01-01T00:${String((minute += 1)).padStart(2, '0')}:00.000Z`,
    changed: () => (told += 1),
  });
  return { disk, log, queue, told: () => told };
}

const stateOf = ({ queue }: Bench, clipId: string, kind = 'measure') => queue.jobs(SHOOT).find((job) => job.clipId === clipId && job.kind === kind)?.state; // prettier-ignore
const settled = (bench: Bench) =>
  until(() => bench.queue.jobs(SHOOT).every(({ state }) => state !== 'waiting' && state !== 'running'));
const measuredOf = ({ disk }: Bench, clipId: string): unknown => (JSON.parse(disk.measurements.get(clipId)?.body ?? '{}') as { clip?: unknown }).clip; // prettier-ignore
const measure = ({ queue }: Bench, clipId: string, more: object = {}, isAnew = false) => queue.ask({ shootId: SHOOT, clipId, kind: 'measure', input: input(clipId, more), isAnew }); // prettier-ignore
const copy = ({ queue }: Bench, clipId: string) => queue.ask({ shootId: SHOOT, clipId, kind: 'proxy', input: input(clipId), isAnew: false }); // prettier-ignore
async function until(isSo: () => boolean): Promise<void> {
  for (let turn = 0; !isSo(); turn += 1) {
    if (turn > 10_000) throw new Error('it never came to that');
    await new Promise<void>((resolve) => setImmediate(resolve));
  }
}

describe('a queue', () => {
  test('looks at all first, then measures whole, then makes small copies', async () => {
    const bench = begin();
    copy(bench, 'aa');
    for (const clip of ['bb', 'cc', 'dd']) measure(bench, clip);
    copy(bench, 'bb');
    await settled(bench);
    expect(bench.log).toEqual(['copy aa', 'look bb', 'look cc', 'look dd', 'measure bb', 'measure cc', 'measure dd', 'copy bb']); // prettier-ignore
    for (const clip of ['bb', 'cc', 'dd']) expect(measuredOf(bench, clip)).toEqual(wholeOf(clip));
    expect([...bench.disk.jobs.values()].map(({ state }) => state)).toEqual(Array(5).fill('done'));
    expect(bench.disk.checkpoints.size).toBe(0);
  });

  test('stops a whole pass for a first look, and goes on with it where it was', async () => {
    const bench = begin();
    measure(bench, 'long');
    await until(() => (bench.queue.jobs(SHOOT)[0]!.done ?? 0) >= 4);
    measure(bench, 'new');
    await settled(bench);
    expect(bench.log).toEqual(['look long', 'measure long', 'look new', 'measure long', 'measure new']);
    expect(measuredOf(bench, 'long')).toEqual(wholeOf('long'));
  });

  test('has done with a short clip after its first look', async () => {
    const bench = begin();
    measure(bench, 'short');
    await settled(bench);
    expect(bench.log).toEqual(['look short']);
    expect(measuredOf(bench, 'short')).toEqual(wholeOf('short'));
  });

  test('keeps what a first look found while the rest is measured, and tells how far it is', async () => {
    const bench = begin();
    measure(bench, 'aa');
    await until(() => bench.queue.jobs(SHOOT)[0]!.done >= 4);
    expect(bench.disk.measurements.get('aa')).toMatchObject({ isWhole: false, basis: JSON.stringify((JSON.parse(input('aa')) as { basis: object }).basis) }); // prettier-ignore
    expect(bench.queue.jobs(SHOOT)[0]).toMatchObject({ state: 'running', total: FRAMES });
    const told = bench.told();
    await settled(bench);
    expect(bench.told()).toBeGreaterThan(told + 4);
  });

  test('stops one where it can be gone on from, and goes on from there when asked again', async () => {
    const bench = begin();
    measure(bench, 'aa');
    await until(() => bench.queue.jobs(SHOOT)[0]!.done >= 5);
    bench.queue.stop(SHOOT, 'aa');
    expect(stateOf(bench, 'aa')).toBe('stopped');
    await until(() => bench.queue.jobs(SHOOT)[0]!.done >= 5);
    expect(bench.disk.jobs.get('measure shoot-1 aa')).toMatchObject({ state: 'stopped', done: expect.any(Number) as number }); // prettier-ignore
    const { done } = measure(bench, 'aa');
    expect(done).toBeGreaterThanOrEqual(5);
    await settled(bench);
    expect(bench.log).toEqual(['look aa', 'measure aa', 'measure aa']);
    expect(measuredOf(bench, 'aa')).toEqual(wholeOf('aa'));
  });

  test('asked for what is done, or goes on, does nothing; asked anew, does it from the beginning', async () => {
    const bench = begin();
    measure(bench, 'aa');
    measure(bench, 'aa');
    await settled(bench);
    measure(bench, 'aa');
    expect(stateOf(bench, 'aa')).toBe('done');
    measure(bench, 'aa', {}, true);
    expect(stateOf(bench, 'aa')).not.toBe('done');
    await settled(bench);
    // What was measured whole is not put aside for a look.
    expect(bench.log).toEqual(['look aa', 'measure aa', 'measure aa']);
  });

  test('asked for with another input drops what it is at', async () => {
    const bench = begin();
    measure(bench, 'aa');
    await until(() => bench.queue.jobs(SHOOT)[0]!.done >= 5);
    measure(bench, 'aa', { captureRate_fps: 1000 });
    await settled(bench);
    expect(bench.log).toEqual(['look aa', 'measure aa', 'look aa', 'measure aa']);
    expect(bench.disk.measurements.get('aa')!.basis).toContain('1000');
    expect(measuredOf(bench, 'aa')).toEqual(wholeOf('aa'));
  });

  test('says why one failed, does the next, and goes on where it failed when asked again', async () => {
    const bench = begin();
    measure(bench, 'broken');
    measure(bench, 'fine');
    await settled(bench);
    const [broken] = bench.queue.jobs(SHOOT);
    expect(broken).toMatchObject({ state: 'failed', fault: { code: 'media.stalled', mend: 'Try again.' } });
    expect(stateOf(bench, 'fine')).toBe('done');
    expect(measure(bench, 'broken')).toMatchObject({ done: 3 });
    await settled(bench);
    expect(bench.log.filter((line) => line === 'look broken')).toHaveLength(1);
  });

  test('makes a copy again when asked, as it may have been cleared away', async () => {
    const bench = begin();
    copy(bench, 'aa');
    await settled(bench);
    copy(bench, 'aa');
    await settled(bench);
    expect(bench.log).toEqual(['copy aa', 'copy aa']);
  });

  test('that is closed says nothing more, and leaves what runs to be gone on with', async () => {
    const bench = begin();
    for (const clip of ['aa', 'bb']) measure(bench, clip);
    await until(() => bench.queue.jobs(SHOOT)[0]!.done >= 5);
    await bench.queue.close();
    expect([...bench.disk.jobs.values()].map(({ state }) => state)).toEqual(['running', 'waiting']);
    const told = bench.told();
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(bench.told()).toBe(told);
    const after = begin(bench.disk);
    await settled(after);
    expect(after.log).toEqual(['measure aa', 'measure bb']);
    for (const clip of ['aa', 'bb']) expect(measuredOf(after, clip)).toEqual(wholeOf(clip));
  });
});

describe('whatever happens', () => {
  const Act = fc.record({
    turns: fc.integer({ min: 0, max: 9 }),
    act: fc.constantFrom('ask', 'stop', 'close', 'kill', 'copy'),
    clip: fc.constantFrom('aa', 'bb', 'short'),
  });

  test('every clip ends measured, each frame once, and nothing is left half done', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(Act, { maxLength: 12 }), fc.integer({ min: 1, max: 13 }), async (acts, checkpointEach) => {
        let bench = begin(emptyDisk(), [], { checkpointEach });
        for (const { turns, act, clip } of acts) {
          if (act === 'ask') measure(bench, clip);
          if (act === 'copy') copy(bench, clip);
          if (act === 'stop') bench.queue.stop(SHOOT, clip);
          if (act === 'close') {
            await bench.queue.close();
            bench = begin(bench.disk, bench.log, { checkpointEach });
          }
          if (act === 'kill') {
            const left = leftOn(bench.disk);
            void bench.queue.close();
            bench = begin(left, bench.log, { checkpointEach });
          }
          for (let i = 0; i < turns; i += 1) await new Promise<void>((resolve) => setImmediate(resolve));
        }
        for (const clip of ['aa', 'bb', 'short']) measure(bench, clip);
        await settled(bench);
        for (const clip of ['aa', 'bb', 'short']) expect(measuredOf(bench, clip)).toEqual(wholeOf(clip));
        expect(bench.disk.checkpoints.size).toBe(0);
        expect(bench.queue.jobs(SHOOT).filter(({ kind }) => kind === 'measure').every(({ state }) => state === 'done')).toBe(true);
      }),
      { numRuns: 150 },
    );
  }); // prettier-ignore
});
