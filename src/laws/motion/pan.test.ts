import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { FRAMES_A_WIDTH, shortestPanOf } from './pan.ts';

describe('published values', () => {
  published(
    'shortest pan on screen',
    (given: Parameters<typeof shortestPanOf>[0]) => shortestPanOf(given).screenTime_s,
    [
      {
        source: 'pan-rule',
        at: 'a picture width at 24 fps',
        given: { captureRate_fps: 24, playRate_fps: 24 },
        expected: '7',
      },
    ],
  );
});

test('a picture of 4096 px steps 24.38 px a frame at the limit, worked by hand', () => {
  expect(4096 / FRAMES_A_WIDTH).toBeCloseTo(24.38, 2);
});

test('the rule of animation-pan, 0.1 inch a frame of a field of about 12, is the same within half', () => {
  expect(12 / 0.1 / FRAMES_A_WIDTH).toBeGreaterThan(0.5);
  expect(12 / 0.1 / FRAMES_A_WIDTH).toBeLessThan(1.5);
});

test('at 1000 fps a pan may take 0.168 s on the set and still last 7 s at 24', () => {
  expect(shortestPanOf({ captureRate_fps: 1000, playRate_fps: 24 })).toEqual({ screenTime_s: 7, captureTime_s: 0.168 });
});

test('the two times are one number of frames, and widths count in proportion', () => {
  const rate = fc.double({ min: 12, max: 25_000, noNaN: true });
  const widths = fc.double({ min: 0.01, max: 20, noNaN: true });
  fc.assert(
    fc.property(rate, rate, widths, (captureRate_fps, playRate_fps, pictureWidthsRatio) => {
      const { screenTime_s, captureTime_s } = shortestPanOf({ captureRate_fps, playRate_fps, pictureWidthsRatio });
      expect((screenTime_s * playRate_fps) / (captureTime_s * captureRate_fps)).toBeCloseTo(1, 9);
      expect((screenTime_s * playRate_fps) / pictureWidthsRatio / FRAMES_A_WIDTH).toBeCloseTo(1, 9);
    }),
  );
});

test('faults are refused by name', () => {
  expect(() => shortestPanOf({ captureRate_fps: 0, playRate_fps: 24 })).toThrow('captureRate_fps must be positive');
  expect(() => shortestPanOf({ captureRate_fps: 24, playRate_fps: NaN })).toThrow('playRate_fps must be positive');
  expect(() => shortestPanOf({ captureRate_fps: 24, playRate_fps: 24, pictureWidthsRatio: 0 })).toThrow(
    'pictureWidths',
  );
});
