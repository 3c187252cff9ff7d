import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { relaxationTime_s, stoppingDistance_m } from './powder.ts';

const UNIT = { density_kg_per_m3: 1000, speed_m_per_s: 10 };

describe('published values', () => {
  const centimetres = (diameter_m: number) => 100 * stoppingDistance_m({ ...UNIT, diameter_m });
  published('stopping distance in centimetres', centimetres, [
    { source: 'aerosol-course', at: 'table, 10 µm thrown at 10 m/s', given: 10e-6, expected: '0.23' },
    { source: 'aerosol-course', at: 'table, 100 µm thrown at 10 m/s', given: 100e-6, expected: '12.7' },
  ]);
});

test('a grain of 50 µm and 1500 kg/m³ follows the air after 11.5 ms, worked by hand', () => {
  expect(relaxationTime_s({ diameter_m: 50e-6, density_kg_per_m3: 1500 }) * 1000).toBeCloseTo(11.5, 1);
});

const grain = fc.double({ min: 1e-6, max: 2e-4, noNaN: true });
const speed = fc.double({ min: 0.01, max: 50, noNaN: true });

test('no grain flies farther than speed times relaxation time, and a slow fine one just so far', () => {
  fc.assert(
    fc.property(grain, speed, (diameter_m, speed_m_per_s) => {
      const thrown = { diameter_m, density_kg_per_m3: 1500, speed_m_per_s };
      const creeping_m = speed_m_per_s * relaxationTime_s(thrown);
      expect(stoppingDistance_m(thrown)).toBeLessThanOrEqual(creeping_m);
    }),
  );
  const fine = { diameter_m: 1e-6, density_kg_per_m3: 1500, speed_m_per_s: 0.001 };
  expect(stoppingDistance_m(fine) / (0.001 * relaxationTime_s(fine))).toBeCloseTo(1, 2);
});

test('the distance is that of a grain slowed step by step by the drag the formula rests on, Stokes’ times 1 + Re^⅔/6', () => {
  const [diameter_m, density_kg_per_m3, speed_m_per_s] = [80e-6, 1200, 12];
  const time_s = relaxationTime_s({ diameter_m, density_kg_per_m3 });
  let [speed, distance_m] = [speed_m_per_s, 0];
  const step_s = time_s / 20_000;
  while (speed > 1e-5) {
    const middle =
      speed - (speed / time_s) * (1 + ((1.204 * speed * diameter_m) / 1.813e-5) ** (2 / 3) / 6) * (step_s / 2);
    distance_m += middle * step_s;
    speed -= (middle / time_s) * (1 + ((1.204 * middle * diameter_m) / 1.813e-5) ** (2 / 3) / 6) * step_s;
  }
  expect(stoppingDistance_m({ diameter_m, density_kg_per_m3, speed_m_per_s }) / distance_m).toBeCloseTo(1, 4);
});

test('the distance grows smoothly where its two ways of reckoning meet', () => {
  const at = (speed_m_per_s: number) =>
    stoppingDistance_m({ diameter_m: 1e-5, density_kg_per_m3: 1000, speed_m_per_s });
  // Re^⅓/√6 is 0.05 at a Reynolds number of 0.001837, here 0.00277 m/s.
  const meeting_m_per_s = ((0.05 * Math.sqrt(6)) ** 3 * 1.813e-5) / (1.204 * 1e-5);
  const below = at(meeting_m_per_s * (1 - 1e-6));
  const above = at(meeting_m_per_s * (1 + 1e-6));
  expect(above / below - 1).toBeGreaterThan(0);
  expect(above / below - 1).toBeLessThan(1e-5);
});

test('faults, and throws faster than the drag is known for, are refused by name', () => {
  expect(() => relaxationTime_s({ diameter_m: 0, density_kg_per_m3: 1 })).toThrow('diameter_m must be positive');
  expect(() => stoppingDistance_m({ ...UNIT, diameter_m: 1e-5, speed_m_per_s: 0 })).toThrow('speed_m_per_s must be');
  expect(() => stoppingDistance_m({ ...UNIT, diameter_m: 0.01 })).toThrow('reynoldsNumber must be from 0 to 1500');
  expect(() => stoppingDistance_m({ ...UNIT, diameter_m: 1e-5, airDensity_kg_per_m3: 0 })).toThrow(
    'airDensity_kg_per_m3',
  );
});
