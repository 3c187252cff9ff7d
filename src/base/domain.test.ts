import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  assertNever,
  requireCount,
  requireFinite,
  requireNotNegative,
  requirePositive,
  requireWithin,
} from './domain.ts';

const NO_NUMBERS = [NaN, Infinity, -Infinity];

describe('each guard lets its domain through and names what lies outside it', () => {
  test('positive: anything finite above zero', () => {
    fc.assert(
      fc.property(fc.double({ min: Number.MIN_VALUE, max: Number.MAX_VALUE, noNaN: true }), (length_m) => {
        expect(() => requirePositive({ length_m })).not.toThrow();
      }),
    );
    for (const bad of [...NO_NUMBERS, 0, -0, -1])
      expect(() => requirePositive({ width_m: 1, length_m: bad })).toThrow(
        new RangeError(`length_m must be positive and finite, got ${bad}`),
      );
  });

  test('not negative: zero too', () => {
    expect(() => requireNotNegative({ loss_stops: 0 })).not.toThrow();
    for (const bad of [...NO_NUMBERS, -1e-300])
      expect(() => requireNotNegative({ loss_stops: bad })).toThrow(
        new RangeError(`loss_stops must be zero or above and finite, got ${bad}`),
      );
  });

  test('finite: any number at all', () => {
    expect(() => requireFinite({ offset_stops: -1e308 })).not.toThrow();
    for (const bad of NO_NUMBERS)
      expect(() => requireFinite({ offset_stops: bad })).toThrow(
        new RangeError(`offset_stops must be finite, got ${bad}`),
      );
  });

  test('within: both ends and between', () => {
    fc.assert(
      fc.property(fc.double({ min: -2, max: 3, noNaN: true }), (share) => {
        expect(() => requireWithin(-2, 3, { share })).not.toThrow();
      }),
    );
    for (const bad of [...NO_NUMBERS, -2.000001, 3.000001])
      expect(() => requireWithin(-2, 3, { share: bad })).toThrow(
        new RangeError(`share must be from -2 to 3, got ${bad}`),
      );
  });

  test('count: whole numbers from the least upwards', () => {
    expect(() => requireCount({ frameCount: 0 })).not.toThrow();
    expect(() => requireCount({ frameCount: 1 }, 1)).not.toThrow();
    for (const bad of [...NO_NUMBERS, 1.5, 0, 2 ** 53])
      expect(() => requireCount({ frameCount: bad }, 1)).toThrow(
        new RangeError(`frameCount must be a whole number of at least 1, got ${bad}`),
      );
  });

  test('a text in the place of a number is refused', () => {
    const text = 'wide' as unknown as number;
    for (const guard of [requirePositive, requireNotNegative, requireFinite, requireCount])
      expect(() => guard({ width_m: text })).toThrow('width_m must be');
    expect(() => requireWithin(0, 1, { width_m: text })).toThrow('width_m must be');
  });
});

test('a branch that cannot be reached says what reached it', () => {
  expect(() => assertNever('tilted' as never)).toThrow(new RangeError('unexpected "tilted"'));
});
