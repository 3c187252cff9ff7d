/** One shot rolled many times by chance: how often all meet, in the frame, in focus and in the memory, and all of it at once. */
import { drawFour, drawKey } from '../../base/randomStream.ts';
import { requireCount } from '../../base/domain.ts';
import type { Shoot } from '../../document/schema.ts';
import { normalQuantile } from '../../laws/chance/normal.ts';
import { takesAtConfidenceCount } from '../../laws/chance/takes.ts';
import { withDefaults } from '../givens.ts';
import type { Picture, ShotPlan } from '../types.ts';
import { timingGivens } from './givens.ts';
import { EVEN_PART, TAIL_PART } from './steps.ts';
import type { CueTiming, SampledTiming, Share, ShotTiming } from './types.ts';

/** Where a shoot names no seed. */
export const USUAL_SEED = 1;

/** Enough for a standard error of less than one take in a hundred. */
export const USUAL_SAMPLES = 4000;

export interface Sampling {
  readonly sampleCount: number;
  readonly seed: number;
}

/** What one take of a criterion needs; true where the take is good by it. */
type Rolled = () => boolean;

/**
 * The shares of takes that are good, drawn from a stream of this seed and shot; undefined where nothing is left to
 * chance that can be told. Throws RangeError unless the count is a whole number above zero.
 */
export function sampleShot(shoot: Shoot, { id, timing, picture }: ShotPlan, { sampleCount, seed }: Sampling): SampledTiming | undefined {
  requireCount({ sampleCount }, 1);
  if (!timing) return undefined;
  const draws = drawsOf(seed, id);
  const things = thingsOf(shoot, id, timing);
  const criteria = {
    meets: meetsOf(things, timing),
    inTheFrame: inTheFrameOf(things, picture),
    inDepth: inDepthOf(things, picture),
    inMemory: inMemoryOf(shoot, id, timing, draws),
  };
  const judged = Object.entries(criteria).filter((entry): entry is [keyof typeof criteria, Rolled] => entry[1] !== undefined);
  if (judged.length === 0) return undefined;
  const counts = new Map<string, number>(judged.map(([name]) => [name, 0]));
  let all = 0;
  for (let take = 0; take < sampleCount; take += 1) {
    draws.startTake(take);
    things.forEach((thing) => throwOne(thing, draws.normal));
    let isGood = true;
    for (const [name, isGoodBy] of judged) {
      if (isGoodBy()) counts.set(name, counts.get(name)! + 1);
      else isGood = false;
    }
    all += Number(isGood);
  }
  const share = (count: number): Share => ({ fraction: count / sampleCount, standardErrorFraction: standardError(count / sampleCount, sampleCount) });
  const takes = takesAllowed(all / sampleCount);
  return {
    sampleCount,
    seedCount: seed,
    ...Object.fromEntries(judged.map(([name]) => [name, share(counts.get(name)!)])),
    all: share(all),
    ...(takes === undefined ? {} : { takesAllowedCount: takes }),
  };
} // prettier-ignore

/** What is drawn for a take: the same for the same seed, shot and take, whatever was drawn for others. */
interface Draws {
  readonly startTake: (take: number) => void;
  /** Evenly between 0 and 1, and never either. */
  readonly next: () => number;
  readonly normal: () => number;
}

function drawsOf(seed: number, shotId: string): Draws {
  const key = drawKey(seed, shotId, 'takes');
  const four = new Float64Array(4);
  let [take, drawn] = [0, 0];
  const next = (): number => {
    if (drawn % 4 === 0) drawFour(key, take, drawn / 4, 0, four);
    drawn += 1;
    return four[(drawn - 1) % 4]!;
  };
  return {
    startTake: (at) => {
      [take, drawn] = [at, 0];
    },
    next,
    normal: () => normalQuantile(next()),
  };
}

const standardError = (share: number, count: number): number => Math.sqrt((share * (1 - share)) / count);

