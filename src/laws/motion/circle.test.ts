import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { arcOf, rimSpeed_m_per_s, turnAcceleration_m_per_s2 } from './circle.ts';

const INCH_m = 0.0254;
const fullAngle_deg = (halfChord: number, radius: number) => (2 * Math.asin(halfChord / radius) * 180) / Math.PI;

describe('published values', () => {
  published('rimSpeed_m_per_s', rimSpeed_m_per_s, [
    {
      source: 'rim-exercises',
      at: '100 rpm at 0.20 m',
      given: { rotation_rev_per_s: 100 / 60, radius_m: 0.2 },
      expected: '2.094',
    },
  ]);
  const inchesASecond = (given: Parameters<typeof rimSpeed_m_per_s>[0]) => rimSpeed_m_per_s(given) / INCH_m;
  published('rim speed in inches a second', inchesASecond, [
    {
      source: 'rim-exercises',
      at: 'a turn in 0.325 s at 18.5 in',
      given: { rotation_rev_per_s: 1 / 0.325, radius_m: 18.5 * INCH_m },
      expected: '358',
    },
  ]);
  published('bulge of an arc', (given: Parameters<typeof arcOf>[0]) => arcOf(given).bulge_m, [
    {
      source: 'arc-exercises',
      at: 'radius 5, half angle 60°',
      given: { radius_m: 5, angle_deg: 120 },
      expected: '2.5',
    },
    {
      source: 'arc-exercises',
      at: 'radius 6, chord 10',
      given: { radius_m: 6, angle_deg: fullAngle_deg(5, 6) },
      expected: '2.68338',
    },
    {
      source: 'arc-exercises',
      at: 'radius 10, chord 12',
      given: { radius_m: 10, angle_deg: fullAngle_deg(6, 10) },
      expected: '2',
    },
  ]);
  published('turnAcceleration_m_per_s2', turnAcceleration_m_per_s2, [
    { source: 'arc-exercises', at: '12 m/s at 0.5 m', given: { speed_m_per_s: 12, radius_m: 0.5 }, expected: '288' },
    { source: 'arc-exercises', at: '2.3 m/s at 1.8 m', given: { speed_m_per_s: 2.3, radius_m: 1.8 }, expected: '2.94' },
  ]);
});

test('a whole circle is its circumference long, and half of one bulges by its radius', () => {
  expect(arcOf({ radius_m: 0.5, angle_deg: 360 }).arcLength_m).toBeCloseTo(Math.PI, 12);
  expect(arcOf({ radius_m: 0.5, angle_deg: 180 }).bulge_m).toBeCloseTo(0.5, 12);
  expect(arcOf({ radius_m: 0.5, angle_deg: 0 })).toEqual({ arcLength_m: 0, bulge_m: 0 });
});

test('a rim at even speed is pulled in by speed squared over radius, 4π²·f²·r', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 200, noNaN: true }),
      fc.double({ min: 0.01, max: 5, noNaN: true }),
      (turns, radius_m) => {
        const speed_m_per_s = rimSpeed_m_per_s({ rotation_rev_per_s: turns, radius_m });
        const pull = turnAcceleration_m_per_s2({ speed_m_per_s, radius_m });
        expect(pull / ((2 * Math.PI * turns) ** 2 * radius_m)).toBeCloseTo(1, 9);
      },
    ),
  );
});

test('faults are refused by name', () => {
  expect(() => rimSpeed_m_per_s({ rotation_rev_per_s: -1, radius_m: 1 })).toThrow('rotation_rev_per_s must be zero or');
  expect(() => rimSpeed_m_per_s({ rotation_rev_per_s: 1, radius_m: 0 })).toThrow('radius_m must be positive');
  expect(() => arcOf({ radius_m: NaN, angle_deg: 1 })).toThrow('radius_m must be positive');
  expect(() => arcOf({ radius_m: 1, angle_deg: 400 })).toThrow('angle_deg must be from 0 to 360');
  expect(() => turnAcceleration_m_per_s2({ speed_m_per_s: -1, radius_m: 1 })).toThrow('speed_m_per_s must be zero or');
  expect(() => turnAcceleration_m_per_s2({ speed_m_per_s: 1, radius_m: 0 })).toThrow('radius_m must be positive');
});
