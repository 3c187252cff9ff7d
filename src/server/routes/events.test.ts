import { afterEach, describe, expect, test, vi } from 'vitest';
import { SMALL_SHOOT, steppingClock, tempFolder, tempStore } from '../../../test/tempStore.ts';
import type { PresenceReply } from '../../api/replies.ts';
import type { Patch } from '../../document/patch.ts';
import type { ShootStore } from '../../store/shootStore.ts';
import { createApp } from '../app.ts';

const AT = '2027-03-09T07:30:00.000Z';

interface Heard {
  readonly event: string;
  readonly id: string;
  readonly data: unknown;
}

/** Reads a stream of events until so many were heard, or until it ends. */
function listen(answer: Response) {
  const reader = answer.body!.pipeThrough(new TextDecoderStream()).getReader();
  let rest = '';
  const next = async (): Promise<string | undefined> => {
    for (;;) {
      const end = rest.indexOf('\n\n');
      if (end !== -1) {
        const block = rest.slice(0, end);
        rest = rest.slice(end + 2);
        return block;
      }
      const { done, value } = await reader.read();
      if (done) return undefined;
      rest += value;
    }
  };
  const parse = (block: string): Heard | undefined => {
    const fields = new Map(
      block.split('\n').map((line) => [line.split(': ', 1).join(), line.slice(line.indexOf(': ') + 2)]),
    );
    const [event, id, data] = ['event', 'id', 'data'].map((name) => fields.get(name));
    return event === undefined || id === undefined || data === undefined
      ? undefined
      : { event, id, data: JSON.parse(data) as unknown };
  };
  return {
    next,
    take: async (count: number): Promise<readonly Heard[]> => {
      const heard: Heard[] = [];
      while (heard.length < count) {
        const block = await next();
        if (block === undefined) break;
        const message = parse(block);
        if (message) heard.push(message);
      }
      return heard;
    },
    stop: () => reader.cancel(),
  };
}

async function server() {
  const watching = new Set<unknown>();
  const store = await tempStore();
  const counted: ShootStore = {
    ...store,
    watch: (changed) => {
      watching.add(changed);
      const stop = store.watch(changed);
      return () => {
        watching.delete(changed);
        stop();
      };
    },
  };
  for (const id of ['s', 'other']) store.bringIn({ editId: `import-${id}`, at: AT, text: SMALL_SHOOT, id });
  const closing = new AbortController();
  const app = createApp({ store: counted, webFolder: tempFolder(), clock: steppingClock(), log: () => undefined, closing: closing.signal }); // prettier-ignore
  let count = 0;
  const edit = (patch: Patch, shoot = 's') =>
    store.edit(shoot, {
      editId: `edit-${String((count += 1)).padStart(6, '0')}`,
      who: 'ada',
      at: AT,
      revision: store.open(shoot).revision,
      patch,
      summary: `Edit ${count}`,
    });
  const follow = async (query = '', headers: Readonly<Record<string, string>> = {}) => {
    const answer = await app.request(`/api/shoots/s/events${query}`, { headers });
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toBe('text/event-stream; charset=utf-8');
    return listen(answer);
  };
  return { app, store, edit, follow, closing, watching };
}

const seed = (value: number): Patch => [{ op: 'replace', path: '/shoot/seed', value }];

