import { describe, expect, test } from 'vitest';
import { fakeServer, type FakeServer } from '../../../test/fakeServer.ts';
import { writtenValueAt } from '../../document/patch.ts';
import type { Written } from '../../document/written.ts';
import type { PatchOperation, Plan } from '../../plan/types.ts';
import type { OpenShoot } from './contract.ts';
import { keepIn, pageStorage, type Keep } from './keep.ts';
import { openShootStore, type ShootStore } from './shootStore.ts';

const CUP: Written = {
  longsecond: 1,
  shoot: { title: 'Cup' },
  shots: { pour: { title: 'The pour', stop: 'T8', blur: '2 px' }, splash: { title: 'The splash' } },
};

const set = (path: string, value: Written): readonly PatchOperation[] => [{ op: 'add', path, value }];

/** A page with the shoot open, on a clock that stands until it is moved on. */
function page(
  server: FakeServer,
  { client = 'tablet', keep = keepIn(pageStorage()) }: { client?: string; keep?: Keep } = {},
) {
  const waits: { wait_ms: number; run: () => void }[] = [];
  const planned: Written[] = [];
  let id = 0;
  const store: ShootStore = openShootStore({
    shootId: 'cup',
    server: server.as(client),
    keep,
    client,
    derive: (written) => {
      if (planned.at(-1) !== written) planned.push(written);
      return { shoot: {} as OpenShoot['shoot'], problems: [], plan: {} as Plan };
    },
    explain: () => undefined,
    openFiles: () => ({ tell: () => undefined, close: () => undefined }),
    openWays: () => ({
      settle: () => undefined,
      ask: (shotId, limit) => ({ shotId, limit, state: 'done', done: 0, total: 0, ways: [] }),
      close: () => undefined,
    }),
    makeId: () => `${client}-edit-${Math.random().toString(36).slice(2)}-${(id += 1)}`,
    now: () => 1000,
    presence: { onPresent: () => undefined, onLive: () => undefined },
    after: (wait_ms, run) => {
      const wait = { wait_ms, run };
      waits.push(wait);
      return () => void (waits.includes(wait) && waits.splice(waits.indexOf(wait), 1));
    },
  });
  const open = (): OpenShoot => {
    const now = store.current();
    if (now.state !== 'open') throw new Error(`the shoot is ${now.state}`);
    return now.open;
  };
  return {
    store,
    keep,
    waits,
    planned,
    open,
    at: (path: string) => writtenValueAt(open().written, path),
    /** Lets everything that can happen without waiting happen. */
    settle: async () => {
      for (let i = 0; i < 60; i += 1) await Promise.resolve();
    },
    pass: async () => {
      waits.shift()?.run();
      for (let i = 0; i < 60; i += 1) await Promise.resolve();
    },
  };
}

async function opened(server: FakeServer, options?: Parameters<typeof page>[1]) {
  const it = page(server, options);
  await it.settle();
  return it;
}

const summaries = (server: FakeServer) => server.rows().map(({ kind, summary }) => `${kind} ${summary}`);

describe('an edit', () => {
  test('is on the screen at once, and called saved only once the server has it', async () => {
    const server = fakeServer(CUP);
    const { open, at, settle } = await opened(server);
    open().commit(set('/shots/pour/stop', 'T11'), 'Stop to T11');
    expect(at('/shots/pour/stop')).toBe('T11');
    expect(open().saving).toBe('saving');
    expect(server.rows()).toHaveLength(0);
    await settle();
    expect(open().saving).toBe('saved');
    expect(open().revision).toBe(1);
    expect(writtenValueAt(server.written(), '/shots/pour/stop')).toBe('T11');
  });

  test('brings the sections it needs with it', async () => {
    const server = fakeServer(CUP);
    const { open, settle } = await opened(server);
    open().commit(set('/shots/pour/action/speed', '3 m/s'), 'Speed');
    await settle();
    expect(writtenValueAt(server.written(), '/shots/pour/action')).toEqual({ speed: '3 m/s' });
  });

  test('that changes nothing is not sent', async () => {
    const server = fakeServer(CUP);
    const { open, settle } = await opened(server);
    open().commit(set('/shots/pour/stop', 'T8'), 'Stop to T8');
    open().draft(set('/shots/pour/stop', 'T11'));
    open().draft(set('/shots/pour/stop', 'T8'));
    open().commitDraft('Stop to T8');
    await settle();
    expect(server.rows()).toHaveLength(0);
    expect(open().saving).toBe('saved');
  });

  test('confirmed by the server leaves what is planned untouched', async () => {
    const server = fakeServer(CUP);
    const { open, planned, settle } = await opened(server);
    open().commit(set('/shots/pour/stop', 'T11'), 'Stop to T11');
    const before = open().written;
    await settle();
    expect(open().written).toBe(before);
    expect(planned).toHaveLength(2);
  });

  test('follows the ones before it in order, however fast they are made', async () => {
    const server = fakeServer(CUP);
    const { open, at, settle } = await opened(server);
    for (const stop of ['T9', 'T10', 'T11', 'T13']) open().commit(set('/shots/pour/stop', stop), `Stop to ${stop}`);
    expect(at('/shots/pour/stop')).toBe('T13');
    await settle();
    expect(summaries(server)).toEqual(['edit Stop to T9', 'edit Stop to T10', 'edit Stop to T11', 'edit Stop to T13']);
    expect(open().saving).toBe('saved');
  });
});

