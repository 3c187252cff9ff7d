/** What the people of a day must know before it: that it cannot fit, that something runs out, that something is too slow. */
import { showQuantity } from '../../base/quantity.ts';
import { sayList } from '../../base/sayList.ts';
import type { Shoot } from '../../document/schema.ts';
import { writeClock } from '../../document/write.ts';
import { keptTakes } from '../takes.ts';
import type { Compiled } from './dayModel.ts';
import type { DayRuns } from './dayRuns.ts';
import type { Warning } from './resetJobs.ts';
import type { DayPlan, DaySaving, DriveFill } from './types.ts';
import { capital, sayDays, sayTime } from './words.ts';

/** Days on which something happens, from which on it is worth a warning. */
const OFTEN = 0.1;

/** Copies later than the wrap by more than this keep somebody on the set. */
const LATE_TAIL_s = 3600;

/** The most work a day may hold so that so much rest is left before the same call: eleven hours of twenty-four. */
const REST_s = 11 * 3600;
const DAY_s = 24 * 3600;

const size = (value_B: number): string => {
  const { number, unit } = showQuantity('bytes', value_B);
  return `${number} ${unit}`;
};

type Ends = Pick<DayPlan, 'wrap' | 'copied' | 'inTimeFraction' | 'wrapsBy_s'>;

/** A day that hardly ever ends in time: by how much, and what would help. */
function fitWarnings({ wrap, wrapsBy_s }: Ends, savings: readonly DaySaving[]): readonly Warning[] {
  if (wrapsBy_s === undefined || wrap.early_s <= wrapsBy_s) return [];
  const ways = savings.slice(0, 3).map(({ title, saves_s }) => `${title} (${sayTime(saves_s)})`);
  const help = ways.length > 0 ? ` What helps most: ${sayList(ways)}.` : ' Leave shots out, keep fewer takes, or write shorter times where they are known.';
  return [{ says: `This day cannot be done by ${writeClock(wrapsBy_s)}: nine days in ten it ends more than ${sayTime(wrap.early_s - wrapsBy_s)} later, half of them ${sayTime(wrap.middle_s - wrapsBy_s)}.${help}`, path: '/shoot/day/wrap' }];
} // prettier-ignore

/** Shots of which nothing is rolled, nothing is kept, or not enough on too many days. */
function takeWarnings(shoot: Shoot, { model: { steps, stock } }: Compiled, runs: DayRuns): readonly Warning[] {
  return steps.flatMap(({ id, title, uses, wantedCount, goodFraction }, i): readonly Warning[] => {
    const ranOut = runs.ranOut[i]! / runs.dayCount;
    const gaveUp = runs.gaveUp[i]! / runs.dayCount;
    const short = uses.find(({ product, count }) => (stock.get(product) ?? Infinity) < count);
    const names = uses.map(({ product }) => shoot.kit.products[product]?.title ?? product);
    const pieces = `/kit/products/${(short ?? uses[0])?.product ?? ''}/pieces`;
    if (short) return [{ says: `No take of ${title} can be rolled: a take uses ${short.count} of ${shoot.kit.products[short.product]?.title ?? short.product}, and ${stock.get(short.product)} are left. Have more made ready.`, path: pieces }];
    if (ranOut >= OFTEN) return [{ says: `${capital(sayDays(ranOut))} ${sayList(names)} ${names.length > 1 ? 'run' : 'runs'} out before ${title} has its ${wantedCount} kept takes. Have more made ready, or keep fewer.`, path: pieces }];
    if (gaveUp > 0) return [{ says: `${capital(sayDays(gaveUp))} ${title} has not its takes after so many that nobody would go on: one in ${Math.round(1 / goodFraction)} is good. Rehearse it, or change the shot.`, path: `/shots/${id}/good` }];
    if (keptTakes(shoot, id) === 0) return [{ says: `No take of ${title} is kept: its takes are rolled, and nothing is saved.`, path: `/shots/${id}/kept` }];
    return [];
  });
} // prettier-ignore

