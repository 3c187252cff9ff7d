/** Footage in a real browser: clips taken from a folder, measured, corrected, set aside, and held against each other. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Browser, Locator, Page } from 'playwright-core';
import { dialog, faultsOf, focused, outlineFaults, soon, tabTo } from '../access.ts';
import { openBrowser, openWindow, overflow_px, overlappingTexts, SIZES, smallTargets, startServer, type Served } from '../browser.ts'; // prettier-ignore
import { clipFolder, noFfmpeg, writeClip } from '../footage/clips.ts';
import { synthetic, type Scene } from '../footage/synthetic.ts';

let served: Served;
let browser: Browser;
const folder = clipFolder();

/** Long enough for a first look at three stretches of it. */
const SCENE: Scene = {
  width: 96,
  height: 54,
  rate_fps: 1000,
  frames: 760,
  exposure_s: 1 / 2000,
  seed: 7,
  lamps: [{ light: { kind: 'steady' } }],
  drop: { radius_px: 7, bright: 0.9, x_px: () => 50, y_px: (t_s) => -8 + 600 * Math.max(0, t_s - 0.3) },
};

const CLIPS: readonly (readonly [name: string, scene: Partial<Scene>])[] = [
  [
    'SYNTHETIC-drop-1.mkv',
    {
      lamps: [
        ...SCENE.lamps,
        { light: { kind: 'ripple', f_Hz: 100, depth: 0.5 }, share: (x: number) => (x < 0.4 ? 0.5 : 0) },
      ],
    },
  ],
  ['SYNTHETIC-drop-2.mkv', {}],
];

beforeAll(async () => {
  if (noFfmpeg) return;
  mkdirSync(join(folder, 'day one'));
  for (const [name, scene] of CLIPS) writeClip(join(folder, 'day one', name), synthetic(name, { ...SCENE, ...scene }));
  writeFileSync(join(folder, 'day one', 'A000-broken.mov'), 'no movie');
  [served, browser] = await Promise.all([startServer([], ['--footage', folder]), openBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

let count = 0;

/** The demo as a shoot of its own, so that no journey depends on another. */
const bringIn = async (): Promise<string> => {
  const text = await (await fetch(`${served.url}/api/shoots/demo/text`)).text();
  count += 1;
  const reply = await fetch(`${served.url}/api/shoots`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ editId: `journey-footage-${count}`, text }),
  });
  return ((await reply.json()) as { readonly id: string }).id;
};

/** Adds clips without the screen. */
const addTo = async (shootId: string, names: readonly string[], shotId?: string): Promise<readonly string[]> => {
  const ids = names.map((_, i) => `clip-of-${shootId}-${i}`);
  for (const [i, name] of names.entries()) {
    const event = { kind: 'added', clipId: ids[i], folder: folder.slice(folder.lastIndexOf('/') + 1), path: `day one/${name}`, ...(shotId !== undefined && { shotId }) }; // prettier-ignore
    const reply = await fetch(`${served.url}/api/shoots/${shootId}/footage`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ eventId: `add-${shootId}-${i}`, event }),
    });
    expect(reply.status, await reply.clone().text()).toBe(200);
  }
  return ids;
};

type Options = Parameters<typeof openWindow>[1];

const openFootage = async (shootId: string, tail = '', options?: Options) => {
  const window = await openWindow(browser, options);
  await window.page.goto(`${served.url}/${shootId}/footage${tail}`);
  await window.page.getByRole('heading', { level: 1 }).waitFor();
  return window;
};

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true });
const row = (page: Page, name: string) => page.locator('.footage-clip', { has: page.getByRole('heading', { name }) });
const stateOf = (of: Locator) => of.locator('.footage-state .state-word').textContent();
const MEASURED = { timeout: 40_000 };
const measured = async (page: Page, name: string) => {
  const state = row(page, name).locator('.footage-state');
  await state.filter({ hasText: /^(?:look at it|differs from the plan|as planned|steady)$/ }).waitFor(MEASURED);
};
const summary = (page: Page) => page.locator('.footage-summary').textContent();
const boxes = (page: Page) => dialog(page).getByRole('checkbox');

/** Remembers every word that any clip's state has had. */
const watchStates = (page: Page) =>
  page.evaluate(() => {
    const seen = new Set<string>();
    (window as unknown as { seen: Set<string> }).seen = seen;
    const look = () => {
      for (const at of document.querySelectorAll('.footage-state')) seen.add(at.textContent);
    };
    new MutationObserver(look).observe(document.body, { childList: true, subtree: true, characterData: true });
  });
