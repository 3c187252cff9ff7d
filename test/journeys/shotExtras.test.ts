/** What stands beside the margins of a shot: the event of its action, the drawings of its frame, the help for its limits. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Browser, Page } from 'playwright-core';
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

beforeAll(async () => {
  [served, browser] = await Promise.all([startServer(), openBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

const limit = (page: Page, name: string) => page.getByRole('radio', { name: new RegExp(`^${name}[:,]`) });

const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

const standing = (page: Page) => page.locator('.shell-standing');

const eventButton = (page: Page) => page.getByRole('button', { name: /^What happens: / });

const summaries = async (shootId: string): Promise<readonly string[]> => {
  const reply = await fetch(`${served.url}/api/shoots/${shootId}/journal`);
  const { rows } = (await reply.json()) as { readonly rows: readonly { readonly summary: string }[] };
  return rows.map(({ summary }) => summary);
};

/** The demo as a shoot of its own; its drop without the length and the speed that an event would fill in. */
const bringIn = async (isLacking: boolean): Promise<string> => {
  const demo = await (await fetch(`${served.url}/api/shoots/demo/text`)).text();
  const lacking = demo.replace(/^ {6}duration: 60 ms\n {6}speed: 2 m\/s\n/m, '');
  expect(lacking).not.toBe(demo);
  const text = isLacking ? lacking : demo;
  const reply = await fetch(`${served.url}/api/shoots`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ editId: `journey-${Math.random().toString(36).slice(2)}x`, text }),
  });
  return ((await reply.json()) as { readonly id: string }).id;
};

type Options = NonNullable<Parameters<typeof openWindow>[1]> & { readonly isLacking?: boolean };

const openShot = async (shotId: string, { isLacking = false, ...options }: Options = {}) => {
  const shootId = await bringIn(isLacking);
  const window = await openWindow(browser, options);
  await window.page.goto(`${served.url}/${shootId}/shot/${shotId}`);
  await window.page.getByRole('radiogroup').waitFor();
  return { ...window, shootId };
};

