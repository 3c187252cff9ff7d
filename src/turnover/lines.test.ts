import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { columnsOf, onOneLine, padded, PAGE_COLUMNS, wrapped } from './lines.ts';

const words = fc.array(fc.stringMatching(/^[a-z]{1,12}$/), { minLength: 1, maxLength: 60 });
const indent = fc.integer({ min: 0, max: 24 });

describe('breaking words into lines', () => {
  test('no line is wider than the page, and no word is lost or changed', () => {
    fc.assert(
      fc.property(words, indent, indent, (list, first, rest) => {
        const lines = wrapped(list.join(' '), first, rest);
        for (const line of lines) expect(columnsOf(line)).toBeLessThanOrEqual(PAGE_COLUMNS);
        expect(lines.flatMap((line) => line.trim().split(' '))).toEqual(list);
      }),
    );
  });

  test('the first line and those after it have their own indents', () => {
    const [first, second] = wrapped('word '.repeat(40).trim(), 2, 6);
    expect([/^ */.exec(first!)![0].length, /^ */.exec(second!)![0].length]).toEqual([2, 6]);
  });

  test('a path longer than the page stands whole on its own line', () => {
    const path = `/kit/cameras/${'x'.repeat(120)}`;
    expect(wrapped(`write ${path} here`, 2)).toEqual(['  write', `  ${path}`, '  here']);
  });
});

describe('the width of a text', () => {
  test.each([
    ['abc', 3],
    ['T5.6⅓', 5],
    ['蜂蜜', 4],
    ['e\u0301', 1],
  ])('%s takes its columns', (text, columns) => expect(columnsOf(text)).toBe(columns));

  test('padding reaches the same column whatever the script', () => {
    expect(['honey', '蜂蜜'].map((text) => columnsOf(padded(text, 12)))).toEqual([12, 12]);
  });
});

test.each([
  ['an escape sequence', 'red\u001b[31m', 'red [31m'],
  ['a carriage return', 'one\rtwo', 'one two'],
  ['a line break', 'one\r\ntwo', 'one two'],
  ['a terminal command of one character', 'a\u009b2J', 'a 2J'],
  ['a turn of the writing direction', 'abc\u202edcba', 'abc dcba'],
])('%s in somebody’s words does not reach the terminal', (_, text, line) => expect(onOneLine(text)).toBe(line));
