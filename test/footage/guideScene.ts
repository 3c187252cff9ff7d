/** The SYNTHETIC clip that the guide to footage shows measured. */
import type { Scene } from './synthetic.ts';

/** A drop that falls in front of a card lit by a steady lamp, and from the left by one that ripples on mains of 50 Hz. */
export const GUIDE_SCENE: Scene = {
  width: 192,
  height: 108,
  rate_fps: 1000,
  frames: 240,
  exposure_s: 1 / 2000,
  seed: 11,
  lamps: [
    { light: { kind: 'steady' } },
    { light: { kind: 'ripple', f_Hz: 100, depth: 0.3 }, share: (x) => (x < 0.4 ? 0.25 : 0) },
  ],
  drop: { radius_px: 8, bright: 0.9, x_px: () => 100, y_px: (t_s) => -12 + 1500 * Math.max(0, t_s - 0.08) },
  readNoise_e: 10,
  blobs: 110,
};
