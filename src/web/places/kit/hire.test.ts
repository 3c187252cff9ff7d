import { expect, test } from 'vitest';
import { readShoot } from '../../../document/read.ts';
import { hireOf } from './hire.ts';

test('the day prices of what is to be hired are summed, of every kind, and what has none is counted', () => {
  const { shoot } = readShoot({
    longsecond: 1,
    kit: {
      cameras: { a: { availability: 'hire', dayPrice: 1200.5 }, b: { dayPrice: 900 } },
      lenses: { c: { availability: 'hire', dayPrice: 80 }, d: { availability: 'hire' }, e: { availability: 'unwanted', dayPrice: 50 } },
    },
  });
  expect(hireOf(shoot.kit)).toEqual({ pieceCount: 5, hiredCount: 3, dayPrice: 1280.5, withoutPriceCount: 1 });
}); // prettier-ignore

test('an empty kit costs nothing', () => {
  const { shoot } = readShoot({ longsecond: 1 });
  expect(hireOf(shoot.kit)).toEqual({ pieceCount: 0, hiredCount: 0, dayPrice: 0, withoutPriceCount: 0 });
});
