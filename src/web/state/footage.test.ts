import { describe, expect, test } from 'vitest';
import type { FootageClient } from '../../api/footageClient.ts';
import { Fault } from '../../base/fault.ts';
import { clipsOf, type ClipEntry, type FootageEvent, type FootageState, type Happening } from '../../record/footage.ts';
import { openFootage } from './footage.ts';
import { pageStorage, type StorageLike } from './keep.ts';
import { keepFootageIn } from './keepFootage.ts';

const away = () => new TypeError('no network');
const refusal = new Fault({ code: 'clip.unknown', what: 'There is no such clip', where: 'clip-9', mend: 'Look at the list.' }); // prettier-ignore

/** A server that keeps what happened as ours does: once an id, and nothing while it is away. */
function fakeServer() {
  const happenings: Happening[] = [];
  let error: Error | undefined;
  const state = (): FootageState => ({
    clips: clipsOf(happenings).map((clip): ClipEntry => ({ ...clip, name: clip.path, isHere: true, size_B: 5, proxy: { state: 'none' } })),
    folders: [{ name: 'card', isThere: true }],
  });
  const answer = () => (error ? Promise.reject(error) : Promise.resolve(state()));
  const sent: string[] = [];
  const client: FootageClient = {
    look: answer,
    happen: (_, { eventId, event }) => {
      sent.push(eventId);
      if (!error && !happenings.some((each) => each.eventId === eventId))
        happenings.push({ number: happenings.length + 1, eventId, event, who: 'x', at: '2030-01-01T10:00:00.000Z' });
      return answer();
    },
    folder: () => Promise.reject(away()),
    measure: answer,
    stop: answer,
    measured: () => Promise.reject(away()),
    makeProxy: answer,
  };
  return { client, happenings, sent, state, fail: (with_: Error | undefined) => (error = with_) };
} // prettier-ignore

function setUp(storage: StorageLike = pageStorage()) {
  const server = fakeServer();
  const waits: (() => void)[] = [];
  let told: ((state: FootageState) => void) | undefined;
  let live: ((isLive: boolean) => void) | undefined;
  let isListening = false;
  let count = 0;
  const store = openFootage({
    shootId: 'day-1',
    client: server.client,
    keep: keepFootageIn(storage),
    listen: ({ onState, onLive }) => {
      [told, live, isListening] = [onState, onLive, true];
      return () => (isListening = false);
    },
    makeId: () => `event-${String((count += 1)).padStart(4, '0')}`,
    now: () => '2030-01-01T09:59:00.000Z',
    after: (_, run) => {
      waits.push(run);
      return () => void (waits.includes(run) && waits.splice(waits.indexOf(run), 1));
    },
  });
  return { ...server, store, waits, tell: (state: FootageState) => told?.(state), live: (is: boolean) => live?.(is), isListening: () => isListening }; // prettier-ignore
}

const added = (clipId: string, shotId?: string): FootageEvent => ({ kind: 'added', clipId, folder: 'card', path: `day/${clipId}.mov`, ...(shotId !== undefined && { shotId }) }); // prettier-ignore
const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
const names = (store: ReturnType<typeof setUp>['store']) => store.current().state?.clips.map(({ name }) => name);

