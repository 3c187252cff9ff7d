/** The Shoot and the list of shoots in a real browser: order, board, problems and their mends, files in and out. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { ROOT } from '../../tools/run.mjs';
import { openBrowser, openWindow, startServer, type Served, type Window } from '../browser.ts';

const DEMO = readFileSync(join(ROOT, 'demo/shoot.yaml'), 'utf8');

let served: Served;
let browser: Browser;

beforeAll(async () => {
  [served, browser] = await Promise.all([startServer(), openBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

const file = (text: string) => ({ name: 'shoot.yaml', mimeType: 'text/yaml', buffer: Buffer.from(text) });

/** Brings a text in as a person would, through the list of shoots. */
const bringIn = async (text: string): Promise<Window> => {
  const window = await openWindow(browser);
  await window.page.goto(`${served.url}/shoots`);
  await window.page.getByLabel('Choose a file').setInputFiles(file(text));
  return window;
};

const shotTitles = (page: Page) => page.locator('.shot-row-title').allTextContents();

const textOf = async (page: Page) =>
  (await fetch(`${served.url}/api/shoots/${new URL(page.url()).pathname.slice(1)}/text`)).text();

test('where there is one shoot, the bare address leads into it', async () => {
  const alone = await startServer();
  const { page, context, complaints } = await openWindow(browser);
  await page.goto(alone.url);
  await page.getByRole('heading', { level: 1, name: 'Quince & Clover, day 1' }).waitFor();
  expect(new URL(page.url()).pathname).toBe('/demo');
  expect(complaints).toEqual([]);
  await context.close();
  await alone.stop();
});

test('the day is seen at a glance: every shot with its worst limit, and the film adds up', async () => {
  const { page, context, complaints } = await bringIn(DEMO);
  const rows = page.locator('.shot-row');
  await expect.poll(() => rows.count()).toBe(11);
  // Every row binds on something, and says it in words.
  for (const words of await page.locator('.shot-row-binds').allTextContents())
    expect(words).toMatch(/short|tight|spare|known/);
  expect(await page.locator('.film-length').textContent()).toBe('54 s of 54 s (Film, wide): it fits');
  await page
    .getByRole('radiogroup', { name: 'Limits of the whole shoot, in stops' })
    .getByRole('radio', { name: /^Storage/ })
    .waitFor();
  expect(complaints).toEqual([]);
  await context.close();
});

test('shots change places by keyboard, the focus goes along, and undo puts them back', async () => {
  const { page, context } = await bringIn(DEMO);
  await expect.poll(() => shotTitles(page)).toHaveLength(11);
  const before = await shotTitles(page);
  const down = page.getByRole('button', { name: 'Move Pour into the glass down' });
  await down.focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => shotTitles(page)).toEqual([before[1], before[0], ...before.slice(2)]);
  await expect.poll(() => down.evaluate((button) => button === document.activeElement)).toBe(true);
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await shotTitles(page)).indexOf('Pour into the glass')).toBe(2);
  await expect.poll(() => page.locator('.shell-standing').textContent()).toBe('saved, revision 2');
  expect(await textOf(page)).toContain('shots: [crown, quinces, pour-1, honey, ramp, pour-plate');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect.poll(() => shotTitles(page)).toEqual(before);
  await expect.poll(() => textOf(page)).toBe(DEMO);
  await context.close();
});

