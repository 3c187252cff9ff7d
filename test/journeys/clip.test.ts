/** One clip in a real browser: stopped at any frame, played after a warning, its kept part dragged, read by any means. */
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { bringIn, faultsOf, isFocused, outlineFaults, soon } from '../access.ts';
import { openBrowser, openWindow, overflow_px, overlappingTexts, SIZES, smallTargets, startServer, type Served } from '../browser.ts'; // prettier-ignore
import { noFfmpeg, writeClip } from '../footage/clips.ts';
import { synthetic, type Scene } from '../footage/synthetic.ts';

const [WIDTH, HEIGHT, COUNT] = [192, 108, 96];
const SCENE: Scene = { width: WIDTH, height: HEIGHT, rate_fps: 1000, frames: COUNT, exposure_s: 1 / 2000, seed: 2, lamps: [{ light: { kind: 'steady' } }] }; // prettier-ignore
/** The bar that says which frame a picture is grows by so many pixels a frame. */
const GROWS_px = WIDTH / COUNT;

/** A drop before a card; along the head of each frame a bright bar as long as its number. */
function numbered() {
  const drop = { radius_px: 8, bright: 0.9, x_px: () => 100, y_px: (t_s: number) => 20 + 1800 * Math.max(0, t_s - 0.03) }; // prettier-ignore
  const { planes } = synthetic('numbered', { ...SCENE, drop });
  planes.forEach((plane, frame) => {
    for (let y = 0; y < 24; y += 1)
      for (let x = 0; x < WIDTH; x += 1) plane[y * WIDTH + x] = x < GROWS_px * (frame + 0.5) ? 2600 : 200;
  });
  return { planes, scene: SCENE };
}

const HOT = [
  [40, 70],
  [150, 90],
] as const;
const SWAPPED = 60;

/** A falling drop with two pixels that are always bright, and a pair of frames that changed places. */
function faulty() {
  const drop = { radius_px: 8, bright: 0.9, x_px: () => 100, y_px: (t_s: number) => -12 + 1500 * Math.max(0, t_s - 0.02) }; // prettier-ignore
  const planes = [...synthetic('faulty', { ...SCENE, drop }).planes];
  [planes[SWAPPED], planes[SWAPPED + 1]] = [planes[SWAPPED + 1]!, planes[SWAPPED]!];
  for (const plane of planes) for (const [x, y] of HOT) plane[y * WIDTH + x] = 3900;
  return { planes, scene: SCENE };
}

/** Runs in the page: the number that the picture itself shows. */
function readNumber([width, height, grows_px]: readonly [number, number, number]): number {
  const video = document.querySelector<HTMLVideoElement>('.clip-picture video')!;
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [width, height];
  const context = canvas.getContext('2d')!;
  context.drawImage(video, 0, 0, width, height);
  const { data } = context.getImageData(0, 12, width, 1);
  const level = (x: number) => data[4 * x]!;
  // To a part of a pixel, as coding blurs the end of the bar.
  const bright = Array.from({ length: width }, (_, x) => Math.min(1, Math.max(0, (level(x) - level(width - 1)) / (level(0) - level(width - 1))))); // prettier-ignore
  return Math.round(bright.reduce((sum, share) => sum + share, 0) / grows_px - 0.5);
}

