import { expect, test } from 'vitest';
import { pageStorage } from './keep.ts';
import { readName, writeName } from './person.ts';

test('a name is kept as the server takes it, and taken away by leaving it empty', () => {
  const storage = pageStorage();
  writeName(storage, '  Juno\tMarsh ');
  expect(readName(storage)).toBe('Juno Marsh');
  writeName(storage, ' ');
  expect(readName(storage)).toBeUndefined();
  expect(storage.length).toBe(0);
});

test('what another program left under the key is cut to a name, or is none', () => {
  const storage = pageStorage();
  storage.setItem('longsecond.name', 'x'.repeat(500));
  expect(readName(storage)).toHaveLength(60);
  storage.setItem('longsecond.name', '\u0000');
  expect(readName(storage)).toBeUndefined();
});

test('a storage that is full loses the name and nothing else', () => {
  const full = { ...pageStorage(), setItem: () => { throw new Error('full'); } }; // prettier-ignore
  expect(() => writeName(full, 'Ada')).not.toThrow();
});
