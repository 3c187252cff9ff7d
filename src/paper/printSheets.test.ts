import { inflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { everySheet, ofShots, sheetsOf } from '../../test/sheets.ts';
import { changed, DEMO, SMALL } from '../../test/shoots.ts';
import type { Sheet } from '../turnover/sheets/sheet.ts';
import { layOut, PAPER, withFeet, type Page, type PaperSize } from './layOut.ts';
import { printable } from './letters.ts';
import { LINE_HEIGHT, type TextOp } from './ops.ts';
import { makePen } from './pen.ts';
import { printedWords, printSheets, withLacks } from './printSheets.ts';
import { openTypeface } from './typeface.ts';

const AT = new Date('2027-03-09T07:30:00Z');
const SIZES: readonly PaperSize[] = ['a4', 'letter'];

function pagesOf(sheets: readonly Sheet[], size: PaperSize): readonly Page[] {
  const options = { pen: makePen(openTypeface()), size };
  return withFeet(layOut(sheets, options), options, { says: 'revision 12, printed then' });
}

const textsOf = ({ ops }: Page): readonly TextOp[] => ops.filter((op) => op.op === 'text');
const wordsOf = (pages: readonly Page[]): string =>
  pages.flatMap(textsOf).map(({ words }) => words).join(' ').replace(/[\s\u00a0]+/g, ' '); // prettier-ignore

/** Texts that run off the paper, into its margins, or over one another. */
function misplaced(pages: readonly Page[], size: PaperSize): readonly string[] {
  const { width_pt, height_pt } = PAPER[size];
  const edge = 24;
  return pages.flatMap((page) => {
    const texts = textsOf(page).map((op) => ({ op, right: op.x_pt + op.width_pt, bottom: op.y_pt + op.size_pt * LINE_HEIGHT })); // prettier-ignore
    const off = texts.filter(({ op, right, bottom }) => op.x_pt < edge || op.y_pt < edge || right > width_pt - edge || bottom > height_pt - edge); // prettier-ignore
    const over = texts.flatMap((a, i) =>
      texts.slice(i + 1).flatMap((b) => {
        const wide = Math.min(a.right, b.right) - Math.max(a.op.x_pt, b.op.x_pt);
        // A line is a fifth taller than its letters.
        const high = Math.min(a.op.y_pt + a.op.size_pt, b.op.y_pt + b.op.size_pt) - Math.max(a.op.y_pt, b.op.y_pt);
        return wide > 1 && high > a.op.size_pt * 0.25 ? [`“${a.op.words}” over “${b.op.words}”`] : [];
      }),
    );
    return [...off.map(({ op }) => `“${op.words}” off the page`), ...over];
  });
}

const LONG =
  'An extraordinarily long title that somebody typed because the client asked for every word of it to be there';
const UNBROKEN = 'x'.repeat(200);
const forty = ofShots(40);
const long = changed(SMALL, {
  '/shoot/title': LONG,
  '/shots/one/title': UNBROKEN,
  '/shots/one/action/what': `${LONG} ${LONG} ${LONG}`,
  '/shots/one/cautions': [`${LONG} ${LONG}`, UNBROKEN],
  '/shots/one/references': [LONG, UNBROKEN.slice(0, 190)],
  '/lighting/key/title': LONG,
  '/kit/lenses/macro/title': LONG,
  '/board': { b1: { title: LONG, words: `${LONG}. `.repeat(15), seconds: '4 s' } },
  '/shots/one/board': ['b1'],
});

describe('the pages', () => {
  const written: readonly (readonly [string, typeof DEMO])[] = [
    ['the demo', DEMO],
    ['long titles and words without a blank', long as typeof DEMO],
    ['forty shots', forty],
    ['shots that lack everything', { longsecond: 1, shots: { a: {}, b: { title: 'B' } } }],
    ['no shots', { longsecond: 1 }],
  ];
  for (const size of SIZES)
    for (const [name, shoot] of written)
      test(`of ${name} on ${size}: nothing is cut off, and no text lies on another`, () => {
        expect(misplaced(pagesOf(everySheet(shoot), size), size)).toEqual([]);
      });

  test('number themselves, and say what they are of', () => {
    const pages = pagesOf(sheetsOf(DEMO, { sheet: 'card' }), 'a4');
    pages.forEach((page, i) => {
      const words = wordsOf([page]);
      expect(words).toContain(`${i + 1} of ${pages.length}`);
      expect(words).toContain('revision 12, printed then');
      expect(words).toContain(page.sheet.title);
    });
  });

  test('a card of the demo takes one page of A4', () => {
    const sheets = sheetsOf(DEMO, { sheet: 'card' });
    expect(pagesOf(sheets, 'a4')).toHaveLength(sheets.length);
  });

  test('a table that goes on overleaf has its head again there', () => {
    const pages = pagesOf(sheetsOf(forty, { sheet: 'plan' }), 'letter');
    const ofShots = pages.filter((page) => textsOf(page).some(({ words }) => words.includes('of many')));
    expect(ofShots.length).toBeGreaterThan(1);
    for (const page of ofShots) expect(textsOf(page).some(({ words }) => /^(Worst limit|Have, need)$/.test(words))).toBe(true); // prettier-ignore
  });

  test('all words of a long board frame are there, line by line', () => {
    const words = wordsOf(pagesOf(sheetsOf(long, { sheet: 'plan' }), 'a4'));
    expect(words.split('every word').length - 1).toBeGreaterThanOrEqual(15);
  });

  test('what is repeated is not read aloud twice', () => {
    const pages = pagesOf(sheetsOf(forty, { sheet: 'plan' }), 'a4');
    const heads = pages.flatMap(textsOf).filter(({ words }) => words === 'Worst limit');
    expect(heads.length).toBeGreaterThan(1);
    expect(heads.filter(({ tag }) => tag !== undefined)).toHaveLength(1);
  });
});

describe('letters', () => {
  const typeface = openTypeface();

  test('thirds of a stop are spelled out where the typeface has no sign for them', () => {
    expect(typeface.clean('T5.6⅓').replaceAll('\u00a0', ' ')).toBe('T5.6 1/3');
    expect(typeface.clean('T4⅔').replaceAll('\u00a0', ' ')).toBe('T4 2/3');
  });

  test('micro, which the typeface lacks, is printed as the u that is typed for it', () => {
    expect([typeface.clean('5 µs'), typeface.clean('5 μm')]).toEqual(['5 us', '5 um']);
  });

  test('signs of the trade are printed as they are', () => {
    for (const sign of ['°', '×', '−', '±', '²', '…', '’']) expect(typeface.clean(`5 ${sign}`)).toBe(`5 ${sign}`);
  });

  test('letters of the other Latin alphabets come from the second part of the typeface', () => {
    expect(typeface.runs('Łódź').map(({ part }) => part)).toContain('latin-ext');
    expect(printable('e\u0301', (code) => code === 0xe9)).toEqual({ words: 'é', lacking: [] });
  });

  test('what cannot be printed is named on the sheet rather than dropped', () => {
    const sheets = sheetsOf(changed(SMALL, { '/shots/one/title': '蜂蜜' }), { sheet: 'card', shot: 'one' });
    const words = wordsOf(pagesOf(withLacks(sheets, 'a4'), 'a4'));
    expect(words).toContain('?? ');
    expect(words).toContain('(U+8702, U+871C)');
    expect(wordsOf(pagesOf(withLacks(sheetsOf(SMALL, { sheet: 'card' }), 'a4'), 'a4'))).not.toContain('U+');
  });
});

/** Everything in the file that can be read as text, streams opened. */
function opened(bytes: Uint8Array): string {
  const file = Buffer.from(bytes);
  const parts: string[] = [];
  for (let at = 0; ;) {
    const start = file.indexOf('stream\n', at);
    if (start < 0) return [...parts, file.subarray(at).toString('latin1')].join('\n');
    const end = file.indexOf('\nendstream', start);
    const body = file.subarray(start + 7, end);
    parts.push(file.subarray(at, start).toString('latin1'));
    try {
      parts.push(inflateSync(body).toString('latin1'));
    } catch {
      parts.push('');
    }
    at = end + 10;
  }
}

/** PDF writes text of its dictionaries as plain letters or in UTF-16. */
const utf16 = (words: string): string => [...words].map((letter) => `\0${letter}`).join('');

describe('the file', () => {
  const sheets = sheetsOf(DEMO, { sheet: 'card' });

  test.each([
    ['a4', '[0 0 595.275591 841.889764]'],
    ['letter', '[0 0 612 792]'],
  ] as const)('on %s has the size of that paper, and a page for each laid out', async (size, box) => {
    const plan = sheetsOf(DEMO, { sheet: 'plan' });
    const text = opened(await printSheets(plan, { size, revision: 3, printedAt: AT }));
    const boxes = [...text.matchAll(/\/MediaBox (\[[^\]]*\])/g)].map(([, found]) => found);
    expect(new Set(boxes)).toEqual(new Set([box]));
    expect(boxes).toHaveLength(pagesOf(plan, size).length);
  });

  test('says its language, its title and when it was made, and is tagged for reading aloud', async () => {
    const text = opened(await printSheets(sheets.slice(0, 1), { size: 'a4', printedAt: AT }));
    const title = `${sheets[0]!.title}, shot card`;
    expect(text.startsWith('%PDF-1.7')).toBe(true);
    expect(text.includes('/Lang (en-GB)')).toBe(true);
    expect(text.includes(`(${title})`) || text.includes(utf16(title))).toBe(true);
    expect(text.includes('(D:20270309073000Z)')).toBe(true);
    expect(/\/Marked true/.test(text)).toBe(true);
    const kinds = new Set([...text.matchAll(/\/S \/(\w+)\n/g)].map(([, kind]) => kind));
    for (const kind of ['Document', 'H1', 'H2', 'Table', 'TR', 'TD', 'TH', 'P']) expect([...kinds]).toContain(kind);
  });

  test('carries its typeface within it', async () => {
    const text = opened(await printSheets(sheets.slice(0, 1), { size: 'a4', printedAt: AT }));
    expect(/\/FontName \/[A-Z]{6}\+(Atkinson)/.exec(text)?.[1]).toBe('Atkinson');
    expect(/\/FontFile[23] /.test(text)).toBe(true);
    expect(text.includes('/ToUnicode')).toBe(true);
  });

  test('is the same bytes for the same sheets and time, and others at another time', async () => {
    const print = (at: Date) => printSheets(sheetsOf(DEMO, { sheet: 'plan' }), { size: 'a4', revision: 3, printedAt: at }); // prettier-ignore
    const [first, again, later] = await Promise.all([print(AT), print(AT), print(new Date('2027-03-10T07:30:00Z'))]);
    expect(Buffer.compare(first, again)).toBe(0);
    expect(Buffer.compare(first, later)).not.toBe(0);
  });

  test('the time of printing is said in one zone everywhere', () => {
    expect(printedWords(new Date('2027-03-09T23:05:59+02:00'))).toBe('2027-03-09 21:05 UTC');
  });
});
