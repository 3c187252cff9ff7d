import { expect, test } from 'vitest';
import type { ShootEntry, Standing } from '../../../api/replies.ts';
import { againTitle, isZip, sectionsOf } from './sections.ts';

const entry = (id: string, standing: Standing): ShootEntry => ({
  id,
  title: id,
  revision: 0,
  created: '2030-01-01T10:00:00Z',
  updated: '2030-01-01T10:00:00Z',
  standing,
});

test('current shoots come first, then templates, then what is archived, each in the order of the list', () => {
  const list = [entry('a', 'archived'), entry('b', 'current'), entry('c', 'template'), entry('d', 'current')];
  expect(sectionsOf(list).map(({ title, shoots }) => [title, shoots.map(({ id }) => id)])).toEqual([
    ['Current', ['b', 'd']],
    ['Templates', ['c']],
    ['Archived', ['a']],
  ]);
});

test('a section that holds nothing is not shown', () => {
  expect(sectionsOf([entry('a', 'current')]).map(({ standing }) => standing)).toEqual(['current']);
  expect(sectionsOf([])).toEqual([]);
});

test('a zip is known by how it begins, whatever it is called', () => {
  expect(isZip(new TextEncoder().encode('PK\u0003\u0004'))).toBe(true);
  expect(isZip(new TextEncoder().encode('longsecond: 1'))).toBe(false);
  expect(isZip(new Uint8Array())).toBe(false);
});

test('a duplicate begins with the title of the first, short enough to be kept', () => {
  expect(againTitle('Tea')).toBe('Tea, again');
  expect(againTitle('x'.repeat(200)).length).toBeLessThanOrEqual(200);
});
