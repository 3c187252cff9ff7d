/** Text for eyes in fixed-width columns: how wide it is, how it is broken, and what must not get into it. */

/** Lines are kept within this many columns wherever words can be broken. */
export const PAGE_COLUMNS = 100;

/** How parts of a text are set off where colour is to be had. Each takes text and returns the same text, dressed. */
export interface Ink {
  readonly strong: (text: string) => string;
  readonly faint: (text: string) => string;
  readonly short: (text: string) => string;
  readonly tight: (text: string) => string;
  readonly spare: (text: string) => string;
  readonly unknown: (text: string) => string;
}

const asItIs = (text: string): string => text;

export const PLAIN: Ink = {
  strong: asItIs,
  faint: asItIs,
  short: asItIs,
  tight: asItIs,
  spare: asItIs,
  unknown: asItIs,
};

/** Characters that move the cursor, change a terminal or turn the direction of writing. */
const UNSEEN = /[\p{Cc}\p{Zl}\p{Zp}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]+/gu;

/** Somebody's words on one line, without characters that would act on the terminal that shows them. */
export function onOneLine(text: string): string {
  return text.replace(UNSEEN, ' ').trim();
}

const NO_COLUMN = /\p{Mn}|\p{Me}|\p{Cf}/u;
const TWO_COLUMNS =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]/u;

/** Columns a text takes up on a terminal. */
export function columnsOf(text: string): number {
  let columns = 0;
  for (const character of text) columns += NO_COLUMN.test(character) ? 0 : TWO_COLUMNS.test(character) ? 2 : 1;
  return columns;
}

/** Text filled with blanks on the right up to a width. */
export function padded(text: string, width: number): string {
  return text + ' '.repeat(Math.max(0, width - columnsOf(text)));
}

/**
 * Words broken into lines of at most `PAGE_COLUMNS`, the first indented by `first` blanks, others by `rest`. A word too
 * long for a line, such as a path, stands whole on one of its own.
 */
export function wrapped(text: string, first: number, rest = first): readonly string[] {
  const lines: string[] = [];
  let line = ' '.repeat(first);
  let isEmpty = true;
  for (const word of text.split(' ')) {
    if (!isEmpty && columnsOf(line) + 1 + columnsOf(word) > PAGE_COLUMNS) {
      lines.push(line);
      line = ' '.repeat(rest);
      isEmpty = true;
    }
    line += isEmpty ? word : ` ${word}`;
    isEmpty = false;
  }
  return [...lines, line];
}
