/** What clips teach, in a real browser: ticked, worked out, taken into the plan as one edit, and taken back. */
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { dialog, faultsOf, soon, tabTo } from '../access.ts';
import { openBrowser, openWindow, overflow_px, overlappingTexts, SIZES, smallTargets, startServer, type Served } from '../browser.ts'; // prettier-ignore
import { clipFolder, noFfmpeg, writeClip } from '../footage/clips.ts';
import { synthetic, type Scene } from '../footage/synthetic.ts';

let served: Served;
let browser: Browser;
const folder = clipFolder();

const SCENE: Scene = {
  width: 96,
  height: 54,
  rate_fps: 1000,
  frames: 120,
  exposure_s: 1 / 2000,
  seed: 7,
  lamps: [{ light: { kind: 'steady' } }],
};

const LATENCIES_s = [0.03, 0.0322, 0.0287, 0.0311];

/** A rig that is fired as a small light comes on. SYNTHETIC: worked out, not filmed. */
const fired = (i: number): Scene => {
  const on_s = 0.0303 + 0.0007 * i;
  const y_px = (t_s: number) => 12 + 700 * Math.max(0, t_s - on_s - LATENCIES_s[i]!);
  return {
    ...SCENE,
    seed: 20 + i,
    drop: { radius_px: 4, bright: 0.9, x_px: () => 40, y_px },
    signal: { x_px: 88, y_px: 46, radius_px: 2, bright: 0.8, on_s },
  };
};

const TAKES = LATENCIES_s.map((_, i) => `SYNTHETIC-take-${i + 1}.mkv`);
const CARD = 'SYNTHETIC-card.mkv';

