import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitTwoReadings, illuminanceByReadings_lx } from './offset.ts';

describe('published readings of a small lamp, in W/m² and centimetres, for which the law is the same', () => {
  // Read at 114, 64, 41, 28, 21 and 16 cm: 15, 48, 116, 249, 442 and 761.
  const ends = { nearIlluminance_lx: 761, nearDistance_m: 0.16, farIlluminance_lx: 15, farDistance_m: 1.14 };

  test('distance-readings, nearest and farthest: the light comes from the lamp itself, within the half centimetre of its scale', () => {
    expect(Math.abs(fitTwoReadings(ends).offset_m)).toBeLessThan(0.005);
  });

  test.each([
    [0.64, 48],
    [0.41, 116],
    [0.28, 249],
    [0.21, 442],
  ])('distance-readings, at %s m: %s from the nearest and the farthest, within 2 %%', (distance_m, read) => {
    expect(Math.abs(illuminanceByReadings_lx({ ...ends, distance_m }) / read - 1)).toBeLessThan(0.02);
  });
});

describe('worked by hand', () => {
  const readings = { nearIlluminance_lx: 900, nearDistance_m: 1, farIlluminance_lx: 225, farDistance_m: 2.5 };
  test('a quarter of the light at twice the apparent distance: 2.5 + a is twice 1 + a, so a is 0.5', () => {
    expect(fitTwoReadings(readings).offset_m).toBeCloseTo(0.5, 12);
  });

  test('the intensity is the reading times the square of the apparent distance', () => {
    expect(fitTwoReadings(readings).intensity_cd).toBeCloseTo(900 * 1.5 ** 2, 9);
  });
});

const lamp = fc.record({
  intensity_cd: fc.double({ min: 1, max: 1e7, noNaN: true }),
  offset_m: fc.double({ min: -0.4, max: 10, noNaN: true }),
  nearDistance_m: fc.double({ min: 0.5, max: 10, noNaN: true }),
  farther: fc.double({ min: 1.3, max: 8, noNaN: true }),
});

describe('true of every lamp', () => {
  test('its intensity and offset come back from two readings of it, and so does any reading between and beyond', () => {
    fc.assert(
      fc.property(
        lamp,
        fc.double({ min: 1, max: 3, noNaN: true }),
        ({ intensity_cd, offset_m, nearDistance_m, farther }, on) => {
          const at = (distance_m: number) => intensity_cd / (distance_m + offset_m) ** 2;
          const farDistance_m = nearDistance_m * farther;
          const readings = {
            nearIlluminance_lx: at(nearDistance_m),
            nearDistance_m,
            farIlluminance_lx: at(farDistance_m),
            farDistance_m,
          };
          const fitted = fitTwoReadings(readings);
          expect(fitted.intensity_cd / intensity_cd).toBeCloseTo(1, 8);
          expect(Math.abs(fitted.offset_m - offset_m)).toBeLessThan(1e-8 * (farDistance_m + Math.abs(offset_m)));
          const distance_m = nearDistance_m * on;
          expect(illuminanceByReadings_lx({ ...readings, distance_m }) / at(distance_m)).toBeCloseTo(1, 8);
        },
      ),
    );
  });

  test('the error factor is what small errors of both readings come to, taken square and summed', () => {
    fc.assert(
      fc.property(lamp, ({ intensity_cd, offset_m, nearDistance_m, farther }) => {
        const at = (distance_m: number) => intensity_cd / (distance_m + offset_m) ** 2;
        const farDistance_m = nearDistance_m * farther;
        const fit = (near: number, far: number) =>
          fitTwoReadings({
            nearIlluminance_lx: at(nearDistance_m) * near,
            nearDistance_m,
            farIlluminance_lx: at(farDistance_m) * far,
            farDistance_m,
          });
        const small = 1e-6;
        const whole = fit(1, 1);
        const byNear = (fit(1 + small, 1).intensity_cd / fit(1 - small, 1).intensity_cd - 1) / (2 * small);
        const byFar = (fit(1, 1 + small).intensity_cd / fit(1, 1 - small).intensity_cd - 1) / (2 * small);
        expect(Math.hypot(byNear, byFar) / whole.errorFactor).toBeCloseTo(1, 2);
      }),
    );
  });
});

test('readings that no such lamp gives, and places nearer than both, are refused by name', () => {
  const readings = { nearIlluminance_lx: 900, nearDistance_m: 1, farIlluminance_lx: 225, farDistance_m: 2 };
  expect(() => fitTwoReadings({ ...readings, farDistance_m: 1 })).toThrow(
    'farDistance_m must be beyond the near reading, 1 m, got 1',
  );
  expect(() => fitTwoReadings({ ...readings, farIlluminance_lx: 900 })).toThrow(
    'farIlluminance_lx must be below the near reading, 900 lx, got 900',
  );
  expect(() => fitTwoReadings({ ...readings, farIlluminance_lx: 0 })).toThrow('farIlluminance_lx must be positive');
  expect(() => illuminanceByReadings_lx({ ...readings, distance_m: 0.9 })).toThrow(
    'distance_m must not be nearer than the near reading, 1 m, got 0.9',
  );
});
