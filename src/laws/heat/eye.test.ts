import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import {
  blueLightDistance_m,
  blueLightTime_s,
  blueRadiance_W_per_m2_sr,
  infraredEyeLimit_W_per_m2,
  infraredEyeTime_s,
  irradianceDistance_m,
  retinalHeatLimit_W_per_m2_sr,
  skinHeatTime_s,
  smallBlueLightTime_s,
  ultravioletTime_s,
} from './eye.ts';

const DAY_s = 8 * 3600;

describe('published values', () => {
  const retina = (at: string, mrad: number, time_s: number, expected: string) => ({
    source: 'radiometer-manual',
    at,
    given: { sourceDiameter_m: mrad / 1000, distance_m: 1, time_s },
    expected,
  });
  published('limit for heat on the retina', retinalHeatLimit_W_per_m2_sr, [
    retina('source beyond 100 mrad, 10 µs', 100, 1e-5, '8.89e6'),
    retina('source of 11 mrad, 10 µs', 11, 1e-5, '8.08e7'),
    retina('source beyond 100 mrad, 1 s', 300, 1, '5e5'),
    retina('source of 11 mrad, 1 s, printed 4.54, its digits cut at the second', 11, 1, '4.545e6'),
    retina('source beyond 100 mrad, beyond 10 s', 100, 11, '2.8e5'),
  ]);
  published('time of blue light', blueLightTime_s, [
    {
      source: 'radiometer-manual',
      at: 'the bound of risk class 1: 100 s',
      given: { blueRadiance_W_per_m2_sr: 1e4 },
      expected: '100',
    },
    {
      source: 'radiometer-manual',
      at: 'the bound of risk class 2: 0.25 s',
      given: { blueRadiance_W_per_m2_sr: 4e6 },
      expected: '0.25',
    },
  ]);
  published(
    'dose of skin beyond 10 s',
    (irradiance_W_per_m2: number) => skinHeatTime_s({ irradiance_W_per_m2 }) * irradiance_W_per_m2,
    [{ source: 'radiometer-manual', at: '35600 over E beyond 10 s', given: 1780, expected: '356e2' }],
  );
  published('time of ultraviolet, s', ultravioletTime_s, [
    {
      source: 'radiation-directive',
      at: '30 J/m² in eight hours: at 0.003 W/m², which bounds the next class, 10 000 s',
      given: { effective_W_per_m2: 0.003 },
      expected: '10000',
    },
    {
      source: 'radiation-directive',
      at: '10⁴ J/m² of UVA: at 33.3 W/m², 300 s',
      given: { effective_W_per_m2: 0, longWave_W_per_m2: 1e4 / 300 },
      expected: '300',
    },
  ]);
});

test('a lamp of 200 klx at a metre from 100 mm, at its bluest, has 39 s in the published limit, worked by hand', () => {
  const luminance_cd_per_m2 = 2e5 / ((Math.PI / 4) * 0.1 ** 2);
  const blue = blueRadiance_W_per_m2_sr({ luminance_cd_per_m2 });
  expect(blue).toBeCloseTo(25_465, 0);
  expect(blueLightTime_s({ blueRadiance_W_per_m2_sr: blue })).toBeCloseTo(39.27, 2);
});

test('limits meet where their two parts join, and end where the standard ends them', () => {
  expect(blueLightTime_s({ blueRadiance_W_per_m2_sr: 100 })).toBe(DAY_s);
  expect(blueLightTime_s({ blueRadiance_W_per_m2_sr: 100.1 })).toBeCloseTo(9990, 0);
  expect(smallBlueLightTime_s({ blueIrradiance_W_per_m2: 0.01 })).toBe(DAY_s);
  expect(smallBlueLightTime_s({ blueIrradiance_W_per_m2: 4 })).toBe(25);
  const retina = (time_s: number) => retinalHeatLimit_W_per_m2_sr({ sourceDiameter_m: 0.05, distance_m: 1, time_s });
  expect(retina(10.0001) / retina(10)).toBeCloseTo(1, 2);
  expect(infraredEyeTime_s({ infrared_W_per_m2: 100 })).toBe(DAY_s);
  expect(infraredEyeTime_s({ infrared_W_per_m2: 100.5 })).toBeGreaterThan(990);
  expect(infraredEyeTime_s({ infrared_W_per_m2: 18_000 })).toBe(1);
  expect(skinHeatTime_s({ irradiance_W_per_m2: 20_000 })).toBe(1);
  expect(skinHeatTime_s({ irradiance_W_per_m2: 3550 }) / skinHeatTime_s({ irradiance_W_per_m2: 3560 })).toBeCloseTo(
    1,
    2,
  );
  expect(skinHeatTime_s({ irradiance_W_per_m2: 0 })).toBe(DAY_s);
  expect(ultravioletTime_s({ effective_W_per_m2: 0.001 })).toBe(DAY_s);
  expect(ultravioletTime_s({ effective_W_per_m2: 0 })).toBe(DAY_s);
});

