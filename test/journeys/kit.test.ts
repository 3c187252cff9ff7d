/** The kit in a real browser: pieces added and copied, a table of formats pasted and doubted, nothing typed ever lost. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { pasteInto } from '../access.ts';
import { openBrowser, openWindow, overflow_px, overlappingTexts, SIZES, smallTargets, startServer, type Served } from '../browser.ts'; // prettier-ignore

let served: Served;
let browser: Browser;

beforeAll(async () => {
  [served, browser] = await Promise.all([startServer(), openBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const title = (page: Page) => page.getByRole('heading', { level: 1 });
const standing = (page: Page) => page.locator('.shell-standing');

const saved = async (page: Page, revision: number) =>
  expect.poll(() => standing(page).textContent(), { timeout: 15_000 }).toBe(`saved, revision ${revision}`);

const written = async (shootId: string): Promise<Record<string, never>> => {
  const reply = await fetch(`${served.url}/api/shoots/${shootId}`);
  return ((await reply.json()) as { readonly written: Record<string, never> }).written;
};

interface KitWritten {
  readonly kit: Readonly<Record<string, Readonly<Record<string, Readonly<Record<string, unknown>>>>>>;
}

const kitOf = async (shootId: string) => ((await written(shootId)) as unknown as KitWritten).kit;

const post = (path: string, body: unknown) =>
  fetch(served.url + path, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });

const KIT = `longsecond: 1
shoot: { title: Kit journey }
kit:
  cameras:
    heron: { title: Heron, pitch: 6 µm, activeArea: 4096 x 2304 }
  lenses:
    macro: { title: 65 mm macro, focalLength: 65 mm, widest: T2.8, narrowest: T22, transmittance: 82 %, closeFocus: 275 mm }
    probe: { title: Probe, availability: hire, dayPrice: 60 }
shots:
  one: { title: One drop, lens: macro }
`;

let count = 0;

/** A shoot of its own for each journey, so that none depends on another. */
const bringIn = async (text = KIT): Promise<string> => {
  count += 1;
  const reply = await post('/api/shoots', { editId: `kit-journey-bring-in-${count}`, text });
  return ((await reply.json()) as { readonly id: string }).id;
};

const openKit = async (shootId: string, path = '') => {
  const window = await openWindow(browser);
  await window.page.goto(`${served.url}/${shootId}/kit${path}`);
  await title(window.page).waitFor();
  return window;
};

test('a lens is added by keyboard alone, its figures planned with as they are typed, and undone', async () => {
  const id = await bringIn();
  const { page, context, complaints } = await openKit(id);
  await page.getByRole('button', { name: 'Add a lens' }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => field(page, 'Title').evaluate((input) => input === document.activeElement)).toBe(true);
  await page.keyboard.type('35 mm');
  await page.keyboard.press('Enter');
  await expect.poll(() => title(page).textContent()).toBe('35 mm');
  await field(page, 'Focal length').focus();
  await page.keyboard.type('35');
  await page.keyboard.press('Tab');
  await expect.poll(() => field(page, 'Focal length').inputValue()).toBe('35 mm');
  await field(page, 'Close focus').focus();
  await page.keyboard.type('11 in');
  await page.keyboard.press('Enter');
  await saved(page, 4);
  expect((await kitOf(id))['lenses']!['lens-1']).toEqual({ title: '35 mm', focalLength: '35 mm', closeFocus: '11 in' });
  // What follows is worked out at once, and the person's own units stand beside what was typed.
  await page.locator('.kit-follows').getByText('Largest picture').waitFor();
  expect(await page.locator('.kit-converted').allTextContents()).toEqual(['279 mm']);
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: /^Undo: Close focus/ }).click();
  await expect.poll(() => field(page, 'Close focus').inputValue()).toBe('');
  expect(complaints).toEqual([]);
  await context.close();
}); // prettier-ignore

test('a value that cannot be read stays as it was typed, is stored, and says what would fit', async () => {
  const id = await bringIn();
  const { page, context } = await openKit(id, '/lenses/macro');
  await field(page, 'Close focus').fill('three parsnips');
  await field(page, 'Close focus').press('Enter');
  await saved(page, 1);
  await page.getByRole('alert').filter({ hasText: 'parsnips' }).waitFor();
  expect((await kitOf(id))['lenses']!['macro']!['closeFocus']).toBe('three parsnips');
  await page.reload();
  await expect.poll(() => field(page, 'Close focus').inputValue()).toBe('three parsnips');
  await page.getByRole('link', { name: /65 mm macro.*1 unread/ }).waitFor();
  // An address that ends in a field puts the cursor there.
  await page.goto('about:blank');
  await page.goto(`${served.url}/${id}/kit/lenses/macro#at.kit.lenses.macro.closeFocus`);
  await expect
    .poll(() => field(page, 'Close focus').evaluate((input) => input === document.activeElement), { timeout: 15_000 })
    .toBe(true);
  await context.close();
});

