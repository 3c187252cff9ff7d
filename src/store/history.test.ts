import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SMALL_SHOOT, steppingClock, tempFolder, tempStore } from '../../test/tempStore.ts';
import { Fault } from '../base/fault.ts';
import { applyPatch, type Patch } from '../document/patch.ts';
import { readShootText } from '../document/text.ts';
import type { Written } from '../document/written.ts';
import { openStore } from './openStore.ts';
import type { ShootStore } from './types.ts';

const clock = steppingClock();
let count = 0;
const by = (who: string, editId = `edit-${String((count += 1)).padStart(6, '0')}`, name?: string) => ({
  editId,
  who,
  name,
  at: clock.now().toISOString(),
});

const replace = (path: string, value: Written): Patch => [{ op: 'replace', path, value }];
const seed = (value: Written) => replace('/shoot/seed', value);

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

const edit = (store: ShootStore, who: string, patch: Patch, summary = 'a change') =>
  store.edit('s', { ...by(who), revision: store.open('s').revision, patch, summary });

const restore = (store: ShootStore, who: string, to: number, revision = store.open('s').revision) =>
  store.restore('s', { ...by(who), revision, to });

describe('names of people', () => {
  test('stand beside who did it, in the journal and in what an edit ran into', async () => {
    const store = await storeWithShoot();
    store.edit('s', { ...by('ada', undefined, 'Ada Zoë'), revision: 0, patch: seed(8), summary: 'Seed' });
    store.edit('s', { ...by('bo'), revision: 1, patch: replace('/shoot/title', 'Cream'), summary: 'Title' });
    const { rows } = store.journal('s', { after: 0, limit: 10 });
    expect(rows[0]).toMatchObject({ who: 'ada', name: 'Ada Zoë' });
    expect(rows[1]).not.toHaveProperty('name');
    const fault = faultOf(() => store.edit('s', { ...by('cy'), revision: 0, patch: seed(9), summary: 'Mine' }));
    expect(fault.cause).toMatchObject({ who: 'ada', name: 'Ada Zoë' });
    expect(fault.what).toContain('Ada Zoë');
  });

  test('decide nothing: the same edit sent again under another name is the same edit', async () => {
    const store = await storeWithShoot();
    const sent = { ...by('ada', 'edit-twice1', 'Ada'), revision: 0, patch: seed(8), summary: 'Seed' };
    const first = store.edit('s', sent);
    expect(store.edit('s', { ...sent, name: 'Ada L.' })).toEqual(first);
    expect(store.journal('s', { after: 0, limit: 1 }).rows[0]).toMatchObject({ name: 'Ada' });
  });
});

describe('looking back', () => {
  test('the journal is paged newest first, from any number down', async () => {
    const store = await storeWithShoot();
    for (let value = 1; value <= 5; value += 1) edit(store, 'ada', seed(value));
    const page = (before: number, limit: number) =>
      store.history('s', { before, limit }).rows.map(({ number }) => number);
    expect([page(999, 2), page(4, 2), page(2, 2), page(1, 2)]).toEqual([[5, 4], [3, 2], [1], []]);
    expect(store.history('s', { before: 2, limit: 1 }).revision).toBe(5);
  });

  test('a shoot is shown as it was, with its title then', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', replace('/shoot/title', 'Cream'));
    edit(store, 'ada', seed(8));
    expect(store.at('s', 0)).toMatchObject({ title: 'Milk and thunder', revision: 0, text: SMALL_SHOOT });
    expect(store.at('s', 1)).toMatchObject({ title: 'Cream', written: { shoot: { seed: 7 } } });
    expect(store.at('s', 2)).toEqual(store.open('s'));
  });

  test('a revision that there never was is refused', async () => {
    const store = await storeWithShoot();
    expect(faultOf(() => store.at('s', 1)).code).toBe('revision.unknown');
    expect(faultOf(() => store.at('gone', 0)).code).toBe('shoot.unknown');
  });
});

