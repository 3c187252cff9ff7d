import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import {
  illuminanceNeeded_lx,
  isoSpeedNeeded,
  isoSpeedNeededByLuminance,
  luminanceNeeded_cd_per_m2,
  type LightPath,
} from './chain.ts';
import { effectiveStop } from './extension.ts';
import { incidentIlluminance_lx } from './incident.ts';
import { reflectedLuminance_cd_per_m2 } from './reflected.ts';

describe('published values', () => {
  published('light needed', illuminanceNeeded_lx, [
    {
      source: 'ev-table',
      at: 'EV 14, two stops of filter making up for EV 12',
      given: { tStop: 8, exposureTime_s: 1 / 64, isoSpeed: 100, filterLoss_stops: 2 },
      expected: '40,960',
    },
  ]);
  published('luminance needed', luminanceNeeded_cd_per_m2, [
    {
      source: 'meter-thread',
      at: 'f/16 at one over index 125, as f/8 at life size',
      given: { tStop: 8, magnificationRatio: 1, exposureTime_s: 1 / 125, isoSpeed: 125 },
      expected: '3200',
    },
  ]);

  // Worked by hand: 340 · 8² · (1 + 1)² / (1/1000 · 1600) = 340 · 64 · 4 / 1.6.
  test('1000 fps with the shutter open, index 1600, T8 at life size and 340 lx·s ask for 54 400 lx', () => {
    const shot = { tStop: 8, exposureTime_s: 1 / 1000, isoSpeed: 1600, meterConstant_lx_s: 340 };
    expect(illuminanceNeeded_lx({ ...shot, magnificationRatio: 1 })).toBeCloseTo(54_400, 6);
    expect(illuminanceNeeded_lx(shot)).toBeCloseTo(13_600, 6);
  });
});

const path: fc.Arbitrary<Required<LightPath>> = fc.record({
  tStop: fc.double({ min: 0.7, max: 45, noNaN: true }),
  magnificationRatio: fc.double({ min: 0, max: 10, noNaN: true }),
  pupilMagnificationRatio: fc.double({ min: 0.2, max: 5, noNaN: true }),
  filterLoss_stops: fc.double({ min: 0, max: 20, noNaN: true }),
  exposureTime_s: fc.double({ min: 1e-7, max: 1, noNaN: true }),
});
const speed = fc.integer({ min: 6, max: 409_600 });

describe('true of every shot', () => {
  test('the index comes back from the light it asked for, incident and reflected', () => {
    fc.assert(
      fc.property(path, speed, fc.double({ min: 8, max: 400, noNaN: true }), (shot, isoSpeed, constant) => {
        const incident = { ...shot, meterConstant_lx_s: constant };
        const illuminance_lx = illuminanceNeeded_lx({ ...incident, isoSpeed });
        expect(isoSpeedNeeded({ ...incident, illuminance_lx }) / isoSpeed).toBeCloseTo(1, 12);
        const reflected = { ...shot, reflectedConstant_cd_s_per_m2: constant };
        const luminance_cd_per_m2 = luminanceNeeded_cd_per_m2({ ...reflected, isoSpeed });
        expect(isoSpeedNeededByLuminance({ ...reflected, luminance_cd_per_m2 }) / isoSpeed).toBeCloseTo(1, 12);
      }),
    );
  });

  test('extension and filters ask for the light of the effective stop, closed further by the filter', () => {
    fc.assert(
      fc.property(path, speed, (shot, isoSpeed) => {
        const { exposureTime_s } = shot;
        const stop = effectiveStop({ ...shot, stop: shot.tStop }) * 2 ** (shot.filterLoss_stops / 2);
        const setting = { stop, exposureTime_s, isoSpeed };
        expect(illuminanceNeeded_lx({ ...shot, isoSpeed }) / incidentIlluminance_lx(setting)).toBeCloseTo(1, 9);
        const needed = luminanceNeeded_cd_per_m2({ ...shot, isoSpeed });
        expect(needed / reflectedLuminance_cd_per_m2(setting)).toBeCloseTo(1, 9);
      }),
    );
  });

  test('more light never raises the index needed', () => {
    fc.assert(
      fc.property(
        path,
        fc.double({ min: 1, max: 1e6, noNaN: true }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        (shot, illuminance_lx, more) => {
          const brighter = isoSpeedNeeded({ ...shot, illuminance_lx: illuminance_lx * more });
          expect(brighter).toBeLessThanOrEqual(isoSpeedNeeded({ ...shot, illuminance_lx }) * (1 + 1e-12));
        },
      ),
    );
  });
});

test('a distant, unfiltered shot may leave out what it has not', () => {
  const bare = { tStop: 4, exposureTime_s: 1 / 2000, isoSpeed: 800 };
  const spelt = { ...bare, magnificationRatio: 0, pupilMagnificationRatio: 1, filterLoss_stops: 0 };
  expect(illuminanceNeeded_lx(bare)).toBe(illuminanceNeeded_lx({ ...spelt, meterConstant_lx_s: 250 }));
  expect(luminanceNeeded_cd_per_m2(bare)).toBe(
    luminanceNeeded_cd_per_m2({ ...spelt, reflectedConstant_cd_s_per_m2: 12.5 }),
  );
});

test('what has no meaning is refused by name', () => {
  const shot = { tStop: 4, exposureTime_s: 1 / 2000, isoSpeed: 800 };
  expect(() => illuminanceNeeded_lx({ ...shot, tStop: 0 })).toThrow('tStop must be positive and finite, got 0');
  expect(() => luminanceNeeded_cd_per_m2({ ...shot, tStop: NaN })).toThrow('tStop must be positive and finite');
  expect(() => illuminanceNeeded_lx({ ...shot, filterLoss_stops: -1 })).toThrow('filterLoss_stops must be zero or');
  expect(() => illuminanceNeeded_lx({ ...shot, magnificationRatio: -1 })).toThrow('magnificationRatio must be zero or');
  expect(() => isoSpeedNeeded({ ...shot, illuminance_lx: 0 })).toThrow('illuminance_lx must be positive and finite');
  expect(() => isoSpeedNeededByLuminance({ ...shot, luminance_cd_per_m2: 0 })).toThrow(
    'luminance_cd_per_m2 must be positive and finite, got 0',
  );
});
