/** One shot from end to end in a real browser: what is typed plans at once, what is short is closed, nothing is lost. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { openBrowser, openWindow, startServer, type Served } from '../browser.ts';

let served: Served;
let browser: Browser;

beforeAll(async () => {
  [served, browser] = await Promise.all([startServer(), openBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

const chart = (page: Page) => page.getByRole('radiogroup');

/** Every known margin as it is said: "Light: short by 1.8 stops, 62 klx for 221 klx". */
const margins = async (page: Page): Promise<ReadonlyMap<string, string>> => {
  const said = await chart(page)
    .getByRole('radio')
    .evaluateAll((lines) => lines.map((line) => line.getAttribute('aria-label') ?? ''));
  return new Map(said.map((line) => [line.split(':')[0]!, line] as const));
};

const limit = (page: Page, name: string) => chart(page).getByRole('radio', { name: new RegExp(`^${name}: `) });

const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

const standing = (page: Page) => page.locator('.shell-standing');

const journal = async (shootId: string) => {
  const reply = await fetch(`${served.url}/api/shoots/${shootId}/journal`);
  return (await reply.json()) as { readonly rows: readonly { readonly kind: string; readonly summary: string }[] };
};

/** A shoot of its own for each journey, so that none depends on another. */
const bringIn = async (): Promise<string> => {
  const text = await (await fetch(`${served.url}/api/shoots/demo/text`)).text();
  const editId = `journey-${Math.random().toString(36).slice(2)}x`;
  const reply = await fetch(`${served.url}/api/shoots`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ editId, text }),
  });
  return ((await reply.json()) as { readonly id: string }).id;
};

const openShot = async (shotId: string, shootId?: string) => {
  const id = shootId ?? (await bringIn());
  const window = await openWindow(browser);
  await window.page.goto(`${served.url}/${id}/shot/${shotId}`);
  await chart(window.page).waitFor();
  return { ...window, shootId: id };
};

test('typing into a field moves the margins at once, and Enter keeps it', async () => {
  const { page, context, complaints, shootId } = await openShot('crown');
  const before = await margins(page);
  const width = field(page, 'Frame width');
  await width.fill('40 mm');
  const during = await margins(page);
  const moved = [...before].filter(([name, line]) => during.get(name) !== line).map(([name]) => name);
  // A tighter frame is a larger picture from nearer: the lens moves out and in, and its light spreads.
  expect(moved).toEqual(expect.arrayContaining(['Light', 'Depth', 'Diffraction', 'Clearance']));
  expect(moved.length).toBeGreaterThan(5);
  expect((await journal(shootId)).rows).toHaveLength(0);
  await width.press('Enter');
  await expect.poll(() => standing(page).textContent()).toBe('saved, revision 1');
  expect((await journal(shootId)).rows.map(({ summary }) => summary)).toEqual(['Frame width 40 mm']);
  expect(complaints).toEqual([]);
  await context.close();
});

test('Escape takes back what was typed, and nothing is sent', async () => {
  const { page, context, shootId } = await openShot('crown');
  const before = await margins(page);
  const width = field(page, 'Frame width');
  await width.fill('40 mm');
  expect(await margins(page)).not.toEqual(before);
  await width.press('Escape');
  expect(await margins(page)).toEqual(before);
  expect(await width.inputValue()).toBe('80 mm');
  expect((await journal(shootId)).rows).toHaveLength(0);
  await context.close();
});

test('the short limit is chosen, a way closes it, undo brings it back, and a reload finds everything', async () => {
  const { page, context, complaints, shootId } = await openShot('crown');
  const before = await margins(page);
  await limit(page, 'Light').click();
  expect(before.get('Light')).toMatch(/short by/);
  const way = page.locator('.way-card', { hasText: 'closes it' }).first();
  await way.waitFor();
  const title = await way.locator('.way-title').textContent();
  await way.click();
  await expect.poll(async () => (await margins(page)).get('Light')).not.toMatch(/short by/);
  const closed = await margins(page);
  await expect.poll(() => standing(page).textContent()).toBe('saved, revision 1');
  expect((await journal(shootId)).rows[0]!.summary).toBe(title);

  await page.reload();
  await chart(page).waitFor();
  expect(await margins(page)).toEqual(closed);

  await page.getByRole('button', { name: `Undo: ${title!}` }).click();
  await expect.poll(() => margins(page)).toEqual(before);
  await page.getByRole('button', { name: `Redo: ${title!}` }).click();
  await expect.poll(() => margins(page)).toEqual(closed);
  const kinds = async () => (await journal(shootId)).rows.map(({ kind }) => kind);
  await expect.poll(kinds).toEqual(['edit', 'undo', 'redo']);
  expect(complaints).toEqual([]);
  await context.close();
});

