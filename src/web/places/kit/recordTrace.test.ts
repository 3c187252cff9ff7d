import { expect, test } from 'vitest';
import { traceOf } from './recordTrace.ts';

const record = (times: readonly number[], valueAt: (i: number) => number) => ({
  times_s: Float64Array.from(times),
  values: Float64Array.from(times, (_, i) => valueAt(i)),
  notices: [],
});

const even = (count: number, step_s = 1e-4) => Array.from({ length: count }, (_, i) => i * step_s);

test('a record of few samples is drawn by every one of them', () => {
  const { runs, gaps, least, most } = traceOf(
    record(even(5), (i) => [3, 1, 4, 1, 5][i]!),
    { columnCount: 100 },
  );
  expect(runs).toEqual([{ times_s: even(5), values: [3, 1, 4, 1, 5] }]);
  expect([gaps, least, most]).toEqual([[], 1, 5]);
});

test('a long one keeps every extreme, in the order of time, within twice as many points as columns', () => {
  const long = record(even(50_000), (i) => (i === 31_234 ? 9 : i === 40_001 ? -2 : Math.sin(i / 3)));
  const { runs, least, most } = traceOf(long, { columnCount: 200 });
  const [run] = runs;
  expect(runs).toHaveLength(1);
  expect(run!.times_s.length).toBeLessThanOrEqual(404);
  expect(run!.values).toContain(9);
  expect(run!.values).toContain(-2);
  expect([least, most]).toEqual([-2, 9]);
  expect([...run!.times_s].sort((a, b) => a - b)).toEqual(run!.times_s);
});

test('only what lies before the asked time is shown', () => {
  const { to_s, runs } = traceOf(
    record(even(1000), () => 1),
    { to_s: 0.01, columnCount: 1000 },
  );
  expect(to_s).toBe(0.01);
  expect(runs[0]!.times_s.at(-1)).toBeCloseTo(0.01, 9);
});

test('a gap breaks the line and is told', () => {
  const times = [...even(100), ...even(100).map((time_s) => time_s + 0.5)];
  const { runs, gaps } = traceOf(
    record(times, () => 1),
    { columnCount: 50 },
  );
  expect(runs).toHaveLength(2);
  expect(gaps).toHaveLength(1);
  expect(gaps[0]!.from_s).toBeCloseTo(0.0099, 9);
  expect(gaps[0]!.to_s).toBe(0.5);
});

test('an empty record has nothing to draw', () => {
  expect(
    traceOf(
      record([], () => 0),
      { columnCount: 10 },
    ).runs,
  ).toEqual([{ times_s: [], values: [] }]);
});
