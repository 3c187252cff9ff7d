/** What can be judged of the looks without eyes: nothing sticks out, nothing lies on anything else, nothing complains. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Browser } from 'playwright-core';
import { ROOT } from '../../tools/run.mjs';
import { openBrowser, openWindow, overflow_px, overlappingTexts, SIZES, startServer, type Served } from '../browser.ts';

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
  .replace('luminance: 38 kcd/m²', '# no reading');

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

const PLACES = [
  ['the list of shoots', '/shoots'],
  ['the Shoot', '/demo'],
  ['a Shot', '/demo/shot/crown'],
  ['a Shot with a profile of speeds', '/demo/shot/ramp'],
  ['an awkward Shoot', '/awkward'],
  ['a Shot with something unreadable', '/awkward/shot/quinces'],
  ['a Shot with a long name', '/awkward/shot/crown'],
] as const;

describe.each(SIZES)('at $width × $height', (size) => {
  test.each(['dark', 'light', 'stage'] as const)(
    'in the %s theme nothing sticks out, overlaps or complains',
    async (theme) => {
      const { page, context, complaints } = await openWindow(browser, { theme, size });
      const wrong: string[] = [];
      for (const [name, path] of PLACES) {
        await page.goto(served.url + path);
        await page.getByRole('heading', { level: 1 }).waitFor();
        await page.evaluate(() => document.fonts.ready);
        const over_px = await overflow_px(page);
        if (over_px > 0) wrong.push(`${name} is ${over_px} px too wide`);
        for (const pair of await overlappingTexts(page)) wrong.push(`${name}: ${pair} overlap`);
      }
      expect(wrong).toEqual([]);
      expect(complaints).toEqual([]);
      await context.close();
    },
  );
});
