import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { fallSpeed_m_per_s, fallTime_s } from '../motion/fall.ts';
import { flightOf } from '../motion/flight.ts';
import { pourFrontOf } from './pourFront.ts';

describe('published values', () => {
  published('speed after a fall with a start', (given: Parameters<typeof pourFrontOf>[0]) => pourFrontOf(given).arrivalSpeed_m_per_s, [
    {
      source: 'throw-textbook',
      at: 'rock thrown down at 13.0 m/s, 5.10 m lower',
      given: { fallHeight_m: 5.1, speed_m_per_s: 13, gravity_m_per_s2: 9.8 },
      expected: '16.4',
    },
  ]);
  published('time of a fall with a start', (given: Parameters<typeof pourFrontOf>[0]) => pourFrontOf(given).pourTime_s, [
    {
      source: 'throw-textbook',
      at: 'rock thrown down at 8.00 m/s from a cliff of 8.26 m',
      given: { fallHeight_m: 8.26, speed_m_per_s: 8, gravity_m_per_s2: 9.8 },
      expected: '.717',
    },
  ]);
}); // prettier-ignore

test('it falls as anything does, and a pour with a start is a throw straight down', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-3, max: 3, noNaN: true }), fc.double({ min: 0.01, max: 5, noNaN: true }), (fallHeight_m, speed_m_per_s) => {
      const still = pourFrontOf({ fallHeight_m });
      expect(still.pourTime_s).toBeCloseTo(fallTime_s({ fallHeight_m }), 12);
      expect(still.arrivalSpeed_m_per_s).toBeCloseTo(fallSpeed_m_per_s({ fallHeight_m }), 12);
      const thrown = flightOf({ distance_m: fallHeight_m, speed_m_per_s, angle_deg: -90 });
      const poured = pourFrontOf({ fallHeight_m, speed_m_per_s });
      expect(poured.pourTime_s).toBeCloseTo(thrown.flightTime_s, 9);
      expect(poured.arrivalSpeed_m_per_s).toBeCloseTo(thrown.arrivalSpeed_m_per_s, 9);
    }),
  ); // prettier-ignore
});

test('a pour that drops nowhere is there at once, and what has no meaning is refused by name', () => {
  expect(pourFrontOf({ fallHeight_m: 0, speed_m_per_s: 0 })).toEqual({ pourTime_s: 0, arrivalSpeed_m_per_s: 0 });
  expect(() => pourFrontOf({ fallHeight_m: -1 })).toThrow('fallHeight_m must be zero or above');
  expect(() => pourFrontOf({ fallHeight_m: 1, speed_m_per_s: -1 })).toThrow('speed_m_per_s must be zero or above');
});
