import { describe, expect, test } from 'vitest';
import { dayWith, TWO_SHOTS } from '../../test/days.ts';
import { changed } from '../../test/shoots.ts';
import { readShoot } from '../document/read.ts';
import type { DayPlan } from '../plan/day/types.ts';
import { planShoot } from '../plan/plan.ts';
import { dayOf } from './day.ts';

const at = (time_s: number) => ({ early_s: time_s, middle_s: time_s, late_s: time_s });
const endOf = ({ shots }: DayPlan, id: string): number => shots.find(({ shotId }) => shotId === id)!.ends.late_s;
const floor = ({ blocks }: DayPlan) => blocks.filter(({ lane }) => lane === 'floor');
const MIN = 60;

describe('without chance the day is what is reckoned by hand', () => {
  test('two shots, by an event list worked in another language: wrap at 7260 s, the last copy verified at 7380 s', () => {
    const day = dayWith();
    expect([day.wrap, day.copied]).toEqual([at(7260), at(7380)]);
    expect(day.shots.map(({ ends }) => ends)).toEqual([at(1800 + 2 * 660), at(7260)]);
    expect(day.shots[1]!.spent_s).toEqual({ change: 2700, reset: 900, roll: 180, review: 360 });
  });

  test('references come before the takes and elements after them, each kept element saved as well', () => {
    const day = dayWith({ '/shots/one/references': ['Grey card', 'White'], '/shoot/day/usual/reference': '90 s ± 0 s', '/shots/one/elements': ['Plate'], '/shots/one/times/element': '4 min ± 0 s' }); // prettier-ignore
    expect(endOf(day, 'one')).toBe(1800 + 2 * 90 + 2 * 660 + 240);
    expect(floor(day).filter(({ shotId }) => shotId === 'one').map(({ work }) => work)).toEqual(['change', 'reference', 'reference', 'reset', 'roll', 'review', 'reset', 'roll', 'review', 'element']); // prettier-ignore
    expect(day.blocks.filter(({ work, shotId }) => work === 'save' && shotId === 'one')).toHaveLength(3);
  });

  test('one memory holds up the next roll until it is saved, and two of them half as often', () => {
    const slow = { '/kit/cameras/body/saveRate': `${(3_110_400 * 400) / 900} B/s ± 0 %`, '/shots/two/soFar': { done: true }, '/shots/one/takes': 4 }; // prettier-ignore
    // Each take: 7 min of reset, rolled at the earliest 15 min after the roll before, then 1 + 3 min.
    expect(dayWith(slow).wrap).toEqual(at((30 + 7 + 1 + 3 * (15 + 1) + 3) * MIN));
    expect(dayWith(slow).shots.at(-1)!.spent_s.wait).toBe(3 * 5 * MIN);
    // With two parts the third and fourth wait for the first and second: 15 min a save on one link.
    const two = dayWith({ ...slow, '/kit/cameras/body/partitions': 2 });
    const saved = [15, 30].map((minutes) => 38 + minutes);
    expect(two.wrap).toEqual(at((Math.max(saved[1]!, Math.max(saved[0]!, 38 + 3 + 7 + 1 + 3 + 7) + 1 + 3 + 7) + 4) * MIN));
  }); // prettier-ignore

  test('a hero that waits longer than it holds is dressed again', () => {
    const slow = { '/kit/cameras/body/saveRate': `${(3_110_400 * 400) / 900} B/s ± 0 %`, '/kit/products/egg/hold': '4 min ± 0 s' };
    const held = dayWith({ ...slow, '/kit/products/egg/hold': '20 min ± 0 s' });
    const again = dayWith(slow);
    // Saving takes 15 min; review and reset 7: the second and third take wait 8 min, and their reset of 5 min is done again.
    expect(endOf(again, 'two') - endOf(held, 'two')).toBe(2 * 5 * MIN);
  }); // prettier-ignore

  test('meals begin at the first take boundary at or after their time', () => {
    const day = dayWith({ '/shoot/day/meals': ['00:45'], '/shoot/day/mealWithin': undefined });
    expect(day.wrap).toEqual(at(7260 + 1800));
    // Change to 30 min, takes end at 41 and 52.
    expect(floor(day).find(({ work }) => work === 'meal')).toMatchObject({ from_s: 52 * MIN, to_s: 82 * MIN });
  });

  test('no step is begun that would run past the longest work without a meal', () => {
    const day = dayWith({ '/shoot/day/mealWithin': '1 h' });
    const meals = floor(day).filter(({ work }) => work === 'meal');
    // The change of 45 min at 52 min would; after it stand 45 + 8 min of work, and the next take of 8 min would again.
    expect(meals.map(({ from_s }) => from_s / MIN)).toEqual([52, 52 + 30 + 45 + 8]);
    expect(day.warnings).toEqual([]);
  });

  test('a day that has no room for its meal says so', () => {
    const day = dayWith({ '/shoot/day/mealWithin': '20 min' });
    expect(day.warnings.map(({ says }) => says)).toContainEqual(expect.stringContaining('without a meal'));
  });

  test('media that are full wait until the oldest is verified twice, if two copies are made', () => {
    const size = 3_110_400 * 400;
    const shuttle = { capacity: '1 TB', holds: 'copies', writeRate: `${size / 900} B/s`, readRate: `${size / 900} B/s` };
    const small = { '/kit/drives/raid/capacity': `${size * 2} B`, '/kit/drives/shuttle': shuttle, '/kit/drives/other': shuttle };
    const cleared = dayWith({ ...small, '/shoot/day/copies': 2 });
    // Two takes fill it. The first two are verified at 69 and 99 min, the third, saved at 104, at 134: the fifth take
    // is dressed at 118 and waits for that.
    expect(cleared.shots[1]!.spent_s.wait).toBe(16 * MIN);
    expect(cleared.warnings.map(({ says }) => says)).toContainEqual(expect.stringContaining('verified twice'));
    // With one copy nothing may be cleared, so nobody waits for it, and the drive is said to be too small.
    const kept = dayWith({ ...small, '/shoot/day/copies': 1 });
    expect(kept.shots[1]!.spent_s.wait).toBeUndefined();
    expect(kept.warnings).toContainEqual(expect.objectContaining({ path: '/kit/drives/raid/capacity' }));
  }); // prettier-ignore
});

