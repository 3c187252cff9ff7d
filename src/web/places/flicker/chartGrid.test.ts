import { describe, expect, test } from 'vitest';
import { sineWaveform } from '../../../laws/flicker/waveform.ts';
import { isolines } from '../reckoner/contour.ts';
import { axesAround, between, exposuresAlong, fractionAt, indexOf, placeOfSwing, placesOf, ratesAlong, SWING_SCALE } from './chartGrid.ts'; // prettier-ignore

const groupsOf = (isMainsLocked: boolean) => [
  { waveform: sineWaveform({ ripple_Hz: 100, depthFraction: 0.2 }), shareFraction: 1, isMainsLocked },
];
const GROUPS = groupsOf(true);
const AT = { rate_fps: 1000, exposureTime_s: 1 / 2000 };

describe('how far the chart runs', () => {
  test('is to ten times slower, a little beyond the highest rate of the mode, and to the longest shutter that fits', () => {
    const { rate, shutter } = axesAround(AT, 1062);
    expect([rate.from, rate.to]).toEqual([100, 2000]);
    expect(shutter.to).toBeCloseTo(0.01, 12);
    expect(shutter.from).toBeLessThanOrEqual(AT.exposureTime_s / 4);
  });

  test('holds where it stands, also at the highest rate there is and where that is not known', () => {
    for (const highest of [undefined, 1000, 200, 25_000]) {
      const { rate, shutter } = axesAround(AT, highest);
      expect(rate.from).toBeLessThan(1000);
      expect(rate.to).toBeGreaterThan(1000);
      expect(shutter.from).toBeLessThan(AT.exposureTime_s);
    }
  });
});

describe('what is worked out', () => {
  const { rate, shutter } = axesAround(AT, 1062);
  const [rates, exposures] = [ratesAlong(rate, GROUPS, 937), exposuresAlong(shutter, GROUPS, 1 / 2345)];

  test('holds the rate in step with the lamp, the shutter of a whole period, and where the shot stands, exactly', () => {
    expect([...rates]).toContain(100);
    expect([...rates]).toContain(937);
    expect([...exposures]).toContain(1 / 2345);
    expect([...exposures].some((time_s) => Math.abs(time_s - 0.01) < 1e-12)).toBe(true);
  });

  test('rises from end to end', () => {
    for (const values of [rates, exposures])
      expect([...values].every((value, i) => i === 0 || value > values[i - 1]!)).toBe(true);
    expect(rates[0]! / rate.from).toBeCloseTo(1, 4);
    expect(rates.at(-1)! / rate.to).toBeCloseTo(1, 4);
  });

  test('lies close beside an exact value, so that the way past it is drawn as narrow as it is', () => {
    const slow = { scale: 'log', from: 20, to: 200 } as const;
    const near = [...ratesAlong(slow, GROUPS, 77)].filter((value) => Math.abs(value / 50 - 1) < 0.007);
    expect(near.map((value) => value / 50)).toEqual([0.996, 1, 1.004]);
  });

  test('takes no rate to be in step with a lamp that keeps its own', () => {
    const slow = { scale: 'log', from: 20, to: 200 } as const;
    expect([...ratesAlong(slow, groupsOf(false), 77)]).not.toContain(50);
    expect([...exposuresAlong(shutter, groupsOf(false), 1e-3)].some((time_s) => Math.abs(time_s - 0.01) < 1e-12)).toBe(true); // prettier-ignore
  });
});

describe('places on the grid', () => {
  const sorted = Float64Array.from([1, 2, 4, 16]);

  test('are found by how many times, held at the ends', () => {
    expect(indexOf(sorted, Math.SQRT2)).toBeCloseTo(0.5, 12);
    expect(indexOf(sorted, 8)).toBeCloseTo(2.5, 12);
    expect([indexOf(sorted, 0.1), indexOf(sorted, 16), indexOf(sorted, 99)]).toEqual([0, 3, 3]);
  });

  test('lie on the axis where their values do, also where steps are uneven', () => {
    const axis = { scale: 'log', from: 1, to: 16 } as const;
    expect([0, 1, 2.5, 3].map((index) => fractionAt(axis, sorted, index))).toEqual([0, 0.25, 0.75, 1]);
  });
});

describe('swings', () => {
  const swings = {
    rates_fps: Float64Array.from([100, 200, 400]),
    exposures_s: Float64Array.from([0.001, 0.002, 0.004, 0.008]),
    stops: Float32Array.from([0.01, 0.1, 1, Infinity, 0.01, 0.1, 1, NaN, 0.01, 0.1, NaN, NaN]),
  };
  const grid = placesOf(swings);

  test('are placed by how many times, from the least told apart to a frame that can be dark', () => {
    expect([placeOfSwing(0), placeOfSwing(SWING_SCALE.least)]).toEqual([0, 0]);
    expect([placeOfSwing(Infinity), placeOfSwing(SWING_SCALE.most)]).toEqual([1, 1]);
    expect(placeOfSwing(0.1) - placeOfSwing(0.01)).toBeCloseTo(placeOfSwing(1) - placeOfSwing(0.1), 12);
  });

  test('go on above the longest shutter that fits, and so the lines of equal swing meet its edge', () => {
    expect(grid.values[11]).toBeCloseTo(placeOfSwing(0.1), 6);
    expect([...grid.values].some(Number.isNaN)).toBe(false);
    const [line] = isolines(grid, placeOfSwing(0.03));
    expect(line!.points.map(({ x }) => x)).toEqual(expect.arrayContaining([0, 2]));
  });

  test('are read between the grid points', () => {
    expect(between(grid, 0.5, 0.5)).toBeCloseTo((placeOfSwing(0.01) + placeOfSwing(0.1)) / 2, 6);
    expect(between(grid, 2, 3)).toBeCloseTo(grid.values[11]!, 12);
  });
});
