import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { spreadsMeetFraction, threeMeetFraction } from './cuesMeet.ts';
import { allMeetFraction, rigsMeet } from './meeting.ts';

type Given = { readonly spreads_s: readonly number[]; readonly window_s: number };

describe('published values', () => {
  published('cues within a window', ({ spreads_s, window_s }: Given) => spreadsMeetFraction(spreads_s, window_s), [
    { source: 'function-handbook', at: 'erf 1: 2 ms window, spreads of 1 ms', given: { spreads_s: [0.001, 0.001], window_s: 0.002 }, expected: '.842701' },
    { source: 'normal-table', at: 'z = 0.85: spreads of 3 and 4, window 4.25', given: { spreads_s: [3, 4], window_s: 4.25 }, expected: '.605' },
    { source: 'range-table', at: 'range of 3, 5 % point', given: { spreads_s: [1, 1, 1], window_s: 3.314 }, expected: '.950' },
    { source: 'range-table', at: 'range of 4, 5 % point', given: { spreads_s: [2, 2, 2, 2], window_s: 7.266 }, expected: '.950' },
    { source: 'numerical-library', at: 'three equal, window of two spreads', given: { spreads_s: [1, 1, 1], window_s: 2 }, expected: '.666501' },
    { source: 'numerical-library', at: 'four unequal, adaptive quadrature', given: { spreads_s: [1, 1.4, 0.2, 3], window_s: 2 }, expected: '.248615558713' },
  ]);
}); // prettier-ignore

test('three are those three', () => {
  const given = { firstSpread_s: 1, secondSpread_s: 1.4, thirdSpread_s: 0.2, window_s: 2 };
  expect(threeMeetFraction(given)).toBe(spreadsMeetFraction([1, 1.4, 0.2], 2));
});

const spread = fc.oneof(fc.constant(0), fc.double({ min: 0.05, max: 5, noNaN: true }));
const window = fc.double({ min: 0.05, max: 10, noNaN: true });

test('is what arrivals aimed at one moment give, whether or not some of them vary', () => {
  fc.assert(
    fc.property(fc.array(spread, { minLength: 2, maxLength: 4 }), window, (spreads_s, window_s) => {
      const arrivals = spreads_s.map((spread_s) => ({ mean_s: 0, spread_s }));
      expect(spreadsMeetFraction(spreads_s, window_s)).toBeCloseTo(allMeetFraction({ arrivals, window_s }), 6);
    }),
  );
});

test('equal cues meet as equal rigs do', () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 4 }), fc.double({ min: 0.1, max: 2, noNaN: true }), window, (rigCount, spread_s, window_s) => {
      const spreads = new Array<number>(rigCount).fill(spread_s);
      expect(spreadsMeetFraction(spreads, window_s)).toBeCloseTo(rigsMeet({ rigCount, spread_s, window_s }).allFraction, 6);
    }),
  ); // prettier-ignore
});

test('what does not vary always meets, and one thing alone is never late for itself', () => {
  expect(spreadsMeetFraction([0, 0, 0], 1e-9)).toBe(1);
  expect(spreadsMeetFraction([4], 1)).toBe(1);
});

test('a negative spread, or no window, is refused by name', () => {
  const given = { firstSpread_s: 1, secondSpread_s: 1, thirdSpread_s: 1, window_s: 1 };
  expect(() => threeMeetFraction({ ...given, secondSpread_s: -1 })).toThrow('secondSpread_s must be zero or above');
  expect(() => threeMeetFraction({ ...given, window_s: 0 })).toThrow('window_s must be positive');
});
