import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { cropWidth_px } from './crop.ts';
import { fieldAtCrop_m } from './reach.ts';

describe('published values', () => {
  published(
    'the magnification of the table from the field of a crop',
    ({ fieldWidth_m, cropWidth_px: width_px }: { readonly fieldWidth_m: number; readonly cropWidth_px: number }) =>
      (width_px * 1e-5) / fieldAtCrop_m({ fieldWidth_m, cropWidth_px: width_px, widthCount: 3600 }),
    [
      {
        source: 'magnification-tables',
        at: 'frame 100 mm on 36 mm: 0.36 for the crop of 22.5 mm too',
        given: { fieldWidth_m: 0.1, cropWidth_px: 2250 },
        expected: '0.36',
      },
    ],
  );
});

test('the whole picture shows the whole field, and a crop its share of it', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.005, max: 2, noNaN: true }),
      fc.integer({ min: 1, max: 4096 }),
      (fieldWidth_m, widthCount) => {
        const whole = { fieldWidth_m, widthCount, cropWidth_px: widthCount };
        expect(fieldAtCrop_m(whole)).toBeCloseTo(fieldWidth_m, 12);
        expect(fieldAtCrop_m({ ...whole, cropWidth_px: widthCount / 4 })).toBeCloseTo(fieldWidth_m / 4, 12);
      },
    ),
  );
});

test('the widest crop of any shape is one whose field can be told', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 16, max: 8192 }),
      fc.integer({ min: 16, max: 8192 }),
      fc.double({ min: 0.3, max: 3, noNaN: true }),
      (widthCount, heightCount, aspectRatio) => {
        const width_px = cropWidth_px({ widthCount, heightCount, aspectRatio });
        expect(fieldAtCrop_m({ fieldWidth_m: 0.3, cropWidth_px: width_px, widthCount })).toBeLessThanOrEqual(0.3);
      },
    ),
  );
});

test('a crop wider than the picture is refused by name', () => {
  expect(() => fieldAtCrop_m({ fieldWidth_m: 0.3, cropWidth_px: 2049, widthCount: 2048 })).toThrow(
    'cropWidth_px must be at most widthCount, 2048, got 2049',
  );
  expect(() => fieldAtCrop_m({ fieldWidth_m: 0, cropWidth_px: 10, widthCount: 2048 })).toThrow(
    'fieldWidth_m must be positive',
  );
  expect(() => fieldAtCrop_m({ fieldWidth_m: 0.3, cropWidth_px: 10, widthCount: 0 })).toThrow(
    'widthCount must be a whole number of at least 1, got 0',
  );
});
