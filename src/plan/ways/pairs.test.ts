/** Two changes together, where no single one closes a margin. */
import { expect, test } from 'vitest';
import { changed, readSound, SMALL } from '../../../test/shoots.ts';
import { applyPatch } from '../../document/patch.ts';
import type { Written } from '../../document/written.ts';
import { planShot } from '../planShot.ts';
import { MOST_TRIED, waysFor } from './ways.ts';

/** The film lacks a little for what is held back, another deliverable lacks much: neither change alone is enough. */
const TWICE_SHORT: Readonly<Record<string, Written>> = {
  '/shots/one/reframe': '20 %',
  '/deliverables/big': { title: 'Big', rate: 25, pixels: '3840 x 2160' },
};

test('where no single change closes a margin, two together do, planned again in full', () => {
  const written = changed(SMALL, TWICE_SHORT);
  const ways = waysFor(readSound(written), written, 'one', 'picture-size');
  const singles = ways.filter(({ move }) => !move.includes(','));
  const pairs = ways.filter(({ move }) => move.includes(','));
  expect(singles.some(({ closes }) => closes)).toBe(false);
  expect(pairs.map(({ title }) => title)).toContain(
    'Leave Big out of this shot, and hold nothing back for repositioning',
  );
  for (const { closes, patch, margins } of pairs) {
    expect(closes).toBe(true);
    expect(planShot(readSound(applyPatch(written, patch)), 'one', 1).margins).toEqual(margins);
  }
});

test('pairs come before single changes that only help, and singles and pairs together stay within the bound', () => {
  const written = changed(SMALL, TWICE_SHORT);
  let planned = 0;
  const ways = waysFor(readSound(written), written, 'one', 'picture-size', { onProgress: () => (planned += 1) });
  expect(ways[0]!.closes).toBe(true);
  expect(ways.at(-1)!.closes).toBe(false);
  expect(planned).toBeLessThanOrEqual(MOST_TRIED);
});

test('no pairs are tried where one change is enough', () => {
  const written = changed(SMALL, { '/lighting/key/illuminance': '2 klx' });
  const ways = waysFor(readSound(written), written, 'one', 'light');
  expect(ways.length).toBeGreaterThan(0);
  expect(ways.filter(({ move }) => move.includes(','))).toEqual([]);
});
