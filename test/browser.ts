/** A really started server on a folder of its own, and a browser to drive the screens that it serves. */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { findChromium } from '../tools/system.mjs';
import { ROOT } from '../tools/run.mjs';

export interface Served {
  readonly url: string;
  readonly stop: () => Promise<void>;
}

const START_ms = 30_000;

/** Starts the built command on any free port, with the demo or with the shoots of these files; more is added to its arguments. */
export async function startServer(shoots: readonly string[] = [], more: readonly string[] = []): Promise<Served> {
  const data = mkdtempSync(join(tmpdir(), 'longsecond-journey-'));
  const args = [join(ROOT, 'dist/node/cli/main.js'), 'serve', '--port', '0', '--data', data];
  for (const shoot of shoots) args.push('--shoot', shoot);
  args.push(...more);
  const child = spawn(process.execPath, args, {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, NO_COLOR: '1' },
  });
  let said = '';
  child.stderr.on('data', (bytes: Buffer) => (said += String(bytes)));
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const url = await new Promise<string>((resolve, reject) => {
    const late = setTimeout(() => reject(new Error(`the server did not start:\n${said}`)), START_ms);
    child.once('exit', () => reject(new Error(`the server ended at once:\n${said}`)));
    child.stdout.on('data', (bytes: Buffer) => {
      said += String(bytes);
      const found = /http:\/\/localhost:\d+/.exec(said);
      if (!found) return;
      clearTimeout(late);
      resolve(found[0]);
    });
  }).catch((error: unknown) => {
    child.kill('SIGKILL');
    rmSync(data, { recursive: true, force: true });
    throw error;
  });
  return {
    url,
    stop: async () => {
      child.kill('SIGTERM');
      await ended;
      rmSync(data, { recursive: true, force: true });
    },
  };
}

export function openBrowser(): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error('Chromium is not installed; CHROMIUM may name one');
  // In a container there is no user namespace for the sandbox, and nothing here is loaded from elsewhere.
  return chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-background-networking'] });
}

export type Theme = 'light' | 'dark' | 'stage';

export interface Window {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Errors and warnings the page wrote, and whatever it threw. */
  readonly complaints: string[];
}

export const SIZES = [
  { width: 1440, height: 900 },
  { width: 1180, height: 820 },
  { width: 390, height: 844 },
] as const;

/** A window with a browser's memory of its own: as far as the server can tell, another person. */
export async function openWindow(
  browser: Browser,
  { theme = 'dark', size = SIZES[0] }: { readonly theme?: Theme; readonly size?: (typeof SIZES)[number] } = {},
): Promise<Window> {
  const context = await browser.newContext({ viewport: size, reducedMotion: 'reduce', acceptDownloads: true });
  await context.addInitScript((name) => {
    if (localStorage.getItem('longsecond.theme') === null) localStorage.setItem('longsecond.theme', name);
  }, theme);
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    const says = message.text();
    // Which resource it was stands beside the words, not in them.
    const where = says.startsWith('Failed to load resource') ? ` ${message.location().url}` : '';
    if (['error', 'warning'].includes(message.type())) complaints.push(says + where);
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  return { page, context, complaints };
}

/** How far the page is wider than its window, in CSS pixels. */
export function overflow_px(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
}

/**
 * Pairs of texts that lie on one another where both can be seen, looked for a window at a time down the page.
 * A text under something opaque is not seen, and one cut off by a scrolling part is not there.
 */
export async function overlappingTexts(page: Page): Promise<readonly string[]> {
  const found = new Set<string>();
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  const step = (page.viewportSize()?.height ?? 800) * 0.8;
  for (let top = 0; top < height; top += step) {
    await page.evaluate((y) => window.scrollTo(0, y), top);
    for (const pair of await page.evaluate(textsOnTexts)) found.add(pair);
  }
  await page.evaluate(() => window.scrollTo(0, 0));
  return [...found];
}

/** Runs in the page. */
function textsOnTexts(): readonly string[] {
  interface Seen {
    readonly text: string;
    readonly element: Element;
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  }
  const clip = (rect: DOMRect, element: Element) => {
    let { left, right, top, bottom } = rect;
    for (let at: Element | null = element; at; at = at.parentElement) {
      const style = getComputedStyle(at);
      if (style.clipPath !== 'none') return undefined;
      if (style.overflowX === 'visible' && style.overflowY === 'visible') continue;
      const box = at.getBoundingClientRect();
      left = Math.max(left, box.left);
      right = Math.min(right, box.right);
      top = Math.max(top, box.top);
      bottom = Math.min(bottom, box.bottom);
    }
    return { left, right, top: Math.max(top, 0), bottom: Math.min(bottom, innerHeight) };
  };
  const seen: Seen[] = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement!;
    const text = node.textContent!.trim();
    if (text === '' || !element.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const rect of range.getClientRects()) {
      const clipped = clip(rect, element);
      if (!clipped || clipped.right - clipped.left < 2 || clipped.bottom - clipped.top < 4) continue;
      // The box of a line is taller than its letters.
      const slack = (rect.bottom - rect.top) * 0.18;
      seen.push({ text, element, ...clipped, top: clipped.top + slack, bottom: clipped.bottom - slack });
    }
  }
  const isColour = (colour: string) =>
    colour !== 'transparent' && !/(?:\/|,[^,]+,[^,]+,)\s*0(?:\.\d+)?\)$/.test(colour);
  /** Some parts lay their ground with a pseudo-element, to reach a little beyond themselves. */
  const isOpaque = (element: Element) =>
    isColour(getComputedStyle(element).backgroundColor) ||
    ['::before', '::after'].some((pseudo) => {
      const { content, position, backgroundColor } = getComputedStyle(element, pseudo);
      return content !== 'none' && position === 'absolute' && isColour(backgroundColor);
    });
  const pairs: string[] = [];
  for (const [i, a] of seen.entries())
    for (const b of seen.slice(i + 1)) {
      const width = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      if (width < 1.5 || height < 1.5) continue;
      const stack = document.elementsFromPoint(
        Math.max(a.left, b.left) + width / 2,
        Math.max(a.top, b.top) + height / 2,
      );
      const [atA, atB] = [stack.indexOf(a.element), stack.indexOf(b.element)];
      if (atA < 0 || atB < 0 || stack.slice(0, Math.max(atA, atB)).some(isOpaque)) continue;
      pairs.push(`“${a.text.slice(0, 40)}” and “${b.text.slice(0, 40)}”`);
    }
  return pairs;
}

/** Controls too small for a finger or an unsteady hand; links within a sentence are as tall as its line. */
export function smallTargets(page: Page, least_px: number): Promise<readonly string[]> {
  return page.evaluate((least) => {
    const controls = document.querySelectorAll<HTMLElement>('a[href], button, input, select, summary, [role="radio"]');
    return [...controls].flatMap((control) => {
      if (!control.checkVisibility({ visibilityProperty: true }) || control.closest('.hidden-text')) return [];
      // A field is as large as the label around it.
      const target = control.closest('label') ?? control;
      const { width, height } = target.getBoundingClientRect();
      const reach = getComputedStyle(control, '::after');
      const isStretched = reach.position === 'absolute' && reach.inset === '0px' && reach.content !== 'none';
      if (isStretched || (width >= least && height >= least) || control.closest('.shell-skip')) return [];
      return [
        `${control.tagName.toLowerCase()} “${(control.getAttribute('aria-label') ?? control.textContent ?? '').trim().slice(0, 40)}” is ${Math.round(width)} × ${Math.round(height)}`,
      ];
    });
  }, least_px);
}
