import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { fallSpeed_m_per_s } from '../motion/fall.ts';
import { effluxSpeed_m_per_s, jetBreakupLength_m, orificeFlow_m3_per_s, thinnedDiameter_m } from './jet.ts';

const diameterOf = (area_m2: number) => Math.sqrt((4 * area_m2) / Math.PI);

describe('published values', () => {
  published('effluxSpeed_m_per_s', effluxSpeed_m_per_s, [
    { source: 'efflux-examples', at: '14.0 m', given: { head_m: 14, velocityFactor: 1 }, expected: '16.6' },
    {
      source: 'efflux-examples',
      at: '12.0 m with gravity 9.81',
      given: { head_m: 12, velocityFactor: 1, gravity_m_per_s2: 9.81 },
      expected: '15.34',
    },
  ]);
  published('orificeFlow_m3_per_s', orificeFlow_m3_per_s, [
    {
      source: 'efflux-examples',
      at: '12.0 m through a tap of 1.85 cm, nothing lost',
      given: { head_m: 12, diameter_m: 0.0185, dischargeFactor: 1, gravity_m_per_s2: 9.81 },
      expected: '4.12e-3',
    },
    {
      source: 'orifice-examples',
      at: '6 m through 60 mm, coefficients of contraction 0.68 and of velocity 0.92',
      given: { head_m: 6, diameter_m: 0.06, dischargeFactor: 0.68 * 0.92 },
      expected: '0.0192',
    },
    {
      source: 'orifice-examples',
      at: '3 m through 0.01 m² with 0.64',
      given: { head_m: 3, diameter_m: diameterOf(0.01), dischargeFactor: 0.64 },
      expected: '0.049',
    },
  ]);
  published('thinnedDiameter_m', thinnedDiameter_m, [
    {
      source: 'faucet-exercise',
      at: '8 mm at 0.4 m/s, 0.2 m lower',
      given: { diameter_m: 0.008, speed_m_per_s: 0.4, fallHeight_m: 0.2 },
      expected: '3.6e-3',
    },
  ]);
  const areaOf = (given: Parameters<typeof thinnedDiameter_m>[0]) => (Math.PI * thinnedDiameter_m(given) ** 2) / 4;
  published('area of a thinned jet', areaOf, [
    {
      source: 'faucet-exercise',
      at: '1e-4 m² at 1.0 m/s, 0.15 m lower with gravity 10',
      given: { diameter_m: diameterOf(1e-4), speed_m_per_s: 1, fallHeight_m: 0.15, gravity_m_per_s2: 10 },
      expected: '5e-5',
    },
  ]);
});

test('a 3 mm jet of water at 1.5 m/s stays whole for about 0.35 m, worked by hand', () => {
  expect(jetBreakupLength_m({ diameter_m: 0.003, speed_m_per_s: 1.5 })).toBeCloseTo(0.346, 3);
});

const head = fc.double({ min: 1e-3, max: 5, noNaN: true });
const size = fc.double({ min: 1e-4, max: 0.1, noNaN: true });

test('the ideal speed is that of a fall from the surface', () => {
  fc.assert(
    fc.property(head, (head_m) => {
      expect(effluxSpeed_m_per_s({ head_m, velocityFactor: 1 })).toBeCloseTo(
        fallSpeed_m_per_s({ fallHeight_m: head_m }),
        12,
      );
    }),
  );
});

test('a thinning jet carries the same flow at every height', () => {
  fc.assert(
    fc.property(
      size,
      fc.double({ min: 0.05, max: 5, noNaN: true }),
      head,
      (diameter_m, speed_m_per_s, fallHeight_m) => {
        const lower_m = thinnedDiameter_m({ diameter_m, speed_m_per_s, fallHeight_m });
        const lower_m_per_s = Math.sqrt(speed_m_per_s ** 2 + 2 * 9.80665 * fallHeight_m);
        expect((lower_m ** 2 * lower_m_per_s) / (diameter_m ** 2 * speed_m_per_s)).toBeCloseTo(1, 9);
      },
    ),
  );
});

test('a jet at its mouth is as thick as its mouth, and an empty vessel pours nothing', () => {
  expect(thinnedDiameter_m({ diameter_m: 0.01, speed_m_per_s: 1, fallHeight_m: 0 })).toBe(0.01);
  expect(effluxSpeed_m_per_s({ head_m: 0 })).toBe(0);
  expect(orificeFlow_m3_per_s({ head_m: 0, diameter_m: 0.01 })).toBe(0);
});

test('faults are refused by name', () => {
  expect(() => effluxSpeed_m_per_s({ head_m: -0.1 })).toThrow('head_m must be zero or above');
  expect(() => effluxSpeed_m_per_s({ head_m: 1, velocityFactor: 1.1 })).toThrow('velocityFactor must be from 0 to 1');
  expect(() => effluxSpeed_m_per_s({ head_m: 1, gravity_m_per_s2: 0 })).toThrow('gravity_m_per_s2 must be positive');
  expect(() => orificeFlow_m3_per_s({ head_m: 1, diameter_m: 0 })).toThrow('diameter_m must be positive');
  expect(() => orificeFlow_m3_per_s({ head_m: 1, diameter_m: 1, dischargeFactor: 2 })).toThrow(
    'dischargeFactor must be',
  );
  expect(() => thinnedDiameter_m({ diameter_m: 1, speed_m_per_s: 0, fallHeight_m: 1 })).toThrow(
    'speed_m_per_s must be',
  );
  expect(() => thinnedDiameter_m({ diameter_m: 1, speed_m_per_s: 1, fallHeight_m: -1 })).toThrow(
    'fallHeight_m must be',
  );
  expect(() => jetBreakupLength_m({ diameter_m: 0, speed_m_per_s: 1 })).toThrow('diameter_m must be positive');
});