test('what was typed but not yet meant is there after the page was closed', async () => {
  const { page, context, shootId } = await openShot('crown');
  await field(page, 'Frame width').fill('50 mm');
  await page.close();
  const again = await context.newPage();
  await again.goto(`${served.url}/${shootId}/shot/crown`);
  await chart(again).waitFor();
  await expect.poll(() => field(again, 'Frame width').inputValue()).toBe('50 mm');
  await expect.poll(async () => (await journal(shootId)).rows.length).toBe(1);
  await context.close();
});

test('without a network edits wait, say so, and arrive once when it is back', async () => {
  const { page, context, shootId } = await openShot('crown');
  await context.setOffline(true);
  for (const text of ['50 mm', '60 mm']) {
    await field(page, 'Frame width').fill(text);
    await field(page, 'Frame width').press('Enter');
  }
  await expect.poll(() => standing(page).textContent()).toMatch(/^not sent yet/);
  expect((await journal(shootId)).rows).toHaveLength(0);
  await context.setOffline(false);
  await expect.poll(() => standing(page).textContent(), { timeout: 20_000 }).toBe('saved, revision 2');
  expect((await journal(shootId)).rows.map(({ summary }) => summary)).toEqual([
    'Frame width 50 mm',
    'Frame width 60 mm',
  ]);
  await context.close();
});

test('two people see each other’s edits, and the later of two in one place is told whose stands', async () => {
  const one = await openShot('crown');
  const other = await openShot('crown', one.shootId);
  await field(one.page, 'Frame width').fill('70 mm');
  await field(one.page, 'Frame width').press('Enter');
  await expect.poll(() => field(other.page, 'Frame width').inputValue()).toBe('70 mm');
  // The other types into the depth while the first changes it.
  await field(other.page, 'Sharp front to back').fill('5 mm');
  await field(one.page, 'Sharp front to back').fill('4 mm');
  await field(one.page, 'Sharp front to back').press('Enter');
  await expect.poll(() => standing(other.page).textContent()).toMatch(/revision 2|saving|refused/);
  await field(other.page, 'Sharp front to back').press('Enter');
  await expect.poll(() => other.page.getByRole('alert').first().textContent()).toMatch(/was not kept/);
  await expect.poll(() => field(other.page, 'Sharp front to back').inputValue()).toBe('4 mm');
  await one.context.close();
  await other.context.close();
});

test('everything is done by keyboard alone', async () => {
  const shootId = await bringIn();
  const { page, context, complaints } = await openWindow(browser);
  await page.goto(`${served.url}/${shootId}`);
  const focus = (what: ReturnType<Page['locator']>) => what.evaluate((element) => element === document.activeElement);
  const tabTo = async (what: ReturnType<Page['locator']>) => {
    for (let presses = 0; presses < 120; presses += 1) {
      if (await focus(what)) return;
      await page.keyboard.press('Tab');
    }
    throw new Error('the keyboard never got there');
  };
  const crown = page.getByRole('link', { name: 'One drop, the crown', exact: true });
  await crown.waitFor();
  await tabTo(crown);
  await page.keyboard.press('Enter');
  await chart(page).waitFor();

  await tabTo(field(page, 'Frame width'));
  await page.keyboard.type('60 mm');
  await page.keyboard.press('Enter');
  await expect.poll(() => standing(page).textContent()).toBe('saved, revision 1');

  // Into the chart, down to a short limit with the arrows, and on to its ways.
  await tabTo(chart(page).locator('[tabindex="0"]'));
  for (let presses = 0; presses < 20 && !(await focus(limit(page, 'Light'))); presses += 1)
    await page.keyboard.press('ArrowDown');
  expect(await limit(page, 'Light').getAttribute('aria-checked')).toBe('true');
  const way = page.locator('.way-card', { hasText: 'closes it' }).first();
  await way.waitFor();
  await tabTo(way);
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await margins(page)).get('Light')).not.toMatch(/short by/);
  await expect.poll(() => standing(page).textContent()).toBe('saved, revision 2');

  // The page is left by a key, undone by a key, and the list of keys opens and closes by keys.
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.keyboard.press('Control+z');
  await expect.poll(() => standing(page).textContent()).toBe('saved, revision 3');
  await page.keyboard.press('n');
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toMatch(/Two quinces meet/);
  await page.keyboard.press('?');
  await page.getByRole('dialog', { name: 'Keys' }).waitFor();
  await page.keyboard.press('Escape');
  await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
  await page.keyboard.press('s');
  await page.getByRole('heading', { level: 2, name: 'Board' }).waitFor();
  expect(complaints).toEqual([]);
  await context.close();
});

test('keys typed into a field stay in it', async () => {
  const { page, context } = await openShot('crown');
  const width = field(page, 'Frame width');
  await width.focus();
  await page.keyboard.type('s?nt');
  expect(await width.inputValue()).toBe('s?nt');
  expect(await page.getByRole('dialog').count()).toBe(0);
  expect(page.url()).toContain('/shot/crown');
  await context.close();
});
