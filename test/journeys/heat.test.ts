/** Heat on a product and light in eyes, as the screens tell of them: the life clock, its ways, the alert, and the meter's word. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser } from 'playwright-core';
import { openBrowser, openWindow, overflow_px, SIZES, startServer, type Served } from '../browser.ts';

let served: Served;
let browser: Browser;

beforeAll(async () => {
  [served, browser] = await Promise.all([startServer(), openBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

/** Dark chocolate 2 mm thick, 10 K below where its gloss goes, under 50 klx of a filament; its face is known. */
const HEAT = `longsecond: 1
shoot: { title: Heat journey, air: 18 °C }
kit:
  cameras:
    heron:
      title: Heron
      pitch: 6 µm
      activeArea: 4096 x 2304
      modes: { full: { title: Full, pixels: 4096 x 2304, rate: 1000 fps, bits: 12 } }
      memory: 96 GB
      baseIndex: 800
      lowestIndex: 800
      highestIndex: 800
      headroom: 3 stops
      readNoise: 18 e-
      quantumEfficiency: 0.4
      saveRate: 1 GB/s
  lenses:
    macro: { title: 100 mm, focalLength: 100 mm, widest: T2.8, narrowest: T22, transmittance: 85 %, closeFocus: 300 mm, imageCircle: 46 mm }
  lamps:
    fresnel: { title: Fresnel, kind: tungsten, illuminance: 50 klx, distance: 2 m, beam: 20°, field: 38°, face: { width: 250 mm }, warmUp: 1 min }
  products:
    curl: { title: Curl, warms: dark-chocolate, start: 18 °C, thickness: 2 mm }
deliverables:
  film: { title: Film, rate: 25, pixels: 1920 x 1080 }
lighting:
  key: { title: Key, lamps: { rim: { title: Rim, lamp: fresnel, at: '0 m, -2 m, 0 m' } } }
shots:
  break: { title: A curl breaks, action: { duration: 60 ms, speed: 1 m/s }, screenTime: 2 s, frameWidth: 120 mm, blur: 4 px, lighting: key, hero: { product: curl, lightOn: 1 min } }
`;

const bringIn = async (editId: string): Promise<string> => {
  const reply = await fetch(`${served.url}/api/shoots`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ editId, text: HEAT }),
  });
  return ((await reply.json()) as { readonly id: string }).id;
};

test('the life of what melts is drawn with what it rests on, and dimming the lamp is one edit that closes it', async () => {
  const id = await bringIn('heat-journey-life');
  const { page, context, complaints } = await openWindow(browser);
  await page.goto(`${served.url}/${id}/shot/break`);
  const life = page.locator('.life-panel');
  // 44 200 J/m² over 0.9 · 50 000 / 27.1 W/m²: 26.6 s.
  await life.getByText(/^Like dark chocolate it lasts 27 s at the shortest, and up to 53 s is as credible\./).waitFor();
  await life.getByText('a take lights it, 1 min').waitFor();
  expect(await page.locator('.shot-notes').textContent()).toContain('Lamps to full 1 min before the roll: Rim');

  await life.getByRole('button', { name: 'Where the time comes from' }).click();
  const trace = page.getByRole('dialog', { name: 'Where this comes from' });
  await trace.getByText(/from shortest credible time/).waitFor();
  await page.keyboard.press('Escape');

  await page.getByRole('radio', { name: /^Hero life/ }).click();
  await page.locator('.way-card', { hasText: 'Dim Rim to 44 %' }).click();
  await expect.poll(() => page.locator('.shell-standing').textContent(), { timeout: 15_000 }).toBe('saved, revision 1');
  await life.getByText(/so that one piece may stand|at the shortest/).waitFor();
  await expect.poll(() => page.getByRole('radio', { name: /^Hero life/ }).textContent()).not.toMatch(/short/);
  expect(complaints).toEqual([]);
  await context.close();
});

test('the light says how near is too near to look into a lamp, and what the meter does to the lamps', async () => {
  const id = await bringIn('heat-journey-eyes');
  const { page, context, complaints } = await openWindow(browser);
  await page.goto(`${served.url}/${id}/light/key`);
  const care = page.getByRole('region', { name: 'Cautions' });
  await care.getByText('too near to look into').waitFor();
  await care
    .getByText(/For the hundred seconds that people look in all, keep \S+ m off, for its infrared\.$/)
    .waitFor();
  await care.getByText(/an alert, not an assessment/).waitFor();
  expect(await care.textContent()).not.toMatch(/\bsafe/i);

  const reading = page.getByLabel('Reading at the subject');
  await reading.fill('25 klx');
  await reading.press('Enter');
  await page
    .getByText(
      'The reading counts: map and lamps are shown 1.0 stop darker than written. Read it again once a lamp has moved.',
    )
    .waitFor();
  await expect.poll(() => page.locator('[data-row="rim"] .light-row-figures b').textContent()).toBe('25 klx');
  expect(complaints).toEqual([]);
  await context.close();
});

test.each(SIZES)('at $width × $height nothing of either is wider than the window', async (size) => {
  const id = await bringIn(`heat-journey-${size.width}`);
  const { page, context } = await openWindow(browser, { size });
  for (const path of ['shot/break', 'light/key']) {
    await page.goto(`${served.url}/${id}/${path}`);
    await page.locator('.life-panel, .light-glare').first().waitFor();
    expect(await overflow_px(page), path).toBeLessThanOrEqual(0);
  }
  await context.close();
});
