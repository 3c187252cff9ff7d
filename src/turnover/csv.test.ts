import fc from 'fast-check';
import papaparse from 'papaparse';
import { describe, expect, test } from 'vitest';
import { csvCell, csvText } from './csv.ts';

describe('a cell', () => {
  // RFC 4180, section 2, rules 5 to 7.
  test.each([
    ['a,b', '"a,b"'],
    ['say "go"', '"say ""go"""'],
    ['two\r\nlines', '"two\r\nlines"'],
    ['plain', 'plain'],
    ['', ''],
  ])('%j is written %j', (text, cell) => {
    expect(csvCell(text)).toBe(cell);
  });

  test.each(['=1+1', '+1', '-1', '@name', '\tx'])('%j is no formula for a spreadsheet', (text) => {
    expect(csvCell(text)).toMatch(/^"?'/);
  });

  test.each([
    [-0.3317, '-0.3317'],
    [1 / 3, '0.333333333'],
    [1e-7, '1e-7'],
    [NaN, ''],
    [Infinity, ''],
    [undefined, ''],
    [true, 'yes'],
    [false, 'no'],
  ])('%j is written %j', (value, cell) => {
    expect(csvCell(value)).toBe(cell);
  });
});

test('a table has a header and lines that end in CR LF', () => {
  const columns = [
    { name: 'cue', of: ({ cue }: { cue: string; at_s: number }) => cue },
    { name: 'at_s', of: ({ at_s }: { cue: string; at_s: number }) => at_s },
  ];
  expect(csvText(columns, [{ cue: 'Left, then right', at_s: -0.1 }])).toBe('cue,at_s\r\n"Left, then right",-0.1\r\n');
});

test('any text comes back from a reader as it was, formulas with their apostrophe', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.string(), fc.string()), { minLength: 1 }), (rows) => {
      const columns = [0, 1].map((i) => ({ name: `text${i}`, of: (row: [string, string]) => row[i] }));
      const { data } = papaparse.parse<string[]>(csvText(columns, rows), { delimiter: ',', newline: '\r\n' });
      const read = data.slice(1, rows.length + 1).map((cells) => cells.map((cell) => cell.replace(/^'(?=[=+\-@\t\r])/, '')));
      expect(read).toEqual(rows);
    }),
  );
}); // prettier-ignore
