/** Files in and out: pictures on the board, whole shoots as zips, and the list of many shoots. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser, Locator, Page } from 'playwright-core';
import { ROOT } from '../../tools/run.mjs';
import { openBrowser, openWindow, startServer, type Served, type Window } from '../browser.ts';

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

/** The demo once more, under a title of its own. */
const freshShoot = async (title: string): Promise<string> => {
  const editId = `journey-${Math.random().toString(36).slice(2, 12)}`;
  const answer = await fetch(`${served.url}/api/shoots/demo/duplicate`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ editId, title }),
  });
  return ((await answer.json()) as { readonly id: string }).id;
};

const openShoot = async (title: string): Promise<Window & { readonly id: string }> => {
  const id = await freshShoot(title);
  const window = await openWindow(browser);
  await window.page.goto(`${served.url}/${id}`);
  await window.page.locator('.frame').first().waitFor();
  return { ...window, id };
};

interface Written {
  readonly files?: Readonly<Record<string, { readonly name: string; readonly sha256: string; readonly kind: string; readonly size: string }>>;
  readonly board: Readonly<Record<string, { readonly title?: string; readonly picture?: string }>>;
} // prettier-ignore

const writtenOf = async (id: string): Promise<Written> =>
  ((await (await fetch(`${served.url}/api/shoots/${id}`)).json()) as { readonly written: Written }).written;

