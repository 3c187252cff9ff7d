/** Paper: choosing sheets, what is seen of them, and what comes out of the browser and of the server. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser, openWindow, overflow_px, overlappingTexts, SIZES, smallTargets, startServer, type Served } from '../browser.ts'; // prettier-ignore

let served: Served;
let browser: Browser;

beforeAll(async () => {
  [served, browser] = await Promise.all([startServer(), openBrowser()]);
});

afterAll(async () => {
  await browser.close();
  await served.stop();
});

async function openPaper(query = '', theme: 'light' | 'dark' | 'stage' = 'dark', size: (typeof SIZES)[number] = SIZES[0]) {
  const window = await openWindow(browser, { theme, size });
  await window.page.goto(`${served.url}/demo/paper${query}`);
  await window.page.locator('.paper-sheet').first().waitFor();
  return window;
} // prettier-ignore

/** A title cut short with three dots is told twice by the browser, once as it stands and once whole. */
const isOfTwo = (pair: string): boolean => !/^“(.*)” and “\1”$/.test(pair);

describe('paper', () => {
  test('is gone to from the shoot, and begins with a card for each shot', async () => {
    const { page, context, complaints } = await openWindow(browser);
    await page.goto(`${served.url}/demo`);
    await page.getByRole('link', { name: 'Paper' }).click();
    await page.locator('.paper-sheet').first().waitFor();
    expect(await page.locator('.paper-sheet').count()).toBeGreaterThanOrEqual(5);
    expect(await page.title()).toContain('Paper');
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('a choice changes the sheets and the address, and leads to the PDF of the same', async () => {
    const { page, context } = await openPaper();
    await page.getByLabel('Sheets').selectOption('morning');
    await page.getByLabel('Paper').selectOption('letter');
    await page.getByLabel('Units').selectOption('imperial');
    await expect.poll(() => page.url()).toContain('sheet=morning');
    expect(page.url()).toContain('size=letter');
    const href = await page.getByRole('link', { name: 'Open the PDF' }).getAttribute('href');
    expect(href).toBe('/api/shoots/demo/paper?sheet=morning&size=letter&units=imperial');
    const answer = await page.request.get(served.url + href!);
    expect([answer.status(), answer.headers()['content-type']]).toEqual([200, 'application/pdf']);
    expect((await answer.body()).subarray(0, 5).toString()).toBe('%PDF-');
    await context.close();
  });

  test.each(SIZES)('fits a window of $width × $height, with nothing on anything else', async (size) => {
    for (const query of ['', '?sheet=plan', '?sheet=morning']) {
      const { page, context } = await openPaper(query, 'light', size);
      expect(await overflow_px(page)).toBeLessThanOrEqual(0);
      expect((await overlappingTexts(page)).filter(isOfTwo)).toEqual([]);
      expect(await smallTargets(page, 24)).toEqual([]);
      await context.close();
    }
  });

  test.each(['dark', 'stage'] as const)(
    'prints black on white from the %s theme, without the controls',
    async (theme) => {
      const { page, context } = await openPaper('?sheet=plan', theme);
      await page.emulateMedia({ media: 'print' });
      const colours = () =>
        page.evaluate(() => {
          const { color, backgroundColor } = getComputedStyle(document.querySelector('.paper-sheet')!);
          return { color, backgroundColor };
        });
      await expect.poll(colours).toEqual({ color: 'rgb(0, 0, 0)', backgroundColor: 'rgba(0, 0, 0, 0)' });
      expect(await page.locator('.paper-choice').isVisible()).toBe(false);
      expect(await page.locator('.shell-head').isVisible()).toBe(false);
      await context.close();
    },
  );

  test.each([
    ['a4', 595, 842],
    ['letter', 612, 792],
  ])('comes out of the browser on %s', async (size, width, height) => {
    const { page, context } = await openPaper(`?sheet=plan&size=${size}`);
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    const [, right, top] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf)!;
    expect([Math.round(Number(right)), Math.round(Number(top))]).toEqual([width, height]);
    await context.close();
  });
});
