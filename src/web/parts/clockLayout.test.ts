import { describe, expect, test } from 'vitest';
import { layClocks, realTimeAt_s, type TimePair } from './clockLayout.ts';

const size = { left_px: 100, right_px: 1100 };
const even = (span_s: number, screen_s: number): readonly TimePair[] => [
  { screenTime_s: 0, realTime_s: 0 },
  { screenTime_s: screen_s, realTime_s: span_s },
];
const steady = { spanTime_s: 0.12, padTime_s: 0.05, screenTime_s: 6, samples: even(0.12, 6) };

describe('one speed', () => {
  const laid = layClocks(steady, size);

  test('the film fills the width and the span does not', () => {
    expect(laid.film).toEqual([100, 1100]);
    expect(laid.span[1] - laid.span[0]).toBeLessThan(300);
  });

  test('what is kept surrounds the span evenly', () => {
    expect(laid.span[0] - laid.kept[0]).toBeCloseTo(laid.kept[1] - laid.span[1], 9);
    expect(laid.kept[0]).toBeLessThan(laid.span[0]);
  });

  test('threads run from end to end of the span, equally spaced', () => {
    const { threads } = laid;
    expect(threads[0]).toMatchObject({ real_px: laid.span[0], screen_px: 100, isMain: true });
    expect(threads.at(-1)!.real_px).toBeCloseTo(laid.span[1], 9);
    expect(threads.at(-1)!.screen_px).toBeCloseTo(1100, 9);
    const gaps = threads.slice(1).map(({ real_px }, i) => real_px - threads[i]!.real_px);
    for (const gap of gaps) expect(gap).toBeCloseTo(gaps[0]!, 6);
  });
});

test('where speed falls, threads bunch on the real ruler', () => {
  const samples = [
    { screenTime_s: 0, realTime_s: 0 },
    { screenTime_s: 3, realTime_s: 0.1 },
    { screenTime_s: 6, realTime_s: 0.12 },
  ];
  const { threads } = layClocks({ ...steady, samples }, size);
  const middle = threads.findIndex(({ screen_px }) => screen_px >= 600);
  const early = threads[1]!.real_px - threads[0]!.real_px;
  const late = threads[middle + 1]!.real_px - threads[middle]!.real_px;
  expect(early / late).toBeCloseTo(5, 6);
});

describe('what is held', () => {
  test('is drawn whole when it is a few times what is kept', () => {
    const held = layClocks({ ...steady, heldTime_s: 0.8 }, size).held!;
    expect(held.runsOff).toBe(false);
    expect(held.at[0]).toBeGreaterThan(100);
  });

  test('runs off the ruler when it is far more', () => {
    const held = layClocks({ ...steady, heldTime_s: 9 }, size).held!;
    expect(held).toEqual({ at: [100, 1100], runsOff: true });
  });

  test('is shorter than what is kept when memory is too small', () => {
    const { held, kept } = layClocks({ ...steady, heldTime_s: 0.1 }, size);
    expect(held!.at[0]).toBeGreaterThan(kept[0]);
  });
});

test('a narrow ruler has fewer labels than a wide one', () => {
  const narrow = layClocks(steady, { left_px: 8, right_px: 350 });
  expect(narrow.real.ticks.length).toBeLessThanOrEqual(4);
  expect(layClocks(steady, size).real.ticks.length).toBeGreaterThan(narrow.real.ticks.length);
});

test('real time between samples is read straight, and beyond them is the last', () => {
  const samples = even(2, 4);
  expect(realTimeAt_s(samples, 1)).toBeCloseTo(0.5, 12);
  expect(realTimeAt_s(samples, 9)).toBe(2);
  expect(realTimeAt_s([], 1)).toBe(0);
});
