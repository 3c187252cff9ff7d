/** A short light margin closed by lamps that the finder chose: asked for in Light, put there, seen on the shot, taken back. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser } from 'playwright-core';
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

test('lamps are found for a shot that is short of light, and closing it is one edit that can be undone', async () => {
  const { page, context, complaints } = await openWindow(browser);
  const text = async () => (await fetch(`${served.url}/api/shoots/demo/text`)).text();
  const before = await text();

  await page.goto(`${served.url}/demo/shot/honey`);
  const light = page.getByRole('radio', { name: /^Light/ });
  await expect.poll(() => light.getAttribute('aria-label').then((label) => label ?? light.textContent())).toMatch(/short/);

  await page.goto(`${served.url}/demo/light/soft-side`);
  await page.getByRole('button', { name: 'Find lamps for what its shots need' }).click();
  const found = page.getByRole('region', { name: 'Lamps found' });
  await found.waitFor({ timeout: 60_000 });
  // Every answer says what it gives the shot it was found for.
  for (const words of await found.locator('.found-shots').allTextContents()) expect(words).toMatch(/Honey coils ?\+\d/);
  await found.getByRole('button', { name: /^Put (it|them) there$/ }).first().click();

  await expect.poll(() => page.locator('.shell-standing').textContent()).toMatch(/^saved, revision 1$/);
  expect(await text()).not.toBe(before);
  await page.goto(`${served.url}/demo/shot/honey`);
  await expect.poll(() => light.getAttribute('aria-label').then((label) => label ?? light.textContent())).not.toMatch(/short/);

  await page.getByRole('button', { name: /^Undo/ }).first().click();
  await expect.poll(text).toBe(before);
  expect(complaints).toEqual([]);
  await context.close();
}); // prettier-ignore

test('a search that is stopped ends at once, and the next one answers', async () => {
  const { page, context, complaints } = await openWindow(browser);
  const workers = () => page.workers().filter((worker) => /\/find-/.test(worker.url()));
  await page.goto(`${served.url}/demo/light/soft-side`);
  const ask = page.getByRole('button', { name: 'Find lamps for what its shots need' });
  await ask.click();
  await expect.poll(() => workers().length, { timeout: 20_000 }).toBe(1);
  const [first] = workers();
  await page.getByRole('button', { name: 'Stop' }).click();
  await ask.waitFor();
  // The solver cannot be interrupted: it is gone with its worker, rather than at work for nobody.
  await expect.poll(() => workers().length, { timeout: 20_000 }).toBe(0);
  await ask.click();
  await page.getByRole('region', { name: 'Lamps found' }).waitFor({ timeout: 60_000 });
  expect(workers()).toHaveLength(1);
  expect(workers()[0]).not.toBe(first);
  expect(complaints).toEqual([]);
  await context.close();
});

test('on the shot, lamps that a search finds stand after the plan’s own ways, marked, and one of them closes its light', async () => {
  const { page, context, complaints } = await openWindow(browser);
  await page.goto(`${served.url}/demo/shot/honey`);
  const light = page.getByRole('radio', { name: /^Light/ });
  const standing = () => light.getAttribute('aria-label').then((label) => label ?? light.textContent());
  await expect.poll(standing).toMatch(/short/);
  await light.click();
  await page.getByText('Searching all lamps of the kit too…').waitFor({ timeout: 30_000 });
  const cards = page.locator('.way-card');
  const found = cards.filter({ hasText: 'found by searching the lamps of the kit' });
  await found.first().waitFor({ timeout: 60_000 });
  const texts = await cards.allTextContents();
  const first = texts.findIndex((text) => text.includes('found by searching'));
  expect(first).toBeGreaterThan(0);
  expect(texts.slice(first).every((text) => text.includes('found by searching'))).toBe(true);
  expect(await found.first().textContent()).toMatch(/^Add .+ in all; whoever holds the licence says what its circuit carries/);
  await found.first().click();
  await expect.poll(() => page.locator('.shell-standing').textContent()).toMatch(/^saved, revision /);
  await expect.poll(standing).not.toMatch(/short/);
  await page.getByRole('button', { name: /^Undo/ }).first().click();
  await expect.poll(standing).toMatch(/short/);
  expect(complaints).toEqual([]);
  await context.close();
}); // prettier-ignore
