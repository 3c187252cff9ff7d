import fc from 'fast-check';
import { expect, test } from 'vitest';
import { combinedLoss_stops, DIFFUSIONS, GELS, measuredLoss_stops, modifiedLight, SCRIMS } from './losses.ts';

const keys = <Key extends string>(table: Readonly<Record<Key, unknown>>) => Object.keys(table) as Key[];
const light = fc.double({ min: 0.1, max: 1e6, noNaN: true });
const modifiers = fc.record({
  scrim: fc.constantFrom(...keys(SCRIMS)),
  diffusion: fc.constantFrom(...keys(DIFFUSIONS)),
  gel: fc.constantFrom(...keys(GELS)),
  otherLoss_stops: fc.double({ min: -1, max: 5, noNaN: true }),
});

test('each title states the stops that are reckoned with', () => {
  const written: Readonly<Record<string, number>> = { '⅓': 1 / 3, '½': 0.5, '⅔': 2 / 3, '1': 1, '1½': 1.5, '2': 2 };
  for (const table of [SCRIMS, DIFFUSIONS, GELS])
    for (const { title, loss_stops } of Object.values(table))
      if (title === 'none') expect(loss_stops).toBe(0);
      else expect(written[/, (\S+) stops?$/.exec(title)?.[1] ?? ''], title).toBe(loss_stops);
});

test('a half-stop scrim and a two-stop diffusion leave 17.7 of 100, worked by hand', () => {
  const left = modifiedLight({ illuminance_lx: 100, scrim: 'single', diffusion: 'full-white' });
  expect(left.illuminanceLeft_lx).toBeCloseTo(100 / (4 * Math.SQRT2), 12);
  expect(left.loss_stops).toBe(2.5);
});

test('what a meter reads without and with gives back the loss, and shares multiply as stops add', () => {
  fc.assert(
    fc.property(light, modifiers, (illuminance_lx, given) => {
      const { illuminanceLeft_lx, loss_stops, transmittanceFraction } = modifiedLight({ illuminance_lx, ...given });
      expect(measuredLoss_stops({ without_lx: illuminance_lx, with_lx: illuminanceLeft_lx })).toBeCloseTo(
        loss_stops,
        9,
      );
      const one = (key: keyof typeof given) =>
        modifiedLight({ illuminance_lx, [key]: given[key] }).transmittanceFraction;
      const product = one('scrim') * one('diffusion') * one('gel') * one('otherLoss_stops');
      expect(product / transmittanceFraction).toBeCloseTo(1, 12);
    }),
  );
});

test('nothing before the lamp takes nothing, and the order of losses does not matter', () => {
  expect(modifiedLight({ illuminance_lx: 500 }).illuminanceLeft_lx).toBe(500);
  expect(combinedLoss_stops([])).toBe(0);
  expect(combinedLoss_stops([0.5, 2, 1])).toBe(combinedLoss_stops([1, 0.5, 2]));
});

test('what has no meaning is refused by name', () => {
  expect(() => modifiedLight({ illuminance_lx: -1 })).toThrow('illuminance_lx must be zero or above');
  expect(() => modifiedLight({ illuminance_lx: 1, scrim: 'triple' as 'double' })).toThrow(
    'scrim must be one of none, single, double, both, got triple',
  );
  expect(() => modifiedLight({ illuminance_lx: 1, otherLoss_stops: NaN })).toThrow('loss_stops must be finite');
  expect(() => measuredLoss_stops({ without_lx: 1, with_lx: 0 })).toThrow('with_lx must be positive');
});
