import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nearestName } from './nearest.ts';

const NAMES = ['exposureTime_s', 'frameRate_fps', 'isoSpeed', 'stop', 'stopAllowed'];

test.each([
  ['exposuretime_s', 'exposureTime_s'],
  ['exposreTime_s', 'exposureTime_s'],
  ['framerate', 'frameRate_fps'],
  ['isospeed', 'isoSpeed'],
  ['isoSped', 'isoSpeed'],
  ['stpo', 'stop'],
])('%s was meant for %s', (typed, meant) => {
  expect(nearestName(typed, NAMES)).toBe(meant);
});

test('a name spelt in full is taken before a longer one that begins with it', () => {
  expect(nearestName('Stop', ['stopAllowed', 'stop'])).toBe('stop');
});

test('a word far from every name is left alone', () => {
  expect(nearestName('temperature', NAMES)).toBeUndefined();
  expect(nearestName('stop', [])).toBeUndefined();
});

test('of any list, a name of it is found under any case', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.stringMatching(/^[a-z]{3,12}$/), { minLength: 1 }), fc.nat(), (names, at) => {
      const name = names[at % names.length]!;
      expect(nearestName(name.toUpperCase(), names)).toBe(name);
    }),
  );
});

test('a very long word is answered as quickly as its first eighty letters', () => {
  expect(nearestName('x'.repeat(1_000_000), NAMES)).toBeUndefined();
});