describe('typing', () => {
  test('plans at once, sends nothing, and is replaced by the next key', async () => {
    const server = fakeServer(CUP);
    const { open, at, settle } = await opened(server);
    open().draft(set('/shots/pour/stop', 'T1'));
    open().draft(set('/shots/pour/stop', 'T11'));
    await settle();
    expect(at('/shots/pour/stop')).toBe('T11');
    expect(server.rows()).toHaveLength(0);
    open().draft([]);
    expect(at('/shots/pour/stop')).toBe('T8');
  });

  test('is sent once when it is meant, by either way of saying so', async () => {
    const server = fakeServer(CUP);
    const { open, settle } = await opened(server);
    open().draft(set('/shots/pour/stop', 'T11'));
    open().commitDraft('Stop to T11');
    open().commitDraft('Stop to T11');
    open().draft(set('/shots/pour/blur', '3 px'));
    open().commit(set('/shots/pour/blur', '3 px'), 'Blur to 3 px');
    await settle();
    expect(summaries(server)).toEqual(['edit Stop to T11', 'edit Blur to 3 px']);
  });

  test('in one field is kept when another thing is done elsewhere', async () => {
    const server = fakeServer(CUP);
    const { open, settle } = await opened(server);
    open().draft(set('/shots/pour/stop', 'T11'));
    open().commit(set('/shots/splash/stop', 'T4'), 'Splash to T4');
    await settle();
    expect(writtenValueAt(server.written(), '/shots/pour/stop')).toBe('T11');
    expect(server.rows()).toHaveLength(2);
  });

  test('is taken back by undo before any edit is', async () => {
    const server = fakeServer(CUP);
    const { open, at, settle } = await opened(server);
    open().commit(set('/shots/pour/blur', '3 px'), 'Blur');
    await settle();
    open().draft(set('/shots/pour/stop', 'T11'));
    open().undo();
    await settle();
    expect(at('/shots/pour/stop')).toBe('T8');
    expect(at('/shots/pour/blur')).toBe('3 px');
  });

  test('survives a page that crashed, and is sent when the shoot is opened again', async () => {
    const server = fakeServer(CUP);
    const keep = keepIn(pageStorage());
    const first = await opened(server, { keep });
    first.open().draft(set('/shots/pour/stop', 'T11'));
    const second = await opened(server, { keep });
    expect(second.at('/shots/pour/stop')).toBe('T11');
    await second.settle();
    expect(server.rows()).toHaveLength(1);
    expect(keep.draft('cup')).toBeUndefined();
  });

  test('is sent when the page is left', async () => {
    const server = fakeServer(CUP);
    const { open, store, settle } = await opened(server);
    open().draft(set('/shots/pour/stop', 'T11'));
    store.leave();
    await settle();
    expect(server.rows()).toHaveLength(1);
  });
});

