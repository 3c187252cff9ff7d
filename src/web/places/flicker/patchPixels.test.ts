import { describe, expect, test } from 'vitest';
import { codeOf, greyOf, paintLevel } from './patchPixels.ts';

describe('the code of a luminance', () => {
  test('of 18 % grey is 118, and of levels beyond the screen is held at its ends', () => {
    // Known to the trade: 18 % grey is code 118, and half the code is 21.4 % of the light; no source.
    expect(Math.round(codeOf(0.18))).toBe(118);
    expect(codeOf(0.214)).toBeCloseTo(127.5, 1);
    expect(codeOf(-1)).toBe(0);
    expect(codeOf(7)).toBeCloseTo(255, 9);
    expect(greyOf(0.18)).toBe('rgb(118 118 118)');
  });
});

describe('a painted square', () => {
  const meanOf = (level: number) => {
    const pixels = new Uint8ClampedArray(4 * 32 * 32);
    paintLevel(pixels, 32, level);
    let sum = 0;
    for (let at = 0; at < pixels.length; at += 4) sum += pixels[at]!;
    return { pixels, mean: sum / (32 * 32) };
  };

  test.each([0.0931, 0.2, 0.40123, 0.015])('of %f comes to its level to a sixty-fourth of a step', (level) => {
    expect(Math.abs(meanOf(level).mean - codeOf(level))).toBeLessThanOrEqual(1 / 64);
  });

  test('is grey and opaque, from two neighbouring steps', () => {
    const { pixels } = meanOf(0.40123);
    const low = Math.floor(codeOf(0.40123));
    for (let at = 0; at < pixels.length; at += 4) {
      expect(pixels[at + 1]).toBe(pixels[at]);
      expect(pixels[at + 2]).toBe(pixels[at]);
      expect([low, low + 1]).toContain(pixels[at]);
      expect(pixels[at + 3]).toBe(255);
    }
  });

  test('tells two levels apart that are a hundredth of a stop from each other', () => {
    const [a, b] = [meanOf(0.02).mean, meanOf(0.02 * 2 ** 0.01).mean];
    expect(b - a).toBeGreaterThan(1 / 64);
  });
});
