/**
 * Where in a clip the action is: from activity that rises well above that of a quiet stretch, to where it has died down.
 *
 *     start above μ₀ + 10·σ₀, reach out to μ₀ + 3·σ₀        onset: S = max(0, S + (x − μ₀)/σ₀ − k), alarm at S > h
 *
 * μ₀, σ₀ of the quiet stretch        k 0.5        h 8, since a clip has thousands of frames        the onset is the first
 * frame after the last at which S was 0
 *
 * @source cusum-table the sum and how it is read
 * @source motion-activity the thresholds
 */
import { requirePositive } from '../base/domain.ts';
import { quantileInPlace } from '../base/median.ts';

export interface Action {
  /** First and last frame in which something moves. */
  readonly onset: number;
  readonly end: number;
  /** The frame of most movement. */
  readonly peak: number;
  /** Suggested first and last frame to keep, with handles. Nothing is ever trimmed by itself. */
  readonly in: number;
  readonly out: number;
  /** Whether the clip shows it begin and end. */
  readonly isBegun: boolean;
  readonly isEnded: boolean;
  /** clear: against a quiet head of the clip. likely: quiet was only found later, or it rises little. */
  readonly confidence: 'clear' | 'likely';
}

export interface ActionGiven {
  /** Mean of all tiles, of every frame. */
  readonly activity: Float64Array;
  /** Least deviation of it that quiet is taken to have: what noise can do where nothing is seen to move. */
  readonly leastDeviation: number;
  readonly playback_fps: number;
  /** Kept before and after, in screen time. */
  readonly handle_s?: number;
}

/** Kept on both sides unless asked otherwise. */
export const HANDLE_s = 0.25;
const HIGH = 10;
const LOW = 3;
const SLACK = 0.5;
const ALARM = 8;
/** Alone, where no frame stands out by itself, the sum has to rise this far. */
const ALARM_ALONE = 30;
/** Gaps that are joined, in screen time, and runs that are dropped, in frames. */
const GAP_s = 0.2;
const FEWEST_FRAMES = 3;
/** A head this many times as lively as the quietest stretch is not quiet. */
const LIVELY = 3;

interface Quiet extends QuietLevel {
  readonly isHead: boolean;
}

function statisticsOf(values: Float64Array): QuietLevel {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, deviation: Math.sqrt(squares / Math.max(1, values.length - 1)) };
}

/** Each value against its neighbours, the middle of the three: what one frame alone shows is how the clip was coded, or a fault. */
function withoutSpikes(values: Float64Array): Float64Array {
  return values.map((here, i) => {
    const [before, after] = [values[i - 1] ?? here, values[i + 1] ?? here];
    return Math.max(Math.min(before, after), Math.min(Math.max(before, after), here));
  });
}

/** The head of the clip where it is quiet, else its quietest stretch. The first frame has nothing before it. */
function quietOf(activity: Float64Array, leastDeviation: number): Quiet {
  const n = activity.length;
  const length = Math.min(n, Math.max(8, Math.min(200, Math.floor(n / 10))));
  const stretch = (from: number) => statisticsOf(activity.subarray(from, from + length));
  const head = stretch(Math.min(1, n - length));
  let quietest = head;
  const step = Math.max(1, Math.floor(length / 4));
  for (let from = 1; from + length <= n; from += step) {
    const here = stretch(from);
    if (here.mean < quietest.mean) quietest = here;
  }
  const most = quantileInPlace(activity.slice(), 1);
  // Where nothing at all moves, any movement is some: a small part of the most is taken for none.
  const least = Math.max(1e-9, leastDeviation, 0.003 * most);
  const isHead = head.mean <= LIVELY * Math.max(quietest.mean, least);
  const { mean, deviation } = isHead ? head : quietest;
  return { mean, deviation: Math.max(deviation, least, 0.1 * mean), isHead };
}

