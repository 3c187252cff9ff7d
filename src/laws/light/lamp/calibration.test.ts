import fc from 'fast-check';
import { expect, test } from 'vitest';
import { calibrate } from './calibration.ts';

test('a reading of half the plan is a factor of ½ and a stop less; of twice the plan, 2 and a stop more', () => {
  const plannedIlluminance_lx = 40_000;
  expect(calibrate({ plannedIlluminance_lx, measuredIlluminance_lx: 20_000 })).toEqual({
    calibrationFactor: 0.5,
    difference_stops: -1,
  });
  expect(calibrate({ plannedIlluminance_lx, measuredIlluminance_lx: 80_000 })).toEqual({
    calibrationFactor: 2,
    difference_stops: 1,
  });
});

test('the factor times the plan is the reading, whatever the two are', () => {
  const light = fc.double({ min: 0.01, max: 1e7, noNaN: true });
  fc.assert(
    fc.property(light, light, (plannedIlluminance_lx, measuredIlluminance_lx) => {
      const { calibrationFactor, difference_stops } = calibrate({ plannedIlluminance_lx, measuredIlluminance_lx });
      expect((calibrationFactor * plannedIlluminance_lx) / measuredIlluminance_lx).toBeCloseTo(1, 12);
      expect(2 ** difference_stops / calibrationFactor).toBeCloseTo(1, 12);
    }),
  );
});

test('no reading, or no plan, is refused by name', () => {
  expect(() => calibrate({ plannedIlluminance_lx: 0, measuredIlluminance_lx: 1 })).toThrow(
    'plannedIlluminance_lx must be positive',
  );
  expect(() => calibrate({ plannedIlluminance_lx: 1, measuredIlluminance_lx: 0 })).toThrow(
    'measuredIlluminance_lx must be positive',
  );
});
