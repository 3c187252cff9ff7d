import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { cropHeight_px, cropPixels, cropWidth_px, enlargementRatio } from './crop.ts';

describe('published values', () => {
  published('cropWidth_px', cropWidth_px, [
    {
      source: 'cinema-containers',
      at: 'flat, 1.85, in 4096 × 2160',
      given: { widthCount: 4096, heightCount: 2160, aspectRatio: 1.85 },
      expected: '3996',
    },
    {
      source: 'cinema-containers',
      at: 'flat, 1.85, in 2048 × 1080',
      given: { widthCount: 2048, heightCount: 1080, aspectRatio: 1.85 },
      expected: '1998',
    },
    {
      source: 'cinema-containers',
      at: '4:3 in 1920 × 1080',
      given: { widthCount: 1920, heightCount: 1080, aspectRatio: 4 / 3 },
      expected: '1440',
    },
  ]);

  published('cropHeight_px', cropHeight_px, [
    {
      source: 'cinema-containers',
      at: '2.40 in 1920 × 1080',
      given: { widthCount: 1920, heightCount: 1080, aspectRatio: 2.4 },
      expected: '800',
    },
    {
      source: 'cinema-containers',
      at: 'flat, 1.85, in 4096 × 2160',
      given: { widthCount: 4096, heightCount: 2160, aspectRatio: 1.85 },
      expected: '2160',
    },
  ]);
});

const count = fc.integer({ min: 16, max: 8192 });
const crop = fc.record({
  widthCount: count,
  heightCount: count,
  aspectRatio: fc.double({ min: 0.3, max: 3, noNaN: true }),
  reframeFraction: fc.double({ min: 0, max: 0.9, noNaN: true }),
});

test('the crop has the shape asked for and lies within the picture', () => {
  fc.assert(
    fc.property(crop, (given) => {
      const width_px = cropWidth_px(given);
      const height_px = cropHeight_px(given);
      expect(width_px / height_px / given.aspectRatio).toBeCloseTo(1, 9);
      expect(width_px).toBeLessThanOrEqual(given.widthCount);
      expect(height_px).toBeLessThanOrEqual(given.heightCount);
      expect(cropPixels(given)).toBeCloseTo(width_px * height_px, 6);
    }),
  );
});

test('a crop with nothing held back touches two sides of the picture, so none of its shape is larger', () => {
  fc.assert(
    fc.property(crop, ({ reframeFraction: _, ...given }) => {
      const touchesSides = Math.abs(cropWidth_px(given) - given.widthCount) < 1e-9 * given.widthCount;
      const touchesTop = Math.abs(cropHeight_px(given) - given.heightCount) < 1e-9 * given.heightCount;
      expect(touchesSides || touchesTop).toBe(true);
    }),
  );
});

test('what is held back for repositioning comes off the width and off the height', () => {
  const given = { widthCount: 2048, heightCount: 1024, aspectRatio: 2 };
  expect(cropWidth_px({ ...given, reframeFraction: 0.25 })).toBe(1536);
  expect(cropHeight_px({ ...given, reframeFraction: 0.25 })).toBe(768);
  expect(cropPixels({ ...given, reframeFraction: 0.25 })).toBe(1536 * 768);
});

test('a crop half as wide as the delivery is enlarged twice, and one twice as wide is halved', () => {
  expect(enlargementRatio({ deliveredWidth_px: 3840, cropWidth_px: 1920 })).toBe(2);
  expect(enlargementRatio({ deliveredWidth_px: 1920, cropWidth_px: 3840 })).toBe(0.5);
});

test('a crop held back whole, a shape of nothing and half pixels are refused by name', () => {
  const given = { widthCount: 2048, heightCount: 1024, aspectRatio: 2 };
  expect(() => cropWidth_px({ ...given, reframeFraction: 1 })).toThrow(
    'reframeFraction must be from 0 to below 1, got 1',
  );
  expect(() => cropHeight_px({ ...given, reframeFraction: -0.1 })).toThrow('reframeFraction must be from 0');
  expect(() => cropPixels({ ...given, reframeFraction: NaN })).toThrow('reframeFraction must be from 0');
  expect(() => cropWidth_px({ ...given, aspectRatio: 0 })).toThrow('aspectRatio must be positive');
  expect(() => cropWidth_px({ ...given, widthCount: 10.5 })).toThrow('widthCount must be a whole number');
  expect(() => enlargementRatio({ deliveredWidth_px: 1920, cropWidth_px: 0 })).toThrow('cropWidth_px must be positive');
});