describe('without a network', () => {
  test('edits are called unsent, tried again, and arrive once and in order', async () => {
    const server = fakeServer(CUP);
    const { open, settle, pass, waits } = await opened(server);
    server.network = 'cut';
    open().commit(set('/shots/pour/stop', 'T11'), 'Stop');
    await settle();
    open().commit(set('/shots/pour/stop', 'T16'), 'Stop again');
    open().commit(set('/shots/splash/stop', 'T4'), 'Splash');
    await settle();
    expect(open().saving).toBe('unsent');
    await pass();
    await pass();
    expect(waits.map(({ wait_ms }) => wait_ms)).toEqual([4000]);
    expect(server.rows()).toHaveLength(0);
    server.network = 'up';
    await pass();
    expect(open().saving).toBe('saved');
    expect(summaries(server)).toEqual(['edit Stop', 'edit Stop again', 'edit Splash']);
  });

  test('an edit whose answer was lost is sent again and counts once', async () => {
    const server = fakeServer(CUP);
    server.isTelling = false;
    const { open, settle, pass } = await opened(server);
    server.network = 'answers-lost';
    open().commit(set('/shots/pour/stop', 'T11'), 'Stop');
    await settle();
    expect(server.rows()).toHaveLength(1);
    expect(open().saving).toBe('unsent');
    server.network = 'up';
    open().commit(set('/shots/pour/stop', 'T16'), 'Stop again');
    await pass();
    expect(server.arrived.filter((name) => name === 'edit Stop')).toHaveLength(2);
    expect(summaries(server)).toEqual(['edit Stop', 'edit Stop again']);
    expect(open().saving).toBe('saved');
  });

  test('what was not sent is sent by the next page, even where it had landed already', async () => {
    const server = fakeServer(CUP);
    server.isTelling = false;
    const keep = keepIn(pageStorage());
    const first = await opened(server, { keep });
    server.network = 'answers-lost';
    first.open().commit(set('/shots/pour/stop', 'T11'), 'Stop');
    await first.settle();
    first.open().commit(set('/shots/pour/stop', 'T16'), 'Stop again');
    await first.settle();
    first.store.close();
    server.network = 'up';
    const second = await opened(server, { keep });
    await second.settle();
    expect(summaries(server)).toEqual(['edit Stop', 'edit Stop again']);
    expect(second.at('/shots/pour/stop')).toBe('T16');
    expect(keep.unsent('cup')).toEqual([]);
  });

  test('what was not sent knows of what was sent just before the page closed', async () => {
    const server = fakeServer(CUP);
    const keep = keepIn(pageStorage());
    const first = await opened(server, { keep });
    first.store.subscribe(() => {
      if (first.open().revision === 1) server.network = 'cut';
    });
    first.open().commit(set('/shots/pour/stop', 'T11'), 'Stop');
    first.open().commit(set('/shots/pour/stop', 'T16'), 'Stop again');
    await first.settle();
    expect(keep.unsent('cup').map(({ summary }) => summary)).toEqual(['Stop again']);
    first.store.close();
    server.network = 'up';
    const second = await opened(server, { keep });
    await second.settle();
    expect(second.open().refusals).toEqual([]);
    expect(summaries(server)).toEqual(['edit Stop', 'edit Stop again']);
  });

  test('undo takes back on the screen what the server has not heard of yet', async () => {
    const server = fakeServer(CUP);
    const { open, at, settle, pass } = await opened(server);
    server.network = 'cut';
    open().commit(set('/shots/pour/stop', 'T11'), 'Stop');
    open().commit(set('/shots/pour/stop', 'T16'), 'Stop again');
    await settle();
    expect(open().undoSummary).toBe('Stop again');
    open().undo();
    expect(at('/shots/pour/stop')).toBe('T11');
    expect(open().undoSummary).toBe('Stop');
    expect(open().redoSummary).toBe('Stop again');
    open().redo();
    expect(at('/shots/pour/stop')).toBe('T16');
    open().undo();
    server.network = 'up';
    await pass();
    expect(writtenValueAt(server.written(), '/shots/pour/stop')).toBe('T11');
    expect(at('/shots/pour/stop')).toBe('T11');
    expect(open().saving).toBe('saved');
  });

  test('a shoot that cannot be opened says so, and opens once the server answers', async () => {
    const server = fakeServer(CUP);
    server.network = 'cut';
    const { store, pass, open } = await opened(server);
    expect(store.current()).toMatchObject({ state: 'failed', isAway: true, fault: { code: 'server.away' } });
    server.network = 'up';
    await pass();
    expect(open().revision).toBe(0);
  });

  test('news of the network ends the wait', async () => {
    const server = fakeServer(CUP);
    const { open, store, settle } = await opened(server);
    server.network = 'cut';
    open().commit(set('/shots/pour/stop', 'T11'), 'Stop');
    await settle();
    server.network = 'up';
    store.wake();
    await settle();
    expect(open().saving).toBe('saved');
  });
});

