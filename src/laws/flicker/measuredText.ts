/**
 * The text of a light meter or oscilloscope read to times and values: two columns, any usual delimiter, decimal comma or
 * point, a header that may name the unit of time.
 *
 * @source flicker-practice how meters write their records
 */
import { Fault, type FaultDetails } from '../../base/fault.ts';

export interface MeasuredRefusal extends FaultDetails {
  /** Line of the text, from 1; 0 where it is the text as a whole. */
  readonly line: number;
}

export interface MeasuredRecord {
  readonly times_s: Float64Array;
  readonly values: Float64Array;
  readonly notices: readonly string[];
}

const MOST_CHARACTERS = 64 * 1024 * 1024;
/** Samples used; more change nothing once a lamp's period is known. */
export const MOST_SAMPLES = 262_144;
/** Lines before the first number: names, settings, units. */
const MOST_HEADER_LINES = 200;
/** A line of two numbers and some columns to leave out; a longer one is no record. */
const MOST_LINE = 2000;

/** Stops reading with a fault that names the line. */
export function refuseMeasured({ line, ...details }: Omit<MeasuredRefusal, 'where'>): never {
  throw new Fault({ ...details, where: line > 0 ? `line ${line}` : 'the text', cause: { line } });
}

/** Lines of a text one by one, whatever ends them, so that a huge text is not held twice. */
function* linesOf(text: string): Generator<{ readonly text: string; readonly line: number }> {
  let [from, line] = [text.charCodeAt(0) === 0xfeff ? 1 : 0, 1];
  while (from < text.length) {
    let to = from;
    while (to < text.length && text.charCodeAt(to) !== 10 && text.charCodeAt(to) !== 13) to += 1;
    if (to - from > MOST_LINE)
      refuseMeasured({
        code: 'flicker.long-line',
        what: `The line holds ${to - from} characters, more than the ${MOST_LINE} that are read`,
        line,
        mend: 'Save one time and one value a line.',
      });
    yield { text: text.slice(from, to).trim(), line };
    from = text.charCodeAt(to) === 13 && text.charCodeAt(to + 1) === 10 ? to + 2 : to + 1;
    line += 1;
  }
}

type Delimiter = '\t' | ';' | ',' | ' ';

interface Form {
  readonly delimiter: Delimiter;
  readonly hasDecimalComma: boolean;
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d{1,3})?$/i;

const fieldsOf = (text: string, { delimiter }: Pick<Form, 'delimiter'>): readonly string[] =>
  (delimiter === ' ' ? text.split(/\s+/) : text.split(delimiter)).map((field) =>
    field.trim().replace(/^"(.*)"$/, '$1'),
  );

function numberIn(field: string | undefined, { hasDecimalComma }: Pick<Form, 'hasDecimalComma'>): number | undefined {
  if (field === undefined) return undefined;
  const plain = hasDecimalComma ? field.replace(',', '.') : field;
  const value = NUMBER.test(plain) ? Number(plain) : NaN;
  return Number.isFinite(value) ? value : undefined;
}

/** How a line writes two numbers, or undefined where it does not. */
function formOf(text: string): Form | undefined {
  for (const delimiter of ['\t', ';', ' ', ','] as const) {
    if (!text.includes(delimiter) && !(delimiter === ' ' && /\s/.test(text))) continue;
    for (const hasDecimalComma of delimiter === ',' ? [false] : [false, true]) {
      const form = { delimiter, hasDecimalComma };
      const [time, value] = fieldsOf(text.replace(delimiter === ' ' ? /,\s+/g : /$^/, ' '), form);
      if (numberIn(time, form) !== undefined && numberIn(value, form) !== undefined) {
        // Spaces after commas: a comma delimits, and the spaces are for looks.
        return delimiter === ' ' && /,\s/.test(text) ? { delimiter: ',', hasDecimalComma: false } : form;
      }
    }
  }
  return undefined;
}

