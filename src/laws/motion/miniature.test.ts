import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { fallTime_s } from './fall.ts';
import { miniatureFrameRate_fps, miniatureSpeed_m_per_s } from './miniature.ts';

const FOOT_m = 0.3048;
const MILE_m = 5280 * FOOT_m;

describe('published values', () => {
  published('miniatureFrameRate_fps', miniatureFrameRate_fps, [
    {
      source: 'miniature-handbook',
      at: 'example, a quarter scale at 24 fps',
      given: { scaleRatio: 4, baseRate_fps: 24 },
      expected: '48',
    },
  ]);
  const feetASecond = ({ milesAnHour, scaleRatio }: { readonly milesAnHour: number; readonly scaleRatio: number }) =>
    miniatureSpeed_m_per_s({ scaleRatio, fullSpeed_m_per_s: (milesAnHour * MILE_m) / 3600 }) / FOOT_m;
  published('miniature speed in feet a second', feetASecond, [
    {
      source: 'miniature-handbook',
      at: 'example, a car of a sixth for 36 mph, with its factor of 2.5 for √6',
      given: { milesAnHour: 36, scaleRatio: 6 },
      expected: '22',
    },
  ]);
});

test('a sixth scale at 24 fps asks for 58.788 fps, worked by hand', () => {
  expect(miniatureFrameRate_fps({ scaleRatio: 6, baseRate_fps: 24 })).toBeCloseTo(58.788, 3);
});

test('a fall from a model’s height, at its frame rate, takes as many frames as the full fall at the base rate', () => {
  const scale = fc.double({ min: 1, max: 50, noNaN: true });
  const height = fc.double({ min: 0.1, max: 100, noNaN: true });
  fc.assert(
    fc.property(scale, height, (scaleRatio, fallHeight_m) => {
      const frames = fallTime_s({ fallHeight_m }) * 24;
      const modelled =
        fallTime_s({ fallHeight_m: fallHeight_m / scaleRatio }) *
        miniatureFrameRate_fps({ scaleRatio, baseRate_fps: 24 });
      expect(modelled / frames).toBeCloseTo(1, 9);
    }),
  );
});

test('full size needs no change, and faults are refused by name', () => {
  expect(miniatureFrameRate_fps({ scaleRatio: 1, baseRate_fps: 25 })).toBe(25);
  expect(miniatureSpeed_m_per_s({ scaleRatio: 1, fullSpeed_m_per_s: 7 })).toBe(7);
  expect(() => miniatureFrameRate_fps({ scaleRatio: 0, baseRate_fps: 24 })).toThrow('scaleRatio must be positive');
  expect(() => miniatureSpeed_m_per_s({ scaleRatio: 4, fullSpeed_m_per_s: -1 })).toThrow('fullSpeed_m_per_s must be');
});
