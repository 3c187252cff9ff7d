import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stopFromThirds, thirdsAboveOne } from '../base/stop.ts';
import {
  roundedDown,
  roundedUp,
  settableExposureAtOrBelow,
  settableIndexAtOrAbove,
  settableIndexAtOrBelow,
  settableRateAtOrAbove,
  settableStopAtOrAbove,
  settableStopAtOrBelow,
} from './settable.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Further apart than rounding. */
const HAIR = 1e-6;

describe('exposure index', () => {
  test('has the series that cameras are marked with, ten to the decade', () => {
    const series: number[] = [];
    for (let index = 100; index <= 12_800; index = settableIndexAtOrAbove(index * 1.01)) series.push(index);
    expect(series).toEqual([
      100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400, 8000, 10_000,
      12_500,
    ]); // prettier-ignore
  });

  test('rounds to the side that is asked for, never past the next of the series', () => {
    fc.assert(
      fc.property(between(1, 1e6), (isoSpeed) => {
        const [above, below] = [settableIndexAtOrAbove(isoSpeed), settableIndexAtOrBelow(isoSpeed)];
        expect(above).toBeGreaterThanOrEqual(isoSpeed * (1 - HAIR));
        expect(below).toBeLessThanOrEqual(isoSpeed * (1 + HAIR));
        expect(above / below).toBeLessThan(1.3);
      }),
    );
  });

  test('stays where it is already of the series', () => {
    fc.assert(
      fc.property(between(1, 1e6), (isoSpeed) => {
        const set = settableIndexAtOrAbove(isoSpeed);
        expect([settableIndexAtOrAbove(set), settableIndexAtOrBelow(set)]).toEqual([set, set]);
      }),
    );
  });
});

describe('frame rate', () => {
  test('is a whole number, not below what is wanted and less than one above it', () => {
    fc.assert(
      fc.property(between(0.5, 100_000), (rate_fps) => {
        const set_fps = settableRateAtOrAbove(rate_fps);
        expect(Number.isInteger(set_fps)).toBe(true);
        expect(set_fps).toBeGreaterThanOrEqual(rate_fps * (1 - HAIR));
        expect(set_fps - rate_fps).toBeLessThan(1);
        expect(settableRateAtOrAbove(set_fps)).toBe(set_fps);
      }),
    );
  });

  test('that is whole but for rounding is not raised: 0.12 s over 6 s at 24 is 1200, not 1201', () => {
    expect(settableRateAtOrAbove((24 * 6) / 0.12)).toBe(1200);
    expect(settableRateAtOrAbove(1200 * (1 + 1e-12))).toBe(1200);
    expect(settableRateAtOrAbove(1200.01)).toBe(1201);
  });
});

describe('exposure', () => {
  test('is never longer than what is wanted, nor shorter by more than a tenth', () => {
    fc.assert(
      fc.property(between(1, 7), (magnitude) => {
        const wanted_s = 10 ** -magnitude;
        const set_s = settableExposureAtOrBelow(wanted_s);
        expect(set_s).toBeLessThanOrEqual(wanted_s * (1 + HAIR));
        expect(set_s).toBeGreaterThanOrEqual(wanted_s / 1.1);
        expect(settableExposureAtOrBelow(set_s)).toBe(set_s);
      }),
    );
  });

  test('is one over a number of two figures, or over the whole number wanted', () => {
    fc.assert(
      fc.property(between(2, 7), (magnitude) => {
        const wanted_s = 10 ** -magnitude;
        const over = 1 / settableExposureAtOrBelow(wanted_s);
        const isWanted = Math.abs(over * wanted_s - 1) < 1e-9 && Math.abs(over / Math.round(over) - 1) < 1e-9;
        if (!isWanted) expect(Number(over.toPrecision(2)) / over).toBeCloseTo(1, 9);
      }),
    );
  });

  test.each([
    ['half a frame at 1050 fps', 1 / 2100, 2100],
    ['half a frame at 625 fps', 1 / 1250, 1250],
    ['a little over 1/1280 s', 1 / 1279.9, 1300],
    ['1/105 s', 1 / 105, 105],
    ['3 px of 43.3 px/ms', 3 / 43_300, 15_000],
    ['half a second', 0.5, 2],
  ])('%s is set as 1/x of a round x', (_title, wanted_s, over) => {
    expect(1 / settableExposureAtOrBelow(wanted_s)).toBeCloseTo(over, 6);
  });

  test('longer than a second still never grows', () => {
    fc.assert(fc.property(between(1, 3600), (wanted_s) => settableExposureAtOrBelow(wanted_s) <= wanted_s));
  });
});

describe('stop', () => {
  test('at or above is not wider than asked, at or below not narrower, both within a third', () => {
    fc.assert(
      fc.property(between(0.7, 64), (stop) => {
        const [narrower, wider] = [settableStopAtOrAbove(stop), settableStopAtOrBelow(stop)];
        expect(narrower).toBeGreaterThanOrEqual(stop * (1 - HAIR));
        expect(wider).toBeLessThanOrEqual(stop * (1 + HAIR));
        expect(thirdsAboveOne(narrower) - thirdsAboveOne(stop)).toBeLessThan(1);
        expect(thirdsAboveOne(stop) - thirdsAboveOne(wider)).toBeLessThan(1);
      }),
    );
  });

  test('that is a third of a stop already stays', () => {
    fc.assert(
      fc.property(fc.integer({ min: -3, max: 36 }), (thirds) => {
        const stop = stopFromThirds(thirds);
        expect(settableStopAtOrAbove(stop)).toBe(stop);
        expect(settableStopAtOrBelow(stop)).toBe(stop);
      }),
    );
  });
});

describe('round numbers', () => {
  test('up is not below, down not above, and both within one in the last figure', () => {
    fc.assert(
      fc.property(between(-9, 9), fc.integer({ min: 1, max: 4 }), (magnitude, digits) => {
        const value = 10 ** magnitude;
        const [up, down] = [roundedUp(value, digits), roundedDown(value, digits)];
        expect(up).toBeGreaterThanOrEqual(value * (1 - HAIR));
        expect(down).toBeLessThanOrEqual(value * (1 + HAIR));
        expect((up - down) / value).toBeLessThanOrEqual(10 ** (1 - digits) * (1 + HAIR));
        expect([roundedUp(up, digits), roundedDown(down, digits)]).toEqual([up, down]);
      }),
    );
  });

  test('of nothing is nothing, and of less than nothing keeps its side', () => {
    expect([roundedUp(0), roundedDown(0)]).toEqual([0, 0]);
    expect([roundedUp(-1234), roundedDown(-1234)]).toEqual([-1200, -1300]);
  });
});
