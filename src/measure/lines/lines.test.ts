import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { drawFour, drawKey } from '../../base/randomStream.ts';
import { basisOf, faded, spectrumGrid, waveAt, withoutTrend } from './basis.ts';
import { agreedOn_Hz, candidates_Hz } from './candidates.ts';
import { findLines, leastFound } from './findLines.ts';
import { amplitudeOf, fittedRobustly, phaseOf_rad, precisionOf, refined } from './fit.ts';

/** Normal noise by Box and Muller, the same on every run. */
function noiseOf(seed: number, count: number): Float64Array {
  const key = drawKey(seed, 'lines');
  const four = new Float64Array(4);
  return Float64Array.from({ length: count }, (_, i) => {
    drawFour(key, i, 0, 0, four);
    return Math.sqrt(-2 * Math.log(four[0]!)) * Math.cos(2 * Math.PI * four[1]!);
  });
}

const even = (frameCount: number) => new Float64Array(frameCount).fill(1);
const gridOf = (frameCount: number, frameRate_fps: number, degree = 4) =>
  spectrumGrid(basisOf({ frameRate_fps, weights: even(frameCount), degree }));
const fadedGridOf = (weights: Float64Array) =>
  spectrumGrid(basisOf({ frameRate_fps: 1000, weights: faded(weights), degree: 4 }));

/** The series of a check value worked out by an independent reference: a ramp times a flicker, with a fixed scatter. */
function checkSeries(): Float64Array {
  const [count, frameRate_fps] = [240, 960];
  return Float64Array.from({ length: count }, (_, i) => {
    const scatter = 0.003 * Math.sin(12.9898 * (i + 1) * (i + 1 + 5));
    const flicker = 0.02 * Math.cos((2 * Math.PI * 100.2 * i) / frameRate_fps + 0.7);
    return Math.log((1 + (0.2 * i) / (count - 1)) * Math.exp(flicker + scatter));
  });
}

function checkWave() {
  const grid = gridOf(240, 960, 3);
  const rest = withoutTrend(grid.basis, checkSeries());
  const power = grid.powerOf(rest);
  const top = power.indexOf(Math.max(...power));
  return refined(grid.basis, rest, top * grid.step_Hz, grid.step_Hz);
}

published('rate of the flicker in a ramp', () => checkWave().rate_Hz, [
  { source: 'flicker-check-values', at: 'row of the estimate, rate', given: undefined, expected: '100.182' },
]);
published('size of the flicker in a ramp', () => amplitudeOf(checkWave()), [
  { source: 'flicker-check-values', at: 'row of the estimate, amplitude', given: undefined, expected: '0.0202648' },
]);
published('swing of the flicker in a ramp', () => (2 * amplitudeOf(checkWave())) / Math.LN2, [
  { source: 'flicker-check-values', at: 'row of the estimate, swing', given: undefined, expected: '0.0584719' },
]);
published('least deviation of the rate', (given: Parameters<typeof precisionOf>[0]) => precisionOf(given).rate_Hz, [
  {
    source: 'flicker-check-values',
    at: 'row of the bound',
    given: { amplitude: 0.04, spread: 0.01, weights: even(500), frameRate_fps: 960 },
    expected: '0.0167372',
  },
]);

