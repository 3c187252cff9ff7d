import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { printStopNumber } from '../../base/stop.ts';
import { fNumberOfT, tStop } from './tStop.ts';

describe('published values', () => {
  published('T-stop', tStop, [
    {
      source: 'f-number-article',
      at: 'f/2.0 with 75 %',
      given: { fNumber: 2, transmittanceFraction: 0.75 },
      expected: '2.309',
    },
  ]);

  test('f/4 with half the light lost is marked T5.6, as t-number-dictionary prints', () => {
    expect(printStopNumber(tStop({ fNumber: 4, transmittanceFraction: 0.5 }))).toBe('5.6');
  });
});

describe('true of every lens', () => {
  const stop = fc.double({ min: 0.7, max: 64, noNaN: true });
  const transmittance = fc.double({ min: 0.01, max: 1, noNaN: true });

  test('the f-number comes back from the T-stop', () => {
    fc.assert(
      fc.property(stop, transmittance, (fNumber, transmittanceFraction) => {
        const marked = tStop({ fNumber, transmittanceFraction });
        expect(marked).toBeGreaterThanOrEqual(fNumber);
        expect(fNumberOfT({ tStop: marked, transmittanceFraction }) / fNumber).toBeCloseTo(1, 12);
      }),
    );
  });

  test('a lens without loss has one stop', () => {
    fc.assert(
      fc.property(stop, (fNumber) => {
        expect(tStop({ fNumber, transmittanceFraction: 1 })).toBe(fNumber);
      }),
    );
  });
});

test('what has no meaning is refused by name', () => {
  expect(() => tStop({ fNumber: 2, transmittanceFraction: 1.2 })).toThrow(
    'transmittanceFraction must be from 0 to 1, got 1.2',
  );
  expect(() => tStop({ fNumber: 0, transmittanceFraction: 0.8 })).toThrow('fNumber must be positive');
  expect(() => fNumberOfT({ tStop: -2, transmittanceFraction: 0.8 })).toThrow('tStop must be positive');
  expect(() => fNumberOfT({ tStop: 2, transmittanceFraction: 0 })).toThrow('transmittanceFraction must be positive');
});
