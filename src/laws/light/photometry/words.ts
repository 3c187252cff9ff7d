/** Numbers out of lines of text, one word after another, each refused by the line it stands on. */
import { refuse } from './refusal.ts';

/** No number of a photometric file comes near it; beyond it products could leave the range of numbers. */
const LARGEST = 1e12;
const LONGEST_WORD = 40;
const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?$/;

/** What a comma does: parts two numbers, or stands before the decimals. */
export type Comma = 'parts' | 'decimal';

export interface Word {
  readonly text: string;
  readonly line: number;
}

export interface WordReader {
  /** The next word, or undefined at the end. */
  readonly next: () => Word | undefined;
  /** The line that the last word stood on, from 1. */
  readonly line: () => number;
}

const isBlank = (code: number): boolean => code <= 32 || code === 0xa0 || code === 0xfeff || code === 127;

/** Walks the words of some lines, from the line with this index on. */
export function wordsFrom(lines: readonly string[], start: number, comma: Comma): WordReader {
  let index = start;
  let at = 0;
  let line = start + 1;
  const parts = (code: number): boolean => isBlank(code) || (comma === 'parts' && code === 44);
  return {
    next: () => {
      for (; index < lines.length; index += 1, at = 0) {
        const text = lines[index]!;
        while (at < text.length && parts(text.charCodeAt(at))) at += 1;
        if (at === text.length) continue;
        const from = at;
        while (at < text.length && !parts(text.charCodeAt(at))) at += 1;
        line = index + 1;
        return { text: text.slice(from, at), line };
      }
      return undefined;
    },
    line: () => line,
  };
}

/** A word as a number, or undefined: plain decimals with an optional exponent, no larger than 10¹². */
export function numberOf(text: string, comma: Comma = 'parts'): number | undefined {
  if (text.length > LONGEST_WORD) return undefined;
  const plain = comma === 'decimal' && !text.includes('.') ? text.replace(',', '.') : text;
  if (!NUMBER.test(plain)) return undefined;
  const value = Number(plain);
  // Adding zero turns −0 into 0.
  return Math.abs(value) <= LARGEST ? value + 0 : undefined;
}

/** A word for a message, cut where it is long. */
export const shown = (text: string): string => (text.length > 24 ? `${text.slice(0, 24)}…` : text);

/** A phrase that names a value, as the start of a sentence. */
export const sentence = (what: string): string => what.charAt(0).toUpperCase() + what.slice(1);

export interface Numbers {
  /** The next number; `what` names it in a refusal. */
  readonly number: (what: string) => number;
  /** The next number, which must be whole and within `least` and `most`. */
  readonly whole: (what: string, least: number, most: number) => number;
  readonly line: () => number;
}

/** Reads numbers from words, refusing what is none and an end that comes too soon. */
export function numbersOf(words: WordReader, comma: Comma): Numbers {
  const number = (what: string): number => {
    const word = words.next();
    if (!word)
      return refuse({
        code: 'photometry.too-short',
        what: `The file ends before ${what}`,
        line: words.line(),
        mend: 'Ask for the whole file again: values are missing, and guessing them would move the light.',
      });
    return (
      numberOf(word.text, comma) ??
      refuse({
        code: 'photometry.not-a-number',
        what: `"${shown(word.text)}" stands where ${what} should be`,
        line: word.line,
        mend: 'Write a plain number such as 1250 or 12.5 there, or ask the maker for a sound file.',
      })
    );
  };
  return {
    number,
    whole: (what, least, most) => {
      const value = number(what);
      if (Number.isInteger(value) && value >= least && value <= most) return value;
      return refuse({
        code: 'photometry.bad-count',
        what: `${sentence(what)} is ${value}, and must be a whole number from ${least} to ${most}`,
        line: words.line(),
        mend: 'Check that no value before it is missing or written twice.',
      });
    },
    line: words.line,
  };
}