describe('the power of a spectrum', () => {
  const weights = even(96).map((_, i) => (i % 17 === 4 || (i > 40 && i < 47) ? 0 : i % 5 === 0 ? 0.5 : 1));
  const basis = basisOf({ frameRate_fps: 1000, weights, degree: 3 });
  const grid = spectrumGrid(basis);
  const noise = noiseOf(1, 96);
  const series = Float64Array.from(noise, (value, i) => value + 0.1 * i + Math.cos(i));
  const rest = withoutTrend(basis, series);

  test('is at every point what the joint fit takes off, frames missing or not', () => {
    const power = grid.powerOf(rest);
    for (let k = 0; k < grid.points; k += 1) {
      const { power: direct } = waveAt(basis, rest, k * grid.step_Hz);
      expect(Math.abs(power[k]! - direct)).toBeLessThan(1e-6 * (1 + direct));
    }
  });

  test('is the drop of the squares that are left', () => {
    const { rate_Hz, cosine, sine, power } = waveAt(basis, rest, 137);
    const squares = (values: Float64Array) => values.reduce((sum, value, i) => sum + weights[i]! * value * value, 0);
    const wave = Float64Array.from(rest, (_, i) => {
      const turn = (2 * Math.PI * rate_Hz * i) / 1000;
      return cosine * Math.cos(turn) + sine * Math.sin(turn);
    });
    const left = withoutTrend(basis, rest.map((value, i) => value - wave[i]!));
    expect(squares(rest) - squares(left)).toBeCloseTo(power, 8);
  });

  test('does not see a trend, whatever its size', () => {
    const bent = series.map((value, i) => value + 5 + 0.3 * i - 0.02 * i * i + 1e-4 * i ** 3);
    const power = grid.powerOf(withoutTrend(basis, bent));
    grid.powerOf(rest).forEach((expected, k) => expect(power[k]).toBeCloseTo(expected, 7));
  });
}); // prettier-ignore

test('a wave is found with its rate, size and phase, wherever they lie', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 25, max: 475, noNaN: true }),
      fc.double({ min: -3, max: 3, noNaN: true }),
      fc.double({ min: 0.001, max: 0.5, noNaN: true }),
      (rate_Hz, phase_rad, amplitude) => {
        const series = Float64Array.from({ length: 200 }, (_, i) => 0.2 + 1e-3 * i + amplitude * Math.cos((2 * Math.PI * rate_Hz * i) / 1000 + phase_rad)); // prettier-ignore
        const grid = fadedGridOf(even(200));
        const [line] = findLines(grid, series, { least_Hz: 10, mostChance: 0.01, mostLines: 1 });
        expect(line!.wave.rate_Hz).toBeCloseTo(rate_Hz, 2);
        expect(amplitudeOf(line!.wave) / amplitude).toBeCloseTo(1, 2);
        expect(Math.abs(Math.sin((phaseOf_rad(line!.wave) - phase_rad) / 2))).toBeLessThan(0.02);
      },
    ),
    { numRuns: 40 },
  );
});