describe('somebody else at the same shoot', () => {
  test('is followed live', async () => {
    const server = fakeServer(CUP);
    const mine = await opened(server, { client: 'tablet' });
    const theirs = await opened(server, { client: 'desk' });
    theirs.open().commit(set('/shots/pour/stop', 'T16'), 'Stop');
    await theirs.settle();
    expect(mine.at('/shots/pour/stop')).toBe('T16');
    expect(mine.open().undoSummary).toBeUndefined();
  });

  test('and an edit of mine elsewhere both stand', async () => {
    const server = fakeServer(CUP);
    server.isTelling = false;
    const mine = await opened(server, { client: 'tablet' });
    const theirs = await opened(server, { client: 'desk' });
    theirs.open().commit(set('/shots/splash/stop', 'T4'), 'Splash');
    await theirs.settle();
    mine.open().commit(set('/shots/pour/stop', 'T16'), 'Stop');
    await mine.settle();
    expect(mine.at('/shots/splash/stop')).toBe('T4');
    expect(mine.at('/shots/pour/stop')).toBe('T16');
    expect(mine.open().revision).toBe(2);
  });

  test('who changed the same place first has my edit refused, and the screen shows theirs with the reason', async () => {
    const server = fakeServer(CUP);
    server.isTelling = false;
    const mine = await opened(server, { client: 'tablet' });
    const theirs = await opened(server, { client: 'desk' });
    theirs.open().commit(set('/shots/pour/stop', 'T16'), 'Their stop');
    await theirs.settle();
    mine.open().commit(set('/shots/pour/stop', 'T2'), 'My stop');
    expect(mine.at('/shots/pour/stop')).toBe('T2');
    await mine.settle();
    expect(mine.at('/shots/pour/stop')).toBe('T16');
    expect(mine.open().saving).toBe('refused');
    const [refusal] = mine.open().refusals;
    expect(refusal?.says).toContain('“My stop” was not kept');
    expect(refusal?.says).toContain('Their stop');
    expect(refusal?.met).toMatchObject({ path: '/shots/pour/stop', who: 'desk', yours: 'T2', theirs: 'T16' });
    mine.open().keepTheirs(refusal!.id);
    expect(mine.open().saving).toBe('saved');
    expect(mine.at('/shots/pour/stop')).toBe('T16');
  });

  test('a refused edit takes with it what was built on it, and nothing else', async () => {
    const server = fakeServer(CUP);
    server.isTelling = false;
    const mine = await opened(server, { client: 'tablet' });
    const theirs = await opened(server, { client: 'desk' });
    theirs.open().commit(set('/shots/pour/stop', 'T16'), 'Their stop');
    await theirs.settle();
    mine.open().commit(set('/shots/pour/stop', 'T2'), 'My stop');
    mine.open().commit(set('/shots/pour/stop', 'T4'), 'My stop again');
    mine.open().commit(set('/shots/splash/stop', 'T5.6'), 'Splash');
    await mine.settle();
    expect(summaries(server)).toEqual(['edit Their stop', 'edit Splash']);
    expect(mine.at('/shots/pour/stop')).toBe('T16');
    expect(mine.at('/shots/splash/stop')).toBe('T5.6');
  });

  test('an undo made on top of a refused edit takes nothing else back', async () => {
    const server = fakeServer(CUP);
    server.isTelling = false;
    const mine = await opened(server, { client: 'tablet' });
    const theirs = await opened(server, { client: 'desk' });
    mine.open().commit(set('/shots/pour/blur', '3 px'), 'My blur');
    await mine.settle();
    theirs.open().commit(set('/shots/pour/stop', 'T16'), 'Their stop');
    await theirs.settle();
    mine.open().commit(set('/shots/pour/stop', 'T2'), 'My stop');
    mine.open().undo();
    await mine.settle();
    expect(summaries(server)).toEqual(['edit My blur', 'edit Their stop']);
    expect(mine.at('/shots/pour/blur')).toBe('3 px');
  });

  test.each(['commitDraft', 'commit'] as const)(
    'who changes the field I type in makes my edit meet theirs, by %s',
    async (by) => {
      const server = fakeServer(CUP);
      const mine = await opened(server, { client: 'tablet' });
      const theirs = await opened(server, { client: 'desk' });
      mine.open().draft(set('/shots/pour/stop', 'T2'));
      theirs.open().commit(set('/shots/pour/stop', 'T16'), 'Their stop');
      await theirs.settle();
      mine.open().draft(set('/shots/pour/stop', 'T22'));
      if (by === 'commit') mine.open().commit(set('/shots/pour/stop', 'T22'), 'My stop');
      else mine.open().commitDraft('My stop');
      await mine.settle();
      expect(mine.at('/shots/pour/stop')).toBe('T16');
      expect(mine.open().saving).toBe('refused');
    },
  );

  test('missed while the events were away is fetched from the journal', async () => {
    const server = fakeServer(CUP);
    const mine = await opened(server, { client: 'tablet' });
    const theirs = await opened(server, { client: 'desk' });
    server.isTelling = false;
    theirs.open().commit(set('/shots/pour/stop', 'T16'), 'Stop');
    await theirs.settle();
    server.isTelling = true;
    theirs.open().commit(set('/shots/splash/stop', 'T4'), 'Splash');
    await theirs.settle();
    await mine.settle();
    expect(mine.at('/shots/pour/stop')).toBe('T16');
    expect(mine.at('/shots/splash/stop')).toBe('T4');
  });
});

