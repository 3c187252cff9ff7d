import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SMALL_SHOOT, steppingClock, tempFolder, tempStore } from '../../test/tempStore.ts';
import { Fault } from '../base/fault.ts';
import { applyPatch, type Patch } from '../document/patch.ts';
import { readShootText } from '../document/text.ts';
import type { Written } from '../document/written.ts';
import { openStore } from './openStore.ts';
import type { ShootStore } from './shootStore.ts';

const clock = steppingClock();
let count = 0;
const by = (who: string, editId = `edit-${String((count += 1)).padStart(6, '0')}`) => ({
  editId,
  who,
  at: clock.now().toISOString(),
});

const replace = (path: string, value: Written): Patch => [{ op: 'replace', path, value }];

async function storeWithShoot(): Promise<ShootStore> {
  const store = await tempStore();
  store.bringIn({ editId: 'import-0001', at: clock.now().toISOString(), text: SMALL_SHOOT, id: 's' });
  return store;
}

function faultOf(run: () => unknown): Fault {
  try {
    run();
  } catch (error) {
    if (error instanceof Fault) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

const edit = (store: ShootStore, who: string, patch: Patch, summary = 'a change', revision?: number) =>
  store.edit('s', { ...by(who), revision: revision ?? store.open('s').revision, patch, summary });

describe('bringing in and opening', () => {
  test('a shoot opens with the very text it was brought in with, at revision 0', async () => {
    const store = await storeWithShoot();
    expect(store.open('s')).toEqual({
      id: 's',
      title: 'Milk and thunder',
      revision: 0,
      text: SMALL_SHOOT,
      written: readShootText(SMALL_SHOOT).written,
    });
  });

  test('without an id one is made from the title, numbered where it is taken', async () => {
    const store = await tempStore();
    const at = clock.now().toISOString();
    const ids = ['import-0001', 'import-0002'].map((editId) => store.bringIn({ editId, at, text: SMALL_SHOOT }).id);
    expect(ids).toEqual(['milk-and-thunder', 'milk-and-thunder-2']);
  });

  test('brought in twice under one edit id, it is there once', async () => {
    const store = await storeWithShoot();
    const again = store.bringIn({ editId: 'import-0001', at: clock.now().toISOString(), text: SMALL_SHOOT });
    expect(again.id).toBe('s');
    expect(store.list()).toHaveLength(1);
  });

  test('an id that is taken is refused', async () => {
    const store = await storeWithShoot();
    const bring = () =>
      store.bringIn({ editId: 'import-0009', at: clock.now().toISOString(), text: SMALL_SHOOT, id: 's' });
    expect(faultOf(bring).code).toBe('shoot.id-taken');
  });

  test('what is malformed is not stored', async () => {
    const store = await tempStore();
    const bring = () => store.bringIn({ editId: 'import-0001', at: clock.now().toISOString(), text: 'a: [' });
    expect(faultOf(bring).code).toMatch(/^document\./);
    expect(store.list()).toEqual([]);
  });

  test('the shoot changed last is listed first', async () => {
    const store = await storeWithShoot();
    store.bringIn({ editId: 'import-0002', at: clock.now().toISOString(), text: SMALL_SHOOT, id: 'later' });
    expect(store.list().map(({ id }) => id)).toEqual(['later', 's']);
    edit(store, 'ada', replace('/shoot/title', 'Cream'));
    expect(store.list().map(({ id, title, revision }) => [id, title, revision])).toEqual([
      ['s', 'Cream', 1],
      ['later', 'Milk and thunder', 0],
    ]);
  });
});

describe('edits', () => {
  test('an edit changes only its characters and is told by the journal', async () => {
    const store = await storeWithShoot();
    const patch = replace('/shots/splash/shutter', '1/4000 s');
    const result = edit(store, 'ada', patch, 'Shutter of the splash');
    expect(result).toEqual({ revision: 1, patch, undoSummary: 'Shutter of the splash' });
    expect(store.open('s').text).toBe(SMALL_SHOOT.replace('1/2000 s', '1/4000 s'));
    expect(store.journal('s', { after: 0, limit: 10 })).toMatchObject({
      revision: 1,
      rows: [{ number: 1, who: 'ada', kind: 'edit', patch, summary: 'Shutter of the splash' }],
    });
  });

  test('an edit that makes a problem is stored', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', replace('/shots/splash/shutter', 'quick'));
    const { problems } = readShootText(store.open('s').text);
    expect(problems.map(({ path }) => path)).toContain('/shots/splash/shutter');
  });

  test('an edit that cannot be made stores nothing', async () => {
    const store = await storeWithShoot();
    expect(faultOf(() => edit(store, 'ada', replace('/shots/gone/title', 'x'))).code).toMatch(/^patch\./);
    const halfGood: Patch = [
      { op: 'replace', path: '/shoot/title', value: 'Cream' },
      { op: 'remove', path: '/shots/gone' },
    ];
    expect(faultOf(() => edit(store, 'ada', halfGood)).code).toMatch(/^patch\./);
    expect(store.open('s')).toMatchObject({ revision: 0, text: SMALL_SHOOT });
    expect(store.journal('s', { after: 0, limit: 10 }).rows).toEqual([]);
  });

  test('an edit that makes the text too large stores nothing', async () => {
    const store = await storeWithShoot();
    const grow = () => edit(store, 'ada', [{ op: 'add', path: '/shots/splash/note', value: 'x'.repeat(5_300_000) }]);
    expect(faultOf(grow).code).toBe('document.too-large');
    expect(store.open('s').revision).toBe(0);
  });

  test('an edit that makes the text malformed stores nothing', async () => {
    const store = await storeWithShoot();
    expect(faultOf(() => edit(store, 'ada', replace('/longsecond', 99))).code).toMatch(/^document\./);
    expect(store.open('s')).toMatchObject({ revision: 0, text: SMALL_SHOOT });
  });

  test('sent twice, an edit is made once and answers its first result, whatever happened in between', async () => {
    const store = await storeWithShoot();
    const sent = { ...by('ada', 'twice-0001'), revision: 0, patch: replace('/shoot/seed', 8), summary: 'Seed' };
    const first = store.edit('s', sent);
    edit(store, 'bo', replace('/shoot/seed', 9), 'Another seed');
    store.undo('s', by('bo'));
    edit(store, 'ada', replace('/shoot/title', 'Cream'), 'Title');
    expect(store.edit('s', { ...sent, at: clock.now().toISOString() })).toEqual(first);
    expect(store.open('s').revision).toBe(4);
  });

  test('an id used for another edit is refused', async () => {
    const store = await storeWithShoot();
    const sent = { ...by('ada', 'twice-0001'), revision: 0, patch: replace('/shoot/seed', 8), summary: 'Seed' };
    store.edit('s', sent);
    expect(faultOf(() => store.edit('s', { ...sent, patch: replace('/shoot/seed', 9) })).code).toBe('edit.id-reused');
    expect(faultOf(() => store.edit('s', { ...sent, who: 'bo' })).code).toBe('edit.id-reused');
    expect(faultOf(() => store.undo('s', by('ada', 'twice-0001'))).code).toBe('edit.id-reused');
  });

  test('an edit made on a revision that there never was is refused', async () => {
    const store = await storeWithShoot();
    expect(faultOf(() => edit(store, 'ada', replace('/shoot/seed', 8), 'Seed', 5)).code).toBe('edit.revision-unknown');
  });
});

describe('the journal', () => {
  test('is told in pages of a bounded size, each of at least one row', async () => {
    const store = await storeWithShoot();
    for (const letter of ['a', 'b', 'c'])
      edit(store, 'ada', [{ op: 'add', path: '/shots/splash/note', value: letter.repeat(2_400_000) }]);
    const page = (after: number) => store.journal('s', { after, limit: 10 }).rows.map(({ number }) => number);
    expect([page(0), page(1), page(2), page(3)]).toEqual([[1], [2], [3], []]);
  }, 30_000);
});

describe('edits made on an older revision', () => {
  test('one that meets no edit since is carried over', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', replace('/shots/splash/shutter', '1/4000 s'), 'Shutter');
    edit(store, 'bo', replace('/shots/splash/title', 'The big splash'), 'Title', 0);
    expect(store.open('s').text).toBe(
      SMALL_SHOOT.replace('1/2000 s', '1/4000 s').replace('The splash', 'The big splash'),
    );
  });

  test.each<readonly [string, Patch, Patch]>([
    ['the same value', replace('/shots/splash/lens', 'far'), replace('/shots/splash/lens', 'odd')],
    ['a value within what the other removed', [{ op: 'remove', path: '/shots/splash' }], replace('/shots/splash/lens', 'far')],
    ['the whole of what the other changed a part of', replace('/shots/splash/lens', 'far'), [{ op: 'remove', path: '/shots/splash' }]],
    ['a reference to what the other removed', [{ op: 'remove', path: '/kit/lenses/far' }], replace('/shots/splash/lens', 'far')],
    ['what the other has come to refer to', replace('/shots/splash/lens', 'far'), [{ op: 'remove', path: '/kit/lenses/far' }]],
    ['a new shot that refers to what the other removed', [{ op: 'remove', path: '/kit/lenses/far' }], [{ op: 'add', path: '/shots/new', value: { title: 'New', lens: 'far' } }]],
    ['a map without what the other has come to refer to', replace('/shots/splash/lens', 'far'), replace('/kit/lenses', { near: { title: 'Near' } })],
  ])('one that changes %s is refused', async (_, theirs, yours) => {
    const store = await storeWithShoot();
    edit(store, 'ada', theirs, 'First');
    const before = store.open('s');
    const fault = faultOf(() => edit(store, 'bo', yours, 'Second', 0));
    expect(fault.code).toBe('edit.conflict');
    expect(fault.cause).toMatchObject({ path: yours[0]!.path, number: 1, who: 'ada', summary: 'First' });
    expect(store.open('s')).toEqual(before);
  }); // prettier-ignore

  test('the refusal carries both values', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', replace('/shots/splash/shutter', '1/4000 s'));
    const fault = faultOf(() => edit(store, 'bo', replace('/shots/splash/shutter', '1/8000 s'), 'Mine', 0));
    expect(fault.cause).toMatchObject({ yours: '1/8000 s', theirs: '1/4000 s' });
  });

  test('places in one list meet, as adding at one moves the other', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', [{ op: 'add', path: '/order', value: { shots: ['splash', 'crown'] } }]);
    edit(store, 'ada', [{ op: 'add', path: '/order/shots/0', value: 'crown' }], 'First');
    expect(faultOf(() => edit(store, 'bo', replace('/order/shots/1', 'crown'), 'Second', 1)).code).toBe(
      'edit.conflict',
    );
  });

  test('an edit since that was taken back since is not in the way', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', replace('/shoot/seed', 8));
    store.undo('s', by('ada'));
    expect(edit(store, 'bo', replace('/shoot/seed', 9), 'Seed', 0).revision).toBe(3);
  });
});