describe('lines among noise and action', () => {
  const COUNT = 300;
  const grid = fadedGridOf(even(COUNT));
  const search = { least_Hz: 20, mostChance: 0.01, mostLines: 4 };
  /** Logarithm of the light: an action that brightens by about 60 %, noise of 0.4 %, and a flicker. */
  const clip = (seed: number, amplitude: number, rate_Hz = 100.3) => {
    const noise = noiseOf(seed, COUNT);
    return Float64Array.from(noise, (value, i) =>
      Math.log(1 + 0.3 * Math.tanh((i - 120) / 20)) + 0.004 * value + amplitude * Math.cos((2 * Math.PI * rate_Hz * i) / 1000 + seed)); // prettier-ignore
  };
  const CLIPS = 200;
  const seeds = Array.from({ length: CLIPS }, (_, i) => i + 1);

  test('steady light is called flicker in no more than one clip in fifty', () => {
    const wrong = seeds.filter((seed) => findLines(grid, clip(seed, 0), search).length > 0);
    expect(wrong.length).toBeLessThanOrEqual(CLIPS / 50);
  });

  test.each([0.005, 0.01, 0.03])('flicker of %d is found in 95 clips of 100, at its rate', (amplitude) => {
    const right = seeds.filter((seed) => {
      const [line] = findLines(grid, clip(seed, amplitude), search);
      return line !== undefined && Math.abs(line.wave.rate_Hz - 100.3) < 0.5;
    });
    expect(right.length).toBeGreaterThanOrEqual(0.95 * CLIPS);
  });

  test('what is said to be the least that would be found is found in nine clips of ten, and half of it is not', () => {
    const { amplitude: least, from_Hz } = leastFound(grid, clip(1, 0), search);
    const found = (amplitude: number, rate_Hz?: number) =>
      seeds.slice(0, 60).filter((seed) => findLines(grid, clip(seed, amplitude, rate_Hz), search).length > 0).length;
    expect(found(least)).toBeGreaterThanOrEqual(52);
    expect(found(0.5 * least)).toBeLessThan(30);
    // The slowest rates have few others beside them to tell the noise from.
    expect(from_Hz).toBeLessThan(4 * search.least_Hz);
    for (const rate_Hz of [from_Hz, 2 * from_Hz, 333.3, 470]) expect(found(least, rate_Hz)).toBeGreaterThanOrEqual(52);
  });

  test('beside a movement it is said from which rate on, and a wave of that size is found there', () => {
    // What moves comes in gusts: its spectrum falls as the square of the rate.
    const gusts = (seed: number) => {
      let sum = 0;
      const even = noiseOf(seed + 1000, COUNT);
      return noiseOf(seed, COUNT).map((value, i) => {
        sum = 0.98 * sum + 0.004 * value;
        return sum + 0.002 * even[i]!;
      });
    };
    const right = seeds.slice(0, 40).filter((seed) => {
      const { amplitude, from_Hz } = leastFound(grid, gusts(seed), search);
      expect(from_Hz).toBeGreaterThan(2 * search.least_Hz);
      const rate_Hz = Math.min(480, 1.3 * from_Hz);
      const series = gusts(seed).map((value, i) => value + amplitude * Math.cos((2 * Math.PI * rate_Hz * i) / 1000));
      return findLines(grid, series, search).some(({ wave }) => Math.abs(wave.rate_Hz - rate_Hz) < 2);
    });
    expect(right.length).toBeGreaterThanOrEqual(34);
    const wrong = seeds.filter((seed) => {
      const { from_Hz } = leastFound(grid, gusts(seed), search);
      return findLines(grid, gusts(seed), search).some(({ wave }) => wave.rate_Hz > from_Hz);
    });
    expect(wrong.length).toBeLessThanOrEqual(CLIPS / 50);
  }); // prettier-ignore

  test.each([
    ['all frames weighing the same', even(COUNT)],
    ['frames fading in and out', faded(even(COUNT))],
  ])('with %s, the spread of rates and sizes over clips is what theory says', (_, weights) => {
    const of = spectrumGrid(basisOf({ frameRate_fps: 1000, weights, degree: 4 }));
    const lines = seeds.map((seed) => {
      const series = noiseOf(seed, COUNT).map((value, i) => 0.004 * value + 0.01 * Math.cos((2 * Math.PI * 150.2 * i) / 1000)); // prettier-ignore
      return findLines(of, series, search)[0]!;
    });
    const bound = precisionOf({ frameRate_fps: 1000, weights, amplitude: 0.01, spread: 0.004 });
    const rms = (offs: readonly number[]) => Math.sqrt(offs.reduce((sum, off) => sum + off * off, 0) / offs.length);
    // Two hundred clips tell a spread to a twentieth of itself.
    for (const part of [
      rms(lines.map(({ wave }) => wave.rate_Hz - 150.2)) / bound.rate_Hz,
      rms(lines.map(({ wave }) => amplitudeOf(wave) - 0.01)) / bound.amplitude,
      rms(lines.map(({ wave }) => phaseOf_rad(wave))) / bound.phase_rad,
    ]) {
      expect(part).toBeGreaterThan(0.85);
      expect(part).toBeLessThan(1.15);
    }
    const spread = lines.reduce((sum, line) => sum + line.spread, 0) / CLIPS;
    expect(Math.abs(spread / 0.004 - 1)).toBeLessThan(0.1);
  });

  test('two lamps are both found, and the side lobes of a strong one are not', () => {
    const series = noiseOf(7, COUNT).map((value, i) => 1e-4 * value + 0.2 * Math.cos(0.7 * i) + 0.002 * Math.cos(0.9 * i + 1)); // prettier-ignore
    const lines = findLines(grid, series, { ...search, mostLines: 8 });
    expect(lines.map(({ wave }) => Math.round((wave.rate_Hz * 2 * Math.PI) / 10) / 100)).toEqual([0.7, 0.9]);
  });

  test('a wave a hair below half the frame rate is as large as the frames show it, not as it might be between them', () => {
    const grid = fadedGridOf(even(260));
    const series = noiseOf(9, 260).map((value, i) => 1e-4 * (value + (i % 2 === 0 ? 3 : -3)));
    const [line] = findLines(grid, series, { least_Hz: 10, mostChance: 0.01, mostLines: 1 });
    expect(line!.wave.rate_Hz).toBeCloseTo(500, 6);
    expect(amplitudeOf(line!.wave)).toBeCloseTo(3e-4, 4);
  });

  test('frames that are missing keep their place in time', () => {
    const series = clip(3, 0.02);
    const weights = even(COUNT).map((_, i) => ((i > 60 && i < 75) || i % 31 === 0 ? 0 : 1));
    const gaps = fadedGridOf(weights);
    const wild = series.map((value, i) => (weights[i] === 0 ? 17 : value));
    const [line] = findLines(gaps, wild, search);
    expect(line!.wave.rate_Hz).toBeCloseTo(100.3, 0);
  });

  test('a frame far off moves a robust fit less than a plain one', () => {
    const series = noiseOf(5, COUNT).map(
      (value, i) => 1e-3 * value + 0.02 * Math.cos((2 * Math.PI * 100.3 * i) / 1000),
    );
    const struck = series.map((value, i) => (i % 40 === 3 ? value + 0.3 : value));
    const plain = waveAt(grid.basis, withoutTrend(grid.basis, struck), 100.3);
    const { wave } = fittedRobustly(grid.basis, struck, plain, grid.step_Hz);
    expect(Math.abs(amplitudeOf(wave) - 0.02)).toBeLessThan(5e-4);
    expect(Math.abs(amplitudeOf(plain) - 0.02)).toBeGreaterThan(1e-3);
  });
});

