import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { incidentIlluminance_lx } from './incident.ts';
import { exposureTimeOfAngle_s } from './shutter.ts';
import { stopsBetween, stopsBetweenStops, stopsBetweenTimes, stopsOfFrameRates } from './stops.ts';

describe('published values', () => {
  published('stops lost to a frame rate', stopsOfFrameRates, [
    { source: 'ramp-thread', at: '24 to 96 fps', given: { fromRate_fps: 24, toRate_fps: 96 }, expected: '2.00' },
  ]);
  published('stops between apertures', stopsBetweenStops, [
    {
      source: 'f-number-article',
      at: 'f/2.8 to f/4, in exact stops',
      given: { fromStop: 2 ** 1.5, toStop: 4 },
      expected: '1.00',
    },
  ]);

  test.each([
    [3.2, 1],
    [3.5, 2],
    [4, 3],
  ])(
    'from f/2.8 to f/%s as marked is %s thirds of a stop to the nearest third, as f-number-article prints',
    (toStop, thirds) => {
      expect(Math.round(3 * stopsBetweenStops({ fromStop: 2.8, toStop }))).toBe(thirds);
    },
  );
});

describe('true of any two settings', () => {
  const time_s = fc.double({ min: 1e-7, max: 10, noNaN: true });
  const stop = fc.double({ min: 0.7, max: 64, noNaN: true });
  const rate_fps = fc.double({ min: 1, max: 1e5, noNaN: true });

  test('there and back is nothing', () => {
    fc.assert(
      fc.property(stop, stop, time_s, time_s, (one, other, short_s, long_s) => {
        const there = stopsBetweenStops({ fromStop: one, toStop: other });
        expect(there + stopsBetweenStops({ fromStop: other, toStop: one })).toBeCloseTo(0, 12);
        expect(stopsBetween({ more: short_s, less: long_s })).toBeCloseTo(
          -stopsBetween({ more: long_s, less: short_s }),
          12,
        );
      }),
    );
  });

  test('stops lost are the stops by which the light needed grows', () => {
    fc.assert(
      fc.property(stop, stop, time_s, time_s, (fromStop, toStop, fromTime_s, toTime_s) => {
        const before_lx = incidentIlluminance_lx({ stop: fromStop, exposureTime_s: fromTime_s, isoSpeed: 800 });
        const after_lx = incidentIlluminance_lx({ stop: toStop, exposureTime_s: toTime_s, isoSpeed: 800 });
        const lost = stopsBetweenStops({ fromStop, toStop }) + stopsBetweenTimes({ fromTime_s, toTime_s });
        expect(lost).toBeCloseTo(stopsBetween({ more: after_lx, less: before_lx }), 9);
      }),
    );
  });

  test('a rate costs what its shorter exposure at the same angle costs', () => {
    fc.assert(
      fc.property(
        rate_fps,
        rate_fps,
        fc.double({ min: 1, max: 360, noNaN: true }),
        (fromRate_fps, toRate_fps, angle) => {
          const of = (frameRate_fps: number) => exposureTimeOfAngle_s({ shutterAngle_deg: angle, frameRate_fps });
          const byTime = stopsBetweenTimes({ fromTime_s: of(fromRate_fps), toTime_s: of(toRate_fps) });
          expect(stopsOfFrameRates({ fromRate_fps, toRate_fps })).toBeCloseTo(byTime, 9);
        },
      ),
    );
  });
});

test('losing light is positive, gaining it negative', () => {
  expect(stopsBetweenStops({ fromStop: 4, toStop: 8 })).toBe(2);
  expect(stopsBetweenTimes({ fromTime_s: 1 / 500, toTime_s: 1 / 250 })).toBe(-1);
  expect(stopsOfFrameRates({ fromRate_fps: 2000, toRate_fps: 1000 })).toBe(-1);
});

test('a setting that is not positive is refused by name', () => {
  expect(() => stopsBetween({ more: 1, less: 0 })).toThrow('less must be positive and finite, got 0');
  expect(() => stopsBetweenStops({ fromStop: -2, toStop: 4 })).toThrow('fromStop must be positive and finite, got -2');
  expect(() => stopsBetweenTimes({ fromTime_s: 1, toTime_s: NaN })).toThrow('toTime_s must be positive and finite');
  expect(() => stopsOfFrameRates({ fromRate_fps: 24, toRate_fps: Infinity })).toThrow('toRate_fps must be positive');
});
