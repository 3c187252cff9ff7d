/** The day as it may go: many days drawn, and what is told of them. Pure: the same shoot, order and seed give the same plan. */
import type { Shoot } from '../../document/schema.ts';
import { writeClock } from '../../document/write.ts';
import { shotOrder } from '../plan.ts';
import type { Plan } from '../types.ts';
import type { DayDraws } from './bench.ts';
import { compileDay, type Compiled } from './dayModel.ts';
import { isDone } from './dayOrder.ts';
import type { DayStep } from './dayStep.ts';
import { WORK_COUNT, WORKS, type DayRuns, type Logged } from './dayRuns.ts';
import { dayWarnings } from './dayWarnings.ts';
import { driveFills } from './drives.ts';
import { countsOf, lateWork, middleDay, momentOf, quantileOf, sortedColumn } from './moments.ts';
import { orderWarnings, shotPrecedence } from './precedence.ts';
import { savingsOf, type OtherOrder } from './savings.ts';
import { lookAtDay, simulateDays } from './simulate.ts';
import type { DayBlock, DayPlan, DayShot, Moment } from './types.ts';
import { capital, sayDays, sayTime, WORK_NAMES, WORK_ONCE } from './words.ts';

export interface DayAsked {
  /** Shots in the order of the day; those left out follow as written. */
  readonly order: readonly string[];
  readonly orderBy: DayPlan['orderBy'];
  readonly dayCount: number;
  readonly seed: number;
  /** Orders to hold against it. */
  readonly otherOrders?: readonly OtherOrder[];
}

const changesOf_s = (steps: readonly DayStep[]): number => steps.reduce((sum, { change_s }) => sum + change_s, 0);

function spentOn({ spent_s, dayCount }: DayRuns, shot: number): DayShot['spent_s'] {
  const times = WORKS.map((work, column) => [work, spent_s[shot * WORK_COUNT + column]! / dayCount] as const);
  return Object.fromEntries(times.filter(([, time_s]) => time_s > 0));
}

function shotOfDay(step: DayStep, shot: number, runs: DayRuns): DayShot {
  const column = (table: Float64Array): Float64Array => sortedColumn(table, shot, runs.shotCount, runs.dayCount);
  const takes = countsOf(column(runs.takes));
  const { heroProduct, uses } = step;
  const each = uses.find(({ product }) => product === heroProduct)?.count ?? 0;
  return {
    shotId: step.id,
    title: step.title,
    starts: momentOf(column(runs.starts_s)),
    ends: momentOf(column(runs.ends_s)),
    takes,
    ...(heroProduct === undefined ? {} : { piecesUsed: { product: heroProduct, middle: each * takes.middle, late: each * takes.late } }), // prettier-ignore
    spent_s: spentOn(runs, shot),
    because: step.because,
    isDone: false,
  };
}

/** A shot of which nothing more is shot: it stands at the beginning of what is left. */
function doneShot(shoot: Shoot, shotId: string, starts_s: number): DayShot {
  const at: Moment = { early_s: starts_s, middle_s: starts_s, late_s: starts_s };
  const rolled = shoot.shots[shotId]!.soFar.rolledCount ?? 0;
  return { shotId, title: shoot.shots[shotId]!.title ?? shotId, starts: at, ends: at, takes: { early: rolled, middle: rolled, late: rolled }, spent_s: {}, because: 'done', isDone: true };
} // prettier-ignore

function blockOf(steps: readonly DayStep[], { work, lane, shot, take, from_s, to_s }: Logged): DayBlock {
  const step = steps[shot];
  const once = capital(WORK_ONCE[work]);
  const says = step === undefined ? once : take > 0 ? `${once}, take ${take} of ${step.title}` : `${once}, ${step.title}`;
  return { work, lane, ...(step ? { shotId: step.id } : {}), ...(take > 0 ? { take } : {}), from_s, to_s, says };
} // prettier-ignore

const PRICE_HOUR_s = 3600;

function overtimeOf(shoot: Shoot, wrap: Moment): Pick<DayPlan, 'overtime'> {
  const { wrapTime_s, overtimePrice } = shoot.shoot.day;
  if (wrapTime_s === undefined) return {};
  const middle_s = Math.max(0, wrap.middle_s - wrapTime_s);
  const late_s = Math.max(0, wrap.late_s - wrapTime_s);
  return { overtime: { middle_s, late_s, ...(overtimePrice === undefined ? {} : { latePrice: (late_s / PRICE_HOUR_s) * overtimePrice }) } }; // prettier-ignore
}

