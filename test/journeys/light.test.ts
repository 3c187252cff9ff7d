/** The light in a real browser: lamps dragged and stepped, read and held against the meter, each as one edit that can be undone. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { openBrowser, openWindow, overflow_px, overlappingTexts, SIZES, smallTargets, startServer, type Served } from '../browser.ts'; // prettier-ignore

let served: Served;
let browser: Browser;

beforeAll(async () => {
  [served, browser] = await Promise.all([startServer(), openBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

const LIGHT = `longsecond: 1
shoot: { title: Light journey }
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
    spot: { title: Spot, power: 1 kW, illuminance: 20 klx, distance: 3 m, beam: 20°, field: 38° }
    panel: { title: Panel, face: { width: 1.2 m, height: 0.8 m, luminance: 30 kcd/m² } }
    bare: { title: Bare lamp, beam: 30° }
  modifiers:
    frost: { title: Frost, loss: 1 stops }
deliverables:
  film: { title: Film, rate: 25, pixels: 1920 x 1080 }
lighting:
  key:
    title: Key and fill
    lamps:
      left: { title: Left key, lamp: spot, at: '-1 m, -1.5 m, 1 m' }
      right: { title: Right fill, lamp: spot, at: '1 m, -1.5 m, 1 m', level: 50 % }
  back:
    title: Panel behind
    lamps:
      glow: { lamp: panel, at: '0 m, 600 mm, 0 m' }
shots:
  drop: { title: One drop, action: { duration: 60 ms, speed: 1 m/s }, screenTime: 4 s, frameWidth: 120 mm, depth: 4 mm, blur: 4 px, lighting: key }
  pour: { title: A pour, action: { duration: 60 ms, speed: 1 m/s }, screenTime: 4 s, frameWidth: 200 mm, depth: 4 mm, blur: 4 px, lighting: back, seen: lit-through }
`;

let count = 0;

const bringIn = async (text = LIGHT): Promise<string> => {
  count += 1;
  const reply = await fetch(`${served.url}/api/shoots`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ editId: `light-journey-bring-in-${count}`, text }),
  });
  return ((await reply.json()) as { readonly id: string }).id;
};

const lightingOf = async (shootId: string): Promise<Record<string, { lamps: Record<string, Record<string, unknown>> } & Record<string, unknown>>> => {
  const reply = await fetch(`${served.url}/api/shoots/${shootId}`);
  return ((await reply.json()) as { readonly written: { readonly lighting: never } }).written.lighting;
}; // prettier-ignore

const saved = async (page: Page, revision: number) =>
  expect
    .poll(() => page.locator('.shell-standing').textContent(), { timeout: 15_000 })
    .toBe(`saved, revision ${revision}`);

const openLight = async (shootId: string, setup = '', how: Parameters<typeof openWindow>[1] = {}) => {
  const window = await openWindow(browser, how);
  await window.page.goto(`${served.url}/${shootId}/light${setup}`);
  await window.page.locator('.light, .empty-place').first().waitFor();
  return window;
};

const plan = (page: Page) => page.locator('.light-plan svg');
const lampIn = (page: Page, id: string) => plan(page).locator(`[data-lamp="${id}"]`);
const undo = (page: Page) => page.getByRole('button', { name: /^Undo:/ });

/** Where the head of a lamp is in the window. */
const headOf = async (page: Page, id: string) => {
  const box = (await lampIn(page, id).locator('.light-head').boundingBox())!;
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};

test('a lamp dragged from above moves as one edit, its light follows under the hand, and undo puts it back', async () => {
  const id = await bringIn();
  const { page, context, complaints } = await openLight(id, '/key');
  const before = await page.locator('[data-row="left"] .light-row-figures').textContent();
  const from = await headOf(page, 'left');
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  for (let i = 1; i <= 10; i += 1) await page.mouse.move(from.x + 6 * i, from.y - 4 * i);
  await expect.poll(() => page.locator('[data-row="left"] .light-row-figures').textContent()).not.toBe(before);
  expect((await lightingOf(id))['key']!.lamps['left']!['at']).toBe('-1 m, -1.5 m, 1 m');
  await page.mouse.up();
  await saved(page, 1);
  const at = String((await lightingOf(id))['key']!.lamps['left']!['at']);
  expect(at).not.toBe('-1 m, -1.5 m, 1 m');
  expect(at.endsWith(', 1 m')).toBe(true);
  await undo(page).click();
  await saved(page, 2);
  expect((await lightingOf(id))['key']!.lamps['left']!['at']).toBe('-1 m, -1.5 m, 1 m');
  expect(complaints).toEqual([]);
  await context.close();
});

test('a lamp is moved by keyboard alone, told politely, and sent once its keys rest; the level drawing raises it', async () => {
  const id = await bringIn();
  const { page, context } = await openLight(id, '/key');
  await lampIn(page, 'left').focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowUp');
  await page.getByRole('status').filter({ hasText: 'Left key stands 900 mm left, 1.49 m in front, 1 m above' }).waitFor();
  await saved(page, 1);
  expect((await lightingOf(id))['key']!.lamps['left']!['at']).toBe('-900 mm, -1.49 m, 1 m');
  await page.locator('.light-elevation [data-lamp="left"]').focus();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Tab');
  await saved(page, 2);
  expect((await lightingOf(id))['key']!.lamps['left']!['at']).toBe('-900 mm, -1.49 m, 1.05 m');
  await context.close();
}); // prettier-ignore

