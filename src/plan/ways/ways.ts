/** Ways to close a short margin: every move tried, each planned again in full, ranked by how little else it costs. */
import { applyPatch, withParents } from '../../document/patch.ts';
import { readShoot } from '../../document/read.ts';
import type { Written } from '../../document/written.ts';
import type { Shoot } from '../../document/schema.ts';
import { candidatesOf, planShot, prepare, workAt } from '../planShot.ts';
import type { LimitId, Margin, ShotPlan, Way } from '../types.ts';
import { acceptBlur } from './acceptBlur.ts';
import { acceptFewerHighlights } from './acceptFewerHighlights.ts';
import { acceptFlicker } from './acceptFlicker.ts';
import { acceptLessDepth } from './acceptLessDepth.ts';
import { acceptNoise } from './acceptNoise.ts';
import { askLess } from './askLess.ts';
import { bestTrigger } from './bestTrigger.ts';
import { dimLamps } from './dimLamps.ts';
import { electricTrigger } from './electricTrigger.ts';
import { fewerGoodTakes } from './fewerGoodTakes.ts';
import { fewerPartitions } from './fewerPartitions.ts';
import { fitFilter } from './fitFilter.ts';
import { fitTube } from './fitTube.ts';
import { fullLevel } from './fullLevel.ts';
import { lessReframe } from './lessReframe.ts';
import { leaveOut } from './leaveOut.ts';
import { letItBeSolved } from './letItBeSolved.ts';
import { lockRate } from './lockRate.ts';
import { keepFewer, prepareMore } from './moreHeroes.ts';
import { moreLight } from './moreLight.ts';
import type { Move, MoveContext, Proposal } from './move.ts';
import { moreTimeToMeet } from './moreTimeToMeet.ts';
import { moveBack } from './moveBack.ts';
import { moveLamps } from './moveLamps.ts';
import { nullShutter } from './nullShutter.ts';
import { openShutter } from './openShutter.ts';
import { otherBody, otherLens, otherMode } from './otherKit.ts';
import { largerFilament, otherLamp } from './otherLamp.ts';
import { setFixed } from './setFixed.ts';
import { shorterHandles } from './shorterHandles.ts';
import { shorterOnScreen } from './shorterOnScreen.ts';
import { standIn } from './standIn.ts';
import { steadierRig } from './steadierRig.ts';
import { swapLamps } from './swapLamps.ts';
import { splitPhases } from './splitPhases.ts';
import { widerFrame } from './widerFrame.ts';

const MOVES: readonly Move[] = [
  acceptBlur, openShutter, acceptLessDepth, moreLight, acceptNoise, fitFilter, acceptFewerHighlights, shorterOnScreen, otherMode, otherLens,
  widerFrame, lessReframe, leaveOut, fitTube, shorterHandles, askLess, setFixed, letItBeSolved, otherBody,
  prepareMore, keepFewer, moveLamps, standIn, dimLamps, moveBack, swapLamps,
  bestTrigger, electricTrigger, fewerPartitions, steadierRig, moreTimeToMeet, fewerGoodTakes,
  nullShutter, lockRate, splitPhases, otherLamp, largerFilament, fullLevel, acceptFlicker,
]; // prettier-ignore

/** At most this many changes are planned for one margin. */
export const MOST_TRIED = 40;

/** Changes smaller than this are not told. */
const TOLD_STOPS = 0.05;

export interface WaysOptions {
  readonly onProgress?: (done: number, total: number) => void;
  /** Asked before each change is planned; true ends the work with what was found so far. */
  readonly isCancelled?: () => boolean;
}

/** Where no single change closes a margin, this many of the best are each joined with a second. */
const JOINED = 6;

/**
 * The ways to close one margin of a shot, cheapest first; those that only help follow those that close it. Where no
 * single change closes it, the best are joined with a second one solved for what is then still lacking. Empty when the
 * margin is not short, or the shot has no answer yet. Flicker that is unknown has the ways that make it known.
 */
