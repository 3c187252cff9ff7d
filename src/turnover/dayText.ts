/** The day as text for eyes: when it ends, when each shot does, where the time goes, what would help, what lacks. */
import { writeClock } from '../document/write.ts';
import type { DayPlan, DayShot, DriveFill } from '../plan/day/types.ts';
import { capital, sayTime, WORK_NAMES } from '../plan/day/words.ts';
import type { Assumption } from '../plan/types.ts';
import { columnsOf, onOneLine, padded, PLAIN, wrapped, type Ink } from './lines.ts';
import { missingWords, numberWords, said } from './words.ts';

const INDENT = 3;

const ORDERS: Readonly<Record<DayPlan['orderBy'], string>> = {
  fixed: 'in the order that was fixed',
  proven: 'in the order with the least time for changing over, proven',
  found: 'in the best order found, not proven',
};

/** A heading and what stands under it; nothing where there is nothing. */
function section(ink: Ink, heading: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : ['', ink.strong(heading), ...lines];
}

/** Rows in columns as wide as their widest cell, the last one as it comes; numbers to the right. */
function table(rows: readonly (readonly string[])[], right: ReadonlySet<number>): readonly string[] {
  const widths = rows[0]?.map((_, i) => Math.max(...rows.map((row) => columnsOf(row[i]!)))) ?? [];
  const cell = (text: string, i: number, last: number): string => {
    if (i === last) return text;
    return right.has(i) ? ' '.repeat(widths[i]! - columnsOf(text)) + text : padded(text, widths[i]!);
  };
  return rows.map((row) => ' '.repeat(INDENT) + row.map((text, i) => cell(text, i, row.length - 1)).join('  '));
}

const takesWords = ({ takes: { middle, late } }: DayShot): string =>
  middle === late ? `${middle}` : `${middle} to ${late}`;

function shotRow(shot: DayShot, i: number, ink: Ink): readonly string[] {
  const { starts, ends, title, because, isDone } = shot;
  const clocks = isDone
    ? ['', '', '', '']
    : [writeClock(starts.middle_s), writeClock(ends.middle_s), writeClock(ends.late_s), takesWords(shot)];
  return [String(i + 1), ...clocks, `${onOneLine(title)}  ${ink.faint(onOneLine(because))}`];
}

function shotLines({ shots }: DayPlan, ink: Ink): readonly string[] {
  if (shots.length === 0) return [];
  const head = ['', 'starts', 'ends', 'by', 'takes', 'shot'];
  const [top = '', ...rows] = table([head, ...shots.map((shot, i) => shotRow(shot, i, ink))], new Set([0]));
  return [ink.faint(top), ...rows];
}

const size = (value: number): string => said(numberWords({ name: 'size_B', value, kind: 'bytes' }));

function driveRow({ title, holds, free_B, middle_B, late_B, isShort }: DriveFill, ink: Ink): readonly string[] {
  const most = late_B > middle_B ? `, ${size(late_B)} on one day in ten` : '';
  const state = isShort ? ink.short('too small') : '';
  return [onOneLine(title), holds, `${size(middle_B)}${most} of ${size(free_B)} free  ${state}`.trimEnd()];
}

function assumedLine({ name, title, value, kind, why, path }: Assumption): readonly string[] {
  const shown = name.endsWith('Fraction') ? `${Math.round(100 * value)} %` : name === 'callTime_s' ? writeClock(value) : kind === 'time' ? sayTime(value) : said(numberWords({ name, value, kind })); // prettier-ignore
  return wrapped(`${onOneLine(title)} ${shown}: ${why}; to change it write ${path}`, INDENT, INDENT + 2);
}

/** Lines of the day of a shoot. */
export function dayLines(title: string, day: DayPlan, ink: Ink = PLAIN): readonly string[] {
  const { says, warnings, shots, path, savings, drives, missing, assumed, dayCount, seedCount, orderBy } = day;
  return [
    ink.strong(onOneLine(title)),
    ink.faint(`${dayCount} days drawn from seed ${seedCount}, ${ORDERS[orderBy]}`),
    '',
    ...(shots.length === 0
      ? ['No shots yet: they are written under shots, each under an id of its own.']
      : says.flatMap((sentence) => wrapped(onOneLine(sentence), 0))),
    ...section(
      ink,
      'To be mended',
      warnings.flatMap((warning) => {
        const lines = wrapped(`${onOneLine(warning.says)} ${warning.path}`, INDENT);
        return lines.map((line, i) => (i === 0 ? ` ${ink.short('!')} ${line.slice(INDENT)}` : line));
      }),
    ),
    ...section(ink, 'Shots: half of all days, and nine in ten, by', shotLines(day, ink)),
    ...section(
      ink,
      'Where a late day goes',
      table(
        path.map(({ work, time_s, shareFraction }) => [capital(WORK_NAMES[work]), sayTime(time_s), `${Math.round(100 * shareFraction)} %`]), // prettier-ignore
        new Set([1]),
      ),
    ),
    ...section(
      ink,
      'What would end it sooner',
      table(
        savings.map((saving) => [sayTime(saving.saves_s), `${onOneLine(saving.title)}  ${ink.faint(onOneLine(saving.says))}`]), // prettier-ignore
        new Set([0]),
      ),
    ),
    ...section(
      ink,
      'Drives',
      table(
        drives.map((drive) => driveRow(drive, ink)),
        new Set(),
      ),
    ),
    ...section(
      ink,
      'Missing',
      missing.flatMap((one) => {
        const { name, says: how, path: at } = missingWords(one);
        return wrapped(`${onOneLine(name)}, ${onOneLine(how)}: ${at}`, INDENT, INDENT + 2);
      }),
    ),
    ...section(ink, 'Assumed, as nobody wrote it', assumed.flatMap(assumedLine)),
  ].map((line) => line.trimEnd());
}
