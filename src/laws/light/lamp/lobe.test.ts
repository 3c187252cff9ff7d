import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { accepted, every, iesText } from '../../../../test/photometry/files.ts';
import { published } from '../../../../test/published.ts';
import { readPhotometry } from '../photometry/read.ts';
import { principalSpreads } from '../photometry/spread.ts';
import {
  beamWidth_m,
  BELL_RATIO,
  lobeExponent,
  lobeFalloff,
  lobeFlux_lm,
  lobeShare,
  usualFieldAngle_deg,
} from './lobe.ts';

describe('published values', () => {
  const perMetre = (spread_deg: number) => ({ distance_m: 1, spread_deg });
  published('width of a beam', beamWidth_m, [
    { source: 'pool-factors', at: '50° lamps', given: perMetre(50), expected: '.93' },
    { source: 'pool-factors', at: '36° lamps', given: perMetre(36), expected: '.65' },
    { source: 'pool-factors', at: '26° lamps', given: perMetre(26), expected: '.46' },
    { source: 'pool-factors', at: '10° lamps', given: perMetre(10), expected: '.17' },
    { source: 'pool-factors', at: '5° lamps', given: perMetre(5), expected: '.09' },
    {
      source: 'pool-example',
      at: '0.5 rad, 28.6479°, at 100 in: 51.07 in',
      given: { distance_m: 100, spread_deg: 28.6479 },
      expected: '51.07',
    },
  ]);
});

const angles = fc
  .tuple(fc.double({ min: 1, max: 100, noNaN: true }), fc.double({ min: 1.1, max: 3, noNaN: true }))
  .map(([beamAngle_deg, wider]) => ({ beamAngle_deg, fieldAngle_deg: beamAngle_deg * wider }));

describe('the lobe', () => {
  test('is whole on the axis, a half at the beam’s edge and a tenth at the field’s, as beam-angle-entry defines them', () => {
    fc.assert(
      fc.property(angles, (lamp) => {
        expect(lobeShare({ ...lamp, offAxis_deg: 0 })).toBe(1);
        expect(lobeShare({ ...lamp, offAxis_deg: lamp.beamAngle_deg / 2 })).toBeCloseTo(0.5, 10);
        expect(lobeShare({ ...lamp, offAxis_deg: Math.min(180, lamp.fieldAngle_deg / 2) })).toBeCloseTo(0.1, 10);
      }),
    );
  });

  test('falls all the way out', () => {
    fc.assert(
      fc.property(angles, fc.double({ min: 0, max: 170, noNaN: true }), (lamp, offAxis_deg) => {
        expect(lobeShare({ ...lamp, offAxis_deg: offAxis_deg + 5 })).toBeLessThanOrEqual(
          lobeShare({ ...lamp, offAxis_deg }),
        );
      }),
    );
  });

  test('loses one stop at the beam’s edge and 3.32 at the field’s', () => {
    const lamp = { beamAngle_deg: 20, fieldAngle_deg: 35 };
    expect(lobeFalloff({ ...lamp, offAxis_deg: 10 }).loss_stops).toBeCloseTo(1, 12);
    expect(lobeFalloff({ ...lamp, offAxis_deg: 17.5 }).loss_stops).toBeCloseTo(Math.log2(10), 12);
    expect(lobeFalloff({ ...lamp, offAxis_deg: 5 }).shareFraction).toBeCloseTo(
      2 ** -lobeFalloff({ ...lamp, offAxis_deg: 5 }).loss_stops,
      12,
    );
  });

  test('is a bell where the field is √log₂10 of the beam, 1.823', () => {
    expect(BELL_RATIO).toBeCloseTo(1.823, 3);
    const fieldAngle_deg = usualFieldAngle_deg({ beamAngle_deg: 24 });
    expect(lobeExponent({ beamAngle_deg: 24, fieldAngle_deg })).toBeCloseTo(2, 12);
  });

  test('written as a measured file, it is found again with the same beam and field angles', () => {
    const lamp = { beamAngle_deg: 20, fieldAngle_deg: 35 };
    const measured = accepted(
      readPhotometry(
        iesText({
          gammas_deg: every(0.25, 0, 90),
          light: ({ gamma_deg }) => 180_000 * lobeShare({ ...lamp, offAxis_deg: gamma_deg }),
        }),
      ),
    );
    const { beam, field } = principalSpreads(measured).c90;
    expect(beam!.width_deg).toBeCloseTo(20, 1);
    expect(field!.width_deg).toBeCloseTo(35, 1);
    expect(lobeFlux_lm({ ...lamp, intensity_cd: 180_000 }) / measured.flux_lm).toBeCloseTo(1, 3);
  });
});

