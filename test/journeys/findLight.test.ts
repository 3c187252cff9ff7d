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
