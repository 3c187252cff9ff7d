/** A small synthetic clip with all that was measured of it, as the command and the screens are given it. */
import type { MeasuredClip } from '../../src/turnover/measureReply.ts';
import { measured } from './measured.ts';
import { synthetic, type Scene } from './synthetic.ts';

export const SMALL_SCENE: Scene = {
  width: 160,
  height: 96,
  rate_fps: 1000,
  frames: 180,
  exposure_s: 1 / 2000,
  seed: 3,
  lamps: [{ light: { kind: 'steady' } }],
};

export const measuredClip = (scene: Partial<Scene>, more: Partial<MeasuredClip> = {}): MeasuredClip => ({
  name: 'SYNTHETIC.mkv',
  codec: 'ffv1',
  pixelFormat: 'gray12le',
  measurement: measured(synthetic('x', { ...SMALL_SCENE, ...scene })),
  frameRateBasis: 'given',
  curve: 'linear',
  curveBasis: 'given',
  isWhole: true,
  notes: [],
  ...more,
});
