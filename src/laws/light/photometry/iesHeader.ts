/**
 * The head of an IES file: version line, labels, and the TILT line that ends them.
 *
 *     version        line 1                    labels
 *     LM-63-1986     none                      free lines
 *     LM-63-1991     IESNA91                   [KEYWORD] text
 *     LM-63-1995     IESNA:LM-63-1995          [KEYWORD] text
 *     LM-63-2002     IESNA:LM-63-2002          [KEYWORD] text, [_OWN] text
 *     LM-63-2019     IES:LM-63-2019            the same, more keywords
 *
 * Real files write the version in other ways, leave it out, mix free lines among keywords and lose the TILT line; what is
 * plain is read and told, what could be read two ways is refused. Unknown keywords are kept as they stand.
 *
 * @source lm-63 the versions and their order
 * @source ies-lm63-importer the version lines, the label rules and what files do in practice
 */
import type { Label, Notice } from './photometry.ts';
import { refuse } from './refusal.ts';
import { numberOf, shown, wordsFrom } from './words.ts';

export type IesYear = 1986 | 1991 | 1995 | 2002 | 2019;

export const MOST_LABELS = 1000;
/** The longest line the standard has allowed is 256; the rest of a longer label is left out. */
export const LONGEST_LABEL = 1000;

export interface IesHeader {
  readonly year: IesYear;
  readonly labels: readonly Label[];
  /** What follows `TILT=`: `NONE`, `INCLUDE`, a file's name, or nothing. */
  readonly tilt: string;
  /** Index of the first line of numbers. */
  readonly start: number;
  /** The TILT line, from 1, or 0 where there is none. */
  readonly tiltLine: number;
  readonly notices: readonly Notice[];
}

const EXACT: ReadonlyMap<string, IesYear> = new Map([
  ['IESNA91', 1991],
  ['IESNA:LM-63-1995', 1995],
  ['IESNA:LM-63-2002', 2002],
  ['IES:LM-63-2019', 2019],
]);
const BY_DIGITS: ReadonlyMap<string, IesYear> = new Map([
  ['86', 1986],
  ['91', 1991],
  ['95', 1995],
  ['02', 2002],
  ['19', 2019],
]);
const LOOSE = /^IES(?:NA)?[\s:_-]{0,3}(?:LM[\s_-]{0,2}63[\s:_-]{0,3})?(?:19|20)?(86|91|95|02|19)$/i;
const TILT = /^\s{0,40}TILT\s{0,40}=(.*)$/i;
const KEYWORD = /^\s{0,200}\[([^\]]{1,60})\](.*)$/;

/** The version a line states, exactly or nearly, or undefined where it states none. */
function yearOf(line: string): { readonly year: IesYear; readonly isExact: boolean } | undefined {
  const text = line.trim();
  const exact = EXACT.get(text);
  if (exact) return { year: exact, isExact: true };
  const digits = text.length <= 40 ? LOOSE.exec(text)?.[1] : undefined;
  const year = digits === undefined ? undefined : BY_DIGITS.get(digits);
  return year === undefined ? undefined : { year, isExact: false };
}

/** Index of the first line that is nothing but numbers, ten of them or more: the first record, where TILT is missing. */
function firstRecord(lines: readonly string[]): number {
  return lines.findIndex((line, index) => {
    const words = wordsFrom([line], 0, 'parts');
    let count = 0;
    for (let word = words.next(); word && index <= MOST_LABELS; word = words.next()) {
      if (numberOf(word.text) === undefined) return false;
      count += 1;
    }
    return count >= 10;
  });
}

