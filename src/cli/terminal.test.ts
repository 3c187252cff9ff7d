import { describe, expect, test } from 'vitest';
import { columns, openTerminal } from './terminal.ts';

const COLOURED = '\u001b[31mshort\u001b[39m';

describe('colour', () => {
  const redOn = (isTTY: boolean, env: Readonly<Record<string, string>>) => {
    const stream = { isTTY, write: () => true };
    return openTerminal(stream, { ...stream, isTTY: false }, env).outColour.red('short');
  };

  test('is used on a terminal', () => {
    expect(redOn(true, {})).toBe(COLOURED);
  });

  test.each([
    ['where the output is no terminal', false, {}],
    ['where NO_COLOR is set', true, { NO_COLOR: '1' }],
    ['on a terminal that calls itself dumb', true, { TERM: 'dumb' }],
  ])('is not used %s', (_, isTTY, env) => {
    expect(redOn(isTTY, env)).toBe('short');
  });

  test('is not turned off by an empty NO_COLOR', () => {
    expect(redOn(true, { NO_COLOR: '' })).toBe(COLOURED);
  });

  test('is decided for each stream by itself', () => {
    const write = () => true;
    const terminal = openTerminal({ isTTY: false, write }, { isTTY: true, write }, {});
    expect([terminal.outColour.red('short'), terminal.errColour.red('short')]).toEqual(['short', COLOURED]);
  });
});

test('columns line up on the longest entry and leave no blanks at the end of a line', () => {
  expect(
    columns([
      ['a', 'one'],
      ['long', 'two'],
      ['b', ''],
    ]),
  ).toBe('  a      one\n  long   two\n  b\n');
});