/** The light at the subject, in klx, as it is told at the top of the list. */
const total_klx = async (page: Page) => Number.parseFloat((await page.locator('.light-total').textContent())!);

test('a flag is added, dragged before a lamp so that the light falls under the hand, and undo brings it back', async () => {
  const id = await bringIn();
  const { page, context, complaints } = await openLight(id, '/key');
  const before = await total_klx(page);
  await page.getByRole('button', { name: 'Add a flag' }).click();
  await saved(page, 1);
  const row = page.locator('[data-flag-row="flag-1"]');
  await row.getByText('takes nothing at the subject').waitFor();
  expect(await total_klx(page)).toBe(before);
  const flag = plan(page).locator('[data-flag="flag-1"] .light-letter-plate');
  const box = (await flag.boundingBox())!;
  const [left, right] = [await headOf(page, 'left'), await headOf(page, 'right')];
  // The lamps stand 1 m to either side and 1.5 m in front: the way from the right one is met at its own height here.
  const metre_px = (right.x - left.x) / 2;
  const target = { x: (left.x + right.x) / 2 + 0.3 * metre_px, y: left.y - (1.5 - 0.45) * metre_px };
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  for (let i = 1; i <= 8; i += 1) await page.mouse.move(box.x + box.width / 2 + ((target.x - box.x - box.width / 2) * i) / 8, box.y + box.height / 2 + ((target.y - box.y - box.height / 2) * i) / 8);
  await expect.poll(() => total_klx(page)).toBeLessThan(0.75 * before);
  await page.mouse.up();
  await saved(page, 2);
  await row.getByText(/^takes [\d.]+ klx, −0\.\d stops$/).waitFor();
  expect(await total_klx(page)).toBeLessThan(0.75 * before);
  await undo(page).click();
  await saved(page, 3);
  await row.getByText('takes nothing at the subject').waitFor();
  expect(await total_klx(page)).toBe(before);
  expect(complaints).toEqual([]);
  await context.close();
}); // prettier-ignore

test('a flag is moved and turned by keyboard alone, taken away and stood there again, and has a place in the printed schedule', async () => {
  const id = await bringIn();
  const { page, context } = await openLight(id, '/key');
  await page.getByRole('button', { name: 'Add a flag' }).click();
  await saved(page, 1);
  await plan(page).locator('[data-flag="flag-1"]').focus();
  await page.keyboard.press('ArrowRight');
  await page.getByRole('status').filter({ hasText: 'Flag A stands 730 mm right, 180 mm in front, 300 mm above' }).waitFor();
  await saved(page, 2);
  await plan(page).getByRole('button', { name: /^What is faced by flag A/ }).focus();
  await page.keyboard.press('ArrowUp');
  await page.getByRole('status').filter({ hasText: 'Flag A is square to 50 mm behind' }).waitFor();
  await saved(page, 3);
  await page.getByRole('button', { name: 'Flag A off' }).click();
  await saved(page, 4);
  const { flags } = (await lightingOf(id))['key'] as unknown as { readonly flags: unknown };
  expect(flags).toEqual({ 'flag-1': { at: '730 mm, -180 mm, 300 mm', width: '450 mm', height: '600 mm', faces: '0 m, 50 mm, 0 m', off: true } });
  await page.emulateMedia({ media: 'print' });
  const rows = page.getByRole('table', { name: 'Flag schedule' }).getByRole('row');
  await expect.poll(() => rows.nth(1).textContent()).toContain('Flag A, taken away730 mm right');
  await context.close();
}); // prettier-ignore

test('barn doors typed into the card cut the light at the subject', async () => {
  const id = await bringIn();
  const { page, context } = await openLight(id, '/key');
  const before = await total_klx(page);
  await page.locator('[data-row="right"] .light-row-name').click();
  await page.getByRole('textbox', { name: 'Aimed at' }).fill('700 mm, 0 m, 0 m');
  await page.keyboard.press('Enter');
  await saved(page, 1);
  await page.getByText('Barn doors').click();
  await page.getByRole('textbox', { name: 'Left', exact: true }).fill('2°');
  await page.keyboard.press('Enter');
  await saved(page, 2);
  await page.locator('[data-row="right"]').getByText('nothing on this side').waitFor();
  expect(await total_klx(page)).toBeLessThan(0.75 * before);
  expect((await lightingOf(id))['key']!.lamps['right']!['doors']).toEqual({ left: '2°' });
  await context.close();
});

test('Escape during a drag leaves the lamp where it was, and nothing is sent', async () => {
  const id = await bringIn();
  const { page, context } = await openLight(id, '/key');
  await lampIn(page, 'left').focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Escape');
  await expect.poll(() => lampIn(page, 'left').getAttribute('aria-label')).toMatch(/1 m left/);
  await page.waitForTimeout(900);
  await saved(page, 0);
  await context.close();
});