export function waysFor(
  shoot: Shoot,
  written: Written,
  shotId: string,
  limit: LimitId,
  { onProgress, isCancelled = () => false }: WaysOptions = {},
): readonly Way[] {
  if (shoot.shots[shotId] === undefined) return [];
  const now = planShot(shoot, shotId, 1);
  const margin = now.margins.find(({ id }) => id === limit);
  if (!now.settings || !margin || !hasWays(margin)) return [];
  const proposals = proposalsFor(shoot, shotId, now, margin).slice(0, MOST_TRIED);
  const from: Start = { written, shotId, now, margin };
  const ways: Way[] = [];
  let done = 0;
  for (const proposal of proposals) {
    if (isCancelled()) break;
    const way = tried(from, proposal);
    if (way) ways.push(way);
    onProgress?.((done += 1), proposals.length);
  }
  if (!ways.some(closesCleanly))
    for (const way of pairsOf(from, [...ways].sort(cheapestFirst).slice(0, JOINED), MOST_TRIED - proposals.length)) {
      if (isCancelled()) break;
      ways.push(way);
      onProgress?.((done += 1), Math.max(done, proposals.length));
    }
  return distinct(ways.sort(cheapestFirst));
}

/** A change that somebody else proposes. */
export interface Proposed extends Proposal {
  readonly move: string;
}

/** Each of some changes as a way to close a margin of a shot, planned again; only those that help, as `waysFor` judges it. */
export function waysAmong(
  shoot: Shoot,
  written: Written,
  shotId: string,
  limit: LimitId,
  changes: readonly Proposed[],
): readonly Way[] {
  const now = planShot(shoot, shotId, 1);
  const margin = now.margins.find(({ id }) => id === limit);
  if (!now.settings || margin?.state !== 'short' || !margin.stops) return [];
  const from: Start = { written, shotId, now, margin };
  return changes.flatMap((change) => tried(from, change) ?? []);
}

/** A margin that is short; or flicker that nobody knows, where another setting of a lamp is known. */
const hasWays = ({ id, state, stops }: Margin): boolean =>
  (state === 'short' && stops !== undefined) || (id === 'flicker' && state === 'unknown');

/** Spare in stops; none where it is not known. */
const spareOf = ({ stops }: Margin): number => stops?.value ?? 0;

/** What every change is tried on, and held against. */
interface Start {
  readonly written: Written;
  readonly shotId: string;
  readonly now: ShotPlan;
  readonly margin: Margin;
}

/** Moves that can be made twice. */
const ADDING_UP: ReadonlySet<string> = new Set(['fit-tube', 'fit-filter', 'leave-out']);

/** Each of the first changes made, then a second one of another kind solved for what is left; only pairs that close it. */
function* pairsOf(from: Start, firsts: readonly Way[], mostTried: number): Generator<Way> {
  const { written, shotId, now, margin } = from;
  let left = mostTried;
  for (const first of firsts) {
    const { shoot } = readShoot(applyPatch(written, first.patch));
    const then = planShot(shoot, shotId, now.number);
    const rest = then.margins.find(({ id }) => id === margin.id);
    if (!then.settings || !rest?.stops) continue;
    for (const second of proposalsFor(shoot, shotId, then, rest)) {
      if (second.move === first.move && !ADDING_UP.has(first.move)) continue;
      if (left <= 0) return;
      left -= 1;
      const way = tried(from, {
        move: `${first.move}, ${second.move}`,
        title: `${first.title}, and ${second.title.charAt(0).toLowerCase()}${second.title.slice(1)}`,
        says: [first.says, second.says ?? ''].filter((says) => says !== '').join('; '),
        patch: [...first.patch, ...withParents(applyPatch(written, first.patch), second.patch)],
        gives_stops: first.gives_stops + second.gives_stops,
        touchesFixed: first.touchesFixed || second.touchesFixed === true,
      });
      if (way && closesCleanly(way)) yield way;
    }
  }
}

