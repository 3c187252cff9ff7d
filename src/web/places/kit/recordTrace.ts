/** A light record thinned to what a drawing can show: the least and the most of each stretch, broken where time has gaps. */
import type { MeasuredRecord } from '../../../laws/flicker/measuredText.ts';

/** Points joined by a line. */
export interface TraceRun {
  readonly times_s: readonly number[];
  readonly values: readonly number[];
}

export interface Gap {
  readonly from_s: number;
  readonly to_s: number;
}

export interface Trace {
  readonly from_s: number;
  readonly to_s: number;
  readonly least: number;
  readonly most: number;
  readonly runs: readonly TraceRun[];
  readonly gaps: readonly Gap[];
}

export interface TraceAsk {
  /** Up to this time; the whole record where left out. */
  readonly to_s?: number;
  /** Stretches drawn apart. */
  readonly columnCount: number;
}

/** A step this many times the usual one leaves something out. */
const GAP_STEPS = 5;
/** Told apart; beyond that the record is no record. */
const MOST_GAPS = 20;

function usualStep_s(times_s: Float64Array): number {
  const steps = Float64Array.from({ length: Math.max(0, times_s.length - 1) }, (_, i) => times_s[i + 1]! - times_s[i]!);
  return steps.sort()[Math.floor(steps.length / 2)] ?? 0;
}

/** The record up to a time, thinned. */
export function traceOf(
  { times_s, values }: Pick<MeasuredRecord, 'times_s' | 'values'>,
  { to_s = Infinity, columnCount }: TraceAsk,
): Trace {
  const last_s = times_s.at(-1) ?? 0;
  const end_s = Math.min(last_s, to_s);
  const gap_s = GAP_STEPS * usualStep_s(times_s);
  const column_s = end_s / columnCount;
  const runs: { readonly times_s: number[]; readonly values: number[] }[] = [];
  const gaps: Gap[] = [];
  let [least, most] = [Infinity, -Infinity];
  let run = { times_s: [] as number[], values: [] as number[] };
  let from = 0;
  /** The samples from one to another as their extremes, in the order in which they came. */
  const put = (to: number) => {
    let [low, high] = [from, from];
    for (let i = from; i < to; i += 1) {
      if (values[i]! < values[low]!) low = i;
      if (values[i]! > values[high]!) high = i;
    }
    for (const i of low === high ? [low] : [Math.min(low, high), Math.max(low, high)]) {
      run.times_s.push(times_s[i]!);
      run.values.push(values[i]!);
    }
    from = to;
  };
  let i = 0;
  for (; i < times_s.length && times_s[i]! <= end_s; i += 1) {
    least = Math.min(least, values[i]!);
    most = Math.max(most, values[i]!);
    if (i === 0) continue;
    const isGap = gap_s > 0 && times_s[i]! - times_s[i - 1]! > gap_s;
    if (isGap || times_s[i]! - times_s[from]! >= column_s) put(i);
    if (!isGap) continue;
    if (gaps.length < MOST_GAPS) gaps.push({ from_s: times_s[i - 1]!, to_s: times_s[i]! });
    runs.push(run);
    run = { times_s: [], values: [] };
  }
  if (from < i) put(i);
  return { from_s: 0, to_s: end_s, least, most, runs: [...runs, run], gaps };
}
