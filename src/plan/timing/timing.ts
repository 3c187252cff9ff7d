/** The shot in time, told from its model: the cues worked back from their meeting, the trigger, what the memory keeps. */
import type { Cue, Shoot, Shot } from '../../document/schema.ts';
import { reactionDelay_s, type Reaction } from '../../laws/chance/reaction.ts';
import { spreadsMeetFraction } from '../../laws/chance/cuesMeet.ts';
import { bestTriggerSettingOf, triggerCatchOf } from '../../laws/chance/triggerCatch.ts';
import { swingOf } from '../../laws/motion/swing.ts';
import { assumptionsOf, missingOf } from '../limits.ts';
import type { Prepared, Worked } from '../prepared.ts';
import { impossibleOf } from './impossible.ts';
import { memoryOf } from './memory.ts';
import { cueName } from './steps.ts';
import type { Telling } from './telling.ts';
import { cuesOf, meetingPlaces, travels, timingStructureOf, type CueStructure } from './structure.ts';
import type { CueTiming, Meeting, ShotTiming, TriggerTiming } from './types.ts';

/** Where a cue or a trigger is written, and rate and length are known. */
export function timingOf(prepared: Prepared, worked: Worked): ShotTiming | undefined {
  const { shoot, effective, model } = prepared;
  const timing = timingStructureOf(effective.shot);
  if (timing.cues.length === 0 && timing.trigger === 'none') return undefined;
  const number = (name: string): number | undefined => {
    const slot = model.slotOf.get(name);
    const value = slot === undefined ? worked.givens.get(name)?.value : worked.values[slot];
    return value !== undefined && Number.isFinite(value) ? value : undefined;
  };
  const telling: Telling = { prepared, worked, timing, number };
  const [action_s, handle_s, captureRate_fps] = [number('coveredTime_s'), number('handles_s'), number('captureRate_fps')];
  if (action_s === undefined || handle_s === undefined || captureRate_fps === undefined) return undefined;
  const all = cuesOf(effective.shot).map(([id, cue], place) => cueTiming(telling, { id, cue, place, captureRate_fps }));
  const cues = [...all].sort((a, b) => (a.fire_s ?? Infinity) - (b.fire_s ?? Infinity) || 0);
  const trigger = triggerOf(telling);
  const told = { action_s, handle_s, captureRate_fps, cues, trigger };
  const meeting = meetingOf(telling, cues, captureRate_fps);
  const memory = memoryOf(telling, told);
  const playRate_fps = number('playRate_fps');
  return {
    action_s,
    handle_s,
    captureRate_fps,
    ...(playRate_fps === undefined || effective.shot.speed.knots.length > 0 ? {} : { screenStretchRatio: captureRate_fps / playRate_fps }),
    cues,
    ...(meeting ? { meeting } : {}),
    ...(trigger ? { trigger } : {}),
    ...(memory ? { memory } : {}),
    impossible: impossibleOf(telling, { ...told, meeting }),
    safety: safetyOf(shoot, cues),
  };
} // prettier-ignore

interface OneCue {
  readonly id: string;
  readonly cue: Cue;
  readonly place: number;
  readonly captureRate_fps: number;
}

const MILLISECOND_s = 0.001;
const CENTIMETRE_m = 0.01;

