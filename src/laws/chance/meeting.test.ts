import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { allMeetFraction, inDepthFraction, pairMeetsFraction, rigsMeet, spreadToMeet_s } from './meeting.ts';

describe('published values', () => {
  published('pair within a window', pairMeetsFraction, [
    {
      source: 'function-handbook',
      at: 'erf 1: 2 ms window, spreads of 1 ms',
      given: { firstSpread_s: 0.001, secondSpread_s: 0.001, window_s: 0.002 },
      expected: '.842701',
    },
    {
      source: 'normal-table',
      at: 'z = 0.85 and -2.57: spreads of 3 and 4, window 8.55, aimed 4.3 apart',
      given: { firstSpread_s: 3, secondSpread_s: 4, window_s: 8.55, apart_s: 4.3 },
      expected: '.797',
    },
  ]);

  const range = (rigCount: number, at: string, window_s: number, expected: string) => ({
    source: 'range-table',
    at: `range of ${rigCount}, ${at} point`,
    given: { rigCount, spread_s: 1, window_s },
    expected,
  });
  published('all within a window', (given: Parameters<typeof rigsMeet>[0]) => rigsMeet(given).allFraction, [
    range(2, '5 %', 2.772, '.950'),
    range(3, '5 %', 3.314, '.950'),
    range(4, '5 %', 3.633, '.950'),
    range(5, '5 %', 3.858, '.950'),
    range(10, '5 %', 4.474, '.950'),
    range(3, '1 %', 4.12, '.990'),
    range(6, '1 %', 4.757, '.990'),
    {
      source: 'numerical-library',
      at: 'three equal, window of two spreads',
      given: { rigCount: 3, spread_s: 1, window_s: 2 },
      expected: '.666501',
    },
  ]);
  published('spread each may have', spreadToMeet_s, [
    {
      source: 'range-table',
      at: 'range of 3, 5 % point 3.314',
      given: { rigCount: 3, window_s: 3.314, chanceFraction: 0.95 },
      expected: '1.000',
    },
    {
      source: 'function-handbook',
      at: 'two of equal spread at nine in ten: 1/(1.64485 · √2)',
      given: { rigCount: 2, window_s: 1, chanceFraction: 0.9 },
      expected: '.430',
    },
  ]);
  published('in focus', inDepthFraction, [
    {
      source: 'normal-table',
      at: 'z = 0.85 and -1.96',
      given: { spread_m: 2, nearLimit_m: 3.92, farLimit_m: 1.7 },
      expected: '.7773',
    },
  ]);
});

const arrival = fc.record({
  mean_s: fc.double({ min: -3, max: 3, noNaN: true }),
  spread_s: fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 5, noNaN: true })),
});
const window = fc.double({ min: 0.01, max: 10, noNaN: true });

test('for two, the sum over who comes first is the chance of the difference', () => {
  fc.assert(
    fc.property(arrival, arrival, window, (a, b, window_s) => {
      fc.pre(a.spread_s + b.spread_s > 0);
      const pair = pairMeetsFraction({
        firstSpread_s: a.spread_s,
        secondSpread_s: b.spread_s,
        window_s,
        apart_s: b.mean_s - a.mean_s,
      });
      expect(allMeetFraction({ arrivals: [a, b], window_s })).toBeCloseTo(pair, 6);
    }),
  );
});

test('order does not matter, one more rig never helps, and a wider window never hurts', () => {
  fc.assert(
    fc.property(fc.array(arrival, { minLength: 2, maxLength: 5 }), arrival, window, (arrivals, more, window_s) => {
      const all = allMeetFraction({ arrivals, window_s });
      expect(allMeetFraction({ arrivals: arrivals.toReversed(), window_s })).toBeCloseTo(all, 6);
      expect(allMeetFraction({ arrivals: [...arrivals, more], window_s })).toBeLessThanOrEqual(all + 1e-6);
      expect(allMeetFraction({ arrivals, window_s: window_s * 1.5 })).toBeGreaterThanOrEqual(all - 1e-6);
    }),
    { numRuns: 40 },
  );
});

test('all equal ones give the same by either way of counting', () => {
  for (const rigCount of [2, 4, 7]) {
    const arrivals = Array.from({ length: rigCount }, () => ({ mean_s: 0.5, spread_s: 2 }));
    const { allFraction } = rigsMeet({ rigCount, spread_s: 2, window_s: 3 });
    expect(allMeetFraction({ arrivals, window_s: 3 })).toBeCloseTo(allFraction, 9);
  }
});

test('things that do not vary meet or do not, and one alone always does', () => {
  const at = (...means: readonly number[]) => means.map((mean_s) => ({ mean_s, spread_s: 0 }));
  expect(allMeetFraction({ arrivals: at(0, 0, 0.1), window_s: 0.1 })).toBe(1);
  expect(allMeetFraction({ arrivals: at(0, 0, 0.2), window_s: 0.1 })).toBe(0);
  expect(allMeetFraction({ arrivals: [{ mean_s: 0, spread_s: 9 }], window_s: 0.1 })).toBe(1);
  expect(pairMeetsFraction({ firstSpread_s: 0, secondSpread_s: 0, window_s: 1, apart_s: -1 })).toBe(1);
  expect(pairMeetsFraction({ firstSpread_s: 0, secondSpread_s: 0, window_s: 1, apart_s: 1.1 })).toBe(0);
});

test('what has no meaning is refused by name', () => {
  expect(() => pairMeetsFraction({ firstSpread_s: 1, secondSpread_s: 1, window_s: 0 })).toThrow('window_s must be pos');
  expect(() => rigsMeet({ rigCount: 1, spread_s: 1, window_s: 1 })).toThrow('rigCount must be a whole number of at');
  expect(() => rigsMeet({ rigCount: 21, spread_s: 1, window_s: 1 })).toThrow('rigCount must be from 2 to 20');
  expect(() => rigsMeet({ rigCount: 2, spread_s: 0, window_s: 1 })).toThrow('spread_s must be positive');
  expect(() => allMeetFraction({ arrivals: [{ mean_s: NaN, spread_s: 1 }], window_s: 1 })).toThrow(
    'mean_s must be fin',
  );
  expect(() => spreadToMeet_s({ rigCount: 2, window_s: 1, chanceFraction: 1 })).toThrow('chanceFraction must be from');
  expect(() => inDepthFraction({ spread_m: 0, nearLimit_m: 1, farLimit_m: 1 })).toThrow('spread_m must be positive');
});
