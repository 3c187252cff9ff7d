import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitColumns } from './fitColumns.ts';

const wish = fc
  .tuple(fc.double({ min: 0, max: 500, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }))
  .map(([natural, share]) => ({ natural, least: natural * share }));
const sum = (widths: readonly number[]) => widths.reduce((total, width) => total + width, 0);

test('columns never take more than the room', () => {
  fc.assert(
    fc.property(fc.array(wish, { minLength: 1, maxLength: 12 }), fc.double({ min: 1, max: 2000, noNaN: true }), (wishes, room) => {
      expect(sum(fitColumns(wishes, room))).toBeLessThanOrEqual(room * (1 + 1e-9) + 1e-9);
    }),
  ); // prettier-ignore
});

test('a column is broken no further than its longest word while the longest words fit', () => {
  fc.assert(
    fc.property(fc.array(wish, { minLength: 1, maxLength: 12 }), fc.double({ min: 1, max: 2000, noNaN: true }), (wishes, room) => {
      fc.pre(sum(wishes.map(({ least }) => least)) < room);
      fitColumns(wishes, room).forEach((width, i) => expect(width).toBeGreaterThanOrEqual(wishes[i]!.least - 1e-6));
    }),
  ); // prettier-ignore
});

test('narrow columns keep their width: the widest is broken first', () => {
  expect(fitColumns([{ natural: 20, least: 20 }, { natural: 300, least: 40 }], 120)).toEqual([20, expect.closeTo(100, 6)]); // prettier-ignore
});
