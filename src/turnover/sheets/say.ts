/** Small phrases that several sheets share. */
import { sayList } from '../../base/sayList.ts';
import type { KindName } from '../../base/kinds.ts';
import { showNumber } from '../../base/quantity.ts';
import { writeClock } from '../../document/write.ts';
import type { MarginState, ShotPlan } from '../../plan/types.ts';
import { longTime } from '../longTime.ts';
import { numberWords, said } from '../words.ts';
import type { Cell, KeyFigure, Source } from './sheet.ts';

/** What stands where a number is not known. */
export const NOT_KNOWN = 'not known';

export const STATE_WORDS: Readonly<Record<MarginState, string>> = {
  short: 'short',
  tight: 'tight',
  spare: 'spare',
  unknown: NOT_KNOWN,
};

/** A number of the plan in words, or that it is not known. */
export function sayNumber(
  source: Pick<Source, 'system'>,
  name: string,
  value: number | undefined,
  kind?: KindName,
): string {
  return value === undefined ? NOT_KNOWN : said(numberWords({ name, value, kind, system: source.system }));
}

export const sayLong = (time_s: number): string => longTime(time_s).map(said).join(' ');

export const sayCount = (count: number, one: string, many = `${one}s`): string =>
  `${showNumber(count, 6)} ${count === 1 ? one : many}`;

/** "shot 2", "shots 1, 2 and 5". */
export const sayShots = (shots: readonly Pick<ShotPlan, 'number'>[]): string =>
  shots.length === 0
    ? 'no shot'
    : `${shots.length === 1 ? 'shot' : 'shots'} ${sayList(shots.map(({ number }) => String(number)))}`;

/** The shoot, and where and on which day it is: what every sheet says of itself. */
export function ofShoot({ shoot, plan }: Source): { readonly shoot: string; readonly about: string } {
  const { place, day } = shoot.shoot;
  return { shoot: plan.title, about: [place, day.date].filter((part) => part !== undefined && part !== '').join(', ') };
}

/** Call, meals and wrap as key figures; those that nobody wrote are left out. */
export function dayFigures({ shoot }: Source): readonly KeyFigure[] {
  const { callTime_s, meals, wrapTime_s } = shoot.shoot.day;
  const at = (label: string, dayTime_s: number | undefined): readonly KeyFigure[] =>
    dayTime_s === undefined ? [] : [{ label, number: writeClock(dayTime_s), unit: '' }];
  return [...at('Call', callTime_s), ...meals.flatMap((meal_s) => at('Meal', meal_s)), ...at('Wrap', wrapTime_s)];
}

export const cell = (words: string, under?: string): Cell => ({
  words,
  ...(under === undefined || under === '' ? {} : { under }),
});

export const strong = (words: string, under?: string): Cell => ({ ...cell(words, under), isStrong: true });

/** A title and, where it is another, what is known of it beside it. */
export const titleOf = (item: { readonly title?: string } | undefined, id: string): string => item?.title ?? id;
