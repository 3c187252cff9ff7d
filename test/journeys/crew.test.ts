/** Two people on one shoot, each in a browser of their own: names, presence, conflicts, work without a network, history. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { ROOT } from '../../tools/run.mjs';
import { openBrowser, openWindow, overflow_px, overlappingTexts, SIZES, smallTargets, startServer, type Served, type Window } from '../browser.ts'; // prettier-ignore

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

interface Person extends Window {
  readonly field: (name: string) => ReturnType<Page['getByRole']>;
}

/** Somebody with a browser of their own, who has said their name. */
const person = async (name: string, path: string): Promise<Person> => {
  const window = await openWindow(browser);
  await window.context.addInitScript((said) => localStorage.setItem('longsecond.name', said), name);
  await window.page.goto(`${served.url}${path}`);
  await window.page.locator('.shell-standing').waitFor();
  // The script of the place is here, so that it stands whatever becomes of the network.
  await window.page.getByRole('heading', { level: 1 }).waitFor();
  return { ...window, field: (label) => window.page.getByRole('textbox', { name: label, exact: true }) };
};

const write = async ({ field }: Person, name: string, text: string) => {
  await field(name).fill(text);
  await field(name).press('Enter');
};

const api = async <Reply>(path: string) => (await fetch(`${served.url}/api/shoots/${path}`)).json() as Promise<Reply>;

const textOf = async (id: string, revision?: number) =>
  (await fetch(`${served.url}/api/shoots/${id}/text${revision === undefined ? '' : `?revision=${revision}`}`)).text();

interface Opened {
  readonly revision: number;
  readonly written: { readonly shots: Readonly<Record<string, Readonly<Record<string, unknown>>>> };
}

interface Ordered {
  readonly written: { readonly order: { readonly shots: readonly string[] } };
}

const opened = (id: string) => api<Opened>(id);

/** A shoot of its own for one test. */
const freshShoot = async (): Promise<string> => {
  const editId = `journey-${Math.random().toString(36).slice(2, 12)}`;
  const answer = await fetch(`${served.url}/api/shoots`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ editId, text: DEMO }),
  });
  return ((await answer.json()) as { readonly id: string }).id;
};

const standing = ({ page }: Person) => page.locator('.shell-standing').textContent();

const saved = async (...people: readonly Person[]) => {
  for (const each of people) await expect.poll(() => standing(each)).toMatch(/^saved/);
};

const close = async (...people: readonly Person[]) => {
  for (const { context } of people) await context.close();
};

test('each sees who else is there, where they are, and what they are writing in, and sees them leave', async () => {
  const id = await freshShoot();
  const ada = await person('Ada', `/${id}`);
  await ada.page.getByRole('button', { name: 'People: nobody else is here' }).waitFor();
  const juno = await person('Juno', `/${id}/shot/crown`);
  await ada.page.getByRole('button', { name: 'People: Juno is on One drop, the crown' }).waitFor();
  const row = ada.page.locator('.shot-row', { hasText: 'One drop, the crown' });
  await expect.poll(() => row.locator('.here-mark').textContent()).toBe('Juno is here');

  await juno.field('Frame width').focus();
  await ada.page.getByRole('button', { name: 'People: Juno is on One drop, the crown: frame width' }).waitFor();
  await row.getByRole('link', { name: 'One drop, the crown' }).click();
  const written = ada.page.locator('.field', { has: ada.field('Frame width') });
  await expect.poll(() => written.locator('.here-mark').textContent()).toBe('Juno is here');
  // What is said of others is there to be read, and is not called out as it changes.
  expect(
    await written.locator('.here-mark').evaluate((mark) => mark.closest('[aria-live],[role="status"]')),
  ).toBeNull();

  await juno.page.close();
  await ada.page.getByRole('button', { name: 'People: nobody else is here' }).waitFor();
  expect(await ada.page.locator('.here-mark').count()).toBe(0);
  expect([...ada.complaints, ...juno.complaints]).toEqual([]);
  await close(ada, juno);
});

