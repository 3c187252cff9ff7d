import { expect, test } from 'vitest';
import { sayList } from './sayList.ts';

test.each([
  [[], ''],
  [['mode'], 'mode'],
  [['mode', 'shutter'], 'mode and shutter'],
  [['lens', 'stop', 'light'], 'lens, stop and light'],
])('%j is said as "%s"', (words, said) => {
  expect(sayList(words)).toBe(said);
});
