/** Flicker in a real browser: a lamp's light is brought in, its frames are judged, played with care, and mended from a chart. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { dialog, isFocused, pasteInto, soon } from '../access.ts';
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

let count = 0;

/** A demo of its own for each journey, so that none depends on another. */
const bringIn = async (change: (text: string) => string = (text) => text): Promise<string> => {
  count += 1;
  const text = await (await fetch(`${served.url}/api/shoots/demo/text`)).text();
  const reply = await fetch(`${served.url}/api/shoots`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ editId: `flicker-journey-bring-in-${count}`, text: change(text) }),
  });
  return ((await reply.json()) as { readonly id: string }).id;
};

interface Written {
  readonly files?: Readonly<Record<string, { readonly name: string; readonly sha256: string }>>;
  readonly kit: { readonly lamps: Readonly<Record<string, { readonly measured?: Readonly<Record<string, unknown>> }>> };
  readonly shots: Readonly<Record<string, { readonly rate?: number; readonly shutter?: string }>>;
}

const written = async (shootId: string): Promise<Written> => {
  const reply = await fetch(`${served.url}/api/shoots/${shootId}`);
  return ((await reply.json()) as { readonly written: Written }).written;
};

const saved = (page: Page, revision: number) =>
  soon(() => page.locator('.shell-standing').textContent()).toBe(`saved, revision ${revision}`);

const panel = (page: Page) => page.getByRole('region', { name: 'Flicker', exact: true });

const margin = (page: Page) =>
  page.getByRole('radiogroup').getByRole('radio', { name: /^Flicker: / }).getAttribute('aria-label'); // prettier-ignore

const openShot = async (page: Page, shootId: string, shotId: string) => {
  await page.goto(`${served.url}/${shootId}/shot/${shotId}`);
  await panel(page).waitFor();
};

/** Half a second of a lamp at twice the mains, over a dark reading; milliseconds, semicolons and decimal commas. */
const RECORD = [
  'Meter export',
  'time (ms);light (V)',
  ...Array.from({ length: 10_000 }, (_, i) => {
    const time_s = i / 20_000;
    const light = 0.05 + 1.2 * (1 + 0.2 * Math.cos(2 * Math.PI * 100.03 * time_s)) + 0.004 * Math.sin(7919 * i);
    return `${(1000 * time_s).toFixed(4)};${light.toFixed(5)}`.replaceAll('.', ',');
  }),
].join('\n');

test('a light record is refused with its line, then taken: its period is drawn, kept with the dark away, and planned with', async () => {
  const id = await bringIn();
  const { page, context, complaints } = await openWindow(browser);
  await page.goto(`${served.url}/${id}/kit/lamps/soft-90`);
  const bring = page.getByRole('button', { name: 'Bring in a light record…' });
  await bring.focus();
  await page.keyboard.press('Enter');
  const sheet = dialog(page);
  const take = sheet.getByRole('button', { name: 'Take it' });
  // The cursor stands on the chooser of files.
  await soon(() => isFocused(sheet.locator('input[type="file"]'))).toBe(true);

  const lines = sheet.getByRole('textbox', { name: 'Or paste its lines' });
  await lines.fill('time,light\n0,1\n0.001,NaN\n');
  await sheet.getByRole('alert').filter({ hasText: 'Line 3. ' }).waitFor();
  await pasteInto(lines, RECORD.split('\n').slice(0, 420).join('\n'));
  await sheet.getByRole('alert').filter({ hasText: 'whole periods' }).waitFor();
  await sheet.getByRole('img', { name: /^The record: light over/ }).waitFor();
  expect(await take.isDisabled()).toBe(true);

  await sheet.locator('input[type="file"]').setInputFiles({
    name: 'soft box.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(RECORD),
  });
  await sheet.getByRole('img', { name: /^One period of the light, / }).waitFor();
  await sheet.getByText(/^9\.997 ms, 100\.03 Hz, give or take/).waitFor();
  await sheet.getByText('No dark reading was taken away').waitFor();
  const dark = sheet.getByRole('textbox', { name: 'Dark reading' });
  await dark.fill('a lot');
  await sheet.getByRole('alert').filter({ hasText: 'Expected a plain number' }).waitFor();
  await dark.fill('0,05');
  await dark.press('Enter');
  await sheet.getByText('0.05 taken away').waitFor();
  await sheet.getByText('100 Hz goes with mains of 50 Hz.').waitFor();
  await soon(() => take.isEnabled()).toBe(true);
  await take.click();
  await saved(page, 1);

  const { files, kit } = await written(id);
  expect(kit.lamps['soft-90']!.measured).toEqual({ 'measured-1': { title: 'soft box, as read.csv', file: 'light-1' } });
  const kept = await fetch(`${served.url}/api/shoots/${id}/files/${files!['light-1']!.sha256}`);
  expect((await kept.text()).split('\n')[0]).toBe('Light over time, a dark reading of 0.05 taken away');
  // Its own period, read back from what was kept.
  await page.getByRole('img', { name: 'One period of soft box, as read.csv, 10 ms' }).waitFor();
  await page.getByText('ripples at 100 Hz, percent flicker 20 %').waitFor();

  await openShot(page, id, 'honey');
  await panel(page).getByRole('row', { name: /as measured at full level, 5600 K measured/ }).waitFor(); // prettier-ignore
  await page.getByRole('button', { name: /^Undo: .*light measured/ }).click();
  await panel(page)
    .getByRole('row', { name: /diodes that let the mains through/ })
    .waitFor();
  await soon(async () => (await written(id)).kit.lamps['soft-90']!.measured).toBeUndefined();
  expect(complaints).toEqual([]);
  await context.close();
}, 60_000);

