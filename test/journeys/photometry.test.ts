/** A lamp's photometric file in a real browser: looked at, refused, taken, and what then lights the set-up and its shot. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { ROOT } from '../../tools/run.mjs';
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

const LIT = `longsecond: 1
shoot: { title: Photometry journey }
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
    soft: { title: Soft lamp, kind: led, power: 200 W }
deliverables:
  film: { title: Film, rate: 25, pixels: 1920 x 1080 }
lighting:
  key:
    title: Key
    lamps:
      left: { title: Left, lamp: soft, at: '0 m, -1 m, 0 m' }
shots:
  drop: { title: One drop, action: { duration: 60 ms, speed: 1 m/s }, screenTime: 2 s, frameWidth: 120 mm, depth: 4 mm, blur: 4 px, lighting: key }
`;

let count = 0;

const bringIn = async (text = LIT): Promise<string> => {
  count += 1;
  const reply = await fetch(`${served.url}/api/shoots`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ editId: `photometry-journey-${count}`, text }),
  });
  return ((await reply.json()) as { readonly id: string }).id;
};

interface Written {
  readonly files?: Readonly<Record<string, { readonly name: string; readonly sha256: string }>>;
  readonly kit: { readonly lamps: Readonly<Record<string, { readonly file?: string }>> };
}

const writtenOf = async (id: string): Promise<Written> =>
  ((await (await fetch(`${served.url}/api/shoots/${id}`)).json()) as { readonly written: Written }).written;

const made = (name: string) => join(ROOT, 'test/photometry', name);
const BROKEN = { name: 'broken.ies', mimeType: '', buffer: Buffer.from('IESNA:LM-63-2002\nTILT=NONE\n1 1000 one 3 1 1 2 0 0 0\n') }; // prettier-ignore

const saved = async (page: Page, revision: number) =>
  expect
    .poll(() => page.locator('.shell-standing').textContent(), { timeout: 15_000 })
    .toBe(`saved, revision ${revision}`);

const chooser = (page: Page) => page.getByLabel(/^(Choose a file|Another file)$/);
const openKit = async (id: string, how: Parameters<typeof openWindow>[1] = {}) => {
  const window = await openWindow(browser, how);
  await window.page.goto(`${served.url}/${id}/kit/lamps/soft`);
  await window.page.locator('.lamp-photometry').waitFor();
  return window;
};

const take = async (page: Page, name: string) => {
  await chooser(page).setInputFiles(made(name));
  await page.getByRole('button', { name: 'Take it for Soft lamp' }).click();
  await page.locator('.lamp-photometry .photometry').waitFor();
};

test('a file is looked at before it is taken, lights the set-up and its shot at once, and undo puts all back', async () => {
  const id = await bringIn();
  const { page, context, complaints } = await openKit(id);
  const light = async () => {
    await page.goto(`${served.url}/${id}/light/key`);
    return page.locator('.light-findings').first().textContent();
  };
  expect(await light()).toContain('not known: a lamp lacks something');

  await page.goto(`${served.url}/${id}/kit/lamps/soft`);
  await chooser(page).setInputFiles(made('lambert-1000cd.ies'));
  const sheet = page.getByRole('dialog');
  await sheet.getByRole('img', { name: /^How much light goes each way: at most 1000 cd; half of that within 120°/ }).waitFor();
  expect(await sheet.locator('.photometry-labels').first().textContent()).toContain('MANUFAC: made for tests');
  const facts = await sheet.locator('.photometry-facts dl').textContent();
  // π · 1000 lm, half at 60° either side, a tenth at arccos 0.1.
  for (const says of [/314\d lm/, /1000 cd at C 0°, γ 0°/, /120\.0° across C0/, /168\.5° across C0/]) expect(facts).toMatch(says);
  expect((await writtenOf(id)).files).toBeUndefined();
  await sheet.getByRole('button', { name: 'Take it for Soft lamp' }).click();
  await page.locator('.lamp-photometry .polar svg').first().waitFor();
  await saved(page, 1);
  const { files = {}, kit } = await writtenOf(id);
  expect(files[kit.lamps['soft']!.file!]).toMatchObject({ name: 'lambert-1000cd.ies' });

  await page.getByRole('link', { name: 'Light', exact: true }).first().click();
  // 1000 cd at 1 m, straight on.
  await page.locator('.light-total').filter({ hasText: '1 klx' }).waitFor();
  expect(await page.locator('.light-lacks').count()).toBe(0);

  // Opened anew, the page fetches the file by its hash; the worker that plans the ways has it too.
  await page.goto(`${served.url}/${id}/shot/drop`);
  const margin = page.getByRole('radio', { name: /^Light/ });
  await expect.poll(async () => (await margin.getAttribute('aria-label')) ?? (await margin.textContent())).toMatch(/short/);
  await margin.click();
  await page.locator('.way-card', { hasText: 'Bring the lamp in to' }).first().waitFor({ timeout: 15_000 });

  await page.getByRole('button', { name: /^Undo: Soft lamp: light by/ }).click();
  await saved(page, 2);
  // What is not known has no bar to choose.
  await expect.poll(() => margin.count()).toBe(0);
  expect((await writtenOf(id)).files).toBeUndefined();
  expect(complaints).toEqual([]);
  await context.close();
}); // prettier-ignore

test('a broken file, a large one and one of another kind are refused with what is wrong, and change nothing', async () => {
  const id = await bringIn();
  const { page, context, complaints } = await openKit(id);
  const refused = async (file: Parameters<ReturnType<typeof chooser>['setInputFiles']>[0]) => {
    await chooser(page).setInputFiles(file);
    const alert = page.getByRole('dialog').getByRole('alert');
    await alert.waitFor();
    const says = await alert.textContent();
    expect(await page.getByRole('button', { name: /^Take it for/ }).count()).toBe(0);
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    return says;
  };
  expect(await refused(BROKEN)).toMatch(/^broken\.ies, line 3: "one" stands where .+ Nothing was changed\.$/);
  expect(await refused({ name: 'huge.ies', mimeType: '', buffer: Buffer.alloc(5_000_001, 0x20) })).toMatch(/^huge\.ies: The file is larger than 5 MB/);
  expect(await refused({ name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('Call at eight.') })).toMatch(/^notes\.txt: The file is neither an IES nor a EULUMDAT file/);
  expect((await writtenOf(id)).files).toBeUndefined();
  await saved(page, 0);
  expect(complaints).toEqual([]);
  await context.close();
}); // prettier-ignore

test('by keyboard alone a file is dropped in, read as a table, taken, shared with another lamp and taken out again', async () => {
  const id = await bringIn(LIT.replace('power: 200 W }', 'power: 200 W }\n    twin: { title: Twin }'));
  const { page, context } = await openKit(id);
  const base64 = readFileSync(made('oval-0.ldt')).toString('base64');
  await page.locator('.photometry-source').evaluate((element, given) => {
    const data = new DataTransfer();
    data.items.add(new File([Uint8Array.from(atob(given), (letter) => letter.charCodeAt(0))], 'oval.ldt'));
    element.dispatchEvent(new DragEvent('drop', { bubbles: true, cancelable: true, dataTransfer: data }));
  }, base64);
  const sheet = page.getByRole('dialog');
  await sheet.getByText('The same as a table').focus();
  await page.keyboard.press('Enter');
  const table = sheet.getByRole('table', { name: 'Candela by angle off the axis' });
  // 600 cd · cos γ · (1 ± ½ sin² γ) at 30°: 584.6 across, 454.7 up.
  const row = table.getByRole('row').filter({ hasText: '30°' });
  expect(await row.getByRole('cell').allTextContents()).toEqual(['585 cd', '585 cd', '455 cd', '455 cd']);
  await sheet.getByRole('button', { name: 'Take it for Soft lamp' }).focus();
  await page.keyboard.press('Enter');
  await saved(page, 1);

  await page.goto(`${served.url}/${id}/kit/lamps/twin`);
  await page.getByRole('combobox', { name: 'Or as another lamp' }).selectOption({ label: 'oval.ldt, of Soft lamp' });
  await page.locator('.lamp-photometry .polar svg').first().waitFor();
  await saved(page, 2);
  await page.getByRole('button', { name: 'Take it out' }).focus();
  await page.keyboard.press('Enter');
  await saved(page, 3);
  expect(Object.keys((await writtenOf(id)).files ?? {})).toHaveLength(1);
  await page.goto(`${served.url}/${id}/kit/lamps/soft`);
  await page.getByRole('button', { name: 'Take it out' }).click();
  await saved(page, 4);
  expect(Object.keys((await writtenOf(id)).files ?? {})).toHaveLength(0);
  await context.close();
});

test('a file that the shoot names and nobody sent, or that is broken, says so where its light would stand', async () => {
  const id = await bringIn(`${LIT.replace('power: 200 W', 'power: 200 W, file: lost')}files: { lost: { name: lost.ies, sha256: ${'a'.repeat(64)} } }\n`); // prettier-ignore
  const { page, context } = await openKit(id);
  await page.locator('.lamp-photometry').getByText('lost.ies is not here: only its name was brought in.').waitFor();
  const sent = await fetch(`${served.url}/api/shoots/${id}/files`, {
    method: 'POST',
    headers: { 'content-type': 'application/octet-stream', 'longsecond-file-name': 'broken.ies' },
    body: BROKEN.buffer,
  });
  const { sha256 } = (await sent.json()) as { readonly sha256: string };
  await fetch(`${served.url}/api/shoots/${id}/edits`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({
      editId: 'photometry-journey-broken',
      revision: 0,
      patch: [{ op: 'replace', path: '/files/lost/sha256', value: sha256 }],
      summary: 'Another file',
    }),
  });
  await page
    .locator('.lamp-photometry')
    .getByText(/^lost\.ies, line 3: /)
    .waitFor();
  await page.goto(`${served.url}/${id}/light/key`);
  await page.locator('.light-row-name').first().click();
  await page
    .locator('.light-lacks')
    .getByText(/lost\.ies, line 3: /)
    .waitFor();
  await context.close();
});

test('a record of light over time that a lamp names is read in the same way, or says at which line it is not', async () => {
  const lines = Array.from({ length: 4000 }, (_, i) => `${(i * 1e-4).toFixed(4)};${(2 + Math.sin(2 * Math.PI * 100 * i * 1e-4)).toFixed(4)}`);
  const upload = async (id: string, text: string) => {
    const sent = await fetch(`${served.url}/api/shoots/${id}/files`, {
      method: 'POST',
      headers: { 'content-type': 'text/csv', 'longsecond-file-name': 'light.csv' },
      body: text,
    });
    return ((await sent.json()) as { readonly sha256: string }).sha256;
  };
  const id = await bringIn(LIT.replace('power: 200 W', 'power: 200 W, measured: { full: { title: Full, file: light } }, colour: 5600 K'));
  const [good, broken] = [await upload(id, `time (s);light\n${lines.join('\n')}\n`), await upload(id, 'time (s);light\n0;1\n0.001;two\n')];
  const name = async (revision: number, sha256: string) =>
    fetch(`${served.url}/api/shoots/${id}/edits`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ editId: `photometry-journey-light-${revision}`, revision, patch: [{ op: 'add', path: '/files', value: { light: { name: 'light.csv', sha256 } } }], summary: 'A record' }),
    });
  await name(0, good);
  const { page, context, complaints } = await openKit(id);
  await page.locator('.measured').getByText(/ripples at 100 Hz/).waitFor();
  await name(1, broken);
  await page.locator('.measured').getByText(/^light\.csv(, line \d+)?: /).waitFor();
  expect(complaints).toEqual([]);
  await context.close();
}); // prettier-ignore

for (const size of SIZES)
  test(`at ${size.width} × ${size.height} a file has room: nothing runs off, no words lie on one another`, async () => {
    const id = await bringIn();
    const { page, context } = await openKit(id, { size });
    await take(page, 'lean-c90-0.ldt');
    for (const summary of await page.locator('.lamp-photometry summary').all()) await summary.click();
    expect(await overflow_px(page)).toBeLessThanOrEqual(0);
    expect((await overlappingTexts(page)).filter((words) => /cd|°|axis/.test(String(words)))).toEqual([]);
    expect(await smallTargets(page, 24)).toEqual([]);
    await context.close();
  });
