import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { labelTick, ticksWithin, tickStep_s } from './ticks.ts';

describe('the step of a ruler', () => {
  test.each([
    [0.62, 12, 0.1],
    [0.6, 12, 0.05],
    [6, 8, 1],
    [0.00031, 5, 0.0001],
    [90, 8, 15],
    [700, 8, 120],
  ])('%d s with room for %d ticks counts in steps of %d s', (span_s, most, step_s) =>
    expect(tickStep_s({ span_s, most })).toBeCloseTo(step_s, 9),
  );

  test('there are never more ticks than there is room for', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e5, noNaN: true }), fc.integer({ min: 2, max: 30 }), (span_s, most) => {
        const step_s = tickStep_s({ span_s, most });
        expect(ticksWithin({ from_s: step_s / 3, to_s: step_s / 3 + span_s, step_s }).length).toBeLessThanOrEqual(most);
      }),
    );
  });
});

test('ticks are multiples of the step, with both ends when they fall on one', () => {
  expect(ticksWithin({ from_s: -0.1, to_s: 0.1, step_s: 0.05 })).toEqual([-0.1, -0.05, 0, 0.05, 0.1]);
  expect(ticksWithin({ from_s: 0.01, to_s: 0.04, step_s: 0.05 })).toEqual([]);
});

test('a ruler of real time may count in milliseconds for longer', () => {
  expect(labelTick({ time_s: 0.2, step_s: 0.1, secondsFrom_s: 0.5 })).toBe('200 ms');
  expect(labelTick({ time_s: 0.5, step_s: 0.5, secondsFrom_s: 0.5 })).toBe('0.5 s');
});

test.each([
  [0, 0.5, '0 s'],
  [0.05, 0.05, '50 ms'],
  [-0.25, 0.05, '−250 ms'],
  [2, 1, '2 s'],
  [0.5, 0.5, '0.5 s'],
  [0.0002, 0.0001, '0.2 ms'],
  [0.00004, 0.00002, '40 µs'],
  [90, 30, '90 s'],
  [0, 0.05, '0 ms'],
])('a tick at %d s in steps of %d s reads %s', (time_s, step_s, label) =>
  expect(labelTick({ time_s, step_s })).toBe(label),
);