describe('undo and redo', () => {
  test('undo takes back only what the same client did', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', replace('/shoot/seed', 8), 'Seed');
    edit(store, 'bo', replace('/shots/splash/shutter', '1/4000 s'), 'Shutter');
    const result = store.undo('s', by('ada'));
    expect(result).toEqual({ revision: 3, patch: replace('/shoot/seed', 7), redoSummary: 'Seed' });
    expect(store.open('s').text).toBe(SMALL_SHOOT.replace('1/2000 s', '1/4000 s'));
    expect(store.journal('s', { after: 2, limit: 1 }).rows).toMatchObject([
      { kind: 'undo', undoes: 1, summary: 'Seed' },
    ]);
  });

  test('a removed entry comes back in its place with its comments, and the answer says that the order differs', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', [{ op: 'remove', path: '/shots/splash' }], 'Without the splash');
    const result = store.undo('s', by('ada'));
    expect(store.open('s').text).toBe(SMALL_SHOOT);
    expect(result.reorders).toBe(true);
    expect(Object.keys((store.open('s').written as { shots: object }).shots)).toEqual(['splash', 'crown']);
  });

  test('undo with nothing of one’s own is refused, and so is redo', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', replace('/shoot/seed', 8));
    expect(faultOf(() => store.undo('s', by('bo'))).code).toBe('undo.none');
    expect(faultOf(() => store.redo('s', by('ada'))).code).toBe('redo.none');
  });

  test('an edit that others have touched since is not taken back, and they are named', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', [{ op: 'add', path: '/shots/new', value: { title: 'New' } }], 'A new shot');
    edit(store, 'bo', replace('/shots/new/title', 'Newer'), 'Better title');
    const fault = faultOf(() => store.undo('s', by('ada')));
    expect(fault.code).toBe('undo.touched-since');
    expect(fault.cause).toMatchObject({
      path: '/shots/new',
      theirs: { title: 'Newer' },
      who: 'bo',
      summary: 'Better title',
    });
    expect(store.open('s').revision).toBe(2);
  });

  test('an addition that others refer to since is not taken back', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', [{ op: 'add', path: '/kit/lenses/odd', value: { title: 'Odd' } }], 'Odd lens');
    edit(store, 'bo', replace('/shots/splash/lens', 'odd'), 'Use it');
    expect(faultOf(() => store.undo('s', by('ada'))).code).toBe('undo.touched-since');
  });

  test('what others took back again is no longer in the way', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', replace('/shoot/seed', 8));
    edit(store, 'bo', replace('/shoot/seed', 9));
    store.undo('s', by('bo'));
    store.undo('s', by('ada'));
    expect(store.open('s').text).toBe(SMALL_SHOOT);
  });

  test('nor is it where something else has changed in between', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', replace('/shoot/seed', 8));
    edit(store, 'bo', replace('/shoot/seed', 9));
    store.undo('s', by('bo'));
    edit(store, 'bo', replace('/shots/splash/shutter', '1/4000 s'));
    store.undo('s', by('ada'));
    expect(store.open('s').text).toBe(SMALL_SHOOT.replace('1/2000 s', '1/4000 s'));
  });

  test('redo that others have crossed is refused too', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', replace('/shoot/seed', 8));
    store.undo('s', by('ada'));
    edit(store, 'bo', replace('/shoot/seed', 9));
    expect(faultOf(() => store.redo('s', by('ada'))).code).toBe('redo.touched-since');
  });

  test('a new edit ends what could be made again', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', replace('/shoot/seed', 8), 'Seed');
    store.undo('s', by('ada'));
    expect(store.steps('s', 'ada')).toEqual({ redoSummary: 'Seed' });
    edit(store, 'ada', replace('/shoot/title', 'Cream'), 'Title');
    expect(store.steps('s', 'ada')).toEqual({ undoSummary: 'Title' });
  });

  test('undo and redo sent twice happen once', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', replace('/shoot/seed', 8), 'Seed');
    edit(store, 'ada', replace('/shoot/title', 'Cream'), 'Title');
    const undone = store.undo('s', by('ada', 'undo-000001'));
    expect(store.undo('s', by('ada', 'undo-000001'))).toEqual(undone);
    const redone = store.redo('s', by('ada', 'redo-000001'));
    expect(store.redo('s', by('ada', 'redo-000001'))).toEqual(redone);
    expect(store.open('s').revision).toBe(4);
  });
});

