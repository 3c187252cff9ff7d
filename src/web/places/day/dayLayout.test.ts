import { describe, expect, test } from 'vitest';
import type { DayBlock, DayShot } from '../../../plan/day/types.ts';
import { barOf, hoursOf, joined, placeOf, spanOf } from './dayLayout.ts';
import { findOrderPatch, fixOrderPatch, movedTo } from './dayEdits.ts';

const H = 3600;
const moment = (early_s: number, middle_s: number, late_s: number) => ({ early_s, middle_s, late_s });

describe('the span of a day', () => {
  test('holds the call, the late end, the last copy and the wrap that was set, with room at both edges', () => {
    const span = spanOf({ starts_s: 7.5 * H, wrap: moment(18 * H, 19 * H, 21 * H), copied: moment(18 * H, 19 * H, 21.2 * H), wrapsBy_s: 19.5 * H }); // prettier-ignore
    expect(span.from_s).toBeLessThan(7.5 * H);
    expect(span.to_s).toBeGreaterThan(21.2 * H);
    expect(span.to_s - 21.2 * H).toBeLessThan(H);
  });

  test('labels whole hours, at most so many', () => {
    const span = { from_s: 7 * H, to_s: 23 * H };
    expect(hoursOf(span, 20)).toHaveLength(17);
    expect(hoursOf(span, 9).map(({ says }) => says)).toEqual(['08:00', '10:00', '12:00', '14:00', '16:00', '18:00', '20:00', '22:00']); // prettier-ignore
    expect(hoursOf({ from_s: 22 * H, to_s: 26 * H }, 9).map(({ says }) => says)).toEqual(['22:00', '23:00', '24:00', '25:00', '26:00']); // prettier-ignore
  });

  test('places times in hundredths, and nothing outside it', () => {
    const span = { from_s: 0, to_s: 200 };
    expect([0, 50, 200, -10, 900].map((time_s) => placeOf(time_s, span))).toEqual([0, 25, 100, 0, 100]);
  });
});

describe('a shot', () => {
  const shot: DayShot = { shotId: 'one', title: 'One', starts: moment(0, 10, 20), ends: moment(30, 40, 80), takes: { early: 1, middle: 2, late: 3 }, spent_s: {}, because: '', isDone: false }; // prettier-ignore

  test('runs from its middle start to its middle end, its end varying about that', () => {
    expect(barOf(shot, { from_s: 0, to_s: 100 })).toEqual({ from: 10, to: 40, early: 30, late: 80 });
  });

  test('that is done has no bar', () => {
    expect(barOf({ ...shot, isDone: true }, { from_s: 0, to_s: 100 })).toBeUndefined();
  });
});

test('blocks of one kind that touch are one, and lanes are apart', () => {
  const block = (lane: DayBlock['lane'], work: DayBlock['work'], from_s: number, to_s: number): DayBlock => ({ lane, work, from_s, to_s, shotId: 'one', says: '' }); // prettier-ignore
  const blocks = [block('floor', 'roll', 20, 30), block('floor', 'reset', 0, 10), block('floor', 'reset', 10, 20), block('save', 'save', 5, 9)]; // prettier-ignore
  expect(joined(blocks, 'floor').map(({ work, from_s, to_s }) => [work, from_s, to_s])).toEqual([
    ['reset', 0, 20],
    ['roll', 20, 30],
  ]);
  expect(joined(blocks, 'save')).toHaveLength(1);
});

describe('the order of the day', () => {
  const order = ['a', 'b', 'c', 'd'];

  test.each([
    ['a', 2, ['b', 'c', 'a', 'd']],
    ['d', 0, ['d', 'a', 'b', 'c']],
    ['b', 99, ['a', 'c', 'd', 'b']],
    ['b', -1, ['b', 'a', 'c', 'd']],
  ])('%s moved to place %i', (id, to, moved) => expect(movedTo(order, id, to)).toEqual(moved));

  test('stays as it is where nothing moves', () => {
    expect(movedTo(order, 'b', 1)).toBe(order);
    expect(movedTo(order, 'gone', 1)).toBe(order);
  });

  test('is fixed by one patch, and let go by another', () => {
    expect(fixOrderPatch(order)).toEqual([{ op: 'add', path: '/order/day', value: order }]);
    expect(findOrderPatch({ order: { day: order } })).toEqual([{ op: 'remove', path: '/order/day' }]);
    expect(findOrderPatch({ order: {} })).toEqual([]);
  });
});
