import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fourier, powerOfTwoFrom } from './fourier.ts';

/** The sum as it is written, without any of its symmetries. */
function bySum(values: readonly number[]): { readonly real: number[]; readonly imaginary: number[] } {
  const n = values.length;
  const part = (of: (turn: number) => number) =>
    Array.from({ length: n }, (_, k) => values.reduce((sum, x, i) => sum + x * of((2 * Math.PI * k * i) / n), 0));
  return { real: part(Math.cos), imaginary: part((turn) => -Math.sin(turn)) };
}

describe('a transform', () => {
  test.each([1, 2, 4, 16, 64])('of %i numbers is the sum that it stands for', (n) => {
    const values = Array.from({ length: n }, (_, i) => Math.cos(1.7 * i) + 0.3 * i);
    const [real, imaginary] = [Float64Array.from(values), new Float64Array(n)];
    fourier(real, imaginary);
    const expected = bySum(values);
    for (let k = 0; k < n; k += 1) {
      expect(real[k]).toBeCloseTo(expected.real[k]!, 9);
      expect(imaginary[k]).toBeCloseTo(expected.imaginary[k]!, 9);
    }
  });

  test('forth and back, both parts exchanged, gives the series again', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 32, maxLength: 32 }), (values) => {
        const [real, imaginary] = [Float64Array.from(values), new Float64Array(32)];
        fourier(real, imaginary);
        fourier(imaginary, real);
        for (let i = 0; i < 32; i += 1) expect(real[i]! / 32).toBeCloseTo(values[i]!, 12);
      }),
    );
  });

  test.each([0, 3, 12])('of %i numbers is refused', (n) => {
    expect(() => fourier(new Float64Array(n), new Float64Array(n))).toThrow(/power of two/);
  });
}); // prettier-ignore

test.each([
  [1, 1],
  [2, 2],
  [3, 4],
  [1000, 1024],
  [1024, 1024],
])('the least power of two from %i is %i', (least, power) => expect(powerOfTwoFrom(least)).toBe(power));
