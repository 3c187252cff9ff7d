import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { idFrom, ID_PATTERN } from './shootId.ts';

describe('ids made from titles', () => {
  test.each([
    ['Quince & Clover, day 1', 'quince-clover-day-1'],
    ['Crème brûlée', 'creme-brulee'],
    ['2 drops', 'shoot-2-drops'],
    ['滴', 'shoot'],
    ['', 'shoot'],
  ])('%j becomes %s', (title, id) => {
    expect(idFrom(title, () => false)).toBe(id);
  });

  test('any title gives an id, and one that is free', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 80 }),
        fc.integer({ min: 0, max: 3 }),
        (title, takenCount) => {
          const taken = new Set<string>();
          for (let i = 0; i <= takenCount; i += 1) {
            const id = idFrom(title, (other) => taken.has(other));
            expect(id).toMatch(ID_PATTERN);
            expect(taken).not.toContain(id);
            taken.add(id);
          }
        },
      ),
    );
  });
});
