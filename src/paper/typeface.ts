/** The typeface of the paper: its files, how wide its words are, and which it lacks. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import PDFDocument from 'pdfkit';
import type { Weight } from './ops.ts';
import { printable } from './letters.ts';

const files = createRequire(import.meta.url);

const PACKAGE = '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next';

/** The two parts a weight comes in: letters of western Europe and all signs, then the other Latin letters. */
const PARTS = ['latin', 'latin-ext'] as const;
export type Part = (typeof PARTS)[number];

const NUMBER: Readonly<Record<Weight, number>> = { regular: 400, bold: 700 };
const WEIGHTS = ['regular', 'bold'] as const;

export const fontName = (weight: Weight, part: Part): string => `${weight}-${part}`;

/** Figures of one width, so that columns of them line up. */
export const FEATURES: PDFKit.Mixins.OpenTypeFeatures[] = ['tnum'];

const read = new Map<string, Buffer>();

function fontFile(weight: Weight, part: Part): Buffer {
  const path = files.resolve(`${PACKAGE}-${part}-${NUMBER[weight]}-normal.woff`);
  const known = read.get(path);
  if (known) return known;
  const bytes = readFileSync(path);
  read.set(path, bytes);
  return bytes;
}

/** Makes both weights known to a document. */
export function registerTypeface(document: PDFKit.PDFDocument): void {
  for (const weight of WEIGHTS) for (const part of PARTS) document.registerFont(fontName(weight, part), fontFile(weight, part));
} // prettier-ignore

/** The part of an opened font that says what it covers; its own types leave it out. */
interface OpenedFont {
  readonly font: { readonly hasGlyphForCodePoint: (codePoint: number) => boolean };
}

export interface Run {
  readonly words: string;
  readonly part: Part;
}

export interface Typeface {
  /** Width in points of words at a size. */
  readonly width_pt: (words: string, weight: Weight, size_pt: number) => number;
  /** Words in pieces that one font file prints. */
  readonly runs: (words: string) => readonly Run[];
  /** Words in characters it has; those it lacks are remembered. */
  readonly clean: (words: string) => string;
  /** Characters asked for that nothing could stand for. */
  readonly lacking: ReadonlySet<string>;
}

interface Measuring {
  readonly covers: (part: Part, codePoint: number) => boolean;
  /** Width at 1 pt of a word that one font file prints. */
  readonly unitWidth_pt: (words: string, weight: Weight, part: Part) => number;
}

/** Words whose widths are kept: shaping one takes far longer than looking it up. */
const MOST_WORDS = 20_000;

function openMeasuring(): Measuring {
  const document = new PDFDocument({ autoFirstPage: false, font: fontFile('regular', 'latin') as never });
  registerTypeface(document);
  const opened = (part: Part) => {
    const { font } = (document.font(fontName('regular', part)) as unknown as { readonly _font: OpenedFont })._font;
    const known = new Map<number, boolean>();
    return (codePoint: number): boolean => {
      const found = known.get(codePoint) ?? font.hasGlyphForCodePoint(codePoint);
      known.set(codePoint, found);
      return found;
    };
  };
  const covers = { latin: opened('latin'), 'latin-ext': opened('latin-ext') };
  const widths = new Map<string, number>();
  return {
    covers: (part, codePoint) => covers[part](codePoint),
    unitWidth_pt: (words, weight, part) => {
      const name = fontName(weight, part);
      const key = `${name} ${words}`;
      const kept = widths.get(key);
      if (kept !== undefined) return kept;
      if (widths.size >= MOST_WORDS) widths.clear();
      const width = document.font(name).fontSize(1000).widthOfString(words, { features: FEATURES }) / 1000;
      widths.set(key, width);
      return width;
    },
  };
}

let measuring: Measuring | undefined;

/** Opens the typeface for measuring; its files are read once. */
export function openTypeface(): Typeface {
  const { covers, unitWidth_pt } = (measuring ??= openMeasuring());
  const lacking = new Set<string>();
  const runs = (words: string): readonly Run[] => {
    const found: { words: string; part: Part }[] = [];
    for (const character of words) {
      const codePoint = character.codePointAt(0)!;
      const last = found[found.length - 1];
      // Combining marks stay with the letter before them.
      const part = last && /\p{M}/u.test(character) ? last.part : covers('latin', codePoint) || !covers('latin-ext', codePoint) ? 'latin' : 'latin-ext';
      if (last?.part === part) last.words += character;
      else found.push({ words: character, part });
    }
    return found;
  }; // prettier-ignore
  const wordWidths: Readonly<Record<Weight, Map<string, number>>> = { regular: new Map(), bold: new Map() };
  const wordWidth_pt = (word: string, weight: Weight): number => {
    const kept = wordWidths[weight].get(word);
    if (kept !== undefined) return kept;
    const width = runs(word).reduce((sum, run) => sum + unitWidth_pt(run.words, weight, run.part), 0);
    wordWidths[weight].set(word, width);
    return width;
  };
  return {
    runs,
    width_pt: (words, weight, size_pt) => {
      const parts = words.replaceAll('\u00a0', ' ').split(' ');
      const spaces = (parts.length - 1) * unitWidth_pt(' ', weight, 'latin');
      return size_pt * (spaces + parts.reduce((sum, part) => sum + wordWidth_pt(part, weight), 0));
    },
    clean: (words) => {
      const made = printable(words, (codePoint) => covers('latin', codePoint) || covers('latin-ext', codePoint));
      for (const character of made.lacking) lacking.add(character);
      return made.words;
    },
    lacking,
  };
}
