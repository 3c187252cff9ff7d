/** Every place held against the rules of WCAG 2.2 A and AA in all themes, wide and on a phone. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { ROOT } from '../../tools/run.mjs';
import { bringIn, dialog, faultsOf, focused, nameOf, outlineFaults, pasteInto, settled, soon } from '../access.ts';
import {
  openBrowser,
  openWindow,
  overflow_px,
  overlappingTexts,
  SIZES,
  smallTargets,
  startServer,
  type Served,
  type Theme,
} from '../browser.ts';

let served: Served;
let browser: Browser;

const AWKWARD = readFileSync(join(ROOT, 'demo/shoot.yaml'), 'utf8')
  .replace('title: Quince & Clover, day 1', 'title: Awkward')
  .replace('frameWidth: 380 mm', 'frameWidth: 380 parsnips')
  .replace(
    'rig: latch-left,\n          does: falls,\n          height: 0.6 m,',
    'rig: latch-left,\n          does: falls,',
  );

beforeAll(async () => {
  [served, browser] = await Promise.all([startServer(), openBrowser()]);
  await bringIn(served, 'awkward', AWKWARD);
  await bringIn(served, 'blank', 'longsecond: 1\nshoot: { title: Blank }\n');
});

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

interface Place {
  readonly name: string;
  readonly path: string;
  /** Its heading, where something else has a heading first. */
  readonly heading?: string;
  /** What is done there before it is judged. */
  readonly then?: (page: Page) => Promise<void>;
}

