import { expect, test } from 'vitest';
import { CATALOGUE } from '../../../laws/catalogue.ts';
import { findLaws, meantBy, WORDS_TO_TRY } from './find.ts';

const ids = (search: string) => findLaws(search).map(({ law }) => law.id);

test('no words list every law, in the order of the catalogue', () => {
  expect(ids('  ')).toEqual(CATALOGUE.map(({ id }) => id));
});

test('a law is found by its id, its title and the words of the trade', () => {
  expect(ids('hyperfocal-distance')[0]).toBe('hyperfocal-distance');
  expect(ids('Depth of field')[0]).toBe('depth-of-field');
  expect(ids('footcandles incident')).toContain('light-needed');
});

test('laws whose title says the words come before those that only mention them', () => {
  const found = findLaws('stop');
  const says = found.map(({ law }) => /stop/i.test(`${law.title} ${law.id}`));
  expect(says.lastIndexOf(true)).toBeLessThan(says.indexOf(false));
});

test('each law knows its subject', () => {
  expect(findLaws('record-time')[0]?.subject).toBe('Buffer and storage');
});

test('every word that is offered to try finds something', () => {
  for (const word of WORDS_TO_TRY) expect(ids(word), word).not.toEqual([]);
});

test('a slip of the finger is understood, and a word from nowhere is not', () => {
  expect(ids('footcandels')).toEqual([]);
  expect(meantBy('footcandels')).toBe('footcandles');
  expect(meantBy('qqqqqqqqqqqq')).toBeUndefined();
  expect(meantBy('footcandles')).toBeUndefined();
});
