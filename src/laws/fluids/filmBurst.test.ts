import fc from 'fast-check';
import { expect, test } from 'vitest';
import { filmBurstSpeed_m_per_s } from './filmBurst.ts';

const SOAP = { surfaceTension_N_per_m: 0.03, density_kg_per_m3: 1000 };

test('a soap film of 1 µm opens at 7.746 m/s, one of 10 µm and 0.025 N/m at 2.2, worked by hand', () => {
  expect(filmBurstSpeed_m_per_s({ filmThickness_m: 1e-6, ...SOAP })).toBeCloseTo(7.746, 3);
  expect(filmBurstSpeed_m_per_s({ filmThickness_m: 1e-5, ...SOAP, surfaceTension_N_per_m: 0.025 })).toBeCloseTo(2.2, 1);
});

test('the energy of the film’s two faces is twice what the rim carries off, as the rest goes into heat', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-8, max: 1e-3, noNaN: true }), (filmThickness_m) => {
      const speed_m_per_s = filmBurstSpeed_m_per_s({ filmThickness_m, ...SOAP });
      const carried = (SOAP.density_kg_per_m3 * filmThickness_m * speed_m_per_s ** 2) / 2;
      expect((2 * SOAP.surfaceTension_N_per_m) / carried).toBeCloseTo(2, 9);
    }),
  );
});

test('faults are refused by name', () => {
  expect(() => filmBurstSpeed_m_per_s({ filmThickness_m: 0 })).toThrow('filmThickness_m must be positive');
  expect(() => filmBurstSpeed_m_per_s({ filmThickness_m: 1, density_kg_per_m3: -1 })).toThrow('density_kg_per_m3 must');
  expect(() => filmBurstSpeed_m_per_s({ filmThickness_m: 1, surfaceTension_N_per_m: 0 })).toThrow(
    'surfaceTension_N_per_m',
  );
});