describe('its lumens', () => {
  test('of a narrow bell are π · I · θb² / (4 ln 2), the closed form where sin θ is θ', () => {
    for (const beamAngle_deg of [0.5, 1, 2]) {
      const beam = (beamAngle_deg * Math.PI) / 180;
      const closed_lm = (Math.PI * 1e6 * beam ** 2) / (4 * Math.LN2);
      const fieldAngle_deg = usualFieldAngle_deg({ beamAngle_deg });
      const flux_lm = lobeFlux_lm({ intensity_cd: 1e6, beamAngle_deg, fieldAngle_deg });
      // sin θ < θ: a little less, by θb²/(24 ln 2) or so.
      expect(flux_lm / closed_lm).toBeLessThan(1);
      expect(flux_lm / closed_lm).toBeGreaterThan(1 - beam ** 2 / 8);
    }
  });

  test('of a lobe with an ever harder edge come to those of an even cone, 2π · I · (1 − cos θb/2)', () => {
    const flux_lm = lobeFlux_lm({ intensity_cd: 100, beamAngle_deg: 120, fieldAngle_deg: 120.5 });
    expect(Math.abs(flux_lm / (200 * Math.PI * 0.5) - 1)).toBeLessThan(0.005);
  });

  test('grow with the intensity and are none without', () => {
    const lamp = { beamAngle_deg: 30, fieldAngle_deg: 60 };
    expect(lobeFlux_lm({ ...lamp, intensity_cd: 0 })).toBe(0);
    expect(lobeFlux_lm({ ...lamp, intensity_cd: 2 }) / lobeFlux_lm({ ...lamp, intensity_cd: 1 })).toBeCloseTo(2, 12);
  });

  test('for a 20° beam of 180,000 cd are near those of cosⁿ through the same half, some 24,400 lm', () => {
    const n = Math.log(0.5) / Math.log(Math.cos((10 * Math.PI) / 180));
    const cosine_lm = (2 * Math.PI * 180_000) / (n + 1);
    const fieldAngle_deg = usualFieldAngle_deg({ beamAngle_deg: 20 });
    const bell_lm = lobeFlux_lm({ intensity_cd: 180_000, beamAngle_deg: 20, fieldAngle_deg });
    expect(Math.abs(bell_lm / cosine_lm - 1)).toBeLessThan(0.02);
  });
});

test('angles that make no lobe are refused by name', () => {
  expect(() => lobeShare({ beamAngle_deg: 20, fieldAngle_deg: 20, offAxis_deg: 1 })).toThrow(
    'fieldAngle_deg must be above the beam angle, 20, got 20',
  );
  expect(() => lobeShare({ beamAngle_deg: 0, fieldAngle_deg: 20, offAxis_deg: 1 })).toThrow(
    'beamAngle_deg must be positive',
  );
  expect(() => lobeShare({ beamAngle_deg: 20, fieldAngle_deg: 30, offAxis_deg: 181 })).toThrow(
    'offAxis_deg must be from 0',
  );
  expect(() => beamWidth_m({ distance_m: 1, spread_deg: 180 })).toThrow('spread_deg must be from 0 to 179, got 180');
});
