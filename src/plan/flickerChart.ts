/**
 * The swing of the frames over every pairing of frame rates and shutters, for a chart: what `seenFlicker` gives of a clip
 * without end, each exposure's light worked out once for all rates.
 *
 * Rates that meet more than 32 phases of a period are taken to meet all of them, and phases are looked at in steps of an
 * 840th: cells agree with `seenFlicker` to 0.005 stop or 3 %.
 */
import { exposureTable } from '../laws/flicker/exposure.ts';
import type { LightGroup } from '../laws/flicker/mix.ts';
import { exposedLights, rangeOf, type Range } from '../laws/flicker/ranges.ts';
import { phasesMet } from '../laws/flicker/seen.ts';

export interface FlickerChartGiven {
  readonly rates_fps: ArrayLike<number>;
  readonly exposures_s: ArrayLike<number>;
  /** Decides how fast a beat is seen, not how far it swings. */
  readonly playback_fps: number;
}

/** Divides by most of the small counts of phases that frame rates meet. */
const PHASES = 840;
/** More phases of a period than this are as good as all of them. */
export const MOST_PHASES_MET = 32;

/** A frame this little too short for an exposure still holds it: rounding, not physics. */
const ROUNDING = 1e-9;

/** How many phases of a group each rate meets; 0 for all of them. */
function phasesByRate({ waveform }: LightGroup, rates_fps: ArrayLike<number>): Int32Array {
  return Int32Array.from(rates_fps, (rate_fps) => {
    const met = phasesMet({ cyclesPerFrame: 1 / (rate_fps * waveform.period_s) });
    return met === undefined || met.count > MOST_PHASES_MET ? 0 : met.count;
  });
}

/**
 * The widest range of so many even phases, wherever they begin. Phases that lie between those looked at are read on a
 * straight line between them.
 */
function widestOf(lights: Float64Array, count: number): Range {
  const starts = Math.ceil(PHASES / count);
  const step = PHASES / (count * starts);
  const isWhole = step === 1;
  let [least, most, widest] = [0, 0, -1];
  for (let start = 0; start < starts; start += 1) {
    let [low, high] = [Infinity, -Infinity];
    for (let k = 0; k < count; k += 1) {
      const at = (start + k * starts) * step;
      const cell = at | 0;
      const here = lights[cell]!;
      const light = isWhole ? here : here + (lights[cell + 1 < PHASES ? cell + 1 : 0]! - here) * (at - cell);
      if (light < low) low = light;
      if (light > high) high = light;
    }
    if (high - low > widest) [least, most, widest] = [low, high, high - low];
  }
  return { least, most };
}

/** Ranges of one group at one exposure, by how many phases are met. */
function rangesAt(group: LightGroup, exposureTime_s: number, counts: ReadonlySet<number>): ReadonlyMap<number, Range> {
  const table = exposureTable(group.waveform);
  const lights = exposedLights(table, { exposureTime_s, count: PHASES });
  const ranges = new Map<number, Range>();
  for (const count of counts) ranges.set(count, count === 0 ? rangeOf(lights) : widestOf(lights, count));
  return ranges;
}

/**
 * Worst swing in stops: rates by exposures, exposures side by side; NaN where an exposure does not fit in its frame,
 * infinite where a frame can be dark. Throws RangeError for a rate or exposure that is not positive.
 */
export function flickerChart(groups: readonly LightGroup[], { rates_fps, exposures_s }: FlickerChartGiven): Float32Array {
  const [rateCount, exposureCount] = [rates_fps.length, exposures_s.length];
  const chart = new Float32Array(rateCount * exposureCount).fill(NaN);
  const met = groups.map((group) => phasesByRate(group, rates_fps));
  const [least, most] = [new Float64Array(rateCount), new Float64Array(rateCount)];
  for (let j = 0; j < exposureCount; j += 1) {
    const exposureTime_s = exposures_s[j]!;
    least.fill(0);
    most.fill(0);
    const fits = Array.from({ length: rateCount }, (_, i) => i).filter((i) => exposureTime_s * rates_fps[i]! <= 1 + ROUNDING);
    groups.forEach((group, g) => {
      const ranges = rangesAt(group, exposureTime_s, new Set(fits.map((i) => met[g]![i]!)));
      for (const i of fits) {
        const range = ranges.get(met[g]![i]!)!;
        least[i] = least[i]! + group.shareFraction * range.least;
        most[i] = most[i]! + group.shareFraction * range.most;
      }
    });
    for (const i of fits) chart[i * exposureCount + j] = Math.log2(most[i]! / Math.max(0, least[i]!));
  }
  return chart;
} // prettier-ignore
