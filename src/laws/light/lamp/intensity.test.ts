import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../../test/published.ts';
import { illuminanceOfIntensity_lx, intensityOfReading_cd } from './intensity.ts';

describe('published values', () => {
  published('light of a lamp', illuminanceOfIntensity_lx, [
    { source: 'distance-example', at: '100 cd at 3 m', given: { intensity_cd: 100, distance_m: 3 }, expected: '11' },
    { source: 'distance-example', at: '100 cd at 2 m', given: { intensity_cd: 100, distance_m: 2 }, expected: '25' },
  ]);
  published('intensity of a reading', intensityOfReading_cd, [
    { source: 'distance-example', at: '25 lx at 2 m', given: { illuminance_lx: 25, distance_m: 2 }, expected: '100' },
  ]);
});

test('a lamp read at one distance gives the same reading back there, with any offset behind or before it', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.1, max: 1e6, noNaN: true }),
      fc.double({ min: 0.2, max: 50, noNaN: true }),
      fc.double({ min: -0.1, max: 5, noNaN: true }),
      (illuminance_lx, distance_m, offset_m) => {
        const intensity_cd = intensityOfReading_cd({ illuminance_lx, distance_m, offset_m });
        const again_lx = illuminanceOfIntensity_lx({ intensity_cd, distance_m, offset_m });
        expect(again_lx / illuminance_lx).toBeCloseTo(1, 12);
      },
    ),
  );
});

test('a point before the place where the light comes from is refused by name', () => {
  const lamp = { intensity_cd: 100, offset_m: -0.5 };
  expect(() => illuminanceOfIntensity_lx({ ...lamp, distance_m: 0.5 })).toThrow(
    'distance_m must be beyond the point the light seems to come from, 0.5 m, got 0.5',
  );
  expect(() => intensityOfReading_cd({ illuminance_lx: -1, distance_m: 1 })).toThrow(
    'illuminance_lx must be zero or above',
  );
  expect(() => intensityOfReading_cd({ illuminance_lx: 1, distance_m: 0 })).toThrow('distance_m must be positive');
});