test('how a lamp ripples is written in the figures of its kind, each assumed one said with its reason', async () => {
  const id = await bringIn();
  const { page, context, complaints } = await openWindow(browser);
  await page.goto(`${served.url}/${id}/kit/lamps/spot-led-1200`);
  const form = page.getByRole('region', { name: 'How its light changes' });
  await form.getByRole('img', { name: /diodes pulsed at 25 kHz/ }).waitFor();
  await form.getByRole('combobox', { name: 'Kind' }).selectOption('square');
  const notch = form.getByRole('textbox', { name: 'Drop at each turn' });
  expect(await notch.getAttribute('placeholder')).toBe('10 %');
  await form.getByText('Assumed: the deepest of 0.02 to 0.10.').waitFor();
  await form.getByText(/^Written, and of no use to this kind: .*duty/).waitFor();
  // The rate was written of pulses, and stays until it is taken away.
  const rate = form.getByRole('textbox', { name: 'Square-wave rate' });
  expect(await rate.inputValue()).toBe('25 kHz');
  await rate.fill('');
  await rate.press('Enter');
  expect(await rate.getAttribute('placeholder')).toBe('75 Hz');
  // Typing draws at once.
  const percent = () =>
    form.locator('.light-figures div').filter({ hasText: 'Percent flicker' }).locator('dd').textContent();
  await soon(percent).toBe('5.2 %');
  await notch.fill('4 %');
  await soon(percent).toBe('2 %');
  await form.getByText('for people in a room, not for footage').waitFor();
  await notch.press('Escape');
  expect(complaints).toEqual([]);
  await context.close();
});

test('a point of the chart is picked by keyboard, shown on every margin, applied as one edit and undone', async () => {
  const id = await bringIn();
  const { page, context, complaints } = await openWindow(browser);
  await openShot(page, id, 'honey');
  const before = await margin(page);
  await panel(page).getByText(/Frames swing by 0\.17 stop, 13 times a second on the screen/).first().waitFor(); // prettier-ignore
  await panel(page)
    .getByRole('img', { name: /^The lamps’ light with the shutter open on it/ })
    .waitFor();
  const chart = panel(page).getByRole('application', { name: /^How far frames swing/ });
  await panel(page).locator('.heat-map').waitFor();
  const reading = panel(page).locator('.picture-read');
  await chart.focus();
  for (let presses = 0; presses < 40 && !/1\/(2\d\d|1\d\d) s/.test((await reading.textContent()) ?? ''); presses += 1)
    await page.keyboard.press('ArrowUp');
  expect(await reading.textContent()).toMatch(/Enter picks it$/);
  await page.keyboard.press('Enter');
  const card = panel(page).getByRole('button', { name: /^Fix 200 fps and 1\/\d+ s/ });
  await card.waitFor();
  const said = (await card.textContent())!;
  // Pointing at it draws what every margin would be.
  await card.focus();
  await page.locator('.margin-chart .ghost, .margin-line .ghost').first().waitFor({ state: 'attached' });
  await card.press('Enter');
  await saved(page, 1);
  const { rate, shutter } = (await written(id)).shots['honey']!;
  expect(said).toContain(`Fix ${rate} fps and ${shutter}`);
  await soon(() => margin(page)).not.toBe(before);
  await card.waitFor({ state: 'detached' });
  await page.getByRole('status').getByRole('button', { name: 'Undo' }).click();
  await soon(() => margin(page)).toBe(before);
  await soon(async () => (await written(id)).shots['honey']!.rate).toBeUndefined();

  // The same as figures, and a shutter that does not fit its frame is said to.
  await panel(page).getByText('As a table, in stops').click();
  await panel(page).getByRole('columnheader', { name: '200 fps' }).waitFor();
  expect(await panel(page).getByRole('cell', { name: 'too long' }).count()).toBeGreaterThan(0);
  expect(complaints).toEqual([]);
  await context.close();
}, 60_000);