const TABLE = `Mode;Resolution (H × V);Max. fps;Bits;Price
Full;4096 × 2304;1.062;12;a
UHD;3840x2160;1.131;12;b

Wide;4096x1720;1.412;12;c
HD;1920x1080;2.212;12;d
Strip;2048x720;3.246;12;e
Half;2048x1152;2.454;12;f
`;

test('a table is pasted into the grid, previewed, put in as one edit, and the figure that is off is named', async () => {
  const id = await bringIn();
  const { page, context, complaints } = await openKit(id, '/cameras/heron');
  await pasteInto(page.getByRole('textbox', { name: 'New format: title' }), TABLE);
  const sheet = page.getByRole('dialog', { name: 'Paste a table of formats' });
  await sheet.getByText('6 added').waitFor();
  await sheet.getByText('Left out, as no column here means it: Price.').waitFor();
  expect(await sheet.getByRole('row').count()).toBe(7);
  await sheet.getByRole('button', { name: 'Put it in' }).click();
  await saved(page, 1);
  const { modes } = (await kitOf(id))['cameras']!['heron']!;
  expect(Object.values(modes as Record<string, unknown>)[0]).toEqual({
    title: 'Full',
    pixels: '4096 x 2304',
    rate: '1062 fps',
    bits: 12,
  });
  await page.getByText('2048 × 1152 is listed 18 % faster than its neighbours: check the figure.').waitFor();
  expect(await page.locator('.misfit.is-off').count()).toBe(1);

  const rate = page.getByRole('textbox', { name: 'Format 6: highest rate' });
  await rate.fill('2079 fps');
  await rate.press('Enter');
  await saved(page, 2);
  await expect.poll(() => page.locator('.misfit.is-off').count()).toBe(0);
  // Enter went down to the line for the next format, in the same column.
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('New format: highest rate');

  await page.getByLabel('What would').fill('900');
  await page.getByText('worked out, not published').waitFor();
  await page.getByRole('button', { name: 'Add it as a format' }).click();
  await saved(page, 3);
  expect(await page.getByRole('textbox', { name: 'Format 7: title' }).inputValue()).toBe('4096 × 900, worked out');
  expect(await field(page, 'Note').inputValue()).toMatch(/worked out from the row time .* not published/);

  await page.getByRole('button', { name: /^Undo: Format added/ }).click();
  await page.getByRole('button', { name: /^Undo: Highest rate/ }).click();
  await page.getByRole('button', { name: /^Undo: Table of formats/ }).click();
  await expect.poll(async () => (await kitOf(id))['cameras']!['heron']!['modes']).toBeUndefined();
  expect(complaints).toEqual([]);
  await context.close();
}); // prettier-ignore

test('the grid is written by keyboard: Tab goes along, a new line begins by itself, arrows go about', async () => {
  const id = await bringIn();
  const { page, context } = await openKit(id, '/cameras/heron');
  const at = async (label: string) =>
    expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe(label);
  await page.getByRole('textbox', { name: 'New format: title' }).focus();
  await page.keyboard.type('Full');
  await page.keyboard.press('Tab');
  await at('Format 1: pixels');
  await page.keyboard.type('4096 x 2304');
  await page.keyboard.press('ArrowRight');
  await at('Format 1: highest rate');
  await page.keyboard.type('fast');
  await page.keyboard.press('Enter');
  await at('New format: highest rate');
  await saved(page, 3);
  await page.getByText('Format 1, highest rate: Found "fast"').waitFor();
  await page.keyboard.press('ArrowUp');
  await at('Format 1: highest rate');
  await page.keyboard.type('1062');
  await page.keyboard.press('ArrowDown');
  await saved(page, 4);
  const { modes } = (await kitOf(id))['cameras']!['heron']!;
  expect(Object.values(modes as Record<string, unknown>)).toEqual([
    { title: 'Full', pixels: '4096 x 2304', rate: '1062' },
  ]);
  await context.close();
});

