/** The day as one table, a row a shot in the order of the day. */
import { writeClock } from '../document/write.ts';
import type { DayPlan, DayShot, DayWork } from '../plan/day/types.ts';
import { csvText, type CsvColumn } from './csv.ts';

const WORKS = ['change', 'reference', 'element', 'reset', 'safety', 'wait', 'roll', 'review', 'meal', 'save', 'copy'] as const satisfies readonly DayWork[]; // prettier-ignore

type Row = DayShot & { readonly place: number };

const clock = (name: string, of: (row: Row) => number): CsvColumn<Row> => ({
  name,
  of: (row) => (row.isDone ? undefined : writeClock(of(row))),
});

const COLUMNS: readonly CsvColumn<Row>[] = [
  { name: 'place', of: ({ place }) => place },
  { name: 'shot', of: ({ shotId }) => shotId },
  { name: 'title', of: ({ title }) => title },
  { name: 'isDone', of: ({ isDone }) => isDone },
  clock('startsEarly', ({ starts }) => starts.early_s),
  clock('startsMiddle', ({ starts }) => starts.middle_s),
  clock('startsLate', ({ starts }) => starts.late_s),
  clock('endsEarly', ({ ends }) => ends.early_s),
  clock('endsMiddle', ({ ends }) => ends.middle_s),
  clock('endsLate', ({ ends }) => ends.late_s),
  { name: 'takesMiddleCount', of: ({ takes }) => takes.middle },
  { name: 'takesLateCount', of: ({ takes }) => takes.late },
  { name: 'product', of: ({ piecesUsed }) => piecesUsed?.product },
  { name: 'piecesMiddleCount', of: ({ piecesUsed }) => piecesUsed?.middle },
  { name: 'piecesLateCount', of: ({ piecesUsed }) => piecesUsed?.late },
  ...WORKS.map((work): CsvColumn<Row> => ({ name: `${work}_s`, of: ({ spent_s }) => spent_s[work] ?? 0 })),
  { name: 'because', of: ({ because }) => because },
];

/** Clock times as HH:MM, after midnight as 24:00 to 35:59; early, middle and late are one, five and nine days in ten. */
export function dayCsv({ shots }: Pick<DayPlan, 'shots'>): string {
  return csvText(
    COLUMNS,
    shots.map((shot, i) => ({ ...shot, place: i + 1 })),
  );
}
