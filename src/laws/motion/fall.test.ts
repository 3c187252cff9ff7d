import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import {
  dragFallSpeed_m_per_s,
  dragFallTime_s,
  fallSpeed_m_per_s,
  fallTime_s,
  terminalFallSpeed_m_per_s,
  terminalFallTime_s,
} from './fall.ts';
import { dragTerminalSpeed_m_per_s } from './sphereDrag.ts';

describe('published values', () => {
  const given = { fallHeight_m: 100, terminalSpeed_m_per_s: 50 };
  const at = '100 m at a terminal speed of 50 m/s';
  published('fallSpeed_m_per_s', fallSpeed_m_per_s, [
    { source: 'falling-with-drag', at: '100 m without air', given: { fallHeight_m: 100 }, expected: '44.286906' },
  ]);
  published('terminalFallSpeed_m_per_s', terminalFallSpeed_m_per_s, [
    { source: 'falling-with-drag', at, given, expected: '36.866882' },
  ]);
  published('terminalFallTime_s', terminalFallTime_s, [
    { source: 'falling-with-drag', at, given, expected: '4.816221' },
  ]);
  published('fallTime_s', ({ fallHeight_m }) => 4.816221 - fallTime_s({ fallHeight_m }), [
    {
      source: 'falling-with-drag',
      at: 'time lost to air over 100 m',
      given: { fallHeight_m: 100 },
      expected: '0.300213',
    },
  ]);
});

test.each([
  [0.3, 2.43, 0.247],
  [0.5, 3.13, 0.319],
  [1, 4.43, 0.452],
])('from %f m a thing arrives at %f m/s after %f s, textbook values from memory', (fallHeight_m, speed, time) => {
  expect(Math.abs(fallSpeed_m_per_s({ fallHeight_m }) - speed)).toBeLessThanOrEqual(0.005);
  expect(Math.abs(fallTime_s({ fallHeight_m }) - time)).toBeLessThanOrEqual(0.0005);
});

describe('a sphere in air, against an independent integration of the same equation (scipy, DOP853, tolerance 1e-13)', () => {
  const water = 998.2;
  test.each([
    [1, 0.002, water, 0.4758348933, 3.877770311],
    [1, 0.004, water, 0.4611172882, 4.194281191],
    [0.6, 0.004, water, 0.3546750243, 3.310755619],
    [0.9, 0.025, 950, 0.4296565886, 4.170779258],
    [1, 0.0005, water, 0.6576091325, 1.998306689],
    [0.01, 0.002, water, 0.04525675046, 0.440967116],
    [2, 0.075, 850, 0.6404651386, 6.217748623],
    [20, 0.003, water, 2.907203779, 8.8451522],
    [1, 0.00005, water, 14.10001715, 0.07095766723],
    [0.3, 0.0001, 1500, 0.879646402, 0.3545945276],
  ])('%f m, %f m across, %f kg/m³: %f s, %f m/s', (fallHeight_m, diameter_m, density_kg_per_m3, time, speed) => {
    const given = { fallHeight_m, diameter_m, density_kg_per_m3 };
    expect(dragFallTime_s(given) / time).toBeCloseTo(1, 7);
    expect(dragFallSpeed_m_per_s(given) / speed).toBeCloseTo(1, 7);
  });
});

const height = fc.double({ min: 1e-3, max: 20, noNaN: true });
const diameter = fc.double({ min: 1e-5, max: 0.03, noNaN: true });
const density = fc.double({ min: 20, max: 3000, noNaN: true });

test('air makes every fall slower and longer than none, and never past terminal speed', () => {
  fc.assert(
    fc.property(height, diameter, density, (fallHeight_m, diameter_m, density_kg_per_m3) => {
      const sphere = { diameter_m, density_kg_per_m3 };
      const speed_m_per_s = dragFallSpeed_m_per_s({ fallHeight_m, ...sphere });
      expect(speed_m_per_s).toBeLessThan(fallSpeed_m_per_s({ fallHeight_m }));
      expect(dragFallTime_s({ fallHeight_m, ...sphere })).toBeGreaterThan(fallTime_s({ fallHeight_m }));
      expect(speed_m_per_s).toBeLessThanOrEqual(dragTerminalSpeed_m_per_s(sphere) * (1 + 1e-9));
    }),
  );
});

test('speed on arrival is the rate at which height is gained by falling longer', () => {
  fc.assert(
    fc.property(height, diameter, density, (fallHeight_m, diameter_m, density_kg_per_m3) => {
      const sphere = { diameter_m, density_kg_per_m3 };
      const more_m = fallHeight_m * 1e-3;
      const longer_s =
        dragFallTime_s({ fallHeight_m: fallHeight_m + more_m, ...sphere }) -
        dragFallTime_s({ fallHeight_m: fallHeight_m - more_m, ...sphere });
      expect((2 * more_m) / longer_s / dragFallSpeed_m_per_s({ fallHeight_m, ...sphere })).toBeCloseTo(1, 3);
    }),
  );
});

