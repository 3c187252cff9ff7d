import { expect, test } from 'vitest';
import { MOST_MARKED, spotsOf, spotsSaid } from './spots.ts';

const PIXEL = { x: 10, y: 20, kind: 'bright' } as const;
const DUST = { x: 100.5, y: 40.25, size_px: 60, depthFraction: 0.1 };

test('a mark goes round what it marks, and can be seen however small that is', () => {
  const [dust, pixel] = spotsOf({ dust: [DUST], fixedPixels: [PIXEL], height: 1000 });
  expect(dust).toEqual({ kind: 'dust', x: 100.5, y: 40.25, radius_px: 45 });
  // The middle of the pixel, whose place counts from its corner.
  expect(pixel).toEqual({ kind: 'pixel', x: 10.5, y: 20.5, radius_px: 20 });
});

test('no more are marked than a picture can bear, and all are counted', () => {
  const all = { dust: [DUST], fixedPixels: Array.from({ length: 200 }, () => PIXEL), height: 1000 };
  expect(spotsOf(all)).toHaveLength(MOST_MARKED);
  expect(spotsOf(all)[0]!.kind).toBe('dust');
  expect(spotsSaid(all)).toBe('dust 1, pixels 200');
  expect(spotsSaid({ fixedPixels: [] })).toBe('');
});
