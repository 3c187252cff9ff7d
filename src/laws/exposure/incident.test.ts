import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { footcandlesOfLux, luxOfFootcandles } from '../light/units.ts';
import { FLAT_RECEPTOR_CONSTANT_lx_s, incidentIlluminance_lx, incidentStop } from './incident.ts';

const at = (stop: number, exposureTime_s: number) => ({ stop, exposureTime_s, isoSpeed: 100 });

interface Footcandles {
  readonly stop: number;
  readonly exposureTime_s: number;
  readonly isoSpeed: number;
  /** Meter constant, footcandle seconds. */
  readonly constant: number;
}

/** The same law with the constant and the light in footcandles. */
function inFootcandles({ constant, ...setting }: Footcandles): number {
  const meterConstant_lx_s = luxOfFootcandles({ illuminance_fc: constant });
  return footcandlesOfLux({ illuminance_lx: incidentIlluminance_lx({ ...setting, meterConstant_lx_s }) });
}

describe('published values', () => {
  published('light needed', incidentIlluminance_lx, [
    { source: 'ev-table', at: 'EV -3', given: at(1, 8), expected: '0.313' },
    { source: 'ev-table', at: 'EV 0', given: at(1, 1), expected: '2.5' },
    { source: 'ev-table', at: 'EV 4', given: at(2, 1 / 4), expected: '40' },
    { source: 'ev-table', at: 'EV 14', given: at(16, 1 / 64), expected: '40,960' },
  ]);

  published('footcandles needed', inFootcandles, [
    {
      source: 'footcandle-note',
      at: 'T4 at index 800 with 25 fc·s, printed for 1/48 s as the round number that 1/50 s gives',
      given: { stop: 4, exposureTime_s: 1 / 50, isoSpeed: 800, constant: 25 },
      expected: '25.0',
    },
    {
      source: 'sunlight-thread',
      at: 'f/16 at one over the index, sun at 40 to 45 degrees, with 30 fc·s',
      given: { stop: 16, exposureTime_s: 1 / 125, isoSpeed: 125, constant: 30 },
      expected: '7680',
    },
  ]);

  // @source footcandle-rule a rule of thumb, so held to a tenth of a stop
  test('the rule of 100 footcandles at index 100 for f/2.8 and 1/48 s holds within a tenth of a stop (footcandle-rule)', () => {
    const exact_fc = inFootcandles({ stop: 2 ** 1.5, exposureTime_s: 1 / 48, isoSpeed: 100, constant: 25 });
    expect(Math.abs(Math.log2(exact_fc / 100))).toBeLessThan(0.1);
  });

  // The table is from memory of a film manual's, not looked up; its stops are the exact powers of √2 of their marks.
  const table = [25, 50, 100, 200, 400, 800, 1600, 3200].map((illuminance_fc, i) => ({
    source: 'footcandle-table',
    at: `T${['1.4', '2', '2.8', '4', '5.6', '8', '11', '16'][i]} at index 100 and 1/50 s, from memory`,
    given: { stop: 2 ** ((i + 1) / 2), exposureTime_s: 1 / 50, isoSpeed: 100, constant: 25 },
    expected: String(illuminance_fc),
  }));
  published('footcandles needed', inFootcandles, table);
});

describe('true at every setting', () => {
  const stop = fc.double({ min: 0.7, max: 64, noNaN: true });
  const time_s = fc.double({ min: 1e-7, max: 1, noNaN: true });
  const speed = fc.integer({ min: 6, max: 409_600 });
  const constant_lx_s = fc.double({ min: 200, max: 600, noNaN: true });

  test('the stop comes back from the light it asked for', () => {
    fc.assert(
      fc.property(stop, time_s, speed, constant_lx_s, (wanted, exposureTime_s, isoSpeed, meterConstant_lx_s) => {
        const setting = { exposureTime_s, isoSpeed, meterConstant_lx_s };
        const illuminance_lx = incidentIlluminance_lx({ ...setting, stop: wanted });
        expect(incidentStop({ ...setting, illuminance_lx }) / wanted).toBeCloseTo(1, 12);
      }),
    );
  });

  test('half the time, half the index or a stop down each asks for twice the light', () => {
    fc.assert(
      fc.property(stop, time_s, speed, (wide, exposureTime_s, isoSpeed) => {
        const setting = { stop: wide, exposureTime_s, isoSpeed };
        const once_lx = incidentIlluminance_lx(setting);
        for (const change of [
          { exposureTime_s: exposureTime_s / 2 },
          { isoSpeed: isoSpeed / 2 },
          { stop: wide * Math.SQRT2 },
        ])
          expect(incidentIlluminance_lx({ ...setting, ...change }) / once_lx).toBeCloseTo(2, 12);
      }),
    );
  });
});

test('a meter constant left out is that of a flat receptor', () => {
  const setting = { stop: 5, exposureTime_s: 1 / 3000, isoSpeed: 640 };
  expect(incidentIlluminance_lx(setting)).toBe(
    incidentIlluminance_lx({ ...setting, meterConstant_lx_s: FLAT_RECEPTOR_CONSTANT_lx_s }),
  );
});

test.each(['stop', 'exposureTime_s', 'isoSpeed', 'meterConstant_lx_s'])(
  'a %s that is not positive is refused',
  (name) => {
    const setting = { stop: 4, exposureTime_s: 1 / 1000, isoSpeed: 800, meterConstant_lx_s: 250 };
    for (const bad of [0, -1, NaN, Infinity])
      expect(() => incidentIlluminance_lx({ ...setting, [name]: bad })).toThrow(
        `${name} must be positive and finite, got ${bad}`,
      );
  },
);

test('no light at all allows no stop', () => {
  expect(() => incidentStop({ illuminance_lx: 0, exposureTime_s: 1 / 1000, isoSpeed: 800 })).toThrow(
    'illuminance_lx must be positive and finite, got 0',
  );
});
