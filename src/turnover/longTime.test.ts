import { expect, test } from 'vitest';
import { longTime } from './longTime.ts';

test.each([
  [6.5, '6.5 s'],
  [59.4, '59.4 s'],
  [59.6, '1 min'],
  [101.4, '1 min 41 s'],
  [3599.7, '1 h'],
  [3629, '1 h'],
  [7525, '2 h 5 min'],
  [7171, '2 h'],
])('%d seconds is said as %s', (time_s, said) => {
  expect(
    longTime(time_s)
      .map(({ number, unit }) => `${number} ${unit}`)
      .join(' '),
  ).toBe(said);
});
