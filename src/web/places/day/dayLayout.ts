/** Where the parts of a day lie between its left and right edge, in hundredths of the width. */
import { writeClock } from '../../../document/write.ts';
import type { DayBlock, DayPlan, DayShot } from '../../../plan/day/types.ts';

export interface Span {
  readonly from_s: number;
  readonly to_s: number;
}

/** Room left and right of what must be seen. */
const EDGE_s = 900;
/** Hours between labels, by how many hours are shown. */
const STEPS_h = [1, 2, 3, 6, 12] as const;

/** From before the call to after the late end, in whole half hours. */
export function spanOf({ starts_s, wrap, copied, wrapsBy_s = 0 }: Pick<DayPlan, 'starts_s' | 'wrap' | 'copied' | 'wrapsBy_s'>): Span {
  const last_s = Math.max(wrap.late_s, copied.late_s, wrapsBy_s, starts_s + 3600);
  return { from_s: Math.floor((starts_s - EDGE_s) / 1800) * 1800, to_s: Math.ceil((last_s + EDGE_s) / 1800) * 1800 };
} // prettier-ignore

export const placeOf = (time_s: number, { from_s, to_s }: Span): number =>
  Math.min(100, Math.max(0, (100 * (time_s - from_s)) / (to_s - from_s)));

export interface HourMark {
  readonly at: number;
  readonly says: string;
}

/** Whole hours to label, at most so many. */
export function hoursOf(span: Span, mostCount: number): readonly HourMark[] {
  const hours = (span.to_s - span.from_s) / 3600;
  const step_s = 3600 * (STEPS_h.find((step) => hours / step <= mostCount) ?? 24);
  const first_s = Math.ceil(span.from_s / step_s) * step_s;
  const count = Math.floor((span.to_s - first_s) / step_s) + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => {
    const time_s = first_s + i * step_s;
    return { at: placeOf(time_s, span), says: writeClock(time_s) };
  });
}

export interface ShotBar {
  /** From its start to its end on half the days. */
  readonly from: number;
  readonly to: number;
  /** Its end on one day in ten and on nine. */
  readonly early: number;
  readonly late: number;
}

/** Nothing for a shot that is done. */
export function barOf({ starts, ends, isDone }: DayShot, span: Span): ShotBar | undefined {
  if (isDone) return undefined;
  return {
    from: placeOf(starts.middle_s, span),
    to: placeOf(ends.middle_s, span),
    early: placeOf(ends.early_s, span),
    late: placeOf(ends.late_s, span),
  };
}

/** Blocks of one lane, those that touch and are of one kind and one shot joined, so that few are drawn. */
export function joined(blocks: readonly DayBlock[], lane: DayBlock['lane']): readonly DayBlock[] {
  const all = blocks.filter((block) => block.lane === lane).toSorted((a, b) => a.from_s - b.from_s);
  const found: DayBlock[] = [];
  for (const block of all) {
    const last = found.at(-1);
    const goesOn = last?.work === block.work && last.shotId === block.shotId && block.from_s - last.to_s < 1;
    if (last && goesOn) found[found.length - 1] = { ...last, to_s: Math.max(last.to_s, block.to_s) };
    else found.push(block);
  }
  return found;
}
