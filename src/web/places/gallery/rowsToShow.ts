/** One row of a chart for each thing that a row can show. */
import type { ChartRow } from '../../parts/marginRow.ts';
import { AXIS } from '../../parts/marginScale.ts';

const SHOWS: readonly (readonly [says: string, isShown: (row: ChartRow) => boolean])[] = [
  ['short', ({ standing, isHard }) => standing === 'short' && !isHard],
  ['short, a hard limit', ({ standing, isHard }) => standing === 'short' && isHard],
  ['tight: its band crosses just enough', ({ standing }) => standing === 'tight'],
  ['to spare, can give way', ({ standing, isHard, stops }) => standing === 'spare' && !isHard && stops!.value > 0.3],
  ['to spare, a hard limit', ({ standing, isHard, stops }) => standing === 'spare' && isHard && stops!.value > 0.3],
  ['beyond the axis', ({ stops }) => stops!.value > AXIS.most || stops!.value < AXIS.least],
];

export interface RowToShow {
  readonly says: string;
  readonly row: ChartRow;
}

/** The first row for each, no row twice; what no row shows is left out. */
export function rowsToShow(rows: readonly ChartRow[]): readonly RowToShow[] {
  const left = new Set(rows.filter(({ stops }) => stops));
  return SHOWS.flatMap(([says, isShown]) => {
    const row = [...left].find(isShown);
    if (!row) return [];
    left.delete(row);
    return [{ says, row }];
  });
}

/** What rows are shown for, so that a missing one is noticed. */
export const ROWS_SHOW: readonly string[] = SHOWS.map(([says]) => says);