/** In plain words, the end first. */
function sentences(day: Omit<DayPlan, 'says' | 'warnings'>, { data }: Compiled): readonly string[] {
  const { wrap, copied, wrapsBy_s, inTimeFraction, overtime, path, changes_s, changesAsWritten_s, orderBy } = day;
  if (day.shots.every((shot) => shot.isDone)) return ['Nothing is left to be shot.'];
  const price = overtime?.latePrice === undefined || overtime.latePrice === 0 ? '' : `, ${Math.round(overtime.latePrice)} at the price given`; // prettier-ignore
  const gain_s = changesAsWritten_s - changes_s;
  const most = path.slice(0, 3).map(({ work, shareFraction }) => `${WORK_NAMES[work]} ${Math.round(100 * shareFraction)} %`); // prettier-ignore
  return [
    `Nine days in ten, wrap by ${writeClock(wrap.late_s)}; half of all days by ${writeClock(wrap.middle_s)}.`,
    ...(wrapsBy_s === undefined || inTimeFraction === undefined ? [] : [`${capital(sayDays(inTimeFraction))} it ends by ${writeClock(wrapsBy_s)}, the wrap that was set.`]),
    ...(overtime && overtime.late_s > 0 ? [`A late day runs ${sayTime(overtime.late_s)} over${price}.`] : []),
    ...(day.drives.length > 0 ? [`The last recording is ${data.copies.length > 0 ? 'copied and verified' : 'saved'} by ${writeClock(copied.late_s)}, nine days in ten.`] : []),
    `Changing over takes ${sayTime(changes_s)} in this order${orderBy === 'fixed' || gain_s < 60 ? '' : `, ${sayTime(gain_s)} less than as written`}.`,
    ...(most.length > 0 ? [`Where a late day goes: ${most.join(', ')}.`] : []),
  ];
} // prettier-ignore

/** Draws the day many times in an order already chosen. Never throws for what somebody wrote. */
export function planDay(shoot: Shoot, plan: Plan, asked: DayAsked): DayPlan {
  const { dayCount, seed, orderBy, otherOrders = [] } = asked;
  const { shots } = plan;
  const compiled = compileDay(shoot, shots, asked.order);
  const { model, order, gathered, data } = compiled;
  const { steps, starts_s } = model;
  const draws: DayDraws = new Map();
  const runs = simulateDays(model, { dayCount, seed, draws });
  const wraps = sortedColumn(runs.wrap_s);
  const wrap = momentOf(wraps);
  const wrapsBy_s = shoot.shoot.day.wrapTime_s;
  const saved = sortedColumn(runs.saved_B);
  const drives = driveFills(data, { middle_B: quantileOf(saved, 0.5), late_B: quantileOf(saved, 0.9) });
  const savings = savingsOf({ shoot, shots, compiled, runs, seed, draws, otherOrders });
  const ids = Object.keys(shoot.shots);
  const precedence = shotPrecedence(shoot, ids);
  const day: Omit<DayPlan, 'says' | 'warnings'> = {
    dayCount,
    seedCount: seed,
    starts_s,
    ...(wrapsBy_s === undefined ? {} : { wrapsBy_s }),
    shots: order.flatMap((id) => (isDone(shoot, id) ? [doneShot(shoot, id, starts_s)] : [])).concat(steps.map((step, i) => shotOfDay(step, i, runs))),
    order,
    orderBy,
    changes_s: changesOf_s(steps),
    changesAsWritten_s: changesOf_s(compileDay(shoot, shots, shotOrder(shoot)).model.steps),
    wrap,
    copied: momentOf(sortedColumn(runs.copied_s)),
    ...(wrapsBy_s === undefined ? {} : { inTimeFraction: wraps.filter((wrap_s) => wrap_s <= wrapsBy_s).length / dayCount }),
    ...overtimeOf(shoot, wrap),
    path: lateWork(runs),
    savings,
    blocks: lookAtDay(model, { seed, draws }, middleDay(runs.wrap_s, wrap.middle_s)).map((logged) => blockOf(steps, logged)),
    drives,
    missing: [...gathered.missing.values()],
    assumed: [...gathered.assumed.values()],
  };
  const warnings = [
    ...orderWarnings(shoot, ids, order.filter((id) => !compiled.done.has(id)), precedence),
    ...compiled.warnings,
    ...dayWarnings({ shoot, compiled, runs, ends: day, drives, savings }),
  ];
  return { ...day, says: sentences(day, compiled), warnings };
} // prettier-ignore
