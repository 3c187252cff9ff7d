import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bubbleRise_m_per_s, slowestBubbleOf } from './bubble.ts';

test('in water a 3 mm bubble rises at 0.25166 m/s and the slowest, 5.4541 mm, at 0.23127, by an independent numpy reckoning', () => {
  expect(bubbleRise_m_per_s({ diameter_m: 0.003 })).toBeCloseTo(0.25166, 5);
  const { diameter_m, speed_m_per_s } = slowestBubbleOf({});
  expect(diameter_m * 1000).toBeCloseTo(5.4541, 4);
  expect(speed_m_per_s).toBeCloseTo(0.23127, 5);
});

test('no bubble is slower than the slowest, in any liquid', () => {
  const tension = fc.double({ min: 0.015, max: 0.08, noNaN: true });
  const density = fc.double({ min: 700, max: 1400, noNaN: true });
  const size = fc.double({ min: 0.001, max: 0.1, noNaN: true });
  fc.assert(
    fc.property(tension, density, size, (surfaceTension_N_per_m, density_kg_per_m3, diameter_m) => {
      const liquid = { surfaceTension_N_per_m, density_kg_per_m3 };
      const slowest = slowestBubbleOf(liquid);
      expect(bubbleRise_m_per_s({ ...liquid, diameter_m })).toBeGreaterThanOrEqual(slowest.speed_m_per_s * (1 - 1e-12));
      expect(bubbleRise_m_per_s({ ...liquid, diameter_m: slowest.diameter_m })).toBeCloseTo(slowest.speed_m_per_s, 12);
    }),
  );
});

test('a large bubble rises as a wave of its length runs, √(g·d/2)', () => {
  expect(bubbleRise_m_per_s({ diameter_m: 0.1 }) / Math.sqrt((9.80665 * 0.1) / 2)).toBeCloseTo(1, 2);
});

test('bubbles too small to wobble, and liquids that are none, are refused by name', () => {
  expect(() => bubbleRise_m_per_s({ diameter_m: 0.0005 })).toThrow('diameter_m must be from 0.001 to 0.1, got 0.0005');
  expect(() => bubbleRise_m_per_s({ diameter_m: NaN })).toThrow('diameter_m must be from');
  expect(() => slowestBubbleOf({ surfaceTension_N_per_m: 0 })).toThrow('surfaceTension_N_per_m must be positive');
  expect(() => slowestBubbleOf({ density_kg_per_m3: -1 })).toThrow('density_kg_per_m3 must be positive');
  expect(() => slowestBubbleOf({ gravity_m_per_s2: Infinity })).toThrow('gravity_m_per_s2 must be positive');
});
