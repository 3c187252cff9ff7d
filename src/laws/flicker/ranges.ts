/**
 * How far the light of the frames ranges over the phases they meet: every phase of a period once, then the phases of a
 * clip slid along them, so that each costs as many steps as there are phases and no more.
 *
 * @source exposure-mean the mean light of an exposure begun at a phase
 */
import type { ExposureTable } from './exposure.ts';

export interface Range {
  readonly least: number;
  readonly most: number;
}

/** Phases that frames meet: `count` evenly over the cycle, each spread over an arc by what is left; all when undefined. */
export interface PhasesMet {
  readonly count: number;
  readonly arcFraction: number;
}

export interface RangesMet {
  /** Over every phase. */
  readonly all: Range;
  /** Over the phases met by the clip whose first frame falls worst, and by the one whose first frame falls best. */
  readonly worst: Range;
  /** Phase of the first frame that falls worst, share of the period; 0 where every phase is met. */
  readonly worstFirst: number;
  readonly best: Range;
}

/** Phases looked at in a period. */
const PHASES = 4096;

/** Least exposure, in periods, that is an exposure and not the light itself. */
const LEAST_LENGTH = 1e-12;

/** Mean light of exposures begun at even phases from `first` on, shares of a period; `count` of them over one period. */
export function exposedLights(
  { period_s, samples, sums }: ExposureTable,
  { exposureTime_s, count, first = 0 }: { readonly exposureTime_s: number; readonly count: number; readonly first?: number },
): Float64Array {
  const cells = samples.length;
  const out = new Float64Array(count);
  const length = exposureTime_s / period_s;
  const whole = Math.floor(length);
  const rest = length - whole;
  const isInstant = length < LEAST_LENGTH;
  for (let i = 0; i < count; i += 1) {
    let from = first + i / count;
    from -= Math.floor(from);
    const at = from * cells;
    // A phase just below a whole one may round up to the cell past the last.
    const cell = at < cells ? Math.floor(at) : cells - 1;
    if (isInstant) {
      out[i] = samples[cell]!;
      continue;
    }
    let to = (from + rest) * cells;
    let wraps = whole;
    if (to >= cells) {
      to -= cells;
      wraps += 1;
    }
    const last = to < cells ? Math.floor(to) : cells - 1;
    const begun = sums[cell]! + (sums[cell + 1]! - sums[cell]!) * (at - cell);
    const ended = sums[last]! + (sums[last + 1]! - sums[last]!) * (to - last);
    out[i] = (wraps * sums[cells]! + ended - begun) / length;
  }
  return out;
} // prettier-ignore

/** Least and most of some lights. */
export function rangeOf(lights: Float64Array): Range {
  let [least, most] = [Infinity, -Infinity];
  for (let i = 0; i < lights.length; i += 1) {
    const light = lights[i]!;
    if (light < least) least = light;
    if (light > most) most = light;
  }
  return { least, most };
}

/** Of `count` equal stretches laid over each other, the least and the most at each place. */
function folded(lights: Float64Array, count: number): { readonly least: Float64Array; readonly most: Float64Array } {
  const length = lights.length / count;
  const [least, most] = [lights.slice(0, length), lights.slice(0, length)];
  for (let from = length; from < lights.length; from += length)
    for (let i = 0; i < length; i += 1) {
      const light = lights[from + i]!;
      if (light < least[i]!) least[i] = light;
      if (light > most[i]!) most[i] = light;
    }
  return { least, most };
}

/** The most of each stretch of `steps` places from every place on, round and round. */
function slidingMost(values: Float64Array, steps: number): Float64Array {
  const n = values.length;
  if (steps === 0) return values;
  const out = new Float64Array(n);
  // Places that may still be the most, largest first: each comes in once and goes out once.
  const kept = new Int32Array(n + steps);
  const heights = new Float64Array(n + steps);
  let [head, tail] = [0, 0];
  for (let i = 0, at = 0; i < n + steps; i += 1, at = at + 1 === n ? 0 : at + 1) {
    const value = values[at]!;
    while (tail > head && heights[tail - 1]! <= value) tail -= 1;
    kept[tail] = i;
    heights[tail] = value;
    tail += 1;
    const from = i - steps;
    if (kept[head]! < from) head += 1;
    if (from >= 0) out[from] = heights[head]!;
  }
  return out;
}

/** How far exposures range over the phases that frames meet. */
export function rangesMet(table: ExposureTable, exposureTime_s: number, phases: PhasesMet | undefined): RangesMet {
  const count = phases ? phases.count * Math.ceil(PHASES / phases.count) : PHASES;
  const lights = exposedLights(table, { exposureTime_s, count });
  const all = rangeOf(lights);
  if (!phases) return { all, worst: all, worstFirst: 0, best: all };
  const { arcFraction } = phases;
  const within = folded(lights, phases.count);
  const steps = Math.floor(arcFraction * count);
  const most = slidingMost(within.most, steps);
  const least = slidingMost(within.least.map((light) => -light), steps);
  // The end of each arc lies between two of the phases.
  const ends = arcFraction > 0 ? folded(exposedLights(table, { exposureTime_s, count, first: arcFraction }), phases.count) : within;
  const rangeAt = (i: number): Range => ({ least: Math.min(-least[i]!, ends.least[i]!), most: Math.max(most[i]!, ends.most[i]!) });
  let [widest, narrowest] = [-1, Infinity];
  let [worstAt, bestAt] = [0, 0];
  for (let i = 0; i < most.length; i += 1) {
    const high = most[i]! > ends.most[i]! ? most[i]! : ends.most[i]!;
    const low = -least[i]! < ends.least[i]! ? -least[i]! : ends.least[i]!;
    const width = high - low;
    if (width > widest) {
      widest = width;
      worstAt = i;
    }
    if (width < narrowest) {
      narrowest = width;
      bestAt = i;
    }
  }
  return { all, worst: rangeAt(worstAt), worstFirst: worstAt / count, best: rangeAt(bestAt) };
} // prettier-ignore