function cueTiming({ prepared, worked, timing, number }: Telling, { id, cue, place, captureRate_fps }: OneCue): CueTiming {
  const { shoot, model } = prepared;
  const of = (name: string) => number(cueName(place, name));
  const travel_s = travels(timing.cues[place]!) ? of('Travel_s') : 0;
  const [latency_s, spread_s, fire_s] = [of('Latency_s'), of('Spread_s'), of('Fire_s')];
  const settle_s = of('Settle_s') ?? 0;
  const rig = cue.rig === undefined ? undefined : shoot.kit.rigs[cue.rig];
  const names = [cueName(place, 'Fire_s'), cueName(place, 'Spread_s')];
  const missing = names.flatMap((name) => missingOf(model, worked.values, worked.givens, name));
  const first_s = number('firstSignal_s');
  const speed = of('ArrivalSpeed_m_per_s');
  const delays_s = centimetreDelays_s(timing.cues[place]!, of);
  const moves_s = fire_s !== undefined && latency_s !== undefined ? fire_s + latency_s : undefined;
  const arrives_s = moves_s !== undefined && travel_s !== undefined ? moves_s + travel_s : undefined;
  return {
    id,
    prefix: cueName(place, ''),
    title: cue.title ?? id,
    rig: cue.rig,
    rigTitle: rig?.title ?? cue.rig ?? 'No rig yet',
    rigKind: rig?.kind,
    does: cue.does ?? 'acts',
    settle_s,
    ...known({ latency_s, travel_s, fire_s, moves_s, arrives_s, spread_s }),
    ...known({ rests_s: arrives_s === undefined ? undefined : arrives_s + settle_s }),
    ...known({ afterFirst_s: fire_s === undefined || first_s === undefined ? undefined : fire_s - first_s }),
    shareOfSpreadFraction: shareOfSpread({ timing, number }, place),
    ...(speed === undefined ? {} : { arrivalSpeed_m_per_s: speed, millisecondMoves_m: speed * MILLISECOND_s }),
    millisecondFrames: captureRate_fps * MILLISECOND_s,
    ...known({ centimetreDelays_s: delays_s }),
    isApart: cue.isApart === true,
    missing: [...new Map(missing.map((one) => [`${one.name} ${one.path}`, one])).values()],
    assumed: assumptionsOf(model, worked.givens, names),
  };
} // prettier-ignore

type Known<T> = { readonly [K in keyof T]?: Exclude<T[K], undefined> };

/** Members that have a value. */
function known<T extends object>(members: T): Known<T> {
  return Object.fromEntries(Object.entries(members).filter(([, value]) => value !== undefined)) as Known<T>;
}

/** What one centimetre more of its path adds, by how fast it goes where that centimetre is. */
function centimetreDelays_s({ by }: CueStructure, of: (name: string) => number | undefined): number | undefined {
  if (by === 'swing') {
    const [arm_m, release_deg] = [of('Arm_m'), of('Release_deg')];
    if (arm_m === undefined || release_deg === undefined || of('ArrivalSpeed_m_per_s') === undefined) return undefined;
    // The time grows as the root of the arm.
    return (swingOf({ arm_m, release_deg }).swingTime_s / (2 * arm_m)) * CENTIMETRE_m;
  }
  const speed = of(by === 'move' ? 'Peak_m_per_s' : 'ArrivalSpeed_m_per_s');
  return speed === undefined || speed === 0 ? undefined : CENTIMETRE_m / speed;
}

function shareOfSpread({ timing, number }: Pick<Telling, 'timing' | 'number'>, place: number): number {
  const places = meetingPlaces(timing);
  if (!places.includes(place)) return 0;
  const squares = places.map((i) => (number(cueName(i, 'Spread_s')) ?? NaN) ** 2);
  const share = squares[places.indexOf(place)]! / squares.reduce((sum, square) => sum + square, 0);
  return Number.isFinite(share) ? share : 0;
}

function meetingOf({ worked, timing, number }: Telling, cues: readonly CueTiming[], captureRate_fps: number): Meeting | undefined {
  const places = meetingPlaces(timing);
  const [at_s, tolerance_s, wantedFraction] = [number('meetAt_s'), number('meetTolerance_s'), number('meetWantedFraction')];
  if (places.length === 0 || at_s === undefined || tolerance_s === undefined || wantedFraction === undefined) return undefined;
  const chanceFraction = number('meetingFraction');
  const met = cues.filter(({ isApart }) => !isApart);
  const [dominant] = [...met].sort((a, b) => b.shareOfSpreadFraction - a.shareOfSpreadFraction);
  const isDominant = dominant !== undefined && dominant.shareOfSpreadFraction > 0;
  const others = met.filter((cue) => cue !== dominant).map(({ spread_s }) => spread_s ?? NaN);
  const needed_s = isDominant && chanceFraction !== undefined ? spreadNeeded_s(others, tolerance_s, wantedFraction) : undefined;
  return {
    at_s,
    tolerance_s,
    toleranceFrames: tolerance_s * captureRate_fps,
    ...known({ chanceFraction, dominantSpreadNeeded_s: needed_s }),
    wantedFraction,
    ...(isDominant ? { dominant: dominant.id } : {}),
    isAssumed: places.some((i) => worked.givens.get(cueName(i, 'Jitter_s'))?.assumed !== undefined),
  };
} // prettier-ignore

