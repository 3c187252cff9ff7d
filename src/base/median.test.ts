import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bulkSpreadOf, medianOf, quantileInPlace } from './median.ts';

test.each([
  [[3], 3],
  [[4, 1], 2.5],
  [[9, 1, 5], 5],
  [[1, 2, 3, 1000], 2.5],
])('the median of %j is %d', (values, expected) => expect(medianOf(values)).toBe(expected));

test('a quarter of evenly spread values lie below their first quarter', () => {
  expect(
    quantileInPlace(
      Float64Array.from({ length: 101 }, (_, i) => 100 - i),
      0.25,
    ),
  ).toBe(25);
});

test('the median leaves what it is given as it was, in any order', () => {
  fc.assert(
    fc.property(fc.array(fc.integer(), { minLength: 1 }), (values) => {
      const before = [...values];
      expect(medianOf(values)).toBe(medianOf([...values].reverse()));
      expect(values).toEqual(before);
    }),
  );
});

test('the median is the middle of the values in order, many alike among them', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 1, maxLength: 200 }), (values) => {
      expect(medianOf(values)).toBe(quantileInPlace(Float64Array.from(values), 0.5));
    }),
  );
  fc.assert(
    fc.property(fc.array(fc.double({ noNaN: true, min: -1e9, max: 1e9 }), { minLength: 1 }), (values) => {
      expect(medianOf(values)).toBeCloseTo(quantileInPlace(Float64Array.from(values), 0.5), 6);
    }),
  );
});

test('the spread of the bulk is a normal spread’s for its median distance, and wild values hardly move it', () => {
  // Half of a normal spread lies within 0.67449 of itself: here half lies within 50.
  const even = Array.from({ length: 201 }, (_, i) => i - 100);
  expect(bulkSpreadOf(even)).toBeCloseTo(50 / 0.67449, 3);
  expect(bulkSpreadOf([...even, 1e9, -1e9]) / bulkSpreadOf(even)).toBeCloseTo(1, 1);
});

test('of no values there is no middle', () => expect(() => medianOf([])).toThrow(RangeError));