test('a flicker beyond the flash threshold is not played, whatever is pressed: its frames stand side by side', async () => {
  const { page, context } = await openWindow(browser);
  await openShot(page, await bringIn(), 'honey');
  await panel(page)
    .getByText(/^It is not played: it would flash 1[23] times within a second/)
    .waitFor();
  await panel(page)
    .getByRole('img', { name: /frames side by side, each as light as it is$/ })
    .waitFor();
  expect(await panel(page).getByRole('button', { name: 'See it flicker…' }).count()).toBe(0);
  expect(await panel(page).locator('.patch-light').count()).toBe(0);
  await context.close();
});

test('a flicker within it warns first; where less motion is asked for it asks again; Escape stops it', async () => {
  const { page, context, complaints } = await openWindow(browser);
  await openShot(page, await bringIn(), 'pour-1');
  const see = panel(page).getByRole('button', { name: 'See it flicker…' });
  const light = panel(page).locator('.patch-light');
  await see.focus();
  await page.keyboard.press('Enter');
  const warning = panel(page).getByRole('alertdialog', { name: 'Before it plays' });
  await warning.getByText(/seizures/).waitFor();
  // What has the cursor is to leave it.
  await soon(() => isFocused(warning.getByRole('button', { name: 'Leave it' }))).toBe(true);
  await page.keyboard.press('Enter');
  await soon(() => isFocused(see)).toBe(true);
  await see.click();
  await warning.getByRole('button', { name: 'Play it for 10 s' }).click();
  await warning.getByText(/asks for less motion/).waitFor();
  expect(await light.count()).toBe(0);
  await warning.getByRole('button', { name: 'Play it all the same' }).click();
  await light.waitFor();
  await page.keyboard.press('Escape');
  await light.waitFor({ state: 'detached' });
  await see.waitFor();
  expect(complaints).toEqual([]);
  await context.close();
});

test('what plays is the flicker at its own pace and depth, and it stops by itself', async () => {
  const id = await bringIn();
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, reducedMotion: 'no-preference' });
  const page = await context.newPage();
  await openShot(page, id, 'pour-1');
  await panel(page).getByRole('button', { name: 'See it flicker…' }).click();
  await panel(page).getByRole('button', { name: 'Play it for 10 s' }).click();
  const light = panel(page).locator('canvas.patch-light');
  await light.waitFor();
  const began = Date.now();
  /** Mean codes of the patch over two seconds, with when each was seen to change. */
  const codes = await light.evaluate(async (element) => {
    const canvas = element as HTMLCanvasElement;
    const picture = canvas.getContext('2d')!;
    const seen: number[] = [];
    const start = performance.now();
    while (performance.now() - start < 2000) {
      const { data } = picture.getImageData(0, 0, canvas.width, canvas.height);
      let sum = 0;
      for (let at = 0; at < data.length; at += 4) sum += data[at]!;
      const code = sum / (data.length / 4);
      if (code !== seen.at(-1)) seen.push(code);
      await new Promise((resolve) => requestAnimationFrame(resolve));
    }
    return seen;
  });
  // Two seconds of 25 frames each, some alike, some dropped on a busy machine.
  expect(codes.length).toBeGreaterThan(10);
  expect(codes.length).toBeLessThanOrEqual(52);
  const linear = (code: number) => ((code / 255 + 0.055) / 1.055) ** 2.4;
  const lights = codes.filter((code) => code > 0).map(linear);
  const [least, most] = [Math.min(...lights), Math.max(...lights)];
  expect(Math.log2(most / least)).toBeGreaterThan(0.02);
  expect(Math.log2(most / least)).toBeLessThan(0.035);
  await light.waitFor({ state: 'detached', timeout: 20_000 });
  expect(Date.now() - began).toBeGreaterThan(8000);
  await context.close();
}, 60_000);
