/** The levels of a map: round values of the result, and every sample's place among them. */
import type { UnitSystem } from '../../../base/quantity.ts';
import type { ResultField } from '../../../laws/law.ts';
import { placeOn, resultAxis, ticksOf } from './axis.ts';
import type { Grid } from './contour.ts';
import type { DrawnGrid } from './useGrid.ts';

export interface Level {
  readonly at: number;
  readonly label: string;
}

export interface Levels {
  /** The grid with every value as its place on the axis of results. */
  readonly places: Grid;
  readonly levels: readonly Level[];
  /** The place of the result as it stands now; absent where it has none, or all results are the same. */
  readonly nowAt: number | undefined;
}

const MOST_LEVELS = 16;

export interface LevelsAsk {
  readonly result: ResultField;
  readonly nowValue: number | undefined;
  readonly system: UnitSystem;
}

/** The levels that lie among a map's results; undefined where it has none. */
export function levelsOf(
  { grid, across: { overAxis, andAxis } }: Pick<DrawnGrid, 'grid' | 'across'>,
  { result, nowValue, system }: LevelsAsk,
): Levels | undefined {
  const values = [...grid.values].filter((value) => Number.isFinite(value));
  const isAlongLog = overAxis.scale === 'log' && andAxis.scale === 'log';
  const axis = resultAxis(result, values, { at: nowValue, isAlongLog });
  if (!axis) return undefined;
  const { ticks, unit } = ticksOf(result, axis, { most: MOST_LEVELS, system });
  const placeOf = (value: number) => (axis.scale === 'log' && value <= 0 ? -1 : placeOn(axis, value));
  const places = grid.values.map(placeOf);
  let [least, most] = [Infinity, -Infinity];
  for (const at of places) if (!Number.isNaN(at)) [least, most] = [Math.min(least, at), Math.max(most, at)];
  const withUnit = (label: string) => (unit === '' || unit === '°' ? label + unit : `${label} ${unit}`);
  return {
    places: { ...grid, values: places },
    levels: ticks
      .map(({ value, label }) => ({ at: placeOn(axis, value), label: withUnit(label) }))
      .filter(({ at }) => at > least && at < most),
    nowAt: nowValue === undefined || least === most ? undefined : placeOf(nowValue),
  };
}