describe('true of any history', () => {
  const shot = fc.constantFrom('splash', 'crown', 'extra');
  const text = fc.oneof(
    fc.constantFrom('1/500 s', '172.8°', 'yes', '# not a comment', "it's", '"', ': ', '', ' ', '1e3', 'null', '~'),
    fc.string({ maxLength: 12 }),
    fc.string({ unit: 'grapheme', maxLength: 6 }),
    fc.string({ unit: 'binary', maxLength: 6 }),
  );
  const value = fc.oneof(
    text,
    fc.integer(),
    fc.double({ noNaN: true, noDefaultInfinity: true }).filter((number) => !Object.is(number, -0)),
    fc.boolean(),
    fc.array(text, { maxLength: 3 }),
    fc.dictionary(fc.constantFrom('title', 'note', 'lens', 'odd key'), text, { maxKeys: 3 }),
  );
  const operation = fc.oneof(
    fc.record({ op: fc.constant('add' as const), path: shot.map((id) => `/shots/${id}`), value: fc.record({ title: text }) }),
    fc.record({ op: fc.constant('add' as const), path: fc.tuple(shot, fc.constantFrom('title', 'note', 'shutter', 'odd key', 'a~1b')).map(([id, key]) => `/shots/${id}/${key}`), value }),
    fc.record({ op: fc.constant('remove' as const), path: fc.tuple(shot, fc.constantFrom('', '/title', '/shutter')).map(([id, key]) => `/shots/${id}${key}`) }),
    fc.record({ op: fc.constant('replace' as const), path: fc.constantFrom('/shoot', '/shoot/title', '/kit/lenses/near', '/kit/lenses/far/title', '/shots/crown'), value }),
  ); // prettier-ignore
  const patches = fc.array(fc.array(operation, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 8 });

  /** Edits that the shoot has no place for are refused; the others count. */
  const tryEdit = (store: ShootStore, who: string, patch: Patch) => {
    try {
      edit(store, who, patch);
      return true;
    } catch (error) {
      if (error instanceof Fault && /^(patch|document)\./.test(error.code)) return false;
      throw error;
    }
  };

  async function withStore(use: (store: ShootStore) => void): Promise<void> {
    const store = await openStore({ folder: tempFolder() });
    try {
      store.bringIn({ editId: 'import-0001', at: clock.now().toISOString(), text: SMALL_SHOOT, id: 's' });
      use(store);
    } finally {
      store.close();
    }
  }

  test('undoing every edit gives the first text byte for byte, and redoing every one the last', async () => {
    await fc.assert(
      fc.asyncProperty(patches, async (history) => {
        await withStore((store) => {
          const made = history.filter((patch) => tryEdit(store, 'ada', patch)).length;
          const last = store.open('s');
          for (let i = 0; i < made; i += 1) store.undo('s', by('ada'));
          expect(store.open('s').text).toBe(SMALL_SHOOT);
          expect(faultOf(() => store.undo('s', by('ada'))).code).toBe('undo.none');
          for (let i = 0; i < made; i += 1) store.redo('s', by('ada'));
          expect(store.open('s')).toMatchObject({ text: last.text, written: last.written, revision: 3 * made });
          expect(faultOf(() => store.redo('s', by('ada'))).code).toBe('redo.none');
        });
      }),
      { numRuns: 60 },
    );
  }, 60_000);

  test('a client that applies the patches told, opening anew where told to, has what the store has', async () => {
    const step = fc.oneof(
      fc.record({ who: fc.constantFrom('ada', 'bo'), patch: fc.array(operation, { minLength: 1, maxLength: 2 }) }),
      fc.record({ who: fc.constantFrom('ada', 'bo'), step: fc.constantFrom('undo' as const, 'redo' as const) }),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 14 }), async (history) => {
        await withStore((store) => {
          let seen = store.open('s').written;
          let told = 0;
          for (const act of history) {
            if ('patch' in act) tryEdit(store, act.who, act.patch);
            else {
              try {
                store[act.step]('s', by(act.who));
              } catch (error) {
                expect((error as Fault).code).toMatch(/\.(none|touched-since)$|^patch\./);
              }
            }
            for (const row of store.journal('s', { after: told, limit: 10 }).rows) {
              seen = row.reorders ? store.open('s').written : applyPatch(seen, row.patch);
              told = row.number;
            }
            expect(JSON.stringify(seen)).toBe(JSON.stringify(store.open('s').written));
          }
          expect(told).toBe(store.open('s').revision);
        });
      }),
      { numRuns: 60 },
    );
  }, 60_000);
});

describe('watching', () => {
  test('a change is told once it is stored, and a refused or repeated one is not', async () => {
    const store = await storeWithShoot();
    const told: number[] = [];
    const stop = store.watch((id) => told.push(store.open(id).revision));
    const sent = { ...by('ada'), revision: 0, patch: replace('/shoot/seed', 8), summary: 'Seed' };
    store.edit('s', sent);
    store.edit('s', sent);
    faultOf(() => edit(store, 'ada', replace('/nowhere/at/all', 1)));
    stop();
    store.undo('s', by('ada'));
    expect(told).toEqual([1]);
  });
});
