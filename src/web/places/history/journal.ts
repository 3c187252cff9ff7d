/** The journal as it is read: rows with what they changed, in days and in each person's runs of edits, the newest first. */
import type { JournalRow } from '../../../api/replies.ts';
import type { Written } from '../../../document/written.ts';
import { sayWho, upperFirst } from '../../state/who.ts';
import { stepOf, type Change } from './changes.ts';

export interface Told {
  readonly row: JournalRow;
  readonly changes: readonly Change[];
}

/** Rows laid one after the other on the shoot as it was before the first of them; `after` is what they leave. */
export function tell(before: Written, oldestFirst: readonly JournalRow[]): { readonly told: readonly Told[]; readonly after: Written } {
  let after = before;
  const told = oldestFirst.map((row) => {
    const step = stepOf(after, row.patch);
    ({ after } = step);
    return { row, changes: step.changes };
  });
  return { told, after };
} // prettier-ignore

export interface Run {
  readonly key: number;
  readonly who: string;
  readonly told: readonly Told[];
}

export interface Day {
  /** As the calendar of the zone has it: `2027-03-09`. */
  readonly date: string;
  readonly runs: readonly Run[];
}

/** Edits of one person further apart than this are two runs. */
const PAUSE_ms = 30 * 60_000;

const isSameRun = (a: JournalRow, b: JournalRow) =>
  a.who === b.who && a.name === b.name && Math.abs(Date.parse(a.at) - Date.parse(b.at)) <= PAUSE_ms;

/** The calendar day of an instant in a zone, for telling days apart. */
export function dateIn(at: string, timeZone: string | undefined): string {
  const parts = new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });
  return parts.format(new Date(at));
}

/** Days and runs of rows that come newest first. */
export function daysOf(newestFirst: readonly Told[], { timeZone, me }: { readonly timeZone: string | undefined; readonly me: string }): readonly Day[] {
  const days: { date: string; runs: { key: number; who: string; told: Told[] }[] }[] = [];
  for (const told of newestFirst) {
    const { row } = told;
    const date = dateIn(row.at, timeZone);
    let day = days.at(-1);
    if (day?.date !== date) days.push((day = { date, runs: [] }));
    const run = day.runs.at(-1);
    const last = run?.told.at(-1);
    if (run && last && isSameRun(last.row, row)) run.told.push(told);
    else day.runs.push({ key: row.number, who: upperFirst(sayWho(row, me)), told: [told] });
  }
  return days.map(({ date, runs }) => ({ date, runs: runs.map((run) => ({ ...run, key: run.told.at(-1)!.row.number })) }));
} // prettier-ignore

/** Numbers of rows that were taken back and not made again since. */
export function takenBack(rows: readonly JournalRow[]): ReadonlySet<number> {
  const gone = new Set<number>();
  // An undo that was itself taken back, by a redo, takes nothing back any more.
  for (const { number, undoes } of rows.toSorted((a, b) => b.number - a.number))
    if (undoes !== undefined && !gone.has(number)) gone.add(undoes);
  return gone;
}

/** A zone that this browser knows, or undefined for its own. */
export function zoneOf(timeZone: string | undefined): string | undefined {
  if (timeZone === undefined) return undefined;
  try {
    return new Intl.DateTimeFormat(undefined, { timeZone }).resolvedOptions().timeZone;
  } catch {
    return undefined;
  }
}