describe.skipIf(noFfmpeg)('the view of a clip', () => {
  const folder = mkdtempSync(join(tmpdir(), 'longsecond-clip-'));
  let served: Served;
  let browser: Browser;
  let shootCount = 0;

  beforeAll(async () => {
    writeClip(join(folder, 'numbered.mkv'), numbered());
    // Copies are kept by file: this one is no other journey's.
    copyFileSync(join(folder, 'numbered.mkv'), join(folder, 'not-copied.mkv'));
    writeClip(join(folder, 'faulty.mkv'), faulty());
    const flashing = [{ light: { kind: 'ripple', f_Hz: 100, depth: 0.5 } as const }];
    writeClip(join(folder, 'flashing.mkv'), synthetic('flashing', { ...SCENE, rate_fps: 250, width: 96, height: 64, lamps: flashing })); // prettier-ignore
    [served, browser] = await Promise.all([startServer([], ['--footage', folder]), openBrowser()]);
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    await served?.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  const post = async (path: string, body: unknown) => {
    const reply = await fetch(`${served.url}/api/shoots/${path}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }); // prettier-ignore
    expect([path, reply.status]).toEqual([path, 200]);
  };

  /** A shoot of its own with one clip in it, measured, its small copy made unless that is left to the journey. */
  const withClip = async (file: string, told: object, hasCopy = true) => {
    shootCount += 1;
    const id = `clip-journey-${shootCount}`;
    await bringIn(served, id, await (await fetch(`${served.url}/api/shoots/demo/text`)).text());
    const clipId = `clip-of-journey-${shootCount}`;
    const root = folder.slice(folder.lastIndexOf('/') + 1);
    const happen = (kind: string, event: object) => post(`${id}/footage`, { eventId: `journey-${kind}-${shootCount}`, event: { kind, clipId, ...event } }); // prettier-ignore
    await happen('added', { folder: root, path: file });
    await happen('told', told);
    await post(`${id}/footage/${clipId}/measure`, { isAnew: true });
    if (hasCopy) await post(`${id}/footage/${clipId}/proxy`, {});
    const look = async () => ((await (await fetch(`${served.url}/api/shoots/${id}/footage`)).json()) as { readonly clips: readonly { readonly measuring?: { readonly state: string }; readonly proxy: { readonly state: string } }[] }).clips[0]!; // prettier-ignore
    await soon(async () => (await look()).measuring?.state).toBe('done');
    if (hasCopy) await soon(async () => (await look()).proxy.state).toBe('ready');
    return { id, clipId, href: `${served.url}/${id}/footage/${clipId}` };
  };

  const opened = async (href: string, options?: Parameters<typeof openWindow>[1]) => {
    const window = await openWindow(browser, options);
    await window.page.goto(href);
    await grip(window.page, 'Where the clip stands').waitFor();
    return window;
  };

  const grip = (page: Page, name: string) => page.getByRole('slider', { name });
  const now = async (page: Page) => Number(await grip(page, 'Where the clip stands').getAttribute('aria-valuenow'));
  const number = (page: Page) => page.evaluate(readNumber, [WIDTH, HEIGHT, GROWS_px] as const);
  const keptLine = (page: Page) => page.locator('.clip-kept-line').textContent();

  test('marks what is at fault where it is: pixels over the picture, frames out of order on the axis', async () => {
    const { href } = await withClip('faulty.mkv', { captureRate_fps: 1000 });
    const { page, context, complaints } = await opened(href);
    await page.getByText('Frames 60 and 61 seem to have changed places').waitFor();
    expect(await page.locator('.is-faults small').textContent()).toBe('none missing, none repeated, 1 out of order');
    expect(await page.locator('.clip-swapped').getAttribute('d')).toMatch(/^M[\d.]+ 2V11M[\d.]+ 15V24$/);

    /** Middle of each mark, in pixels of the clip. */
    const marks = () =>
      page.locator('.spot-mark').evaluate((path: SVGPathElement) => {
        const each = path.getAttribute('d')!.split('Z').slice(0, -1);
        return each.map((d) => d.match(/[\d.]+/g)!.map(Number)).map(([x = 0, , , y = 0]) => [x - 0.5, y - 0.5]);
      });
    expect(await marks()).toEqual(HOT);
    const boxOf = (of: string) => page.locator(of).boundingBox();
    const apart = async () => {
      const [over, picture] = [(await boxOf('.clip-spots'))!, (await boxOf('.clip-image'))!];
      return (['x', 'y', 'width', 'height'] as const).map((side) => over[side] - picture[side]);
    };
    await soon(apart).toEqual([0, 0, 0, 0]);

    const choice = page.getByRole('checkbox', { name: 'Mark spots: pixels 2' });
    expect(await choice.isChecked()).toBe(true);
    await choice.press('Space');
    await page.locator('.clip-spots').waitFor({ state: 'detached' });
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('two fingers on the axis come closer, and the playhead stays where it was', async () => {
    const { href } = await withClip('numbered.mkv', { captureRate_fps: 1000 });
    const { page, context, complaints } = await opened(href, { size: SIZES[2] });
    const ground = page.locator('.clip-ground');
    await ground.scrollIntoViewIfNeeded();
    const { x, y, width } = (await ground.boundingBox())!;
    const all = page.getByRole('button', { name: 'All of it' });
    expect(await all.getAttribute('aria-disabled')).toBe('true');
    const glass = await context.newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...at: readonly number[]) =>
      glass.send('Input.dispatchTouchEvent', { type, touchPoints: at.map((share, id) => ({ id, x: x + share * width, y: y + 60 })) }); // prettier-ignore
    await touch('touchStart', 0.4);
    const stood = await now(page);
    await touch('touchStart', 0.4, 0.6);
    for (const by of [0.05, 0.1, 0.15, 0.2]) await touch('touchMove', 0.4 - by, 0.6 + by);
    await touch('touchEnd', 0.2);
    await touch('touchEnd');
    await soon(() => all.getAttribute('aria-disabled')).toBe('false');
    expect(await now(page)).toBe(stood);
    // A fifth of the clip lies between the fingers, which stand three fifths of the width apart.
    const share = async () => {
      const mark = (await grip(page, 'Where the clip stands').boundingBox())!;
      return (mark.x + mark.width / 2 - x) / width;
    };
    const shown = 1 / 3;
    const from = 0.4 - 0.2 * shown;
    await soon(share).toBeCloseTo((stood / COUNT - from) / shown, 1);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('stops at the very frame that is asked for: by key, by the axis, and where playing is stopped', async () => {
    const { href } = await withClip('numbered.mkv', { captureRate_fps: 1000 });
    const { page, context, complaints } = await opened(href);
    const stands = async (frame: number) => {
      await soon(() => now(page)).toBe(frame);
      await soon(() => number(page), `the picture of frame ${frame}`).toBe(frame);
    };
    const head = grip(page, 'Where the clip stands');
    await head.press('Home');
    await stands(0);
    await page.locator('h1').click();
    for (const [key, frame] of [
      ['.', 1],
      ['.', 2],
      ['ArrowRight', 3],
      [',', 2],
      ['Shift+ArrowRight', 12],
      ['ArrowLeft', 11],
    ] as const) {
      // prettier-ignore
      await page.keyboard.press(key);
      await stands(frame);
    }
    await head.press('End');
    await stands(COUNT - 1);
    await page.locator('.clip-ground').scrollIntoViewIfNeeded();
    const ground = (await page.locator('.clip-ground').boundingBox())!;
    for (const share of [0.1, 0.33, 0.71]) {
      await page.mouse.click(ground.x + share * ground.width, ground.y + 0.7 * ground.height);
      await stands(Math.floor(share * COUNT));
    }
    await soon(() => page.locator('.clip-readout').textContent()).toMatch(
      /^Frame68 of 96On the set68 msOn the screen2\.72 s$/,
    );

    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await soon(() => now(page)).toBeGreaterThan(70);
    await page.getByRole('button', { name: 'Stop', exact: true }).click();
    await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
    await stands(await now(page));
    expect(complaints).toEqual([]);
    await context.close();
  }, 60_000);

  test('the last frame kept is dragged, both times follow, and it is still so after the page is read anew', async () => {
    const { href } = await withClip('numbered.mkv', { captureRate_fps: 1000 });
    const { page, context, complaints } = await opened(href);
    const before = await keptLine(page);
    expect(before).not.toContain('Back to the suggestion');
    const out = grip(page, 'Last frame kept');
    await out.scrollIntoViewIfNeeded();
    const ground = (await page.locator('.clip-ground').boundingBox())!;
    const box = (await out.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const from = Number(await out.getAttribute('aria-valuenow'));
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x - (10.2 / COUNT) * ground.width, y, { steps: 4 });
    await soon(() => out.getAttribute('aria-valuenow')).toBe(String(from - 10));
    // One sees what one cuts at.
    await soon(() => number(page)).toBe(from - 10);
    await page.mouse.up();
    await out.press('ArrowLeft');
    await soon(() => out.getAttribute('aria-valuenow')).toBe(String(from - 11));
    const first = Number(await grip(page, 'First frame kept').getAttribute('aria-valuenow'));
    const count = from - 11 - first + 1;
    const said = `Kept: frames ${first} to ${from - 11}, ${count} frames, ${count} ms on the set, ${(count / 25).toFixed(2)} s on the screen.`;
    await soon(() => keptLine(page)).toContain(said);

    await soon(() => page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('longsecond.footage')))).toEqual([]); // prettier-ignore
    await page.reload();
    await out.waitFor();
    await soon(() => keptLine(page)).toContain(said);
    await page.getByRole('button', { name: 'Back to the suggestion' }).click();
    await soon(() => keptLine(page)).toBe(before);
    expect(complaints).toEqual([]);
    await context.close();
  }, 60_000);

  test('Escape puts back an end that is being dragged, and nothing is kept', async () => {
    const { href } = await withClip('numbered.mkv', { captureRate_fps: 1000 });
    const { page, context } = await opened(href);
    const before = await keptLine(page);
    const out = grip(page, 'Last frame kept');
    await out.scrollIntoViewIfNeeded();
    const box = (await out.boundingBox())!;
    await out.focus();
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x - 120, box.y + box.height / 2, { steps: 3 });
    await soon(() => keptLine(page)).not.toBe(before);
    await page.keyboard.press('Escape');
    await soon(() => keptLine(page)).toBe(before);
    await page.mouse.up();
    expect(await keptLine(page)).toBe(before);
    await context.close();
  }, 60_000);

  test('what flashes plays only after a warning, and again where less motion is asked for; leaving it plays nothing', async () => {
    const { href } = await withClip('flashing.mkv', { captureRate_fps: 250 });
    const { page, context, complaints } = await opened(href);
    const play = page.getByRole('button', { name: 'Play', exact: true });
    const warning = page.getByRole('alertdialog', { name: 'Before it plays' });
    await soon(() => play.isEnabled()).toBe(true);
    const stood = await now(page);
    await play.click();
    expect(await warning.textContent()).toMatch(/flashes 10 times a second on the screen, by \d\d %/);
    const leave = page.getByRole('button', { name: 'Leave it' });
    await soon(() => isFocused(leave)).toBe(true);
    await leave.click();
    await warning.waitFor({ state: 'detached' });
    expect(await now(page)).toBe(stood);

    await page.keyboard.press('Space');
    await warning.waitFor();
    await page.getByRole('button', { name: 'Play it', exact: true }).click();
    await soon(() => warning.textContent()).toMatch(/asks for less motion/);
    await page.getByRole('button', { name: 'Play it all the same' }).click();
    await soon(() => now(page)).not.toBe(stood);
    await page.keyboard.press('Escape');
    await play.waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  }, 60_000);

  test('a small copy is made for whoever looks; where asking for it fails there are stills, and one press asks again', async () => {
    const { href } = await withClip('not-copied.mkv', { captureRate_fps: 1000 }, false);
    const { page, context } = await openWindow(browser);
    await page.route('**/proxy', (route) => (route.request().method() === 'POST' ? route.abort() : route.continue()));
    await page.goto(href);
    await page.locator('.clip-picture img').waitFor();
    expect(await page.getByRole('button', { name: 'Play', exact: true }).isDisabled()).toBe(true);
    await grip(page, 'Where the clip stands').press('Home');
    await soon(() => page.locator('.clip-picture img').getAttribute('data-frame')).toBe('0');
    await page.unroute('**/proxy');
    await page.getByRole('button', { name: 'Make the small copy' }).click();
    await soon(() => page.getByRole('button', { name: 'Play', exact: true }).isEnabled()).toBe(true);
    await soon(() => number(page)).toBe(0);
    await context.close();

    copyFileSync(join(folder, 'numbered.mkv'), join(folder, 'looked-at.mkv'));
    const other = await withClip('looked-at.mkv', { captureRate_fps: 1000 }, false);
    const looking = await opened(other.href);
    await soon(() => looking.page.getByRole('button', { name: 'Play', exact: true }).isEnabled()).toBe(true);
    expect(looking.complaints).toEqual([]);
    await looking.context.close();
  }, 60_000);

  test('beside another, a clip that flashes plays only after a warning, which Enter leaves', async () => {
    const { id, clipId } = await withClip('flashing.mkv', { captureRate_fps: 250 });
    const root = folder.slice(folder.lastIndexOf('/') + 1);
    const beside = { clipId: 'clip-beside-a-flash', eventId: 'journey-beside-a-flash' };
    await post(`${id}/footage`, { eventId: `${beside.eventId}-1`, event: { kind: 'added', clipId: beside.clipId, folder: root, path: 'numbered.mkv' } }); // prettier-ignore
    await post(`${id}/footage`, { eventId: `${beside.eventId}-2`, event: { kind: 'told', clipId: beside.clipId, captureRate_fps: 1000 } }); // prettier-ignore
    await post(`${id}/footage/${beside.clipId}/measure`, { isAnew: true });
    const { page, context, complaints } = await openWindow(browser);
    await page.goto(`${served.url}/${id}/footage/${clipId}?with=${beside.clipId}`);
    const play = page.getByRole('button', { name: 'Play both' }).first();
    await page.locator('.pair-table').waitFor();
    await soon(() => play.isEnabled(), 'both small copies').toBe(true);
    const times = () => page.locator('.pair-pictures video').evaluateAll((videos: HTMLVideoElement[]) => videos.map(({ currentTime }) => currentTime)); // prettier-ignore
    const stood = await times();
    const warning = page.getByRole('alertdialog');
    await play.click();
    await warning.waitFor();
    expect(await warning.textContent()).toMatch(/^This clip flashes .* times a second/);
    await page.keyboard.press('Enter');
    await warning.waitFor({ state: 'detached' });
    expect(await times()).toEqual(stood);
    await play.click();
    await warning.getByRole('button', { name: 'Play both' }).click();
    await warning.getByRole('button', { name: 'Play it all the same' }).click();
    await page.getByRole('button', { name: 'Stop both' }).waitFor();
    await soon(async () => (await times()).some((time, i) => time !== stood[i])).toBe(true);
    await page.keyboard.press('Escape');
    await play.waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  }, 60_000);

  test('a line chosen in the spectrum shows where it is, in steps over the picture and in figures beneath', async () => {
    const { href } = await withClip('flashing.mkv', { captureRate_fps: 250, shotId: 'crown' });
    const { page, context, complaints } = await opened(href);
    const line = page.locator('.clip-line').first();
    expect(await line.textContent()).toMatch(/^1Pulses/);
    await line.click();
    await soon(() => page.locator('.clip-tiles rect[fill]').count()).toBeGreaterThan(20);
    expect(await page.getByLabel('Over the picture', { exact: true }).inputValue()).toBe('flicker');
    await page.getByText('Flicker of each tile, in figures').click();
    const cells = await page.locator('.tile-table td').allTextContents();
    expect(cells.filter((text) => / %$/.test(text)).length).toBeGreaterThan(40);
    await page.getByLabel('Over the picture', { exact: true }).selectOption('');
    await soon(() => page.locator('.clip-tiles').count()).toBe(0);
    expect(complaints).toEqual([]);
    await context.close();
  }, 60_000);

  test.each([
    ['dark', SIZES[0]],
    ['light', SIZES[1]],
    ['stage', SIZES[2]],
  ] as const)(
    'can be read and reached by anybody, in its %s look',
    async (theme, size) => {
      const { href } = await withClip('numbered.mkv', { captureRate_fps: 1000, shotId: 'crown' });
      const { page, context } = await opened(href, { theme, size });
      await page.getByLabel('Over the picture', { exact: true }).selectOption('sharpness');
      expect(await overflow_px(page)).toBeLessThanOrEqual(0);
      expect(await faultsOf(page)).toEqual([]);
      expect(await outlineFaults(page)).toEqual([]);
      expect(await smallTargets(page, 24)).toEqual([]);
      expect(await overlappingTexts(page)).toEqual([]);
      await context.close();
    },
    60_000,
  );

  test('a clip whose file is gone keeps what was measured of it, and says where the file was', async () => {
    writeClip(join(folder, 'gone.mkv'), numbered());
    const { href } = await withClip('gone.mkv', { captureRate_fps: 1000 }, false);
    rmSync(join(folder, 'gone.mkv'));
    const { page, context } = await opened(href);
    await page.getByText('not here any more').waitFor();
    expect(await page.locator('.clip-copy').textContent()).toMatch(/cannot be played/);
    expect(await page.getByRole('button', { name: /small copy|Measure/ }).count()).toBe(0);
    await grip(page, 'Where the clip stands').press('End');
    await soon(() => page.locator('.is-light .clip-value').textContent()).toMatch(/^mean [\d.]+$/);
    await context.close();
  }, 60_000);

  test('a first look is said to be one, with its verdict and its spectrum, and without an axis', async () => {
    const { href } = await withClip('numbered.mkv', { captureRate_fps: 1000 });
    const { page, context } = await openWindow(browser);
    await page.route('**/measured', async (route) => {
      const answer = await route.fetch();
      const kept = (await answer.json()) as { readonly clip: object };
      await route.fulfill({ response: answer, json: { ...kept, clip: { ...kept.clip, isWhole: false } } });
    });
    await page.goto(href);
    await page.getByText(/^A first look at 96 frames/).waitFor();
    expect(await page.getByRole('application', { name: /^Spectrum of the light/ }).count()).toBe(1);
    expect(await grip(page, 'Where the clip stands').count()).toBe(0);
    expect(await overflow_px(page)).toBeLessThanOrEqual(0);
    await context.close();
  }, 60_000);

  test('a clip that was never added says so, and leads to those that were', async () => {
    const { page, context } = await openWindow(browser);
    await page.goto(`${served.url}/demo/footage/clip-that-never-was`);
    await page.getByRole('heading', { name: 'No such clip' }).waitFor();
    await page.getByRole('button', { name: 'All footage' }).click();
    await soon(() => page.url()).toMatch(/\/demo\/footage$/);
    await context.close();
  }, 60_000);
});
