import { expect, test } from 'vitest';
import { pageStorage } from './keep.ts';
import { readUnitChoice, unitsFor, writeUnitChoice } from './unitChoice.ts';

test('what a person chose is found again, and choosing the shoot’s units forgets it', () => {
  const storage = pageStorage();
  expect(readUnitChoice(storage)).toBe('shoot');
  writeUnitChoice(storage, 'imperial');
  expect(readUnitChoice(storage)).toBe('imperial');
  writeUnitChoice(storage, 'shoot');
  expect(storage.length).toBe(0);
});

test('something else under the key counts as no choice', () => {
  const storage = pageStorage();
  storage.setItem('longsecond.units', 'cubits');
  expect(readUnitChoice(storage)).toBe('shoot');
});

test('a full storage is no fault', () => {
  const full = {
    ...pageStorage(),
    setItem: () => {
      throw new Error('full');
    },
  };
  expect(() => writeUnitChoice(full, 'metric')).not.toThrow();
});

test('a person’s choice goes before the shoot’s, and metric stands where neither says anything', () => {
  expect(unitsFor('imperial', 'metric')).toBe('imperial');
  expect(unitsFor('shoot', 'imperial')).toBe('imperial');
  expect(unitsFor('shoot', undefined)).toBe('metric');
});
