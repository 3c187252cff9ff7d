import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lengthRuler } from './lengthRuler.ts';

const labels = (from_m: number, to_m: number, most: number, system: 'metric' | 'imperial' = 'metric') => {
  const { ticks, unit } = lengthRuler({ from_m, to_m, most, system });
  return `${ticks.map(({ label }) => label).join(' ')} ${unit}`;
};

describe('a ruler', () => {
  test.each([
    [-0.07, 0.07, 8, '60 40 20 0 20 40 60 mm'],
    [-0.0016, 0.0016, 8, '1.5 1 0.5 0 0.5 1 1.5 mm'],
    [-0.9, 0.9, 9, '0.8 0.6 0.4 0.2 0 0.2 0.4 0.6 0.8 m'],
  ])('from %d to %d m with room for %d ticks reads %s', (from_m, to_m, most, text) =>
    expect(labels(from_m, to_m, most)).toBe(text),
  );

  test('in inches counts in the parts of a tape', () => {
    expect(labels(-0.07, 0.07, 6, 'imperial')).toBe('2 1 0 1 2 in');
    expect(labels(-0.01, 0.01, 8, 'imperial')).toBe('0.375 0.25 0.125 0 0.125 0.25 0.375 in');
    expect(labels(-1, 1, 8, 'imperial')).toBe('3 2 1 0 1 2 3 ft');
  });

  test('never has more ticks than there is room for, and one at zero', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-4, max: 20, noNaN: true }),
        fc.integer({ min: 2, max: 20 }),
        fc.constantFrom('metric' as const, 'imperial' as const),
        (half_m, most, system) => {
          const { ticks } = lengthRuler({ from_m: -half_m, to_m: half_m, most, system });
          expect(ticks.length).toBeLessThanOrEqual(most + 1);
          expect(ticks.filter(({ at_m }) => at_m === 0)).toHaveLength(1);
        },
      ),
    );
  });
});
