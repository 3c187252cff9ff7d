/** How long the steps of a shot take: as the shot says, as the day says, or as is usual in the trade. */
import { spreadKey } from '../../document/read.ts';
import type { Day, Shoot } from '../../document/schema.ts';
import type { Assumption, Missing } from '../types.ts';
import { isUnread } from '../unread.ts';
import { about, between, medianOf_s, type Lasting } from './lasting.ts';

export type StepName = 'set' | 'light' | 'camera' | 'lens' | 'mode' | 'reset' | 'safety' | 'roll' | 'review' | 'reference' | 'element'; // prettier-ignore

type UsualTimes = Day['usual'];

interface Step {
  readonly title: string;
  /** Key of the time when read. */
  readonly readAs: keyof UsualTimes & `${string}_s`;
  /** Whether a shot may say its own, under `times`. */
  readonly isOfShot: boolean;
  /** Common practice, no source: least, usual and most, in minutes. */
  readonly usual_min: readonly [least: number, usual: number, most: number];
}

const step = (title: string, readAs: Step['readAs'], isOfShot: boolean, ...usual_min: Step['usual_min']): Step => ({ title, readAs, isOfShot, usual_min }); // prettier-ignore

/** @source day-practice */
export const STEPS: Readonly<Record<StepName, Step>> = {
  set: step('Building or changing the set', 'setTime_s', true, 30, 50, 90),
  light: step('Changing the light', 'lightTime_s', false, 20, 35, 60),
  camera: step('Changing the camera body', 'cameraTime_s', false, 10, 15, 30),
  lens: step('Changing the lens', 'lensTime_s', false, 5, 10, 15),
  mode: step('Changing the picture format', 'modeTime_s', false, 3, 5, 8),
  reset: step('A reset between takes', 'resetTime_s', false, 5, 7, 10),
  safety: step('Safety call before a take', 'safetyTime_s', true, 0.5, 1, 2),
  roll: step('Arming, counting in and rolling', 'rollTime_s', true, 0.5, 1, 2),
  review: step('Looking at a take', 'reviewTime_s', true, 1, 2, 4),
  reference: step('A reference roll', 'referenceTime_s', true, 1, 2, 4),
  element: step('An element or plate', 'elementTime_s', true, 5, 10, 20),
};

/** Share of a time that its band reaches to either side, where it is written without a spread. */
export const USUAL_SPREAD = 0.2;

/** What a day's plan rests on that nobody wrote, and what it lacks, gathered as its times are read. */
export interface Gathered {
  readonly assumed: Map<string, Assumption>;
  readonly missing: Map<string, Missing>;
}

export const gathering = (): Gathered => ({ assumed: new Map(), missing: new Map() });

export function assume({ assumed }: Gathered, assumption: Assumption): void {
  if (!assumed.has(assumption.name)) assumed.set(assumption.name, assumption);
}

export function miss({ missing }: Gathered, lack: Missing): void {
  missing.set(`${lack.path} ${lack.name}`, lack);
}

/** A time as written with its spread, or with the usual one. */
export function written(holder: object, readAs: string, gathered: Gathered): Lasting | undefined {
  const times = holder as Readonly<Record<string, number | undefined>>;
  const time_s = times[readAs];
  if (time_s === undefined) return undefined;
  const spread_s = times[spreadKey(readAs)];
  if (spread_s === undefined && time_s > 0)
    assume(gathered, { name: 'timeSpreadFraction', title: 'Spread of times written without one', value: USUAL_SPREAD, kind: undefined, why: 'common practice, no source; write ± 0 s where a time does not vary', path: '/shoot/day/usual' });
  return about(time_s, spread_s ?? USUAL_SPREAD * time_s);
} // prettier-ignore

/** How long a step of a shot takes. What is written and cannot be read is named, and the next best stands in. */
export function stepTime(shoot: Shoot, shotId: string, name: StepName, gathered: Gathered): Lasting {
  const { title, readAs, isOfShot, usual_min } = STEPS[name];
  const lack = (path: string): void => miss(gathered, { name: readAs, title, path, because: 'unread' });
  const holders: readonly (readonly [holder: { readonly unread?: readonly string[] }, at: string])[] = [
    ...(isOfShot ? ([[shoot.shots[shotId]!.times, `/shots/${shotId}/times`], [shoot.defaults.times, '/defaults/times']] as const) : []),
    [shoot.shoot.day.usual, '/shoot/day/usual'],
  ];
  for (const [holder, at] of holders) {
    const found = written(holder, readAs, gathered);
    if (found) return found;
    if (isUnread(holder, name)) lack(`${at}/${name}`);
  }
  const [least, usual, most] = usual_min;
  const lasting = between(60 * least, 60 * usual, 60 * most);
  assume(gathered, { name: readAs, title, value: medianOf_s(lasting), kind: 'time', why: `common practice, no source: ${least} to ${most} min, mostly ${usual}`, path: `/shoot/day/usual/${name}` });
  return lasting;
} // prettier-ignore
