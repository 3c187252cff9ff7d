/** Shoots whose day can be worked by hand: two shots, one body, and no chance in anything until a test puts it in. */
import type { Shoot } from '../src/document/schema.ts';
import type { Written, WrittenRecord } from '../src/document/written.ts';
import { planShoot } from '../src/plan/plan.ts';
import type { DayPlan } from '../src/plan/day/types.ts';
import { dayOf, type DayOptions } from '../src/solve/day.ts';
import { changed, readSound, SMALL } from './shoots.ts';

const one = (SMALL['shots'] as WrittenRecord)['one'] as WrittenRecord;
const exact = (time: string): string => `${time} ± 0 s`;

/** A take weighs 3,110,400 B × 400 frames; saved in 60 s, copied in 90 s and verified in 90 s. */
const TAKE_B = 3_110_400 * 400;

const USUAL = ['set', 'light', 'camera', 'lens', 'mode', 'reset', 'safety', 'roll', 'review', 'reference', 'element'];

/** Two shots that share nothing of the set: changes of 30 and 45 min, 2 and 3 takes, all of them good. */
export const TWO_SHOTS: Written = changed(SMALL, {
  '/shoot/seed': 41,
  '/shoot/day': { call: '00:00', mealWithin: '20 h', mealLength: '30 min', copies: 1 },
  '/shoot/day/usual': Object.fromEntries(USUAL.map((step) => [step, '0 s'])),
  '/shoot/day/usual/roll': exact('1 min'),
  '/kit/products': { egg: { title: 'Egg', pieces: 40 } },
  '/kit/cameras/body/saveRate': `${TAKE_B / 60} B/s ± 0 %`,
  '/kit/drives': {
    raid: { title: 'Raid', capacity: '1 TB', holds: 'saves', readRate: '2 GB/s' },
    shuttle: { title: 'Shuttle', capacity: '1 TB', holds: 'copies', writeRate: `${TAKE_B / 90} B/s`, readRate: `${TAKE_B / 90} B/s` },
  },
  '/shots/one': {
    ...one,
    takes: 2,
    good: 1,
    reset: { all: { title: 'All', time: exact('7 min') } },
    times: { set: exact('30 min'), review: exact('3 min') },
    hero: {},
  },
  '/shots/two': {
    ...one,
    title: 'Two',
    takes: 3,
    good: 1,
    reset: { all: { title: 'All', time: exact('5 min') } },
    times: { set: exact('45 min'), review: exact('2 min') },
    hero: { product: 'egg' },
  },
  '/order': { shots: ['one', 'two'], day: ['one', 'two'] },
}); // prettier-ignore

export type Changes = Readonly<Record<string, Written | undefined>>;

/** The day of a shoot as read, whatever is wrong with it. */
export const dayRead = (shoot: Shoot, options?: DayOptions): DayPlan => dayOf(shoot, planShoot(shoot), options);

/** The day of a written shoot, which must have no problem. */
export const dayWritten = (written: Written, options: DayOptions = { dayCount: 20 }): DayPlan =>
  dayRead(readSound(written), options);

/** The day of the two shots with values changed at JSON Pointers. */
export const dayWith = (changes: Changes = {}, options?: DayOptions): DayPlan =>
  dayWritten(changed(TWO_SHOTS, changes), options);
