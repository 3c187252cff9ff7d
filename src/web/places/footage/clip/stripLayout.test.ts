import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bandPath, columnsOf, columnsWith, heightOf_px, roomFor, ROUND } from './stripLayout.ts';

describe('the columns of a series', () => {
  test('hold the least and the most of the frames in each', () => {
    const { low, high } = columnsOf([1, 5, 2, 8, 3, 4], { from: 0, to: 6 }, 3);
    expect([[...low], [...high]]).toEqual([[1, 2, 3], [5, 8, 4]]); // prettier-ignore
  });

  test('of frames wider than a pixel say the same all across each', () => {
    const { low, high } = columnsOf([1, 5], { from: 0, to: 2 }, 6);
    expect([...low]).toEqual([1, 1, 1, 5, 5, 5]);
    expect(high).toEqual(low);
  });

  test('leave out frames without a value, and say where there is none at all', () => {
    const { low, high } = columnsOf([1, NaN, NaN, NaN, 7, Infinity], { from: 0, to: 6 }, 3);
    expect([...low]).toEqual([1, NaN, 7]);
    expect(high).toEqual(low);
  });

  test('lose no frame in sight, however many there are and however they fall', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e3, max: 1e3, noNaN: true }), { minLength: 1, maxLength: 400 }),
        fc.integer({ min: 1, max: 120 }),
        (values, width_px) => {
          const { low, high } = columnsOf(values, { from: 0, to: values.length }, width_px);
          expect(Math.min(...low)).toBe(Math.min(...values));
          expect(Math.max(...high)).toBe(Math.max(...values));
          low.forEach((value, i) => expect(value).toBeLessThanOrEqual(high[i]!));
        },
      ),
    );
  });

  test('show only what is in sight', () => {
    const { low, high } = columnsOf([9, 1, 2, 3, 9], { from: 1, to: 4 }, 30);
    expect([Math.min(...low), Math.max(...high)]).toEqual([1, 3]);
  });

  test('of no width are none', () => expect(columnsOf([1, 2], { from: 0, to: 2 }, 0).low).toHaveLength(0));
});

describe('an outline', () => {
  const scale = { least: 0, most: 10 };
  test('runs along the most and back along the least', () => {
    const path = bandPath(Float64Array.of(0, 5), Float64Array.of(10, 5), scale, 40);
    expect(path).toBe('M0 0H1L1 20H2L2 20H1L1 40H0Z');
  });

  test('takes one step for columns that are level', () => {
    const level = new Float64Array(500).fill(5);
    expect(bandPath(level, level, scale, 40)).toBe('M0 20H500L500 20H0Z');
  });

  test('breaks where there is nothing', () => {
    const gap = Float64Array.of(5, NaN, 5);
    expect(bandPath(gap, gap, scale, 40).match(/M/g)).toHaveLength(2);
    expect(bandPath(Float64Array.of(NaN), Float64Array.of(NaN), scale, 40)).toBe('');
  });

  test('stays within its strip', () => {
    expect([heightOf_px(99, scale, 40), heightOf_px(-99, scale, 40)]).toEqual([0, 40]);
  });
});

test('frames that are missing are ticks, one in a column at the most', () => {
  const view = { from: 0, to: 1000 };
  expect(columnsWith([5, 6, 7, 500], view, 100)).toEqual([0, 50]);
  expect(columnsWith([5, 500, 999], { from: 400, to: 600 }, 100)).toEqual([50]);
  expect(columnsWith([999], view, 100)).toEqual([99]);
});

test('a scale ends at a round number that reaches the most', () => {
  expect([0.3, 1, 1.2, 7, 40].map((value) => roomFor(value, ROUND))).toEqual([0.5, 1, 2, 10, 50]);
  expect(roomFor(1e99, ROUND)).toBe(ROUND.at(-1));
});
