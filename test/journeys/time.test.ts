/** Time in a real browser: what fires when, which part of the memory is kept, and how the day may go. */
import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Browser, Locator, Page } from 'playwright-core';
import { focused, isFocused, nameOf, soon } from '../access.ts';
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

/** The trigger of the two quinces, as far as the end of it. */
const TRIGGER = /(title: Two quinces meet\n    board[^]*?\n    trigger: \{ [^}]*?) \}/;

let count = 0;

/** The demo as a shoot of its own, so that no journey depends on another. */
const bringIn = async (change: (text: string) => string = (text) => text): Promise<string> => {
  const demo = await (await fetch(`${served.url}/api/shoots/demo/text`)).text();
  const text = change(demo);
  count += 1;
  const reply = await fetch(`${served.url}/api/shoots`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ editId: `journey-time-${count}`, text }),
  });
  return ((await reply.json()) as { readonly id: string }).id;
};

type Options = Parameters<typeof openWindow>[1];

const openAt = async (place: string, shootId?: string, options?: Options) => {
  const id = shootId ?? (await bringIn());
  const window = await openWindow(browser, options);
  await window.page.goto(`${served.url}/${id}${place}`);
  return { ...window, shootId: id };
};

const openQuinces = async (shootId?: string) => {
  const window = await openAt('/shot/quinces', shootId);
  await memoryGrip(window.page).waitFor();
  return window;
};

const openDay = async (shootId?: string, options?: Options) => {
  const window = await openAt('/day', shootId, options);
  await ready(window.page);
  return window;
};

const summaries = async (shootId: string): Promise<readonly string[]> => {
  const reply = await fetch(`${served.url}/api/shoots/${shootId}/journal`);
  return ((await reply.json()) as { readonly rows: readonly { readonly summary: string }[] }).rows.map(
    ({ summary }) => summary,
  );
};

const memoryGrip = (page: Page) => page.getByRole('slider', { name: 'Share of the memory kept after the trigger' });
const arrivalGrip = (page: Page, cue: string) =>
  page.getByRole('slider', { name: `${cue} arrives, after the meeting` });
const says = (grip: Locator) => grip.getAttribute('aria-valuetext');
const limit = (page: Page, name: string) => page.getByRole('radio', { name: new RegExp(`^${name}[:,]`) });
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true });

/** Presses on something and moves so far, without letting go. */
async function drag(page: Page, what: Locator, by: { readonly x?: number; readonly y?: number }) {
  await what.scrollIntoViewIfNeeded();
  const box = (await what.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + (by.x ?? 0) / 2, y + (by.y ?? 0) / 2);
  await page.mouse.move(x + (by.x ?? 0), y + (by.y ?? 0));
}

const middleOf = async (what: Locator) => {
  const { y, height } = (await what.boundingBox())!;
  return y + height / 2;
};

/** The day of the plan on the screen has been drawn, few days or many. */
const ready = async (page: Page) => {
  await page.locator('.day[aria-busy="false"]').waitFor({ timeout: 20_000 });
};
const wrap = (page: Page) => page.locator('.day-says').textContent();
const order = (page: Page) => page.locator('.day-title').allTextContents();