describe('a refused edit', () => {
  /** Both changed the same stop, theirs first. */
  const refusedStop = async (options: { keep?: Keep } = {}) => {
    const server = fakeServer(CUP);
    server.isTelling = false;
    const mine = await opened(server, { client: 'tablet', ...options });
    const theirs = await opened(server, { client: 'desk' });
    theirs.open().commit(set('/shots/pour/stop', 'T16'), 'Their stop');
    await theirs.settle();
    mine.open().commit(set('/shots/pour/stop', 'T2'), 'My stop');
    await mine.settle();
    return { server, mine, theirs };
  };

  test('can be put in again over theirs, as an edit of its own', async () => {
    const { server, mine } = await refusedStop();
    const [refusal] = mine.open().refusals;
    expect(refusal?.use).toBe('again');
    await mine.open().useMine(refusal!.id);
    await mine.settle();
    expect(writtenValueAt(server.written(), '/shots/pour/stop')).toBe('T2');
    expect(summaries(server)).toEqual(['edit Their stop', 'edit My stop']);
    expect(mine.open().refusals).toEqual([]);
    expect(mine.open().saving).toBe('saved');
  });

  test('stays while other things are done, and when the page is opened anew', async () => {
    const keep = keepIn(pageStorage());
    const { server, mine } = await refusedStop({ keep });
    mine.open().commit(set('/shots/splash/stop', 'T4'), 'Splash');
    await mine.settle();
    expect(mine.open().refusals).toHaveLength(1);
    mine.store.close();
    const anew = await opened(server, { client: 'tablet', keep });
    await anew.open().useMine(anew.open().refusals[0]!.id);
    await anew.settle();
    expect(writtenValueAt(server.written(), '/shots/pour/stop')).toBe('T2');
    expect(keep.refused('cup')).toEqual([]);
  });

  test('carries what was made on top of it, so that the newest value is the one put in again', async () => {
    const server = fakeServer(CUP);
    server.isTelling = false;
    const mine = await opened(server, { client: 'tablet' });
    const theirs = await opened(server, { client: 'desk' });
    theirs.open().commit(set('/shots/pour/stop', 'T16'), 'Their stop');
    await theirs.settle();
    mine.open().commit(set('/shots/pour/stop', 'T2'), 'My stop');
    mine.open().commit(set('/shots/pour/stop', 'T4'), 'My stop again');
    await mine.settle();
    const [refusal, ...others] = mine.open().refusals;
    expect(others).toEqual([]);
    expect(refusal?.met?.yours).toBe('T4');
    await mine.open().useMine(refusal!.id);
    await mine.settle();
    expect(writtenValueAt(server.written(), '/shots/pour/stop')).toBe('T4');
  });

  test('is not told of where the other wrote the very same, nor where it was taken back before it was sent', async () => {
    const server = fakeServer(CUP);
    server.isTelling = false;
    const mine = await opened(server, { client: 'tablet' });
    const theirs = await opened(server, { client: 'desk' });
    theirs.open().commit(set('/shots/pour/stop', 'T16'), 'Their stop');
    theirs.open().commit(set('/shots/splash/stop', 'T4'), 'Their splash');
    await theirs.settle();
    mine.open().commit(set('/shots/pour/stop', 'T16'), 'My stop');
    mine.open().commit(set('/shots/splash/stop', 'T8'), 'My splash');
    mine.open().undo();
    await mine.settle();
    expect(mine.open().refusals).toEqual([]);
    expect(mine.open().saving).toBe('saved');
    expect(writtenValueAt(server.written(), '/shots/splash/stop')).toBe('T4');
  });

  test('in a shot that another took out can bring the shot back, with the edit in it', async () => {
    const server = fakeServer(CUP);
    server.isTelling = false;
    const mine = await opened(server, { client: 'tablet' });
    const theirs = await opened(server, { client: 'desk' });
    theirs.open().commit([{ op: 'remove', path: '/shots/pour' }], 'The pour taken out');
    await theirs.settle();
    mine.open().commit(set('/shots/pour/stop', 'T2'), 'My stop');
    await mine.settle();
    const [refusal] = mine.open().refusals;
    expect(refusal).toMatchObject({ use: 'bring-back', met: { yours: 'T2', theirs: 'nothing' } });
    expect(mine.at('/shots/pour')).toBeUndefined();
    await mine.open().useMine(refusal!.id);
    await mine.settle();
    expect(writtenValueAt(server.written(), '/shots/pour')).toEqual({ title: 'The pour', stop: 'T2', blur: '2 px' });
    expect(mine.open().refusals).toEqual([]);
  });

  test('that takes out a shot which another edits can still be made, and is then the last word', async () => {
    const server = fakeServer(CUP);
    server.isTelling = false;
    const mine = await opened(server, { client: 'tablet' });
    const theirs = await opened(server, { client: 'desk' });
    theirs.open().commit(set('/shots/pour/stop', 'T2'), 'Their stop');
    await theirs.settle();
    mine.open().commit([{ op: 'remove', path: '/shots/pour' }], 'The pour taken out');
    await mine.settle();
    const [refusal] = mine.open().refusals;
    expect(refusal).toMatchObject({ use: 'again', met: { yours: 'nothing', theirs: 'The pour' } });
    expect(mine.at('/shots/pour/stop')).toBe('T2');
    await mine.open().useMine(refusal!.id);
    await mine.settle();
    expect(writtenValueAt(server.written(), '/shots/pour')).toBeUndefined();
  });

  test('takes along an undo made behind it, and with it what that undo took back', async () => {
    const server = fakeServer(CUP);
    server.isTelling = false;
    const mine = await opened(server, { client: 'tablet' });
    const theirs = await opened(server, { client: 'desk' });
    theirs.open().commit(set('/shots/pour/stop', 'T16'), 'Their stop');
    await theirs.settle();
    mine.open().commit(set('/shots/pour/stop', 'T2'), 'My stop');
    mine.open().commit(set('/shots/splash/stop', 'T8'), 'My splash');
    mine.open().undo();
    await mine.settle();
    expect(summaries(server)).toEqual(['edit Their stop']);
    expect(mine.open().refusals).toHaveLength(1);
  });
});

