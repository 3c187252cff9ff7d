import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { writtenValues } from '../../test/documents.ts';
import { DEEPEST, depthOf, isSame, memberOf, requireWritten, setMember, shareUnchanged, type Written } from './written.ts'; // prettier-ignore

describe('sameness', () => {
  test('the order of keys says nothing, the order of items does', () => {
    expect(isSame({ a: 1, b: 2 }, { b: 2, a: 1 })).toBe(true);
    expect(isSame([1, 2], [2, 1])).toBe(false);
  });

  test.each<[Written, Written]>([
    [{ a: 1 }, { a: 1, b: 2 }],
    [{ a: 1, b: 2 }, { a: 1 }],
    [{ a: null }, {}],
    [[], {}],
    [null, {}],
    ['1', 1],
    [[1], [1, 2]],
  ])('%j and %j differ', (a, b) => {
    expect(isSame(a, b)).toBe(false);
  });

  test('a key that objects inherit is not found where it is not written', () => {
    expect(isSame({ toString: 1 }, { other: 1 })).toBe(false);
    expect(memberOf({}, 'toString')).toBeUndefined();
  });
});

describe('sharing with what was written before', () => {
  test('a value that says the same is the one from before, part by part', () => {
    const before = { a: { b: [1, 2] }, c: { d: 1 } };
    const after = { a: { b: [1, 2] }, c: { d: 2 } };
    const shared = shareUnchanged(before, after) as typeof before;
    expect(shared).toEqual(after);
    expect(shared.a).toBe(before.a);
    expect(shareUnchanged(before, structuredClone(before))).toBe(before);
  });

  test('another order of keys is kept as it is written now', () => {
    const shared = shareUnchanged({ a: { x: 1 }, b: 2 }, { b: 2, a: { x: 1 } });
    expect(Object.keys(shared as object)).toEqual(['b', 'a']);
  });

  test('whatever the two are, the result says what the second says', () => {
    fc.assert(
      fc.property(writtenValues, writtenValues, (before, after) => {
        expect(shareUnchanged(before, after)).toEqual(after);
      }),
    );
  });
});

describe('values from outside', () => {
  test.each([[undefined], [NaN], [Infinity], [() => 1], [new Map()], [{ a: undefined }], [[1n]], [Symbol('x')]])(
    '%s is refused as no JSON',
    (value) => {
      expect(() => requireWritten(value)).toThrow(expect.objectContaining({ code: 'written.not-json' }));
    },
  );

  test('a key that would change what the object is, is refused with its place', () => {
    const value: unknown = JSON.parse('{"a": {"__proto__": {"x": 1}}}');
    expect(() => requireWritten(value)).toThrow(expect.objectContaining({ where: '/a/__proto__' }));
  });

  test('a value nested too deep is refused rather than followed', () => {
    const deep = JSON.parse('['.repeat(2000) + ']'.repeat(2000)) as Written;
    expect(() => requireWritten(deep)).toThrow(expect.objectContaining({ code: 'document.too-deep' }));
    expect(depthOf(deep)).toBe(DEEPEST + 1);
  });

  test('setting a member named __proto__ makes it the record’s own and leaves its nature alone', () => {
    const record: Record<string, Written> = {};
    setMember(record, '__proto__', { x: 1 });
    expect(Object.keys(record)).toEqual(['__proto__']);
    expect(Object.getPrototypeOf(record)).toBe(Object.prototype);
  });
});
