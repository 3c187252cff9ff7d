/** What can be judged of the looks without eyes: nothing sticks out, nothing lies on anything else, nothing complains. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Browser } from 'playwright-core';
import { ROOT } from '../../tools/run.mjs';
import {
  openBrowser,
  openWindow,
  overflow_px,
  overlappingTexts,
  SIZES,
  smallTargets,
  startServer,
  type Served,
} from '../browser.ts';

let served: Served;
let browser: Browser;

/** Long words, missing figures and slips: what a real shoot has and a demo does not. */
const AWKWARD = readFileSync(join(ROOT, 'demo/shoot.yaml'), 'utf8')
  .replace('title: Quince & Clover, day 1', 'title: Awkward')
  .replace(
    'title: One drop, the crown',
    'title: The very long name of a drop that somebody could not bring themselves to shorten',
  )
  .replace('title: Honey coils', 'title: Pneumonoultramicroscopicsilicovolcanoconiosis')
  .replace('frameWidth: 380 mm', 'frameWidth: 380 parsnips')
  .replace("lamp: glow-panel, at: '0 m, 0.55 m, 0.05 m'", 'lamp: glow-panel');

beforeAll(async () => {
  [served, browser] = await Promise.all([startServer(), openBrowser()]);
  await fetch(`${served.url}/api/shoots`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ editId: 'looks-awkward', id: 'awkward', text: AWKWARD }),
  });
});

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

/** What is seen of each, and what stands there once it can be judged. */
const PLACES: readonly (readonly [name: string, path: string, until?: string])[] = [
  ['the list of shoots', '/shoots'],
  ['the Shoot', '/demo'],
  ['a Shot', '/demo/shot/crown'],
  ['a Shot with a profile of speeds', '/demo/shot/ramp'],
  ['the Day', '/demo/day', '.day-rows'],
  ['the Footage', '/demo/footage'],
  ['a Shot in time', '/demo/shot/mill', '.time-strip'],
  ['an awkward Shoot', '/awkward'],
  ['a Day with long names', '/awkward/day', '.day-rows'],
  ['a Shot with something unreadable', '/awkward/shot/quinces'],
  ['a Shot with a long name', '/awkward/shot/crown'],
];

/** WCAG 2.2, target size (minimum). */
const LEAST_TARGET_px = 24;

describe.each(SIZES)('at $width × $height', (size) => {
  test.each(['dark', 'light'] as const)(
    'in the %s theme nothing sticks out, overlaps, is too small to press or complains',
    async (theme) => {
      const { page, context, complaints } = await openWindow(browser, { theme, size });
      const wrong: string[] = [];
      for (const [name, path, until = 'h1'] of PLACES) {
        await page.goto(served.url + path);
        await page.locator(until).first().waitFor();
        await page.evaluate(() => document.fonts.ready);
        const over_px = await overflow_px(page);
        if (over_px > 0) wrong.push(`${name} is ${over_px} px too wide`);
        for (const pair of await overlappingTexts(page)) wrong.push(`${name}: ${pair} overlap`);
        for (const small of await smallTargets(page, LEAST_TARGET_px)) wrong.push(`${name}: ${small}`);
      }
      expect(wrong).toEqual([]);
      expect(complaints).toEqual([]);
      await context.close();
    },
  );
});

test('the checks see what they are for: texts on one another, but not one that is covered', async () => {
  const { page, context } = await openWindow(browser);
  const at = (top: number, text: string, more = '') =>
    `<p style="position:absolute;margin:0;left:20px;top:${top}px;${more}">${text}</p>`;
  await page.setContent(
    `${at(20, 'lower')}${at(24, 'upper')}${at(120, 'hidden')}${at(124, 'covering', 'background:white')}${at(220, '<button style="font-size:8px;padding:0;border:0">x</button>')}`,
  );
  expect(await overlappingTexts(page)).toEqual(['“lower” and “upper”']);
  expect(await smallTargets(page, LEAST_TARGET_px)).toHaveLength(1);
  await page.setContent('<div style="width:2000px">wide</div>');
  expect(await overflow_px(page)).toBeGreaterThan(0);
  await context.close();
});
