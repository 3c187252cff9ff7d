import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LIQUIDS } from './liquids.ts';
import { drySplashOf, filmSplashOf } from './splash.ts';

const DROP = { diameter_m: 0.004, speed_m_per_s: 3.13 };

describe('a 4 mm drop of water at 3.13 m/s, by an independent numpy reckoning of the same criteria', () => {
  test('has K 244.97 on a dry surface, above 57.7, and splashes', () => {
    const { splashParameter, thresholdParameter, splashes } = drySplashOf(DROP);
    expect(splashParameter).toBeCloseTo(244.97, 2);
    expect(thresholdParameter).toBe(57.7);
    expect(splashes).toBe(true);
  });

  test('has 6646 on a film, above 4267 at half a drop deep and below 7980 at a whole one', () => {
    const half = filmSplashOf({ ...DROP, filmDepth_m: 0.002 });
    const whole = filmSplashOf({ ...DROP, filmDepth_m: 0.004 });
    expect(half.splashParameter).toBeCloseTo(6646, 0);
    expect(Math.round(half.thresholdParameter)).toBe(4267);
    expect(half.splashes).toBe(true);
    expect(whole.thresholdParameter).toBe(7980);
    expect(whole.splashes).toBe(false);
  });
});

test('faster never turns a splash into none, deeper never none into a splash', () => {
  const speed = fc.double({ min: 0.1, max: 10, noNaN: true });
  const depth = fc.double({ min: 0.1, max: 1, noNaN: true });
  fc.assert(
    fc.property(speed, speed, depth, depth, (slow, more, shallow, other) => {
      const diameter_m = 0.004;
      const fast = slow + more;
      const [thin, deep] = [Math.min(shallow, other) * diameter_m, Math.max(shallow, other) * diameter_m];
      const film = (speed_m_per_s: number, filmDepth_m: number) =>
        filmSplashOf({ diameter_m, speed_m_per_s, filmDepth_m }).splashes;
      const dry = (speed_m_per_s: number) => drySplashOf({ diameter_m, speed_m_per_s }).splashes;
      if (dry(slow)) expect(dry(fast)).toBe(true);
      if (film(slow, deep)) expect([film(fast, deep), film(slow, thin)]).toEqual([true, true]);
    }),
  );
});

test('honey does not splash where water does', () => {
  const { density_kg_per_m3, viscosity_Pa_s, surfaceTension_N_per_m } = LIQUIDS.honey;
  const honey = { ...DROP, density_kg_per_m3, viscosity_Pa_s, surfaceTension_N_per_m };
  expect(drySplashOf(honey).splashes).toBe(false);
  expect(filmSplashOf({ ...honey, filmDepth_m: 0.002 }).splashes).toBe(false);
});

test('a film outside the depths the criterion was fitted to is refused by name', () => {
  expect(() => filmSplashOf({ ...DROP, filmDepth_m: 0.0003 })).toThrow('depthRatio must be from 0.1 to 1');
  expect(() => filmSplashOf({ ...DROP, filmDepth_m: 0.01 })).toThrow('depthRatio must be from 0.1 to 1, got 2.5');
  expect(() => filmSplashOf({ ...DROP, filmDepth_m: 0 })).toThrow('filmDepth_m must be positive');
  expect(() => drySplashOf({ ...DROP, diameter_m: -1 })).toThrow('diameter_m must be positive');
});
