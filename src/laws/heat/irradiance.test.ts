import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import {
  infraredOfLamp_W_per_m2,
  irradianceOfLamp_W_per_m2,
  irradianceOfLight_W_per_m2,
  LAMP_EFFICACY_lm_per_W,
  lampHeatOf,
} from './irradiance.ts';

describe('published values', () => {
  published(
    'efficacy of the radiation',
    (lux: number) => lux / irradianceOfLight_W_per_m2({ illuminance_lx: lux, efficacy_lm_per_W: 683 }),
    [{ source: 'efficacy-abstract', at: 'green light of 555 nm, 683 lm/W', given: 68_300, expected: '683' }],
  );
});

test('100 klx weighs 3690 W/m² of tungsten, 1110 of daylight discharge and 333 of diodes, worked by hand', () => {
  const of = (lamp: 'tungsten' | 'discharge' | 'led') => irradianceOfLamp_W_per_m2({ illuminance_lx: 1e5, lamp });
  expect(of('tungsten')).toBeCloseTo(3690, 0);
  expect(of('discharge')).toBeCloseTo(1111, 0);
  expect(of('led')).toBeCloseTo(333, 0);
});

test('white light of diodes lies among the 250 to 370 lm/W that a study gives for white light, and hotter lamps below it', () => {
  const { tungsten, discharge, led } = LAMP_EFFICACY_lm_per_W;
  expect(led).toBeGreaterThan(250);
  expect(led).toBeLessThan(370);
  expect(tungsten).toBeLessThan(discharge);
  expect(discharge).toBeLessThan(led);
});

test('tungsten’s efficacy is that of a black body at 3200 K, by Planck’s law and the sensitivity of the eye', () => {
  // A Gauss curve through the eye’s sensitivity, good to a few per cent; 683 lm/W at its top.
  const radiated = (from: number, to: number, weight: (l: number) => number) => {
    let sum = 0;
    for (let nm = from; nm < to; nm += 1) {
      const l = (nm + 0.5) * 1e-9;
      sum += (weight(l) * 1e-9) / (l ** 5 * Math.expm1(0.0143878 / (l * 3200)));
    }
    return sum;
  };
  const eye = radiated(380, 780, (l) => 1.019 * Math.exp(-285.4 * (l * 1e6 - 0.559) ** 2));
  const all = radiated(150, 60_000, () => 1);
  expect((683 * eye) / all / LAMP_EFFICACY_lm_per_W.tungsten).toBeCloseTo(1, 1);
});

test('infrared is what a kind of lamp weighs beyond the part that is seen: nine tenths of tungsten, none of diodes', () => {
  const share = (lamp: 'tungsten' | 'discharge' | 'led') =>
    infraredOfLamp_W_per_m2({ illuminance_lx: 1e5, lamp }) / irradianceOfLamp_W_per_m2({ illuminance_lx: 1e5, lamp });
  expect(share('tungsten')).toBeCloseTo(0.91, 2);
  expect(share('discharge')).toBeCloseTo(0.7, 2);
  expect(share('led')).toBe(0);
});

test('the law of one kind is the law of all with that kind chosen', () => {
  for (const lamp of ['tungsten', 'discharge', 'led'] as const)
    expect(lampHeatOf(lamp).compute({ illuminance_lx: 4e4 })).toBe(
      irradianceOfLamp_W_per_m2({ illuminance_lx: 4e4, lamp }),
    );
});

test('what has no meaning is refused by name', () => {
  expect(() => irradianceOfLight_W_per_m2({ illuminance_lx: -1, efficacy_lm_per_W: 90 })).toThrow(
    'illuminance_lx must',
  );
  expect(() => irradianceOfLight_W_per_m2({ illuminance_lx: 1, efficacy_lm_per_W: 0 })).toThrow(
    'efficacy_lm_per_W must',
  );
  expect(() => irradianceOfLamp_W_per_m2({ illuminance_lx: 1, lamp: 'candle' as 'led' })).toThrow(
    'lamp must be one of tungsten, discharge, led, got candle',
  );
});
