import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keysOf, pointerTo } from './pointer.ts';

// RFC 6901, section 5: the pointers of its example document.
test.each([
  ['', []],
  ['/foo', ['foo']],
  ['/foo/0', ['foo', '0']],
  ['/', ['']],
  ['/a~1b', ['a/b']],
  ['/c%d', ['c%d']],
  ['/ ', [' ']],
  ['/m~0n', ['m~n']],
])('RFC 6901: %j passes the keys %j', (pointer, keys) => {
  expect(keysOf(pointer)).toEqual(keys);
  expect(pointerTo(keys)).toBe(pointer);
});

test.each(['a', 'a/b', '/~', '/~2', '/a~'])('%j is no pointer', (text) => {
  expect(keysOf(text)).toBeUndefined();
});

test('any keys come back from the pointer they make', () => {
  fc.assert(
    fc.property(fc.array(fc.string()), (keys) => {
      expect(keysOf(pointerTo(keys))).toEqual(keys);
    }),
  );
});
