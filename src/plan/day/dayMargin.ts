/**
 * The limit "time in the day": from call, or from now, to the wrap, against the work that is left. In closed form, so
 * that it follows every keystroke: means and variances of all steps added up, takes as the negative binomial has them.
 * The drawn day says more: what waits for what, and when each shot ends.
 *
 *     time of the takes of a shot: mean n·c, variance n·s² + (r(1 − p)/p²)·c²,  n = r/p
 *
 * r takes still to be kept        p chance that a take is good        c, s² mean and variance of one take
 *
 * @source probability-textbook the sum of a number of terms that is itself drawn
 */
import type { Shoot } from '../../document/schema.ts';
import { NINETIETH_SPREADS } from '../../laws/chance/normal.ts';
import { stopsOf } from '../limits.ts';
import type { Margin, Missing, ShotPlan } from '../types.ts';
import { isUnread } from '../unread.ts';
import { compileDay, type DayModel } from './dayModel.ts';
import { fixedOrder } from './dayOrder.ts';
import type { DayStep } from './dayStep.ts';
import { meanOf_s, varianceOf } from './lasting.ts';
import { resetMoments } from './resetJobs.ts';

interface Moments {
  readonly mean_s: number;
  readonly variance: number;
}

/** Floor time lost for each kept take because the memory is still being emptied when the next could be rolled. */
function waitOf_s({ bodies }: DayModel, { camera, size_B, cycle_s, safety, roll }: DayStep): number {
  const body = bodies.find(({ id }) => id === camera);
  if (!body) return 0;
  const untilNext_s = body.partitionCount * cycle_s - meanOf_s(safety) - meanOf_s(roll);
  return Math.max(0, size_B * body.save_s_per_B - untilNext_s);
}

/** Takes that the pieces on hand allow. */
function allowed({ stock }: DayModel, { uses, mostCount }: DayStep): number {
  return uses.reduce((least, { product, count }) => Math.min(least, Math.floor((stock.get(product) ?? Infinity) / count)), mostCount); // prettier-ignore
}

function momentsOf(model: DayModel, step: DayStep): Moments {
  const { changes, change_s, wantedCount: r, goodFraction: p, cycle_s, jobs, safety, roll, review } = step;
  const rolls = step.referenceCount * meanOf_s(step.reference) + step.elementCount * meanOf_s(step.element);
  const rollsVariance = step.referenceCount * varianceOf(step.reference) + step.elementCount * varianceOf(step.element);
  const changeVariance = Math.max(0, ...changes.map(([, lasting]) => varianceOf(lasting)));
  const each = resetMoments(jobs).variance + varianceOf(safety) + varianceOf(roll) + varianceOf(review);
  const most = allowed(model, step);
  const wanted = p > 0 ? r / p : most;
  const isCapped = wanted >= most;
  const takes = Math.min(wanted, most);
  const takesVariance = p > 0 && !isCapped ? (r * (1 - p)) / p ** 2 : 0;
  const wait_s = Math.max(0, Math.min(r, takes * p) - 1) * waitOf_s(model, step);
  return {
    mean_s: change_s + rolls + takes * cycle_s + wait_s,
    variance: changeVariance + rollsVariance + takes * each + takesVariance * cycle_s ** 2,
  };
}

/** Time that meals take of a day with so much work. */
function mealTime_s({ meals_s, mealLength_s, mealWithin_s, starts_s, lastBreak_s }: DayModel, work_s: number): number {
  let end_s = starts_s + work_s;
  let count = 0;
  for (const meal_s of meals_s)
    if (meal_s <= end_s) {
      count += 1;
      end_s += mealLength_s;
    }
  const byWork = Number.isFinite(mealWithin_s) ? Math.ceil((starts_s - lastBreak_s + work_s) / mealWithin_s) - 1 : 0;
  return Math.max(count, byWork, 0) * mealLength_s;
}

/** Mean and variance of the work that is left, meals included. */
export function workLeft(model: DayModel): Moments {
  const all = model.steps.map((step) => momentsOf(model, step));
  const work_s = all.reduce((sum, { mean_s }) => sum + mean_s, 0);
  const variance = all.reduce((sum, of) => sum + of.variance, 0);
  return { mean_s: work_s + (work_s > 0 ? mealTime_s(model, work_s) : 0), variance };
}

/** Times and takes without which the work cannot be added up. */
const counts = ({ name }: Missing): boolean => name === 'keptTakeCount' || (name.endsWith('_s') && !name.endsWith('_per_s')); // prettier-ignore

/** What of a gathered lack a margin tells: a key once. */
const distinct = (all: readonly Missing[]): readonly Missing[] => [...new Map(all.map((one) => [`${one.name} ${one.path}`, one])).values()]; // prettier-ignore

/** The margin of the day; none while call or wrap is not written, or there is no shot. */
export function dayMargin(shoot: Shoot, shots: readonly ShotPlan[]): readonly Margin[] {
  const { day } = shoot.shoot;
  const isAsked = (key: 'call' | 'wrap', value: number | undefined): boolean => value !== undefined || isUnread(day, key);
  if (!isAsked('call', day.callTime_s) || !isAsked('wrap', day.wrapTime_s) || shots.length === 0) return [];
  const fixed = fixedOrder(shoot);
  const { model, gathered } = compileDay(shoot, shots, fixed ?? shots.map(({ id }) => id));
  const missing = distinct([
    ...(isUnread(day, 'wrap') ? [{ name: 'wrapTime_s', title: 'When it must end', path: '/shoot/day/wrap', because: 'unread' } as const] : []),
    ...[...gathered.missing.values()].filter(counts),
  ]);
  const isKnown = missing.length === 0;
  const have = Math.max(0, (day.wrapTime_s ?? NaN) - model.starts_s);
  const { mean_s: need, variance } = workLeft(model);
  const half = NINETIETH_SPREADS * Math.sqrt(variance);
  const stops = (work_s: number): number => stopsOf('ratio', 'at-least', have, work_s);
  const [low, value, high] = [stops(need + half), stops(need), stops(Math.max(need - half, need / 10))];
  return [
    {
      id: 'day',
      title: 'Time in the day',
      ...(fixed || shots.length < 2 ? {} : { detail: 'in the order written' }),
      isHard: false,
      state: !isKnown ? 'unknown' : value < -1e-9 ? 'short' : low < -1e-9 ? 'tight' : 'spare',
      kind: 'time',
      sense: 'at-least',
      ...(isKnown ? { have, need, spare: have - need, stops: { value, low, high } } : {}),
      path: '/shoot/day/wrap',
      haveName: 'wrapTime_s',
      needName: 'callTime_s',
      missing,
      assumed: [...gathered.assumed.values()],
    },
  ];
} // prettier-ignore