function proposalsFor(shoot: Shoot, shotId: string, now: ShotPlan, margin: Margin): readonly Proposed[] {
  const prepared = prepare(shoot, shotId);
  const { values, givens } = workAt(prepared, candidatesOf(prepared).best[0]);
  const number = (name: string): number => {
    const slot = prepared.model.slotOf.get(name);
    return slot === undefined ? (givens.get(name)?.value ?? NaN) : values[slot]!;
  };
  const lack_stops = -spareOf(margin);
  const context: MoveContext = {
    shoot,
    shotId,
    effective: prepared.effective,
    settings: now.settings!,
    margin,
    lack_stops,
    number,
  };
  return MOVES.filter(({ closes }) => closes.includes(margin.id)).flatMap((move) => {
    try {
      return move.propose(context).map((proposal) => ({ ...proposal, move: move.id }));
    } catch (error) {
      // A law refused the value a move would need: that move has nothing to offer here.
      if (error instanceof RangeError) return [];
      throw error;
    }
  });
}

/** One proposal planned again; undefined where it does not help, or buys a taste with a hard limit. */
function tried({ written, shotId, now, margin: target }: Start, proposal: Proposed): Way | undefined {
  const patch = withParents(written, proposal.patch);
  const { shoot, problems } = readShoot(applyPatch(written, patch));
  if (problems.some(({ path }) => patch.some((operation) => path.startsWith(operation.path)))) return undefined;
  const then = planShot(shoot, shotId, now.number);
  const after = then.margins.find(({ id }) => id === target.id);
  const value = after?.stops?.value ?? (after ? -Infinity : 0);
  const gain_stops = value - spareOf(target);
  const closes = after === undefined || after.state === 'tight' || after.state === 'spare';
  if (!(closes || gain_stops > TOLD_STOPS) || !then.settings) return undefined;
  const effects = effectsOf(now.margins, then.margins, target.id);
  const breaks = then.margins.filter(({ id, isHard, state }) => isHard && id !== target.id && state === 'short' && stateIn(now.margins, id) !== 'short');
  if (breaks.length > 0 && !target.isHard) return undefined;
  return {
    move: proposal.move,
    title: proposal.title,
    says: proposal.says ?? '',
    patch,
    stops: value,
    gain_stops,
    closes,
    breaks: breaks.map(({ id, title }) => ({ id, title })),
    touchesFixed: proposal.touchesFixed ?? false,
    gives_stops: proposal.gives_stops,
    margins: then.margins,
    effects,
    settings: then.settings,
    cost: proposal.gives_stops + effects.reduce((sum, effect) => sum + costOf(effect), 0),
  };
} // prettier-ignore

const stateIn = (margins: readonly Margin[], id: LimitId) => margins.find((margin) => margin.id === id)?.state;

/** Every limit but one that moves, and by how much. */
export function effectsOf(before: readonly Margin[], after: readonly Margin[], target: LimitId): Way['effects'] {
  return after
    .flatMap(({ id, title, stops, state }) => {
      const was = before.find((margin) => margin.id === id)?.stops;
      const change_stops = stops && was ? stops.value - was.value : 0;
      return id !== target && Math.abs(change_stops) > TOLD_STOPS ? [{ id, title, change_stops, state }] : [];
    })
    .sort((a, b) => Math.abs(b.change_stops) - Math.abs(a.change_stops));
}

/** What another limit loses, weighed by where that leaves it. */
function costOf({ change_stops, state }: Way['effects'][number]): number {
  if (change_stops >= 0) return 0;
  return -change_stops * (state === 'short' ? 3 : state === 'tight' ? 1 : 0.25);
}

/** Closed, and no hard limit broken for it. */
const closesCleanly = ({ closes, breaks }: Way): boolean => closes && breaks.length === 0;

function cheapestFirst(a: Way, b: Way): number {
  return (
    Number(closesCleanly(b)) - Number(closesCleanly(a)) ||
    Number(b.closes) - Number(a.closes) ||
    Number(a.touchesFixed) - Number(b.touchesFixed) ||
    (a.closes ? a.cost - b.cost : b.gain_stops - a.gain_stops)
  );
}

/** Ways that end at the same place are told once. */
function distinct(ways: readonly Way[]): readonly Way[] {
  const seen = new Set<string>();
  return ways.filter(({ patch }) => {
    const key = JSON.stringify(patch);
    return seen.has(key) ? false : seen.add(key);
  });
}