test('taking out a lens that a shot fixes names the shot first, and undo brings both back', async () => {
  const id = await bringIn();
  const before = await written(id);
  const { page, context } = await openKit(id, '/lenses/macro');
  await page.getByText('In use: One drop.').waitFor();
  await page.getByRole('button', { name: 'Take out' }).click();
  const sheet = page.getByRole('dialog', { name: 'Take out 65 mm macro?' });
  await sheet.getByText('One drop').waitFor();
  await sheet.getByRole('button', { name: 'Keep it' }).click();
  expect(await written(id)).toEqual(before);
  await page.getByRole('button', { name: 'Take out' }).click();
  await sheet.getByRole('button', { name: 'Take it out' }).click();
  await saved(page, 1);
  expect(Object.keys((await kitOf(id))['lenses']!)).toEqual(['probe']);
  await page.locator('.notice').getByRole('button', { name: 'Undo' }).click();
  await saved(page, 2);
  expect(await written(id)).toEqual(before);
  await context.close();
});

test('a lens is copied from another shoot, and a newer version there is offered and taken', async () => {
  const [there, here] = [await bringIn(), await bringIn('longsecond: 1\nshoot: { title: Here }\nkit: {}\n')];
  await post(`/api/shoots/${there}/edits`, {
    editId: 'kit-journey-title-there',
    revision: 0,
    summary: 'Title',
    patch: [{ op: 'replace', path: '/shoot/title', value: 'There' }],
  });
  const { page, context } = await openKit(here);
  await page.getByRole('heading', { name: 'Nothing to shoot with yet' }).waitFor();
  await page.getByRole('link', { name: 'Lenses none' }).click();
  await page.getByRole('button', { name: 'Copy from another shoot…' }).click();
  const sheet = page.getByRole('dialog');
  await sheet.getByLabel('Which shoot').selectOption({ label: 'There' });
  await sheet.getByRole('button', { name: 'Copy 65 mm macro' }).click();
  await saved(page, 1);
  expect((await kitOf(here))['lenses']!['macro']).toMatchObject({
    focalLength: '65 mm',
    origin: `${there}/lenses/macro@1`,
  });
  await post(`/api/shoots/${there}/edits`, {
    editId: 'kit-journey-newer-there',
    revision: 1,
    summary: 'Close focus measured',
    patch: [{ op: 'replace', path: '/kit/lenses/macro/closeFocus', value: '281 mm' }],
  });
  await page.reload();
  await page.getByRole('heading', { name: 'A newer version is in There' }).waitFor();
  expect(await page.locator('.kit-newer tbody tr').allTextContents()).toEqual(['Close focus275 mm281 mm']);
  await page.getByRole('button', { name: 'Take it' }).click();
  await saved(page, 2);
  expect((await kitOf(here))['lenses']!['macro']).toMatchObject({
    closeFocus: '281 mm',
    origin: `${there}/lenses/macro@2`,
  });
  await expect.poll(() => page.locator('.kit-newer').count()).toBe(0);
  await context.close();
});

test('units chosen by a person hold in every place of this browser, and change nothing that is written', async () => {
  const id = await bringIn();
  const { page, context } = await openKit(id);
  const macro = page.getByRole('link', { name: /^65 mm macro/ });
  await macro.getByText('from 275 mm').waitFor();
  await page.getByLabel('Units shown to you').selectOption('imperial');
  await macro.getByText('from 10.8 in').waitFor();
  await macro.getByText('65 mm', { exact: true }).first().waitFor();
  await page.reload();
  await macro.getByText('from 10.8 in').waitFor();
  expect(await standing(page).textContent()).toBe('saved, revision 0');
  await context.close();
});

test.each(SIZES)(
  'hire is summed, and nothing sticks out, overlaps or is too small to press at $width × $height',
  async (size) => {
    const id = await bringIn();
    const { page, context, complaints } = await openWindow(browser, { size });
    for (const path of ['', '/lenses', '/lenses/macro', '/cameras/heron']) {
      await page.goto(`${served.url}/${id}/kit${path}`);
      await title(page).waitFor();
      await page.evaluate(() => document.fonts.ready);
      if (path === '') await page.getByText('One piece to hire, 60 a day.').waitFor();
      expect(await overflow_px(page)).toBeLessThanOrEqual(0);
      expect(await overlappingTexts(page)).toEqual([]);
      expect(await smallTargets(page, 24)).toEqual([]);
    }
    expect(complaints).toEqual([]);
    await context.close();
  },
);
