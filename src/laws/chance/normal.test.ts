import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import {
  NINETIETH_SPREADS,
  normalDensity,
  normalQuantile,
  normalShare,
  normalShareBetween,
  scaledErrorComplement,
} from './normal.ts';

const table = (z: number, expected: string) => ({ source: 'normal-table', at: `z = ${z}`, given: z, expected });

describe('published values', () => {
  published('share below', normalShare, [
    table(-3, '.0013'),
    table(-2.57, '.0051'),
    table(-1.96, '.0250'),
    table(-0.85, '.1977'),
    table(-0.44, '.3300'),
    { source: 'function-handbook', at: 'erf 0.5', given: 0.5 * Math.SQRT2, expected: String((1 + 0.52049988) / 2) },
    { source: 'function-handbook', at: 'table 26.1, x = 1', given: 1, expected: '.84134 47460 68543' },
    { source: 'function-handbook', at: 'table 26.1, x = 2', given: 2, expected: '.97724 98680 51821' },
  ]);
  published('spreads to a share', normalQuantile, [
    { source: 'normal-quantile-algorithm', at: 'p = 0.25', given: 0.25, expected: '-0.6744897501960817' },
    { source: 'normal-quantile-algorithm', at: 'p = 0.001', given: 0.001, expected: '-3.0902323061678' },
    { source: 'normal-quantile-algorithm', at: 'p = 1e-20', given: 1e-20, expected: '-9.26234008979841' },
    { source: 'function-handbook', at: 'table 26.5, Q = 0.1', given: 0.9, expected: '1.28155' },
  ]);
});

test('P90 lies the quantile of nine in ten above P50', () => {
  expect(NINETIETH_SPREADS).toBeCloseTo(normalQuantile(0.9), 14);
});

test('series and fraction agree where they meet', () => {
  const [below, above] = [scaledErrorComplement(2.5 - 1e-9), scaledErrorComplement(2.5)];
  expect(Math.abs(below / above - 1)).toBeLessThan(1e-8);
});

test('the quantile undoes the share, both halves mirror each other, and the curve is the slope of the share', () => {
  fc.assert(
    fc.property(fc.double({ min: -8, max: 8, noNaN: true }), (z) => {
      if (z < 0) expect(normalQuantile(normalShare(z))).toBeCloseTo(z, 11);
      expect(normalShare(z) + normalShare(-z)).toBeCloseTo(1, 14);
      const slope = normalShareBetween(z - 1e-4, z + 1e-4) / 2e-4;
      expect(Math.abs(slope - normalDensity(z))).toBeLessThanOrEqual(1e-6 * normalDensity(z));
    }),
  );
});

test('far out, the share between two values keeps its digits, and backwards there is none', () => {
  const far = normalShareBetween(9, 10);
  expect(far / (normalShare(-9) - normalShare(-10))).toBeCloseTo(1, 12);
  expect(far).toBeGreaterThan(0);
  expect(normalShareBetween(1, 0)).toBe(0);
});

test('shares of nothing and of everything have no quantile', () => {
  for (const share of [0, 1, -0.1, NaN]) expect(() => normalQuantile(share)).toThrow('shareFraction must be');
  expect(() => normalShareBetween(NaN, 1)).toThrow('low must be finite');
});