describe('restoring', () => {
  const twice = async () => {
    const server = fakeServer(CUP);
    const mine = await opened(server, { client: 'tablet' });
    mine.open().commit(set('/shots/pour/stop', 'T11'), 'Stop to T11');
    mine.open().commit(set('/shots/splash/stop', 'T4'), 'Splash');
    await mine.settle();
    return { server, mine };
  };

  test('brings a revision back as one edit, and undo takes that back', async () => {
    const { server, mine } = await twice();
    mine.open().restore(1);
    await mine.settle();
    expect(mine.at('/shots/splash/stop')).toBeUndefined();
    expect(mine.at('/shots/pour/stop')).toBe('T11');
    expect(mine.open().undoSummary).toBe('Restored revision 1');
    mine.open().undo();
    await mine.settle();
    expect(mine.at('/shots/splash/stop')).toBe('T4');
    expect(server.rows().at(-1)?.kind).toBe('undo');
  });

  test('waits for the network, also through a page that is closed', async () => {
    const { server, mine } = await twice();
    server.network = 'cut';
    mine.open().restore(0);
    await mine.settle();
    expect(mine.open().saving).toBe('unsent');
    expect(mine.keep.unsent('cup')).toMatchObject([{ kind: 'restore', to: 0 }]);
    mine.store.close();
    server.network = 'up';
    const anew = await opened(server, { client: 'tablet', keep: mine.keep });
    await anew.settle();
    expect(server.written()).toEqual(CUP);
    expect(anew.at('/shots/pour/stop')).toBe('T8');
  });

  test('is refused where somebody else edited since, and says so', async () => {
    const { server, mine } = await twice();
    server.isTelling = false;
    const theirs = await opened(server, { client: 'desk' });
    theirs.open().commit(set('/shots/pour/blur', '4 px'), 'Their blur');
    await theirs.settle();
    mine.open().restore(0);
    await mine.settle();
    expect(mine.open().refusals[0]?.says).toContain('“Restored revision 0” was not done');
    expect(mine.at('/shots/pour/blur')).toBe('4 px');
  });
});

