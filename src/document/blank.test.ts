import { describe, expect, test } from 'vitest';
import { blankShootText } from './blank.ts';
import { readShootText } from './text.ts';
import { editText } from './textEdit.ts';

describe('a blank document', () => {
  test.each([
    ['Honey and ice', 'Honey and ice'],
    ['Colon: and #hash', 'Colon: and #hash'],
    ['12', '12'],
    ['"quoted" \'title\'', '"quoted" \'title\''],
    ['  two\nlines\t ', 'two lines'],
    ['', ''],
    ['x'.repeat(300), 'x'.repeat(200)],
  ])('%j is titled %j and has no problem', (given, title) => {
    const { shoot, problems } = readShootText(blankShootText(given));
    expect(problems).toEqual([]);
    expect(shoot.shoot.title).toBe(title);
    expect(shoot.shots).toEqual({});
  });

  test('with its comments taken for text is a shoot without a problem', () => {
    const text = blankShootText('x').replace(/^# (?= *[a-z]\S*:(?: |$))/gm, '');
    const { shoot, problems } = readShootText(text);
    expect(problems).toEqual([]);
    expect(shoot.shots['pour-1']).toMatchObject({ screenTime_s: 3.5, frameWidth_m: 0.18, lighting: 'key' });
    expect(shoot.kit.cameras['main']?.modes['full']?.maxRate_fps).toBe(938);
  });

  test('takes its first shot at the end, and keeps its comments', () => {
    const blank = blankShootText('x');
    const { text } = editText(blank, [{ op: 'add', path: '/shots', value: { 'pour-1': { title: 'Pour' } } }]);
    expect(text).toBe(`${blank}shots:\n  pour-1:\n    title: Pour\n`);
  });
});
