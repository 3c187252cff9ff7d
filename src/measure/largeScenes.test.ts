/** Scenes whose truth is known, in pictures so large that only some of their rows are read. All are synthetic: made, not filmed. */
import { describe, expect, test } from 'vitest';
import {
  synthetic,
  BLACK_CODE,
  WHITE_CODE,
  type Lamp,
  type Scene,
  type SyntheticClip,
} from '../../test/footage/synthetic.ts';
import { thinned } from '../../test/footage/thinned.ts';
import { createMeasurer } from './measurer.ts';
import type { Measurement } from './types.ts';

/** As ffmpeg gives it: without the rows that are not read, some pictures whole. */
function measuredThinned({ scene, planes }: SyntheticClip): Measurement {
  const { width, height, rate_fps: frameRate_fps } = scene;
  const coding = { bitDepth: 12, blackCode: BLACK_CODE, whiteCode: WHITE_CODE };
  const measurer = createMeasurer({ width, height, coding, curve: { kind: 'linear' }, frameRate_fps, playback_fps: 25 });
  planes.forEach((data, frame) => {
    const plane = { data, width, height };
    if ((frame & (frame + 1)) === 0) measurer.addWhole(plane);
    measurer.addFrame(thinned(plane, measurer.rowsRead!));
  });
  return measurer.finish();
} // prettier-ignore

/** Wide and low: of four rows one is read, as at 1920 × 1080. Few photons, so that means are known as badly as in a small picture. */
const WIDE: Scene = {
  width: 1600,
  height: 64,
  rate_fps: 1000,
  frames: 100,
  exposure_s: 1 / 2000,
  seed: 1,
  lamps: [{ light: { kind: 'steady' } }],
  white_e: 60,
  fullWell_e: 300,
  readNoise_e: 3,
};
const ripple = (f_Hz: number, depth: number, phase_rad = 0): Lamp => ({
  light: { kind: 'ripple', f_Hz, depth, phase_rad },
});

describe('light', () => {
  test.each([1, 2, 3, 4])('that is steady is called so, with something moving through it (seed %d)', (seed) => {
    const drop = { radius_px: 9, bright: 0.9, x_px: (t_s: number) => 300 + 5000 * t_s * seed, y_px: () => 30 };
    const { flicker, fixedPixels } = measuredThinned(synthetic('a drop', { ...WIDE, seed, drop }));
    expect(flicker.verdict).toBe('steady');
    expect(fixedPixels).toEqual([]);
  });

  test.each([1, 2, 3])('that ripples by half a percent is found at its rate (seed %d)', (seed) => {
    const { flicker } = measuredThinned(synthetic('faint', { ...WIDE, seed, lamps: [ripple(100, 0.005, seed)] }));
    expect(flicker.verdict).toBe('flicker');
    expect(Math.abs(flicker.lines[0]!.beat_Hz - 100)).toBeLessThan(1 + 4 * flicker.lines[0]!.deviation_Hz);
  });
});

test('a drop moves as fast and the way it does, and the set stands still', () => {
  const drop = { radius_px: 14, bright: 0.9, x_px: (t_s: number) => 9000 * (t_s - 0.012), y_px: () => 60 };
  const scene = { ...WIDE, height: 136, frames: 40, white_e: 4000, fullWell_e: 6000, blobs: 2000, drop };
  const { motion, shake, action } = measuredThinned(synthetic('a drop', scene));
  expect(motion!.typical_px / 9).toBeCloseTo(1, 1);
  expect(Math.min(motion!.direction_deg, 360 - motion!.direction_deg)).toBeLessThan(4);
  expect(shake.verdict).toBe('still');
  expect(action).toBeDefined();
});

describe('focus at 1920 × 1080', () => {
  const LARGE: Scene = {
    ...WIDE,
    width: 1920,
    height: 1080,
    frames: 24,
    blobs: 12_000,
    white_e: 8000,
    fullWell_e: 12_000,
  };

  test('that comes and goes is sharpest where the truth has no blur', () => {
    const { focus } = measuredThinned(
      synthetic('a focus ramp', { ...LARGE, focus_px: (frame) => Math.abs(frame - 5) / 2 }),
    );
    expect(focus.verdict).toBe('changes');
    expect(Math.abs(focus.sharpestFrame - 5)).toBeLessThanOrEqual(1);
    expect(focus.sharpness[0]!).toBeLessThan(focus.sharpness[3]!);
  });

  test('that stays is steady, under flicker too, and of a plain card it cannot be told', () => {
    const few = { ...LARGE, frames: 6 };
    expect(measuredThinned(synthetic('steady', { ...few, lamps: [ripple(100, 0.2)] })).focus.verdict).toBe('steady');
    expect(measuredThinned(synthetic('a card', { ...few, blobs: 0, white_e: 500 })).focus.verdict).toBe('cannot tell');
  });
});

test('a pixel that always stands out is found in whole pictures, on a row that is not read', () => {
  const clip = synthetic('a stuck pixel', { ...WIDE, frames: 20, white_e: 4000, fullWell_e: 6000 });
  for (const plane of clip.planes) plane[33 * 1600 + 700] = 4000;
  expect(measuredThinned(clip).fixedPixels).toEqual([{ x: 700, y: 33, kind: 'bright' }]);
});

test('frames of other rows than those that are read are refused', () => {
  const { planes } = synthetic('a card', { ...WIDE, frames: 1 });
  const measurer = createMeasurer({ width: 1600, height: 64, coding: { bitDepth: 12, blackCode: 64, whiteCode: 4095 }, curve: { kind: 'linear' }, frameRate_fps: 1000, playback_fps: 25 }); // prettier-ignore
  const plane = { data: planes[0]!, width: 1600, height: 64 };
  expect(() => measurer.addFrame(thinned(plane, { step: 2, judgedStep: 4 }))).toThrow(/rows/);
});