describe('who is there', () => {
  afterEach(() => void vi.useRealTimers());

  const heardIn = (block: string | undefined) => {
    const [event, data] = (block ?? '').split('\n');
    expect(event).toBe('event: presence');
    const { present } = JSON.parse((data ?? '').replace('data: ', '')) as PresenceReply;
    return present.map(({ who, name, at, place }) => [who, name, at, place]);
  };

  async function withPresence() {
    const { app, follow, edit } = await server();
    const say = async (who: string, presence: unknown, name?: string) => {
      const headers = { 'content-type': 'application/json', 'longsecond-client': who, ...(name === undefined ? {} : { 'longsecond-name': encodeURIComponent(name) }) }; // prettier-ignore
      return app.request('/api/shoots/s/presence', { method: 'POST', headers, body: JSON.stringify(presence) });
    };
    /** A stream that has said how to reconnect. */
    const stream = async (query = '') => {
      const events = await follow(query);
      await events.next();
      return events;
    };
    return { say, stream, edit };
  }

  test('a stream begins with all who are here, and the answer to saying so is the same list', async () => {
    const { say, stream } = await withPresence();
    const answer = await say('ada', { at: '/shots/splash/shutter', place: 'Splash, shutter' }, 'Ada Zoë');
    const { present } = (await answer.json()) as PresenceReply;
    expect(present).toMatchObject([{ who: 'ada', name: 'Ada Zoë', at: '/shots/splash/shutter', place: 'Splash, shutter' }]); // prettier-ignore
    expect(present[0]?.since).toMatch(/^2027-03-09T07:30:/);
    const events = await stream();
    expect(heardIn(await events.next())).toEqual([['ada', 'Ada Zoë', '/shots/splash/shutter', 'Splash, shutter']]);
    await events.stop();
  });

  test('coming, moving and leaving are told to all, and leaving is closing the stream', async () => {
    const { say, stream } = await withPresence();
    const ada = await stream('?after=0&client=ada');
    const bo = await stream('?client=bo');
    expect([heardIn(await ada.next()), heardIn(await bo.next())]).toEqual([[], []]);
    await say('bo', { at: '' });
    expect(heardIn(await ada.next())).toEqual([['bo', undefined, '', undefined]]);
    await say('bo', { at: '/shoot/title' }, 'Bo');
    expect(heardIn(await ada.next())).toEqual([['bo', 'Bo', '/shoot/title', undefined]]);
    await bo.stop();
    expect(heardIn(await ada.next())).toEqual([]);
    await ada.stop();
  });

  test('silence of a minute is leaving, too', async () => {
    vi.useFakeTimers();
    const { say, stream } = await withPresence();
    const events = await stream();
    expect(heardIn(await events.next())).toEqual([]);
    await say('bo', { at: '' });
    expect(heardIn(await events.next())).toHaveLength(1);
    for (let beat = 0; beat < 3; beat += 1) {
      const next = events.next();
      await vi.advanceTimersByTimeAsync(15_000);
      expect(await next).toBe(':');
    }
    const gone = events.next();
    await vi.advanceTimersByTimeAsync(14_999);
    await vi.advanceTimersByTimeAsync(1);
    expect(heardIn(await gone)).toEqual([]);
    await events.stop();
  });

  test('it does not move where a broken connection goes on', async () => {
    const { say, stream, edit } = await withPresence();
    const events = await stream('?after=0&client=ada');
    expect(await events.next()).not.toContain('id:');
    await say('bo', { at: '' });
    expect(await events.next()).not.toContain('id:');
    edit(seed(8));
    expect((await events.take(1))[0]?.id).toBe('1');
    await events.stop();
  });

  test.each([
    [{}, 400],
    [{ at: 'shoot' }, 400],
    [{ at: 7 }, 400],
    [{ at: '', place: '' }, 400],
    [{ at: '', place: 'x'.repeat(121) }, 400],
    [{ at: '', place: 'a\nb' }, 400],
    [{ at: '', who: 'bo' }, 400],
  ])('%j is refused', async (presence, status) => {
    const { say } = await withPresence();
    expect((await say('ada', presence)).status).toBe(status);
  });

  test('a stream of a client that is none is refused', async () => {
    const { app } = await server();
    expect((await app.request('/api/shoots/s/events?client=a%20b', { headers: { 'last-event-id': '0' } })).status).toBe(400); // prettier-ignore
  });
});

