/** When the day begins and eats: as written, or as is usual. */
import type { Shoot } from '../../document/schema.ts';
import { isUnread } from '../unread.ts';
import { assume, miss, type Gathered } from './usual.ts';

const DEFAULT_CALL_s = 8 * 3600;
const DEFAULT_MEAL_s = 3600;
const DEFAULT_WITHIN_s = 6 * 3600;

export interface DayClock {
  readonly starts_s: number;
  readonly meals_s: readonly number[];
  readonly mealLength_s: number;
  /** Longest work without a meal; infinite where nobody set one. */
  readonly mealWithin_s: number;
  /** When the last meal ended before this begins, or work began. */
  readonly lastBreak_s: number;
}

/** When the day begins and eats. */
export function clockOf(shoot: Shoot, gathered: Gathered): DayClock {
  const { day } = shoot.shoot;
  const at = '/shoot/day';
  const orAssume = (value: number | undefined, name: string, title: string, key: string, otherwise: number): number => {
    if (value !== undefined) return value;
    if (isUnread(day, key)) miss(gathered, { name, title, path: `${at}/${key}`, because: 'unread' });
    assume(gathered, { name, title, value: otherwise, kind: 'time', why: 'common practice, no source', path: `${at}/${key}` });
    return otherwise;
  };
  const call_s = orAssume(day.callTime_s, 'callTime_s', 'When work starts', 'call', DEFAULT_CALL_s);
  const meals = [...new Set(day.meals)].filter((meal_s) => meal_s >= call_s).sort((a, b) => a - b);
  const isToldWhen = meals.length > 0 || day.mealWithin_s !== undefined;
  const mealWithin_s = isToldWhen ? (day.mealWithin_s ?? Infinity) : orAssume(undefined, 'mealWithin_s', 'Longest work without a meal', 'mealWithin', DEFAULT_WITHIN_s);
  const mealLength_s = orAssume(day.mealLength_s, 'mealLength_s', 'How long a meal lasts', 'mealLength', DEFAULT_MEAL_s);
  for (const [key, name, title] of [['meals', 'mealTime_s', 'When meals start'], ['mealWithin', 'mealWithin_s', 'Longest work without a meal'], ['now', 'nowTime_s', 'What time it is']] as const)
    if (isUnread(day, key)) miss(gathered, { name, title, path: `${at}/${key}`, because: 'unread' });
  const starts_s = Math.max(call_s, day.nowTime_s ?? call_s);
  const had = meals.filter((meal_s) => meal_s < starts_s);
  const lastBreak_s = had.length > 0 ? Math.min(starts_s, had.at(-1)! + mealLength_s) : call_s;
  return { starts_s, meals_s: meals.slice(had.length), mealLength_s, mealWithin_s, lastBreak_s };
} // prettier-ignore