const statesSeen = (page: Page) => page.evaluate(() => [...(window as unknown as { seen: Set<string> }).seen]);

describe.skipIf(noFfmpeg)('footage', () => {
  test('a clip is taken from a folder by keyboard, looked at first and then measured whole, under its shot', async () => {
    const shootId = await bringIn();
    const { page, context, complaints } = await openFootage(shootId);
    await page.getByRole('heading', { name: 'No clips yet' }).waitFor();
    await watchStates(page);
    await tabTo(page, button(page, 'Add clips'));
    await page.keyboard.press('Enter');
    const into = dialog(page).getByRole('button', { name: /^day one/ });
    await into.waitFor();
    await tabTo(page, into);
    await page.keyboard.press('ArrowRight');
    await boxes(page).first().waitFor();
    await soon(() => boxes(page).count()).toBe(3);
    await soon(() => focused(page)).toMatch(/^A000-broken/);
    await page.keyboard.press('ArrowLeft');
    await into.waitFor();
    await soon(() => focused(page)).toMatch(/^day one/);
    await page.keyboard.press('Enter');
    await boxes(page).first().waitFor();
    // The newest stands on top.
    expect(await dialog(page).locator('.folder-name').allTextContents()).toEqual(['A000-broken.mov', 'SYNTHETIC-drop-2.mkv', 'SYNTHETIC-drop-1.mkv']); // prettier-ignore
    await soon(() => focused(page)).toMatch(/A000-broken/);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Space');
    await soon(() => boxes(page).nth(2).isChecked()).toBe(true);
    await dialog(page).getByLabel('They are takes of').selectOption('crown');
    await button(page, 'Add 1 clip').click();
    await dialog(page).waitFor({ state: 'detached' });

    await page.getByRole('heading', { level: 2, name: /One drop, the crown/ }).waitFor();
    await measured(page, 'SYNTHETIC-drop-1.mkv');
    const clip = row(page, 'SYNTHETIC-drop-1.mkv');
    expect(await stateOf(clip)).toBe('look at it');
    expect(await clip.textContent()).toMatch(/synthetic: made up, not filmed/);
    expect(await clip.textContent()).toMatch(/Pulses [\d.]+ % \([\d.]+ stops\) at/);
    expect(await clip.textContent()).toMatch(/taken at [\d.]+ fps, by the plan/);
    expect(await clip.getByRole('list', { name: 'Against the plan' }).textContent()).toMatch(/Flicker: .* planned .*: worse/); // prettier-ignore
    await soon(() => summary(page)).toBe('1 clip, 1 to look at before the set is struck');
    expect((await statesSeen(page)).filter((says) => says.startsWith('first look: pulses'))).not.toEqual([]);

    await page.goto(`${served.url}/${shootId}/shot/crown`);
    const panel = page.getByRole('region', { name: 'Footage' });
    await panel.getByText('look at it').waitFor();
    expect(await panel.textContent()).toMatch(/1 clip/);
    await panel.getByRole('link', { name: 'SYNTHETIC-drop-1.mkv' }).click();
    await page.waitForURL(/\/footage\/[a-z0-9]+$/);
    expect(complaints).toEqual([]);
    await context.close();
  }, 120_000);

  test('a rate that is told makes what was measured stale, measuring again goes by it, and undo takes it back', async () => {
    const shootId = await bringIn();
    await addTo(shootId, ['SYNTHETIC-drop-2.mkv']);
    const { page, context, complaints } = await openFootage(shootId);
    const name = 'SYNTHETIC-drop-2.mkv';
    await measured(page, name);
    expect(await row(page, name).textContent()).toMatch(/taken at 25 fps, by its file, and nobody has said so/);
    await button(page, `Correct: ${name}`).click();
    const field = dialog(page).getByRole('textbox', { name: 'Taken at' });
    await field.fill('fast');
    await dialog(page).getByRole('alert').waitFor();
    await field.fill('1000 fps');
    await field.press('Enter');
    await dialog(page).getByRole('textbox', { name: 'Note' }).fill('lid open');
    await page.keyboard.press('Enter');
    await dialog(page).getByRole('button', { name: 'Close' }).click();
    await soon(() => stateOf(row(page, name))).toBe('measure again');
    await soon(() => row(page, name).textContent()).toMatch(/It was measured at the rate of its file, and you say 1000 fps\..*lid open/); // prettier-ignore
    await soon(() => summary(page)).toBe('1 clip, 1 to measure again');
    await button(page, `Measure again: ${name}`).click();
    await row(page, name).getByText('taken at 1000 fps, as you said').waitFor(MEASURED);
    await measured(page, name);
    expect(await stateOf(row(page, name))).toBe('steady');
    // The note was told last.
    await button(page, 'Undo').click();
    await soon(() => row(page, name).textContent()).not.toMatch(/lid open/);
    expect(complaints).toEqual([]);
    await context.close();
  }, 120_000);

  test('a clip is set aside and taken back, here and on the next screen, and without a network as soon as it is back', async () => {
    const shootId = await bringIn();
    await addTo(shootId, ['SYNTHETIC-drop-2.mkv']);
    const name = 'SYNTHETIC-drop-2.mkv';
    const [one, other] = [await openFootage(shootId), await openFootage(shootId)];
    await measured(one.page, name);
    await button(one.page, `Set aside: ${name}`).click();
    await row(one.page, name).waitFor({ state: 'detached' });
    await row(other.page, name).waitFor({ state: 'detached' });
    await button(one.page, 'Undo').click();
    await row(one.page, name).waitFor();
    await row(other.page, name).waitFor();

    await one.context.setOffline(true);
    await button(one.page, `Set aside: ${name}`).click();
    await row(one.page, name).waitFor({ state: 'detached' });
    await soon(() => one.page.locator('.footage').textContent()).toMatch(/One thing done here is kept in this browser/);
    expect(await row(other.page, name).count()).toBe(1);
    await one.context.setOffline(false);
    await row(other.page, name).waitFor({ state: 'detached' });
    await soon(() => one.page.locator('.footage').textContent()).not.toMatch(/cannot be reached/);
    await button(other.page, 'Show 1 set aside').click();
    await button(other.page, `Take back: ${name}`).click();
    await row(one.page, name).waitFor();
    expect(other.complaints).toEqual([]);
    await Promise.all([one.context.close(), other.context.close()]);
  }, 120_000);

  test('what cannot be read says why, and how to mend that', async () => {
    const shootId = await bringIn();
    await addTo(shootId, ['A000-broken.mov'], 'crown');
    const { page, context } = await openFootage(shootId);
    await soon(() => stateOf(row(page, 'A000-broken.mov'))).toBe('could not be measured');
    expect(await row(page, 'A000-broken.mov').locator('.footage-why').textContent()).toMatch(/\. \w/);
    await soon(() => summary(page)).toBe('1 clip, 1 to look at before the set is struck');
    await context.close();
  }, 60_000);

  test('two clips stand beside each other, move together, and say how they differ', async () => {
    const shootId = await bringIn();
    const ids = await addTo(shootId, CLIPS.map(([name]) => name), 'crown');
    const { page, context, complaints } = await openFootage(shootId);
    for (const [name] of CLIPS) await measured(page, name);
    await button(page, 'Compare: SYNTHETIC-drop-1.mkv').click();
    await button(page, 'Beside SYNTHETIC-drop-1.mkv: SYNTHETIC-drop-2.mkv').click();
    await page.waitForURL(new RegExp(`/footage/${ids[0]}\\?with=${ids[1]}$`));
    const figure = (title: string) => page.getByRole('row', { name: new RegExp(`^${title}`) });
    await figure('Flicker').waitFor();
    expect(await figure('Flicker').textContent()).toMatch(/at [\d.]+ Hz.*none found.*only the first pulses/);
    expect(await figure('Taken at').textContent()).toMatch(/the same$/);

    const slider = page.getByRole('slider', { name: 'Moment of both clips' });
    const frames = async () => (await page.locator('.pair-pictures figcaption').allTextContents()).map((says) => Number(/\d+/.exec(says)![0])); // prettier-ignore
    const before = await frames();
    await slider.focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await soon(frames).toEqual(before.map((frame) => frame + 2));
    await button(page, 'A frame back').click();
    await soon(frames).toEqual(before.map((frame) => frame + 1));
    await soon(() => slider.getAttribute('aria-valuetext')).toMatch(/^\+0\.\d ms from the most movement; frames \d+ and \d+$/);
    await page.getByRole('radio', { name: 'first frame' }).check();
    await soon(frames).toEqual([0, 0]);
    const play = button(page, 'Play both');
    await soon(() => play.isEnabled(), 'both small copies').toBe(true);
    const shown = () => page.locator('.pair-pictures video').evaluateAll((videos: HTMLVideoElement[]) => videos.map((video) => video.currentTime / video.duration)); // prettier-ignore
    await play.click();
    await soon(async () => (await frames())[1]).toBeGreaterThan(20);
    await soon(async () => (await shown()).every((share) => share > 0)).toBe(true);
    await page.keyboard.press('Escape');
    await play.waitFor();
    const stopped = await frames();
    expect(stopped[0]).toBe(stopped[1]);
    await soon(async () => { const [a, b] = await shown(); return Math.abs(a! - b!); }, 'both at one moment').toBeLessThan(0.003); // prettier-ignore
    // Brought together at another moment while they play, both stop there.
    await play.click();
    await button(page, 'Stop both').waitFor();
    await page.getByRole('radio', { name: 'most movement' }).check();
    await play.waitFor();
    await soon(() => slider.getAttribute('aria-valuetext')).toMatch(/^0\.0 ms from the most movement; frames \d+ and \d+$/);
    await soon(frames).toEqual(before);
    await soon(async () => (await shown()).map((share) => Math.floor(share * SCENE.frames)), 'the pictures of those frames').toEqual(before);
    await button(page, 'Exchange').click();
    await soon(() => figure('Flicker').textContent()).toMatch(/only the second pulses/);
    expect(complaints).toEqual([]);
    await context.close();
  }, 120_000);

  describe.each(SIZES)('at $width × $height', (size) => {
    test.each(['dark', 'light', 'stage'] as const)('in the %s theme nothing sticks out, overlaps, is too small or breaks a rule of WCAG', async (theme) => {
      const shootId = await bringIn();
      const ids = await addTo(shootId, [...CLIPS.map(([name]) => name), 'A000-broken.mov'], 'crown');
      const { page, context, complaints } = await openFootage(shootId, '', { theme, size });
      for (const [name] of CLIPS) await measured(page, name);
      await soon(() => stateOf(row(page, 'A000-broken.mov'))).toBe('could not be measured');
      const wrong: string[] = [];
      const judge = async (name: string) => {
        await page.evaluate(() => document.fonts.ready);
        if ((await overflow_px(page)) > 0) wrong.push(`${name} is too wide`);
        for (const pair of await overlappingTexts(page)) wrong.push(`${name}: ${pair} overlap`);
        for (const small of await smallTargets(page, 24)) wrong.push(`${name}: ${small}`);
        for (const fault of await faultsOf(page)) wrong.push(`${name}: ${fault}`);
      };
      await judge('the list');
      wrong.push(...(await outlineFaults(page)));
      await button(page, 'Add clips').click();
      await dialog(page).getByRole('button', { name: /^day one/ }).click();
      await boxes(page).first().waitFor();
      await judge('adding clips');
      await page.keyboard.press('Escape');
      await dialog(page).waitFor({ state: 'detached' });
      await page.goto(`${served.url}/${shootId}/footage/${ids[0]}?with=${ids[1]}`);
      await page.locator('.pair-table').waitFor();
      await judge('two clips');
      wrong.push(...(await outlineFaults(page)));
      expect(wrong).toEqual([]);
      expect(complaints.filter((says) => !says.includes('422') && !says.includes('404'))).toEqual([]);
      await context.close();
    }, 120_000);
  });
}); // prettier-ignore

test('where no folder is open, it says how to open one', async () => {
  const bare = await startServer([join(import.meta.dirname, '../../demo/shoot.yaml')]);
  const own = await openBrowser();
  const { page } = await openWindow(own);
  const { shoots } = (await (await fetch(`${bare.url}/api/shoots`)).json()) as { readonly shoots: readonly { readonly id: string }[] }; // prettier-ignore
  await page.goto(`${bare.url}/${shoots[0]!.id}/footage`);
  await page.getByRole('heading', { name: /No folder of footage is open|No clips yet/ }).waitFor();
  if (shoots[0]!.id !== 'demo')
    expect(await page.locator('.footage-start').textContent()).toMatch(/longsecond serve --footage FOLDER/);
  await own.close();
  await bare.stop();
});
