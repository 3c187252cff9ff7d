import { describe, expect, test } from 'vitest';
import { conflictOf, type Client } from '../../src/api/client.ts';
import { Fault } from '../../src/base/fault.ts';
import type { Operation } from '../../src/document/patch.ts';
import { tempServer } from '../tempServer.ts';
import { SMALL_SHOOT } from '../tempStore.ts';

let count = 0;

type Change = Exclude<Operation, { readonly op: 'move' | 'copy' | 'test' }>;

function edit(api: Client, revision: number, change: Change, summary: string) {
  return api.edit('s', { editId: `edit-${String((count += 1)).padStart(6, '0')}`, revision, patch: [change], summary });
}

async function refusal(asked: Promise<unknown>): Promise<Fault> {
  const error: unknown = await asked.then(
    () => undefined,
    (thrown: unknown) => thrown,
  );
  if (error instanceof Fault) return error;
  throw new Error('nothing was refused', { cause: error });
}

const SHUTTER = '/shots/splash/shutter';
const shutter = (value: string): Change => ({ op: 'replace', path: SHUTTER, value });
const remove: Change = { op: 'remove', path: '/shots/splash' };

async function twoPeople() {
  const server = await tempServer();
  return { ...server, ada: server.client('window-1', 'Ada'), bo: server.client('window-2', 'Bo') };
}

describe('two people who edit the same value at once', () => {
  test('the first is kept, and the second is told whose value is there and what it is', async () => {
    const { ada, bo, store } = await twoPeople();
    await edit(ada, 0, shutter('1/4000 s'), 'Shutter for the drop');
    const fault = await refusal(edit(bo, 0, shutter('1/8000 s'), 'Shutter for the client'));
    expect(fault.code).toBe('edit.conflict');
    expect(fault.what).toMatch(/Ada did "Shutter for the drop"/);
    expect(conflictOf(fault)).toMatchObject({
      path: SHUTTER,
      yours: '1/8000 s',
      theirs: '1/4000 s',
      who: 'window-1',
      name: 'Ada',
      number: 1,
    });
    expect(store.open('s').text).toBe(SMALL_SHOOT.replace('1/2000 s', '1/4000 s'));
    await edit(bo, 1, shutter('1/8000 s'), 'Shutter after all');
    expect(store.open('s').text).toBe(SMALL_SHOOT.replace('1/2000 s', '1/8000 s'));
  });

  test('each can take back only what nobody has changed since', async () => {
    const { ada, bo, store } = await twoPeople();
    await edit(ada, 0, shutter('1/4000 s'), 'First');
    await edit(bo, 1, shutter('1/8000 s'), 'Second');
    const fault = await refusal(ada.undo('s', { editId: 'undo-00001' }));
    expect(fault.code).toBe('undo.touched-since');
    expect(conflictOf(fault)).toMatchObject({ name: 'Bo', theirs: '1/8000 s', yours: '1/2000 s' });
    await bo.undo('s', { editId: 'undo-00002' });
    await ada.undo('s', { editId: 'undo-00003' });
    expect(store.open('s').text).toBe(SMALL_SHOOT);
  });

  test('of a hundred who write one value on the same revision, one is kept and the others are told so', async () => {
    const { client, store } = await twoPeople();
    const outcomes = await Promise.allSettled(
      Array.from({ length: 100 }, (_, i) => edit(client(`window-${i}`), 0, shutter(`1/${1000 + i} s`), `Shutter ${i}`)),
    );
    expect(outcomes.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    for (const outcome of outcomes)
      if (outcome.status === 'rejected') expect((outcome.reason as Fault).code).toBe('edit.conflict');
    expect(store.open('s').revision).toBe(1);
  });

  test('of a hundred who write values of their own, all are kept', async () => {
    const { client, store } = await twoPeople();
    await Promise.all(
      Array.from({ length: 100 }, (_, i) =>
        edit(
          client(`window-${i}`),
          0,
          { op: 'add', path: `/shots/own-${i}`, value: { title: `Own ${i}` } },
          `Own ${i}`,
        ),
      ),
    );
    expect(store.open('s').revision).toBe(100);
    const { shots } = store.open('s').written as { readonly shots: object };
    expect(Object.keys(shots)).toHaveLength(102);
  });
});

describe('a shot that one person edits and the other removes', () => {
  test('removed first, the edit is refused and says that nothing is there now', async () => {
    const { ada, bo, store } = await twoPeople();
    await edit(ada, 0, remove, 'Without the splash');
    const { text } = store.open('s');
    const fault = await refusal(edit(bo, 0, shutter('1/8000 s'), 'Shutter'));
    expect(fault.code).toBe('edit.conflict');
    const conflict = conflictOf(fault);
    expect(conflict).toMatchObject({ path: SHUTTER, yours: '1/8000 s', name: 'Ada', summary: 'Without the splash' });
    expect(conflict).not.toHaveProperty('theirs');
    expect(store.open('s').text).toBe(text);
  });

  test('edited first, the removal is refused and shows what would have been lost', async () => {
    const { ada, bo, store } = await twoPeople();
    await edit(bo, 0, shutter('1/8000 s'), 'Shutter');
    const fault = await refusal(edit(ada, 0, remove, 'Without the splash'));
    expect(fault.code).toBe('edit.conflict');
    expect(conflictOf(fault)).toMatchObject({ path: '/shots/splash', theirs: { shutter: '1/8000 s' }, name: 'Bo' });
    expect(conflictOf(fault)).not.toHaveProperty('yours');
    expect(store.open('s').text).toBe(SMALL_SHOOT.replace('1/2000 s', '1/8000 s'));
  });

  test('removed and put back, the edit made before is carried over', async () => {
    const { ada, bo, store } = await twoPeople();
    await edit(ada, 0, remove, 'Without the splash');
    await ada.undo('s', { editId: 'undo-00001' });
    await edit(bo, 0, shutter('1/8000 s'), 'Shutter');
    expect(store.open('s').text).toBe(SMALL_SHOOT.replace('1/2000 s', '1/8000 s'));
  });

  test('a restore over the edit of another is refused until it was looked at', async () => {
    const { ada, bo, store } = await twoPeople();
    await edit(ada, 0, remove, 'Without the splash');
    await edit(bo, 1, { op: 'replace', path: '/shots/crown/title', value: 'Crown, wide' }, 'Title of the crown');
    const fault = await refusal(ada.restore('s', { editId: 'restore-001', revision: 1, to: 0 }));
    expect(fault).toMatchObject({ code: 'restore.touched-since' });
    expect(conflictOf(fault)).toMatchObject({ name: 'Bo', yours: 'The crown', theirs: 'Crown, wide' });
    await ada.restore('s', { editId: 'restore-002', revision: 2, to: 0 });
    expect(store.open('s').text).toBe(SMALL_SHOOT);
  });
});
