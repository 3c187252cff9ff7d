/** One shot of the day: what is changed for it, what a take of it is made of, and how long each lasts. */
import type { Shoot } from '../../document/schema.ts';
import { goodShare, keptTakes, plannedTakes, unreadTakes } from '../takes.ts';
import type { ShotPlan } from '../types.ts';
import { becauseOf, changesTo, changeTime_s, standingOf, type Change, type Standing } from './changes.ts';
import { rolledSoFar } from './dayOrder.ts';
import { meanOf_s, NO_TIME, type Lasting } from './lasting.ts';
import { resetMoments, resetOf, type Job, type Warning } from './resetJobs.ts';
import { miss, stepTime, written, type Gathered, type StepName } from './usual.ts';

/** More takes of one shot than any crew rolls: a shot that would need more is stopped, and said to be. */
export const MOST_TAKES = 200;

/** What a take uses up of one product. */
export interface Use {
  readonly product: string;
  readonly count: number;
}

/** One shot of the day that is still to be done. */
export interface DayStep {
  readonly id: string;
  readonly title: string;
  readonly because: string;
  /** What is changed for it, and how long each takes. */
  readonly changes: readonly (readonly [change: Change, lasting: Lasting])[];
  readonly referenceCount: number;
  readonly reference: Lasting;
  readonly elementCount: number;
  readonly element: Lasting;
  readonly jobs: readonly Job[];
  readonly safety: Lasting;
  readonly roll: Lasting;
  readonly review: Lasting;
  /** Chance that a take is kept; how many are wanted still; the most that are rolled. */
  readonly goodFraction: number;
  readonly wantedCount: number;
  readonly mostCount: number;
  readonly uses: readonly Use[];
  readonly heroProduct: string | undefined;
  readonly hold: Lasting | undefined;
  readonly camera: string | undefined;
  /** What a kept take weighs; zero where that is not known, or nothing is kept. */
  readonly size_B: number;
  /** Middle times: of the whole change, of one take from reset to review. */
  readonly change_s: number;
  readonly cycle_s: number;
}

interface Changing {
  readonly changes: DayStep['changes'];
  readonly change_s: number;
}

function changeOf(shoot: Shoot, to: Standing, from: Standing | undefined, gathered: Gathered): Changing {
  const changes = changesTo(to, from).map((change) => [change, stepTime(shoot, to.id, change, gathered)] as const);
  const means = new Map(changes.map(([change, lasting]) => [change, meanOf_s(lasting)]));
  return { changes, change_s: changeTime_s([...means.keys()], (change) => means.get(change)!) };
}

/** Mean time of the change to a shot from the one before it, or from nothing. */
export function changeBetween_s(shoot: Shoot, to: ShotPlan, from: ShotPlan | undefined, gathered: Gathered): number {
  return changeOf(shoot, standingOf(shoot, to), from && standingOf(shoot, from), gathered).change_s;
}

/** What one take uses up: the hero, and what the jobs of its reset take. */
export function usesOf({ shot }: Standing): readonly Use[] {
  const uses = new Map<string, number>();
  const add = (product: string | undefined, count: number): void => {
    if (product !== undefined && count > 0) uses.set(product, (uses.get(product) ?? 0) + count);
  };
  // A job that brings the hero on is how the hero gets there, not a second one.
  const jobs = Object.values(shot.reset).filter(({ uses: product }) => product !== undefined);
  const { product, perTakeCount = 1 } = shot.hero;
  if (!jobs.some((job) => job.uses === product)) add(product, perTakeCount);
  for (const job of jobs) add(job.uses, job.pieceCount ?? (job.uses === product ? perTakeCount : 1));
  return [...uses].map(([name, count]) => ({ product: name, count }));
}

/** Takes of a shot that are still wanted, and the most that are rolled. */
function takesOf(shoot: Shoot, id: string, gathered: Gathered): Pick<DayStep, 'goodFraction' | 'wantedCount' | 'mostCount'> {
  const unread = unreadTakes(shoot, id);
  if (unread !== undefined) miss(gathered, { name: 'keptTakeCount', title: `Takes of ${shoot.shots[id]!.title ?? id}`, path: unread, because: 'unread' });
  const kept = keptTakes(shoot, id);
  // Where none is kept, those planned are rolled and that is that.
  if (kept === 0) return { goodFraction: 0, wantedCount: 0, mostCount: Math.min(MOST_TAKES, Math.max(0, plannedTakes(shoot, id) - rolledSoFar(shoot, id))) };
  return { goodFraction: goodShare(shoot, id), wantedCount: Math.max(0, kept - (shoot.shots[id]!.soFar.goodCount ?? 0)), mostCount: MOST_TAKES };
} // prettier-ignore

export interface Before {
  readonly standing: Standing | undefined;
  readonly isInHand: boolean;
}

/** A shot as a step of the day, after the one before it. */
export function stepOf(shoot: Shoot, at: Standing, size_B: number, { standing: from, isInHand }: Before, owed: number, gathered: Gathered): { readonly step: DayStep; readonly warnings: readonly Warning[] } {
  const { id, title, shot, settings } = at;
  const time = (name: StepName): Lasting => stepTime(shoot, id, name, gathered);
  const { changes, change_s } = isInHand ? { changes: [], change_s: 0 } : changeOf(shoot, at, from, gathered);
  const { jobs, warnings } = resetOf(shoot, id, gathered);
  const [safety, roll, review] = [time('safety'), time('roll'), time('review')];
  const takes = takesOf(shoot, id, gathered);
  const referenceCount = isInHand ? 0 : owed;
  const elementCount = shot.elements.length;
  const product = shot.hero.product === undefined ? undefined : shoot.kit.products[shot.hero.product];
  const step: DayStep = {
    id,
    title,
    because: isInHand ? 'in hand' : becauseOf(at, from),
    changes,
    referenceCount,
    reference: referenceCount > 0 ? time('reference') : NO_TIME,
    elementCount,
    element: elementCount > 0 ? time('element') : NO_TIME,
    jobs,
    safety,
    roll,
    review,
    ...takes,
    uses: usesOf(at),
    heroProduct: shot.hero.product,
    hold: product && written(product, 'hold_s', gathered),
    camera: settings?.camera,
    size_B: takes.mostCount > 0 && takes.goodFraction > 0 ? size_B : 0,
    change_s,
    cycle_s: resetMoments(jobs).mean_s + meanOf_s(safety) + meanOf_s(roll) + meanOf_s(review),
  };
  return { step, warnings };
} // prettier-ignore
