import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { fallSpeed_m_per_s } from './fall.ts';
import { airLaunchSpeed_m_per_s, springLaunchSpeed_m_per_s, throwReachOf } from './launcher.ts';

describe('published values', () => {
  published('springLaunchSpeed_m_per_s', springLaunchSpeed_m_per_s, [
    {
      source: 'spring-exercises',
      at: '250 N/m, 0.08 m, 0.01 kg',
      given: { stiffness_N_per_m: 250, compression_m: 0.08, mass_kg: 0.01 },
      expected: '12.65',
    },
    {
      source: 'spring-exercises',
      at: '30,000 N/m, 4 cm, 45 g',
      given: { stiffness_N_per_m: 30_000, compression_m: 0.04, mass_kg: 0.045 },
      expected: '32.66',
    },
  ]);
});

const AIR = { pressure_Pa: 5e5, bore_m: 0.02, stroke_m: 0.1, mass_kg: 0.1 };

test('800 N/m pushed in by 50 mm throws 100 g at 4.47 m/s; 5 bar on 20 mm over 100 mm, half of it left, at 12.5, worked by hand', () => {
  expect(springLaunchSpeed_m_per_s({ stiffness_N_per_m: 800, compression_m: 0.05, mass_kg: 0.1 })).toBeCloseTo(4.47, 2);
  expect(airLaunchSpeed_m_per_s({ ...AIR, efficiencyFraction: 0.5 })).toBeCloseTo(12.5, 1);
});

const positive = fc.double({ min: 0.01, max: 100, noNaN: true });
const share = fc.double({ min: 0.01, max: 1, noNaN: true });

test('what is thrown carries the share of the work that is left, whether of a spring or of air', () => {
  fc.assert(
    fc.property(
      positive,
      positive,
      positive,
      share,
      (stiffness_N_per_m, compression_m, mass_kg, efficiencyFraction) => {
        const spring = springLaunchSpeed_m_per_s({ stiffness_N_per_m, compression_m, mass_kg, efficiencyFraction });
        const stored = (stiffness_N_per_m * compression_m ** 2) / 2;
        expect((mass_kg * spring ** 2) / 2 / stored).toBeCloseTo(efficiencyFraction, 9);
        const air = airLaunchSpeed_m_per_s({ ...AIR, mass_kg, efficiencyFraction });
        expect((mass_kg * air ** 2) / 2 / (5e5 * Math.PI * 0.01 ** 2 * 0.1)).toBeCloseTo(efficiencyFraction, 9);
      },
    ),
  );
});

test('a throw straight up reaches the height from which a fall gives its speed back, and lands where it left', () => {
  fc.assert(
    fc.property(positive, (speed_m_per_s) => {
      const { height_m, distance_m } = throwReachOf({ speed_m_per_s, angle_deg: 90 });
      fc.pre(height_m <= 1000);
      expect(fallSpeed_m_per_s({ fallHeight_m: height_m }) / speed_m_per_s).toBeCloseTo(1, 9);
      expect(distance_m / height_m).toBeCloseTo(0, 9);
    }),
  );
});

test('no angle throws farther than 45 degrees, and angles as far above it as below throw equally far', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 45, noNaN: true }), (off_deg) => {
      const far = (angle_deg: number) => throwReachOf({ speed_m_per_s: 5, angle_deg }).distance_m;
      expect(far(45 - off_deg)).toBeLessThanOrEqual(throwReachOf({ speed_m_per_s: 5 }).distance_m + 1e-12);
      expect(far(45 - off_deg)).toBeCloseTo(far(45 + off_deg), 9);
    }),
  );
});

test('faults are refused by name', () => {
  const spring = { stiffness_N_per_m: 800, compression_m: 0.05, mass_kg: 0.1 };
  expect(() => springLaunchSpeed_m_per_s({ ...spring, mass_kg: 0 })).toThrow('mass_kg must be positive');
  expect(() => springLaunchSpeed_m_per_s({ ...spring, efficiencyFraction: 1.2 })).toThrow('efficiencyFraction must be');
  expect(() => airLaunchSpeed_m_per_s({ ...AIR, bore_m: -1 })).toThrow('bore_m must be positive');
  expect(() => airLaunchSpeed_m_per_s({ ...AIR, efficiencyFraction: 0 })).toThrow(
    'efficiencyFraction must be positive',
  );
  expect(() => throwReachOf({ speed_m_per_s: 0 })).toThrow('speed_m_per_s must be positive');
  expect(() => throwReachOf({ speed_m_per_s: 1, angle_deg: 91 })).toThrow('angle_deg must be from 0 to 90');
});