describe('a shot in time', () => {
  test('the share kept is dragged: figures and margin move at once, letting go is one edit, and undo takes it back', async () => {
    const { page, context, complaints, shootId } = await openQuinces();
    await button(page, 'All of the memory').click();
    const [before, caught] = [await says(memoryGrip(page)), await nameOf(limit(page, 'Trigger'))];
    expect(before).toMatch(/^10 %; whole action kept over 99\.9 %$/);
    await drag(page, memoryGrip(page), { x: -40 });
    await soon(() => says(memoryGrip(page))).toMatch(/^[1-5] %; whole action kept under 0\.1 %$/);
    await soon(() => nameOf(limit(page, 'Trigger'))).not.toBe(caught);
    expect(await nameOf(limit(page, 'Trigger'))).toMatch(/short/);
    expect(await summaries(shootId)).toEqual([]);
    await page.mouse.up();
    await soon(() => summaries(shootId)).toEqual([expect.stringMatching(/^Kept after the trigger: [1-5] %$/)]);
    await button(page, /^Undo: Kept after the trigger/).click();
    await soon(() => says(memoryGrip(page))).toBe(before);
    await soon(() => nameOf(limit(page, 'Trigger'))).toBe(caught);
    expect(complaints).toEqual([]);
    await context.close();
  }, 60_000);

  test('Escape puts back what is being dragged, and nothing is sent', async () => {
    const { page, context, shootId } = await openQuinces();
    const grip = arrivalGrip(page, 'Right quince');
    const before = await says(grip);
    await drag(page, grip, { x: 30 });
    await soon(() => says(grip)).not.toBe(before);
    await page.keyboard.press('Escape');
    await soon(() => says(grip)).toBe(before);
    await page.mouse.move(200, 200);
    await page.mouse.up();
    expect(await says(grip)).toBe(before);
    expect(await summaries(shootId)).toEqual([]);
    await context.close();
  });

  test('an arrival is moved by arrow keys, held down as one edit, and the cues stand in the order of their signals', async () => {
    const { page, context, shootId } = await openQuinces();
    const grip = arrivalGrip(page, 'Right quince');
    const cues = () => page.locator('.time-table tbody th').allTextContents();
    expect(await cues()).toEqual(['Right quince falls', 'Left quince falls']);
    await grip.focus();
    await page.keyboard.press('ArrowRight');
    await soon(() => says(grip)).toMatch(/^\+0\.1 ms after the meeting; signal at −336\.1 ms$/);
    await page.keyboard.down('Shift');
    for (let held = 0; held < 4; held += 1) await page.keyboard.down('ArrowRight');
    await page.keyboard.up('ArrowRight');
    await page.keyboard.up('Shift');
    await soon(() => says(grip)).toMatch(/^\+4\.1 ms after the meeting; signal at −332\.1 ms$/);
    await soon(() => summaries(shootId)).toEqual([
      'Right quince arrives +0.1 ms after the meeting',
      'Right quince arrives +4.1 ms after the meeting',
    ]);
    expect(await isFocused(grip)).toBe(true);
    // It is signalled later than the other now, so it stands beneath it.
    await soon(cues).toEqual(['Left quince falls', 'Right quince falls']);
    await page.keyboard.down('ArrowLeft');
    await page.keyboard.press('Escape');
    await soon(() => says(grip)).toMatch(/^\+4\.1 ms/);
    expect(await summaries(shootId)).toHaveLength(2);
    await context.close();
  });

  test('a bad share that somebody fixed is set to the best, or left to be found again', async () => {
    const shootId = await bringIn((text) => text.replace(TRIGGER, '$1, post: 2 % }'));
    const { page, context } = await openQuinces(shootId);
    await soon(() => nameOf(limit(page, 'Trigger'))).toMatch(/short/);
    await button(page, 'Set it so').click();
    await soon(() => nameOf(limit(page, 'Trigger'))).not.toMatch(/short/);
    await soon(() => says(memoryGrip(page))).toMatch(/^\d+ %; whole action kept over 99\.9 %$/);
    const best = await says(memoryGrip(page));
    await button(page, 'Set it so').waitFor({ state: 'detached' });
    await button(page, 'Let it be found').click();
    await soon(() => says(memoryGrip(page))).toBe(best);
    await button(page, 'Let it be found').waitFor({ state: 'detached' });
    const text = await (await fetch(`${served.url}/api/shoots/${shootId}/text`)).text();
    expect(text).toBe(await (await fetch(`${served.url}/api/shoots/demo/text`)).text());
    await context.close();
  });

  test('a cue is added, given a rig and something to do, timed once it is known, and taken out', async () => {
    const { page, context, complaints } = await openQuinces();
    await button(page, 'Change cues and trigger').click();
    await button(page, 'Add a cue').click();
    const form = page.getByRole('group', { name: 'cue-1', exact: true });
    await form.getByLabel('Rig').selectOption({ label: 'Dropper valve' });
    await form.getByLabel('It', { exact: true }).selectOption({ label: 'something is thrown' });
    const row = page.getByRole('row', { name: /^cue-1 flies/ });
    await soon(() => row.textContent()).toMatch(/not known/);
    await form.getByLabel('Flies').fill('0.5 m');
    await form.getByLabel('Leaves at').fill('4 m/s');
    await form.getByLabel('Leaves at').press('Enter');
    await soon(() => row.textContent()).toMatch(/[+−]?[\d.]+ ms/);
    await soon(() => row.textContent()).not.toMatch(/not known/);
    await arrivalGrip(page, 'cue-1').waitFor();
    await form.getByRole('button', { name: 'Take this cue out' }).click();
    await row.waitFor({ state: 'detached' });
    expect(await page.getByRole('slider').count()).toBe(3);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('what a cue lacks leads into the form, which opens for it', async () => {
    const shootId = await bringIn((text) => text.replace(/(title: Left quince,[^}]*?)height: [^,]*,/, '$1'));
    const { page, context } = await openAt('/shot/quinces', shootId);
    await page.locator('.time-lacks').waitFor();
    await page.locator('.margin-row', { hasText: 'Meeting' }).getByRole('button').first().click();
    await soon(() => focused(page)).toBe('Falls');
    await page.keyboard.type('0.6 m');
    await page.keyboard.press('Enter');
    await limit(page, 'Meeting').waitFor();
    await context.close();
  });

  test('rolled by chance it says how often all of it goes well, from the seed of the shoot', async () => {
    const { page, context } = await openQuinces();
    await button(page, 'Roll it 4000 times by chance').click();
    await page.getByText('4000 takes drawn from seed 41;', { exact: false }).waitFor({ timeout: 20_000 });
    const shares = page.locator('.time-shares');
    expect(await shares.locator('dt').allTextContents()).toEqual(expect.arrayContaining(['All meet', 'In the memory', 'All of it in one take'])); // prettier-ignore
    const meets = Number(/All meet(\d+(?:\.\d+)?) %/.exec((await shares.textContent())!)![1]);
    expect(meets).toBeGreaterThan(95);
    // What was drawn for another plan says nothing of this one.
    await arrivalGrip(page, 'Right quince').press('ArrowRight');
    await shares.waitFor({ state: 'detached' });
    await context.close();
  });
});

describe('the day', () => {
  test('says when it is a wrap nine days in ten; a shot moved by keyboard or by its handle fixes the order, and it is let go again', async () => {
    const { page, context, complaints, shootId } = await openDay();
    await page.getByText('2000 days drawn').waitFor({ timeout: 20_000 });
    const [found, was] = [await order(page), await wrap(page)];
    expect(was).toMatch(/^Nine days in ten, wrap by \d\d:\d\d; half of all days by \d\d:\d\d\.$/);
    expect(found.length).toBe(11);

    const earlier = button(page, 'Move Honey coils earlier');
    await earlier.focus();
    await page.keyboard.press('Enter');
    const place = found.indexOf('Honey coils');
    await soon(async () => (await order(page)).indexOf('Honey coils')).toBe(place - 1);
    await ready(page);
    await page.getByText('The order is fixed.').waitFor();
    await soon(() => isFocused(earlier)).toBe(true);
    await soon(() => summaries(shootId)).toEqual(['Honey coils moved in the day']);

    // Whoever went on to something else is left there when the day has been drawn many times more.
    const later = button(page, 'Save the day as CSV');
    await later.focus();
    // What is above the rows may change its height with each drawing, up to the last after the server has answered.
    const drawn = async (revision: number) => {
      await page.getByText(`saved, revision ${revision}`).waitFor();
      await page.getByText('2000 days drawn').waitFor({ timeout: 20_000 });
    };
    await drawn(1);
    expect(await isFocused(later)).toBe(true);

    // From the last row up to the first by its handle: more is changed over, so the day is longer.
    const last = found.at(-1)!;
    const rows = page.locator('.day-rows ol > li');
    const grips = page.locator('.day-grip');
    await drag(page, grips.last(), { y: (await middleOf(rows.first())) - (await middleOf(rows.last())) });
    await soon(async () => (await order(page))[0]).toBe(last);
    await page.mouse.up();
    expect((await order(page))[0]).toBe(last);
    await soon(() => summaries(shootId)).toEqual(['Honey coils moved in the day', `${last} moved in the day`]);
    await soon(() => wrap(page)).not.toBe(was);
    await drawn(2);

    // And down again past others, each of which is put before it in the page.
    await drag(page, grips.first(), { y: (await middleOf(rows.nth(3))) - (await middleOf(rows.first())) });
    await soon(async () => (await order(page))[3]).toBe(last);
    expect(await page.evaluate(() => getSelection()!.toString())).toBe('');
    await page.keyboard.press('Escape');
    await soon(async () => (await order(page))[0]).toBe(last);
    await page.mouse.up();
    expect(await summaries(shootId)).toHaveLength(2);
    await ready(page);

    await button(page, 'Let it be found').click();
    await soon(() => order(page)).toEqual(found);
    await page.getByText('The order takes the least time for changing over: proven.').waitFor();
    await page.getByText('2000 days drawn').waitFor({ timeout: 20_000 });
    expect(await wrap(page)).toBe(was);
    expect(complaints).toEqual([]);
    await context.close();
  }, 90_000);

  test('on a phone the page goes along with a shot that is held at the foot of the window', async () => {
    const { page, context, complaints, shootId } = await openDay(undefined, { size: SIZES[2] });
    await page.getByText('2000 days drawn').waitFor({ timeout: 20_000 });
    const found = await order(page);
    const first = page.locator('.day-grip').first();
    await first.scrollIntoViewIfNeeded();
    const box = (await first.boundingBox())!;
    const x = box.x + box.width / 2;
    await page.mouse.move(x, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(x, SIZES[2].height / 2);
    await page.mouse.move(x, SIZES[2].height - 4);
    await soon(async () => (await order(page)).at(-1)).toBe(found[0]);
    // No farther than to the last row, which is still under the pointer.
    const foot = async () => {
      const { y, height } = (await page.locator('.day-rows ol').boundingBox())!;
      return y + height;
    };
    await soon(foot).toBeLessThanOrEqual(SIZES[2].height - 4);
    const stands = await foot();
    expect(stands).toBeGreaterThan(SIZES[2].height - 8);
    await page.mouse.move(x, 4);
    await soon(() => order(page)).toEqual(found);
    expect(await foot()).toBeGreaterThan(stands);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    expect(await summaries(shootId)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  }, 60_000);

  test('is planned again from now, with what has been shot', async () => {
    const { page, context, complaints } = await openDay();
    const was = await wrap(page);
    await button(page, 'Change').click();
    const done = page.locator('.day-so-far li', { hasText: 'Two quinces meet' }).getByLabel('Done');
    await done.fill('yes');
    await done.press('Enter');
    await soon(async () => (await page.locator('.day-rows li', { hasText: 'Two quinces meet' }).textContent()) ?? '').toMatch(/done/); // prettier-ignore
    await soon(() => wrap(page)).not.toBe(was);
    await page.getByLabel('It is now').fill('14:20');
    await page.getByLabel('It is now').press('Enter');
    const starts = page.locator('.day-rows li', { hasText: 'Pour into the glass' }).locator('small');
    await soon(() => starts.textContent()).toMatch(/^14:/);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('is saved as a table that a spreadsheet opens, and so are the cues', async () => {
    const { page, context } = await openDay();
    const saved = async (name: string) => {
      const [download] = await Promise.all([page.waitForEvent('download'), button(page, name).click()]);
      return { file: download.suggestedFilename(), lines: (await readFile(await download.path(), 'utf8')).split('\r\n') };
    };
    const day = await saved('Save the day as CSV');
    expect(day.file).toMatch(/-day\.csv$/);
    expect(day.lines[0]).toMatch(/^place,shot,title,isDone,startsEarly,/);
    expect(day.lines.slice(1, -1).map((line) => line.split(',')[2])).toEqual((await order(page)).map((title) => (title.includes(',') ? `"${title.split(',')[0]}` : title))); // prettier-ignore
    const cues = await saved('Save the cues as CSV');
    expect(cues.file).toMatch(/-cues\.csv$/);
    expect(cues.lines[0]).toMatch(/^shotNumber,shot,shotTitle,cue,/);
    expect(cues.lines.filter((line) => /,quinces,/.test(line)).map((line) => line.split(',')[3])).toEqual(['right', 'left', 'trigger']); // prettier-ignore
    await context.close();
  }); // prettier-ignore

  test('without a shot it says what goes there', async () => {
    const { page, context } = await openWindow(browser);
    const id = 'journey-time-blank';
    await fetch(`${served.url}/api/shoots`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ editId: id, id: 'no-shots', text: 'longsecond: 1\nshoot: { title: No shots }\n' }),
    });
    await page.goto(`${served.url}/no-shots/day`);
    await page.getByRole('heading', { level: 1, name: 'No shots yet' }).waitFor();
    await button(page, 'To the shoot').click();
    await soon(() => new URL(page.url()).pathname).toBe('/no-shots');
    await context.close();
  });
});

describe('on paper', () => {
  const WITHIN = [
    ['cues', 'Cues', /Before each take/],
    ['day', 'The day', /Wrap, nine days in ten by/],
    ['dressing', 'Camera-ready', /Between takes of shot/],
  ] as const;

  test.each(WITHIN)('%s show, keep to their room in every size, and print', async (sheet, _, has) => {
    for (const size of SIZES) {
      const { page, context, complaints } = await openAt(`/paper?sheet=${sheet}`, 'demo', { theme: 'light', size });
      await page.locator('.paper-sheet').first().waitFor({ timeout: 20_000 });
      expect(await page.locator('.paper-sheets').textContent()).toMatch(has);
      expect(await overflow_px(page)).toBeLessThanOrEqual(0);
      expect((await overlappingTexts(page)).filter((pair) => !/^“(.*)” and “\1”$/.test(pair))).toEqual([]);
      expect(await smallTargets(page, 24)).toEqual([]);
      expect(complaints).toEqual([]);
      if (size === SIZES[0]) {
        const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
        expect(pdf).toMatch(/\/MediaBox \[0 0 59[45]/);
      }
      await context.close();
    }
  });
});

describe.each(SIZES)('at $width × $height', (size) => {
  test.each(['dark', 'stage'] as const)('in the %s theme the strip, its form and the day keep to their room', async (theme) => {
    const { page, context, complaints } = await openWindow(browser, { theme, size });
    const wrong: string[] = [];
    const judge = async (name: string) => {
      await page.evaluate(() => document.fonts.ready);
      const over_px = await overflow_px(page);
      if (over_px > 0) wrong.push(`${name}: ${over_px} px too wide`);
      for (const pair of await overlappingTexts(page)) wrong.push(`${name}: ${pair} overlap`);
      for (const small of await smallTargets(page, 24)) wrong.push(`${name}: ${small}`);
    };
    await page.goto(`${served.url}/demo/shot/quinces`);
    await memoryGrip(page).waitFor();
    await button(page, 'Change cues and trigger').click();
    await judge('the strip with its form');
    const grip = (await memoryGrip(page).boundingBox())!;
    expect(grip.width).toBeGreaterThanOrEqual(24);
    expect(grip.height).toBeGreaterThanOrEqual(44);
    await page.goto(`${served.url}/demo/day`);
    await ready(page);
    await button(page, 'Change').click();
    await judge('the day with its settings');
    expect(wrong).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
}); // prettier-ignore
