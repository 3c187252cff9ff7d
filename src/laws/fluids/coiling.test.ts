import fc from 'fast-check';
import { expect, test } from 'vitest';
import { gravityCoiling_rev_per_s, inertialCoiling_rev_per_s } from './coiling.ts';

const HONEY = { flow_m3_per_s: 1e-7, threadRadius_m: 0.5e-3, viscosity_Pa_s: 10, density_kg_per_m3: 1400 };

test('a thread whose numbers are all one turns 1/2π times a second by inertia, and ⁴√g times that by weight', () => {
  const one = { flow_m3_per_s: 1, threadRadius_m: 1, viscosity_Pa_s: 1, density_kg_per_m3: 1 };
  expect(inertialCoiling_rev_per_s(one)).toBeCloseTo(1 / (2 * Math.PI), 12);
  expect(gravityCoiling_rev_per_s({ ...one, gravity_m_per_s2: 16 })).toBeCloseTo(1 / Math.PI, 12);
});

test('a thread of honey a millimetre thick coils between a few and some tens of turns a second, as is seen on toast', () => {
  for (const turns of [inertialCoiling_rev_per_s(HONEY), gravityCoiling_rev_per_s(HONEY)]) {
    expect(turns).toBeGreaterThan(3);
    expect(turns).toBeLessThan(100);
  }
});

test('by inertia 8 times the flow coils 16 times as fast, a thread half as thick 2^10/3; by weight 16 times the flow 8 times, half as thick four', () => {
  const flow = fc.double({ min: 1e-9, max: 1e-4, noNaN: true });
  const radius = fc.double({ min: 1e-4, max: 0.01, noNaN: true });
  fc.assert(
    fc.property(flow, radius, (flow_m3_per_s, threadRadius_m) => {
      const thread = { ...HONEY, flow_m3_per_s, threadRadius_m };
      const more = (times: number) => ({ ...thread, flow_m3_per_s: times * flow_m3_per_s });
      const thin = { ...thread, threadRadius_m: threadRadius_m / 2 };
      const inertial = inertialCoiling_rev_per_s(thread);
      const weighed = gravityCoiling_rev_per_s(thread);
      expect(inertialCoiling_rev_per_s(more(8)) / inertial).toBeCloseTo(16, 6);
      expect(inertialCoiling_rev_per_s(thin) / inertial).toBeCloseTo(2 ** (10 / 3), 6);
      expect(gravityCoiling_rev_per_s(more(16)) / weighed).toBeCloseTo(8, 6);
      expect(gravityCoiling_rev_per_s(thin) / weighed).toBeCloseTo(4, 6);
    }),
  );
});

test('thicker liquid coils more slowly', () => {
  const thicker = { ...HONEY, viscosity_Pa_s: 20 };
  expect(inertialCoiling_rev_per_s(thicker)).toBeLessThan(inertialCoiling_rev_per_s(HONEY));
  expect(gravityCoiling_rev_per_s(thicker)).toBeLessThan(gravityCoiling_rev_per_s(HONEY));
});

test('faults are refused by name', () => {
  expect(() => inertialCoiling_rev_per_s({ ...HONEY, threadRadius_m: 0 })).toThrow('threadRadius_m must be positive');
  expect(() => inertialCoiling_rev_per_s({ ...HONEY, flow_m3_per_s: NaN })).toThrow('flow_m3_per_s must be positive');
  expect(() => gravityCoiling_rev_per_s({ ...HONEY, viscosity_Pa_s: -1 })).toThrow('viscosity_Pa_s must be positive');
  expect(() => gravityCoiling_rev_per_s({ ...HONEY, gravity_m_per_s2: 0 })).toThrow('gravity_m_per_s2 must be');
});
