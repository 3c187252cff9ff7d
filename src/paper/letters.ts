/** Which characters the typeface prints, and what stands for those it lacks. */

/** What is printed instead, where the typeface lacks a sign that others say as well. */
const INSTEAD: Readonly<Record<string, string>> = {
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  // Micro, under both of its code points: us for µs is read everywhere, here too.
  '\u00b5': 'u',
  '\u03bc': 'u',
  Ω: 'ohm',
  '≈': '~',
  '≤': 'at most ',
  '≥': 'at least ',
  '→': 'to',
  '∞': 'no end',
  '′': "'",
  '″': '"',
  '₂': '2',
  '\u2011': '-',
  '\u202f': ' ',
  '\u2009': ' ',
};

/** Stands where a character can be printed in no way. */
export const LACKING = '?';

export type Coverage = (codePoint: number) => boolean;

export interface Printable {
  readonly words: string;
  /** Characters of the text that are not in it. */
  readonly lacking: readonly string[];
}

/**
 * A text in characters that can be printed. A fraction after a digit is set apart from it: T5.6⅓ becomes T5.6 1/3.
 * What has no substitute is shown as `?` and named, so that a sheet can say so.
 */
export function printable(text: string, has: Coverage): Printable {
  const lacking: string[] = [];
  let words = '';
  for (const character of text.normalize('NFC')) {
    const codePoint = character.codePointAt(0)!;
    const instead = INSTEAD[character];
    if (has(codePoint)) words += character;
    else if (instead === undefined) {
      lacking.push(character);
      words += LACKING;
    } else words += /\d$/.test(words) && /^\d/.test(instead) ? `\u00a0${instead}` : instead;
  }
  return { words, lacking };
}
