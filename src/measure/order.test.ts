/** Frames of synthetic clips that change places, and clips in which something goes to and fro by itself. */
import { describe, expect, test } from 'vitest';
import { measured } from '../../test/footage/measured.ts';
import { synthetic, type Scene, type SyntheticClip } from '../../test/footage/synthetic.ts';

const SCENE: Scene = {
  width: 160,
  height: 96,
  rate_fps: 1000,
  frames: 140,
  exposure_s: 1 / 2000,
  seed: 6,
  lamps: [{ light: { kind: 'steady' } }],
  drop: { radius_px: 8, bright: 0.9, x_px: () => 80, y_px: (t_s) => -12 + 1500 * Math.max(0, t_s - 0.04) },
};
const clipOf = (scene: Partial<Scene> = {}): SyntheticClip => synthetic('order', { ...SCENE, ...scene });

function swapped(clip: SyntheticClip, ...at: readonly number[]): SyntheticClip {
  const planes = [...clip.planes];
  for (const i of at) [planes[i], planes[i + 1]] = [planes[i + 1]!, planes[i]!];
  return { ...clip, planes };
}
const pairsIn = (clip: SyntheticClip): readonly number[] | undefined => measured(clip).swappedFrames;

describe('frames that changed places', () => {
  test.each([[70], [60, 90], [58, 75, 95]])('at %j are told, each by its place', (...at) => {
    expect(pairsIn(swapped(clipOf(), ...at))).toEqual(at);
  });

  test('are told under a lamp that pulses, and where all moves', () => {
    expect(pairsIn(swapped(clipOf({ lamps: [{ light: { kind: 'ripple', f_Hz: 100, depth: 0.2 } }] }), 70))).toEqual([
      70,
    ]);
    expect(pairsIn(swapped(clipOf({ shift_px: (frame) => [0.8 * frame, 0] }), 30, 100))).toEqual([30, 100]);
  });

  test('cannot be told where nothing moves', () => expect(pairsIn(swapped(clipOf(), 10))).toEqual([]));
});

describe('are none in', () => {
  const swing = (rate_Hz: number) => (t_s: number) => 80 + 6 * Math.sin(2 * Math.PI * rate_Hz * t_s);
  test.each<readonly [string, Partial<Scene>]>([
    ['a drop that falls', {}],
    ['a still set', { drop: { radius_px: 8, bright: 0.9, x_px: () => 80, y_px: () => 40 } }],
    ['something that swings slowly', { drop: { radius_px: 8, bright: 0.9, x_px: swing(40), y_px: () => 40 } }],
    ['something that swings as fast as frames can follow', { drop: { radius_px: 8, bright: 0.9, x_px: swing(470), y_px: () => 40 } }],
    ['a flash in one frame', { gain: (frame) => (frame === 70 ? 1.5 : 1) }],
    ['light that pulses by half the frame rate', { lamps: [{ light: { kind: 'ripple', f_Hz: 500, depth: 0.3 } }] }],
    ['a lamp in one corner that pulses by nearly half the frame rate', { lamps: [{ light: { kind: 'steady' } }, { light: { kind: 'ripple', f_Hz: 490, depth: 0.5 }, share: (x) => (x < 0.3 ? 1 : 0) }] }],
    ['a camera that shakes', { shift_px: (frame) => [1.5 * Math.sin(frame / 2), 0] }],
  ])('%s', (_, scene) => expect(pairsIn(clipOf(scene))).toEqual([])); // prettier-ignore

  test('frames that repeat or are missing', () => {
    const clip = clipOf();
    expect(pairsIn({ ...clip, planes: clip.planes.map((plane, i) => (i === 71 || i === 72 ? clip.planes[70]! : plane)) })).toEqual([]); // prettier-ignore
    expect(measured(clip, (frame) => frame + (frame > 70 ? 3 : 0)).swappedFrames).toEqual([]);
  });
});
