/** The steps of a map of light: whole or half stops about what is wanted, as many as lie in it. */
import { showSigned } from '../../../base/quantity.ts';
import type { Grid } from '../reckoner/contour.ts';

export interface Step {
  readonly stops: number;
  readonly label: string;
}

/** Darker than this counts as no light at all. */
export const DARKEST_stops = -5;
const BRIGHTEST_stops = 5;

/** A map that spans less than this is told in half stops. */
const NARROW_stops = 2.2;

/** Illuminances as stops about a reference. */
export function inStops({ columns, rows, values }: Grid, reference_lx: number): Grid {
  const stops = values.map((value) => (value > 0 ? Math.max(DARKEST_stops - 1, Math.log2(value / reference_lx)) : DARKEST_stops - 1));
  return { columns, rows, values: stops };
} // prettier-ignore

export interface Extremes {
  readonly least: number;
  readonly most: number;
  /** Which grid points. */
  readonly leastAt: number;
  readonly mostAt: number;
}

export function extremesOf({ values }: Pick<Grid, 'values'>): Extremes {
  let [leastAt, mostAt] = [0, 0];
  for (let i = 1; i < values.length; i += 1) {
    if (values[i]! < values[leastAt]!) leastAt = i;
    if (values[i]! > values[mostAt]!) mostAt = i;
  }
  return { least: values[leastAt]!, most: values[mostAt]!, leastAt, mostAt };
}

export const stepLabel = (stops: number): string =>
  stops === 0 ? 'just enough' : showSigned(stops, Number.isInteger(stops) ? 0 : 1);

/** The steps that a map crosses, lowest first. */
export function stepsOf(stops: Grid, zeroLabel = stepLabel(0)): readonly Step[] {
  const { least, most } = extremesOf(stops);
  const from = Math.max(DARKEST_stops, least);
  const to = Math.min(BRIGHTEST_stops, most);
  const by = to - from < NARROW_stops ? 0.5 : 1;
  const steps: Step[] = [];
  for (let i = Math.ceil(from / by - 1e-9); i * by <= to + 1e-9; i += 1)
    steps.push({ stops: i * by + 0, label: i === 0 ? zeroLabel : stepLabel(i * by) });
  return steps;
}

/** Share of the grid points at or above what is wanted. */
export function shareAbove({ values }: Pick<Grid, 'values'>, level: number): number {
  let count = 0;
  for (const value of values) if (value >= level) count += 1;
  return count / values.length;
}
