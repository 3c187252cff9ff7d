/** Bands of synthetic clips under a rolling shutter, whose number and step follow from lamp, row time and frame rate. */
import { describe, expect, test } from 'vitest';
import { synthetic, type Lamp, type Scene } from '../../test/footage/synthetic.ts';
import { createBandMeter, type Bands } from './bands.ts';
import { createFrameReader } from './frameReader.ts';
import { gridOf } from './grid.ts';
import { lightTable } from './transfer.ts';

const SCENE: Scene = {
  width: 96,
  height: 120,
  rate_fps: 240,
  frames: 80,
  exposure_s: 1 / 100_000,
  seed: 4,
  lamps: [{ light: { kind: 'steady' } }],
};
const ripple = (f_Hz: number, depth: number): Lamp => ({ light: { kind: 'ripple', f_Hz, depth } });

function bandsIn(scene: Partial<Scene>, stops: readonly number[] = []): readonly Bands[] {
  const { planes, scene: whole } = synthetic('bands', { ...SCENE, ...scene });
  const { width, height } = whole;
  const grid = gridOf(width, height);
  const reader = createFrameReader({ grid, table: lightTable({ kind: 'linear' }, { bitDepth: 12, blackCode: 64, whiteCode: 4095 }), clippedFrom: 4095, crushedTo: 64 }); // prettier-ignore
  let meter = createBandMeter(grid);
  planes.forEach((data, i) => {
    if (stops.includes(i)) meter = createBandMeter(grid, structuredClone(meter.state()));
    meter.next(reader.read({ data, width, height }).cells);
  });
  return meter.found(whole.rate_fps);
}

describe('bands', () => {
  // rows · row time · lamp rate of them; they go on by what is left of lamp rate over frame rate.
  test.each([
    [1300, 3.2e-5, 0.05],
    [2500, 3.2e-5, 0.02],
    [4333, 3.2e-5, 0.1],
    [9000, 3.2e-5, 0.05],
    [9130, 1.6e-5, 0.004],
  ])('of a lamp at %d Hz with %d s from row to row and %d deep have their number, depth and step', (f_Hz, row_s, depth) => {
    const [bands] = bandsIn({ row_s, lamps: [ripple(f_Hz, depth)] });
    const [truth, step] = [120 * row_s * f_Hz, (f_Hz / 240) % 1];
    expect(Math.abs(bands!.bandsPerFrame - truth)).toBeLessThan(0.15);
    expect(bands!.depthFraction / depth).toBeCloseTo(1, 1);
    const off = Math.abs(bands!.stepFraction - step);
    expect(Math.min(off, 1 - off)).toBeLessThan(0.01);
    const right = bands!.candidates.find(({ rate_Hz }) => Math.abs(rate_Hz / f_Hz - 1) < 0.02);
    if (bands!.candidates.at(-1)!.rate_Hz > f_Hz) expect(right!.rowTime_s / row_s).toBeCloseTo(1, 1);
  }); // prettier-ignore

  test('of the mains are told with it and with the time of a row', () => {
    const row_s = 1 / 25 / 124;
    const [bands] = bandsIn({ rate_fps: 25.1, frames: 60, row_s, lamps: [ripple(120, 0.1)] });
    expect(bands!.bandsPerFrame / (120 * 120 * row_s)).toBeCloseTo(1, 1);
    const mains = bands!.candidates.find(({ mains_Hz }) => mains_Hz === 60);
    expect(mains!.rowTime_s / row_s).toBeCloseTo(1, 1);
  });

  test('are none under steady light, a light that pulses everywhere, a drop, a camera that shakes, a focus that hunts', () => {
    const drop = { radius_px: 14, bright: 0.9, x_px: () => 48, y_px: (t_s: number) => -16 + 600 * t_s };
    const scenes: readonly Partial<Scene>[] = [
      {},
      { lamps: [ripple(100, 0.2)] },
      { drop },
      { drop: { ...drop, radius_px: 5, x_px: () => 20 } },
      { shift_px: (frame) => [0, 1.5 * Math.sin(frame / 2)] },
      { focus_px: (frame) => 1.5 + Math.cos(frame / 9) },
      { white_e: 300, fullWell_e: 1200 },
    ];
    for (const [i, scene] of scenes.entries()) for (const seed of [1, 2, 3]) expect([i, bandsIn({ ...scene, seed })]).toEqual([i, []]); // prettier-ignore
  });

  test('cannot be told of a few frames, nor of a picture of a few rows', () => {
    expect(bandsIn({ frames: 10, row_s: 3.2e-5, lamps: [ripple(4333, 0.1)] })).toEqual([]);
    expect(bandsIn({ height: 12, row_s: 3.2e-5, lamps: [ripple(4333, 0.1)] })).toEqual([]);
  });

  test('are the same when reading was stopped and gone on with', () => {
    const scene = { row_s: 3.2e-5, lamps: [ripple(2500, 0.05)] };
    expect(bandsIn(scene, [1, 30, 31])).toEqual(bandsIn(scene));
  });
});
