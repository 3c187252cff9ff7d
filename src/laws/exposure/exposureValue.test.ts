import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import {
  exposureValue100,
  illuminanceOfExposureValue_lx,
  luminanceOfExposureValue_cd_per_m2,
} from './exposureValue.ts';
import { incidentIlluminance_lx } from './incident.ts';
import { reflectedLuminance_cd_per_m2 } from './reflected.ts';

describe('published values', () => {
  published('exposure value', exposureValue100, [
    {
      source: 'colour-hdri',
      at: 'exposure_value_100, documentation example, digits cut at the seventh',
      given: { stop: 8, exposureTime_s: 1 / 250, isoSpeed: 400 },
      expected: '11.965784',
    },
    {
      source: 'colour-hdri',
      at: 'TestExposureValue100, second',
      given: { stop: 5.6, exposureTime_s: 1 / 500, isoSpeed: 800 },
      expected: '10.93663794',
    },
    {
      source: 'colour-hdri',
      at: 'TestExposureValue100, third',
      given: { stop: 2.8, exposureTime_s: 1 / 1000, isoSpeed: 1600 },
      expected: '8.93663794',
    },
  ]);
  published('illuminance of an exposure value', illuminanceOfExposureValue_lx, [
    { source: 'ev-table', at: 'EV -3', given: { exposureValue: -3 }, expected: '0.313' },
    { source: 'ev-table', at: 'EV -1', given: { exposureValue: -1 }, expected: '1.25' },
    { source: 'ev-table', at: 'EV 3', given: { exposureValue: 3 }, expected: '20' },
    { source: 'ev-table', at: 'EV 4', given: { exposureValue: 4 }, expected: '40' },
    { source: 'ev-table', at: 'EV 14', given: { exposureValue: 14 }, expected: '40,960' },
  ]);
  published('luminance of an exposure value', luminanceOfExposureValue_cd_per_m2, [
    { source: 'ev-table', at: 'L = 2^(EV − 3) at EV 0', given: { exposureValue: 0 }, expected: '0.125' },
    { source: 'ev-table', at: 'L = 2^(EV − 3) at EV 12', given: { exposureValue: 12 }, expected: '512' },
  ]);
});

test('the light of a setting is the light of its exposure value, incident and reflected', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.7, max: 64, noNaN: true }),
      fc.double({ min: 1e-7, max: 10, noNaN: true }),
      fc.integer({ min: 6, max: 409_600 }),
      fc.double({ min: 8, max: 400, noNaN: true }),
      (stop, exposureTime_s, isoSpeed, constant) => {
        const setting = { stop, exposureTime_s, isoSpeed };
        const exposureValue = exposureValue100(setting);
        const byValue_lx = illuminanceOfExposureValue_lx({ exposureValue, meterConstant_lx_s: constant });
        expect(byValue_lx / incidentIlluminance_lx({ ...setting, meterConstant_lx_s: constant })).toBeCloseTo(1, 9);
        const reflected = { reflectedConstant_cd_s_per_m2: constant };
        const byValue = luminanceOfExposureValue_cd_per_m2({ exposureValue, ...reflected });
        expect(byValue / reflectedLuminance_cd_per_m2({ ...setting, ...reflected })).toBeCloseTo(1, 9);
      },
    ),
  );
});

test('what has no meaning is refused by name', () => {
  expect(() => exposureValue100({ stop: 4, exposureTime_s: 0, isoSpeed: 100 })).toThrow('exposureTime_s must be');
  expect(() => illuminanceOfExposureValue_lx({ exposureValue: NaN })).toThrow('exposureValue must be finite, got NaN');
  expect(() => luminanceOfExposureValue_cd_per_m2({ exposureValue: 3, reflectedConstant_cd_s_per_m2: 0 })).toThrow(
    'reflectedConstant_cd_s_per_m2 must be positive and finite, got 0',
  );
});
