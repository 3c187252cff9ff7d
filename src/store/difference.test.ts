import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { writtenValues } from '../../test/documents.ts';
import { applyPatch } from '../document/patch.ts';
import { applySplices } from '../document/splice.ts';
import { isSame, type Written } from '../document/written.ts';
import { differenceOf, splicesBetween } from './difference.ts';

describe('the difference of two written values', () => {
  test('names only what differs, by keys, and replaces lists whole', () => {
    const from = { kit: { near: { stop: 'T2', tags: ['a', 'b'] }, far: {} }, seed: 7 };
    const to = { kit: { near: { stop: 'T4', tags: ['a'] }, odd: { stop: 'T1' } }, seed: 7 };
    expect(differenceOf(from, to)).toEqual([
      { op: 'remove', path: '/kit/far' },
      { op: 'replace', path: '/kit/near/stop', value: 'T4' },
      { op: 'replace', path: '/kit/near/tags', value: ['a'] },
      { op: 'add', path: '/kit/odd', value: { stop: 'T1' } },
    ]);
  });

  test('is empty where only the order of keys differs', () => {
    expect(differenceOf({ a: 1, b: 2 }, { b: 2, a: 1 })).toEqual([]);
  });

  test('replaces what holds a key that no patch may step through', () => {
    expect(differenceOf({ x: { constructor: 1 } }, { x: { constructor: 2 } })).toEqual([
      { op: 'replace', path: '/x', value: { constructor: 2 } },
    ]);
  });

  test('makes any value into any other', () => {
    const maps = fc.dictionary(fc.constantFrom('a', 'b/c', '~', 'odd key'), writtenValues, { noNullPrototype: true });
    fc.assert(
      fc.property(maps as fc.Arbitrary<Written>, maps as fc.Arbitrary<Written>, (from, to) => {
        expect(isSame(applyPatch(from, differenceOf(from, to)), to)).toBe(true);
      }),
    );
  });
});

describe('the splices between two texts', () => {
  const text = fc.array(fc.constantFrom('a', 'b', '\n', 'é', '🎬', '🎥', '\u{1f3ad}'), { maxLength: 8 }).map((parts) => parts.join('')); // prettier-ignore

  test('make the one into the other and never cut a character in two', () => {
    fc.assert(
      fc.property(text, text, (from, to) => {
        const splices = splicesBetween(from, to);
        expect(applySplices(from, splices)).toBe(to);
        for (const { removed, inserted } of splices) expect(removed + inserted).not.toMatch(/\p{Surrogate}/u);
      }),
    );
  });

  test('leave out what both begin and end with', () => {
    expect(splicesBetween('seed: 7 # so', 'seed: 18 # so')).toEqual([{ at: 6, removed: '7', inserted: '18' }]);
  });
});
