import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { measuredJitterRatio } from './usual.ts';

/** Values of the chi-square distribution from scipy, as [probability, degrees of freedom, value]. */
const { chiSquare } = JSON.parse(
  readFileSync(new URL('../../../test/footage/fewTakesCheck.json', import.meta.url), 'utf8'),
) as { readonly chiSquare: readonly (readonly [number, number, number])[] };

/** How far below the true one a tenth of all standard deviations of normal values lies, over the true one. */
const strays = chiSquare.flatMap(([p, freedom, value]) =>
  p === 0.1 && freedom >= 4 ? [{ count: freedom + 1, by: 1 - Math.sqrt(value / freedom) }] : [],
);

test('a jitter is as near as so many firings tell it', () => {
  expect(strays.map(({ count }) => count)).toEqual([5, 8, 13, 30, 102]);
  for (const { count, by } of strays)
    expect(Math.abs(measuredJitterRatio(count) / by - 1), `${count}`).toBeLessThan(0.08);
});

test('where nobody says by how many it is taken as told by thirty, and one tells nothing', () => {
  expect(measuredJitterRatio()).toBe(measuredJitterRatio(30));
  expect(measuredJitterRatio(30)).toBeCloseTo(0.17, 2);
  expect(measuredJitterRatio(1)).toBe(1);
  expect(measuredJitterRatio(2)).toBeLessThan(1);
});
