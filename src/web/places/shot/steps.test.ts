import { expect, test } from 'vitest';
import { stepFor } from './steps.ts';

test.each([
  ['stop', 'T5.6', 1, 'T5.6⅓'],
  ['stop', 'T5.6⅓', -1, 'T5.6'],
  ['stop', 'T11', -1, 'T8⅔'],
  ['shutter', '1/2000 s', 1, '1/1600 s'],
  ['shutter', '1/2000 s', -1, '1/2500 s'],
  ['shutter', '1/9100 s', 1, '1/8000 s'],
  ['shutter', '172.8°', 1, '175°'],
  ['index', '800', 1, '1000'],
  ['index', 'EI 800', -1, '640'],
  ['takes', '3', 1, '4'],
  ['frameWidth', '240 mm', 1, '250 mm'],
] as const)('%s: %s stepped by %d is %s', (key, text, direction, next) =>
  expect(stepFor(key)(text, direction)).toBe(next),
);

test('there are never fewer than no takes', () => expect(stepFor('takes')('0', -1)).toBeUndefined());