beforeAll(async () => {
  if (noFfmpeg) return;
  TAKES.forEach((name, i) => writeClip(join(folder, name), synthetic(name, fired(i))));
  const card: Scene = { ...SCENE, width: 48, height: 32, frames: 600, blobs: 0, lamps: [{ light: { kind: 'ripple', f_Hz: 100, depth: 0.12 } }] }; // prettier-ignore
  writeClip(join(folder, CARD), synthetic(CARD, card));
  [served, browser] = await Promise.all([startServer([], ['--footage', folder]), openBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

const post = async (path: string, body: unknown): Promise<unknown> => {
  const reply = await fetch(`${served.url}${path}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }); // prettier-ignore
  if (!reply.ok) throw new Error((await reply.text()).slice(0, 300));
  return reply.json();
};

let count = 0;

/** The demo as a shoot of its own, with clips that have been measured. */
const bringIn = async (names: readonly string[]): Promise<string> => {
  const text = await (await fetch(`${served.url}/api/shoots/demo/text`)).text();
  count += 1;
  const { id } = (await post('/api/shoots', { editId: `journey-learn-${count}`, text })) as { readonly id: string };
  for (const [i, path] of names.entries()) {
    const clipId = `learn-${count}-clip-${i}`;
    const happen = (event: object, n: number) =>
      post(`/api/shoots/${id}/footage`, { eventId: `${clipId}-${n}`, event });
    await happen(
      { kind: 'added', clipId, folder: folder.slice(folder.lastIndexOf('/') + 1), path, shotId: 'crown' },
      0,
    );
    await happen({ kind: 'told', clipId, captureRate_fps: 1000, curve: 'linear', blackCode: 64 }, 1);
    await post(`/api/shoots/${id}/footage/${clipId}/measure`, { isAnew: true });
  }
  await expect
    .poll(
      async () => {
        const state = (await (await fetch(`${served.url}/api/shoots/${id}/footage`)).json()) as { readonly clips: readonly { readonly brief?: { readonly isWhole: boolean; readonly isStale?: string }; readonly measuring?: { readonly state: string } }[] }; // prettier-ignore
        return state.clips.filter(({ brief, measuring }) => brief?.isWhole === true && brief.isStale === undefined && measuring?.state === 'done').length; // prettier-ignore
      },
      { timeout: 50_000 },
    )
    .toBe(names.length);
  return id;
};

const shootText = async (id: string) => (await fetch(`${served.url}/api/shoots/${id}/text`)).text();
const take = (page: Page) => dialog(page).getByRole('button', { name: 'Take these figures into the plan' });

describe.skipIf(noFfmpeg)('what clips teach', () => {
  test('of a rig is taken into the plan by keyboard as one edit, and taken back to the byte', async () => {
    const shootId = await bringIn(TAKES);
    const before = await shootText(shootId);
    const { page, context, complaints } = await openWindow(browser);
    await page.goto(`${served.url}/${shootId}/footage`);
    const teach = page.getByRole('button', { name: /^What they teach: .*One drop, the crown$/ });
    await teach.waitFor();
    await tabTo(page, teach);
    await page.keyboard.press('Enter');
    await take(page).waitFor();
    expect(await dialog(page).getByLabel('They show').inputValue()).toBe('rig');
    expect(await dialog(page).getByRole('checkbox', { checked: true }).count()).toBe(TAKES.length);
    await dialog(page).getByLabel('Rig', { exact: true }).selectOption('trap');
    const said = await dialog(page).textContent();
    expect(said).toMatch(/Latency of Trapdoor over the slate: 3\d\.\d+ ms ± \d\.\d+ ms, the middle of 4 takes/);
    expect(said).toContain('4 takes are few');
    expect(said).toContain('SYNTHETIC clips: worked out, not filmed.');
    expect(said).toContain('Longsecond fires nothing.');
    expect(
      await dialog(page)
        .getByRole('row', { name: /Latency/ })
        .textContent(),
    ).toMatch(/38 ms ± 4 ms/);
    await tabTo(page, take(page));
    await page.keyboard.press('Enter');
    await dialog(page).getByText('Taken into the plan.').waitFor();
    await soon(async () => /note: .*Measured \d{4}-\d\d-\d\d from 4 takes at 1000 fps/.test((await shootText(shootId)).replaceAll(/\s+/g, ' '))).toBe(true); // prettier-ignore
    expect(await shootText(shootId)).toMatch(/latency: 3\d\.\d+ ms ± \d\.\d+ ms/);
    await dialog(page).getByRole('button', { name: 'Undo', exact: true }).click();
    await take(page).waitFor();
    await soon(() => shootText(shootId)).toBe(before);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('of a lamp is kept as a file, and the kit then has the light as it was measured', async () => {
    const shootId = await bringIn([CARD]);
    const { page, context, complaints } = await openWindow(browser);
    await page.goto(`${served.url}/${shootId}/footage/learn-${count}-clip-0`);
    await page.getByRole('button', { name: 'Take figures into the plan' }).click();
    const lamp = dialog(page).getByLabel('Lamp', { exact: true });
    await lamp.waitFor();
    await lamp.selectOption('soft-90');
    await dialog(page).getByLabel('Shutter').fill('1/2000 s');
    await dialog(page).getByLabel('Shutter').press('Enter');
    await take(page).waitFor();
    expect(await dialog(page).textContent()).toMatch(/pulses at 100\.0\d? Hz by 1[12](?:\.\d+)? %, give or take/);
    await take(page).click();
    await dialog(page).getByText('Taken into the plan.').waitFor();
    await soon(async () => /measured:\s+measured-1:/.test(await shootText(shootId))).toBe(true);
    await page.goto(`${served.url}/${shootId}/kit/lamps/soft-90`);
    await page.getByRole('img', { name: /One period/ }).first().waitFor(); // prettier-ignore
    expect(await page.textContent('body')).toMatch(/SYNTHETIC-card\.mkv/);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('that is nothing says why and what to do, and no clip says so too', async () => {
    const shootId = await bringIn(TAKES.slice(0, 1));
    const { page, context, complaints } = await openWindow(browser);
    await page.goto(`${served.url}/${shootId}/footage`);
    await page.getByRole('button', { name: /^What they teach/ }).click();
    await dialog(page).getByLabel('They show').selectOption('rig');
    await dialog(page)
      .getByText(/1 of 1 clip tells when the rig was fired/)
      .waitFor();
    expect(await take(page).count()).toBe(0);
    await dialog(page).getByText('1 clip of 1 measured whole').click();
    await dialog(page).getByRole('checkbox').uncheck();
    await dialog(page).getByText('Tick the clips that show it.').waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  test.each([
    ['dark', SIZES[0]],
    ['light', SIZES[2]],
    ['stage', SIZES[1]],
  ] as const)('in the %s theme at one size nothing sticks out, overlaps, is too small or breaks a rule of WCAG', async (theme, size) => {
    const shootId = await bringIn(TAKES.slice(0, 3));
    const { page, context, complaints } = await openWindow(browser, { theme, size });
    await page.goto(`${served.url}/${shootId}/footage`);
    await page.getByRole('button', { name: /^What they teach/ }).click();
    await take(page).waitFor();
    expect(await faultsOf(page)).toEqual([]);
    expect(await overflow_px(page)).toBe(0);
    expect(await smallTargets(page, 24)).toEqual([]);
    expect(await overlappingTexts(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
}); // prettier-ignore