test('a berry, whose drag coefficient hardly changes, falls as with steady drag at its terminal speed, within 1 %', () => {
  const berry = { diameter_m: 0.025, density_kg_per_m3: 950 };
  const terminalSpeed_m_per_s = dragTerminalSpeed_m_per_s(berry);
  for (const fallHeight_m of [0.1, 0.5, 1, 2, 10]) {
    const steady = { fallHeight_m, terminalSpeed_m_per_s };
    expect(
      Math.abs(dragFallSpeed_m_per_s({ fallHeight_m, ...berry }) / terminalFallSpeed_m_per_s(steady) - 1),
    ).toBeLessThan(0.01);
    expect(Math.abs(dragFallTime_s({ fallHeight_m, ...berry }) / terminalFallTime_s(steady) - 1)).toBeLessThan(0.01);
  }
});

test('with steady drag a short fall is as in no air, and a long one at terminal speed but for vt·ln 2 / g', () => {
  const terminalSpeed_m_per_s = 4;
  const short = { fallHeight_m: 1e-9, terminalSpeed_m_per_s };
  expect(terminalFallSpeed_m_per_s(short) / fallSpeed_m_per_s(short)).toBeCloseTo(1, 9);
  expect(terminalFallTime_s(short) / fallTime_s(short)).toBeCloseTo(1, 9);
  const long = { fallHeight_m: 900, terminalSpeed_m_per_s };
  expect(terminalFallSpeed_m_per_s(long)).toBeCloseTo(4, 12);
  expect(terminalFallTime_s(long)).toBeCloseTo(900 / 4 + (4 * Math.LN2) / 9.80665, 9);
});

test('a fall from no height takes no time', () => {
  const drop = { fallHeight_m: 0, diameter_m: 0.004, density_kg_per_m3: 998.2 };
  expect([fallTime_s(drop), dragFallTime_s(drop), dragFallSpeed_m_per_s(drop)]).toEqual([0, 0, 0]);
  expect(terminalFallTime_s({ fallHeight_m: 0, terminalSpeed_m_per_s: 8 })).toBe(0);
});

test('without air a moon’s sixth of gravity makes a fall √6 times as long', () => {
  const here_s = fallTime_s({ fallHeight_m: 0.7 });
  expect(fallTime_s({ fallHeight_m: 0.7, gravity_m_per_s2: 9.80665 / 6 }) / here_s).toBeCloseTo(Math.sqrt(6), 12);
});

test('absurd falls are refused by name at once', () => {
  const drop = { diameter_m: 0.004, density_kg_per_m3: 998.2 };
  for (const fallHeight_m of [1e12, -1, NaN, Infinity]) {
    const refused = `fallHeight_m must be from 0 to 1000, got ${fallHeight_m}`;
    expect(() => fallSpeed_m_per_s({ fallHeight_m })).toThrow(refused);
    expect(() => fallTime_s({ fallHeight_m })).toThrow(refused);
    expect(() => terminalFallSpeed_m_per_s({ fallHeight_m, terminalSpeed_m_per_s: 8 })).toThrow(refused);
    expect(() => terminalFallTime_s({ fallHeight_m, terminalSpeed_m_per_s: 8 })).toThrow(refused);
    expect(() => dragFallSpeed_m_per_s({ fallHeight_m, ...drop })).toThrow(refused);
    expect(() => dragFallTime_s({ fallHeight_m, ...drop })).toThrow(refused);
  }
  expect(() => fallSpeed_m_per_s({ fallHeight_m: 1, gravity_m_per_s2: 0 })).toThrow(
    'gravity_m_per_s2 must be positive',
  );
  expect(() => terminalFallTime_s({ fallHeight_m: 1, terminalSpeed_m_per_s: 0 })).toThrow(
    'terminalSpeed_m_per_s must be positive',
  );
  expect(() => dragFallTime_s({ fallHeight_m: 1, ...drop, diameter_m: NaN })).toThrow('diameter_m must be from');
  expect(() => dragFallSpeed_m_per_s({ fallHeight_m: 1000, diameter_m: 0.5, density_kg_per_m3: 900 })).toThrow(
    'reynoldsNumber must be from 0 to 300000',
  );
});

test('the slowest fall the law takes, a micrometre of foam over a kilometre, ends and is finite', () => {
  const dust = { fallHeight_m: 1000, diameter_m: 1e-6, density_kg_per_m3: 1.3 };
  expect(dragFallTime_s(dust)).toBeGreaterThan(1e8);
  expect(dragFallTime_s(dust)).toBeLessThan(Infinity);
});