test('who has not said their name is asked once somebody else is there, and is then called by it', async () => {
  const id = await freshShoot();
  const window = await openWindow(browser);
  await window.page.goto(`${served.url}/${id}`);
  await window.page.locator('.shell-standing').waitFor();
  expect(await window.page.getByLabel('Your name on this shoot').count()).toBe(0);
  const juno = await person('Juno', `/${id}`);
  await juno.page.getByRole('button', { name: 'People: Somebody on another device is on the Shoot' }).waitFor();
  await window.page.getByLabel('Your name on this shoot').fill('Sam');
  await window.page.getByRole('button', { name: 'Keep it' }).click();
  await juno.page.getByRole('button', { name: 'People: Sam is on the Shoot' }).waitFor();
  expect(await window.page.getByLabel('Your name on this shoot').count()).toBe(0);
  await window.context.close();
  await close(juno);
});

test('a window that nobody sees lets go of its connection, and catches up when it is looked at', async () => {
  const id = await freshShoot();
  const ada = await person('Ada', `/${id}/shot/crown`);
  const juno = await person('Juno', `/${id}`);
  await juno.page.clock.install();
  await juno.page.goto(`${served.url}/${id}/shot/crown`);
  await saved(juno);
  const see = (state: DocumentVisibilityState) =>
    juno.page.evaluate((now) => {
      Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => now });
      document.dispatchEvent(new Event('visibilitychange'));
    }, state);
  const width = () => juno.field('Frame width').inputValue();

  // A glance at another window changes nothing.
  await see('hidden');
  await juno.page.clock.fastForward(5000);
  await write(ada, 'Frame width', '71 mm');
  await expect.poll(width).toBe('71 mm');
  await see('visible');

  await see('hidden');
  await juno.page.clock.fastForward(21_000);
  await write(ada, 'Frame width', '72 mm');
  await saved(ada);
  await ada.page.waitForTimeout(1000);
  expect(await width()).toBe('71 mm');
  await see('visible');
  await expect.poll(width).toBe('72 mm');
  await saved(juno);
  expect([...ada.complaints, ...juno.complaints]).toEqual([]);
  await close(ada, juno);
});

test('two who change the same value are shown both, and either can prevail', async () => {
  const id = await freshShoot();
  const ada = await person('Ada', `/${id}/shot/crown`);
  const juno = await person('Juno', `/${id}/shot/crown`);
  await juno.context.setOffline(true);
  await write(juno, 'Frame width', '91 mm');
  await expect.poll(() => standing(juno)).toContain('not sent yet');
  await write(ada, 'Frame width', '72 mm');
  await saved(ada);
  await juno.context.setOffline(false);

  const refusal = juno.page.locator('.refusal');
  await refusal.waitFor();
  expect(await refusal.locator('.refusal-says').textContent()).toContain('Ada did “');
  expect(await refusal.locator('dd').allTextContents()).toEqual(['91 mm', '72 mm']);
  await expect.poll(() => juno.field('Frame width').inputValue()).toBe('72 mm');
  await refusal.getByRole('button', { name: 'Use mine' }).click();
  await expect.poll(() => ada.field('Frame width').inputValue()).toBe('91 mm');
  await saved(ada, juno);

  await juno.context.setOffline(true);
  await write(juno, 'Frame width', '55 mm');
  await write(ada, 'Frame width', '66 mm');
  await saved(ada);
  await juno.context.setOffline(false);
  await refusal.getByRole('button', { name: 'Keep theirs' }).click();
  await saved(juno);
  expect(await juno.field('Frame width').inputValue()).toBe('66 mm');
  expect((await opened(id)).written.shots['crown']!['frameWidth']).toBe('66 mm');
  await close(ada, juno);
});