describe('takes', () => {
  test('end when the pieces do, and the day says so', () => {
    const day = dayWith({ '/kit/products/egg/pieces': 5, '/shots/two/hero/perTake': 2 });
    expect(day.shots[1]).toMatchObject({ takes: { early: 2, late: 2 }, piecesUsed: { product: 'egg', middle: 4, late: 4 } }); // prettier-ignore
    expect(day.warnings).toContainEqual({ says: expect.stringContaining('Egg runs out') as string, path: '/kit/products/egg/pieces' }); // prettier-ignore
  });

  test('share their pieces with the shots before them', () => {
    const day = dayWith({ '/kit/products/egg/pieces': 3, '/shots/one/hero/product': 'egg' });
    expect(day.shots.map(({ takes }) => takes.middle)).toEqual([2, 1]);
  });

  test('count what the reset uses up, once where it brings the hero on', () => {
    const brings = { title: 'Fresh egg', time: '5 min ± 0 s', uses: 'egg', pieces: 2 };
    expect(dayWith({ '/shots/two/reset/all': brings }).shots[1]!.piecesUsed).toMatchObject({ middle: 6 });
    expect(dayWith({ '/shots/one/reset/all': brings, '/kit/products/egg/pieces': 3 }).shots[0]!.takes.late).toBe(1);
  });

  test('of which no piece is left are none, and none is said to be', () => {
    const day = dayWith({ '/kit/products/egg/pieces': 0 });
    expect(day.shots[1]!.takes).toEqual({ early: 0, middle: 0, late: 0 });
    expect(day.warnings).toContainEqual(expect.objectContaining({ says: expect.stringMatching(/^No take of Two can be rolled/) as string })); // prettier-ignore
  });

  test('of which none is kept are rolled as planned and not saved', () => {
    const day = dayWith({ '/shots/two/kept': 0 });
    expect(day.wrap).toEqual(at(7260));
    expect(day.blocks.filter(({ work, shotId }) => work === 'save' && shotId === 'two')).toEqual([]);
    expect(day.warnings).toContainEqual(expect.objectContaining({ path: '/shots/two/kept' }));
  });

  test('that hardly ever succeed are given up, and the day says so', () => {
    const day = dayWith({ '/shots/one/good': 0.001 });
    expect(day.shots[0]!.takes.late).toBe(200);
    expect(day.warnings).toContainEqual(expect.objectContaining({ path: '/shots/one/good' }));
  });
});