interface Drawn {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

/** A picture of these pixels, drawn by the browser. */
const draw = async (page: Page, name: string, { width, height, hue }: { readonly width: number; readonly height: number; readonly hue: number }): Promise<Drawn> => {
  const base64 = await page.evaluate(
    (given) => {
      const canvas = Object.assign(document.createElement('canvas'), { width: given.width, height: given.height });
      const context = canvas.getContext('2d')!;
      context.fillStyle = `hsl(${given.hue} 60% 50%)`;
      context.fillRect(0, 0, given.width, given.height);
      return canvas.toDataURL('image/png').split(',')[1]!;
    },
    { width, height, hue },
  );
  return { name, mimeType: 'image/png', buffer: Buffer.from(base64, 'base64') };
}; // prettier-ignore

/** Drops or pastes pictures onto a part of the page, as a person's hand would. */
const hand = (target: Locator, event: 'drop' | 'paste', pictures: readonly Drawn[]) =>
  target.evaluate(
    (element, given) => {
      const data = new DataTransfer();
      for (const { name, mimeType, base64 } of given.files) {
        const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
        data.items.add(new File([bytes], name, { type: mimeType }));
      }
      const options = { bubbles: true, cancelable: true };
      const made =
        given.event === 'drop'
          ? new DragEvent('drop', { ...options, dataTransfer: data })
          : new ClipboardEvent('paste', { ...options, clipboardData: data });
      element.dispatchEvent(made);
    },
    { event, files: pictures.map(({ name, mimeType, buffer }) => ({ name, mimeType, base64: buffer.toString('base64') })) },
  ); // prettier-ignore

const isSeen = (picture: Locator) =>
  picture.evaluate((image: HTMLImageElement) => image.complete && image.naturalWidth > 0);

test('a frame takes a picture, scaled down, in one edit; undo takes it back and the placeholder stands again', async () => {
  const { page, context, complaints, id } = await openShoot('Pictures');
  const large = await draw(page, 'glass.png', { width: 3200, height: 1800, hue: 30 });
  const frame = page.locator('.frame').first();
  await frame.getByRole('button', { name: /^Frame 1/ }).click();
  await page.getByRole('dialog').getByLabel('Choose a picture').setInputFiles(large);
  await page.keyboard.press('Escape');
  const picture = frame.locator('img');
  await expect.poll(() => isSeen(picture).catch(() => false)).toBe(true);
  expect(await picture.evaluate((image: HTMLImageElement) => [image.naturalWidth, image.naturalHeight])).toEqual([
    1600, 900,
  ]);
  expect(await picture.getAttribute('alt')).toBe('Amber climbs the glass, lit from behind.');
  await expect.poll(() => page.locator('.shell-standing').textContent()).toBe('saved, revision 1');
  const { files = {}, board } = await writtenOf(id);
  const [[fileId, entry] = []] = Object.entries(files);
  expect(Object.values(board)[0]?.picture).toBe(fileId);
  expect(entry).toMatchObject({ name: 'glass.webp', kind: 'image/webp' });
  expect(entry?.sha256).toMatch(/^[0-9a-f]{64}$/);
  expect(entry?.size).toMatch(/^\d+ B$/);
  await page.keyboard.press('Control+z');
  await expect.poll(() => frame.locator('.frame-words').textContent()).toBe('Amber climbs the glass, lit from behind.');
  await expect.poll(async () => (await writtenOf(id)).files).toBeUndefined();
  expect(complaints).toEqual([]);
  await context.close();
});

test('pictures are dropped and pasted, several become frames, and one is taken out with its file', async () => {
  const { page, context, complaints, id } = await openShoot('Drops');
  const count = await page.locator('.frame').count();
  const [one, two, three] = await Promise.all([10, 120, 240].map((hue) => draw(page, `hue_${hue}.png`, { width: 320, height: 180, hue })));
  await hand(page.locator('.frame').nth(1), 'drop', [one!]);
  await expect.poll(() => page.locator('.frame').nth(1).locator('img').count()).toBe(1);
  await hand(page.locator('.frame-open').nth(2), 'paste', [two!]);
  await expect.poll(() => page.locator('.frame').nth(2).locator('img').count()).toBe(1);
  await hand(page.locator('.board-frames'), 'drop', [two!, three!]);
  await expect.poll(() => page.locator('.frame').count()).toBe(count + 2);
  await expect.poll(() => page.locator('.frame-title').nth(count).textContent()).toContain('hue 120');
  await expect.poll(() => page.locator('.shell-standing').textContent()).toBe('saved, revision 3');
  // A small picture goes as it is, and the same picture twice is one file.
  const { files = {} } = await writtenOf(id);
  expect(Object.values(files).map(({ name, kind }) => [name, kind])).toEqual([
    ['hue_10.png', 'image/png'],
    ['hue_120.png', 'image/png'],
    ['hue_240.png', 'image/png'],
  ]);
  await page.locator('.frame-open').nth(1).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Take it out' }).click();
  await expect.poll(async () => Object.keys((await writtenOf(id)).files ?? {}).length).toBe(2);
  expect(complaints).toEqual([]);
  await context.close();
}); // prettier-ignore

test('without a network a picture waits and says so, and goes by itself when the network is back', async () => {
  const { page, context, id } = await openShoot('Away');
  const picture = await draw(page, 'away.png', { width: 320, height: 180, hue: 80 });
  await context.setOffline(true);
  await hand(page.locator('.frame').first(), 'drop', [picture]);
  await expect.poll(() => page.locator('.board-pictures').textContent()).toContain('pictures need the connection');
  expect((await writtenOf(id)).files).toBeUndefined();
  await context.setOffline(false);
  await expect.poll(async () => Object.keys((await writtenOf(id)).files ?? {}).length).toBe(1);
  await expect.poll(() => page.locator('.frame').first().locator('img').count()).toBe(1);
  expect(await page.locator('.board-pictures').count()).toBe(0);
  await context.close();
});

test('what is no picture is refused by name, and a picture whose file is not here says which', async () => {
  const { page, context, id } = await openShoot('Wrong');
  await hand(page.locator('.frame').first(), 'drop', [
    { name: 'notes.pdf', mimeType: 'application/pdf', buffer: Buffer.from('%PDF-1.7') },
  ]);
  await expect.poll(() => page.locator('.board-pictures').textContent()).toContain('notes.pdf is no picture');
  const patch = [
    { op: 'add', path: '/files', value: { lost: { name: 'lost.png', sha256: 'a'.repeat(64), size: '10 B', kind: 'image/png' } } },
    { op: 'add', path: '/board/b1/picture', value: 'lost' },
  ];
  await fetch(`${served.url}/api/shoots/${id}/edits`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ editId: 'journey-lost-0001', revision: 0, patch, summary: 'A picture that is not here' }),
  });
  await expect.poll(() => page.locator('.frame-missing').textContent()).toBe('The picture is not herelost.png');

  const zip = Buffer.from(await (await fetch(`${served.url}/api/shoots/${id}/export?as=zip`)).arrayBuffer());
  await page.goto(`${served.url}/shoots`);
  await page.getByLabel('Choose a file').setInputFiles({ name: 'wrong.zip', mimeType: 'application/zip', buffer: zip });
  await page.getByRole('heading', { name: 'Brought in: Wrong' }).waitFor();
  expect(await page.locator('.shoots-refused li').allTextContents()).toEqual(['lost.png (lost)']);
  await page.getByRole('button', { name: 'Open it' }).click();
  await page.locator('.frame-missing').waitFor();
  await context.close();
}); // prettier-ignore

