import { expect, test } from 'vitest';
import { measured } from '../../test/footage/measured.ts';
import { synthetic } from '../../test/footage/synthetic.ts';
import { tileMapsOf } from './tileMaps.ts';

test('means are those of the frames that count', () => {
  const maps = tileMapsOf({
    tiles: 2,
    activity: Float32Array.of(1, 2, 100, 100, 3, 6),
    light: Float32Array.of(0.5, 0.25, 0, 0, 0.75, 0.25),
    clippedMost: Float32Array.of(0, 0.5),
    weights: Float64Array.of(1, 0, 1),
  });
  expect([...maps.activity]).toEqual([2, 4]);
  expect([...maps.light]).toEqual([0.625, 0.25]);
  expect([...maps.clippedFraction]).toEqual([0, 0.5]);
});

test('a clip in which no frame counts shows nothing', () => {
  const none = tileMapsOf({ tiles: 1, activity: Float32Array.of(1), light: Float32Array.of(1), clippedMost: Float32Array.of(0), weights: Float64Array.of(0) }); // prettier-ignore
  expect([...none.activity, ...none.light]).toEqual([0, 0]);
});

test('a drop that falls on the left is most lively there, and the card is as light as it was lit', () => {
  const clip = synthetic('a drop on the left', {
    width: 144,
    height: 96,
    rate_fps: 1000,
    frames: 90,
    exposure_s: 0.0005,
    seed: 9,
    lamps: [{ light: { kind: 'steady' } }],
    drop: { radius_px: 6, bright: 0.9, x_px: () => 20, y_px: (t_s) => -8 + 1300 * t_s },
    blobs: 0,
    gain: (frame) => (frame === 40 ? 3 : 1),
  });
  const { tiles, tileColumns, tileRows } = measured(clip);
  const most = [...tiles!.activity.keys()].reduce((a, b) => (tiles!.activity[b]! > tiles!.activity[a]! ? b : a));
  expect(most % tileColumns).toBe(Math.floor((20 / 144) * tileColumns));
  expect([tiles!.light.length, tiles!.activity.length]).toEqual([tileColumns * tileRows, tileColumns * tileRows]);
  // Reflectance 0.35 at 16,000 of 20,000 electrons, and one frame of ninety three times as light.
  expect(tiles!.light[tileColumns - 1]! / (0.35 * 0.8 * (1 + 2 / 90))).toBeCloseTo(1, 1.5);
});