describe('the rest of a day', () => {
  const soFar = { '/shots/one/soFar': { takes: 3, good: 2 } };
  const begun = { '/shoot/day/now': '01:00', ...soFar };

  test('leaves out what is done, and begins now', () => {
    const day = dayWith(begun);
    expect(day.starts_s).toBe(3600);
    expect(day.shots.map(({ shotId, isDone }) => [shotId, isDone])).toEqual([['one', true], ['two', false]]); // prettier-ignore
    expect(day.wrap).toEqual(at(3600 + 2700 + 3 * 480));
    expect(day.order).toEqual(['one', 'two']);
  });

  test('goes on with the shot in hand, without changing over to it, whatever the order', () => {
    const day = dayWith({ ...begun, '/shots/one/soFar': {}, '/shots/two/soFar': { takes: 2, good: 1 } });
    expect(day.order).toEqual(['two', 'one']);
    expect(day.shots[0]).toMatchObject({ because: 'in hand', ends: at(3600 + 2 * 480) });
  });

  test('has as many pieces fewer as takes were rolled', () => {
    const day = dayWith({ ...begun, '/shots/two/soFar': { takes: 1, good: 0 }, '/kit/products/egg/pieces': 3 });
    expect(day.shots.find(({ shotId }) => shotId === 'two')!.takes.late).toBe(2);
  });

  test('of which nothing is left says so and ends now', () => {
    const day = dayWith({ ...begun, '/shots/two/soFar': { done: true } });
    expect(day).toMatchObject({ wrap: at(3600), says: ['Nothing is left to be shot.'], blocks: [] });
  });

  test('without a time for now is planned from the call, and says so', () => {
    const day = dayWith(soFar);
    expect(day.starts_s).toBe(0);
    expect(day.warnings).toContainEqual(expect.objectContaining({ path: '/shoot/day/now' }));
  });
});

describe('the order', () => {
  test('that a person fixed is kept, even against what must come first, which is said', () => {
    const day = dayWith({ '/shots/one/after': ['two'] });
    expect([day.order, day.orderBy]).toEqual([['one', 'two'], 'fixed']);
    expect(day.warnings).toContainEqual(expect.objectContaining({ path: '/order/day' }));
    expect(day.savings.map(({ title }) => title)).not.toContain('Shoot in another order');
  });

  test('is otherwise the one with the least to change', () => {
    // One and three are of one set: two between them costs one set more.
    const three = { '/order/day': [], '/order/shots': ['one', 'two', 'three'], '/shots/three': { matches: 'one', ...(({ frameWidth: '200 mm', action: { duration: '0.2 s' }, screenTime: '8 s', takes: 1, good: 1, lighting: 'key', times: { set: '30 min ± 0 s' } })) } }; // prettier-ignore
    const day = dayWith(three);
    expect(day.orderBy).toBe('proven');
    expect(Math.abs(day.order.indexOf('one') - day.order.indexOf('three'))).toBe(1);
    expect(day.changesAsWritten_s - day.changes_s).toBe(1800);
    expect(day.says).toContainEqual(expect.stringContaining('30 min less than as written'));
    const fixed = dayWith({ ...three, '/order/day': ['one', 'two', 'three'] });
    expect(fixed.savings).toContainEqual(expect.objectContaining({ title: 'Shoot in another order', saves_s: 1800 }));
  });

  test('that would go round in a circle is planned without what closes it, and that is named', () => {
    const { shoot } = readShoot(changed(TWO_SHOTS, { '/shots/one/after': ['two'], '/shots/two/after': ['one'] }));
    const { missing, order } = dayOf(shoot, planShoot(shoot), { dayCount: 2 });
    expect(new Set(order)).toEqual(new Set(['one', 'two']));
    expect(missing).toContainEqual(expect.objectContaining({ path: '/shots/two/after', because: 'unread' }));
  });
});

