import { renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { stringify } from 'yaml';
import { measuredDrop, tempDesk, type TempDesk } from '../../test/footage/tempDesk.ts';
import { changed, SMALL } from '../../test/shoots.ts';
import { Fault } from '../base/fault.ts';
import type { ClipEntry, FootageEvent, FootageState } from '../record/footage.ts';
import type { MeasureInput } from './types.ts';

const AT = '2027-03-09T07:30:00.000Z';
const TEXT = stringify(changed(SMALL, { '/shots/two': { ...(SMALL as { shots: { one: object } }).shots.one, title: 'Two', screenTime: '16 s' } }), { aliasDuplicateObjects: false }); // prettier-ignore

const added = (more: Partial<Extract<FootageEvent, { kind: 'added' }>> = {}): FootageEvent => ({ kind: 'added', clipId: 'clip-00001', folder: 'day', path: 'a.mov', shotId: 'one', ...more }); // prettier-ignore
const told = (what: object): FootageEvent => ({ kind: 'told', clipId: 'clip-00001', ...what });

let sent = 0;

async function opened() {
  const temp = await tempDesk({ text: TEXT });
  const happen = (event: FootageEvent, eventId = `event-${(sent += 1)}0000`) =>
    temp.desk.happen('s', { eventId, who: 'ada', at: AT, event });
  const edit = (path: string, value: string | undefined) =>
    temp.store.edit('s', {
      editId: `edit-${(sent += 1)}0000`,
      who: 'ada',
      at: AT,
      revision: temp.store.open('s').revision,
      patch: value === undefined ? [{ op: 'remove', path }] : [{ op: 'add', path, value }],
      summary: 'An edit',
    });
  return { ...temp, happen, edit };
}

type Opened = Awaited<ReturnType<typeof opened>>;

/** What was asked of the queue last. */
const lastInput = ({ queue }: TempDesk) => JSON.parse(queue.asked.at(-1)!.input) as MeasureInput;

const clipIn = ({ clips }: FootageState, id = 'clip-00001'): ClipEntry => clips.find((clip) => clip.id === id)!;

async function refusal(act: Promise<unknown>): Promise<Fault> {
  const error: unknown = await act.then(
    () => undefined,
    (thrown: unknown) => thrown,
  );
  if (error instanceof Fault) return error;
  throw error instanceof Error ? error : new Error('nothing was refused');
}

describe('adding a clip', () => {
  test('puts it in line to be measured, at the rate that its shot is planned with', async () => {
    const temp = await opened();
    const state = await temp.happen(added());
    expect(clipIn(state)).toMatchObject({ id: 'clip-00001', name: 'a.mov', isHere: true, size_B: 5, shotId: 'one', measuring: { kind: 'measure', state: 'waiting', done: 0 }, proxy: { state: 'none' } }); // prettier-ignore
    expect(state.folders).toEqual([{ name: 'day', isThere: true }]);
    expect(temp.queue.asked).toMatchObject([{ shootId: 's', clipId: 'clip-00001', kind: 'measure', isAnew: false }]);
    const { path, basis } = lastInput(temp);
    expect(path.endsWith('/a.mov')).toBe(true);
    expect(basis).toMatchObject({ file: { size_B: 5 }, rateFrom: 'plan', playback_fps: 25 });
    expect(basis.captureRate_fps).toBeGreaterThan(100);
  });

  test('sent again it happens once, and is measured once', async () => {
    const temp = await opened();
    await temp.happen(added(), 'event-again');
    temp.queue.measure('clip-00001');
    renameSync(join(temp.folder, 'a.mov'), join(temp.folder, 'moved.mov'));
    // Even where the file is gone since: it was added.
    const state = await temp.happen(added(), 'event-again');
    expect(state.clips).toHaveLength(1);
    expect(temp.queue.asked).toHaveLength(1);
  });

  test('sent twice at once it happens once', async () => {
    const { happen, store, queue } = await opened();
    await Promise.all([happen(added(), 'event-again'), happen(added(), 'event-again')]);
    expect(store.footage.happenings('s')).toHaveLength(1);
    expect(new Set(queue.asked.map(({ clipId }) => clipId)).size).toBe(1);
  });

  test('of a shot that is not there leaves it without a plan', async () => {
    const temp = await opened();
    await temp.happen(added({ shotId: 'dropped' }));
    expect(lastInput(temp).basis).toMatchObject({ rateFrom: 'file' });
    expect(lastInput(temp).basis).not.toHaveProperty('captureRate_fps');
    temp.queue.measure('clip-00001');
    expect(clipIn(await temp.desk.look('s')).brief?.against).toEqual([]);
  });

  test.each([
    ['the same file under another id', added({ clipId: 'clip-00002' }), 'footage.clip-here'],
    ['another file under the same id', added({ path: 'b.mov' }), 'footage.clip-here'],
    ['a file that is not there', added({ clipId: 'clip-00002', path: 'gone.mov' }), 'footage.path-unknown'],
    ['a folder', added({ clipId: 'clip-00002', path: 'takes' }), 'footage.not-a-clip'],
    ['a way out', added({ clipId: 'clip-00002', path: '../a.mov' }), 'footage.path-refused'],
    ['a folder that is not open', added({ clipId: 'clip-00002', folder: 'night' }), 'footage.folder-unknown'],
    ['of a clip that never was', { kind: 'aside', clipId: 'clip-00002', isAside: true } as const, 'footage.clip-unknown'],
    ['a curve that is none', told({ curve: 'film' }), 'measure.bad-curve'],
  ])('%s is refused, and nothing happened', async (_, event, code) => {
    const { happen, store } = await opened();
    await happen(added());
    expect((await refusal(happen(event))).code).toBe(code);
    expect(store.footage.happenings('s')).toHaveLength(1);
  }); // prettier-ignore

  test('to a shoot that is not there is refused', async () => {
    const { desk } = await opened();
    expect((await refusal(desk.happen('gone', { eventId: 'event-00001', who: 'ada', at: AT, event: added() }))).code).toBe('shoot.unknown'); // prettier-ignore
    expect((await refusal(desk.look('gone'))).code).toBe('shoot.unknown');
    expect((await refusal(desk.folder('gone', { folder: 'day', path: '' }))).code).toBe('shoot.unknown');
  });
});

describe('what was measured', () => {
  test('is told in brief, held against the plan as it now is', async () => {
    const { happen, queue, desk, edit } = await opened();
    await happen(added());
    queue.measure('clip-00001');
    const { brief, measuring } = clipIn(await desk.look('s'));
    expect(measuring).toMatchObject({ state: 'done' });
    expect(brief).toMatchObject({ measuredAt: AT, isWhole: true, width: 120, height: 72, frameCount: 140, flicker: 'steady' }); // prettier-ignore
    expect(brief!.verdict.length).toBeGreaterThan(3);
    expect(brief!.action!.onset).toBeLessThan(brief!.action!.end);
    const speed = brief!.against.find(({ what }) => what === 'speed')!;
    edit('/shots/one/action/speed', '9 m/s ± 0.1 m/s');
    const after = clipIn(await desk.look('s')).brief!.against.find(({ what }) => what === 'speed')!;
    expect([speed.says === after.says, after.says.includes('9')]).toEqual([false, true]);
  });

  test('of a first look says that it is one', async () => {
    const { happen, queue, desk } = await opened();
    await happen(added());
    queue.measure('clip-00001', { isWhole: false });
    expect(clipIn(await desk.look('s')).brief?.isWhole).toBe(false);
    queue.measure('clip-00001');
    expect(clipIn(await desk.look('s')).brief?.isWhole).toBe(true);
  });

  test('comes as it is kept, and of what was not measured nothing comes', async () => {
    const { happen, queue, desk } = await opened();
    await happen(added());
    expect(await desk.measured('s', 'clip-00001')).toBeUndefined();
    queue.measure('clip-00001');
    expect(await desk.measured('s', 'clip-00001')).toContain(measuredDrop().pixelFormat);
    expect((await refusal(desk.measured('s', 'clip-00002'))).code).toBe('footage.clip-unknown');
  });

  test('in a form that is no longer read is as if it had not been', async () => {
    const { happen, store, desk } = await opened();
    await happen(added());
    store.footage.keepMeasurement('s', 'clip-00001', { at: AT, isWhole: true, basis: '{"file":{},"rateFrom":"file"}', body: '{"form":0}' }); // prettier-ignore
    expect(clipIn(await desk.look('s'))).not.toHaveProperty('brief');
  });
});

describe('a measurement is said to be stale', () => {
  afterEach(() => void vi.useRealTimers());

  const reason = async ({ desk }: TempDesk) => clipIn(await desk.look('s')).brief!.isStale;

  const changes: readonly (readonly [string, (temp: Opened) => unknown, RegExp])[] = [
    ['its rate was told', ({ happen }) => happen(told({ captureRate_fps: 1500 })), /^It was measured at .* fps, and you say 1,?500 fps\.$/],
    ['its curve was told', ({ happen }) => happen(told({ curve: 'rec709' })), /curve/],
    ['its black was told', ({ happen }) => happen(told({ blackCode: 64 })), /black/],
    ['it is of another shot now', ({ happen }) => happen(told({ shotId: 'two' })), /its shot is planned at/],
    ['it is of no shot any more', ({ happen }) => happen(told({ shotId: null })), /nobody says any more/],
    ['its shot is gone', ({ edit }) => edit('/shots/one', undefined), /nobody says any more/],
    ['its shot is planned otherwise', ({ edit }) => edit('/shots/one/screenTime', '12 s'), /its shot is planned at/],
  ]; // prettier-ignore

  test.each(changes)('where %s, and why', async (_, act, why) => {
    const temp = await opened();
    await temp.happen(added());
    temp.queue.measure('clip-00001');
    expect(await reason(temp)).toBeUndefined();
    await act(temp);
    expect(await reason(temp)).toMatch(why);
    expect(temp.queue.asked).toHaveLength(1);
    // Measured again with what is now so, it holds.
    await temp.desk.measure('s', 'clip-00001', { isAnew: false });
    expect(temp.queue.asked).toHaveLength(2);
    temp.queue.measure('clip-00001');
    expect(await reason(temp)).toBeUndefined();
  }); // prettier-ignore

  test('where the film is shown otherwise', async () => {
    const temp = await opened();
    await temp.happen(added());
    await temp.happen(told({ captureRate_fps: 1500 }));
    await temp.desk.measure('s', 'clip-00001', { isAnew: false });
    temp.queue.measure('clip-00001');
    temp.edit('/deliverables/film/rate', '50');
    expect(await reason(temp)).toBe('It was measured as shown at 25 fps, and is now shown at 50 fps.');
  });

  test('where its file was written to; not where something else was told, or the file is away', async () => {
    const temp = await opened();
    await temp.happen(added());
    temp.queue.measure('clip-00001');
    await temp.happen(told({ note: 'the good one' }));
    expect(await reason(temp)).toBeUndefined();
    vi.useFakeTimers({ toFake: ['performance'] });
    rmSync(join(temp.folder, 'a.mov'));
    vi.advanceTimersByTime(60_000);
    const away = clipIn(await temp.desk.look('s'));
    expect([away.isHere, away.brief?.isStale]).toEqual([false, undefined]);
    writeFileSync(join(temp.folder, 'a.mov'), 'written to since');
    vi.advanceTimersByTime(60_000);
    expect(await reason(temp)).toMatch(/file/);
  });
});

describe('what is done to a clip', () => {
  test('can be stopped, and is told while it goes on', async () => {
    const { happen, queue, desk } = await opened();
    await happen(added());
    queue.set('clip-00001', { state: 'running', done: 40, total: 140 });
    expect(clipIn(await desk.look('s')).measuring).toEqual({ kind: 'measure', state: 'running', done: 40, total: 140 });
    expect(clipIn(await desk.stop('s', 'clip-00001')).measuring?.state).toBe('stopped');
  });

  test('a job that failed says why and how to mend it', async () => {
    const { happen, queue, desk } = await opened();
    await happen(added());
    queue.set('clip-00001', { state: 'failed', fault: { code: 'media.cut-short', what: 'It breaks off', where: 'a.mov', mend: 'Copy it again.', retry: true } }); // prettier-ignore
    expect(clipIn(await desk.look('s')).measuring?.fault).toEqual({ code: 'media.cut-short', what: 'It breaks off', where: 'a.mov', mend: 'Copy it again.' }); // prettier-ignore
  });

  test('a small copy is asked for once, and is ready when it is there', async () => {
    const { happen, queue, desk, copies } = await opened();
    await happen(added());
    expect(clipIn(await desk.makeProxy('s', 'clip-00001')).proxy).toMatchObject({ state: 'waiting' });
    expect(queue.asked.at(-1)).toMatchObject({ kind: 'proxy', isAnew: false });
    expect(await desk.proxyFile('s', 'clip-00001')).toBeUndefined();
    copies.set((JSON.parse(queue.asked.at(-1)!.input) as MeasureInput).path, '/copies/a.mp4');
    expect(clipIn(await desk.makeProxy('s', 'clip-00001')).proxy.state).toBe('ready');
    expect(queue.asked).toHaveLength(2);
    expect(await desk.proxyFile('s', 'clip-00001')).toBe('/copies/a.mp4');
  });

  test('a clip that became a link out of its folder is away, and nothing of it is read', async () => {
    const { happen, desk, folder, stillsAsked } = await opened();
    await happen(added());
    writeFileSync(join(dirname(folder), 'private.mov'), 'private');
    rmSync(join(folder, 'a.mov'));
    symlinkSync('../private.mov', join(folder, 'a.mov'));
    const still = desk.still('s', { clipId: 'clip-00001', frame: 0, width: 320 });
    expect((await refusal(still)).code).toBe('footage.path-refused');
    expect((await refusal(desk.measure('s', 'clip-00001', { isAnew: true }))).code).toBe('footage.path-refused');
    expect(stillsAsked).toEqual([]);
  });

  test.each(['measure', 'stop', 'makeProxy', 'proxyFile', 'mark', 'still'] as const)('to %s one that is not there is refused', async (name) => {
    const { desk } = await opened();
    const acts = {
      measure: () => desk.measure('s', 'clip-00009', { isAnew: true }),
      stop: () => desk.stop('s', 'clip-00009'),
      makeProxy: () => desk.makeProxy('s', 'clip-00009'),
      proxyFile: () => desk.proxyFile('s', 'clip-00009'),
      mark: () => desk.mark('s', 'clip-00009'),
      still: () => desk.still('s', { clipId: 'clip-00009', frame: 0, width: 320 }),
    };
    expect((await refusal(acts[name]())).code).toBe('footage.clip-unknown');
  }); // prettier-ignore
});

describe('watching', () => {
  afterEach(() => void vi.useRealTimers());

  test('tells at once, then at most four times a second, and never loses the last', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const { desk, happen, queue } = await opened();
    await happen(added());
    const heard: string[] = [];
    const stop = desk.watch((shootId) => heard.push(shootId));
    vi.advanceTimersByTime(1000);
    heard.length = 0;
    for (let done = 1; done <= 100; done += 1) {
      queue.set('clip-00001', { state: 'running', done });
      vi.advanceTimersByTime(10);
    }
    // At 0, 250, 500, 750 and 1000 ms, the last having been changed at 990.
    expect(heard).toEqual(['s', 's', 's', 's', 's']);
    queue.set('clip-00001', { state: 'running', done: 101 });
    vi.advanceTimersByTime(249);
    expect(heard.length).toBe(5);
    vi.advanceTimersByTime(1);
    expect(heard.length).toBe(6);
    vi.advanceTimersByTime(5000);
    expect(heard.length).toBe(6);
    stop();
    queue.set('clip-00001', { done: 102 });
    expect(heard.length).toBe(6);
  });

  test('tells of edits to the shoot as well, and of nothing once it is closed', async () => {
    const { desk, edit } = await opened();
    const heard: string[] = [];
    desk.watch((shootId) => heard.push(shootId));
    edit('/shots/one/screenTime', '12 s');
    expect(heard).toEqual(['s']);
    await desk.close();
    edit('/shots/one/screenTime', '13 s');
    expect(heard).toEqual(['s']);
  });
});
