import { describe, expect, test } from 'vitest';
import { spectrumOf } from './spectrum.ts';

const [RATE_fps, COUNT] = [1000, 600];
const clip = (light: (i: number) => number, isMissing: (i: number) => boolean = () => false, count = COUNT) => ({
  light: Float64Array.from({ length: count }, (_, i) => (isMissing(i) ? 0 : light(i))),
  frameWeights: Float64Array.from({ length: count }, (_, i) => (isMissing(i) ? 0 : 1)),
  frameRate_fps: RATE_fps,
});
const depthAt = (given: ReturnType<typeof clip>, rate_Hz: number): number => {
  const { step_Hz, depthFraction } = spectrumOf(given)!;
  return depthFraction[Math.round(rate_Hz / step_Hz)]!;
};
const wave = (rate_Hz: number, depth: number) => (i: number) =>
  0.3 * (1 + depth * Math.cos((2 * Math.PI * rate_Hz * i) / RATE_fps + 0.7));

describe('the spectrum of the light of a clip', () => {
  test.each([0.001, 0.02, 0.2])('shows a wave %d deep as that deep, to a hundredth of it', (depth) => {
    const { step_Hz } = spectrumOf(clip(() => 0.3))!;
    const rate_Hz = 260 * step_Hz;
    expect(depthAt(clip(wave(rate_Hz, depth)), rate_Hz) / depth).toBeCloseTo(1, 1.9);
  });

  test('shows it as deep where frames are missing, whatever stands in their place', () => {
    const { step_Hz } = spectrumOf(clip(() => 0.3))!;
    const rate_Hz = 260 * step_Hz;
    const gaps = (i: number) => i % 9 === 2 || (i > 200 && i < 240);
    expect(depthAt(clip(wave(rate_Hz, 0.05), gaps), rate_Hz) / 0.05).toBeCloseTo(1, 1.9);
  });

  test('shows next to nothing of light that only drifts', () => {
    const { depthFraction } = spectrumOf(clip((i) => 0.2 * Math.exp(0.8 * (i / COUNT) ** 2 - 0.3 * (i / COUNT))))!;
    expect(Math.max(...depthFraction)).toBeLessThan(1e-6);
  });

  test('reaches from 0 to half the frame rate', () => {
    const { step_Hz, depthFraction, slowest_Hz } = spectrumOf(clip(wave(80, 0.1)))!;
    expect(step_Hz * (depthFraction.length - 1)).toBeCloseTo(RATE_fps / 2, 9);
    expect(slowest_Hz).toBeGreaterThan(0);
  });

  test('keeps within bounds at both ends, where cosine and sine are one', () => {
    const { depthFraction } = spectrumOf(clip((i) => 0.3 * (i % 2 === 0 ? 1.1 : 0.9)))!;
    expect(depthFraction.at(-1)! / (0.1 * Math.SQRT2)).toBeCloseTo(1, 1);
    expect(Math.max(...depthFraction)).toBeLessThan(0.15);
  });
});

test('a clip that is too short or too dark has none', () => {
  expect(spectrumOf(clip(() => 0.3, undefined, 23))).toBeUndefined();
  expect(spectrumOf(clip(() => 1e-6))).toBeUndefined();
  expect(
    spectrumOf(
      clip(
        () => 0.3,
        (i) => i > 10,
      ),
    ),
  ).toBeUndefined();
});

test('series of different lengths are refused', () => {
  expect(() => spectrumOf({ ...clip(() => 0.3), frameWeights: new Float64Array(3).fill(1) })).toThrow(/3 frames/);
});