const UNITS: readonly (readonly [RegExp, number])[] = [
  [/(?:^|[\s([_/])(?:µs|μs|us|usec|microseconds?)(?:$|[\s)\]])/i, 1e-6],
  [/(?:^|[\s([_/])(?:ms|msec|milliseconds?)(?:$|[\s)\]])/i, 1e-3],
  [/(?:^|[\s([_/])(?:s|sec|seconds?)(?:$|[\s)\]])/i, 1],
];

/** Seconds in the unit that a header names for its first column, last line first. */
function unitIn(header: readonly string[], delimiter: Delimiter): number | undefined {
  for (const line of [...header].reverse()) {
    const first = delimiter === ' ' ? line : (fieldsOf(line, { delimiter })[0] ?? '');
    for (const [pattern, unit_s] of UNITS) if (pattern.test(first)) return unit_s;
  }
  return undefined;
}

const shown = (text: string) => (text.length > 40 ? `${text.slice(0, 40)}…` : text);

/** Reads times and values; refuses, with the line and what to do, what is no such record. */
export function readMeasuredText(text: string, { unit_s }: { readonly unit_s?: number } = {}): MeasuredRecord {
  if (text.length > MOST_CHARACTERS)
    refuseMeasured({
      code: 'flicker.too-long',
      what: `The text holds ${text.length} characters, more than the ${MOST_CHARACTERS} that are read`,
      line: 0,
      mend: 'Save a second or two of the record.',
    });
  const header: string[] = [];
  const times: number[] = [];
  const values: number[] = [];
  let form: Form | undefined;
  let columnCount = 2;
  let isCut = false;
  for (const { text: line, line: at } of linesOf(text)) {
    if (line === '') continue;
    if (!form) {
      form = formOf(line);
      if (!form) {
        header.push(line);
        if (header.length > MOST_HEADER_LINES)
          refuseMeasured({
            code: 'flicker.no-numbers',
            what: `No line of a time and a value in the first ${MOST_HEADER_LINES}`,
            line: at,
            mend: 'Save the record as text with two columns: time, then light.',
          });
        continue;
      }
      columnCount = fieldsOf(line, form).length;
      if (
        form.delimiter === ',' &&
        columnCount === 4 &&
        header.length > 0 &&
        header.at(-1)!.split(/[,;\t]/).length === 2
      )
        refuseMeasured({
          code: 'flicker.comma-twice',
          what: `"${shown(line)}" has commas both within and between its numbers`,
          line: at,
          mend: 'Save it with semicolons or tabs between the columns.',
        });
    }
    if (times.length === MOST_SAMPLES) {
      isCut = true;
      break;
    }
    const fields = fieldsOf(line, form);
    const time = numberIn(fields[0], form);
    const value = numberIn(fields[1], form);
    if (time === undefined || value === undefined)
      refuseMeasured({
        code: 'flicker.not-a-number',
        what: `"${shown(line)}" is not a time and a value`,
        line: at,
        mend: 'Take the line out, or write its two numbers.',
      });
    if (times.length > 0 && time <= times.at(-1)!)
      refuseMeasured({
        code: 'flicker.time-backwards',
        what: `Time ${time} does not come after ${times.at(-1)!}`,
        line: at,
        mend: 'Save one record with its times in order and in enough figures to tell them apart.',
      });
    times.push(time);
    values.push(value);
  }
  if (!form)
    refuseMeasured({
      code: 'flicker.no-numbers',
      what: 'The text has no line of a time and a value',
      line: 0,
      mend: 'Save the record as text with two columns: time, then light.',
    });
  const named_s = unit_s ?? unitIn(header, form.delimiter);
  const notices = [
    ...(named_s === undefined ? ['No unit of time is named; seconds were taken.'] : []),
    ...(columnCount > 2 ? [`Of ${columnCount} columns the first is taken as time, the second as light.`] : []),
    ...(isCut ? [`The first ${MOST_SAMPLES} samples are used.`] : []),
  ];
  return {
    times_s: Float64Array.from(times, (time) => (time - times[0]!) * (named_s ?? 1)),
    values: Float64Array.from(values),
    notices,
  };
}