describe('what is done to clips', () => {
  test('is shown at once and sent in order, and what the server then says takes its place', async () => {
    const { store, happenings, sent } = setUp();
    store.subscribe(() => undefined);
    await settled();
    store.happen(added('clip-0001', 'pour'));
    store.happen({ kind: 'aside', clipId: 'clip-0001', isAside: true });
    expect(names(store)).toEqual(['clip-0001.mov']);
    expect(store.current().state?.clips[0]).toMatchObject({
      isAside: true,
      shotId: 'pour',
      isHere: true,
      isUnsent: true,
    });
    expect(store.current().unsentCount).toBe(2);
    await settled();
    await settled();
    expect(sent).toEqual(['event-0001', 'event-0002']);
    expect(happenings.map(({ event }) => event.kind)).toEqual(['added', 'aside']);
    expect(store.current().unsentCount).toBe(0);
    expect(store.current().state?.clips[0]).toMatchObject({ name: 'day/clip-0001.mov', size_B: 5, isAside: true });
    expect(store.current().state?.clips[0]).not.toHaveProperty('isUnsent');
  });

  test('stays on the screen without a network, is kept in the browser, and is sent under the same id when it is back', async () => {
    const storage = pageStorage();
    const first = setUp(storage);
    first.store.subscribe(() => undefined);
    await settled();
    first.fail(away());
    first.store.happen(added('clip-0001'));
    await settled();
    expect(first.store.current()).toMatchObject({
      unsentCount: 1,
      failed: expect.stringContaining('cannot be reached') as string,
    });
    expect(names(first.store)).toEqual(['clip-0001.mov']);
    first.fail(undefined);
    first.waits.shift()!();
    await settled();
    expect(first.sent).toEqual(['event-0001', 'event-0001']);
    expect(first.store.current().failed).toBeUndefined();
    expect(keepFootageIn(storage).unsent('day-1')).toEqual([]);
  });

  test('is sent by the next page where this one ended before it was', async () => {
    const storage = pageStorage();
    const before = setUp(storage);
    before.fail(away());
    before.store.happen(added('clip-0001'));
    before.store.happen({ kind: 'told', clipId: 'clip-0001', captureRate_fps: 1000 });
    await settled();
    const next = setUp(storage);
    next.store.subscribe(() => undefined);
    for (let i = 0; i < 4; i += 1) await settled();
    expect(next.sent).toEqual(['event-0001', 'event-0002']);
    expect(next.store.current().state?.clips[0]).toMatchObject({ captureRate_fps: 1000 });
  });

  test('that the server refuses is dropped and told, and what comes after it is still sent', async () => {
    const { store, fail, sent } = setUp();
    store.subscribe(() => undefined);
    await settled();
    fail(refusal);
    store.happen({ kind: 'aside', clipId: 'clip-0009', isAside: true });
    await settled();
    expect(store.current()).toMatchObject({ refused: 'There is no such clip. Look at the list.', unsentCount: 0 });
    fail(undefined);
    store.happen(added('clip-0001'));
    await settled();
    expect(sent).toEqual(['event-0001', 'event-0002']);
    expect(names(store)).toEqual(['day/clip-0001.mov']);
    store.dismiss();
    expect(store.current().refused).toBeUndefined();
  });
});

describe('what the server tells', () => {
  test('is followed while somebody looks, and for a moment after', async () => {
    const { store, waits, isListening, tell, state } = setUp();
    const leave = store.subscribe(() => undefined);
    await settled();
    expect(isListening()).toBe(true);
    tell({ ...state(), folders: [] });
    expect(store.current().state?.folders).toEqual([]);
    leave();
    expect(isListening()).toBe(true);
    waits.shift()!();
    expect(isListening()).toBe(false);
    expect(store.current().state).toBeDefined();
  });

  test('stays readable when it goes, with the reason, and is read again when it is back', async () => {
    const { store, live, fail } = setUp();
    store.subscribe(() => undefined);
    await settled();
    store.happen(added('clip-0001'));
    await settled();
    fail(away());
    live(false);
    expect(store.current().failed).toContain('cannot be reached');
    expect(names(store)).toEqual(['day/clip-0001.mov']);
    fail(undefined);
    live(true);
    await settled();
    expect(store.current().failed).toBeUndefined();
  });

  test('of measuring that cannot be asked for is a refusal, and nothing is shown that is not so', async () => {
    const { store, fail } = setUp();
    store.subscribe(() => undefined);
    await settled();
    fail(away());
    store.measure('clip-0001', true);
    await settled();
    expect(store.current().refused).toContain('that was not done');
  });
});

describe('what is kept in the browser', () => {
  test('comes back in order, of its own shoot alone, and what does not fit is left out', () => {
    const storage = pageStorage();
    const keep = keepFootageIn(storage);
    const item = (eventId: string, sequence: number) => ({ eventId, event: added('clip-0001'), at: '2030-01-01T09:59:00.000Z', sequence }); // prettier-ignore
    keep.put('day-1', item('event-b', 2));
    keep.put('day-1', item('event-a', 1));
    keep.put('day-2', item('event-c', 1));
    storage.setItem('longsecond.footage/day-1/broken', '{');
    storage.setItem('longsecond.footage/day-1/other', '{"eventId":3}');
    expect(keep.unsent('day-1').map(({ eventId }) => eventId)).toEqual(['event-a', 'event-b']);
    keep.drop('day-1', 'event-a');
    expect(keep.unsent('day-1').map(({ eventId }) => eventId)).toEqual(['event-b']);
  });
});
