import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { luminanceOfMatte_cd_per_m2 } from '../light/units.ts';
import { incidentIlluminance_lx } from './incident.ts';
import { impliedReflectanceFraction, reflectedLuminance_cd_per_m2, reflectedStop } from './reflected.ts';

describe('published values', () => {
  published('luminance needed', reflectedLuminance_cd_per_m2, [
    {
      source: 'meter-thread',
      at: 'f/16 at one over index 125',
      given: { stop: 16, exposureTime_s: 1 / 125, isoSpeed: 125 },
      expected: '3200',
    },
    {
      source: 'meter-thread',
      at: 'two stops wider, f/8',
      given: { stop: 8, exposureTime_s: 1 / 125, isoSpeed: 125 },
      expected: '800',
    },
  ]);
  published('implied reflectance', impliedReflectanceFraction, [
    { source: 'meter-article', at: 'K 12.5, C 250', given: {}, expected: '0.157' },
    { source: 'meter-article', at: 'K 14, C 250', given: { reflectedConstant_cd_s_per_m2: 14 }, expected: '0.176' },
    { source: 'meter-article', at: 'K 12.5, C 330', given: { meterConstant_lx_s: 330 }, expected: '0.12' },
  ]);
});

describe('true at every setting', () => {
  const stop = fc.double({ min: 0.7, max: 64, noNaN: true });
  const time_s = fc.double({ min: 1e-7, max: 1, noNaN: true });
  const speed = fc.integer({ min: 6, max: 409_600 });
  const reflected = fc.double({ min: 10, max: 15, noNaN: true });
  const incident = fc.double({ min: 200, max: 400, noNaN: true });

  test('the stop comes back from the luminance it asked for', () => {
    fc.assert(
      fc.property(stop, time_s, speed, reflected, (wanted, exposureTime_s, isoSpeed, constant) => {
        const setting = { exposureTime_s, isoSpeed, reflectedConstant_cd_s_per_m2: constant };
        const luminance_cd_per_m2 = reflectedLuminance_cd_per_m2({ ...setting, stop: wanted });
        expect(reflectedStop({ ...setting, luminance_cd_per_m2 }) / wanted).toBeCloseTo(1, 12);
      }),
    );
  });

  test('a matte card of the implied reflectance reads the same by spot and by incident meter', () => {
    fc.assert(
      fc.property(stop, time_s, speed, reflected, incident, (wanted, exposureTime_s, isoSpeed, constant, c) => {
        const setting = { stop: wanted, exposureTime_s, isoSpeed };
        const illuminance_lx = incidentIlluminance_lx({ ...setting, meterConstant_lx_s: c });
        const reflectanceFraction = impliedReflectanceFraction({
          reflectedConstant_cd_s_per_m2: constant,
          meterConstant_lx_s: c,
        });
        const card = luminanceOfMatte_cd_per_m2({ illuminance_lx, reflectanceFraction });
        const needed = reflectedLuminance_cd_per_m2({ ...setting, reflectedConstant_cd_s_per_m2: constant });
        expect(card / needed).toBeCloseTo(1, 12);
      }),
    );
  });
});

test('what has no meaning is refused by name', () => {
  const setting = { stop: 4, exposureTime_s: 1 / 1000, isoSpeed: 800 };
  expect(() => reflectedLuminance_cd_per_m2({ ...setting, isoSpeed: 0 })).toThrow('isoSpeed must be positive');
  expect(() => reflectedStop({ ...setting, luminance_cd_per_m2: -1 })).toThrow('luminance_cd_per_m2 must be positive');
  expect(() => impliedReflectanceFraction({ reflectedConstant_cd_s_per_m2: 12.5, meterConstant_lx_s: 30 })).toThrow(
    'meterConstant_lx_s must be at least π times reflectedConstant_cd_s_per_m2 (12.5), got 30',
  );
});