describe('what happens', () => {
  test('is found by a word of the trade, chosen in one edit, and fills in what nobody wrote', async () => {
    const { page, context, complaints, shootId } = await openShot('crown', { isLacking: true });
    expect(await field(page, 'Action lasts').getAttribute('placeholder')).toBe('not asked');
    await eventButton(page).click();
    await page.getByRole('searchbox', { name: 'Find an event' }).fill('coronet');
    const cards = page.locator('.event-card');
    expect(await cards.count()).toBe(1);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
    await expect.poll(() => standing(page).textContent()).toBe('saved, revision 1');
    expect(await summaries(shootId)).toEqual(['What happens: Crown']);
    expect(await field(page, 'Action lasts').getAttribute('placeholder')).toMatch(/ ms, assumed$/);
    expect(await field(page, 'Action lasts').inputValue()).toBe('');
    await page.getByText('from the event, usually 1.5 to 5 m/s').waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('its figures move the plan, are taken over as the person’s own, and stay without the event', async () => {
    const { page, context, shootId } = await openShot('crown', { isLacking: true });
    await eventButton(page).click();
    await page.locator('.event-card', { hasText: 'throws up a crown' }).click();
    const lasts = () => field(page, 'Action lasts').getAttribute('placeholder');
    await expect.poll(lasts).toMatch(/assumed/);
    const before = await lasts();
    await field(page, 'Height of the fall').fill('2 m');
    await field(page, 'Height of the fall').press('Enter');
    await expect.poll(lasts).not.toBe(before);
    await page.getByRole('button', { name: /^Take these figures as mine/ }).click();
    await expect.poll(() => field(page, 'Action lasts').inputValue()).toMatch(/^[\d.]+ ms$/);
    const [duration, speed] = await Promise.all(['Action lasts', 'Fastest across'].map((name) => field(page, name).inputValue()));
    expect((await lasts()) ?? '').not.toMatch(/assumed/);
    await page.getByRole('button', { name: 'Without the event' }).click();
    await expect.poll(() => eventButton(page).textContent()).toBe('choose an event');
    expect(await field(page, 'Action lasts').inputValue()).toBe(duration);
    expect(await field(page, 'Fastest across').inputValue()).toBe(speed);
    await expect.poll(() => standing(page).textContent()).toBe('saved, revision 4');
    const text = await (await fetch(`${served.url}/api/shoots/${shootId}/text`)).text();
    expect(text).toContain(`duration: ${duration}`);
    expect(text).not.toContain('event: crown');
    await context.close();
  }); // prettier-ignore

  test('a figure that cannot be read is told in its field, and the event is not lost', async () => {
    const { page, context, shootId } = await openShot('crown', { isLacking: true });
    await eventButton(page).click();
    await page.locator('.event-card', { hasText: 'throws up a crown' }).click();
    await field(page, 'Height of the fall').fill('3 lux');
    await page.getByText(/this is a length/).waitFor();
    await field(page, 'Height of the fall').press('Escape');
    expect(await eventButton(page).textContent()).toBe('Crown');
    await expect.poll(() => summaries(shootId)).toEqual(['What happens: Crown']);
    await context.close();
  });
});

test('the drawing of the frame names the crops that cut the action, as the margin judges them', async () => {
  const { page, context, complaints } = await openShot('crown');
  const drawing = page.getByRole('img', { name: /^The recorded picture shows/ });
  expect(await limit(page, 'In the picture').getAttribute('aria-label')).toMatch(/spare/);
  expect(await drawing.getAttribute('aria-label')).not.toMatch(/cuts/);
  await field(page, 'Frame width').fill('50 mm');
  await expect.poll(() => limit(page, 'In the picture').getAttribute('aria-label')).toMatch(/short/);
  expect(await drawing.getAttribute('aria-label')).toMatch(/Film, wide, 50 × 28\.1 mm, holds the whole action\. Square, 28\.1 × 28\.1 mm, cuts the action\./); // prettier-ignore
  const row = page.getByRole('row', { name: /^Square/ });
  expect(await row.textContent()).toMatch(/28\.1 × 28\.1 mm−6\.94 mm/);
  await page.getByRole('img', { name: /^From the side: the front of the lens stands .* flies 40 mm towards the lens/ }).waitFor(); // prettier-ignore
  expect(complaints).toEqual([]);
  await context.close();
});

describe('the help for a limit', () => {
  test('stands beside every row, and says what, why and what can be done', async () => {
    const { page, context, complaints } = await openShot('pour-1');
    const signs = page.getByRole('button', { name: /^What is this: / });
    expect(await signs.count()).toBe(await page.locator('.margin-row').count());
    for (let i = 0; i < (await signs.count()); i += 1) {
      const title = (await signs.nth(i).getAttribute('aria-label'))!.replace('What is this: ', '');
      await signs.nth(i).click();
      const dialog = page.getByRole('dialog', { name: title, exact: true });
      await dialog.getByRole('heading', { name: 'What can be done' }).waitFor();
      await page.keyboard.press('Escape');
      await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
    }
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('is reached by keyboard from the chosen row, leads to the law behind it, and gives the cursor back', async () => {
    const { page, context, shootId } = await openShot('pour-1');
    await limit(page, 'Depth').focus();
    await page.keyboard.press('Space');
    await page.keyboard.press('Tab');
    const sign = page.getByRole('button', { name: 'What is this: Depth' });
    expect(await sign.evaluate((element) => element === document.activeElement)).toBe(true);
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog', { name: 'Depth' });
    await dialog.getByRole('link', { name: 'Depth of field', exact: true }).waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => sign.evaluate((element) => element === document.activeElement)).toBe(true);
    await page.keyboard.press('Enter');
    await dialog.getByRole('link', { name: 'Depth of field', exact: true }).click();
    await page.getByRole('heading', { level: 1, name: 'Depth of field' }).waitFor();
    expect(new URL(page.url()).pathname).toBe(`/${shootId}/reckoner/depth-of-field`);
    await context.close();
  });
});

describe.each(SIZES)('at $width × $height', (size) => {
  test.each(['light', 'stage'] as const)('in the %s theme drawings and sheets keep to their room', async (theme) => {
    const { page, context, complaints } = await openShot('crown', { theme, size });
    const wrong: string[] = [];
    const judge = async (name: string) => {
      await page.evaluate(() => document.fonts.ready);
      const over_px = await overflow_px(page);
      if (over_px > 0) wrong.push(`${name}: ${over_px} px too wide`);
      for (const pair of await overlappingTexts(page)) wrong.push(`${name}: ${pair} overlap`);
      for (const small of await smallTargets(page, 24)) wrong.push(`${name}: ${small}`);
    };
    await field(page, 'Frame width').fill('50 mm');
    await field(page, 'Frame width').press('Enter');
    await judge('a frame that cuts');
    await page.getByRole('button', { name: 'What is this: Light' }).click();
    await page.getByRole('heading', { name: 'What can be done' }).waitFor();
    await judge('the help');
    await page.keyboard.press('Escape');
    await eventButton(page).click();
    await page.locator('.event-card').first().waitFor();
    await judge('the library');
    await page.locator('.event-card', { hasText: 'throws up a crown' }).click();
    await page.getByText('About this event').click();
    await page.locator('.event-about').waitFor();
    await judge('a chosen event');
    expect(wrong).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
