/** The Reckoner in a real browser: a law is found, answers as one types, is read off its pictures, and is its address. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import {
  openBrowser,
  openWindow,
  overflow_px,
  overlappingTexts,
  SIZES,
  smallTargets,
  startServer,
  type Served,
} from '../browser.ts';

let served: Served;
let browser: Browser;

beforeAll(async () => {
  [served, browser] = await Promise.all([startServer(), openBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

const T8 = '/reckoner/light-needed?stop=T8&exposureTime=1/2000+s&isoSpeed=800';

const open = async (path: string) => {
  const window = await openWindow(browser);
  await window.page.goto(served.url + path);
  await window.page.getByRole('heading', { level: 1 }).waitFor();
  return window;
};

const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const result = (page: Page) => page.getByRole('status', { name: 'Result' });
const chart = (page: Page) => page.getByRole('slider');
const map = (page: Page) => page.getByRole('application');
const address = (page: Page): Readonly<Record<string, string>> => {
  const { pathname, searchParams } = new URL(page.url());
  return { pathname, ...Object.fromEntries(searchParams) };
};

/** What a picture says above itself, the curve's first. */
const readings = (page: Page) => page.locator('.picture-read').allInnerTexts();

describe('finding a law', () => {
  test('a word of the trade finds it, Enter opens it, and it asks for what it needs', async () => {
    const { page, context, complaints } = await open('/reckoner');
    await page.getByRole('searchbox', { name: 'Find a law' }).fill('footcandles incident');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'Light an exposure needs' }).waitFor();
    expect(address(page)).toEqual({ pathname: '/reckoner/light-needed' });
    await expect.poll(() => page.title()).toBe('Light an exposure needs, Reckoner, Longsecond');
    expect(await result(page).innerText()).toContain('Still to give: stop, exposure time and exposure index');
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('arrow keys go through what is found, and Escape clears the search', async () => {
    const { page, context } = await open('/reckoner');
    const search = page.getByRole('searchbox');
    await search.fill('depth of field');
    await search.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowUp');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('Depth of field');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Escape');
    expect(await search.inputValue()).toBe('');
    await context.close();
  });

  test('a search that finds nothing says what to try, and trying it finds something', async () => {
    const { page, context } = await open('/reckoner');
    await page.getByRole('searchbox').fill('footcandels');
    await page.getByText('No law speaks of “footcandels”.').waitFor();
    await page.getByText('Did you mean').getByRole('button', { name: 'footcandles' }).click();
    await page.getByRole('link', { name: /Light an exposure needs/ }).waitFor();
    await page.getByRole('searchbox').fill('qqqqqqqqqqqq');
    await page.getByRole('button', { name: 'buffer' }).click();
    expect(await page.getByRole('link', { name: /memory/i }).count()).toBeGreaterThan(0);
    await context.close();
  });

  test('a law that does not exist is told, with the nearest that does', async () => {
    const { page, context } = await open('/reckoner/light-neded');
    await page.getByRole('heading', { level: 1, name: 'No such law' }).waitFor();
    await page.getByRole('button', { name: 'Light an exposure needs' }).click();
    await expect.poll(() => address(page)).toEqual({ pathname: '/reckoner/light-needed' });
    await context.close();
  });
});