describe('live events', () => {
  afterEach(() => void vi.useRealTimers());

  test('what happens is told as a journal row, numbered with the revision that it made', async () => {
    const { edit, store, follow } = await server();
    const events = await follow();
    const heard = events.take(2);
    edit(seed(8));
    store.undo('s', { editId: 'undo-00001', who: 'ada', at: AT });
    expect(await heard).toMatchObject([
      { event: 'edit', id: '1', data: { number: 1, who: 'ada', kind: 'edit', patch: seed(8), summary: 'Edit 1' } },
      { event: 'edit', id: '2', data: { number: 2, kind: 'undo', undoes: 1, patch: seed(7) } },
    ]);
    await events.stop();
  });

  test('what happened between opening and following is told too', async () => {
    const { edit, follow } = await server();
    for (const value of [8, 9, 10]) edit(seed(value));
    const events = await follow('?after=1');
    expect((await events.take(2)).map(({ id }) => id)).toEqual(['2', '3']);
    await events.stop();
  });

  test('a broken connection goes on where it was, whatever its address says', async () => {
    const { edit, follow } = await server();
    for (const value of [8, 9, 10]) edit(seed(value));
    const events = await follow('?after=0', { 'last-event-id': '2' });
    expect((await events.take(1)).map(({ id }) => id)).toEqual(['3']);
    await events.stop();
  });

  test('after a long gap it says to open the shoot anew, and goes on from there', async () => {
    const { edit, follow } = await server();
    for (let value = 0; value < 501; value += 1) edit(seed(value + 8));
    const events = await follow('?after=0');
    const heard = events.take(2);
    expect((await Promise.all([heard, Promise.resolve().then(() => edit(seed(1)))]))[0]).toMatchObject([
      { event: 'reload', data: { revision: expect.any(Number) as number } },
      { event: 'edit', id: '502' },
    ]);
    await events.stop();
  }, 30_000);

  test('a gap of few but large edits says so as well', async () => {
    const { edit, follow } = await server();
    for (const letter of ['a', 'b']) edit([{ op: 'add', path: '/shots/splash/note', value: letter.repeat(1_200_000) }]);
    const events = await follow('?after=0');
    expect(await events.take(1)).toEqual([{ event: 'reload', id: '2', data: { revision: 2 } }]);
    await events.stop();
  });

  test('a client from a later revision than there is, as after a backup was put back, is told to open anew', async () => {
    const { follow } = await server();
    const events = await follow('', { 'last-event-id': '9' });
    expect(await events.take(1)).toEqual([{ event: 'reload', id: '0', data: { revision: 0 } }]);
    await events.stop();
  });

  test('edits of another shoot are not told', async () => {
    const { edit, follow } = await server();
    const events = await follow();
    const heard = events.take(1);
    edit(seed(99), 'other');
    edit(seed(8));
    expect(await heard).toMatchObject([{ data: { summary: 'Edit 2' } }]);
    await events.stop();
  });

  test('when nothing happens a comment now and then shows that the line is alive', async () => {
    const { follow } = await server();
    vi.useFakeTimers();
    const events = await follow();
    expect(await events.next()).toBe('retry: 1000');
    expect(await events.next()).toBe('event: presence\ndata: {"present":[]}');
    const beat = events.next();
    await vi.advanceTimersByTimeAsync(15_000);
    expect(await beat).toBe(':');
    await events.stop();
    expect(vi.getTimerCount()).toBe(0);
  });

  test('a client that leaves is no longer watched for', async () => {
    const { follow, watching } = await server();
    const events = await follow();
    await events.next();
    await expect.poll(() => watching.size).toBe(1);
    await events.stop();
    await expect.poll(() => watching.size).toBe(0);
  });

  test('HEAD leaves nothing watching', async () => {
    const { app, watching } = await server();
    expect((await app.request('/api/shoots/s/events', { method: 'HEAD' })).status).toBe(200);
    expect(watching.size).toBe(0);
  });

  test('when the server closes, the stream ends', async () => {
    const { follow, closing, watching } = await server();
    const events = await follow();
    const heard = events.take(1);
    await expect.poll(() => watching.size).toBe(1);
    closing.abort();
    expect(await heard).toEqual([]);
    expect(watching.size).toBe(0);
  });
});
