/** How the limits stood then and how they stand now, shot by shot, from a plan of each. */
import type { Plan, ShotPlan } from '../../../plan/types.ts';
import type { Standing } from '../../parts/StateWord.tsx';
import { sayWorst } from '../shoot/strip.ts';

export interface Stood {
  readonly standing: Standing;
  readonly says: string;
}

export interface ShotThenAndNow {
  readonly id: string;
  readonly title: string;
  /** Absent where the shot was not there. */
  readonly then?: Stood;
  /** Absent where it is not there any more. */
  readonly now?: Stood;
}

function stood({ margins, settings }: ShotPlan): Stood {
  if (!settings) return { standing: 'unknown', says: 'no answer' };
  const { standing, worst } = sayWorst(margins);
  return { standing, says: worst };
}

/** Shots whose worst limit stood otherwise, in the order in which they stand now, those that are gone last. */
export function thenAndNow(then: Plan, now: Plan): readonly ShotThenAndNow[] {
  const before = new Map(then.shots.map((shot) => [shot.id, shot]));
  const isHere = new Set(now.shots.map(({ id }) => id));
  const both = now.shots.map((shot): ShotThenAndNow => {
    const was = before.get(shot.id);
    return { id: shot.id, title: shot.title, now: stood(shot), ...(was ? { then: stood(was) } : {}) };
  });
  const gone = then.shots
    .filter(({ id }) => !isHere.has(id))
    .map((shot): ShotThenAndNow => ({ id: shot.id, title: shot.title, then: stood(shot) }));
  return [...both, ...gone].filter((shot) => shot.then?.says !== shot.now?.says);
}
