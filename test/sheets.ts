/** Sheets of a written shoot, problems and all, for tests of what is printed. */
import { readShoot } from '../src/document/read.ts';
import type { Written, WrittenRecord } from '../src/document/written.ts';
import { planShoot } from '../src/plan/plan.ts';
import type { DayPlan } from '../src/plan/day/types.ts';
import { dayOf } from '../src/solve/day.ts';
import type { Sheet, Source } from '../src/turnover/sheets/sheet.ts';
import { sheetsFor, type Asked } from '../src/turnover/sheets/sheets.ts';
import { SMALL } from './shoots.ts';

/** What sheets are made from; the day is drawn a few times only, and only where it is asked for. */
export function sourceOf(written: Written, system: Source['system'] = 'metric'): Source {
  const { shoot } = readShoot(written);
  const plan = planShoot(shoot);
  let drawn: DayPlan | undefined;
  return { shoot, plan, system, day: () => (drawn ??= dayOf(shoot, plan, { dayCount: 20 })) };
}

export function sheetsOf(written: Written, asked: Asked): readonly Sheet[] {
  return sheetsFor(sourceOf(written), asked);
}

const KINDS = ['card', 'plan', 'morning', 'cues', 'day', 'dressing'] as const satisfies readonly Asked['sheet'][];

/** Cards, the plan, the morning sheets, the cue sheets, the day and the stylist’s sheet of a shoot. */
export const everySheet = (written: Written): readonly Sheet[] =>
  KINDS.flatMap((sheet) => sheetsOf(written, { sheet }));

/** The small shoot with its one shot so many times over. */
export function ofShots(count: number): WrittenRecord {
  const one = (SMALL['shots'] as WrittenRecord)['one'] as WrittenRecord;
  const shots = Array.from({ length: count }, (_, i) => [`shot-${i + 1}`, { ...one, title: `Shot ${i + 1} of many` }]);
  return { ...SMALL, shots: Object.fromEntries(shots) as WrittenRecord };
}