/** The largest spread one may have beside these others so that all meet this often; undefined where not even none will do. */
export function spreadNeeded_s(others_s: readonly number[], window_s: number, wantedFraction: number): number | undefined {
  const meets = (spread_s: number) => spreadsMeetFraction([...others_s, spread_s], window_s);
  if (wantedFraction >= 1 || meets(0) < wantedFraction) return undefined;
  let [low, high] = [0, window_s];
  while (meets(high) > wantedFraction) high *= 2;
  for (let step = 0; step < 30; step += 1) {
    const middle = (low + high) / 2;
    if (meets(middle) >= wantedFraction) low = middle;
    else high = middle;
  }
  return low;
} // prettier-ignore

/** The arguments of the laws of catching, where all of them are known. */
export function keepingOf({ timing, number }: Pick<Telling, 'timing' | 'number'>) {
  const isPerson = timing.trigger === 'person';
  const reaction: Reaction = {
    normalMean_s: number(isPerson ? 'triggerMiddle_s' : 'triggerMean_s') ?? NaN,
    normalSpread_s: number(isPerson ? 'triggerEven_s' : 'triggerSpread_s') ?? NaN,
    tailMean_s: number('triggerTail_s') ?? NaN,
  };
  const handle_s = number('handles_s') ?? NaN;
  const keeping = {
    ...reaction,
    recordTime_s: number('recordTime_s') ?? NaN,
    action_s: number('coveredTime_s') ?? NaN,
    headHandle_s: handle_s,
    tailHandle_s: handle_s,
    cueAt_s: number('triggerAnswers_s') ?? NaN,
  };
  return Object.values(keeping).every(Number.isFinite) ? keeping : undefined;
}

function triggerOf({ prepared, worked, timing, number }: Telling): TriggerTiming | undefined {
  const keeping = timing.trigger === 'none' ? undefined : keepingOf({ timing, number });
  const [post, chanceFraction, wantedFraction] = [number('postTriggerFraction'), number('triggerFraction'), number('catchWantedFraction')];
  if (!keeping || post === undefined || chanceFraction === undefined || wantedFraction === undefined) return undefined;
  const comes = (shareFraction: number) => keeping.cueAt_s + reactionDelay_s({ ...keeping, shareFraction });
  const set = { postTriggerFraction: post, ...triggerCatchOf({ ...keeping, postTriggerFraction: post }) };
  const comes_s = comes(0.5);
  const by = prepared.effective.shot.trigger.by ?? 'person';
  return {
    by,
    answers_s: keeping.cueAt_s,
    comes_s,
    comesLow_s: comes(0.1),
    comesHigh_s: comes(0.9),
    set,
    best: timing.post === 'solved' ? set : bestTriggerSettingOf(keeping),
    isFixed: timing.post === 'fixed',
    chanceFraction,
    falseFireFraction: number('falseFireFraction') ?? 0,
    noFireFraction: number('noFireFraction') ?? 0,
    wantedFraction,
    keepsFrom_s: comes_s - (1 - post) * keeping.recordTime_s,
    keepsTo_s: comes_s + post * keeping.recordTime_s,
    assumed: assumptionsOf(prepared.model, worked.givens, ['triggerFraction', 'catchWantedFraction']),
  };
} // prettier-ignore

/** Who does what before each rig may fire, each rig once, in the order in which they fire. */
function safetyOf({ kit }: Shoot, cues: readonly CueTiming[]): ShotTiming['safety'] {
  const rigs = [...new Set(cues.flatMap(({ rig }) => rig ?? []))];
  return rigs.flatMap((id) => {
    const { arms, clears, disarm, shield } = kit.rigs[id] ?? {};
    return kit.rigs[id] ? [{ rig: id, ...known({ arms, clears, disarm, shield }) }] : [];
  });
}

/** Names of the numbers that the timing rests on, for what is assumed. */
export function timingNames(shot: Shot): readonly string[] {
  return timingStructureOf(shot).cues.flatMap((_, i) => [cueName(i, 'Fire_s'), cueName(i, 'Spread_s')]);
} // prettier-ignore