test('a shot that one edits and the other takes out can be brought back with the edit in it', async () => {
  const id = await freshShoot();
  const ada = await person('Ada', `/${id}`);
  const juno = await person('Juno', `/${id}/shot/honey`);
  const before = (await opened(id)).written.shots['honey']!;
  await juno.context.setOffline(true);
  await write(juno, 'Frame width', '77 mm');
  await ada.page.getByRole('button', { name: 'More for Honey coils' }).click();
  await ada.page.getByRole('menuitem', { name: 'Take out' }).click();
  await saved(ada);
  await juno.context.setOffline(false);
  const refusal = juno.page.locator('.refusal');
  await refusal.waitFor();
  expect(await refusal.locator('.refusal-says').textContent()).toContain('Ada did “Honey coils taken out” first');
  expect(await refusal.locator('dd').allTextContents()).toEqual(['77 mm', 'nothing']);
  await refusal.getByRole('button', { name: 'Bring it back with mine' }).click();
  await ada.page.locator('.shot-row-title', { hasText: 'Honey coils' }).waitFor();
  await saved(ada, juno);
  expect((await opened(id)).written.shots['honey']).toEqual({ ...before, frameWidth: '77 mm' });
  const { written } = await api<Ordered>(id);
  const first = await api<Ordered>(`${id}/at/0`);
  expect(written.order.shots).toEqual(first.written.order.shots);
  await close(ada, juno);
});

test('after a while without a network both end with what the server has, and the history tells it all', async () => {
  const id = await freshShoot();
  const ada = await person('Ada', `/${id}/shot/crown`);
  const juno = await person('Juno', `/${id}/shot/crown`);
  await write(ada, 'Takes', '14');
  await write(juno, 'On screen', '6 s');
  await saved(ada, juno);

  await juno.context.setOffline(true);
  await write(juno, 'Frame width', '88 mm');
  await write(juno, 'Action lasts', '70 ms');
  await write(juno, 'Fastest across', '3 m/s');
  await write(ada, 'Frame width', '64 mm');
  await write(ada, 'Takes saved', '4');
  await saved(ada);
  expect(await standing(juno)).toContain('not sent yet');
  await juno.context.setOffline(false);

  const refusal = juno.page.locator('.refusal');
  await refusal.waitFor();
  expect(await refusal.count()).toBe(1);
  expect(await refusal.locator('dd').allTextContents()).toEqual(['88 mm', '64 mm']);
  await refusal.getByRole('button', { name: 'Keep theirs' }).click();
  await saved(ada, juno);
  const last = await opened(id);
  for (const each of [ada, juno]) {
    await expect.poll(() => standing(each)).toBe(`saved, revision ${last.revision}`);
    await expect.poll(() => each.field('Frame width').inputValue()).toBe('64 mm');
    await expect.poll(() => each.field('Takes saved').inputValue()).toBe('4');
    await expect.poll(() => each.field('Takes').inputValue()).toBe('14');
    await expect.poll(() => each.field('Action lasts').inputValue()).toBe('70 ms');
    await expect.poll(() => each.field('Fastest across').inputValue()).toBe('3 m/s');
    await expect.poll(() => each.field('On screen').inputValue()).toBe('6 s');
  }
  const text = await textOf(id);
  for (const line of ['frameWidth: 64 mm', 'duration: 70 ms', 'takes: 14']) expect(text).toContain(line);

  await ada.page.locator('.shell-standing a').click();
  await ada.page.getByRole('heading', { level: 1, name: 'History' }).waitFor();
  const rows = ada.page.locator('.journal-row');
  await expect.poll(() => rows.count()).toBe(last.revision);
  await expect.poll(() => ada.page.locator('.journal-run h3').allTextContents().then((all) => all.join(' '))).toMatch(/Juno.*You/s);
  const width = rows.filter({ hasText: '64 mm' });
  expect(await width.locator('.changes').textContent()).toContain('One drop, the crown: frame width');
  expect(await width.locator('.change-values').textContent()).toMatch(/ → 64 mm$/);

  // New rows appear as they are made.
  await write(juno, 'Takes', '9');
  await expect.poll(() => rows.count()).toBe(last.revision + 1);

  await ada.page.getByRole('button', { name: /^Look at revision 1,/ }).click();
  const sheet = ada.page.getByRole('dialog');
  await sheet.getByRole('heading', { name: 'What is otherwise now' }).waitFor();
  expect(await sheet.locator('.changes').first().textContent()).toContain('frame width');
  await sheet.locator('.look-limits').waitFor();
  await sheet.getByRole('button', { name: 'Restore this' }).click();
  await sheet.getByRole('button', { name: 'Restore revision 1' }).click();
  await ada.page.locator('.notice', { hasText: 'Revision 1 is restored' }).waitFor();
  await expect.poll(async () => (await textOf(id)) === (await textOf(id, 1))).toBe(true);
  await expect.poll(() => juno.field('Takes').inputValue()).toBe('14');
  await expect.poll(() => rows.first().textContent()).toContain('Revision 1 brought back');

  await ada.page.locator('.notice').getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => juno.field('Takes').inputValue()).toBe('9');
  await saved(ada, juno);
  expect(await textOf(id)).toBe(await textOf(id, last.revision + 1));
  expect([...ada.complaints, ...juno.complaints].filter((said) => !/ERR_INTERNET_DISCONNECTED|409/.test(said))).toEqual([]);
  await close(ada, juno);
}, 120_000); // prettier-ignore

