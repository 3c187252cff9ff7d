/** Sheets of a written shoot, problems and all, for tests of what is printed. */
import { readShoot } from '../src/document/read.ts';
import type { Written, WrittenRecord } from '../src/document/written.ts';
import { planShoot } from '../src/plan/plan.ts';
import type { Sheet } from '../src/turnover/sheets/sheet.ts';
import { sheetsFor, type Asked } from '../src/turnover/sheets/sheets.ts';
import { SMALL } from './shoots.ts';

export function sheetsOf(written: Written, asked: Asked): readonly Sheet[] {
  const { shoot } = readShoot(written);
  return sheetsFor({ shoot, plan: planShoot(shoot), system: 'metric' }, asked);
}

/** Cards, the plan and the morning sheets of a shoot. */
export const everySheet = (written: Written): readonly Sheet[] =>
  ([{ sheet: 'card' }, { sheet: 'plan' }, { sheet: 'morning' }] as const).flatMap((asked) => sheetsOf(written, asked));

/** The small shoot with its one shot so many times over. */
export function ofShots(count: number): WrittenRecord {
  const one = (SMALL['shots'] as WrittenRecord)['one'] as WrittenRecord;
  const shots = Array.from({ length: count }, (_, i) => [`shot-${i + 1}`, { ...one, title: `Shot ${i + 1} of many` }]);
  return { ...SMALL, shots: Object.fromEntries(shots) as WrittenRecord };
}