test('what the meter reads is marked as read and held against the lamps in stops', async () => {
  const id = await bringIn();
  const { page, context } = await openLight(id, '/key');
  const worked = await page.locator('.light-worked b').textContent();
  expect(worked).toMatch(/klx$/);
  await page.getByRole('textbox', { name: 'Reading at the subject' }).fill('10 klx');
  await page.keyboard.press('Enter');
  await saved(page, 1);
  await page.getByText(/^The meter reads \d\.\d stops less than these lamps promise\.$/).waitFor();
  expect((await lightingOf(id))['key']).toMatchObject({ illuminance: '10 klx', reading: 'metered' });
  await context.close();
});

test('a lamp comes from the kit, is looked at alone without an edit, is switched off with one, and is taken out', async () => {
  const id = await bringIn();
  const { page, context, complaints } = await openLight(id, '/key');
  await page.getByRole('combobox', { name: 'Add a lamp' }).selectOption('panel');
  await saved(page, 1);
  expect(Object.keys((await lightingOf(id))['key']!.lamps)).toEqual(['left', 'right', 'panel-1']);
  await page.getByRole('button', { name: 'Only lamp 1' }).click();
  await page.getByRole('heading', { name: 'At the subject, this lamp alone' }).waitFor();
  await page.getByRole('button', { name: 'Look at all lamps again' }).click();
  await page.getByRole('button', { name: 'Lamp 2 off' }).click();
  await saved(page, 2);
  expect((await lightingOf(id))['key']!.lamps['right']!['off']).toBe(true);
  await page.getByRole('button', { name: 'Take out' }).last().click();
  await saved(page, 3);
  expect(Object.keys((await lightingOf(id))['key']!.lamps)).toEqual(['left', 'right']);
  expect(complaints).toEqual([]);
  await context.close();
});

test('a lamp that lacks figures says which, and leads to where they are written', async () => {
  const id = await bringIn();
  const { page, context } = await openLight(id, '/key');
  await page.getByRole('combobox', { name: 'Add a lamp' }).selectOption('bare');
  await page.getByText('not known: a lamp lacks something').waitFor();
  await page.getByRole('button', { name: 'Reading of Bare lamp' }).click();
  await page.waitForURL(/\/kit\/lamps\/bare/);
  await context.close();
});

test('a shot lit through tells how bright the face behind is, and whether it fills the frame', async () => {
  const id = await bringIn();
  const { page, context } = await openLight(id, '/back');
  const finding = page.locator('.light-findings');
  await finding.getByText('Lamp 1 fills the frame.').waitFor();
  await finding.getByText('30 kcd/m²', { exact: true }).waitFor();
  await page.locator('.light-row-name').click();
  await page.getByRole('textbox', { name: 'Place' }).fill('900 mm, 600 mm, 0 m');
  await page.keyboard.press('Enter');
  await finding.getByText(/^No glowing face lies behind the subject/).waitFor();
  await context.close();
});

test('set-ups are added, duplicated and taken out, and the empty place says how to start', async () => {
  const id = await bringIn('longsecond: 1\nshoot: { title: Dark }\n');
  const { page, context } = await openLight(id);
  await page.getByText(/^A set-up is lamps that stand somewhere/).waitFor();
  await page.getByRole('button', { name: 'Add a set-up' }).click();
  await saved(page, 1);
  await page.getByText('Change this set-up').click();
  await page.getByRole('textbox', { name: 'Title' }).fill('Rim');
  await page.keyboard.press('Enter');
  await saved(page, 2);
  await page.getByRole('button', { name: 'Duplicate', exact: true }).click();
  await saved(page, 3);
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toBe('Rim, again');
  await page.getByText('Change this set-up').click();
  await page.getByRole('button', { name: 'Take out' }).click();
  await saved(page, 4);
  expect(Object.keys(await lightingOf(id))).toEqual(['light-1']);
  await undo(page).click();
  await saved(page, 5);
  expect(Object.keys(await lightingOf(id))).toHaveLength(2);
  await context.close();
});

test('on paper there is the drawing and a schedule of every lamp, and no controls', async () => {
  const id = await bringIn();
  const { page, context } = await openLight(id, '/key');
  await page.emulateMedia({ media: 'print' });
  const rows = page.getByRole('table', { name: 'Lamp schedule' }).getByRole('row');
  await expect.poll(() => rows.count()).toBe(3);
  expect(await rows.nth(1).textContent()).toContain('1 m left, 1.5 m in front, 1 m above');
  expect(await plan(page).isVisible()).toBe(true);
  expect(await page.locator('.light-tools').isVisible()).toBe(false);
  await context.close();
});

for (const size of SIZES)
  test(`at ${size.width} × ${size.height} nothing runs off sideways, no words lie on one another, and targets are large enough`, async () => {
    const id = await bringIn();
    const { page, context } = await openLight(id, '/key', { size });
    await page.locator('.light-row-name').first().click();
    expect(await overflow_px(page)).toBeLessThanOrEqual(0);
    expect(await overlappingTexts(page)).toEqual([]);
    expect(await smallTargets(page, 24)).toEqual([]);
    await context.close();
  });
