import { describe, expect, test } from 'vitest';
import { drawFour, drawKey } from '../../base/randomStream.ts';
import { printed } from '../../../test/published.ts';
import { emptyPartitions, fillPart, partFree_s, partitionsOf, serve_s } from './queue.ts';

/** Even numbers one after another. */
function evenNumbers(): () => number {
  const key = drawKey(11, 'queue');
  const block = new Float64Array(4);
  let next = 0;
  return () => {
    if (next % 4 === 0) drawFour(key, next / 4, 0, 0, block);
    return block[next++ % 4]!;
  };
}

/** Mean wait before service over many jobs. */
function meanWait(jobs: number, gap: () => number, service: () => number): number {
  const free = new Float64Array(1);
  let arrives = 0;
  let waited = 0;
  for (let i = 0; i < jobs; i += 1) {
    arrives += gap();
    const takes = service();
    waited += serve_s(free, 0, arrives, takes) - takes - arrives;
  }
  return waited / jobs;
}

describe('one server, first come first served', () => {
  const even = evenNumbers();
  const exponential = (mean: number) => () => -mean * Math.log(even());
  const always = (time: number) => () => time;

  // queue-textbook: M/D/1 waits ρ/(2(1 − ρ)) services, M/M/1 ρ/(1 − ρ).
  test.each([
    ['regular arrivals and services, below one load', always(1), always(0.9), '0', 1e-9],
    ['random arrivals, services of one length, half the load (M/D/1)', exponential(2), always(1), '0.5', 0.02],
    ['random arrivals, services of one length, four fifths of the load (M/D/1)', exponential(1.25), always(1), '2.0', 0.1],
    ['random arrivals and services, half the load (M/M/1)', exponential(2), exponential(1), '1.0', 0.04],
  ] as const)('agrees with queue-textbook: %s', (_, gap, service, expected, tolerance) => {
    expect(Math.abs(meanWait(400_000, gap, service) - printed(expected).value)).toBeLessThan(tolerance);
  }); // prettier-ignore

  test('a load above one grows without end: each waits a service less a gap longer than the one before', () => {
    const free = new Float64Array(2);
    const waits = Array.from({ length: 5 }, (_, i) => serve_s(free, 1, 10 * i, 13) - 13 - 10 * i);
    expect(waits).toEqual([0, 3, 6, 9, 12]);
    expect(free[0]).toBe(0);
  });
});

test('parts of a memory are filled in turn, each free when what it holds is saved', () => {
  const parts = partitionsOf([1, 3]);
  fillPart(parts, 1, 100);
  expect([partFree_s(parts, 0), partFree_s(parts, 1)]).toEqual([0, 0]);
  fillPart(parts, 1, 200);
  fillPart(parts, 1, 300);
  expect(partFree_s(parts, 1)).toBe(100);
  fillPart(parts, 1, 400);
  expect(partFree_s(parts, 1)).toBe(200);
  fillPart(parts, 0, 50);
  expect(partFree_s(parts, 0)).toBe(50);
  emptyPartitions(parts);
  expect([partFree_s(parts, 0), partFree_s(parts, 1)]).toEqual([0, 0]);
});
