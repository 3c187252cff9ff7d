import fc from 'fast-check';
import { expect, test } from 'vitest';
import { applyPatch } from '../../../document/patch.ts';
import type { Written } from '../../../document/written.ts';
import { differences, sayChange, sayWhere, stepOf } from './changes.ts';

const CUP: Written = {
  shoot: { title: 'Cup', day: { call: '07:30' } },
  order: { shots: ['pour', 'crown'] },
  defaults: { takes: 8 },
  kit: { lenses: { long: { title: 'Long one', closeFocus: '300 mm' } } },
  board: { b1: { title: 'The glass fills' } },
  shots: { pour: { title: 'The pour', stop: 'T8' }, crown: {} },
};

test.each([
  ['/shots/pour/stop', 'The pour: stop'],
  ['/shots/crown/action/speed', 'crown: action, speed'],
  ['/shots/pour', 'The pour'],
  ['/shoot/day/call', 'day, call'],
  ['/order/shots', 'order of the shots'],
  ['/defaults/takes', 'all shots: takes'],
  ['/kit/lenses/long/closeFocus', 'Long one: close focus'],
  ['/kit/lenses', 'kit, lenses'],
  ['/board/b1/words', 'frame The glass fills: words'],
  ['/longsecond', 'longsecond'],
  ['', 'the whole shoot'],
])('%s reads %s', (path, words) => {
  expect(sayWhere(path, { before: CUP, after: CUP })).toBe(words);
});

test('an edit is told by the values before and after it', () => {
  const { changes, after } = stepOf(CUP, [
    { op: 'replace', path: '/shots/pour/stop', value: 'T11' },
    { op: 'add', path: '/shots/pour/depth', value: '3 mm' },
    { op: 'remove', path: '/board/b1' },
  ]);
  expect(changes.map((change) => `${change.where}: ${sayChange(change)}`)).toEqual([
    'The pour: stop: T8 → T11',
    'The pour: depth: now 3 mm',
    'frame The glass fills: The glass fills, taken away',
  ]);
  expect(differences(CUP, after).map(({ path }) => path)).toEqual([
    '/board/b1',
    '/shots/pour/stop',
    '/shots/pour/depth',
  ]);
});

test('a map written anew is told by what in it differs, and a value written again is no change', () => {
  const { changes } = stepOf(CUP, [
    { op: 'replace', path: '/shots/pour', value: { title: 'The pour', stop: 'T4' } },
    { op: 'replace', path: '/defaults/takes', value: 8 },
  ]);
  expect(changes).toEqual([{ path: '/shots/pour/stop', where: 'The pour: stop', before: 'T8', after: 'T4' }]);
});

test('what is referred to goes by its title or name, and a section by the first thing in it', () => {
  const { changes } = stepOf(CUP, [
    { op: 'add', path: '/files', value: {} },
    { op: 'add', path: '/files/picture-1', value: { name: 'glass.webp', size: '48213 B' } },
    { op: 'add', path: '/board/b1/picture', value: 'picture-1' },
    { op: 'replace', path: '/order/shots', value: ['crown', 'pour'] },
  ]);
  expect(changes.map((change) => `${change.where}: ${sayChange(change)}`)).toEqual([
    'file glass.webp: now glass.webp',
    'frame The glass fills: picture: now glass.webp',
    'order of the shots: The pour, crown → crown, The pour',
  ]);
});

test('a section that came with many things in it is told by each of them', () => {
  const files = { a: { name: 'a.png' }, b: { name: 'b.png' } };
  const after = { ...(CUP as object), files } as Written;
  expect(differences(CUP, after).map(({ where }) => where)).toEqual(['file a.png', 'file b.png']);
  expect(differences(after, CUP).map(sayChange)).toEqual(['a.png, taken away', 'b.png, taken away']);
});

test('a title that was changed is told by the new one', () => {
  const { changes } = stepOf(CUP, [{ op: 'replace', path: '/shots/pour/title', value: 'The long pour' }]);
  expect(changes[0]).toMatchObject({ where: 'The long pour: title', before: 'The pour', after: 'The long pour' });
});

test('two states differ nowhere exactly where they say the same', () => {
  const written = fc.letrec((tie) => ({
    value: fc.oneof({ depthSize: 'small' }, fc.constantFrom('a', 'b', 1), tie('map')),
    map: fc.dictionary(fc.constantFrom('x', 'y', 'z'), tie('value'), { maxKeys: 3 }),
  })).map as unknown as fc.Arbitrary<Written>;
  fc.assert(
    fc.property(written, written, (before, after) => {
      const found = differences(before, after);
      const isEqual = JSON.stringify(sorted(before)) === JSON.stringify(sorted(after));
      expect(found.length === 0).toBe(isEqual);
      const patched = found.reduce((now, { path }) => {
        const value = at(after, path);
        return applyPatch(now, [value === undefined ? { op: 'remove', path } : { op: 'add', path, value }]);
      }, before);
      expect(sorted(patched)).toEqual(sorted(after));
    }),
  );
});

function sorted(value: Written): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => a.localeCompare(b))
      .map(([key, each]) => [key, sorted(each)]),
  );
}

function at(value: Written, path: string): Written | undefined {
  let now: Written | undefined = value;
  for (const key of path.split('/').slice(1)) now = (now as Readonly<Record<string, Written>> | undefined)?.[key];
  return now;
}
