import { expect, test } from 'vitest';
import { pageRule } from './pageRule.ts';

test.each([
  ['a4', 'size: A4 portrait'],
  ['letter', 'size: letter portrait'],
] as const)('%s is asked of the printer by its name', (size, words) => {
  expect(pageRule({ size, says: 'Title' })).toContain(words);
});

test('pages number themselves n of N', () => {
  expect(pageRule({ size: 'a4', says: '' })).toContain('counter(page) " of " counter(pages)');
});

test('a title cannot end the string that it stands in, nor the style', () => {
  const rule = pageRule({ size: 'a4', says: 'a"; } </style> \\ z' });
  expect(rule).toContain('content: "a\\"; }  /style> \\\\ z";');
});