test('a shoot leaves as a zip with its pictures and comes in again with them', async () => {
  const { page, context, complaints, id } = await openShoot('Parcel');
  await hand(page.locator('.frame').first(), 'drop', [await draw(page, 'in.png', { width: 320, height: 180, hue: 200 })]);
  await expect.poll(() => page.locator('.shell-standing').textContent()).toBe('saved, revision 1');
  await page.goto(`${served.url}/shoots`);
  const download = async (as: RegExp) => {
    await page.getByRole('button', { name: 'More for Parcel', exact: true }).click();
    const [file] = await Promise.all([page.waitForEvent('download'), page.getByRole('menuitem', { name: as }).click()]);
    return file;
  };
  const yaml = await download(/^Export as YAML/);
  expect(yaml.suggestedFilename()).toMatch(/\.yaml$/);
  expect(readFileSync(await yaml.path(), 'utf8')).toBe(await (await fetch(`${served.url}/api/shoots/${id}/text`)).text());
  const json = await download(/^Export as JSON/);
  expect(JSON.parse(readFileSync(await json.path(), 'utf8'))).toEqual(await writtenOf(id));
  const zip = await download(/^Export as zip/);
  await page.getByLabel('Choose a file').setInputFiles({ name: 'parcel.zip', mimeType: 'application/zip', buffer: readFileSync(await zip.path()) });
  await page.locator('.frame').first().waitFor();
  expect(new URL(page.url()).pathname).not.toBe(`/${id}`);
  await expect.poll(() => isSeen(page.locator('.frame').first().locator('img')).catch(() => false)).toBe(true);
  expect(complaints).toEqual([]);
  await context.close();
}); // prettier-ignore

test('a file that is neither text nor a zip of a shoot is refused with what to do, and nothing is stored', async () => {
  const { page, context } = await openWindow(browser);
  await page.goto(`${served.url}/shoots`);
  const count = async () =>
    ((await (await fetch(`${served.url}/api/shoots`)).json()) as { readonly shoots: readonly unknown[] }).shoots.length;
  const before = await count();
  for (const [name, buffer, says] of [
    ['photo.yaml', Buffer.from([0xff, 0xd8, 0xff, 0xe0]), /neither text in UTF-8 nor a zip/],
    ['half.zip', Buffer.from('PK\u0003\u0004 and no more'), /zip/i],
  ] as const) {
    await page.getByLabel('Choose a file').setInputFiles({ name, mimeType: 'application/octet-stream', buffer });
    await expect.poll(() => page.getByRole('alert').textContent()).toMatch(says);
    await page.getByRole('button', { name: 'Put this away' }).click();
  }
  expect(await count()).toBe(before);
  await context.close();
});

test('shoots are duplicated, made templates, begun from, archived and brought back', async () => {
  const { page, context, complaints } = await openWindow(browser);
  await page.goto(`${served.url}/shoots`);
  const choose = async (title: string, item: string | RegExp) => {
    await page.getByRole('button', { name: `More for ${title}`, exact: true }).click();
    await page.getByRole('menuitem', { name: item }).click();
  };
  const section = (title: string) =>
    page.locator('.shoots-section', { has: page.getByRole('heading', { name: title, exact: true }) });
  await choose('Quince & Clover, day 1', 'Duplicate…');
  const title = page.getByLabel('Title of the new shoot');
  expect(await title.inputValue()).toBe('Quince & Clover, day 1, again');
  await title.fill('House kit');
  await title.press('Enter');
  await page.getByRole('heading', { level: 1, name: 'House kit' }).waitFor();
  expect(await page.locator('.shot-row').count()).toBe(11);

  await page.goto(`${served.url}/shoots`);
  await choose('House kit', /^Make it a template/);
  await section('Templates').getByRole('link', { name: /House kit/ }).waitFor();
  await section('Templates').getByRole('button', { name: 'Begin from House kit' }).click();
  await title.fill('Day 2');
  await page.getByRole('dialog').getByRole('button', { name: 'Begin' }).click();
  await page.getByRole('heading', { level: 1, name: 'Day 2' }).waitFor();

  await page.goto(`${served.url}/shoots`);
  await section('Current').getByRole('link', { name: /Day 2/ }).waitFor();
  await choose('Day 2', /^Archive/);
  await section('Archived').getByRole('link', { name: /Day 2/ }).waitFor();
  await choose('Day 2', /^Bring back/);
  await section('Current').getByRole('link', { name: /Day 2/ }).waitFor();
  expect(complaints).toEqual([]);
  await context.close();
}); // prettier-ignore

test('the text that came in is the text that leaves', async () => {
  const text = await (await fetch(`${served.url}/api/shoots/demo/export?as=yaml`)).text();
  expect(text).toBe(DEMO);
});
