import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { imageCircleNeeded_m, sampledPitch_m, windowDiagonal_m, windowWidth_m } from './window.ts';

type Circle = Parameters<typeof imageCircleNeeded_m>[0];

describe('published values', () => {
  published('windowDiagonal in mm', (given: Parameters<typeof windowDiagonal_m>[0]) => 1000 * windowDiagonal_m(given), [
    {
      source: 'circles-per-diagonal',
      at: 'diagonal of 24 × 36 mm, here in pixels of 8 µm',
      given: { widthCount: 4500, heightCount: 3000, pixelPitch_m: 8e-6 },
      expected: '43.27',
    },
    {
      source: 'circles-per-diagonal',
      at: 'diagonal of 60 × 70 mm, here in pixels of 10 µm binned by four',
      given: { widthCount: 1750, heightCount: 1500, pixelPitch_m: 1e-5, binningCount: 4 },
      expected: '92.20',
    },
  ]);

  published('how much the image circle grows', (given: Circle) => given.diagonal_m / imageCircleNeeded_m(given), [
    {
      source: 'image-circle-close',
      at: 'at life size the circle is doubled',
      given: { diagonal_m: 0.03, magnificationRatio: 1 },
      expected: '2.0',
    },
    {
      source: 'image-circle-close',
      at: 'at 1:10 the gain is about a tenth',
      given: { diagonal_m: 0.03, magnificationRatio: 0.1 },
      expected: '1.10',
    },
  ]);
});

test('an independent computation of two windows of 10 µm pixels agrees', () => {
  expect(windowWidth_m({ pixelCount: 2560, pixelPitch_m: 1e-5 })).toBeCloseTo(0.0256, 12);
  expect(windowWidth_m({ pixelCount: 1280, pixelPitch_m: 1e-5 })).toBeCloseTo(0.0128, 12);
});

test('a binned mode keeps the window with fewer pixels', () => {
  const pitch = fc.double({ min: 2e-6, max: 3e-5, noNaN: true });
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 4000 }),
      fc.integer({ min: 1, max: 8 }),
      pitch,
      (count, bin, pixelPitch_m) => {
        const whole_m = windowWidth_m({ pixelCount: count * bin, pixelPitch_m });
        expect(windowWidth_m({ pixelCount: count, pixelPitch_m, binningCount: bin }) / whole_m).toBeCloseTo(1, 12);
        expect(count * sampledPitch_m({ pixelPitch_m, binningCount: bin })).toBeCloseTo(whole_m, 12);
      },
    ),
  );
});

test('the diagonal belongs to the width and the height', () => {
  const count = fc.integer({ min: 1, max: 5000 });
  fc.assert(
    fc.property(count, count, fc.integer({ min: 1, max: 4 }), (widthCount, heightCount, binningCount) => {
      const sampling = { pixelPitch_m: 7e-6, binningCount };
      const width_m = windowWidth_m({ pixelCount: widthCount, ...sampling });
      const height_m = windowWidth_m({ pixelCount: heightCount, ...sampling });
      expect(windowDiagonal_m({ widthCount, heightCount, ...sampling }) ** 2).toBeCloseTo(
        width_m ** 2 + height_m ** 2,
        12,
      );
    }),
  );
});

test('without a magnification a lens must be marked for the whole diagonal', () => {
  expect(imageCircleNeeded_m({ diagonal_m: 0.0302 })).toBe(0.0302);
});

test('the circle grows as the sensor moves away from the exit pupil of a lens with a stop before it', () => {
  // The exit pupil is where the lens shows the stop: by the thin-lens equation, in front of the lens.
  const focal_m = 0.05;
  const stopBefore_m = 0.02;
  const exitPupilBefore_m = 1 / (1 / stopBefore_m - 1 / focal_m);
  const magnificationRatio = 0.7;
  const grown = (focal_m * (1 + magnificationRatio) + exitPupilBefore_m) / (focal_m + exitPupilBefore_m);
  const pupilMagnificationRatio = exitPupilBefore_m / stopBefore_m;
  expect(1 / imageCircleNeeded_m({ diagonal_m: 1, magnificationRatio, pupilMagnificationRatio })).toBeCloseTo(
    grown,
    12,
  );
});

test('counts that are not whole and lengths of nothing are refused by name', () => {
  expect(() => windowWidth_m({ pixelCount: 12.5, pixelPitch_m: 1e-5 })).toThrow('pixelCount must be a whole number');
  expect(() => windowWidth_m({ pixelCount: 100, pixelPitch_m: 0 })).toThrow('pixelPitch_m must be positive');
  expect(() => sampledPitch_m({ pixelPitch_m: 1e-5, binningCount: 0 })).toThrow(
    'binningCount must be a whole number of at least 1, got 0',
  );
  expect(() => windowDiagonal_m({ widthCount: 10, heightCount: 0, pixelPitch_m: 1e-5 })).toThrow(
    'heightCount must be a whole number of at least 1, got 0',
  );
  expect(() => imageCircleNeeded_m({ diagonal_m: 0 })).toThrow('diagonal_m must be positive');
  expect(() => imageCircleNeeded_m({ diagonal_m: 0.03, magnificationRatio: -1 })).toThrow(
    'magnificationRatio must be zero or above',
  );
});
