/** Whose shake: synthetic clips of which all, a part or two parts shake, and things that move through them. */
import { describe, expect, test } from 'vitest';
import { measured } from '../../test/footage/measured.ts';
import { synthetic, type Scene, type SyntheticClip } from '../../test/footage/synthetic.ts';
import type { WindowShake } from './shakeParts.ts';

const SCENE: Scene = {
  width: 240,
  height: 160,
  rate_fps: 1000,
  frames: 200,
  exposure_s: 1 / 2000,
  seed: 5,
  blobs: 260,
  lamps: [{ light: { kind: 'steady' } }],
};
const wave = (size_px: number, rate_Hz: number, from = 0) => (frame: number): readonly [number, number] =>
  frame < from ? [0, 0] : [size_px * Math.sin((2 * Math.PI * rate_Hz * (frame - from)) / 1000), 0.4 * size_px * Math.sin((2 * Math.PI * rate_Hz * (frame - from)) / 1000)]; // prettier-ignore
const clipOf = (scene: Partial<Scene>): SyntheticClip => synthetic('shaken', { ...SCENE, ...scene });

/** One clip above a row of the picture and another from there on down. */
function stacked(above: SyntheticClip, below: SyntheticClip, row: number): SyntheticClip {
  const { width } = above.scene;
  const planes = above.planes.map((plane, i) => {
    const both = plane.slice();
    both.set(below.planes[i]!.subarray(row * width), row * width);
    return both;
  });
  return { ...above, planes };
}

const shakeIn = (clip: SyntheticClip): WindowShake => measured(clip).shake;
/** Root of the mean square of a wave that goes along both axes. */
const rmsOf = (size_px: number, from = 0): number => Math.sqrt(((1 - from / SCENE.frames) * size_px ** 2 * (1 + 0.4 ** 2)) / 2); // prettier-ignore

describe('the shake of', () => {
  const still = clipOf({});
  const shaken = clipOf({ shift_px: wave(2, 31, 60) });

  test('everything is the camera’s or that of all it sees', () => {
    const { verdict, whose, parts, why, rate_Hz, onset } = shakeIn(shaken);
    expect([verdict, whose, parts]).toEqual(['shakes', 'all', undefined]);
    expect(why).toContain('cannot be told from one view');
    expect(rate_Hz! / 31).toBeCloseTo(1, 1);
    expect(Math.abs(onset! - 60)).toBeLessThanOrEqual(6);
  });

  test('nothing is nobody’s', () => {
    expect(shakeIn(still)).toMatchObject({ verdict: 'still', rms_px: 0 });
    expect(shakeIn(still).whose).toBeUndefined();
  });

  test('the lower part, while the rest stands, is that of the table, with its size, rate and beginning', () => {
    const shake = shakeIn(stacked(still, shaken, 100));
    expect(shake).toMatchObject({ verdict: 'shakes', whose: 'part' });
    expect(shake.why).toContain('at the bottom, where the table is, shakes while the rest stands: not the camera');
    expect(shake.rms_px / rmsOf(2, 60)).toBeCloseTo(1, 0);
    expect(shake.rate_Hz! / 31).toBeCloseTo(1, 1);
    expect(Math.abs(shake.onset! - 60)).toBeLessThanOrEqual(6);
    const [rest, part] = shake.parts!;
    expect([rest!.isStill, part!.isStill]).toEqual([true, false]);
    expect(part!.centre[1]).toBeGreaterThan(0.3);
  });

  test('most of the picture, while the top of it stands, is not the camera’s either', () => {
    const shake = shakeIn(stacked(still, shaken, 58));
    expect(shake).toMatchObject({ verdict: 'shakes', whose: 'part' });
    expect(shake.parts!.map(({ isStill }) => isStill)).toEqual([false, true]);
    expect(shake.rms_px / rmsOf(2, 60)).toBeCloseTo(1, 0);
  });

  test('two parts that go each its own way is that of both, with a rate of each', () => {
    const { whose, parts } = shakeIn(
      stacked(clipOf({ shift_px: wave(2, 31) }), clipOf({ shift_px: wave(2, 74) }), 100),
    );
    expect(whose).toBe('parts');
    const rates = parts!.map(({ rate_Hz }) => rate_Hz!);
    expect(rates[0]! / 31).toBeCloseTo(1, 1);
    expect(rates[1]! / 74).toBeCloseTo(1, 1);
  });

  test('a thing that falls through a still set is none', () => {
    const drop = { radius_px: 14, bright: 0.9, x_px: () => 120, y_px: (t_s: number) => -20 + 1200 * t_s };
    expect(shakeIn(clipOf({ drop }))).toMatchObject({ verdict: 'still' });
  });

  test('a set that a thing half hides goes on being followed', () => {
    const cover = { radius_px: 60, bright: 0.9, x_px: () => 100, y_px: (t_s: number) => 70 + 40 * Math.sin(30 * t_s) };
    const { verdict, rate_Hz, whose } = shakeIn(clipOf({ drop: cover, shift_px: wave(2, 31) }));
    expect([verdict, whose]).toEqual(['shakes', 'all']);
    expect(rate_Hz! / 31).toBeCloseTo(1, 1);
  });
});
