import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { accelerationAt, dragTerminalSpeed_m_per_s, sphereDragCoefficient, sphereFall } from './sphereDrag.ts';

const WATER_kg_per_m3 = 998.2;

describe('the drag coefficient', () => {
  test.each([
    [0.1, 240],
    [1, 26.5],
    [3, 10.4],
    [10, 4.1],
    [30, 2],
    [100, 1.07],
    [300, 0.65],
    [1000, 0.46],
    [2000, 0.42],
    [5000, 0.385],
    [10_000, 0.41],
    [50_000, 0.488],
  ])('lies within 8 %% of morsi-alexander, measured at Re %f: %f', (reynoldsNumber, measured) => {
    expect(Math.abs(sphereDragCoefficient({ reynoldsNumber }) / measured - 1)).toBeLessThan(0.08);
  });

  test('is Stokes’ 24/Re where flow creeps', () => {
    expect((sphereDragCoefficient({ reynoldsNumber: 1e-6 }) * 1e-6) / 24).toBeCloseTo(1, 4);
  });
});

describe('terminal speed', () => {
  test.each([
    [0.2, 0.72],
    [0.3, 1.17],
    [0.5, 2.06],
    [0.7, 2.87],
    [1, 4.03],
    [1.4, 5.17],
    [2, 6.49],
  ])('of a water drop of %f mm lies within 5 %% of gunn-kinzer, table 2: %f m/s', (diameter_mm, measured_m_per_s) => {
    const speed_m_per_s = dragTerminalSpeed_m_per_s({
      diameter_m: diameter_mm / 1000,
      density_kg_per_m3: WATER_kg_per_m3,
    });
    expect(Math.abs(speed_m_per_s / measured_m_per_s - 1)).toBeLessThan(0.05);
  });

  test.each([
    [3, 8.06],
    [4, 8.83],
    [5, 9.09],
  ])(
    'of a drop of %f mm is too high by the sphere, as drops flatten: gunn-kinzer measured %f m/s',
    (diameter_mm, measured_m_per_s) => {
      const speed_m_per_s = dragTerminalSpeed_m_per_s({
        diameter_m: diameter_mm / 1000,
        density_kg_per_m3: WATER_kg_per_m3,
      });
      expect(speed_m_per_s).toBeGreaterThan(1.1 * measured_m_per_s);
    },
  );

  test.each([
    [0.002, WATER_kg_per_m3, 6.7096285],
    [0.004, WATER_kg_per_m3, 10.5586037],
    [0.025, 950, 23.127871],
    [0.00005, WATER_kg_per_m3, 0.0709577],
  ])(
    'of %f m at %f kg/m³ agrees with an independent root of the same balance, %f m/s',
    (diameter_m, density_kg_per_m3, speed) => {
      expect(dragTerminalSpeed_m_per_s({ diameter_m, density_kg_per_m3 })).toBeCloseTo(speed, 6);
    },
  );

  test('is where acceleration ends, and grows with density', () => {
    const diameter = fc.double({ min: 1e-6, max: 0.05, noNaN: true });
    const density = fc.double({ min: 5, max: 3000, noNaN: true });
    fc.assert(
      fc.property(diameter, density, (diameter_m, density_kg_per_m3) => {
        const sphere = { diameter_m, density_kg_per_m3 };
        const speed_m_per_s = dragTerminalSpeed_m_per_s(sphere);
        expect(Math.abs(accelerationAt(sphereFall(sphere), speed_m_per_s))).toBeLessThan(1e-9);
        const heavier = dragTerminalSpeed_m_per_s({ diameter_m, density_kg_per_m3: 1.1 * density_kg_per_m3 });
        expect(heavier).toBeGreaterThan(speed_m_per_s);
      }),
    );
  });
});

test('faults are refused by name', () => {
  const drop = { diameter_m: 0.004, density_kg_per_m3: WATER_kg_per_m3 };
  const speed = (change: Partial<Parameters<typeof dragTerminalSpeed_m_per_s>[0]>) => () =>
    dragTerminalSpeed_m_per_s({ ...drop, ...change });
  expect(speed({ diameter_m: 0 })).toThrow('diameter_m must be from 0.000001 to 1, got 0');
  expect(speed({ diameter_m: 1e12 })).toThrow('diameter_m must be from');
  expect(speed({ diameter_m: NaN })).toThrow('diameter_m must be from');
  expect(speed({ density_kg_per_m3: 1.2 })).toThrow(
    'density_kg_per_m3 must be above that of air, 1.204, to fall, got 1.2',
  );
  expect(speed({ density_kg_per_m3: 1e12 })).toThrow('density_kg_per_m3 must be from 0 to 100000');
  expect(speed({ airDensity_kg_per_m3: 998 })).toThrow('airDensity_kg_per_m3 must be from 0 to 100');
  expect(speed({ airViscosity_Pa_s: 1 })).toThrow('airViscosity_Pa_s must be from 0.000001 to 0.001');
  expect(speed({ diameter_m: 1 })).toThrow('reynoldsNumber must be from 0 to 300000');
  expect(() => sphereDragCoefficient({ reynoldsNumber: 0 })).toThrow('reynoldsNumber must be positive');
  expect(() => sphereDragCoefficient({ reynoldsNumber: 4e5 })).toThrow('reynoldsNumber must be from 0 to 300000');
});
