/** Held against numpy and scipy, whose figures are kept beside the script that worked them out. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { spectrumOf } from './flicker/spectrum.ts';
import { basisOf, spectrumGrid, withoutTrend } from './lines/basis.ts';
import { amplitudeOf, phaseOf_rad, refined } from './lines/fit.ts';
import { createCorrelator } from './phaseCorrelation.ts';

interface Fit {
  readonly rate_Hz: number;
  readonly amplitude: number;
  readonly phase_rad: number;
  readonly squares: number;
}

const figures = JSON.parse(
  readFileSync(new URL('../../test/footage/scipyCheck.json', import.meta.url), 'utf8'),
) as { readonly all: Fit; readonly missing: Fit; readonly lombScargle_Hz: number; readonly depths: { readonly rates_Hz: readonly number[]; readonly all: readonly number[]; readonly missing: readonly number[] }; readonly shifts: readonly { readonly given: readonly [number, number]; readonly found: readonly [number, number] }[] }; // prettier-ignore

const [RATE_fps, COUNT] = [800, 260];
const series = Float64Array.from({ length: COUNT }, (_, i) => {
  const scatter = 0.002 * Math.sin(12.9898 * (i + 1) * (i + 6));
  return 0.1 + 0.0015 * i - 3e-6 * i ** 2 + 0.012 * Math.cos((2 * Math.PI * 117.3 * i) / RATE_fps + 1.1) + scatter;
});
const isKept = (i: number): boolean => i % 11 !== 3 && !(i > 90 && i < 110);

function fitted(weights: Float64Array) {
  const grid = spectrumGrid(basisOf({ frameRate_fps: RATE_fps, weights, degree: 3 }));
  const rest = withoutTrend(grid.basis, series);
  const power = grid.powerOf(rest);
  const top = power.indexOf(Math.max(...power.subarray(Math.ceil(20 / grid.step_Hz))));
  return refined(grid.basis, rest, top * grid.step_Hz, grid.step_Hz);
}

describe.each([
  ['all frames there', figures.all, new Float64Array(COUNT).fill(1)],
  ['frames missing', figures.missing, Float64Array.from({ length: COUNT }, (_, i) => (isKept(i) ? 1 : 0))],
])('a wave beside a cubic trend, %s', (_, expected, weights) => {
  const wave = fitted(weights);
  test('has the rate of a search by lstsq', () => expect(Math.abs(wave.rate_Hz - expected.rate_Hz)).toBeLessThan(1e-4));
  test('has its amplitude and phase', () => {
    expect(Math.abs(amplitudeOf(wave) / expected.amplitude - 1)).toBeLessThan(1e-5);
    expect(Math.abs(phaseOf_rad(wave) - expected.phase_rad)).toBeLessThan(1e-4);
  });
  test('lies where a Lomb–Scargle periodogram has its top', () =>
    expect(Math.abs(wave.rate_Hz - figures.lombScargle_Hz)).toBeLessThan(0.05));
});

describe.each([
  ['all frames there', figures.depths.all, () => true],
  ['frames missing', figures.depths.missing, isKept],
])('the spectrum of light, %s', (_, expected, counts) => {
  const frameWeights = Float64Array.from({ length: COUNT }, (__, i) => (counts(i) ? 1 : 0));
  // What stands where a frame is missing must not matter.
  const light = series.map((value, i) => (counts(i) ? Math.exp(value) : 0));
  const { step_Hz, depthFraction } = spectrumOf({ light, frameWeights, frameRate_fps: RATE_fps })!;
  test.each(figures.depths.rates_Hz.map((rate_Hz, i) => [rate_Hz, expected[i]!]))(
    'is as deep at %d Hz as a weighted lstsq beside the trend has it',
    (rate_Hz, depth) => {
      expect((rate_Hz / step_Hz) % 1).toBe(0);
      expect(Math.abs(depthFraction[rate_Hz / step_Hz]! - depth)).toBeLessThan(1e-8 + 1e-6 * depth);
    },
  );
});

describe('the shift of a picture', () => {
  const SIDE = 64;
  const picture = (dx: number, dy: number) =>
    Float32Array.from({ length: SIDE * SIDE }, (_, i) => {
      let total = 0;
      for (let k = 0; k < 80; k += 1) {
        const [bx, by] = [((37.7 * k * k + 11.3 * k) % 84) - 10, ((23.9 * k * k + 5.1 * k) % 84) - 10];
        const far = ((i % SIDE) - bx - dx) ** 2 + (Math.floor(i / SIDE) - by - dy) ** 2;
        total += Math.sin(k + 1) * Math.exp(-far / (2 * (1.3 + 0.7 * Math.sin(k)) ** 2));
      }
      return total;
    });
  const { shift } = createCorrelator(SIDE);

  test.each(figures.shifts)('$given is what scipy’s transform finds, to the pixel', ({ given, found }) => {
    const [a, b] = [picture(0, 0), picture(...given)].map((values) => ({ values, stride: SIDE }));
    const { x, y } = shift(a!, b!, [{ left: 0, top: 0 }]);
    expect(found).toEqual(given);
    expect([Math.round(x), Math.round(y)]).toEqual(found);
  });
});
