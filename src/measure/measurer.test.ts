import { describe, expect, test } from 'vitest';
import { measured } from '../../test/footage/measured.ts';
import { synthetic, type Scene } from '../../test/footage/synthetic.ts';
import { createMeasurer } from './measurer.ts';
import { codingOf } from './transfer.ts';

const OPTIONS = {
  width: 64,
  height: 48,
  coding: codingOf('full', 8),
  curve: { kind: 'rec709' },
  frameRate_fps: 1000,
  playback_fps: 25,
} as const;
const plane = (code: number, width = 64, height = 48) => ({
  data: new Uint8Array(width * height).fill(code),
  width,
  height,
});

const SCENE: Scene = {
  width: 160,
  height: 96,
  rate_fps: 1000,
  frames: 150,
  exposure_s: 1 / 2000,
  seed: 5,
  lamps: [{ light: { kind: 'steady' } }],
};

describe('a clip', () => {
  test('of one frame is measured as far as one frame goes', () => {
    const measurer = createMeasurer(OPTIONS);
    measurer.addFrame(plane(120));
    const { flicker, action, motion, shake, frameCount, exposure } = measurer.finish();
    expect(frameCount).toBe(1);
    expect(flicker).toMatchObject({ verdict: 'cannot tell', why: expect.stringContaining('too few') as string });
    expect([action, motion, shake.verdict]).toEqual([undefined, undefined, 'cannot tell']);
    expect(exposure.mean).toBeCloseTo(((120 / 255 + 0.099) / 1.099) ** (1 / 0.45), 5);
  });

  test('of one pixel is measured without complaint', () => {
    const measurer = createMeasurer({ ...OPTIONS, width: 1, height: 1 });
    for (let i = 0; i < 40; i += 1) measurer.addFrame(plane(100 + (i % 7), 1, 1));
    expect(measurer.finish().frameCount).toBe(40);
  });

  test('all white or all black is said to be so, and its flicker cannot be told', () => {
    for (const code of [0, 255]) {
      const measurer = createMeasurer(OPTIONS);
      for (let i = 0; i < 30; i += 1) measurer.addFrame(plane(code));
      const { flicker, exposure } = measurer.finish();
      expect(flicker.verdict).toBe('cannot tell');
      expect(code === 0 ? exposure.crushedFraction : exposure.clippedFraction).toBeCloseTo(1, 6);
    }
  });

  test('can be asked before it ends, and says the same when asked again', () => {
    const { planes } = synthetic('a card', SCENE);
    const measurer = createMeasurer({ ...OPTIONS, width: 160, height: 96, coding: codingOf('full', 12) });
    for (const data of planes.slice(0, 60)) measurer.addFrame({ data, width: 160, height: 96 });
    const before = measurer.finish();
    expect(measurer.finish()).toEqual(before);
    expect(before.frameCount).toBe(60);
    for (const data of planes.slice(60)) measurer.addFrame({ data, width: 160, height: 96 });
    expect(measurer.finish().frameCount).toBe(150);
  });

  test('has no number that is not one, whatever it shows', () => {
    const scenes: readonly Partial<Scene>[] = [{}, { blobs: 0 }, { white_e: 0 }, { white_e: 1e6 }];
    const walk = (value: unknown, path: string): void => {
      if (typeof value === 'number') expect([path, Number.isFinite(value)]).toEqual([path, true]);
      else if (value && typeof value === 'object') for (const [key, of] of Object.entries(value)) walk(of, `${path}/${key}`);
    };
    for (const scene of scenes) walk(measured(synthetic('edges', { ...SCENE, frames: 40, width: 64, height: 40, ...scene })), '');
  }); // prettier-ignore
});

describe('shake', () => {
  const shaken = (shift_px: (frame: number) => readonly [number, number]) =>
    measured(synthetic('shaken', { ...SCENE, frames: 200, shift_px })).shake;

  test('of one and a half pixels at 23 Hz from frame 60 on is that', () => {
    const turn = (frame: number) => (2 * Math.PI * 23 * frame) / 1000;
    const { verdict, rate_Hz, rms_px, onset } = shaken((frame) => (frame < 60 ? [0, 0] : [1.5 * Math.sin(turn(frame)), 0.8 * Math.cos(turn(frame))])); // prettier-ignore
    expect(verdict).toBe('shakes');
    expect(rate_Hz! / 23).toBeCloseTo(1, 1);
    expect(rms_px / Math.sqrt((0.7 * (1.5 ** 2 + 0.8 ** 2)) / 2)).toBeCloseTo(1, 0);
    expect(Math.abs(onset! - 60)).toBeLessThanOrEqual(6);
  });

  test('is told from a move of the camera, whose path is that of the picture', () => {
    const { verdict, drift_px } = shaken((frame) => [0.2 * frame, 0]);
    expect(verdict).toBe('moves');
    expect(drift_px / 39.8).toBeCloseTo(1, 1);
  });

  test('is none where the set stands still, under flicker too', () => {
    const lamps = [{ light: { kind: 'ripple', f_Hz: 100, depth: 0.2 } as const }];
    expect(measured(synthetic('still', { ...SCENE, lamps })).shake).toMatchObject({ verdict: 'still', rms_px: 0 });
  });
});

test('noise of a clip is that of its photons and of its reading', () => {
  const { noise } = measured(synthetic('noise', { ...SCENE, readNoise_e: 25 }));
  for (const { light, deviation } of noise!.levels.slice(0, 6))
    expect(Math.abs(deviation / (Math.sqrt(light * 20_000 + 25 ** 2) / 20_000) - 1)).toBeLessThan(0.1);
});

describe('what cannot be', () => {
  test.each([
    ['a frame of another size', () => createMeasurer(OPTIONS).addFrame(plane(1, 32, 48)), /64 × 48, got 32 × 48/],
    ['a frame that is short', () => createMeasurer(OPTIONS).addFrame({ ...plane(1), data: new Uint8Array(9) }), /64 × 48/],
    ['a place that lies behind', () => { const of = createMeasurer(OPTIONS); of.addFrame(plane(1)); of.addFrame(plane(1), 0); }, /place/],
    ['a place absurdly far on', () => createMeasurer(OPTIONS).addFrame(plane(1), 1e9), /place/],
    ['an end without a beginning', () => createMeasurer(OPTIONS).finish(), /at least one frame/],
    ['no frame rate', () => createMeasurer({ ...OPTIONS, frameRate_fps: 0 }), /frameRate_fps/],
    ['no picture', () => createMeasurer({ ...OPTIONS, width: 0 }), /width/],
  ])('%s is refused', (_, act, says) => expect(act).toThrow(says)); // prettier-ignore
});
