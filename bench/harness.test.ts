import { describe, expect, test } from 'vitest';
import { compare, outcomeTable, quantile, seededNumbers, type Settings } from './harness.ts';

/** A clock that work moves by itself, so that times are exactly known. */
function drivenClock() {
  let time_ms = 0;
  return { now_ms: () => time_ms, spend: (spent_ms: number) => void (time_ms += spent_ms) };
}

const settings = (now_ms: () => number): Settings => ({ rounds: 9, batch_ms: 20, seed: 3, now_ms });

describe('comparing two sides', () => {
  test('a side that takes three times as long has a ratio of three, whatever the number of runs in a batch', async () => {
    const clock = drivenClock();
    const contest = {
      title: 'spending time',
      a: { name: 'slow', run: () => clock.spend(3) },
      b: { name: 'fast', run: () => clock.spend(1) },
    };
    const outcome = await compare(contest, settings(clock.now_ms));
    expect(outcome.ratio).toBeCloseTo(3, 12);
    expect(outcome.a.median_ms).toBeCloseTo(3, 12);
    expect(outcome.b.median_ms).toBeCloseTo(1, 12);
  });

  test('a machine that slows down half way leaves the ratio where it was', async () => {
    const clock = drivenClock();
    let done = 0;
    const spend = (spent_ms: number) => () => {
      done += 1;
      clock.spend(done > 150 ? spent_ms * 10 : spent_ms);
    };
    const contest = { title: 'slowing', a: { name: 'a', run: spend(2) }, b: { name: 'b', run: spend(1) } };
    const outcome = await compare(contest, settings(clock.now_ms));
    expect(outcome.ratio).toBeCloseTo(2, 6);
  });

  test('both sides come first in some round, so that neither always finds the caches warm', async () => {
    const clock = drivenClock();
    const order: string[] = [];
    const side = (name: string) => ({
      name,
      run: () => {
        order.push(name);
        clock.spend(50);
      },
    });
    await compare({ title: 'order', a: side('a'), b: side('b') }, settings(clock.now_ms));
    const firsts = new Set(order.slice(2).filter((_, index) => index % 2 === 0));
    expect([...firsts].sort()).toEqual(['a', 'b']);
  });

  test('work that answers later is waited for', async () => {
    const clock = drivenClock();
    const later = (spent_ms: number) => async () => {
      await Promise.resolve();
      clock.spend(spent_ms);
    };
    const contest = { title: 'later', a: { name: 'a', run: later(5) }, b: { name: 'b', run: later(10) } };
    expect((await compare(contest, settings(clock.now_ms))).ratio).toBeCloseTo(0.5, 12);
  });
});

test('a ratio above its budget is marked in the table, one at its budget is within it', () => {
  const side = { name: 'x', median_ms: 1 };
  const outcome = { title: 'w', a: side, b: side, ratio: 1.2, ratioLow: 1, ratioHigh: 1.4, rounds: 5 };
  expect(outcomeTable([{ ...outcome, budgetRatio: 1.1 }])).toContain('OVER 1.1');
  expect(outcomeTable([{ ...outcome, budgetRatio: 1.2 }])).toContain('within 1.2');
});

test('quantiles lie between neighbours in proportion, and an empty list is refused', () => {
  expect(quantile([4, 1, 3, 2], 0.5)).toBe(2.5);
  expect(quantile([10, 20, 30, 40, 50], 0.1)).toBeCloseTo(14, 12);
  expect(() => quantile([], 0.5)).toThrow(RangeError);
});

test('a seed fixes its numbers, another seed gives others, and all lie from 0 to below 1', () => {
  const draw = (seed: number) => Array.from({ length: 200 }, seededNumbers(seed));
  expect(draw(7)).toEqual(draw(7));
  expect(draw(7)).not.toEqual(draw(8));
  expect(draw(7).every((value) => value >= 0 && value < 1)).toBe(true);
});
