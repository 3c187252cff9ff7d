import fc from 'fast-check';
import { expect, test } from 'vitest';
import { stepWritten } from './stepping.ts';

test.each([
  ['240 mm', 1, '250 mm'],
  ['240 mm', -1, '230 mm'],
  ['243 mm', 1, '250 mm'],
  ['10 px', -1, '9.8 px'],
  ['1.2 s', 1, '1.25 s'],
  ['200 mm', -1, '195 mm'],
  ['−2 stops', 1, '−1.95 stops'],
  ['41 klx ± 10 %', 1, '42 klx ± 10 %'],
] as const)('%s stepped by %d is %s', (text, direction, next) => expect(stepWritten(text, direction)).toBe(next));

test.each(['', 'solved', '1/2000 s', '0 mm', 'T5.6'])('%s has no next value', (text) =>
  expect(stepWritten(text, 1)).toBeUndefined(),
);

test('up and then down comes back to any value that is itself a step', () => {
  fc.assert(
    fc.property(fc.integer({ min: 20, max: 49 }), fc.integer({ min: -3, max: 4 }), (lead, power) => {
      const text = `${Number((lead * 10 ** power).toPrecision(6))} mm`;
      expect(stepWritten(stepWritten(text, 1)!, -1)).toBe(text);
    }),
  );
});