describe('what is told', () => {
  test('a wrap that cannot be kept, by how much, and what helps', () => {
    const day = dayWith({ '/shoot/day/wrap': '01:30', '/shoot/day/overtimePrice': 600 });
    expect(day).toMatchObject({
      inTimeFraction: 0,
      overtime: { middle_s: 1860, late_s: 1860, latePrice: expect.closeTo(310, 9) as number },
    });
    expect(day.warnings[0]!.says).toMatch(/cannot be done by 01:30.*31 min later.*What helps most: Two on another day/);
    expect(day.says.slice(0, 3)).toEqual(['Nine days in ten, wrap by 02:01; half of all days by 02:01.', 'No day it ends by 01:30, the wrap that was set.', 'A late day runs 31 min over, 310 at the price given.']); // prettier-ignore
  });

  test('the late day by kind of work, all of it', () => {
    const { path } = dayWith();
    expect(path.reduce((sum, { shareFraction }) => sum + shareFraction, 0)).toBeCloseTo(1, 12);
    expect(path[0]).toEqual({ work: 'change', time_s: 4500, shareFraction: 4500 / 7260 });
  });

  test('copies that are wanted and have no drive', () => {
    expect(dayWith({ '/shoot/day/copies': 3 }).warnings).toContainEqual(expect.objectContaining({ path: '/shoot/day/copies' })); // prettier-ignore
    expect(dayWith({ '/kit/drives': undefined }).warnings).toContainEqual(expect.objectContaining({ path: '/kit/drives' })); // prettier-ignore
  });

  test('somebody who stays for the copies', () => {
    const day = dayWith({ '/kit/drives/shuttle/writeRate': '500 kB/s' });
    expect(day.warnings).toContainEqual({ says: expect.stringContaining('Copying goes on for') as string, path: '/kit/drives' }); // prettier-ignore
  });

  test('a link that is written with the rate of its line carries what TCP leaves of it', () => {
    const day = dayWith({ '/kit/links/cable': { rate: '125 MB/s' }, '/kit/cameras/body/link': 'cable', '/kit/cameras/body/saveRate': '1 GB/s ± 0 %' }); // prettier-ignore
    expect(day.assumed).toContainEqual(expect.objectContaining({ path: '/kit/links/cable/rate', value: expect.closeTo(117.69e6, -4) as number })); // prettier-ignore
    const save = day.blocks.find(({ work }) => work === 'save')!;
    expect(save.to_s - save.from_s).toBeCloseTo((3_110_400 * 400) / 117.685e6, 2);
  });

  test('drives by what the day puts on them', () => {
    const take = 3_110_400 * 400;
    const { drives } = dayWith({ '/kit/drives/raid/used': `${1e12 - 3 * take} B`, '/kit/drives/next': { capacity: `${take} B`, holds: 'saves' } }); // prettier-ignore
    expect(drives).toMatchObject([
      { drive: 'raid', holds: 'saves', middle_B: 3 * take, late_B: 3 * take, isShort: false },
      { drive: 'next', holds: 'saves', middle_B: 2 * take, isShort: true },
      { drive: 'shuttle', holds: 'copies', late_B: 5 * take, isShort: false },
    ]);
  });

  test('what nobody wrote, and what cannot be read', () => {
    const { assumed } = dayWith({ '/shoot/day/usual': undefined, '/shoot/day/call': undefined });
    expect(assumed.map(({ path }) => path)).toEqual(expect.arrayContaining(['/shoot/day/call', '/shoot/day/usual/roll', '/shoot/day/usual/safety'])); // prettier-ignore
    expect(assumed.every(({ why }) => why.includes('common practice, no source'))).toBe(true);
  });
});
