import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { editDraws, patchOf, writtenValues } from '../../test/documents.ts';
import { applyPatch, invertPatch, pathsMeet, touchedPaths, withParents, writtenValueAt, type Patch } from './patch.ts';
import { isSame, type Written } from './written.ts';

const fault = (code: string) => expect.objectContaining({ name: 'Fault', code }) as Error;

interface Example {
  readonly title: string;
  readonly before: Written;
  readonly patch: Patch;
  readonly after: Written;
}

// RFC 6902, appendix A, by its numbers.
const RFC_6902: readonly Example[] = [
  { title: 'A.1 adding a member', before: { foo: 'bar' }, patch: [{ op: 'add', path: '/baz', value: 'qux' }], after: { baz: 'qux', foo: 'bar' } },
  { title: 'A.2 adding an item', before: { foo: ['bar', 'baz'] }, patch: [{ op: 'add', path: '/foo/1', value: 'qux' }], after: { foo: ['bar', 'qux', 'baz'] } },
  { title: 'A.3 removing a member', before: { baz: 'qux', foo: 'bar' }, patch: [{ op: 'remove', path: '/baz' }], after: { foo: 'bar' } },
  { title: 'A.4 removing an item', before: { foo: ['bar', 'qux', 'baz'] }, patch: [{ op: 'remove', path: '/foo/1' }], after: { foo: ['bar', 'baz'] } },
  { title: 'A.5 replacing a value', before: { baz: 'qux', foo: 'bar' }, patch: [{ op: 'replace', path: '/baz', value: 'boo' }], after: { baz: 'boo', foo: 'bar' } },
  { title: 'A.6 moving a value', before: { foo: { bar: 'baz', waldo: 'fred' }, qux: { corge: 'grault' } }, patch: [{ op: 'move', from: '/foo/waldo', path: '/qux/thud' }], after: { foo: { bar: 'baz' }, qux: { corge: 'grault', thud: 'fred' } } },
  { title: 'A.7 moving an item', before: { foo: ['all', 'grass', 'cows', 'eat'] }, patch: [{ op: 'move', from: '/foo/1', path: '/foo/3' }], after: { foo: ['all', 'cows', 'eat', 'grass'] } },
  { title: 'A.8 a test that holds', before: { baz: 'qux', foo: ['a', 2, 'c'] }, patch: [{ op: 'test', path: '/baz', value: 'qux' }, { op: 'test', path: '/foo/1', value: 2 }], after: { baz: 'qux', foo: ['a', 2, 'c'] } },
  { title: 'A.10 adding a nested member', before: { foo: 'bar' }, patch: [{ op: 'add', path: '/child', value: { grandchild: {} } }], after: { foo: 'bar', child: { grandchild: {} } } },
  { title: 'A.14 escaped pointers', before: { '/': 9, '~1': 10 }, patch: [{ op: 'test', path: '/~01', value: 10 }], after: { '/': 9, '~1': 10 } },
  { title: 'A.16 adding a list to a list', before: { foo: ['bar'] }, patch: [{ op: 'add', path: '/foo/-', value: ['abc', 'def'] }], after: { foo: ['bar', ['abc', 'def']] } },
]; // prettier-ignore

test.each(RFC_6902)('RFC 6902 $title', ({ before, patch, after }) => {
  expect(applyPatch(before, patch)).toEqual(after);
});

