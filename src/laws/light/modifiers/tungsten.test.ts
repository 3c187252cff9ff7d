import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../../test/published.ts';
import { tungstenAt, tungstenDimmed, tungstenVoltageFraction } from './tungsten.ts';

describe('published values', () => {
  // The source works a lamp at 1.05 of its current, which it gives as 1.05^1.9 of its voltage.
  const voltageFraction = 1.05 ** 1.9;
  const lamp = () => tungstenAt({ voltageFraction, ratedColour_K: 2900 });
  const worked = (what: string, expected: string) => ({
    source: 'illumination-guide',
    at: `5 % over its current: ${what}`,
    given: {},
    expected,
  });
  published('colour temperature', () => lamp().colour_K, [worked('2900 K becomes 3015 K', '3015')]);
  published('light', () => 1040 * lamp().lightFraction, [worked('1040 lm becomes 1428 lm', '1.43e3')]);
  published('power', () => 65 * lamp().powerFraction, [worked('65 W becomes 75 W', '75')]);
  published('current', () => lamp().currentFraction, [worked('1.05 times', '1.05')]);
  published(
    'light of a halogen lamp',
    () => 100 * tungstenAt({ voltageFraction: 1.05, lightPowerRatio: 3 }).lightFraction,
    [
      {
        source: 'halogen-article',
        at: '5 % over its voltage, about 15 % more, the cube of it',
        given: {},
        expected: '1.2e2',
      },
    ],
  );
});

const voltage = fc.double({ min: 0.1, max: 1, noNaN: true });

test('less voltage is less light, warmer, less power and current, and a longer life', () => {
  fc.assert(
    fc.property(voltage, fc.double({ min: 1.001, max: 1.2, noNaN: true }), (voltageFraction, more) => {
      const low = tungstenAt({ voltageFraction });
      const high = tungstenAt({ voltageFraction: voltageFraction * more });
      for (const key of ['lightFraction', 'light_stops', 'colour_K', 'powerFraction', 'currentFraction'] as const)
        expect(low[key]).toBeLessThan(high[key]);
      expect(low.lifeRatio).toBeGreaterThan(high.lifeRatio);
    }),
  );
});

test('at its own voltage a lamp is what it says', () => {
  expect(tungstenAt({ voltageFraction: 1 })).toEqual({
    lightFraction: 1,
    light_stops: 0,
    colour_K: 3200,
    powerFraction: 1,
    currentFraction: 1,
    lifeRatio: 1,
  });
});

test('the voltage for so many stops down gives that many', () => {
  fc.assert(
    fc.property(fc.double({ min: -0.5, max: 10, noNaN: true }), (dim_stops) => {
      const voltageFraction = tungstenVoltageFraction({ dim_stops });
      expect(tungstenAt({ voltageFraction }).light_stops).toBeCloseTo(-dim_stops, 9);
    }),
  );
});

test('half the level is half the voltage, a quarter of the light or half of it, by the dimmer’s curve', () => {
  expect(tungstenDimmed({ levelFraction: 0.5, curve: 'voltage' }).voltageFraction).toBe(0.5);
  expect(tungstenDimmed({ levelFraction: 0.5, curve: 'square' }).lightFraction).toBeCloseTo(0.25, 12);
  expect(tungstenDimmed({ levelFraction: 0.5, curve: 'light' }).lightFraction).toBeCloseTo(0.5, 12);
});

test('what has no meaning, or lies where nobody fitted the powers, is refused by name', () => {
  expect(() => tungstenAt({ voltageFraction: 0.05 })).toThrow('voltageFraction must be from 0.1 to 1.2');
  expect(() => tungstenAt({ voltageFraction: 1.3 })).toThrow('voltageFraction must be from 0.1 to 1.2');
  expect(() => tungstenAt({ voltageFraction: 1, ratedColour_K: 0 })).toThrow('ratedColour_K must be positive');
  expect(() => tungstenDimmed({ levelFraction: 0 })).toThrow('levelFraction must be positive');
  expect(() => tungstenDimmed({ levelFraction: 0.001, curve: 'voltage' })).toThrow('voltageFraction must be from 0.1');
  expect(() => tungstenDimmed({ levelFraction: 1, curve: 'cube' as 'square' })).toThrow('curve must be one of voltage');
  expect(() => tungstenVoltageFraction({ dim_stops: 20 })).toThrow(
    'dim_stops must leave from a tenth to 1.2 of the voltage',
  );
  expect(() => tungstenVoltageFraction({ dim_stops: 1, lightPowerRatio: 1 })).toThrow('lightPowerRatio must be from 2');
});
