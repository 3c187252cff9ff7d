/** What is asked of every page for those who cannot see, point, or tell colours apart, and how it is asked. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** Told by the rule, the element and what is wrong with it; the texts whose contrast it cannot tell are judged here. */
export async function faultsOf(page: Page): Promise<readonly string[]> {
  // The page forbids scripts that are not its own, so it is run by the browser rather than added to the page.
  await page.evaluate(axeSource);
  const results = await page.evaluate(
    (tags) =>
      (window as unknown as { axe: { run: (on: Document, options: object) => Promise<AxeResults> } }).axe.run(document, {
        runOnly: { type: 'tag', values: tags },
        resultTypes: ['violations', 'incomplete'],
      }),
    TAGS,
  ); // prettier-ignore
  const found = results.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary = '' }) => `${id}: ${target.join(' ')}: ${failureSummary.split('\n')[1]?.trim()}`),
  ); // prettier-ignore
  const untold = results.incomplete
    .filter(({ id }) => id === 'color-contrast')
    .flatMap(({ nodes }) => nodes.map(({ target }) => target.join(' ')));
  return [...found, ...(await page.evaluate(faintTexts, untold))];
}

/** Runs in the page: those of the elements whose text stands out too little from the nearest ground laid behind it. */
export function faintTexts(selectors: readonly string[]): readonly string[] {
  const canvas = document.createElement('canvas');
  canvas.width = canvas.height = 1;
  const context = canvas.getContext('2d', { willReadFrequently: true })!;
  type Colour = readonly [red: number, green: number, blue: number, alpha: number];
  const read = (colour: string): Colour => {
    context.clearRect(0, 0, 1, 1);
    context.fillStyle = colour;
    context.fillRect(0, 0, 1, 1);
    const [red = 0, green = 0, blue = 0, alpha = 0] = context.getImageData(0, 0, 1, 1).data;
    return [red, green, blue, alpha / 255];
  };
  const over = ([r, g, b, a]: Colour, [R, G, B]: Colour): Colour => [
    r * a + R * (1 - a),
    g * a + G * (1 - a),
    b * a + B * (1 - a),
    1,
  ];
  const groundOf = (element: Element): Colour => {
    const layers: Colour[] = [];
    for (let at: Element | null = element; at; at = at.parentElement) {
      layers.push(read(getComputedStyle(at).backgroundColor));
      if (layers.at(-1)![3] === 1) break;
    }
    return layers.reduceRight((below, layer) => over(layer, below), [255, 255, 255, 1] as Colour);
  };
  const luminance = ([r, g, b]: Colour) => {
    const linear = (of: number) => (of / 255 <= 0.04045 ? of / 255 / 12.92 : ((of / 255 + 0.055) / 1.055) ** 2.4);
    return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
  };
  return selectors.flatMap((selector) => {
    const element = document.querySelector(selector);
    if (!element || element.closest(':disabled, [aria-disabled="true"]')) return [];
    const { color, fill, fontSize, fontWeight } = getComputedStyle(element);
    const ground = groundOf(element);
    const text = over(read(element instanceof SVGElement ? fill : color), ground);
    const [a, b] = [luminance(text), luminance(ground)];
    const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    const isLarge = parseFloat(fontSize) >= 24 || (parseFloat(fontSize) >= 18.66 && Number(fontWeight) >= 700);
    const least = isLarge ? 3 : 4.5;
    return ratio >= least ? [] : [`faint: ${selector}: ${ratio.toFixed(2)} where ${least} is asked`];
  });
}

/** Landmarks, one main heading, headings in order, and a title of the page. */
export async function outlineFaults(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const wrong: string[] = [];
    const count = (selector: string) => document.querySelectorAll(selector).length;
    for (const landmark of ['main', 'body header:not(main header)', 'nav'])
      if (count(landmark) === 0) wrong.push(`no ${landmark}`);
    if (count('main') > 1) wrong.push('more than one main');
    if (!/Longsecond$/.test(document.title)) wrong.push(`the page is titled “${document.title}”`);
    const headings = [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].filter((heading) =>
      heading.checkVisibility(),
    );
    const levels = headings.map(({ tagName }) => Number(tagName[1]));
    if (levels.filter((level) => level === 1).length !== 1)
      wrong.push(`${levels.filter((level) => level === 1).length} main headings`);
    levels.forEach((level, i) => {
      if (level > (levels[i - 1] ?? 0) + 1 && i > 0)
        wrong.push(`“${headings[i]!.textContent}” is a heading of level ${level} under one of ${levels[i - 1]}`);
    });
    const names = [...document.querySelectorAll('nav')].map((nav) => nav.getAttribute('aria-label'));
    if (new Set(names).size !== names.length) wrong.push(`two navigations have one name: ${names.join(', ')}`);
    return wrong;
  });
}

/** Asked again and again until it is so; a busy machine is given time. */
export const soon = <Of>(ask: () => Of, message = '') => expect.poll(ask, { timeout: 10_000, message });

/** What has the focus, as it would be said; nothing where the focus is lost. */
export const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const on = document.activeElement;
    if (!on || on === document.body) return '';
    return on.getAttribute('aria-label') ?? (on as HTMLInputElement).labels?.[0]?.textContent ?? on.textContent ?? '';
  });

export const isFocused = (what: Locator) => what.evaluate((element) => element === document.activeElement);

export const tabTo = async (page: Page, what: Locator) => {
  await what.waitFor();
  for (let presses = 0; presses < 150; presses += 1) {
    if (await isFocused(what)) return;
    await page.keyboard.press('Tab');
    expect(await focused(page), 'something has the focus after the Tab key').not.toBe('');
  }
  throw new Error('the keyboard never got there');
};

export const nameOf = async (what: Locator) => (await what.getAttribute('aria-label')) ?? '';

export const dialog = (page: Page) => page.getByRole('dialog');

/** Puts a text in place of what stands there by the browser's own clipboard: thousands of typed lines take it many seconds. */
export async function pasteInto(what: Locator, text: string) {
  const page = what.page();
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.evaluate((copied) => navigator.clipboard.writeText(copied), text);
  await what.focus();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.press('ControlOrMeta+v');
}

const REST_ms = 250;
const LONGEST_ms = 10_000;

/** Waits until the page has stood still for a moment: what is still being filled in is not what people are left with. */
export const settled = (page: Page): Promise<void> =>
  page.evaluate(
    ([rest_ms, longest_ms]) =>
      new Promise<void>((resolve) => {
        let timer = 0;
        const end = () => {
          watch.disconnect();
          clearTimeout(timer);
          clearTimeout(last);
          resolve();
        };
        const again = () => {
          clearTimeout(timer);
          timer = window.setTimeout(end, rest_ms);
        };
        const watch = new MutationObserver(again);
        const last = window.setTimeout(end, longest_ms);
        watch.observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
        again();
      }),
    [REST_ms, LONGEST_ms] as const,
  );

/** A shoot of its own for a journey. */
export async function bringIn({ url }: { readonly url: string }, id: string, text: string) {
  const reply = await fetch(`${url}/api/shoots`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ editId: `bring-in-for-access-${id}`, id, text }),
  });
  expect(reply.status).toBeLessThan(300);
}