describe('refusals', () => {
  const document = { foo: 'bar', list: [1, 2], map: { a: 1 } };

  test.each<[title: string, code: string, patch: Patch]>([
    ['RFC 6902 A.9: a test that does not hold', 'patch.test-failed', [{ op: 'test', path: '/foo', value: 'baz' }]],
    ['a test where nothing is written', 'patch.test-failed', [{ op: 'test', path: '/nix', value: null }]],
    ['RFC 6902 A.12: adding under a missing parent', 'patch.path-missing', [{ op: 'add', path: '/baz/bat', value: 1 }]],
    ['RFC 6902 A.15: text is no number', 'patch.test-failed', [{ op: 'test', path: '/list/0', value: '1' }]],
    ['removing what is not there', 'patch.path-missing', [{ op: 'remove', path: '/nix' }]],
    ['replacing what is not there', 'patch.path-missing', [{ op: 'replace', path: '/map/b', value: 1 }]],
    ['an index beyond the end', 'patch.path-missing', [{ op: 'add', path: '/list/3', value: 1 }]],
    ['an index with a leading zero', 'patch.path-missing', [{ op: 'replace', path: '/list/01', value: 1 }]],
    ['the end of a list as a place to remove', 'patch.path-missing', [{ op: 'remove', path: '/list/-' }]],
    ['a place inside text', 'patch.path-missing', [{ op: 'add', path: '/foo/0', value: 1 }]],
    ['removing the whole document', 'patch.path-missing', [{ op: 'remove', path: '' }]],
    ['moving what is not there', 'patch.path-missing', [{ op: 'move', from: '/nix', path: '/x' }]],
    ['moving a map into itself', 'patch.into-itself', [{ op: 'move', from: '/map', path: '/map/b' }]],
    ['a path that is no pointer', 'patch.path-malformed', [{ op: 'remove', path: 'foo' }]],
    ['the prototype', 'patch.path-refused', [{ op: 'add', path: '/__proto__/x', value: 1 }]],
    ['the constructor', 'patch.path-refused', [{ op: 'add', path: '/map/constructor/prototype/x', value: 1 }]],
    ['copying from the prototype', 'patch.path-refused', [{ op: 'copy', from: '/__proto__', path: '/x' }]],
    ['what objects inherit', 'patch.path-missing', [{ op: 'copy', from: '/toString', path: '/x' }]],
    ['a value that holds __proto__', 'written.not-json', [{ op: 'add', path: '/x', value: JSON.parse('{"__proto__": 1}') as Written }]],
    ['a number that JSON lacks', 'written.not-json', [{ op: 'add', path: '/x', value: NaN }]],
  ])('%s is refused as %s, and nothing has changed', (_title, code, patch) => {
    const before = structuredClone(document);
    expect(() => applyPatch(document, [{ op: 'replace', path: '/foo', value: 'first' }, ...patch])).toThrow(fault(code));
    expect(document).toEqual(before);
    expect(({} as Record<string, unknown>)['x']).toBeUndefined();
  }); // prettier-ignore

  test.each([[null], ['x'], [[null]], [[{ op: 'spell', path: '' }]], [[{ path: '' }]], [[{ op: 'add', path: '/a' }]]])(
    '%j is no patch',
    (patch) => {
      expect(() => applyPatch(document, patch as never)).toThrow(fault('patch.malformed'));
    },
  );

  test('a path that is not text is refused', () => {
    expect(() => applyPatch(document, [{ op: 'remove', path: 3 } as never])).toThrow(fault('patch.path-malformed'));
    expect(() => applyPatch(document, [{ op: 'move', path: '/x' } as never])).toThrow(fault('patch.path-malformed'));
  });

  test('a refusal says what is missing, where, and what to do', () => {
    expect(() => applyPatch(document, [{ op: 'remove', path: '/map/b' }])).toThrow(
      expect.objectContaining({ what: 'Nothing is written at /map/b', where: '/map/b', mend: expect.stringMatching(/\.$/) as string }), // prettier-ignore
    );
  });
});

describe('sharing', () => {
  const before = { shots: { a: { stop: 'T8' }, b: { stop: 'T4' } }, kit: { lenses: {} } };

  test('whatever a patch does not touch keeps its identity', () => {
    const after = applyPatch(before, [{ op: 'replace', path: '/shots/a/stop', value: 'T5.6' }]) as typeof before;
    expect(after.kit).toBe(before.kit);
    expect(after.shots.b).toBe(before.shots.b);
    expect(after.shots.a).not.toBe(before.shots.a);
    expect(before.shots.a.stop).toBe('T8');
  });

  test('a patch that says nothing new gives the same object', () => {
    expect(applyPatch(before, [])).toBe(before);
    expect(applyPatch(before, [{ op: 'replace', path: '/shots/a/stop', value: 'T8' }])).toBe(before);
    expect(applyPatch(before, [{ op: 'test', path: '/shots/a', value: { stop: 'T8' } }])).toBe(before);
  });
});

