import { expect, test } from 'vitest';
import { keepIn, pageStorage, type StorageLike, type Unsent } from './keep.ts';

const edit = (editId: string, sequence: number): Unsent => ({
  editId,
  kind: 'edit',
  patch: [{ op: 'add', path: '/shots/pour/stop', value: 'T8' }],
  summary: 'Stop',
  revision: 3,
  sequence,
});

test('what was kept comes back in the order it was made, by whichever page kept it', () => {
  const storage = pageStorage();
  keepIn(storage).put('cup', edit('second', 2));
  keepIn(storage).put('cup', edit('first', 1));
  expect(keepIn(storage).unsent('cup')).toEqual([edit('first', 1), edit('second', 2)]);
  keepIn(storage).drop('cup', 'first');
  expect(keepIn(storage).unsent('cup')).toEqual([edit('second', 2)]);
});

test('shoots are kept apart, even where one id begins with another', () => {
  const keep = keepIn(pageStorage());
  keep.put('cup', edit('a', 1));
  keep.put('cup-2', edit('b', 1));
  keep.setDraft('cup-2', { patch: [], revision: 1 });
  expect(keep.unsent('cup').map(({ editId }) => editId)).toEqual(['a']);
  expect(keep.draft('cup')).toBeUndefined();
});

test('a draft replaces the one before and goes when it is told to', () => {
  const keep = keepIn(pageStorage());
  keep.setDraft('cup', { patch: [], revision: 1 });
  keep.setDraft('cup', { patch: [{ op: 'remove', path: '/shots/pour' }], revision: 2 });
  expect(keep.draft('cup')).toEqual({ patch: [{ op: 'remove', path: '/shots/pour' }], revision: 2 });
  keep.setDraft('cup', undefined);
  expect(keep.draft('cup')).toBeUndefined();
});

test('what others wrote under our keys is left alone, not read', () => {
  const storage = pageStorage();
  storage.setItem('longsecond.unsent/cup/x', 'not JSON');
  storage.setItem('longsecond.unsent/cup/y', '{"editId":"y","kind":"erase"}');
  storage.setItem('longsecond.unsent/cup/z', 'null');
  storage.setItem('longsecond.draft/cup', '[]');
  const keep = keepIn(storage);
  expect(keep.unsent('cup')).toEqual([]);
  expect(keep.draft('cup')).toBeUndefined();
  expect(storage.length).toBe(4);
});

test('a storage that is full stops nobody from working', () => {
  const held = pageStorage();
  const full: StorageLike = {
    length: 0,
    key: () => null,
    getItem: (key) => held.getItem(key),
    setItem: () => {
      throw new DOMException('full', 'QuotaExceededError');
    },
    removeItem: (key) => held.removeItem(key),
  };
  const keep = keepIn(full);
  keep.put('cup', edit('a', 1));
  keep.setDraft('cup', { patch: [], revision: 1 });
  expect(keep.unsent('cup')).toEqual([]);
});

test('a restore is kept with the revision it brings back, and one without is left alone', () => {
  const keep = keepIn(pageStorage());
  const restore = {
    editId: 'edit-0001',
    kind: 'restore',
    patch: [],
    summary: 'Restored',
    revision: 4,
    sequence: 1,
  } as const;
  keep.put('cup', { ...restore, to: 2 });
  keep.put('cup', { ...restore, editId: 'edit-0002', sequence: 2 });
  expect(keep.unsent('cup')).toEqual([{ ...restore, to: 2 }]);
});

test('what was refused is kept by shoot until it is decided, and anything else under its key is left alone', () => {
  const storage = pageStorage();
  const keep = keepIn(storage);
  const refused = [{ id: 'edit-0001', says: 'Not kept', mend: 'Look again.' }];
  keep.setRefused('cup', refused);
  expect(keep.refused('cup')).toEqual(refused);
  expect(keep.refused('tea')).toEqual([]);
  keep.setRefused('cup', []);
  expect(storage.length).toBe(0);
  for (const text of ['nonsense', '7', '[{"id":1}]', 'null']) {
    storage.setItem('longsecond.refused/cup', text);
    expect(keep.refused('cup')).toEqual([]);
  }
});
