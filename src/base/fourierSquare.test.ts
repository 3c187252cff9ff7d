import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fourier } from './fourier.ts';
import { createSquareTransform } from './fourierSquare.ts';

/** Row by row and then column by column, each a transform of its own. */
function byRowsAndColumns(picture: readonly number[], side: number): { readonly real: number[]; readonly imaginary: number[] } {
  const [real, imaginary] = [[...picture], picture.map(() => 0)];
  const along = (places: readonly number[]): void => {
    const [r, m] = [Float64Array.from(places, (i) => real[i]!), Float64Array.from(places, (i) => imaginary[i]!)];
    fourier(r, m);
    places.forEach((i, k) => {
      real[i] = r[k]!;
      imaginary[i] = m[k]!;
    });
  };
  const every = Array.from({ length: side }, (_, i) => i);
  for (const y of every) along(every.map((x) => y * side + x));
  for (const x of every) along(every.map((y) => y * side + x));
  return { real, imaginary };
} // prettier-ignore

describe.each([2, 4, 8, 16, 32, 64])('a square of %d', (side) => {
  const { forth, back, across, down, opposite } = createSquareTransform(side);
  const picture = Array.from({ length: side * side }, (_, i) => Math.cos(1.7 * i) + 0.3 * Math.sin(0.01 * i * i));

  test('has the rates that its rows and columns have, each at its place', () => {
    const expected = byRowsAndColumns(picture, side);
    const [real, imaginary] = [Float64Array.from(picture), new Float64Array(side * side)];
    forth(real, imaginary);
    real.forEach((value, i) => {
      const k = down[i]! * side + across[i]!;
      expect(Math.abs(value - expected.real[k]!)).toBeLessThan(1e-9);
      expect(Math.abs(imaginary[i]! - expected.imaginary[k]!)).toBeLessThan(1e-9);
    });
  });

  test('is itself again, side² times as large, after going forth and back', () => {
    const [real, imaginary] = [Float64Array.from(picture), Float64Array.from(picture, (value) => 1 - value)];
    forth(real, imaginary);
    back(real, imaginary);
    picture.forEach((value, i) => {
      expect(Math.abs(real[i]! / side ** 2 - value)).toBeLessThan(1e-12);
      expect(Math.abs(imaginary[i]! / side ** 2 - (1 - value))).toBeLessThan(1e-12);
    });
  });

  test('has opposite rates at opposite places, each once', () => {
    opposite.forEach((to, i) => {
      expect([(across[i]! + across[to]!) % side, (down[i]! + down[to]!) % side]).toEqual([0, 0]);
      expect(opposite[to]).toBe(i);
    });
    expect(new Set(Array.from(across, (x, i) => down[i]! * side + x)).size).toBe(side * side);
  });
});

test('a sum of squares has the transform of a sum', () => {
  const { forth } = createSquareTransform(8);
  const square = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 64, maxLength: 64 });
  const of = (values: readonly number[]) => {
    const [real, imaginary] = [Float64Array.from(values), new Float64Array(64)];
    forth(real, imaginary);
    return [...real, ...imaginary];
  };
  fc.assert(
    fc.property(square, square, (a, b) => {
      const [fa, fb] = [of(a), of(b)];
      of(a.map((value, i) => value + b[i]!)).forEach((value, i) => expect(value).toBeCloseTo(fa[i]! + fb[i]!, 9));
    }),
  );
});

test.each([0, 1, 3, 12, -4, 2.5])('a side of %d is refused', (side) =>
  expect(() => createSquareTransform(side)).toThrow(/side/),
);