test('a shot is copied, taken out and brought back', async () => {
  const { page, context } = await bringIn(DEMO);
  await page.getByRole('button', { name: 'More for Honey coils' }).click();
  await page.getByRole('menuitem', { name: 'Copy' }).click();
  await expect.poll(() => shotTitles(page)).toContain('Honey coils, again');
  await page.getByRole('button', { name: 'More for Honey coils', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Take out' }).click();
  await expect.poll(() => shotTitles(page)).not.toContain('Honey coils');
  await page.locator('.notice').getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => shotTitles(page)).toContain('Honey coils');
  await context.close();
});

test('a frame of the board is written, lengthened and served, and the film says by how much it is too long', async () => {
  const { page, context, complaints } = await bringIn(DEMO);
  await page.getByRole('button', { name: 'Add a frame' }).click();
  const sheet = page.getByRole('dialog');
  await sheet.getByRole('textbox', { name: 'Title' }).fill('The bottle');
  await sheet.getByRole('textbox', { name: 'Title' }).press('Enter');
  await sheet.getByRole('textbox', { name: 'Seconds in the film' }).fill('2');
  await sheet.getByRole('textbox', { name: 'Seconds in the film' }).press('Enter');
  await expect.poll(() => sheet.getByRole('textbox', { name: 'Seconds in the film' }).inputValue()).toBe('2 s');
  await sheet.getByRole('checkbox', { name: /Honey coils/ }).check();
  await page.keyboard.press('Escape');
  await expect.poll(() => page.locator('.film-length').textContent()).toBe('56 s of 54 s (Film, wide): 2 s too long');
  const frame = page.locator('.frame', { hasText: 'The bottle' });
  await expect.poll(() => frame.getByRole('link').textContent()).toMatch(/shot 4/);
  await expect.poll(() => page.locator('.shell-standing').textContent()).toMatch(/^saved/);
  expect(complaints).toEqual([]);
  await context.close();
});

test('a file that is no shoot is refused with the place and what to do, and nothing is stored', async () => {
  const countOf = async () =>
    ((await (await fetch(`${served.url}/api/shoots`)).json()) as { shoots: unknown[] }).shoots.length;
  const before = await countOf();
  const { page, context } = await bringIn('longsecond: 1\nshots:\n  pour: { title: Pour\n');
  const alert = page.getByRole('alert');
  await alert.waitFor();
  expect(await alert.textContent()).toMatch(/Not brought in/);
  expect(await alert.textContent()).toMatch(/line \d/i);
  expect(await countOf()).toBe(before);
  // Mended, the same file goes in.
  await page.getByLabel('Choose a file').setInputFiles(file('longsecond: 1\nshots:\n  pour: { title: Pour }\n'));
  await expect.poll(() => shotTitles(page)).toEqual(['Pour']);
  await context.close();
});

test('what cannot be read is listed with its mend: by one press, or typed where it is told', async () => {
  const { page, context, complaints } = await bringIn(
    DEMO.replace('frameWidth: 80 mm', 'frameWith: 80 mm').replace('depth: 3 mm', 'depth: 3 parsnips'),
  );
  await page.getByRole('heading', { name: '2 things cannot be read' }).waitFor();
  await page.getByRole('button', { name: 'Call it frameWidth' }).click();
  await page.getByRole('heading', { name: 'One thing cannot be read' }).waitFor();
  const field = page.getByRole('textbox', { name: 'Write instead' });
  await field.fill('3 mm');
  // It reads, and the line stays until the person is done with it.
  expect(await field.count()).toBe(1);
  await field.press('Enter');
  await page.locator('h1').click();
  await expect.poll(() => page.locator('.problems').count()).toBe(0);
  const text = await textOf(page);
  expect(text).toContain('frameWidth: 80 mm');
  expect(text).toContain('depth: 3 mm');
  expect(text).toContain('# the panel should read bright, not white');
  expect(complaints).toEqual([]);
  await context.close();
});

test('a shoot begins blank and says how to start; its first shot opens', async () => {
  const { page, context, complaints } = await openWindow(browser);
  await page.goto(`${served.url}/shoots`);
  await page.getByLabel('Title').fill('Tea: hot & cold');
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByRole('heading', { name: 'Nothing to shoot yet' }).waitFor();
  await page.getByRole('button', { name: 'Write the first shot' }).click();
  await page.getByRole('heading', { level: 1, name: 'New shot' }).waitFor();
  expect(new URL(page.url()).pathname).toBe('/tea-hot-cold/shot/shot-1');
  expect(complaints).toEqual([]);
  await context.close();
});

test('a shoot begins with the kit of another, and its first shot finds an answer from it', async () => {
  const { page, context } = await openWindow(browser);
  await page.goto(`${served.url}/shoots`);
  await page.getByLabel('Title').fill('Day 2');
  await page.getByLabel('Kit, light and defaults').selectOption('demo');
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByRole('button', { name: 'Write the first shot' }).click();
  for (const [name, text] of [
    ['On screen', '5 s'],
    ['Action lasts', '100 ms'],
    ['Frame width', '200 mm'],
  ] as const) {
    const field = page.getByRole('textbox', { name, exact: true });
    await field.fill(text);
    await field.press('Enter');
  }
  await page
    .getByRole('radiogroup')
    .getByRole('radio', { name: /^Frame rate: / })
    .waitFor();
  await context.close();
});

test('the text comes back as it went in, byte for byte', async () => {
  const { page, context } = await bringIn(DEMO);
  const link = page.getByRole('link', { name: 'Download YAML' });
  await link.waitFor();
  const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
  expect(download.suggestedFilename()).toMatch(/\.yaml$/);
  expect(readFileSync(await download.path(), 'utf8')).toBe(DEMO);
  await context.close();
});

test('an address that leads nowhere says so and leads back', async () => {
  const { page, context } = await openWindow(browser);
  await page.goto(`${served.url}/no-such-shoot`);
  await page.getByRole('heading', { name: 'There is no such shoot here' }).waitFor();
  await page.getByRole('button', { name: 'All shoots' }).click();
  await page.getByRole('heading', { level: 1, name: 'Shoots' }).waitFor();
  await context.close();
});
