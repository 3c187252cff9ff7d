import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawFour, drawKey, nameHash, philoxWords } from './randomStream.ts';

const hex = (words: Iterable<number>) => [...words].map((word) => word.toString(16).padStart(8, '0')).join(' ');
const all = (word: number) => [word, word, word, word] as const;

describe('published values', () => {
  test.each([
    ['zeros', [0, 0], all(0), '6627e8d5 e169c58d bc57ac4c 9b00dbd8'],
    ['ones', [0xffffffff, 0xffffffff], all(0xffffffff), '408f276d 41c83b0e a20bc7c6 6d5451fd'],
    ['digits of π', [0xa4093822, 0x299f31d0], [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344], 'd16cfe09 94fdcceb 5001e420 24126ea1'],
  ] as const)('the mixing agrees with philox-vectors, philox4x32 10, %s', (_, key, counter, expected) => {
    expect(hex(philoxWords(key, counter))).toBe(expected);
  }); // prettier-ignore

  test.each([
    ['', '811c9dc5'],
    ['a', 'e40c292c'],
    ['foob', '3f5076ef'],
    ['foobar', 'bf9cf968'],
  ])('the hash of "%s" agrees with fnv-vectors, FNV-1a of 32 bits', (text, expected) => {
    expect(hex([nameHash(text)])).toBe(expected);
  });
});

test('both halves of a character beyond one byte count in the hash', () => {
  expect(new Set(['ā', 'Ā', 'á', 'a', 'ɡ'].map(nameHash)).size).toBe(5);
});

type Place = readonly [x: number, y: number, z: number];

function at(place: Place, seed = 41, ...purpose: readonly string[]): readonly number[] {
  const into = new Float64Array(4);
  drawFour(drawKey(seed, ...purpose), ...place, into);
  return [...into];
}

test('a place has the same numbers whatever was drawn before', () => {
  const first = at([3, 1, 4], 41, 'crown', 'takes');
  at([9, 9, 9], 7, 'honey');
  expect(at([3, 1, 4], 41, 'crown', 'takes')).toEqual(first);
});

test.each<[string, readonly number[]]>([
  ['seed', at([3, 1, 4], 42, 'crown', 'takes')],
  ['shot', at([3, 1, 4], 41, 'honey', 'takes')],
  ['purpose', at([3, 1, 4], 41, 'crown', 'light')],
  ['order of words', at([3, 1, 4], 41, 'takes', 'crown')],
  ['place', at([3, 1, 5], 41, 'crown', 'takes')],
  ['order of places', at([1, 3, 4], 41, 'crown', 'takes')],
])('another %s has others', (_, other) => {
  expect(other).not.toEqual(at([3, 1, 4], 41, 'crown', 'takes'));
});

test('numbers go where they are told to, and leave the rest alone', () => {
  const into = new Float64Array(8).fill(-1);
  drawFour(drawKey(41, 'crown'), 0, 0, 0, into, 3);
  expect([...into].map((value) => value === -1)).toEqual([true, true, true, false, false, false, false, true]);
});

test('every number lies between 0 and 1 and is neither', () => {
  const word = fc.integer({ min: 0, max: 2 ** 32 - 1 });
  fc.assert(
    fc.property(fc.tuple(word, word, word), word, (place, seed) => {
      for (const value of at(place, seed)) expect(value > 0 && value < 1).toBe(true);
    }),
  );
});

test('numbers of neighbouring places are spread evenly and do not go together', () => {
  const count = 100_000;
  const values = Array.from({ length: count / 4 }, (_, i) => at([i, 0, 0])).flat();
  const bins = new Array<number>(20).fill(0);
  for (const value of values) bins[Math.floor(value * 20)]! += 1;
  const misfit = bins.reduce((sum, bin) => sum + (bin - count / 20) ** 2 / (count / 20), 0);
  // Chi-squared of nineteen degrees exceeds 43.8 once in a thousand times.
  expect(misfit).toBeLessThan(43.8);
  for (const lag of [1, 4]) {
    const products = values.slice(lag).map((value, i) => (value - 0.5) * (values[i]! - 0.5));
    const correlation = (12 * products.reduce((a, b) => a + b, 0)) / products.length;
    expect(Math.abs(correlation)).toBeLessThan(4 / Math.sqrt(count));
  }
});