function endOfLabels(lines: readonly string[]): Pick<IesHeader, 'tilt' | 'start' | 'tiltLine' | 'notices'> {
  const head = lines.slice(0, MOST_LABELS + 2);
  const at = head.findIndex((line) => TILT.test(line.slice(0, LONGEST_LABEL)));
  if (at >= 0) {
    const line = lines[at]!.slice(0, LONGEST_LABEL);
    const isPlain = line.startsWith('TILT=');
    return {
      tilt: TILT.exec(line)![1]!.trim(),
      start: at + 1,
      tiltLine: at + 1,
      notices: isPlain
        ? []
        : [{ code: 'photometry.tilt-line', what: 'The TILT line is not written as the standard asks.', line: at + 1 }],
    };
  }
  const start = firstRecord(head);
  if (start < 0)
    refuse({
      code: 'photometry.not-ies',
      what: `No TILT line and no line of ten numbers stands in the first ${Math.min(lines.length, MOST_LABELS + 2)} lines`,
      line: 1,
      mend: 'Check that this is an IES photometric file (.ies); a EULUMDAT file ends in .ldt.',
    });
  return {
    tilt: 'NONE',
    start,
    tiltLine: 0,
    notices: [
      {
        code: 'photometry.no-tilt-line',
        what: 'There is no TILT line; the numbers were taken from the first line of ten, with no change by tilt.',
        line: start + 1,
      },
    ],
  };
}

interface Labels {
  readonly labels: readonly Label[];
  readonly notices: readonly Notice[];
}

function labelsOf(lines: readonly string[], { from, to, year }: { from: number; to: number; year: IesYear }): Labels {
  const labels: Label[] = [];
  const notices: Notice[] = [];
  let free = 0;
  for (let index = from; index < to; index += 1) {
    const whole = lines[index]!;
    const line = whole.slice(0, LONGEST_LABEL);
    if (line.trim() === '') continue;
    if (whole.length > LONGEST_LABEL)
      notices.push({
        code: 'photometry.long-label',
        what: `A label of ${whole.length} characters was cut to ${LONGEST_LABEL}.`,
        line: index + 1,
      });
    const [, keyword, text] = KEYWORD.exec(line) ?? [];
    const last = labels.at(-1);
    if (keyword === undefined) {
      labels.push({ keyword: '', text: line.trim() });
      free += 1;
    } else if (keyword.toUpperCase() === 'MORE' && last) {
      labels[labels.length - 1] = { ...last, text: `${last.text}\n${text!.trim()}` };
    } else labels.push({ keyword: keyword.toUpperCase(), text: text!.trim() });
  }
  if (year !== 1986 && free > 0)
    notices.push({
      code: 'photometry.stray-labels',
      what: `${free} ${free === 1 ? 'line' : 'lines'} among the labels bear no keyword, and were kept as they stand.`,
    });
  return { labels, notices };
}

/** Reads the head of an IES file. Refuses a text in which neither a TILT line nor a first record can be found. */
export function readIesHeader(lines: readonly string[]): IesHeader {
  const first = lines.findIndex((line) => line.trim() !== '');
  if (first < 0) refuse({ code: 'photometry.empty', what: 'The file is empty', line: 0, mend: 'Give the file again.' });
  const end = endOfLabels(lines);
  const labelEnd = end.tiltLine > 0 ? end.tiltLine - 1 : end.start;
  const stated = first < labelEnd ? yearOf(lines[first]!) : undefined;
  const looksStated = first < labelEnd && /^\s{0,40}IES/i.test(lines[first]!.slice(0, 80));
  if (looksStated && !stated && /LM.?63/i.test(lines[first]!.slice(0, 80)))
    refuse({
      code: 'photometry.unknown-version',
      what: `"${shown(lines[first]!.trim())}" names a version of the format that is not known`,
      line: first + 1,
      mend: 'Known are IESNA91, IESNA:LM-63-1995, IESNA:LM-63-2002 and IES:LM-63-2019; the 1986 version has no such line.',
    });
  const year = stated?.year ?? 1986;
  const { labels, notices } = labelsOf(lines, { from: stated ? first + 1 : first, to: labelEnd, year });
  const hasKeywords = labels.some(({ keyword }) => keyword !== '');
  const told: Notice[] = [];
  if (stated && !stated.isExact)
    told.push({
      code: 'photometry.loose-version',
      what: `"${shown(lines[first]!.trim())}" was read as LM-63-${year}.`,
      line: first + 1,
    });
  if (!stated && hasKeywords)
    told.push({
      code: 'photometry.no-version',
      what: 'The file states no version, though it uses keywords; it was read by the rules of 1986.',
      line: first + 1,
    });
  return { ...end, year, labels, notices: [...told, ...end.notices, ...notices] };
}