/** Runs that start above the high threshold, reach out to the low one, gaps joined and short ones dropped. */
function runsOf(activity: Float64Array, { mean, deviation }: Quiet, gap: number): readonly (readonly [number, number])[] {
  const [high, low] = [mean + HIGH * deviation, mean + LOW * deviation];
  const runs: [number, number][] = [];
  for (let i = 0; i < activity.length; i += 1) {
    if (activity[i]! <= high) continue;
    let [from, to] = [i, i];
    while (from > 0 && activity[from - 1]! > low) from -= 1;
    while (to + 1 < activity.length && activity[to + 1]! > low) to += 1;
    const last = runs.at(-1);
    if (last && from - last[1] <= gap) last[1] = to;
    else runs.push([from, to]);
    i = to;
  }
  return runs.filter(([from, to]) => to - from + 1 >= FEWEST_FRAMES);
} // prettier-ignore

/** How quiet is told: by its mean and its deviation. */
export interface QuietLevel {
  readonly mean: number;
  readonly deviation: number;
}

/** The sum of what rises above quiet by more than a slack, as it stands at each value, never below 0. */
export function cusumOf(values: Float64Array, { mean, deviation }: QuietLevel): Float64Array {
  let sum = 0;
  return values.map((value) => {
    sum = Math.max(0, sum + (value - mean) / deviation - SLACK);
    return sum;
  });
}

/** The first frame of the rise that sets off the first alarm; undefined where none does. */
export function onsetOf(values: Float64Array, quiet: QuietLevel, height = ALARM): number | undefined {
  const sums = cusumOf(values, quiet);
  const alarm = sums.findIndex((sum) => sum > height);
  return alarm < 0 ? undefined : sums.lastIndexOf(0, alarm) + 1;
}

/** As `onsetOf`, walking backwards from the end. */
function offsetOf(values: Float64Array, quiet: QuietLevel, height = ALARM): number | undefined {
  const back = onsetOf(values.slice().reverse(), quiet, height);
  return back === undefined ? undefined : values.length - 1 - back;
}

/** What is small, or slow, stands out in no frame by itself: the sum of all frames tells it, and their mean that it is no drift. */
function slowRun(activity: Float64Array, quiet: Quiet): readonly (readonly [number, number])[] {
  const [from, to] = [onsetOf(activity, quiet, ALARM_ALONE), offsetOf(activity, quiet, ALARM_ALONE)];
  if (from === undefined || to === undefined || to - from + 1 < FEWEST_FRAMES) return [];
  const { mean } = statisticsOf(activity.subarray(from, to + 1));
  return mean > quiet.mean + LOW * quiet.deviation ? [[from, to]] : [];
}

function peakOf(activity: Float64Array, from: number, to: number): number {
  let [best, most] = [from, -1];
  for (let i = from; i <= to; i += 1) {
    let sum = 0;
    for (let j = Math.max(0, i - 2); j <= Math.min(activity.length - 1, i + 2); j += 1) sum += activity[j]!;
    if (sum > most) [best, most] = [i, sum];
  }
  return best;
}

/** The action of a clip, or undefined where nothing rises above quiet. Throws RangeError for a playback rate that is none. */
export function actionOf({
  activity: asSeen,
  leastDeviation,
  playback_fps,
  handle_s = HANDLE_s,
}: ActionGiven): Action | undefined {
  requirePositive({ playback_fps });
  if (asSeen.length < 2 * FEWEST_FRAMES) return undefined;
  const activity = withoutSpikes(asSeen);
  const quiet = quietOf(activity, leastDeviation);
  const clear = runsOf(activity, quiet, Math.round(GAP_s * playback_fps));
  const runs = clear.length > 0 ? clear : slowRun(activity, quiet);
  if (runs.length === 0) return undefined;
  const n = activity.length;
  // The sum sees a slow beginning that no single frame shows.
  const first = onsetOf(activity, quiet) ?? n;
  const last = offsetOf(activity, quiet) ?? -1;
  const reach = Math.round(playback_fps);
  const [from, to] = [runs[0]![0], runs.at(-1)![1]];
  const onset = first >= from - reach ? Math.min(from, first) : from;
  const end = last <= to + reach ? Math.max(to, last) : to;
  const handle = Math.round(handle_s * playback_fps);
  const peak = peakOf(activity, onset, end);
  const isStrong = activity[peak]! > quiet.mean + 2 * HIGH * quiet.deviation;
  return {
    onset,
    end,
    peak,
    in: Math.max(0, onset - handle),
    out: Math.min(n - 1, end + handle),
    isBegun: onset > 1,
    isEnded: end < n - 2,
    confidence: quiet.isHead && isStrong ? 'clear' : 'likely',
  };
}