describe('inverses', () => {
  test('whatever a patch does, its inverse takes back', () => {
    fc.assert(
      fc.property(writtenValues, fc.array(editDraws, { maxLength: 5 }), (value, draws) => {
        const before = { longsecond: 1, value };
        const patch = patchOf(before, draws);
        const after = applyPatch(before, patch);
        expect(isSame(applyPatch(after, invertPatch(before, patch)), before)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  test.each<[title: string, before: Written, patch: Patch]>([
    ['the end of a list', { a: [1] }, [{ op: 'add', path: '/a/-', value: 2 }]],
    ['a member written over', { a: 1, b: 2 }, [{ op: 'move', from: '/a', path: '/b' }]],
    ['a map replaced by its own part', { a: { b: { c: 1 } } }, [{ op: 'move', from: '/a/b', path: '/a' }]],
    ['an item moved before its own list’s item', { a: [[1], 2] }, [{ op: 'move', from: '/a/0/0', path: '/a/0' }]],
    ['a member of a later item, written over by an item', { a: [0, 9, { x: 1 }] }, [{ op: 'move', from: '/a/0', path: '/a/1/x' }]],
    ['the whole document', { a: 1 }, [{ op: 'add', path: '', value: { b: 2 } }]],
    ['a value moved to where it is', { a: 1 }, [{ op: 'move', from: '/a', path: '/a' }]],
  ])('%s comes back', (_title, before, patch) => {
    expect(applyPatch(applyPatch(before, patch), invertPatch(before, patch))).toEqual(before);
  }); // prettier-ignore
});

describe('where edits meet', () => {
  test.each([
    ['/shots/a', '/shots/a/stop', true],
    ['/shots/a/stop', '/shots/a', true],
    ['/shots/a', '/shots/a', true],
    ['', '/shots', true],
    ['/shots/a', '/shots/ab', false],
    ['/shots/a/stop', '/shots/a/shutter', false],
  ])('%s and %s: %s', (a, b, meet) => {
    expect(pathsMeet(a, b)).toBe(meet);
  });

  test('a patch touches the paths it reads as well as those it writes', () => {
    expect(touchedPaths([{ op: 'move', from: '/a', path: '/b' }, { op: 'remove', path: '/c' }])).toEqual(['/a', '/b', '/c']); // prettier-ignore
  });
});

describe('sections that an addition needs', () => {
  const before = { longsecond: 1, shots: { 'pour-1': { action: null } } };

  test('a section that is missing or empty is added first', () => {
    const patch = withParents(before, [
      { op: 'add', path: '/shots/pour-1/action/speed', value: '1 m/s' },
      { op: 'add', path: '/shots/pour-1/hero/product', value: 'jar' },
      { op: 'add', path: '/kit/products/jar', value: {} },
      { op: 'add', path: '/shots/pour-1/rigs/-', value: 'arm' },
    ]);
    expect(applyPatch(before, patch)).toEqual({
      longsecond: 1,
      shots: { 'pour-1': { action: { speed: '1 m/s' }, hero: { product: 'jar' }, rigs: ['arm'] } },
      kit: { products: { jar: {} } },
    });
  });

  test('a shot that does not exist is not made up', () => {
    expect(() => withParents(before, [{ op: 'add', path: '/shots/pour-9/stop', value: 'T8' }])).toThrow(
      fault('patch.path-missing'),
    );
  });

  test('a section that the form does not have is not made up', () => {
    expect(() => withParents(before, [{ op: 'add', path: '/nowhere/x', value: 1 }])).toThrow(
      fault('patch.path-missing'),
    );
  });

  test('a patch whose sections are written is left as it is', () => {
    const patch: Patch = [{ op: 'add', path: '/shots/pour-1/stop', value: 'T8' }];
    expect(withParents(before, patch)).toEqual(patch);
  });
});

test('the value at a pointer is found in lists and maps, and nothing beyond them', () => {
  const written = { a: [{ b: 1 }] };
  expect(writtenValueAt(written, '/a/0/b')).toBe(1);
  expect(writtenValueAt(written, '')).toBe(written);
  expect(writtenValueAt(written, '/a/1')).toBeUndefined();
  expect(writtenValueAt(written, '/a/-')).toBeUndefined();
  expect(writtenValueAt(written, '/a/0/b/c')).toBeUndefined();
  expect(writtenValueAt(written, '/toString')).toBeUndefined();
});