const strong = fc.double({ min: 1, max: 1e8, noNaN: true });

test('more light never has more time', () => {
  fc.assert(
    fc.property(strong, fc.double({ min: 1, max: 100, noNaN: true }), (light, more) => {
      for (const time of [
        (x: number) => blueLightTime_s({ blueRadiance_W_per_m2_sr: x }),
        (x: number) => smallBlueLightTime_s({ blueIrradiance_W_per_m2: x / 1e4 }),
        (x: number) => infraredEyeTime_s({ infrared_W_per_m2: x }),
        (x: number) => skinHeatTime_s({ irradiance_W_per_m2: x }),
        (x: number) => ultravioletTime_s({ effective_W_per_m2: x / 1e4 }),
        (x: number) => ultravioletTime_s({ effective_W_per_m2: 0, longWave_W_per_m2: x }),
      ])
        expect(time(light * more)).toBeLessThanOrEqual(time(light));
    }),
  );
});

test('the distance grows with radiance, size and time, and a source within the limit has none', () => {
  fc.assert(
    fc.property(
      strong,
      fc.double({ min: 0.001, max: 1, noNaN: true }),
      fc.double({ min: 0.25, max: 5e3, noNaN: true }),
      (radiance, size, time_s) => {
        const distance = (blueRadiance_W_per_m2_sr: number, sourceDiameter_m: number, forTime_s: number) =>
          blueLightDistance_m({ blueRadiance_W_per_m2_sr, sourceDiameter_m, time_s: forTime_s });
        const d = distance(radiance, size, time_s);
        expect(distance(2 * radiance, size, time_s)).toBeGreaterThanOrEqual(d);
        expect(distance(radiance, 2 * size, time_s)).toBeCloseTo(2 * d, 6);
        if (radiance * time_s <= 1e6) expect(d).toBe(0);
        else {
          // There the source looks smaller than the field of view it is averaged over, by exactly what is too much.
          const field_rad = time_s <= 100 ? 0.011 : Math.min(0.1, 0.0011 * Math.sqrt(time_s));
          expect(radiance * (size / d / field_rad) ** 2 * time_s).toBeCloseTo(1e6, 2);
        }
      },
    ),
  );
});

test('the limit of infrared for a time is the one whose time it is, and ends where the standard ends it', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.1, max: 999, noNaN: true }), (time_s) => {
      expect(infraredEyeTime_s({ infrared_W_per_m2: infraredEyeLimit_W_per_m2({ time_s }) })).toBeCloseTo(time_s, 6);
    }),
  );
  expect(infraredEyeLimit_W_per_m2({ time_s: 100 })).toBeCloseTo(569.2, 1);
  expect(infraredEyeLimit_W_per_m2({ time_s: 1001 })).toBe(100);
  expect(() => infraredEyeLimit_W_per_m2({ time_s: 0 })).toThrow('time_s must be positive');
});

test('an irradiance falls to its limit where the inverse square says', () => {
  expect(irradianceDistance_m({ irradiance_W_per_m2: 900, measuredAt_m: 2, limit_W_per_m2: 100 })).toBe(6);
});

test('what has no meaning is refused by name', () => {
  expect(() => blueLightTime_s({ blueRadiance_W_per_m2_sr: -1 })).toThrow('blueRadiance_W_per_m2_sr must be zero');
  expect(() => smallBlueLightTime_s({ blueIrradiance_W_per_m2: NaN })).toThrow('blueIrradiance_W_per_m2 must be zero');
  expect(() => blueLightDistance_m({ blueRadiance_W_per_m2_sr: 1, sourceDiameter_m: 0, time_s: 1 })).toThrow(
    'sourceDia',
  );
  expect(() => retinalHeatLimit_W_per_m2_sr({ sourceDiameter_m: 1, distance_m: 1, time_s: 1e-6 })).toThrow(
    'time_s must be 0.00001 or above',
  );
  expect(() => infraredEyeTime_s({ infrared_W_per_m2: -1 })).toThrow('infrared_W_per_m2 must be zero or above');
  expect(() => skinHeatTime_s({ irradiance_W_per_m2: -1 })).toThrow('irradiance_W_per_m2 must be zero or above');
  expect(() => ultravioletTime_s({ effective_W_per_m2: -1 })).toThrow('effective_W_per_m2 must be zero or above');
  expect(() => irradianceDistance_m({ irradiance_W_per_m2: 1, measuredAt_m: 1, limit_W_per_m2: 0 })).toThrow('limit_W');
  expect(() => blueRadiance_W_per_m2_sr({ luminance_cd_per_m2: 1, blueEfficacy_lm_per_W: 0 })).toThrow('blueEfficacy');
});