const press = async (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();

const pressKey = async (page: Page, key: string) => {
  await page.keyboard.press(key);
  await dialog(page).waitFor();
};

const LAW = '/reckoner/light-needed?stop=T8&exposureTime=1/2000+s&isoSpeed=800';

/** Half a second of a lamp at 100 Hz. */
const LIGHT_RECORD = [
  'time (s);light',
  ...Array.from({ length: 2000 }, (_, i) => `${i / 4000};${1 + 0.2 * Math.cos(Math.PI * 0.05 * i)}`),
].join('\n');

const PLACES: readonly Place[] = [
  { name: 'all shoots', path: '/shoots' },
  {
    name: 'what can be done with a shoot',
    path: '/shoots',
    then: async (page) => {
      await page.locator('.shoots-list [aria-haspopup="menu"]').first().click();
      await page.getByRole('menu').waitFor();
    },
  },
  { name: 'the Shoot', path: '/demo' },
  { name: 'an awkward Shoot', path: '/awkward' },
  { name: 'an empty Shoot', path: '/blank' },
  { name: 'a Shot', path: '/demo/shot/crown' },
  { name: 'a Shot with a profile of speeds', path: '/demo/shot/ramp' },
  { name: 'a Shot with something unreadable', path: '/awkward/shot/quinces' },
  {
    name: 'a limit explained',
    path: '/demo/shot/crown',
    then: async (page) => {
      await press(page, 'What is this: Light');
      await dialog(page).getByRole('heading', { name: 'What it is' }).waitFor();
    },
  },
  {
    name: 'where a figure comes from',
    path: '/demo/shot/crown',
    then: async (page) => {
      await press(page, /: where this comes from$/);
      await dialog(page).waitFor();
    },
  },
  { name: 'the Footage without a clip', path: '/demo/footage' },
  { name: 'the keys', path: '/demo/shot/crown', then: (page) => pressKey(page, '?') },
  {
    name: 'a Shot that flickers beyond what is played, over rate and shutter, as figures too',
    path: '/demo/shot/honey',
    then: async (page) => {
      await page.locator('.heat-map').waitFor();
      await page.getByText('As a table, in stops').click();
    },
  },
  {
    name: 'the warning before a flicker plays',
    path: '/demo/shot/pour-1',
    then: async (page) => {
      await press(page, 'See it flicker…');
      await page.getByRole('alertdialog').waitFor();
    },
  },
  {
    name: 'a light record before it is taken',
    path: '/demo/kit/lamps/spot-led',
    then: async (page) => {
      await press(page, 'Bring in a light record…');
      await pasteInto(dialog(page).getByRole('textbox', { name: 'Or paste its lines' }), LIGHT_RECORD);
      await dialog(page).getByText('Whole periods kept').waitFor();
    },
  },
  {
    name: 'a light record refused',
    path: '/demo/kit/lamps/spot-led',
    then: async (page) => {
      await press(page, 'Bring in a light record…');
      await dialog(page).getByRole('textbox', { name: 'Or paste its lines' }).fill('time,light\n0,1\n1,dark\n');
      await dialog(page).getByText('Line 3.').waitFor();
    },
  },
  {
    name: 'a Shot in time, with the form of its cues',
    path: '/demo/shot/quinces',
    then: async (page) => {
      await page.getByRole('slider').first().waitFor();
      await press(page, 'Change cues and trigger');
      await press(page, 'Roll it 4000 times by chance');
      await page.locator('.time-shares').waitFor();
    },
  },
  {
    name: 'a Shot with a cue that cannot be timed',
    path: '/awkward/shot/quinces',
    then: (page) => page.locator('.time-lacks').waitFor(),
  },
  { name: 'the Day', path: '/demo/day', heading: 'The day' },
  {
    name: 'the Day with what it is made of',
    path: '/demo/day',
    then: async (page) => {
      await page.locator('.day-rows').waitFor();
      await press(page, 'Change');
    },
  },
  { name: 'the Day of an empty shoot', path: '/blank/day' },
  { name: 'the Light', path: '/demo/light' },
  { name: 'the Light of an empty shoot', path: '/blank/light' },
  { name: 'the Kit', path: '/demo/kit' },
  { name: 'a camera', path: '/demo/kit/cameras/heron' },
  { name: 'a lamp', path: '/demo/kit/lamps/spot-led' },
  { name: 'the Kit of an empty shoot', path: '/blank/kit' },
  { name: 'the Paper', path: '/demo/paper' },
  { name: 'cue sheets', path: '/demo/paper?sheet=cues' },
  {
    name: 'the day on paper',
    path: '/demo/paper?sheet=day',
    then: (page) => page.locator('.paper-sheet').waitFor(),
  },
  { name: 'the Paper of an empty shoot', path: '/blank/paper' },
  { name: 'the History', path: '/demo/history' },
  { name: 'the Reckoner', path: '/reckoner' },
  { name: 'a law with its chart and its map', path: LAW },
  { name: 'a law beside a shoot', path: '/demo/reckoner/depth-of-field' },
  { name: 'the Gallery', path: '/gallery' },
  {
    name: 'the themes',
    path: '/demo',
    then: async (page) => {
      await press(page, 'Theme');
      await page.getByRole('menu').waitFor();
    },
  },
  { name: 'no such page', path: '/demo/no/such/page' },
  { name: 'no such shoot', path: '/nowhere' },
  { name: 'no such shot', path: '/demo/shot/nowhere' },
];

const THEMES: readonly Theme[] = ['dark', 'light', 'stage'];

async function visit(page: Page, { path, then }: Place) {
  await page.goto(served.url + path);
  await page.getByRole('heading', { level: 1 }).first().waitFor();
  await page.evaluate(() => document.fonts.ready);
  await then?.(page);
  await settled(page);
}

/** Every place is seen in two of the three themes, wide in one and on a phone in the next. */
describe.each([
  [SIZES[0], 0],
  [SIZES[2], 1],
] as const)('at %o', (size, turn) => {
  test.each(THEMES)(
    'in the %s theme no rule of WCAG 2.2 A or AA is broken, and every page has its outline',
    async (theme) => {
      const { page, context } = await openWindow(browser, { theme, size });
      const wrong: string[] = [];
      for (const [i, place] of PLACES.entries()) {
        if (THEMES[(i + turn) % THEMES.length] !== theme) continue;
        await visit(page, place);
        for (const fault of await faultsOf(page)) wrong.push(`${place.name}: ${fault}`);
        if (place.then === undefined)
          for (const fault of await outlineFaults(page)) wrong.push(`${place.name}: ${fault}`);
      }
      expect(wrong).toEqual([]);
      await context.close();
    },
    240_000,
  );
});

test('the checks see what they are for', async () => {
  const { page, context } = await openWindow(browser);
  await page.setContent(
    `<html lang="en"><title>Untitled</title><main><img src="data:,"><p style="color:#777;background:#888">faint</p>
     <h1>One</h1><h3>Three</h3><h1>Two</h1><svg><text id="t" y="20" style="fill:#ddd">pale</text></svg></main></html>`,
  );
  const faults = await faultsOf(page);
  expect(faults.map((fault) => fault.split(':')[0]).sort()).toEqual(['color-contrast', 'faint', 'image-alt']);
  expect(await outlineFaults(page)).toEqual(
    expect.arrayContaining(['2 main headings', '“Three” is a heading of level 3 under one of 1', 'no nav']),
  );
  await context.close();
});

test('on a phone the row of places scrolls by itself, keeps where one is in sight, and is wide enough for a thumb', async () => {
  const context = await browser.newContext({ viewport: SIZES[2], hasTouch: true, isMobile: true, reducedMotion: 'reduce' });
  const page = await context.newPage();
  for (const [path, current] of [['/demo', 'Shoot'], ['/demo/paper', 'Paper'], ['/demo/reckoner', 'Reckoner'], ['/shoots', 'All shoots']] as const) {
    await page.goto(served.url + path);
    const row = page.getByRole('navigation', { name: 'Places' });
    const link = row.getByRole('link', { name: current, exact: true });
    await link.waitFor();
    await page.getByRole('heading', { level: 1 }).first().waitFor();
    expect(await overflow_px(page), `${path} does not scroll sideways`).toBeLessThanOrEqual(0);
    const heights = await row.getByRole('link').evaluateAll((links) => links.map((each) => each.getBoundingClientRect().height));
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);
    expect((await row.boundingBox())!.height).toBeLessThan(2 * 44);
    const box = (await link.boundingBox())!;
    expect(box.x, `${current} begins in sight`).toBeGreaterThanOrEqual(0);
    expect(box.x + box.width, `${current} ends in sight`).toBeLessThanOrEqual(390);
  }
  await page.goto(`${served.url}/demo`);
  const standing = page.getByRole('link', { name: /^saved, revision/ });
  await standing.waitFor();
  const { height, width } = (await standing.boundingBox())!;
  expect(Math.min(height, width)).toBeGreaterThanOrEqual(44);
  await context.close();
}); // prettier-ignore

