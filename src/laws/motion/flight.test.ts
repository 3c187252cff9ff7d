import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { dragFallSpeed_m_per_s, dragFallTime_s, fallTime_s } from './fall.ts';
import { dragFlightOf, flightOf, type Flight } from './flight.ts';

const time_s = (given: Parameters<typeof flightOf>[0]) => flightOf(given).flightTime_s;

describe('published values', () => {
  published('time to where a throw lands', time_s, [
    {
      source: 'throw-examples',
      at: 'ball thrown at 20 degrees from a cliff: 46.0 m out and 150 m down',
      given: { distance_m: Math.hypot(46.0, 150), speed_m_per_s: 8.4, angle_deg: 20, gravity_m_per_s2: 9.8 },
      expected: '5.83',
    },
    {
      source: 'throw-examples',
      at: 'ball thrown level from 80 m lands 40 m away',
      given: { distance_m: Math.hypot(80, 40), speed_m_per_s: 10, angle_deg: 0, gravity_m_per_s2: 10 },
      expected: '4.00',
    },
    {
      source: 'throw-examples',
      at: 'rock thrown straight up is 8.10 m above',
      given: { distance_m: 8.1, speed_m_per_s: 13, angle_deg: 90, gravity_m_per_s2: 9.8 },
      expected: '1.00',
    },
  ]);
  published('speed where it lands', (given: Parameters<typeof flightOf>[0]) => flightOf(given).arrivalSpeed_m_per_s, [
    {
      source: 'throw-examples',
      at: 'ball thrown level from 80 m lands 40 m away',
      given: { distance_m: Math.hypot(80, 40), speed_m_per_s: 10, angle_deg: 0, gravity_m_per_s2: 10 },
      expected: '41.2',
    },
  ]);
});

describe('a sphere through air, against an independent integration of the same equation (bench/flight.py: scipy, DOP853, tolerance 1e-13)', () => {
  test.each([
    [0.6, 4.5, 30, 0.025, 950, 0.1437974298, 3.94936112],
    [0.3, 6.0, 90, 0.004, 998.2, 0.05304170807, 5.317731758],
    [1.5, 3.0, -20, 0.08, 950, 0.3747193896, 5.443368312],
    [2.0, 12.0, 45, 0.01, 300, 0.2006678369, 8.298782303],
    [0.5, 2.0, 0, 0.0005, 998.2, 0.3333237165, 1.780264998],
    [0.2, 8.0, 10, 0.0001, 1500, 0.4461590804, 0.3545930417],
    [5.0, 9.0, 60, 0.04, 120, 1.504546483, 7.12116979],
  ])('%f m at %f m/s and %f°, %f m across, %f kg/m³: after %f s and %f m/s', (distance_m, speed_m_per_s, angle_deg, diameter_m, density_kg_per_m3, time, speed) => {
    const there = dragFlightOf({ distance_m, speed_m_per_s, angle_deg, diameter_m, density_kg_per_m3 });
    expect(there.flightTime_s / time).toBeCloseTo(1, 6);
    expect(there.arrivalSpeed_m_per_s / speed).toBeCloseTo(1, 6);
  });
}); // prettier-ignore

const speed = fc.double({ min: 0.5, max: 20, noNaN: true });
const distance = fc.double({ min: 0.01, max: 5, noNaN: true });
/** Not so steep that it comes back. */
const angle = fc.double({ min: -90, max: 70, noNaN: true });

test('at its time a throw is as far away as it was to go, and no earlier', () => {
  fc.assert(
    fc.property(distance, speed, angle, (distance_m, speed_m_per_s, angle_deg) => {
      const turn = (angle_deg * Math.PI) / 180;
      const t = time_s({ distance_m, speed_m_per_s, angle_deg, gravity_m_per_s2: 9.8 });
      const away = (at: number) => Math.hypot(speed_m_per_s * Math.cos(turn) * at, speed_m_per_s * Math.sin(turn) * at - 4.9 * at * at); // prettier-ignore
      expect(away(t) / distance_m).toBeCloseTo(1, 9);
      for (const share of [0.25, 0.5, 0.9]) expect(away(share * t)).toBeLessThan(distance_m);
    }),
  );
});

test('thrown down so slowly that it falls, it takes as long as the fall', () => {
  const slow: Flight = { distance_m: 0.5, speed_m_per_s: 1e-9, angle_deg: -90 };
  expect(time_s(slow)).toBeCloseTo(fallTime_s({ fallHeight_m: 0.5 }), 8);
  const ball = { diameter_m: 0.02, density_kg_per_m3: 950 };
  const there = dragFlightOf({ ...slow, speed_m_per_s: 1e-3, ...ball });
  expect(there.flightTime_s).toBeCloseTo(dragFallTime_s({ fallHeight_m: 0.5, ...ball }), 3);
  expect(there.arrivalSpeed_m_per_s).toBeCloseTo(dragFallSpeed_m_per_s({ fallHeight_m: 0.5, ...ball }), 3);
});

test('what is dense enough flies as if there were no air', () => {
  fc.assert(
    fc.property(distance, speed, angle, (distance_m, speed_m_per_s, angle_deg) => {
      const given = { distance_m, speed_m_per_s, angle_deg };
      const there = dragFlightOf({ ...given, diameter_m: 0.05, density_kg_per_m3: 1e5 });
      expect(there.flightTime_s / time_s(given)).toBeCloseTo(1, 2);
    }),
    { numRuns: 40 },
  );
});

test('a throw steeper than 70.5° turns back, and what lies beyond is refused with where that is', () => {
  const straightUp: Flight = { distance_m: 0.4, speed_m_per_s: 2, angle_deg: 90 };
  // v²/2g = 4 / 19.6133
  expect(() => flightOf(straightUp)).toThrow('distance_m must be at most 0.2039, where the throw turns back, got 0.4');
  expect(() => dragFlightOf({ ...straightUp, diameter_m: 0.02, density_kg_per_m3: 950 })).toThrow('where the throw turns back'); // prettier-ignore
  expect(time_s({ ...straightUp, distance_m: 0.2 })).toBeGreaterThan(0);
  // A shallow throw goes on for ever: √8/3 is the sine of 70.5°.
  expect(time_s({ distance_m: 900, speed_m_per_s: 2, angle_deg: 70.5 })).toBeGreaterThan(0);
  expect(() => flightOf({ distance_m: 900, speed_m_per_s: 2, angle_deg: 70.6 })).toThrow('turns back');
});

test('what has no meaning is refused by name', () => {
  const given: Flight = { distance_m: 1, speed_m_per_s: 3, angle_deg: 10 };
  expect(() => flightOf({ ...given, distance_m: 0 })).toThrow('distance_m must be positive');
  expect(() => flightOf({ ...given, distance_m: 2000 })).toThrow('distance_m must be from 0 to 1000');
  expect(() => flightOf({ ...given, speed_m_per_s: NaN })).toThrow('speed_m_per_s must be positive');
  expect(() => flightOf({ ...given, angle_deg: 91 })).toThrow('angle_deg must be from -90 to 90');
  const ball = { diameter_m: 0.02, density_kg_per_m3: 950 };
  expect(() => dragFlightOf({ ...given, ...ball, density_kg_per_m3: 1 })).toThrow('to fall');
  expect(() => dragFlightOf({ ...given, ...ball, speed_m_per_s: 900 })).toThrow('reynoldsNumber must be from 0');
  expect(() => dragFlightOf({ ...given, angle_deg: -10, distance_m: 50, diameter_m: 2e-6, density_kg_per_m3: 950 })).toThrow('while it still flies'); // prettier-ignore
});
