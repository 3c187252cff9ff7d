/** Times of a day and parts of a day as they are said on a set. */
import type { DayWork } from './types.ts';

/** "2 h 10 min", "45 min", "40 s". */
export function sayTime(time_s: number): string {
  if (time_s < 59.5) return `${Math.round(time_s)} s`;
  const minutes = Math.round(time_s / 60);
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return [hours > 0 ? `${hours} h` : '', rest > 0 ? `${rest} min` : ''].filter((part) => part !== '').join(' ');
}

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** "seven days in ten", "every day", "hardly any day". */
export function sayDays(shareFraction: number): string {
  if (shareFraction >= 0.995) return 'every day';
  if (shareFraction >= 0.95) return 'nearly every day';
  if (shareFraction === 0) return 'no day';
  if (shareFraction < 0.05) return 'hardly any day';
  const tenths = Math.round(10 * shareFraction);
  return `${NUMBERS[tenths]} ${tenths === 1 ? 'day' : 'days'} in ten`;
}

/** A sentence or a title with its first letter large. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const WORK_NAMES: Readonly<Record<DayWork, string>> = {
  change: 'changing over',
  reference: 'reference rolls',
  element: 'elements',
  reset: 'resets',
  safety: 'safety calls',
  wait: 'waiting',
  roll: 'rolling',
  review: 'looking at takes',
  meal: 'meals',
  save: 'saving',
  copy: 'copying',
};

/** One stretch of it. */
export const WORK_ONCE: Readonly<Record<DayWork, string>> = {
  change: 'change over',
  reference: 'reference roll',
  element: 'element',
  reset: 'reset',
  safety: 'safety call',
  wait: 'wait',
  roll: 'roll',
  review: 'review',
  meal: 'meal',
  save: 'save',
  copy: 'copy and verify',
};
