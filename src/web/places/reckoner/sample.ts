/** A law sampled along one input or over two, with what it refuses left as gaps. */
import { rational, type Rational } from '../../../base/rational.ts';
import type { AnyLaw, InputField, LawValue } from '../../../laws/law.ts';
import { numberOf, placeOn, valueAt, type Axis } from './axis.ts';
import type { Grid } from './contour.ts';

export interface Asking {
  readonly of: AnyLaw;
  readonly given: Readonly<Record<string, LawValue>>;
  /** The name of the result wanted. */
  readonly result: string;
}

/** A number along an axis as an input takes it: counts whole, rates exact to a thousandth. */
export function asInput({ as }: Pick<InputField, 'as'>, value: number): number | Rational {
  if (as === 'count') return Math.round(value);
  return as === 'rational' ? rational(Math.max(0, Math.round(value * 1000)), 1000) : value;
}

/** One result as a number, or undefined where the law refuses, or answers without end or in words. */
export function resultNumber({ of, given, result }: Asking): number | undefined {
  try {
    const out: unknown = of.compute(given as never);
    if (typeof out === 'number') return numberOf(out);
    return numberOf((out as Readonly<Record<string, LawValue>>)[result]);
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

export interface Point {
  /** Along the axis, from 0 to 1. */
  readonly at: number;
  readonly value: number;
}

export interface Curve {
  /** Unbroken stretches, from left to right. */
  readonly runs: readonly (readonly Point[])[];
  /** Stretches without an answer. */
  readonly gaps: readonly { readonly from: number; readonly to: number }[];
}

export interface Along {
  readonly over: InputField;
  readonly axis: Axis;
  readonly count: number;
}

/** How closely the edge of a gap is found. */
const EDGE_STEPS = 14;

/** A step between two samples that is this share of all the results may be a jump. */
const LARGE_STEP = 0.2;
/** A step that keeps this share of its height however closely it is looked at is one. */
const JUMP = 0.7;

type Answer = (at: number) => number | undefined;

/** The results but for the outermost few, which may be on their way to a pole. */
function innerRange(runs: readonly (readonly Point[])[]): { readonly low: number; readonly high: number } {
  const sorted = runs.flatMap((run) => run.map(({ value }) => value)).sort((a, b) => a - b);
  const cut = Math.floor(sorted.length * 0.03);
  return { low: sorted[cut] ?? 0, high: sorted[sorted.length - 1 - cut] ?? 0 };
}

/** Breaks a run where the law jumps, so that no line is drawn where there is no value; a pole is no jump. */
function splitAtJumps(
  run: readonly Point[],
  inner: { readonly low: number; readonly high: number },
  answer: Answer,
): readonly (readonly Point[])[] {
  const runs: Point[][] = [[]];
  const range = inner.high - inner.low;
  const isNear = ({ value }: Point) => value >= inner.low - range && value <= inner.high + range;
  for (const [i, point] of run.entries()) {
    const last = run[i - 1];
    if (last && isNear(last) && isNear(point) && Math.abs(point.value - last.value) > LARGE_STEP * range) {
      let [low, high] = [last, point];
      for (let n = 0; n < EDGE_STEPS; n += 1) {
        const at = (low.at + high.at) / 2;
        const middle = { at, value: answer(at) ?? low.value };
        if (Math.abs(middle.value - low.value) > Math.abs(high.value - middle.value)) high = middle;
        else low = middle;
      }
      if (Math.abs(high.value - low.value) > JUMP * Math.abs(point.value - last.value)) {
        runs.at(-1)!.push(low);
        runs.push([high]);
      }
    }
    runs.at(-1)!.push(point);
  }
  return runs;
}

/** A law's result along one input. */
export function sampleCurve(asking: Asking, { over, axis, count }: Along): Curve {
  const answer: Answer = (at) =>
    resultNumber({ ...asking, given: { ...asking.given, [over.name]: asInput(over, valueAt(axis, at)) } });
  const edge = (answered: Point, refusedAt: number): Point => {
    let inside = answered;
    let outside = refusedAt;
    for (let i = 0; i < EDGE_STEPS; i += 1) {
      const at = (inside.at + outside) / 2;
      const value = answer(at);
      if (value === undefined) outside = at;
      else inside = { at, value };
    }
    return inside;
  };
  const runs: Point[][] = [];
  const gaps: { from: number; to: number }[] = [];
  let run: Point[] | undefined;
  let gapFrom = 0;
  for (let i = 0; i < count; i += 1) {
    const at = i / (count - 1);
    const value = answer(at);
    if (value === undefined) {
      if (run) {
        const last = edge(run.at(-1)!, at);
        if (last !== run.at(-1)) run.push(last);
        gapFrom = last.at;
        run = undefined;
      }
    } else if (run) {
      run.push({ at, value });
    } else {
      const here = { at, value };
      const first = i === 0 ? here : edge(here, (i - 1) / (count - 1));
      run = first === here ? [here] : [first, here];
      runs.push(run);
      if (i > 0) gaps.push({ from: gapFrom, to: first.at });
    }
  }
  if (!run) gaps.push({ from: gapFrom, to: 1 });
  // Whole numbers step by nature.
  if (over.as === 'count') return { runs, gaps };
  const inner = innerRange(runs);
  return { runs: runs.flatMap((each) => splitAtJumps(each, inner, answer)), gaps };
}

/** As much of a refused end of an axis as is worth showing. */
const SHOWN_REFUSAL = 0.1;

/** The axis without most of what is refused at its ends; where the law stands stays on it. */
export function trimAxis(axis: Axis, { runs }: Curve, at: number): Axis {
  const first = runs[0]?.[0]?.at;
  const last = runs.at(-1)?.at(-1)?.at;
  if (first === undefined || last === undefined) return axis;
  const here = Math.min(1, Math.max(0, placeOn(axis, at)));
  const low = Math.min(first, here);
  const high = Math.max(last, here);
  if (!(high > low)) return axis;
  const margin = (high - low) * SHOWN_REFUSAL;
  const from = first > 0 ? Math.max(0, low - margin) : 0;
  const to = last < 1 ? Math.min(1, high + margin) : 1;
  return { scale: axis.scale, from: valueAt(axis, from), to: valueAt(axis, to) };
}

/** Ends of axes are often nought, where laws refuse: a map's outermost samples lie this little inside them. */
const INSIDE = 1e-3;

const inside = (fraction: number) => Math.min(1 - INSIDE, Math.max(INSIDE, fraction));

export interface Across {
  readonly over: InputField;
  readonly and: InputField;
  readonly overAxis: Axis;
  readonly andAxis: Axis;
  readonly columns: number;
  readonly rows: number;
}

export interface GridWork {
  readonly grid: Grid;
  /** Answers at most this many more points; true when none is left. */
  readonly work: (most: number) => boolean;
}

/** A law's result over two inputs, worked out a little at a time so that whoever types is never kept waiting. */
export function startGrid(asking: Asking, { over, and, overAxis, andAxis, columns, rows }: Across): GridWork {
  const values = new Float64Array(columns * rows).fill(Number.NaN);
  let next = 0;
  const work = (most: number): boolean => {
    const end = Math.min(values.length, next + most);
    for (; next < end; next += 1) {
      const x = valueAt(overAxis, inside((next % columns) / (columns - 1)));
      const y = valueAt(andAxis, inside(Math.floor(next / columns) / (rows - 1)));
      const given = { ...asking.given, [over.name]: asInput(over, x), [and.name]: asInput(and, y) };
      values[next] = resultNumber({ ...asking, given }) ?? Number.NaN;
    }
    return next === values.length;
  };
  return { grid: { columns, rows, values }, work };
}
