/** From many days to the few figures that are told of them. */
import { WORK_COUNT, WORKS, type DayRuns } from './dayRuns.ts';
import type { DayPlan, Moment } from './types.ts';

/** The value that a share of a sorted column does not exceed, between neighbours in proportion. */
export function quantileOf(sorted: Float64Array, shareFraction: number): number {
  const at = shareFraction * (sorted.length - 1);
  const below = sorted[Math.floor(at)]!;
  return below + (sorted[Math.ceil(at)]! - below) * (at - Math.floor(at));
}

/** Every so many values of a table, as a sorted column. */
export function sortedColumn(table: Float64Array, offset = 0, stride = 1, count = table.length / stride): Float64Array {
  const column = new Float64Array(count);
  for (let i = 0; i < count; i += 1) column[i] = table[offset + i * stride]!;
  return column.sort();
}

export function momentOf(sorted: Float64Array): Moment {
  return { early_s: quantileOf(sorted, 0.1), middle_s: quantileOf(sorted, 0.5), late_s: quantileOf(sorted, 0.9) };
}

/** Numbers of takes are whole: those that one, five and nine days in ten do not exceed. */
export function countsOf(sorted: Float64Array): { readonly early: number; readonly middle: number; readonly late: number } {
  const at = (shareFraction: number): number => sorted[Math.min(sorted.length - 1, Math.ceil(shareFraction * sorted.length) - 1)]!;
  return { early: at(0.1), middle: at(0.5), late: at(0.9) };
} // prettier-ignore

/** Days about the late one, whose work is looked at: one in ten of all. */
const LATE_FROM = 0.85;
const LATE_TO = 0.95;

/** What the late end hangs on: the floor is one chain of work from call to wrap, so its parts are the whole of it. */
export function lateWork({ work_s, wrap_s, dayCount }: DayRuns): DayPlan['path'] {
  const byWrap = Array.from(wrap_s.keys()).sort((a, b) => wrap_s[a]! - wrap_s[b]!);
  const late = byWrap.slice(Math.floor(LATE_FROM * (dayCount - 1)), Math.ceil(LATE_TO * (dayCount - 1)) + 1);
  const times = WORKS.map((work, column) => ({ work: work, time_s: late.reduce((sum, day) => sum + work_s[day * WORK_COUNT + column]!, 0) / late.length }));
  const total_s = times.reduce((sum, { time_s }) => sum + time_s, 0);
  return times
    .filter(({ time_s }) => time_s > 0)
    .sort((a, b) => b.time_s - a.time_s)
    .map(({ work, time_s }) => ({ work, time_s, shareFraction: time_s / total_s }));
} // prettier-ignore

/** The day whose wrap is nearest the middle, the earliest drawn of equals. */
export function middleDay(wrap_s: Float64Array, middle_s: number): number {
  let best = 0;
  for (let day = 1; day < wrap_s.length; day += 1)
    if (Math.abs(wrap_s[day]! - middle_s) < Math.abs(wrap_s[best]! - middle_s)) best = day;
  return best;
}
