import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { impactTime_s, ohnesorgeNumber, reynoldsNumber, spreadDiameter_m, weberNumber } from './impact.ts';

describe('published values', () => {
  published('weberNumber', weberNumber, [
    {
      source: 'weber-example',
      at: 'a 2 mm drop of water at 5 m/s',
      given: { diameter_m: 0.002, speed_m_per_s: 5, density_kg_per_m3: 998, surfaceTension_N_per_m: 0.0728 },
      expected: '685',
    },
  ]);
  published('reynoldsNumber', reynoldsNumber, [
    {
      source: 'reynolds-examples',
      at: '0.4 Pa·s at 3 m/s in 30 mm',
      given: { diameter_m: 0.03, speed_m_per_s: 3, density_kg_per_m3: 900, viscosity_Pa_s: 0.4 },
      expected: '202.5',
    },
    {
      source: 'reynolds-examples',
      at: '0.38 Pa·s at 2.6 m/s in 25 mm',
      given: { diameter_m: 0.025, speed_m_per_s: 2.6, density_kg_per_m3: 910, viscosity_Pa_s: 0.38 },
      expected: '156',
    },
  ]);
  published('ohnesorgeNumber', ohnesorgeNumber, [
    { source: 'ohnesorge-article', at: 'a raindrop of 3 mm', given: { diameter_m: 0.003 }, expected: '0.002' },
  ]);
});

test('a 4 mm drop of water at 3.13 m/s has We 537.32, Re 12,472.5 and falls its diameter in 1.278 ms, by an independent numpy reckoning', () => {
  const drop = { diameter_m: 0.004, speed_m_per_s: 3.13 };
  expect(weberNumber(drop)).toBeCloseTo(537.32, 2);
  expect(reynoldsNumber(drop)).toBeCloseTo(12_472.5, 1);
  expect(impactTime_s(drop) * 1e3).toBeCloseTo(1.278, 3);
});

const size = fc.double({ min: 1e-4, max: 0.05, noNaN: true });
const speed = fc.double({ min: 0.01, max: 30, noNaN: true });
const liquid = fc.record({
  density_kg_per_m3: fc.double({ min: 600, max: 1500, noNaN: true }),
  viscosity_Pa_s: fc.double({ min: 1e-4, max: 20, noNaN: true }),
  surfaceTension_N_per_m: fc.double({ min: 0.01, max: 0.5, noNaN: true }),
});

test('the Ohnesorge number is the root of the Weber number over the Reynolds number, whatever the speed', () => {
  fc.assert(
    fc.property(size, speed, liquid, (diameter_m, speed_m_per_s, of) => {
      const drop = { diameter_m, speed_m_per_s, ...of };
      expect(Math.sqrt(weberNumber(drop)) / reynoldsNumber(drop) / ohnesorgeNumber(drop)).toBeCloseTo(1, 9);
    }),
  );
});

test('four times the speed spreads a drop twice as wide', () => {
  fc.assert(
    fc.property(size, speed, (diameter_m, speed_m_per_s) => {
      const once = spreadDiameter_m({ diameter_m, speed_m_per_s });
      expect(spreadDiameter_m({ diameter_m, speed_m_per_s: 4 * speed_m_per_s }) / once).toBeCloseTo(2, 9);
    }),
  );
});

test('the clock of an impact ticks slower for large drops and faster for fast ones', () => {
  expect(impactTime_s({ diameter_m: 0.004, speed_m_per_s: 2 })).toBe(0.002);
  expect(impactTime_s({ diameter_m: 0.008, speed_m_per_s: 2 })).toBe(0.004);
  expect(impactTime_s({ diameter_m: 0.004, speed_m_per_s: 4 })).toBe(0.001);
});

test('faults are refused by name', () => {
  const drop = { diameter_m: 0.004, speed_m_per_s: 3 };
  expect(() => weberNumber({ ...drop, speed_m_per_s: 0 })).toThrow('speed_m_per_s must be positive');
  expect(() => weberNumber({ ...drop, surfaceTension_N_per_m: -1 })).toThrow('surfaceTension_N_per_m must be positive');
  expect(() => reynoldsNumber({ ...drop, viscosity_Pa_s: NaN })).toThrow('viscosity_Pa_s must be positive');
  expect(() => ohnesorgeNumber({ diameter_m: 0 })).toThrow('diameter_m must be positive');
  expect(() => impactTime_s({ ...drop, speed_m_per_s: Infinity })).toThrow('speed_m_per_s must be positive and finite');
  expect(() => spreadDiameter_m({ ...drop, density_kg_per_m3: 0 })).toThrow('density_kg_per_m3 must be positive');
});
