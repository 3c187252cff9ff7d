/** Dust and patterns of the sensor laid over synthetic clips. */
import { describe, expect, test } from 'vitest';
import { measured } from '../../test/footage/measured.ts';
import { BLACK_CODE, synthetic, type Scene, type SyntheticClip } from '../../test/footage/synthetic.ts';

const SCENE: Scene = {
  width: 240,
  height: 160,
  rate_fps: 1000,
  frames: 140,
  exposure_s: 1 / 2000,
  seed: 5,
  blobs: 25,
  lamps: [{ light: { kind: 'steady' } }],
};
const clipOf = (scene: Partial<Scene>): SyntheticClip => synthetic('blemishes', { ...SCENE, ...scene });
/** A bright ball that comes to fill most of the picture, goes, and comes again: two looks find it there. */
const ball = {
  radius_px: 85,
  bright: 0.9,
  x_px: () => 110,
  y_px: (t_s: number) => 80 - 170 * Math.cos(2 * Math.PI * 9.5 * t_s),
};

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly radius_px: number;
  readonly share: number;
}

/** Soft spots that take a share of the light, the same in every frame. */
function dusty(clip: SyntheticClip, spots: readonly Spot[]): SyntheticClip {
  const { width } = clip.scene;
  const planes = clip.planes.map((plane) =>
    plane.map((code, i) => {
      const kept = spots.reduce((of, { x, y, radius_px, share }) => {
        const far = Math.hypot((i % width) - x, Math.floor(i / width) - y) - radius_px;
        return of * (1 - share * Math.min(1, Math.max(0, 0.5 - far / 2)));
      }, 1);
      return Math.round(BLACK_CODE + (code - BLACK_CODE) * kept);
    }));
  return { ...clip, planes };
} // prettier-ignore

const SPOTS: readonly Spot[] = [
  { x: 100, y: 70, radius_px: 3, share: 0.2 },
  { x: 150, y: 90, radius_px: 4, share: 0.12 },
];

describe('dust', () => {
  const near = (clip: SyntheticClip) => (measured(clip).dust ?? []).map(({ x, y }) => SPOTS.findIndex((spot) => Math.hypot(spot.x - x, spot.y - y) < 4)); // prettier-ignore

  test('is found where something passes behind it, with its place and about its depth', () => {
    const { dust } = measured(dusty(clipOf({ drop: ball }), SPOTS));
    const first = dust!.find(({ x, y }) => Math.hypot(x - 100, y - 70) < 4);
    expect(first!.depthFraction).toBeGreaterThan(0.1);
    expect(first!.depthFraction).toBeLessThan(0.25);
    expect(first!.size_px).toBeLessThanOrEqual(9);
    expect(near(dusty(clipOf({ drop: ball }), SPOTS))).not.toContain(-1);
  });

  test('is none in a clean clip, whatever moves', () => {
    const scenes: readonly Partial<Scene>[] = [
      { drop: ball },
      { drop: ball, blobs: 260 },
      { shift_px: (frame) => [0.6 * frame, 0] },
      { gain: (frame) => 1 + frame / 140 },
      { white_e: 600, fullWell_e: 1200, drop: ball },
      { drop: { radius_px: 5, bright: 0.05, x_px: () => 100, y_px: () => 70 } },
    ];
    for (const [i, scene] of scenes.entries()) expect([i, measured(clipOf(scene)).dust]).toEqual([i, []]);
  });

  test('before a set in which nothing passes cannot be told from the set, and is not called dust', () => {
    expect(measured(dusty(clipOf({}), SPOTS)).dust).toEqual([]);
  });
});

describe('the sensor’s own pattern', () => {
  /** Every column, or row, by so many codes more or less, the same in every frame. */
  const patterned = (clip: SyntheticClip, codes: number, isColumns: boolean): SyntheticClip => {
    const offsets = Array.from({ length: 400 }, (_, i) => codes * Math.sqrt(2) * Math.sin(12.9898 * (i + 1) * (i + 6)));
    const { width } = clip.scene;
    return { ...clip, planes: clip.planes.map((plane) => plane.map((code, i) => Math.max(0, Math.round(code + offsets[isColumns ? i % width : Math.floor(i / width)]!)))) };
  }; // prettier-ignore
  const dark: Partial<Scene> = { card: 0.02, blobs: 0, frames: 70 };
  const RANGE = 4095 - BLACK_CODE;

  test.each([true, false])('of columns: %s is found in the dark with its size', (isColumns) => {
    const { columnsFraction, rowsFraction } = measured(patterned(clipOf(dark), 3, isColumns)).fixedPattern!;
    const [found, other] = isColumns ? [columnsFraction, rowsFraction] : [rowsFraction, columnsFraction];
    expect((found! * RANGE) / 3).toBeGreaterThan(0.75);
    expect((found! * RANGE) / 3).toBeLessThan(1.25);
    expect(other).toBeUndefined();
  });

  test('is none where there is only noise, nor told where nothing is dark and flat', () => {
    for (const seed of [1, 2, 3, 4, 5]) expect(measured(clipOf({ ...dark, seed })).fixedPattern).toEqual({});
    expect(measured(patterned(clipOf({ frames: 70 }), 3, true)).fixedPattern).toEqual({});
  });
});
