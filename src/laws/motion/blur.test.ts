import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { blur_px, displacement_px, exposureForBlur_s, frameRateForStep_fps, imageSpeed_px_per_s } from './blur.ts';

describe('published values', () => {
  published('blur_px', blur_px, [
    {
      source: 'machine-vision-blur',
      at: '500 mm/s for 100 µs, 50 µm a pixel on the object, here as 5 µm pitch at a tenth of life size',
      given: { speed_m_per_s: 0.5, exposureTime_s: 100e-6, sampledPitch_m: 5e-6, magnificationRatio: 0.1 },
      expected: '1.00',
    },
  ]);
  published('exposureForBlur_s', exposureForBlur_s, [
    {
      source: 'machine-vision-blur',
      at: '2000 mm/s at 50 µm a pixel on the object, one pixel allowed',
      given: { speed_m_per_s: 2, blur_px: 1, sampledPitch_m: 5e-6, magnificationRatio: 0.1 },
      expected: '25e-6',
    },
  ]);
});

const DROP = { speed_m_per_s: 3.13, magnificationRatio: 0.5, sampledPitch_m: 10e-6 };

test('a drop at 3.13 m/s, half life size, 10 µm pixels smears 39.125 px in 1/4000 s, worked by hand', () => {
  expect(blur_px({ ...DROP, exposureTime_s: 1 / 4000 })).toBeCloseTo(39.125, 10);
});

test('2 px of blur on it allow 12.7796 µs, worked by hand', () => {
  expect(exposureForBlur_s({ ...DROP, blur_px: 2 }) * 1e6).toBeCloseTo(12.7796, 4);
});

const speed = fc.double({ min: 1e-3, max: 300, noNaN: true });
const magnification = fc.double({ min: 0.01, max: 5, noNaN: true });
const pitch = fc.double({ min: 1e-6, max: 50e-6, noNaN: true });
const crossing = fc.record({ speed_m_per_s: speed, magnificationRatio: magnification, sampledPitch_m: pitch });
const rate = fc.double({ min: 24, max: 1e5, noNaN: true });
const allowance = fc.double({ min: 0.1, max: 500, noNaN: true });

test('the exposure that an allowance gives blurs by the allowance', () => {
  fc.assert(
    fc.property(crossing, allowance, (of, allowed_px) => {
      const exposureTime_s = exposureForBlur_s({ ...of, blur_px: allowed_px });
      expect(blur_px({ ...of, exposureTime_s }) / allowed_px).toBeCloseTo(1, 12);
    }),
  );
});

test('the frame rate that an allowance gives steps by the allowance', () => {
  fc.assert(
    fc.property(crossing, allowance, (of, step_px) => {
      const frameRate_fps = frameRateForStep_fps({ ...of, step_px });
      expect(displacement_px({ ...of, frameRate_fps }) / step_px).toBeCloseTo(1, 12);
    }),
  );
});

test('blur over step is the share of the frame that the shutter is open', () => {
  fc.assert(
    fc.property(crossing, rate, fc.double({ min: 1, max: 360, noNaN: true }), (of, frameRate_fps, angle_deg) => {
      const exposureTime_s = angle_deg / 360 / frameRate_fps;
      const share = blur_px({ ...of, exposureTime_s }) / displacement_px({ ...of, frameRate_fps });
      expect(share / (angle_deg / 360)).toBeCloseTo(1, 12);
    }),
  );
});

test('twice as near life size blurs twice as far, twice the pitch half as many pixels', () => {
  fc.assert(
    fc.property(crossing, (of) => {
      const plain = imageSpeed_px_per_s(of);
      expect(imageSpeed_px_per_s({ ...of, magnificationRatio: 2 * of.magnificationRatio }) / plain).toBeCloseTo(2, 12);
      expect(imageSpeed_px_per_s({ ...of, sampledPitch_m: 2 * of.sampledPitch_m }) / plain).toBeCloseTo(0.5, 12);
    }),
  );
});

test('a thing at rest does not blur, and no exposure is too long for it to be asked of', () => {
  expect(blur_px({ ...DROP, speed_m_per_s: 0, exposureTime_s: 1 })).toBe(0);
  expect(() => exposureForBlur_s({ ...DROP, speed_m_per_s: 0, blur_px: 2 })).toThrow('speed_m_per_s must be positive');
  expect(() => frameRateForStep_fps({ ...DROP, speed_m_per_s: 0, step_px: 2 })).toThrow(
    'speed_m_per_s must be positive',
  );
});

test('faults are refused by name', () => {
  expect(() => imageSpeed_px_per_s({ ...DROP, speed_m_per_s: NaN })).toThrow('speed_m_per_s must be zero or above');
  expect(() => imageSpeed_px_per_s({ ...DROP, magnificationRatio: 0 })).toThrow('magnificationRatio must be positive');
  expect(() => blur_px({ ...DROP, sampledPitch_m: 0, exposureTime_s: 1 })).toThrow('sampledPitch_m must be positive');
  expect(() => blur_px({ ...DROP, exposureTime_s: 0 })).toThrow('exposureTime_s must be positive');
  expect(() => exposureForBlur_s({ ...DROP, blur_px: 0 })).toThrow('blur_px must be positive');
  expect(() => displacement_px({ ...DROP, frameRate_fps: 0 })).toThrow('frameRate_fps must be positive');
  expect(() => frameRateForStep_fps({ ...DROP, step_px: Infinity })).toThrow('step_px must be positive and finite');
});