test('every part is on the page of the Gallery, which only the list of keys leads to', async () => {
  const { page, context, complaints } = await openWindow(browser);
  await page.goto(`${served.url}/demo`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.keyboard.press('?');
  await dialog(page).getByRole('link', { name: 'every part of them in one gallery' }).click();
  await page.getByRole('heading', { level: 1, name: 'Gallery' }).waitFor();
  for (const size of SIZES) {
    await page.setViewportSize(size);
    expect(await overflow_px(page)).toBeLessThanOrEqual(0);
    expect(await overlappingTexts(page)).toEqual([]);
    expect(await smallTargets(page, 24)).toEqual([]);
  }
  const width = page.getByRole('textbox', { name: 'Written', exact: true });
  const light = page.getByRole('radiogroup', { name: 'Limits of One drop, in stops' }).getByRole('radio', { name: /^Light: / });
  const before = await nameOf(light);
  await width.fill('150 mm');
  await soon(() => nameOf(light)).not.toBe(before);
  await width.press('Enter');
  await page.getByRole('button', { name: 'Undo: Written 150 mm' }).click();
  await soon(() => nameOf(light)).toBe(before);
  // What is missing leads to where it is written, and writing it makes the limit known.
  await page.locator('[data-part="UnknownLine"]').getByRole('button', { name: 'Memory of the camera' }).click();
  await soon(() => focused(page)).toBe('Not written');
  await page.keyboard.type('64 GB');
  await page.keyboard.press('Enter');
  await page.locator('[data-part="UnknownLine"]').getByRole('button', { name: 'Memory of the camera' }).waitFor({ state: 'detached' });
  expect(complaints).toEqual([]);
  await context.close();
}); // prettier-ignore