describe('working it out', () => {
  test('the result follows each keystroke, and is unknown while a field cannot be read', async () => {
    const { page, context, complaints } = await open(T8);
    // 250 · 8² · 2000 / 800, and 1 fc is 10.764 lx.
    expect(await result(page).innerText()).toMatch(/40\s*klx[\s\S]*3716 fc/);
    await field(page, 'Stop').fill('T5.6');
    expect(await result(page).innerText()).toMatch(/20\s*klx/);
    await field(page, 'Stop').fill('T5.6 lx');
    expect(await result(page).innerText()).toContain('Cannot be read yet: stop');
    expect(await page.getByRole('alert').innerText()).toBe('a stop is written as T5.6, T5.6⅓ or f/8');
    await field(page, 'Stop').press('Escape');
    expect(await result(page).innerText()).toMatch(/40\s*klx/);
    expect(await field(page, 'Stop').inputValue()).toBe('T8');
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('a bare number takes the unit that stood there, and arrow keys the next value a crew would set', async () => {
    const { page, context } = await open('/reckoner/inverse-square?illuminance=20+klx&measuredAt=10+ft&distance=5+ft');
    const distance = page.locator('#law-distance_m');
    await distance.fill('20');
    await distance.press('Enter');
    await expect.poll(() => address(page)).toMatchObject({ distance: '20 ft' });
    expect(await result(page).innerText()).toMatch(/5\s*klx/);
    await page.goto(served.url + T8);
    await field(page, 'Stop').press('ArrowUp');
    expect(await field(page, 'Stop').inputValue()).toBe('T8⅓');
    await context.close();
  });

  test('a default is said to be one, can be overwritten, and comes back when the field is emptied', async () => {
    const { page, context } = await open(T8);
    const constant = field(page, 'Meter constant');
    expect(await constant.getAttribute('placeholder')).toBe('250 lx·s');
    await constant.fill('500 lx·s');
    expect(await result(page).innerText()).toMatch(/80\s*klx/);
    await constant.fill('');
    await constant.press('Enter');
    expect(await result(page).innerText()).toMatch(/40\s*klx/);
    await context.close();
  });

  test('a law that refuses says why in words', async () => {
    const { page, context } = await open('/reckoner/shutter-angle?exposureTime=1/10+s&frameRate=1000+fps');
    expect(await result(page).innerText()).toMatch(/No answer: exposure time must be at most one frame/);
    await context.close();
  });

  test('the worked example fills every field, and Clear empties them', async () => {
    const { page, context } = await open('/reckoner/depth-of-field');
    await page.getByRole('button', { name: 'Worked example' }).click();
    expect(await field(page, 'Focal length').inputValue()).toBe('100 mm');
    expect(await result(page).innerText()).toMatch(/6\.542\s*mm/);
    await page.getByRole('button', { name: 'Clear' }).click();
    expect(await field(page, 'Focal length').inputValue()).toBe('');
    await context.close();
  });

  test('what rests on memory or practice is marked, and cautions are said in words', async () => {
    const { page, context } = await open('/reckoner/record-time?memory=64+GB&frameSize=10+MB&frameRate=1000+fps');
    expect(await result(page).innerText()).toContain('assumed');
    await page.goto(served.url + T8);
    expect(await result(page).innerText()).not.toContain('assumed');
    await page.getByRole('region', { name: 'Cautions' }).getByText('Nobody looks into a lamp').waitFor();
    await context.close();
  });
});

describe('the address', () => {
  test('carries every value, so that opening it elsewhere shows the same', async () => {
    const { page, context } = await open('/reckoner/light-needed');
    for (const [name, text] of [
      ['Stop', 'T5.6⅓'],
      ['Exposure time', '1/1000 s'],
      ['Exposure index', '400'],
    ] as const) {
      await field(page, name).fill(text);
      await field(page, name).press('Enter');
    }
    await page.getByLabel('imperial').check();
    await page.getByRole('combobox', { name: 'Drawn over' }).selectOption('isoSpeed');
    await expect
      .poll(() => address(page))
      .toEqual({
        pathname: '/reckoner/light-needed',
        stop: 'T5.6⅓',
        exposureTime: '1/1000 s',
        isoSpeed: '400',
        over: 'isoSpeed',
        units: 'imperial',
      });
    const said = await result(page).innerText();
    expect(said).toMatch(/fc/);
    const elsewhere = await open(page.url().slice(served.url.length));
    expect(await result(elsewhere.page).innerText()).toBe(said);
    expect(await chart(elsewhere.page).getAttribute('aria-label')).toContain('over exposure index');
    await elsewhere.context.close();
    await context.close();
  });

  test('going back and forward takes back and does again what was meant', async () => {
    const { page, context, complaints } = await open(T8);
    await field(page, 'Exposure index').fill('1600');
    await field(page, 'Exposure index').press('Enter');
    await field(page, 'Stop').fill('T4');
    await field(page, 'Stop').press('Enter');
    await expect.poll(() => address(page)).toMatchObject({ stop: 'T4', isoSpeed: '1600' });
    await page.goBack();
    await expect.poll(() => field(page, 'Stop').inputValue()).toBe('T8');
    expect(await field(page, 'Exposure index').inputValue()).toBe('1600');
    await page.goBack();
    await expect.poll(() => result(page).innerText()).toMatch(/40\s*klx/);
    await page.goForward();
    await expect.poll(() => result(page).innerText()).toMatch(/20\s*klx/);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('going back while typing leaves nothing of what was typed', async () => {
    const { page, context } = await open('/reckoner/light-needed');
    await field(page, 'Stop').fill('T8');
    await field(page, 'Stop').press('Enter');
    await expect.poll(() => address(page)).toMatchObject({ stop: 'T8' });
    await field(page, 'Stop').fill('T11');
    await page.evaluate(() => history.back());
    await expect.poll(() => field(page, 'Stop').inputValue()).toBe('');
    expect(address(page)).toEqual({ pathname: '/reckoner/light-needed' });
    await context.close();
  });

  test('what it says beyond the law is told', async () => {
    const { page, context } = await open(`${T8}&shutter=180`);
    expect(await page.getByRole('alert').innerText()).toContain('shutter=180');
    await context.close();
  });
});

describe('the pictures', () => {
  test('the curve is read by pointing and by keys, and set by a click or Enter', async () => {
    const { page, context, complaints } = await open(T8);
    expect((await readings(page))[0]).toBe('now T8 gives 40 klx');
    const box = (await chart(page).boundingBox())!;
    await page.mouse.move(box.x + box.width * 0.8, box.y + box.height / 2);
    const [pointed] = await readings(page);
    expect(pointed).toMatch(/^T16\S* gives .+ click to set it$/);
    await page.mouse.click(box.x + box.width * 0.8, box.y + box.height / 2);
    const stop = /T16\S*/.exec(pointed!)![0];
    await expect.poll(() => field(page, 'Stop').inputValue()).toBe(stop);

    await page.goto(served.url + T8);
    await chart(page).focus();
    for (let i = 0; i < 3; i += 1) await page.keyboard.press('ArrowRight');
    expect(await chart(page).getAttribute('aria-valuetext')).toBe('T11: 80 klx');
    await page.keyboard.press('Enter');
    await expect.poll(() => address(page)).toMatchObject({ stop: 'T11' });
    expect(await result(page).innerText()).toMatch(/80\s*klx/);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('a point picked on the map sets both inputs, by click and by keys', async () => {
    const { page, context, complaints } = await open(T8);
    await map(page).scrollIntoViewIfNeeded();
    const box = (await map(page).boundingBox())!;
    await page.mouse.click(box.x + box.width * 0.35, box.y + box.height * 0.6);
    await expect.poll(() => address(page)).not.toMatchObject({ stop: 'T8' });
    const picked = address(page);
    expect(picked['exposureTime']).not.toBe('1/2000 s');
    expect(await field(page, 'Stop').inputValue()).toBe(picked['stop']);
    expect(await field(page, 'Exposure time').inputValue()).toBe(picked['exposureTime']);

    await page.goto(served.url + T8);
    await map(page).focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowDown');
    expect((await readings(page))[1]).toMatch(/^T8⅓, 1\/2500 s gives 63 klx Enter sets it$/);
    await page.keyboard.press('Enter');
    await expect.poll(() => address(page)).toMatchObject({ stop: 'T8⅓', exposureTime: '1/2500 s' });
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('its lines of equal result are labelled with their unit, and one runs through where things stand', async () => {
    const { page, context } = await open(T8);
    await map(page).locator('.isoline-label').first().waitFor();
    const labels = await map(page).locator('.isoline-label').allTextContents();
    expect(labels.length).toBeGreaterThan(3);
    for (const label of labels) expect(label).toMatch(/^[\d.]+ k?lx$/);
    expect(labels).toContain('40 klx');
    await context.close();
  });

  test('where the law has no answer the curve has a gap, and pointing there says why', async () => {
    const { page, context } = await open('/reckoner/shutter-angle?exposureTime=1/2000+s&frameRate=1000+fps');
    await chart(page).focus();
    await page.keyboard.press('End');
    expect((await readings(page))[0]).toMatch(/: no answer\. Exposure time must be at most one frame/);
    await context.close();
  });

  test('while a field cannot be read the pictures say that they are of before', async () => {
    const { page, context } = await open(T8);
    await field(page, 'Stop').fill('T');
    await page.getByText('As it was before').waitFor();
    expect((await readings(page))[0]).toBe('before T8 gives 40 klx');
    await context.close();
  });

  test('the same is there as a table', async () => {
    const { page, context } = await open(T8);
    await page.getByText('The same as a table').click();
    await page.getByRole('row', { name: 'T16 160 klx' }).waitFor();
    await context.close();
  });
});

describe('beside a shoot', () => {
  test('R goes there from the Shoot, and the shoot stays open', async () => {
    const { page, context, complaints } = await open('/demo');
    await page.keyboard.press('r');
    await page.getByRole('heading', { level: 1, name: 'Reckoner' }).waitFor();
    expect(address(page)).toEqual({ pathname: '/demo/reckoner' });
    const places = page.getByRole('navigation', { name: 'Places' });
    expect(await places.locator('[aria-current]').allInnerTexts()).toEqual(['Reckoner']);
    await page.getByRole('link', { name: 'Record time', exact: true }).click();
    await expect.poll(() => address(page)).toEqual({ pathname: '/demo/reckoner/record-time' });
    await places.getByRole('link', { name: 'Shoot', exact: true }).click();
    await page.getByRole('heading', { level: 2, name: 'Board' }).waitFor();
    await expect.poll(() => page.title()).not.toContain('Reckoner');
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('its script is not loaded before somebody goes there', async () => {
    const { page, context } = await openWindow(browser);
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.goto(`${served.url}/demo`);
    await page.getByRole('heading', { level: 2, name: 'Board' }).waitFor();
    expect(asked.filter((url) => /Reckoner/.test(url))).toEqual([]);
    await page.keyboard.press('r');
    await page.getByRole('heading', { level: 1, name: 'Reckoner' }).waitFor();
    expect(asked.filter((url) => /Reckoner.*\.js/.test(url))).toHaveLength(1);
    await context.close();
  });
});

/** WCAG 2.2, target size (minimum). */
const LEAST_TARGET_px = 24;

describe.each(SIZES)('at $width × $height', (size) => {
  test.each([
    ['the list of laws', '/reckoner'],
    ['a law with nothing given', '/reckoner/depth-of-field'],
    ['a law at work', T8],
    [
      'a law with several results and a long equation',
      '/reckoner/rows-fit?firstRowCount=2160&firstFrameRate=1000+fps&secondRowCount=1080&secondFrameRate=1950+fps',
    ],
    ['a law that refuses', '/reckoner/shutter-angle?exposureTime=1/10+s&frameRate=1000+fps'],
  ])('%s keeps inside the window, lays no text on another, and can be hit', async (_, path) => {
    const { page, context, complaints } = await openWindow(browser, { theme: 'light', size });
    await page.goto(served.url + path);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.locator('.picture-waiting').waitFor({ state: 'detached' });
    expect(await overflow_px(page)).toBeLessThanOrEqual(0);
    expect(await overlappingTexts(page)).toEqual([]);
    expect(await smallTargets(page, LEAST_TARGET_px)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
