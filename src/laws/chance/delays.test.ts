import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { arrivalSpread_s, delayAtShare_s, delaysInARow, delaySpread_s, sumOfDelays } from './delays.ts';

describe('published values', () => {
  published('delay within which a share keeps', delayAtShare_s, [
    {
      source: 'normal-table',
      at: 'z = 0.85 leaves .1977, so .8023 keep within; P50 20 ms, spread 10 ms',
      given: { median_s: 0.02, ninetieth_s: 0.02 + 0.012815515655446, shareFraction: 0.8023 },
      expected: '.0285',
    },
    {
      source: 'normal-table',
      at: 'z = -1.96 leaves .0250',
      given: { median_s: 0.02, ninetieth_s: 0.02 + 0.012815515655446, shareFraction: 0.025 },
      expected: '.0004',
    },
  ]);
  published('P90 in spreads', () => 1 / delaySpread_s({ median_s: 0, ninetieth_s: 1 }), [
    { source: 'function-handbook', at: 'table 26.5, Q = 0.1', given: {}, expected: '1.28155' },
  ]);
});

test('three delays with spreads of 2, 3 and 6 ms vary by 7 ms together, worked by hand', () => {
  const of = (spread_ms: number) => (1.2815515655446 * spread_ms) / 1000;
  const sum = delaysInARow({
    firstMedian_s: 0.01,
    firstNinetieth_s: 0.01 + of(2),
    secondMedian_s: 0.02,
    secondNinetieth_s: 0.02 + of(3),
    thirdMedian_s: 0.03,
    thirdNinetieth_s: 0.03 + of(6),
  });
  expect(sum.spread_s).toBeCloseTo(0.007, 12);
  expect(sum.median_s).toBeCloseTo(0.06, 12);
});

test('a release of 3 ms and a height of 12 mm at 3 m/s vary the arrival by 5 ms, worked by hand', () => {
  expect(arrivalSpread_s({ latencySpread_s: 0.003, heightSpread_m: 0.012, speed_m_per_s: 3 })).toBeCloseTo(0.005, 12);
});

const delay = fc
  .tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 0.2, noNaN: true }))
  .map(([median_s, above_s]) => ({ median_s, ninetieth_s: median_s + above_s }));

test('half keep within P50 and nine in ten within P90', () => {
  fc.assert(
    fc.property(delay, (given) => {
      expect(delayAtShare_s({ ...given, shareFraction: 0.5 })).toBeCloseTo(given.median_s, 12);
      expect(delayAtShare_s({ ...given, shareFraction: 0.9 })).toBeCloseTo(given.ninetieth_s, 12);
    }),
  );
});

test('delays in a row vary less than their P90s added, more than any one of them, and in any order the same', () => {
  fc.assert(
    fc.property(fc.array(delay, { minLength: 1, maxLength: 6 }), (delays) => {
      const sum = sumOfDelays(delays);
      const added_s = delays.reduce((total, { ninetieth_s }) => total + ninetieth_s, 0);
      expect(sum.ninetieth_s).toBeLessThanOrEqual(added_s + 1e-12);
      for (const each of delays) expect(delaySpread_s(sum)).toBeGreaterThanOrEqual(delaySpread_s(each) - 1e-12);
      expect(sumOfDelays(delays.toReversed()).ninetieth_s).toBeCloseTo(sum.ninetieth_s, 12);
    }),
  );
});

test('what has no meaning is refused by name', () => {
  expect(() => delaySpread_s({ median_s: 0.03, ninetieth_s: 0.02 })).toThrow(
    'ninetieth_s must be at or above its P50, 0.03',
  );
  expect(() =>
    delaysInARow({ firstMedian_s: 0, firstNinetieth_s: 1, secondMedian_s: 2, secondNinetieth_s: 1 }),
  ).toThrow('secondNinetieth_s must be at or above its P50, 2, got 1');
  expect(() => delaySpread_s({ median_s: NaN, ninetieth_s: 0.02 })).toThrow('median_s must be finite');
  expect(() => delayAtShare_s({ median_s: 0, ninetieth_s: 1, shareFraction: 1 })).toThrow('shareFraction must be from');
  expect(() => arrivalSpread_s({ latencySpread_s: -1, speed_m_per_s: 1 })).toThrow('latencySpread_s must be zero or');
  expect(() => arrivalSpread_s({ latencySpread_s: 0, speed_m_per_s: 0 })).toThrow('speed_m_per_s must be positive');
});