/** Drives and links that do not suffice. */
function dataWarnings({ data, model }: Compiled, runs: DayRuns, { wrap, copied }: Ends, drives: readonly DriveFill[]): readonly Warning[] {
  const isSaved = model.steps.some(({ size_B }) => size_B > 0);
  const made = data.copies.length;
  const waits_s = runs.totals.mediaWait_s / runs.dayCount;
  const tail_s = copied.late_s - wrap.late_s;
  return [
    ...(isSaved && data.saves.length === 0 ? [{ says: 'No drive that is here takes what leaves the camera: add one to the kit, or say which holds saves.', path: '/kit/drives' }] : []),
    ...(made < data.copyCount ? [{ says: `${data.copyCount} copies are wanted and ${made === 0 ? 'no drive' : `only ${made} ${made > 1 ? 'drives' : 'drive'}`} for copies ${made > 1 ? 'are' : 'is'} here: add drives, or ask for fewer copies.`, path: '/shoot/day/copies' }] : []),
    ...drives.flatMap(({ drive, title, free_B, late_B, isShort, holds }) => (isShort ? [{ says: `${title} is too small: one day in ten the ${holds === 'saves' ? 'recordings' : 'copies'} on it come to more than ${size(late_B)}, and it has ${size(free_B)} free. Bring another, or keep fewer takes.`, path: `/kit/drives/${drive}/capacity` }] : [])),
    ...(waits_s > 60 ? [{ says: `On average ${sayTime(waits_s)} go by waiting until older recordings are verified twice and somebody clears them to make room.`, path: '/kit/drives' }] : []),
    ...(tail_s > LATE_TAIL_s ? [{ says: `Copying goes on for ${sayTime(tail_s)} after the wrap, to ${writeClock(copied.late_s)} nine days in ten: faster drives for copies, a link for each, or somebody who stays.`, path: '/kit/drives' }] : []),
  ];
} // prettier-ignore

/** @source working-time-directive rest of eleven hours in twenty-four, and breaks */
function restWarnings(shoot: Shoot, { model }: Compiled, runs: DayRuns, { wrap }: Ends): readonly Warning[] {
  const { callTime_s } = shoot.shoot.day;
  const long = runs.totals.longWorkDays / runs.dayCount;
  const rest_s = callTime_s === undefined ? Infinity : DAY_s - (wrap.late_s - callTime_s);
  return [
    ...(long >= OFTEN ? [{ says: `${capital(sayDays(long))} work goes on for more than ${sayTime(model.mealWithin_s)} without a meal: a step is too long to stop before. Set a meal earlier.`, path: '/shoot/day/meals' }] : []),
    ...(rest_s < REST_s ? [{ says: `A late day leaves ${sayTime(Math.max(0, rest_s))} until the same call next day, less than the eleven hours that European law asks for; what holds for this crew is in its law and agreements.`, path: '/shoot/day/wrap' }] : []),
  ];
} // prettier-ignore

export interface WarningsAsked {
  readonly shoot: Shoot;
  readonly compiled: Compiled;
  readonly runs: DayRuns;
  readonly ends: Ends;
  readonly drives: readonly DriveFill[];
  readonly savings: readonly DaySaving[];
}

export function dayWarnings({ shoot, compiled, runs, ends, drives, savings }: WarningsAsked): readonly Warning[] {
  const { day } = shoot.shoot;
  const hasBegun = Object.values(shoot.shots).some(({ soFar }) => (soFar.rolledCount ?? 0) > 0 || soFar.isDone === true);
  return [
    ...fitWarnings(ends, savings),
    ...takeWarnings(shoot, compiled, runs),
    ...dataWarnings(compiled, runs, ends, drives),
    ...restWarnings(shoot, compiled, runs, ends),
    ...(hasBegun && day.nowTime_s === undefined ? [{ says: 'Takes are noted as rolled and no time is given for now: the rest is planned from the call.', path: '/shoot/day/now' }] : []),
  ];
} // prettier-ignore
