import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { frameBytes } from './frame.ts';

describe('published values', () => {
  published('frameBytes', frameBytes, [
    {
      source: 'packed-pixels',
      at: 'two pixels of 12 bits',
      given: { widthCount: 2, heightCount: 1, bitDepthCount: 12 },
      expected: '3',
    },
    {
      source: 'packed-pixels',
      at: 'four pixels of 10 bits',
      given: { widthCount: 4, heightCount: 1, bitDepthCount: 10 },
      expected: '5',
    },
  ]);
});

test.each([
  [1920, 1080, 12, 3_110_400],
  [4096, 2160, 12, 13_271_040],
  [1279, 720, 10, 1_151_280],
])('%i × %i at %i bits packed is %i bytes, worked by hand', (widthCount, heightCount, bitDepthCount, size_B) => {
  expect(frameBytes({ widthCount, heightCount, bitDepthCount })).toBe(size_B);
});

test('1279 × 720 at 10 bits with rows padded to 64 is 1,152,000 bytes, worked by hand', () => {
  expect(frameBytes({ widthCount: 1279, heightCount: 720, bitDepthCount: 10, rowAlignment_B: 64 })).toBe(1_152_000);
});

const side = fc.integer({ min: 1, max: 8192 });
const bits = fc.integer({ min: 1, max: 16 });

test('packing never loses a bit nor wastes a byte of a row', () => {
  fc.assert(
    fc.property(side, side, bits, (widthCount, heightCount, bitDepthCount) => {
      const row_B = frameBytes({ widthCount, heightCount, bitDepthCount }) / heightCount;
      expect(8 * row_B).toBeGreaterThanOrEqual(widthCount * bitDepthCount);
      expect(8 * (row_B - 1)).toBeLessThan(widthCount * bitDepthCount);
    }),
  );
});

test('padded rows are whole multiples, less than one multiple longer', () => {
  fc.assert(
    fc.property(side, bits, fc.constantFrom(4, 8, 64, 100), (widthCount, bitDepthCount, rowAlignment_B) => {
      const plain_B = frameBytes({ widthCount, heightCount: 1, bitDepthCount });
      const padded_B = frameBytes({ widthCount, heightCount: 1, bitDepthCount, rowAlignment_B });
      expect(padded_B % rowAlignment_B).toBe(0);
      expect(padded_B - plain_B).toBeGreaterThanOrEqual(0);
      expect(padded_B - plain_B).toBeLessThan(rowAlignment_B);
    }),
  );
});

test('a header is added once a frame', () => {
  expect(frameBytes({ widthCount: 10, heightCount: 7, bitDepthCount: 8, frameHeader_B: 512 })).toBe(582);
});

test('faults are refused by name', () => {
  const hd = { widthCount: 1920, heightCount: 1080, bitDepthCount: 12 };
  expect(() => frameBytes({ ...hd, widthCount: 0 })).toThrow('widthCount must be a whole number of at least 1');
  expect(() => frameBytes({ ...hd, heightCount: 1080.5 })).toThrow('heightCount must be a whole number');
  expect(() => frameBytes({ ...hd, bitDepthCount: NaN })).toThrow('bitDepthCount must be a whole number');
  expect(() => frameBytes({ ...hd, bitDepthCount: 65 })).toThrow('bitDepthCount must be from 1 to 64');
  expect(() => frameBytes({ ...hd, rowAlignment_B: 0 })).toThrow('rowAlignment_B must be a whole number of at least 1');
  expect(() => frameBytes({ ...hd, frameHeader_B: -1 })).toThrow('frameHeader_B must be a whole number of at least 0');
  expect(() => frameBytes({ ...hd, widthCount: 1e12, heightCount: 1e12 })).toThrow(
    'frameSize_B must be a whole number',
  );
});
