import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { normalShare } from './normal.ts';
import { PERSON, reactionDelay_s, reactionShareFraction } from './reaction.ts';

const at = (delay_s: number, expected: string) => ({
  source: 'numerical-library',
  at: `exponentially modified normal, 190/20/40 ms at ${delay_s} s`,
  given: { delay_s, normalMean_s: 0.19, normalSpread_s: 0.02, tailMean_s: 0.04 },
  expected,
});

describe('reference values', () => {
  published('share of presses', reactionShareFraction, [at(0.2, '.250214'), at(0.25, '.747381'), at(0.3, '.927560')]);
  published('delay', reactionDelay_s, [
    { source: 'numerical-library', at: 'median', given: { shareFraction: 0.5 }, expected: '.2215' },
    { source: 'numerical-library', at: '95 %', given: { shareFraction: 0.95 }, expected: '.3148' },
  ]);
  published('mean of a person', () => 1000 * (PERSON.normalMean_s + PERSON.tailMean_s), [
    { source: 'reaction-study', at: 'mean as measured, in hundreds of ms', given: {}, expected: '2.3e2' },
  ]);
});

const reaction = fc.record({
  normalMean_s: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
  normalSpread_s: fc.double({ min: 0, max: 0.2, noNaN: true }),
  tailMean_s: fc.double({ min: 0, max: 0.5, noNaN: true }),
});

test('the delay that a share has pressed within gives that share back', () => {
  fc.assert(
    fc.property(reaction, fc.double({ min: 0.001, max: 0.999, noNaN: true }), (given, shareFraction) => {
      fc.pre(given.normalSpread_s > 1e-3 || given.tailMean_s > 1e-3);
      const back = reactionShareFraction({ ...given, delay_s: reactionDelay_s({ ...given, shareFraction }) });
      expect(back).toBeCloseTo(shareFraction, 9);
    }),
  );
});

test('more time never makes a press less likely, and every share lies from 0 to 1, however unlike spread and tail are', () => {
  const wide = fc.record({
    normalSpread_s: fc.double({ min: 0, max: 1e3, noNaN: true }),
    tailMean_s: fc.double({ min: 0, max: 1e-3, noNaN: true }),
    normalMean_s: fc.constant(0),
  });
  const time = fc.double({ min: -50, max: 50, noNaN: true });
  fc.assert(
    fc.property(fc.oneof(reaction, wide), time, time, (given, a, b) => {
      const early = reactionShareFraction({ ...given, delay_s: Math.min(a, b) });
      const late = reactionShareFraction({ ...given, delay_s: Math.max(a, b) });
      expect(late).toBeGreaterThanOrEqual(early - 1e-12);
      expect(early).toBeGreaterThanOrEqual(0);
      expect(late).toBeLessThanOrEqual(1);
    }),
  );
});

test('without a tail it is a normal spread, without a spread a bare tail, without either a step', () => {
  const bare = { normalMean_s: 0.1, normalSpread_s: 0.02, tailMean_s: 0 };
  expect(reactionShareFraction({ ...bare, delay_s: 0.13 })).toBe(normalShare((0.13 - 0.1) / 0.02));
  expect(reactionShareFraction({ ...bare, tailMean_s: 1e-9, delay_s: 0.13 })).toBeCloseTo(normalShare(1.5), 6);
  const tail = { normalMean_s: 0.1, normalSpread_s: 0, tailMean_s: 0.05 };
  expect(reactionShareFraction({ ...tail, delay_s: 0.15 })).toBeCloseTo(1 - Math.exp(-1), 12);
  expect(reactionShareFraction({ ...tail, delay_s: 0.05 })).toBe(0);
  expect(reactionShareFraction({ ...tail, tailMean_s: 0, delay_s: 0.1 })).toBe(1);
});

test('what has no meaning is refused by name', () => {
  expect(() => reactionShareFraction({ delay_s: NaN })).toThrow('delay_s must be finite');
  expect(() => reactionShareFraction({ delay_s: 1, normalSpread_s: -1 })).toThrow('normalSpread_s must be zero or');
  expect(() => reactionDelay_s({ shareFraction: 1 })).toThrow('shareFraction must be from 0');
  expect(() => reactionDelay_s({ shareFraction: 0.5, tailMean_s: -1 })).toThrow('tailMean_s must be zero or above');
});