/** WCAG 2.2, target size (minimum). */
const LEAST_TARGET_px = 24;

test('with others about, refusals and a history, nothing sticks out, overlaps or is too small to press', async () => {
  const id = await freshShoot();
  const ada = await person('Ada', `/${id}/shot/crown`);
  const juno = await person('Juno of the Very Long Name That Goes On for a While', `/${id}/shot/crown`);
  await juno.context.setOffline(true);
  for (const [name, mine, theirs] of [
    ['Frame width', '91 mm', '72 mm'],
    ['Takes', '3', '20'],
  ] as const) {
    await write(juno, name, mine);
    await write(ada, name, theirs);
  }
  await saved(ada);
  await juno.context.setOffline(false);
  await juno.page.locator('.refusal').nth(1).waitFor();
  const wrong: string[] = [];
  const look = async (name: string, page: Page) => {
    const over_px = await overflow_px(page);
    if (over_px > 0) wrong.push(`${name} is ${over_px} px too wide`);
    for (const pair of await overlappingTexts(page)) wrong.push(`${name}: ${pair} overlap`);
    for (const small of await smallTargets(page, LEAST_TARGET_px)) wrong.push(`${name}: ${small}`);
  };
  for (const size of SIZES) {
    const at = `at ${size.width} × ${size.height}`;
    await juno.page.setViewportSize(size);
    await juno.page.goto(`${served.url}/${id}/shot/crown`);
    await juno.page.locator('.refusal').nth(1).waitFor();
    await look(`refusals ${at}`, juno.page);
    await ada.page.setViewportSize(size);
    await ada.page.goto(`${served.url}/${id}/history`);
    await ada.page.locator('.journal-row').first().waitFor();
    await look(`the history ${at}`, ada.page);
    await ada.page.getByRole('button', { name: 'Look at revision 0, as it was brought in' }).click();
    await ada.page.locator('.look-limits').waitFor();
    await ada.page.getByRole('button', { name: 'Restore this' }).click();
    await look(`looking back ${at}`, ada.page);
    await ada.page.goto(`${served.url}/${id}`);
    await ada.page.locator('.here-mark').first().waitFor();
    await look(`the Shoot with somebody there ${at}`, ada.page);
  }
  expect(wrong).toEqual([]);
  await close(ada, juno);
}, 120_000);