/** Takes to allow for one good one, nine days in ten; undefined where no number of takes would do. */
function takesAllowed(goodTakeFraction: number): number | undefined {
  try {
    return takesAtConfidenceCount({ goodTakeCount: 1, goodTakeFraction });
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** One thing that must be there, and where this take has put it. */
interface Thing {
  readonly spread_s: number;
  readonly speed_m_per_s: number;
  readonly place_m: number;
  /** Its path in the picture as it arrives, of length one: across and up. */
  readonly across: number;
  readonly up: number;
  /** This take: how late it is, how far beside its path, how far behind its aim. */
  late_s: number;
  beside_m: number;
  behind_m: number;
}

/** What must meet or is there alone; nothing where a spread is not known. */
function thingsOf(shoot: Shoot, shotId: string, { cues }: ShotTiming): readonly Thing[] {
  const written = withDefaults(shoot, shotId).shot.cues;
  const met = cues.filter(({ isApart }) => !isApart);
  if (met.some(({ spread_s }) => spread_s === undefined)) return [];
  return met.map((cue) => {
    const turn = headingOf(cue, written[cue.id]?.launchAngle_deg ?? 0);
    const place_m = written[cue.id]?.placeSpread_m ?? 0;
    return { spread_s: cue.spread_s!, speed_m_per_s: cue.arrivalSpeed_m_per_s ?? 0, place_m, across: Math.cos(turn), up: Math.sin(turn), late_s: 0, beside_m: 0, behind_m: 0 };
  });
} // prettier-ignore

/** Falls and pours go down, throws about as they were aimed, all else across. */
function headingOf({ does }: CueTiming, launchAngle_deg: number): number {
  if (does === 'falls' || does === 'pours') return -Math.PI / 2;
  return does === 'flies' ? (launchAngle_deg * Math.PI) / 180 : 0;
}

function throwOne(thing: Thing, normal: () => number): void {
  thing.late_s = thing.spread_s * normal();
  thing.beside_m = thing.place_m * normal();
  thing.behind_m = thing.place_m * normal();
}

function meetsOf(things: readonly Thing[], { meeting }: ShotTiming): Rolled | undefined {
  if (things.length < 2 || !meeting) return undefined;
  return () => {
    let [first_s, last_s] = [Infinity, -Infinity];
    for (const { late_s } of things) [first_s, last_s] = [Math.min(first_s, late_s), Math.max(last_s, late_s)];
    return last_s - first_s <= meeting.tolerance_s;
  };
}

/** At the moment in the middle of their arrivals, each within every crop: what is late together is so at the same place. */
function inTheFrameOf(things: readonly Thing[], picture: Picture | undefined): Rolled | undefined {
  if (things.length === 0 || !picture || picture.crops.length === 0) return undefined;
  const width_m = Math.min(...picture.crops.map((crop) => crop.width_m)) / 2;
  const height_m = Math.min(...picture.crops.map((crop) => crop.height_m)) / 2;
  return () => {
    const middle_s = things.reduce((sum, { late_s }) => sum + late_s, 0) / things.length;
    return things.every(({ speed_m_per_s, late_s, beside_m, across, up }) => {
      const along_m = speed_m_per_s * (middle_s - late_s);
      return Math.abs(across * along_m - up * beside_m) <= width_m && Math.abs(up * along_m + across * beside_m) <= height_m;
    });
  };
} // prettier-ignore

function inDepthOf(things: readonly Thing[], picture: Picture | undefined): Rolled | undefined {
  const { sharpNear_m, sharpFar_m = Infinity } = picture ?? {};
  if (sharpNear_m === undefined || !things.some(({ place_m }) => place_m > 0)) return undefined;
  return () => things.every(({ behind_m }) => behind_m >= -sharpNear_m && behind_m <= sharpFar_m);
}

function inMemoryOf(shoot: Shoot, shotId: string, timing: ShotTiming, { next, normal }: Draws): Rolled | undefined {
  const { action_s, handle_s, trigger, memory } = timing;
  if (!trigger || !memory) return undefined;
  const givens = timingGivens(shoot, withDefaults(shoot, shotId));
  const [mean_s, spread_s] = [givens.get('triggerMean_s')!.value, givens.get('triggerSpread_s')!.value];
  const isPerson = trigger.by === 'person';
  const [even, tail] = isPerson ? [EVEN_PART * spread_s, TAIL_PART * spread_s] : [spread_s, 0];
  const { postTriggerFraction } = trigger.set;
  const earliest_s = action_s + handle_s - postTriggerFraction * memory.recordTime_s - trigger.answers_s;
  const latest_s = (1 - postTriggerFraction) * memory.recordTime_s - handle_s - trigger.answers_s;
  return () => {
    const delay_s = mean_s - tail + even * normal() - tail * Math.log(next());
    const fires = next() >= trigger.falseFireFraction && next() >= trigger.noFireFraction;
    return fires && delay_s >= earliest_s && delay_s <= latest_s;
  };
}
