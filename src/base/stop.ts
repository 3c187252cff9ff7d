/**
 * Aperture markings: the engraved series stands for exact powers of √2, so T5.6 is 5.6569 in arithmetic.
 * A number that is no marking of the full- or third-stop series, such as T1.5 or T2.1, is taken as it stands.
 */
import { requirePositive } from './domain.ts';
import type { Parsed } from './rational.ts';

const FULL = ['0.5', '0.7', '1', '1.4', '2', '2.8', '4', '5.6', '8', '11', '16', '22', '32', '45', '64', '90', '128'];
const FIRST_FULL = -2;

/** Markings of the third-stop series between full stops, with their place in thirds above stop 1. */
const THIRDS: Readonly<Record<string, number>> = {
  '0.8': -2, '0.9': -1, '1.1': 1, '1.2': 2, '1.25': 2, '1.6': 4, '1.8': 5, '2.2': 7, '2.5': 8,
  '3.2': 10, '3.5': 11, '4.5': 13, '5': 14, '6.3': 16, '7.1': 17, '9': 19, '10': 20, '13': 22, '14': 23, '18': 25,
  '20': 26, '25': 28, '29': 29, '36': 31, '40': 32, '51': 34, '57': 35, '72': 37, '80': 38, '102': 40, '114': 41,
}; // prettier-ignore

const MARKED_THIRDS: Readonly<Record<string, number>> = {
  ...Object.fromEntries(FULL.map((mark, i) => [mark, 3 * (i + FIRST_FULL)])),
  ...THIRDS,
};

const FRACTIONS: Readonly<Record<string, number>> = {
  '': 0,
  '¼': 1 / 4,
  '⅓': 1 / 3,
  '½': 1 / 2,
  '⅔': 2 / 3,
  '¾': 3 / 4,
};

/** Thirds nearer than this are one, short of what fifteen digits tell apart. */
const SAME_THIRD = 1e-12;

/** The exact f- or T-number that lies `thirds` third-stops above 1: 0 → 1, 15 → 5.6569. */
export function stopFromThirds(thirds: number): number {
  return 2 ** (thirds / 6);
}

/** How many third-stops a number lies above 1; fractional unless it is on the series. */
export function thirdsAboveOne(number: number): number {
  requirePositive({ number });
  return 6 * Math.log2(number);
}

/** Reads "5.6", "5.6⅓", "5.6 1/3", "11½" (a leading T or f/ is removed by the caller). */
export function parseStopNumber(text: string): Parsed<number> {
  const match = /^(\d{1,4}(?:\.\d{1,18})?)(?:\s*([¼⅓½⅔¾])|\s+([123])\/([234]))?$/.exec(text.trim());
  if (!match) return { ok: false, why: 'a stop is written as T5.6, T5.6⅓ or f/8' };
  const [, mark = '', vulgar = '', above, below] = match;
  const part = above === undefined ? FRACTIONS[vulgar]! : Number(above) / Number(below);
  const thirds = MARKED_THIRDS[String(Number(mark))];
  const number = thirds === undefined ? Number(mark) : stopFromThirds(thirds);
  if (!(number > 0)) return { ok: false, why: 'a stop must be above zero' };
  if (part >= 1) return { ok: false, why: `${above}/${below} is no part of a stop` };
  if (thirds === undefined && part > 0) return { ok: false, why: `${mark} is no marked stop, so it takes no fraction` };
  return { ok: true, value: number * 2 ** (part / 2) };
}

/** A plain number in digits that are no engraved mark, so that it is not read back as the exact stop of that mark. */
function printUnmarked(number: number): string {
  const text = String(Number(number.toPrecision(15)));
  return text in MARKED_THIRDS ? `${number.toPrecision(14)}1` : text;
}

/** "5.6⅓": the nearest third, as engraved; with `exact`, the plain number whenever it is not on the series. */
export function printStopNumber(number: number, { exact = false } = {}): string {
  const thirds = thirdsAboveOne(number);
  const nearest = Math.round(thirds);
  const full = Math.floor(nearest / 3);
  const mark = FULL[full - FIRST_FULL];
  if (exact && (mark === undefined || Math.abs(thirds - nearest) > SAME_THIRD)) return printUnmarked(number);
  if (mark === undefined) return String(Number(number.toPrecision(3)));
  return mark + ['', '⅓', '⅔'][nearest - 3 * full]!;
}
