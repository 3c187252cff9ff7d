import { describe, expect, test } from 'vitest';
import { measured } from '../../test/footage/measured.ts';
import { synthetic, type Scene } from '../../test/footage/synthetic.ts';
import { signalOf } from './signal.ts';

const RATE_fps = 1000;
const EXPOSURE_s = 1 / 2000;

/** A drop that begins to fall some time after a small light has come on in a corner. */
const fired = (more: Partial<Scene> = {}, on_frame = 40.6, latency_frames = 30): Scene => ({
  width: 128,
  height: 72,
  rate_fps: RATE_fps,
  frames: 160,
  exposure_s: EXPOSURE_s,
  seed: 4,
  lamps: [{ light: { kind: 'steady' } }],
  drop: {
    radius_px: 4,
    bright: 0.9,
    x_px: () => 64,
    y_px: (t_s) => 12 + Math.max(0, 0.6 * (t_s * RATE_fps - on_frame - latency_frames)),
  },
  signal: { x_px: 118, y_px: 62, radius_px: 2, bright: 0.8, on_s: on_frame / RATE_fps },
  ...more,
});

describe('a light that comes on', () => {
  const { signal, action, tileColumns, reach } = measured(synthetic('fired', fired()));

  test('is found in its tile, in the first frame that shows any of it', () => {
    // Lit at 40.6 frames, after the exposure of frame 40, half a frame long, has ended: frame 41 is the first.
    expect(signal!.frame).toBe(41);
    expect(signal!.litFraction).toBeCloseTo(1, 1);
    expect([signal!.tile % tileColumns, Math.floor(signal!.tile / tileColumns)]).toEqual([11, 6]);
    expect(signal!.rise_stops).toBeGreaterThan(0.5);
  });

  test('does not begin the action: that begins where the drop lets go', () => {
    // It lets go at 70.6 frames, and the exposure of frame 71 is the first after it.
    expect(signal!.movement).toBeGreaterThanOrEqual(71);
    expect(signal!.movement).toBeLessThanOrEqual(73);
    expect(action!.onset).toBeGreaterThan(60);
  });

  test('is no part of what the action touched: that is the way of the drop', () => {
    const { left_px, right_px, top_px } = reach!;
    expect(left_px).toBeGreaterThanOrEqual(56);
    expect(right_px).toBeLessThanOrEqual(72);
    expect(top_px).toBeLessThanOrEqual(14);
  });

  test.each([0.1, 0.3, 0.45])('%d of a frame into an exposure of half of one is lit for the rest of it', (into) => {
    const { signal: found } = measured(synthetic('part', fired({ frames: 90 }, 40 + into)));
    expect(found!.frame).toBe(40);
    expect(found!.litFraction).toBeCloseTo((0.5 - into) / 0.5, 1);
  });

  test.each([
    ['under a lamp that ripples', { lamps: [{ light: { kind: 'ripple', f_Hz: 100, depth: 0.15 } }] }],
    ['that goes out again', { signal: { ...fired().signal!, off_s: 0.058 } }],
    ['on a plain card', { blobs: 0 }],
    ['in much noise', { white_e: 3000, fullWell_e: 4000 }],
    ['so bright that it burns out', { signal: { ...fired().signal!, bright: 4 } }],
  ] as readonly (readonly [string, Partial<Scene>])[])('%s is found all the same', (_, more) => {
    const found = measured(synthetic('fired', fired(more)));
    expect(found.signal).toMatchObject({ frame: 41 });
    expect(Math.abs(found.signal!.movement! - 72)).toBeLessThanOrEqual(1);
    if (more.signal?.off_s !== undefined) expect(found.signal!.lastFrame).toBe(57);
  });
});

describe('no signal is', () => {
  const { signal: _, ...without } = fired();
  test.each([
    ['a drop that falls', without],
    ['a drop that falls fast through a tile', { ...without, drop: { ...without.drop!, y_px: (t_s: number) => 5000 * (t_s - 0.05) } }],
    ['a drop that comes in and stops', { ...without, drop: { ...without.drop!, x_px: (t_s: number) => Math.min(64, -10 + 3000 * Math.max(0, t_s - 0.04)), y_px: () => 30 } }],
    ['a lamp that comes on', { ...without, gain: (frame: number) => (frame < 60 ? 0.4 : 1) }],
    ['a lamp that pulses', { ...without, lamps: [{ light: { kind: 'pulses', f_Hz: 10, duty: 0.5 } }] }],
    ['noise alone', { ...without, drop: { ...without.drop!, y_px: () => 20 } }],
  ] as readonly (readonly [string, Scene])[])('%s', (title, scene) => {
    expect(measured(synthetic(title, scene)).signal).toBeUndefined();
  });

  test('anything in a clip too short to have a before and an after', () => {
    const given = { columns: 1, rows: 1, activity: new Float32Array(6), weights: new Float64Array(6).fill(1) };
    const brightest = Float32Array.of(0.1, 0.1, 0.1, 0.9, 0.9, 0.9);
    expect(signalOf({ ...given, brightest, light: brightest })).toBeUndefined();
  });
}); // prettier-ignore

test('a signal is found over frames that are missing', () => {
  const clip = synthetic('fired', fired());
  const found = measured(clip, (frame) => (frame < 20 ? frame : frame + 2));
  expect(found.signal).toMatchObject({ frame: 43 });
});

test('what the action touched leaves room for no lamp: a ripple touches nothing', () => {
  const { reach, action } = measured(synthetic('ripple', { ...fired(), drop: { ...fired().drop!, y_px: () => 20 }, signal: { ...fired().signal!, bright: 0 }, lamps: [{ light: { kind: 'ripple', f_Hz: 100, depth: 0.4 } }] })); // prettier-ignore
  expect(action).toBeUndefined();
  expect(reach).toBeUndefined();
});
