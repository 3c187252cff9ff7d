import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { dimmedFilamentOf } from './dimmed.ts';

describe('published values', () => {
  const at = (lightFraction: number, expected: string) => ({
    source: 'lamp-rerating',
    at: `${lightFraction} of the light`,
    given: { lightFraction },
    expected,
  });
  // A tenth less voltage is a third less light, and a warmer lamp by some 4 %.
  published('voltage', (given: { readonly lightFraction: number }) => dimmedFilamentOf(given).voltageFraction, [
    at(0.7, '0.90'),
  ]);
  published('colour', (given: { readonly lightFraction: number }) => dimmedFilamentOf(given).colourRatio, [
    at(0.7, '0.957'),
  ]);
  // Lit from the crest on, a half-wave carries half its power, and that power's first harmonic is √(π²/16 + 1)·4/π.
  published('ripple', (given: { readonly lightFraction: number }) => dimmedFilamentOf(given).rippleRatio, [
    { source: 'phase-cut', at: 'half of the power', given: { lightFraction: Math.SQRT1_2 ** 3.4 }, expected: '1.6190' },
  ]);
});

test('at full light nothing is cut', () => {
  const { voltageFraction, colourRatio, rippleRatio } = dimmedFilamentOf({ lightFraction: 1 });
  expect([voltageFraction, colourRatio]).toEqual([1, 1]);
  expect(rippleRatio).toBeCloseTo(1, 9);
});

test('the less light, the cooler the filament and the deeper its power swings', () => {
  const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });
  fc.assert(
    fc.property(share, (lightFraction) => {
      const [here, less] = [lightFraction, lightFraction * 0.9].map((light) =>
        dimmedFilamentOf({ lightFraction: light }),
      );
      expect(less!.colourRatio).toBeLessThan(here!.colourRatio);
      expect(less!.rippleRatio).toBeGreaterThan(here!.rippleRatio);
    }),
  );
});

test.each([0, -0.1, 1.01, NaN])('a share of %d is refused', (lightFraction) => {
  expect(() => dimmedFilamentOf({ lightFraction })).toThrow(RangeError);
});