describe('rates that look alike', () => {
  test('of a beat of 4 Hz at 24 a second are those of the published list', () => {
    const list =
      '4, 20, 28, 44, 52, 68, 76, 92, 100, 116, 124, 140, 148, 164, 172, 188, 196, 212, 220, 236, 244, 260, 268, 284, 292, 308, 316';
    expect(candidates_Hz({ beat_Hz: 4, frameRate_fps: 24, limit_Hz: 320 }).join(', ')).toBe(list);
  });

  test('three clips agree on 100 Hz alone', () => {
    const beats = [
      { beat_Hz: 4, frameRate_fps: 24, deviation_Hz: 0.02 },
      { beat_Hz: 0, frameRate_fps: 25, deviation_Hz: 0.02 },
      { beat_Hz: 10, frameRate_fps: 30, deviation_Hz: 0.02 },
    ];
    expect(agreedOn_Hz(beats, 320)).toEqual([100]);
  });

  test('none agree where none can, and no clip leaves none', () => {
    const beats = [
      { beat_Hz: 4, frameRate_fps: 24, deviation_Hz: 0.02 },
      { beat_Hz: 11.7, frameRate_fps: 25, deviation_Hz: 0.02 },
    ];
    expect(agreedOn_Hz(beats, 320)).toEqual([]);
    expect(agreedOn_Hz([], 320)).toEqual([]);
  });

  test.each([
    [0, [24, 48]],
    [12, [12, 36]],
  ])('a beat of %d Hz stands for each rate once', (beat_Hz, expected) =>
    expect(candidates_Hz({ beat_Hz, frameRate_fps: 24, limit_Hz: 50 })).toEqual(expected),
  );

  test('a beat beyond half the frame rate is refused', () =>
    expect(() => candidates_Hz({ beat_Hz: 13, frameRate_fps: 24, limit_Hz: 50 })).toThrow(/beat_Hz/));
});

test.each([
  [{ frameRate_fps: 0 }, /frameRate_fps/],
  [{ weights: new Float64Array(10) }, /weight/],
  [{ degree: -1 }, /degree/],
])('a basis of %j is refused', (wrong, says) => {
  expect(() => basisOf({ frameRate_fps: 100, weights: even(10), degree: 2, ...wrong })).toThrow(says);
});
