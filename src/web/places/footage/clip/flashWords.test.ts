import { expect, test } from 'vitest';
import { measured } from '../../../../../test/footage/measured.ts';
import { synthetic, type Scene } from '../../../../../test/footage/synthetic.ts';
import { flashWarning } from './flashWords.ts';

const SCENE: Scene = { width: 64, height: 48, rate_fps: 250, frames: 250, exposure_s: 1 / 1000, seed: 4, lamps: [] };
const lit = (f_Hz: number, depth: number) =>
  measured(synthetic('lit', { ...SCENE, lamps: [{ light: { kind: 'ripple', f_Hz, depth } }] }));

test('a clip that flashes on the screen says how fast and how deep before it plays', () => {
  // 100 Hz at 250 frames a second beats at 100 Hz, which the film shows at a tenth of that.
  expect(flashWarning(lit(100, 0.4))).toMatch(/^This clip flashes 10 times a second on the screen, by 3\d %\.$/);
});

test('one that pulses slowly, faintly or not at all needs no warning', () => {
  expect(flashWarning(lit(20, 0.4))).toBeUndefined();
  expect(flashWarning(lit(100, 0.03))).toBeUndefined();
});