describe('restoring', () => {
  test('brings back the text of a revision byte for byte, comments and all, as a row that others can follow', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', [{ op: 'remove', path: '/shots/splash' }]);
    edit(store, 'ada', replace('/kit/lenses/far', { title: 'New far' }));
    const before = store.open('s');
    const result = restore(store, 'bo', 0);
    expect(store.open('s').text).toBe(SMALL_SHOOT);
    expect(result).toMatchObject({ revision: 3, reorders: true, undoSummary: 'Restored revision 0' });
    expect(result.patch.map(({ op, path }) => [op, path])).toEqual([
      ['replace', '/kit/lenses/far/title'],
      ['add', '/kit/lenses/far/focalLength'],
      ['add', '/shots/splash'],
    ]);
    expect(applyPatch(before.written, result.patch)).toEqual(store.open('s').written);
    expect(store.journal('s', { after: 2, limit: 1 }).rows).toMatchObject([
      { kind: 'restore', restores: 0, who: 'bo', summary: 'Restored revision 0' },
    ]);
  });

  test('is taken back and made again byte for byte', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', [{ op: 'remove', path: '/shots/splash' }]);
    const { text } = store.open('s');
    restore(store, 'ada', 0);
    expect(store.undo('s', by('ada')).redoSummary).toBe('Restored revision 0');
    expect(store.open('s').text).toBe(text);
    store.redo('s', by('ada'));
    expect(store.open('s').text).toBe(SMALL_SHOOT);
    store.undo('s', by('ada'));
    store.undo('s', by('ada'));
    expect(store.open('s').text).toBe(SMALL_SHOOT);
  });

  test('ends what could be made again, as any edit does', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', seed(8));
    edit(store, 'ada', seed(9));
    store.undo('s', by('ada'));
    restore(store, 'ada', 0);
    expect(store.steps('s', 'ada')).toEqual({ undoSummary: 'Restored revision 0' });
  });

  test('is refused where somebody else edited what the person was not looking at', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', seed(8));
    edit(store, 'bo', replace('/shoot/title', 'Cream'), 'Title');
    const before = store.open('s');
    const fault = faultOf(() => restore(store, 'ada', 0, 1));
    expect(fault).toMatchObject({ code: 'restore.touched-since', where: 's/shoot/title' });
    expect(fault.cause).toMatchObject({ path: '/shoot/title', yours: 'Milk and thunder', theirs: 'Cream', who: 'bo', number: 2 }); // prettier-ignore
    expect(store.open('s')).toEqual(before);
    expect(restore(store, 'ada', 0, 2).revision).toBe(3);
  });

  test('minds neither one’s own later edits nor what others took back again', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', seed(8));
    edit(store, 'bo', replace('/shoot/title', 'Cream'));
    store.undo('s', by('bo'));
    edit(store, 'ada', seed(9));
    restore(store, 'ada', 0, 1);
    expect(store.open('s').text).toBe(SMALL_SHOOT);
  });

  test('sent twice, happens once; its id serves nothing else', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', seed(8));
    const sent = { ...by('ada', 'restore-001'), revision: 1, to: 0 };
    const first = store.restore('s', sent);
    edit(store, 'bo', seed(9));
    expect(store.restore('s', sent)).toEqual(first);
    expect(store.open('s').revision).toBe(3);
    expect(faultOf(() => store.restore('s', { ...sent, to: 1 })).code).toBe('edit.id-reused');
    expect(faultOf(() => store.undo('s', by('ada', 'restore-001'))).code).toBe('edit.id-reused');
  });

  test('of what is there already is refused, and so is a revision to come', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', seed(8));
    expect(faultOf(() => restore(store, 'ada', 1)).code).toBe('restore.same');
    expect(faultOf(() => restore(store, 'ada', 2)).code).toBe('revision.unknown');
    expect(faultOf(() => restore(store, 'ada', 0, 2)).code).toBe('edit.revision-unknown');
  });

  test('an edit made before it is judged against it', async () => {
    const store = await storeWithShoot();
    edit(store, 'ada', seed(8));
    restore(store, 'ada', 0);
    const late = { revision: 1, summary: 'Late' };
    expect(faultOf(() => store.edit('s', { ...by('bo'), ...late, patch: seed(9) })).code).toBe('edit.conflict');
    expect(store.edit('s', { ...by('bo'), ...late, patch: replace('/shots/splash/lens', 'far') }).revision).toBe(3);
  });
});

describe('true of any history', () => {
  const operation = fc.oneof(
    fc.record({ op: fc.constant('add' as const), path: fc.constantFrom('/shots/extra', '/shots/splash/note', '/shots/splash'), value: fc.constantFrom<Written>('x', { title: 'y: #' }, ['a'], 'two\nlines', '🎬') }),
    fc.record({ op: fc.constant('remove' as const), path: fc.constantFrom('/shots/splash', '/shots/crown/title', '/kit', '/shots/extra') }),
    fc.record({ op: fc.constant('replace' as const), path: fc.constantFrom('/shoot/title', '/shots/crown', '/kit/lenses/near'), value: fc.constantFrom<Written>('z', { title: 'q' }, '1/2') }),
  ); // prettier-ignore
  const act = fc.oneof(
    fc.record({ who: fc.constantFrom('ada', 'bo'), patch: fc.array(operation, { minLength: 1, maxLength: 2 }) }),
    fc.record({ who: fc.constantFrom('ada', 'bo'), step: fc.constantFrom('undo' as const, 'redo' as const) }),
    fc.record({ who: fc.constantFrom('ada', 'bo'), to: fc.nat({ max: 12 }) }),
  );

  test('every revision reads as it was when it was made, whatever was undone, redone and restored', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(act, { maxLength: 16 }), fc.array(fc.nat(), { maxLength: 6 }), async (acts, looks) => {
        const store = await openStore({ folder: tempFolder() });
        try {
          store.bringIn({ editId: 'import-0001', at: clock.now().toISOString(), text: SMALL_SHOOT, id: 's' });
          const texts = [SMALL_SHOOT];
          let seen = store.open('s').written;
          for (const done of acts) {
            try {
              if ('patch' in done) edit(store, done.who, done.patch);
              else if ('step' in done) store[done.step]('s', by(done.who));
              else restore(store, done.who, Math.min(done.to, texts.length - 1));
            } catch (error) {
              expect((error as Fault).code).toMatch(/^(patch|document)\.|\.(none|touched-since|same)$/);
              continue;
            }
            texts.push(store.open('s').text);
            const [row] = store.history('s', { before: texts.length, limit: 1 }).rows;
            seen = row!.reorders ? store.open('s').written : applyPatch(seen, row!.patch);
            expect(JSON.stringify(seen)).toBe(JSON.stringify(store.open('s').written));
            // Looked at in between, so that what is held from earlier looks is used too.
            const look = looks.length === 0 ? 0 : looks[texts.length % looks.length]! % texts.length;
            expect(store.at('s', look).text).toBe(texts[look]);
          }
          for (const [revision, text] of texts.entries()) {
            expect(store.at('s', revision).text).toBe(text);
            expect(store.at('s', revision).written).toEqual(readShootText(text).written);
          }
        } finally {
          store.close();
        }
      }),
      { numRuns: 50 },
    );
  }, 120_000);
});