describe('undo and redo', () => {
  test('take back and make again through the server, in the words of the edit', async () => {
    const server = fakeServer(CUP);
    const { open, at, settle } = await opened(server);
    open().commit(set('/shots/pour/stop', 'T11'), 'Stop to T11');
    await settle();
    expect(open().undoSummary).toBe('Stop to T11');
    open().undo();
    await settle();
    expect(at('/shots/pour/stop')).toBe('T8');
    expect(open().undoSummary).toBeUndefined();
    expect(open().redoSummary).toBe('Stop to T11');
    open().redo();
    await settle();
    expect(at('/shots/pour/stop')).toBe('T11');
    expect(summaries(server)).toEqual(['edit Stop to T11', 'undo Stop to T11', 'redo Stop to T11']);
  });

  test('pressed faster than the server answers are all done, and those past the first edit are not complained of', async () => {
    const server = fakeServer(CUP);
    const { open, at, settle } = await opened(server);
    for (const stop of ['T11', 'T16', 'T22']) open().commit(set('/shots/pour/stop', stop), `Stop to ${stop}`);
    await settle();
    open().undo();
    open().undo();
    await settle();
    expect(at('/shots/pour/stop')).toBe('T11');
    open().redo();
    open().redo();
    await settle();
    expect(at('/shots/pour/stop')).toBe('T22');
    for (let presses = 0; presses < 5; presses += 1) open().undo();
    await settle();
    expect(at('/shots/pour/stop')).toBe('T8');
    expect(open().saving).toBe('saved');
    expect(open().refusals).toEqual([]);
    expect(open().undoSummary).toBeUndefined();
  });

  test('still work after the page was opened anew', async () => {
    const server = fakeServer(CUP);
    const first = await opened(server);
    first.open().commit(set('/shots/pour/stop', 'T11'), 'Stop to T11');
    await first.settle();
    const second = await opened(server);
    second.open().undo();
    await second.settle();
    expect(second.at('/shots/pour/stop')).toBe('T8');
  });

  test('with nothing to take back send nothing', async () => {
    const server = fakeServer(CUP);
    const { open, settle } = await opened(server);
    open().undo();
    open().redo();
    await settle();
    expect(server.arrived).toEqual(['open']);
  });
});

test('the same value is given until something changes, and listeners hear of every change', async () => {
  const { store, open } = await opened(fakeServer(CUP));
  let heard = 0;
  store.subscribe(() => (heard += 1));
  expect(store.current()).toBe(store.current());
  open().draft(set('/shots/pour/stop', 'T11'));
  expect(heard).toBe(1);
});

test('a closed store sends and tells no more', async () => {
  const server = fakeServer(CUP);
  const { store, open, settle } = await opened(server);
  const { commit } = open();
  store.close();
  commit(set('/shots/pour/stop', 'T11'), 'Stop');
  await settle();
  expect(server.rows()).toHaveLength(0);
});
