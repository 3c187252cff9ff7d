import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ghostGap_px } from './ghosting.ts';

test('20,000 px a second at 1000 fps and 180° leaves gaps of 10 px, worked by hand', () => {
  expect(ghostGap_px({ imageSpeed_px_per_s: 20_000, shutterAngle_deg: 180, captureRate_fps: 1000 })).toBe(10);
});

test('an open shutter leaves none, and smear and gap make up the step from frame to frame', () => {
  const speed = fc.double({ min: 1, max: 1e6, noNaN: true });
  const angle = fc.double({ min: 1, max: 360, noNaN: true });
  const rate = fc.double({ min: 24, max: 1e5, noNaN: true });
  fc.assert(
    fc.property(speed, angle, rate, (imageSpeed_px_per_s, shutterAngle_deg, captureRate_fps) => {
      const smear_px = (imageSpeed_px_per_s * shutterAngle_deg) / 360 / captureRate_fps;
      const step_px = imageSpeed_px_per_s / captureRate_fps;
      const gap_px = ghostGap_px({ imageSpeed_px_per_s, shutterAngle_deg, captureRate_fps });
      expect((smear_px + gap_px) / step_px).toBeCloseTo(1, 9);
      expect(ghostGap_px({ imageSpeed_px_per_s, shutterAngle_deg: 360, captureRate_fps })).toBe(0);
    }),
  );
});

test('faults are refused by name', () => {
  const moving = { imageSpeed_px_per_s: 1, shutterAngle_deg: 180, captureRate_fps: 1000 };
  expect(() => ghostGap_px({ ...moving, imageSpeed_px_per_s: -1 })).toThrow(
    'imageSpeed_px_per_s must be zero or above',
  );
  expect(() => ghostGap_px({ ...moving, shutterAngle_deg: 361 })).toThrow('shutterAngle_deg must be from 0 to 360');
  expect(() => ghostGap_px({ ...moving, shutterAngle_deg: 0 })).toThrow('shutterAngle_deg must be positive');
  expect(() => ghostGap_px({ ...moving, captureRate_fps: NaN })).toThrow('captureRate_fps must be positive');
});
