/** By keyboard alone and by ear: everything is reached, everything says its name, and the focus is never lost. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser, Locator, Page } from 'playwright-core';
import { ROOT } from '../../tools/run.mjs';
import { bringIn, dialog, focused, isFocused, nameOf, soon, tabTo } from '../access.ts';
import { openBrowser, openWindow, startServer, type Served } from '../browser.ts';

let served: Served;
let browser: Browser;

const DEMO = readFileSync(join(ROOT, 'demo/shoot.yaml'), 'utf8');

beforeAll(async () => {
  [served, browser] = await Promise.all([startServer(), openBrowser()]);
  await bringIn(
    served,
    'awkward',
    DEMO.replace('title: Quince & Clover, day 1', 'title: Awkward').replace(
      'frameWidth: 380 mm',
      'frameWidth: 380 parsnips',
    ),
  );
});

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

const row = (page: Page, name: string) => page.getByRole('radio', { name: new RegExp(`^${name}: `) });

test('by keyboard alone: a shoot, a shot, a value, the limit that moved, its help, a way, and back', async () => {
  const { page, context, complaints } = await openWindow(browser);
  await page.goto(`${served.url}/shoots`);
  await tabTo(page, page.getByRole('link', { name: /^Quince & Clover, day 1/ }));
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 2, name: 'Board' }).waitFor();
  await soon(() => focused(page)).not.toBe('');

  await tabTo(page, page.getByRole('link', { name: 'Pour into the glass', exact: true }));
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: 'Pour into the glass' }).waitFor();
  await soon(() => focused(page)).not.toBe('');
  await page.keyboard.press('n');
  await page.getByRole('heading', { level: 1, name: 'One drop, the crown' }).waitFor();
  await soon(() => page.title()).toBe('One drop, the crown, Quince & Clover, day 1, Longsecond');
  await soon(() => focused(page)).not.toBe('');

  // A field says its name; what is wrong with it is its description.
  const width = page.getByRole('textbox', { name: 'Frame width', exact: true });
  const before = await nameOf(row(page, 'Light'));
  expect(before).toMatch(/^Light: short by \d+\.\d stops, \d+ klx for \d+ klx/);
  await tabTo(page, width);
  await page.keyboard.type('60 parsnips');
  expect(await width.getAttribute('aria-invalid')).toBe('true');
  const described = await width.getAttribute('aria-describedby');
  expect(await page.locator(`[id="${described!.split(' ').at(-1)!}"]`).textContent()).toContain('parsnips');
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('60 mm');
  await page.keyboard.press('Enter');
  await soon(() => nameOf(row(page, 'Light'))).not.toBe(before);

  await tabTo(page, page.locator('.margin-line[tabindex="0"]'));
  for (let presses = 0; presses < 20 && !(await isFocused(row(page, 'Light'))); presses += 1)
    await page.keyboard.press('ArrowDown');
  expect(await row(page, 'Light').getAttribute('aria-checked')).toBe('true');
  const short = await nameOf(row(page, 'Light'));

  const help = page.getByRole('button', { name: 'What is this: Light', exact: true });
  await tabTo(page, help);
  await page.keyboard.press('Enter');
  await page.getByRole('dialog', { name: 'Light' }).getByRole('heading', { name: 'What it is' }).waitFor();
  await page.keyboard.press('Escape');
  await dialog(page).waitFor({ state: 'detached' });
  await soon(() => isFocused(help)).toBe(true);

  const way = page.locator('.way-card', { hasText: 'closes it' }).first();
  await tabTo(page, way);
  await page.keyboard.press('Enter');
  await soon(() => nameOf(row(page, 'Light'))).not.toMatch(/short by/);
  // On to the limit that now binds, whose ways stand beside it.
  await soon(() => isFocused(page.locator('.margin-line[aria-checked="true"]'))).toBe(true);

  const undo = page.getByRole('button', { name: /^Undo: / });
  await page.keyboard.press('Control+z');
  await soon(() => nameOf(row(page, 'Light'))).toBe(short);
  await soon(() => focused(page)).not.toBe('');
  await page.keyboard.press('Control+z');
  await soon(() => nameOf(row(page, 'Light'))).toBe(before);
  await undo.waitFor({ state: 'detached' });
  expect(complaints).toEqual([]);
  await context.close();
});

test('the chart is heard row by row, and what cannot be judged says what it needs', async () => {
  const { page, context } = await openWindow(browser);
  await page.goto(`${served.url}/demo/shot/quinces`);
  const chart = page.getByRole('radiogroup', { name: 'Limits of Two quinces meet, in stops' });
  await chart.waitFor();
  const heard = (await chart.ariaSnapshot()).split('\n').map((line) => line.trim());
  const rows = heard.filter((line) => /^- '?radio /.test(line));
  expect(rows.length).toBeGreaterThan(3);
  for (const said of rows)
    expect(said).toMatch(
      /^- '?radio ".+: (short by \d+\.\d stops|tight, \d+\.\d stops over|\d+\.\d stops to spare), .+"/,
    );
  await page.goto(`${served.url}/awkward/shot/quinces`);
  await chart.waitFor();
  expect((await chart.ariaSnapshot()).replaceAll(/\s+/g, ' ')).toMatch(
    /Light needs - 'button "Frame width: written, but cannot be read"' - text: unknown/,
  );
  await context.close();
});

test('a menu asked for before its list has come opens when it comes, unless one has gone on', async () => {
  const { page, context, complaints } = await openWindow(browser);
  const held: (() => void)[] = [];
  let isHeld = true;
  await page.route(/\/MenuList[^/]*\.js/, async (route) => {
    if (isHeld) await new Promise<void>((resolve) => held.push(resolve));
    await route.continue();
  });
  const letGo = () => {
    isHeld = false;
    for (const resolve of held.splice(0)) resolve();
  };
  const more = page.getByRole('button', { name: 'More for Bubbles' });
  const isHere = () => more.getAttribute('aria-expanded');
  await page.goto(`${served.url}/demo`);
  await more.focus();
  await page.keyboard.press('Enter');
  await soon(() => held.length).toBe(1);
  expect(await isHere()).toBe(null);
  letGo();
  const copy = page.getByRole('menuitem', { name: 'Copy' });
  await soon(() => isFocused(copy)).toBe(true);
  await page.waitForTimeout(300);
  expect(await isFocused(copy), 'it stays open').toBe(true);
  await page.keyboard.press('Escape');
  await copy.waitFor({ state: 'detached' });
  await soon(() => isFocused(more)).toBe(true);

  isHeld = true;
  await page.reload();
  await more.focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Shift+Tab');
  const before = page.getByRole('button', { name: 'Move Bubbles down' });
  expect(await isFocused(before)).toBe(true);
  letGo();
  await soon(isHere).toBe('false');
  await page.waitForTimeout(300);
  expect(await isFocused(before), 'nothing opened').toBe(true);
  expect(await page.getByRole('menu').count()).toBe(0);
  expect(complaints).toEqual([]);
  await context.close();
});

test('the focus is never lost when what had it goes away', async () => {
  await bringIn(served, 'focus', DEMO);
  const { page, context, complaints } = await openWindow(browser);
  const kept = (after: string) => soon(() => focused(page), `the focus after ${after}`).not.toBe('');
  const enter = async (what: Locator) => {
    await what.focus();
    await page.keyboard.press('Enter');
  };
  await page.goto(`${served.url}/focus`);
  await enter(page.getByRole('button', { name: 'More for Bubbles' }));
  await page.getByRole('menuitem', { name: 'Take out' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'More for Bubbles' }).waitFor({ state: 'detached' });
  await kept('a shot is taken out');

  await enter(page.getByRole('button', { name: /^Frame 2 / }));
  await dialog(page).waitFor();
  await page.keyboard.press('Escape');
  await dialog(page).waitFor({ state: 'detached' });
  await soon(() => focused(page)).toMatch(/^Frame 2 /);
  await page.keyboard.press('Enter');
  await enter(dialog(page).getByRole('button', { name: 'Take it off the board' }));
  await page.getByRole('button', { name: /^Frame 10 / }).waitFor({ state: 'detached' });
  await kept('a frame is taken out');

  await enter(page.getByRole('button', { name: 'Put this notice away' }));
  await kept('a notice is put away');

  for (const place of ['Kit', 'Light', 'Day', 'Footage', 'Paper', 'Reckoner', 'Shot']) {
    const link = page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: place, exact: true });
    await enter(link);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await soon(() => isFocused(link)).toBe(true);
  }
  await page.getByRole('textbox', { name: 'Frame width', exact: true }).focus();
  await page.keyboard.press('Tab');
  await page
    .getByRole('button', { name: /^What is this/ })
    .first()
    .focus();
  await page.keyboard.press('h');
  await page.getByRole('heading', { level: 1, name: 'History' }).waitFor();
  await kept('going to the History by its key');
  await page.keyboard.press('r');
  await page.getByRole('heading', { level: 1, name: 'Reckoner' }).waitFor();
  await kept('going to the Reckoner by its key');
  await enter(page.getByRole('link', { name: /Light an exposure needs/ }).first());
  await page.getByRole('heading', { level: 1, name: 'Light an exposure needs' }).waitFor();
  await kept('opening a law');

  await page.goto(`${served.url}/focus/shot/quinces`);
  await enter(page.getByRole('button', { name: 'Change cues and trigger' }));
  await enter(page.getByRole('button', { name: 'Take this cue out' }).first());
  await page.getByRole('slider', { name: /^Left quince/ }).waitFor({ state: 'detached' });
  await kept('a cue is taken out');

  await page.goto(`${served.url}/focus/kit/lamps`);
  await enter(
    page
      .getByRole('main')
      .getByRole('link', { name: /fresnel/i })
      .first(),
  );
  await page.getByRole('button', { name: 'Take out', exact: true }).waitFor();
  await kept('opening a lamp');
  await enter(page.getByRole('button', { name: 'Take out', exact: true }));
  if ((await dialog(page).count()) > 0) await enter(dialog(page).getByRole('button', { name: 'Take it out' }));
  await page.getByRole('button', { name: 'Take out', exact: true }).waitFor({ state: 'detached' });
  await kept('a lamp is taken out');
  expect(complaints).toEqual([]);
  await context.close();
});

test('live regions tell how things stand, once for an edit, and nothing while one types', async () => {
  await bringIn(served, 'heard', DEMO);
  const { page, context } = await openWindow(browser);
  await page.goto(`${served.url}/heard/shot/crown`);
  const width = page.getByRole('textbox', { name: 'Frame width', exact: true });
  await width.waitFor();
  // Until the page has come to rest: what a live region holds when it appears is not told.
  await page.waitForTimeout(2000);
  await page.evaluate(() => {
    const told: string[] = [];
    (window as unknown as { told: string[] }).told = told;
    const isLive = (node: Node) =>
      (node instanceof Element ? node : node.parentElement)?.closest(
        '[role="status"], [role="alert"], [aria-live="polite"], [aria-live="assertive"]',
      );
    new MutationObserver((changes) => {
      for (const live of new Set(changes.map(({ target }) => isLive(target)))) if (live?.textContent) told.push(live.textContent);
    }).observe(document.body, { childList: true, characterData: true, subtree: true });
  }); // prettier-ignore
  const told = () => page.evaluate(() => (window as unknown as { told: string[] }).told);
  await width.focus();
  for (const key of ['6', '0', ' ', 'm', 'm']) await page.keyboard.press(key === ' ' ? 'Space' : key);
  expect(await told()).toEqual([]);
  await page.keyboard.press('Enter');
  await soon(told).toEqual(['saved, revision 1']);
  await page.waitForTimeout(2500);
  expect(await told()).toEqual(['saved, revision 1']);
  await context.close();
});
