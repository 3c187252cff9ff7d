/** Setting words: broken into lines of a width, and put at their places. */
import { onOneLine } from '../turnover/lines.ts';
import { holdUnits } from '../turnover/sheets/holdUnits.ts';
import { INK, LINE_HEIGHT, type Tag, type TextOp, type Weight } from './ops.ts';
import type { Typeface } from './typeface.ts';

export interface Style {
  readonly size_pt: number;
  readonly weight?: Weight;
  readonly grey?: number;
}

export interface PutOptions extends Style {
  readonly x_pt: number;
  readonly y_pt: number;
  readonly tag?: Tag;
  /** With `width_pt`, against which side the lines stand. */
  readonly align?: 'left' | 'right' | 'middle';
  readonly width_pt?: number;
}

export interface Pen {
  readonly width_pt: (words: string, style: Style) => number;
  /** Its widest line unbroken, and its widest word. */
  readonly wish: (words: string, style: Style) => { readonly natural: number; readonly least: number };
  /** Lines of at most a width; a word wider than that is broken. */
  readonly lines: (words: string, style: Style, width_pt: number) => readonly string[];
  /** Lines at their places, one under the other. */
  readonly put: (lines: readonly string[], options: PutOptions) => readonly TextOp[];
  /** One line, cut short with three dots where it is wider. */
  readonly cut: (words: string, style: Style, width_pt: number) => string;
}

export const lineHeight_pt = ({ size_pt }: Style): number => size_pt * LINE_HEIGHT;

const SPACES = / +/;

/** Rounding may make a line a hair wider than the sum of its parts. */
const HAIR_pt = 0.01;

export function makePen(typeface: Typeface): Pen {
  const clean = (words: string): string => typeface.clean(holdUnits(onOneLine(words)));
  const measure = (words: string, { size_pt, weight = 'regular' }: Style): number =>
    typeface.width_pt(words, weight, size_pt);

  /** The longest start of a word that fits. */
  const fitting = (word: readonly string[], style: Style, width_pt: number): number => {
    let count = 1;
    while (count < word.length && measure(word.slice(0, count + 1).join(''), style) <= width_pt) count += 1;
    return count;
  };

  const linesOf = (words: string, style: Style, width_pt: number): readonly string[] => {
    const lines: string[] = [];
    let line = '';
    for (const word of words.split(SPACES)) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (measure(longer, style) <= width_pt + HAIR_pt) {
        line = longer;
        continue;
      }
      if (line !== '') lines.push(line);
      let rest = [...word];
      while (rest.length > 1 && measure(rest.join(''), style) > width_pt + HAIR_pt) {
        const count = fitting(rest, style, width_pt);
        lines.push(rest.slice(0, count).join(''));
        rest = rest.slice(count);
      }
      line = rest.join('');
    }
    return [...lines, line];
  };

  return {
    width_pt: (words, style) => measure(clean(words), style),
    wish: (words, style) => {
      const made = clean(words);
      return {
        natural: measure(made, style),
        least: Math.max(...made.split(SPACES).map((word) => measure(word, style))),
      };
    },
    lines: (words, style, width_pt) =>
      words
        .split(/\r?\n/)
        .filter((part, i, parts) => part.trim() !== '' || parts.length === 1 || i === 0)
        .flatMap((part) => linesOf(clean(part), style, width_pt)),
    put: (lines, { x_pt, y_pt, tag, align = 'left', width_pt, size_pt, weight = 'regular', grey = INK }) =>
      lines.flatMap((words, i) => {
        if (words === '') return [];
        const own_pt = typeface.width_pt(words, weight, size_pt);
        const room_pt = (width_pt ?? own_pt) - own_pt;
        const shift_pt = align === 'right' ? room_pt : align === 'middle' ? room_pt / 2 : 0;
        return [
          {
            op: 'text',
            words,
            x_pt: x_pt + shift_pt,
            y_pt: y_pt + i * size_pt * LINE_HEIGHT,
            width_pt: own_pt,
            size_pt,
            weight,
            grey,
            ...(tag === undefined ? {} : { tag }),
          },
        ];
      }),
    cut: (words, style, width_pt) => {
      const made = clean(words);
      if (measure(made, style) <= width_pt) return made;
      let rest = [...made];
      while (rest.length > 0 && measure(`${rest.join('')}…`, style) > width_pt) rest = rest.slice(0, -1);
      return `${rest.join('').trimEnd()}…`;
    },
  };
}
