/**
 * The text of a light meter or oscilloscope read to times and values: two columns, any usual delimiter, decimal comma or
 * point, a header that may name the unit of time.
 *
 * @source flicker-practice how meters write their records
 */
import { Fault, type FaultDetails } from '../../base/fault.ts';
import { fieldsOf, formOf, numberIn, unitIn, type Form } from './measuredForm.ts';

export interface MeasuredRefusal extends FaultDetails {
  /** Line of the text, from 1; 0 where it is the text as a whole. */
  readonly line: number;
}

export interface MeasuredRecord {
  readonly times_s: Float64Array;
  readonly values: Float64Array;
  /** Whether the record holds more samples than were kept. */
  readonly isCut: boolean;
  readonly notices: readonly string[];
}

const MOST_CHARACTERS = 64 * 1024 * 1024;
/** Samples used; more change nothing once a lamp's period is known. */
export const MOST_SAMPLES = 262_144;
/** Lines before the first number: names, settings, units. */
const MOST_HEADER_LINES = 200;
/** A line of two numbers and some columns to leave out; a longer one is no record. */
export const MOST_LINE = 2000;

/** Stops reading with a fault that names the line. */
export function refuseMeasured({ line, ...details }: Omit<MeasuredRefusal, 'where'>): never {
  throw new Fault({ ...details, where: line > 0 ? `line ${line}` : 'the text', cause: { line } });
}

/** Refuses a line too long to be a sample. */
export function refuseLongLine(line: number, length: number): never {
  refuseMeasured({
    code: 'flicker.long-line',
    what: `The line holds ${length} characters, more than the ${MOST_LINE} that are read`,
    line,
    mend: 'Save one time and one value a line.',
  });
}

/** Lines of a text one by one, whatever ends them, so that a huge text is not held twice. */
function* linesOf(text: string): Generator<string> {
  let [from, line] = [0, 1];
  while (from < text.length) {
    let to = from;
    while (to < text.length && text.charCodeAt(to) !== 10 && text.charCodeAt(to) !== 13) to += 1;
    if (to - from > MOST_LINE) refuseLongLine(line, to - from);
    yield text.slice(from, to);
    from = text.charCodeAt(to) === 13 && text.charCodeAt(to + 1) === 10 ? to + 2 : to + 1;
    line += 1;
  }
}

const shown = (text: string) => (text.length > 40 ? `${text.slice(0, 40)}…` : text);

/** Takes a record line by line. */
export interface MeasuredReader {
  /** False once it wants no more lines. Throws the fault of a line that is no part of a record. */
  readonly take: (line: string) => boolean;
  /** What was taken. Throws the fault of a record without numbers. */
  readonly record: () => MeasuredRecord;
}

export interface MeasuredReading {
  /** Seconds in the record's unit of time, where its header does not say or says wrong. */
  readonly unit_s?: number;
  /** Takes every line of a longer record, and thins its samples by averaging neighbours, rather than stop. */
  readonly isThinned?: boolean;
}

/** Reads times and values line by line, in memory that does not grow with the record. */
export function measuredReader({ unit_s, isThinned = false }: MeasuredReading = {}): MeasuredReader {
  const header: string[] = [];
  let times: number[] = [];
  let values: number[] = [];
  let form: Form | undefined;
  let columnCount = 2;
  let isCut = false;
  let line = 0;
  let last = -Infinity;
  // The samples that one kept is the mean of, and what of the next has been added up.
  let block = 1;
  let [count, timeSum, valueSum] = [0, 0, 0];

  function begin(text: string): boolean {
    form = formOf(text);
    if (!form) {
      header.push(text);
      if (header.length > MOST_HEADER_LINES)
        refuseMeasured({
          code: 'flicker.no-numbers',
          what: `No line of a time and a value in the first ${MOST_HEADER_LINES}`,
          line,
          mend: 'Save the record as text with two columns: time, then light.',
        });
      return false;
    }
    columnCount = fieldsOf(text, form).length;
    const isTwice = form.delimiter === ',' && columnCount === 4 && header.length > 0 && header.at(-1)!.split(/[,;\t]/).length === 2; // prettier-ignore
    if (isTwice)
      refuseMeasured({
        code: 'flicker.comma-twice',
        what: `"${shown(text)}" has commas both within and between its numbers`,
        line,
        mend: 'Save it with semicolons or tabs between the columns.',
      });
    return true;
  }

  /** Neighbours two by two, so that as much again finds room. */
  function thin(): void {
    const halved = (all: readonly number[]) => all.filter((_, i) => i % 2 === 0).map((value, i) => (value + all[2 * i + 1]!) / 2); // prettier-ignore
    [times, values] = [halved(times), halved(values)];
    block *= 2;
  }

  function keep(time: number, value: number): void {
    [count, timeSum, valueSum] = [count + 1, timeSum + time, valueSum + value];
    if (count < block) return;
    times.push(timeSum / block);
    values.push(valueSum / block);
    [count, timeSum, valueSum] = [0, 0, 0];
  }

  return {
    take: (raw) => {
      line += 1;
      const text = (line === 1 && raw.charCodeAt(0) === 0xfeff ? raw.slice(1) : raw).trim();
      if (text === '' || (!form && !begin(text))) return true;
      if (times.length === MOST_SAMPLES) {
        isCut = true;
        if (!isThinned) return false;
        thin();
      }
      const fields = fieldsOf(text, form!);
      const time = numberIn(fields[0], form!);
      const value = numberIn(fields[1], form!);
      if (time === undefined || value === undefined)
        refuseMeasured({
          code: 'flicker.not-a-number',
          what: `"${shown(text)}" is not a time and a value`,
          line,
          mend: 'Take the line out, or write its two numbers.',
        });
      if (time <= last)
        refuseMeasured({
          code: 'flicker.time-backwards',
          what: `Time ${time} does not come after ${last}`,
          line,
          mend: 'Save one record with its times in order and in enough figures to tell them apart.',
        });
      last = time;
      keep(time, value);
      return true;
    },
    record: () => {
      if (!form)
        refuseMeasured({
          code: 'flicker.no-numbers',
          what: 'The text has no line of a time and a value',
          line: 0,
          mend: 'Save the record as text with two columns: time, then light.',
        });
      const named_s = unit_s ?? unitIn(header, form.delimiter);
      const cut = isThinned ? `Each sample is the mean of ${block} of the record, which holds more than ${MOST_SAMPLES}.` : `The first ${MOST_SAMPLES} samples are used.`; // prettier-ignore
      return {
        times_s: Float64Array.from(times, (time) => (time - times[0]!) * (named_s ?? 1)),
        values: Float64Array.from(values),
        isCut,
        notices: [
          ...(named_s === undefined ? ['No unit of time is named; seconds were taken.'] : []),
          ...(columnCount > 2 ? [`Of ${columnCount} columns the first is taken as time, the second as light.`] : []),
          ...(isCut ? [cut] : []),
        ],
      };
    },
  };
}

/** Reads times and values; refuses, with the line and what to do, what is no such record. */
export function readMeasuredText(text: string, { unit_s }: { readonly unit_s?: number } = {}): MeasuredRecord {
  if (text.length > MOST_CHARACTERS)
    refuseMeasured({
      code: 'flicker.too-long',
      what: `The text holds ${text.length} characters, more than the ${MOST_CHARACTERS} that are read`,
      line: 0,
      mend: 'Save a second or two of the record.',
    });
  const reader = measuredReader(unit_s === undefined ? {} : { unit_s });
  for (const line of linesOf(text)) if (!reader.take(line)) break;
  return reader.record();
}
