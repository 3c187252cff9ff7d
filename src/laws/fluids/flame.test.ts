import { describe, expect, test } from 'vitest';
import { puffingFrequency_Hz } from './flame.ts';

describe('against measured fires', () => {
  test.each([
    [30.1, 2.64],
    [37, 2.31],
    [100.6, 1.37],
  ])('a pool of %f cm lies within 10 %% of pool-fires, measured at %f Hz', (diameter_cm, measured_Hz) => {
    expect(Math.abs(puffingFrequency_Hz({ diameter_m: diameter_cm / 100 }) / measured_Hz - 1)).toBeLessThan(0.1);
  });
});

test('a burner of 0.1 m puffs 4.7 times a second and one four times as wide half as often, worked by hand', () => {
  expect(puffingFrequency_Hz({ diameter_m: 0.1 })).toBeCloseTo(4.7, 1);
  expect(puffingFrequency_Hz({ diameter_m: 0.1 }) / puffingFrequency_Hz({ diameter_m: 0.4 })).toBeCloseTo(2, 12);
});

test('no burner at all is refused by name', () => {
  expect(() => puffingFrequency_Hz({ diameter_m: 0 })).toThrow('diameter_m must be positive and finite, got 0');
});
