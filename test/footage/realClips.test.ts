/**
 * Clips that people filmed, none of them at a high rate: a hand that tilts a tumbler before a white wall (a telephone held
 * by hand), a hand that turns a box above a table (a webcam that stands), a tree in the wind behind a window. What is true
 * of them was looked at; what is put into them (a pulse of the light, a shift, a frame gone or shown twice) is known.
 */
import { describe, expect, test } from 'vitest';
import { measureClip } from '../../src/jobs/measureClip.ts';
import type { Measurement } from '../../src/measure/types.ts';
import { flickerOf } from '../../src/measure/flicker/flicker.ts';
import {
  framesOf,
  GIVEN_RATE_fps,
  measuredFrames,
  noRealClips,
  realClipPath,
  tileLightOf,
  type RealClipName,
  type RealFrames,
} from './realClips.ts';

const NAMES: readonly RealClipName[] = ['cup.mp4', 'box.mp4', 'tree.avi'];
const real = (name: RealClipName): Promise<RealFrames> => framesOf(realClipPath(name));

describe.skipIf(noRealClips)('are read', () => {
  test.each([
    ['cup.mp4', 'h264', { num: 26_777, den: 1000 }, 217, 216],
    ['box.mp4', 'h264', { num: 30_000, den: 1001 }, 455, 456],
    ['tree.avi', 'cinepak', { num: 1_000_000, den: 66_667 }, 68, 67],
  ] as const)('%s: %s at its odd rate, each frame at its place', async (name, codec, fileRate, count, lastPlace) => {
    const { clip, frames, places } = await real(name);
    expect(clip).toMatchObject({ codec, fileRate });
    expect(frames).toHaveLength(count);
    expect(places.at(-1)).toBe(lastPlace);
  });

  test('the tree, of which most frames were left out when it was written, is counted and said to vary, and the box as far as it is damaged', async () => {
    const tree = await real('tree.avi');
    expect(tree.notes.join(' ')).toMatch(
      /varying times.*says that it has 444 frames, and 68 could be read: some were left out/,
    );
    const box = await real('box.mp4');
    expect(box.places.slice(0, 3)).toEqual([0, 3, 4]);
    expect(box.notes.join(' ')).toMatch(/ffmpeg complained.*varying times/);
  });
});

describe.skipIf(noRealClips)('as they are', () => {
  const kept = new Map<RealClipName, Promise<Measurement>>();
  const measured = (name: RealClipName): Promise<Measurement> => {
    const found = kept.get(name) ?? measureClip({ name: realClipPath(name), captureRate_fps: GIVEN_RATE_fps, isFirstLook: false }).then(({ measurement }) => measurement);
    kept.set(name, found);
    return found;
  }; // prettier-ignore

  test('have no number that is not one', async () => {
    const walk = (value: unknown, path: string): void => {
      if (typeof value === 'number') expect([path, Number.isFinite(value)]).toEqual([path, true]);
      else if (value && typeof value === 'object') for (const [key, of] of Object.entries(value)) walk(of, `${path}/${key}`);
    };
    for (const name of NAMES) walk(await measured(name), name);
  }, 90_000); // prettier-ignore

  test('no lamp is found in any of them', async () => {
    for (const name of NAMES) {
      const { verdict, lines } = (await measured(name)).flicker;
      expect([name, verdict]).not.toEqual([name, 'flicker']);
      for (const { looksLike } of lines) expect(looksLike).toBe('unsure');
    }
  });

  test('the camera that was held in a hand moves, those that stood stand still', async () => {
    const verdicts = await Promise.all(NAMES.map(async (name) => (await measured(name)).shake.verdict));
    expect(verdicts).toEqual(['moves', 'still', 'still']);
  });

  test('the sky behind the tree is burnt out, the wall and the table are not', async () => {
    const clipped = await Promise.all(NAMES.map(async (name) => (await measured(name)).exposure.clippedFraction));
    expect(clipped.map((of) => of > 0.05)).toEqual([false, false, true]);
  });

  test('neither bands nor dust nor frames out of order nor a pattern of the sensor are found in any of them', async () => {
    for (const name of NAMES) {
      const { bands, dust, swappedFrames, fixedPattern, fixedPixels } = await measured(name);
      expect([name, { bands, dust, swappedFrames, fixedPattern, fixedPixels }]).toEqual([name, { bands: [], dust: [], swappedFrames: [], fixedPattern: {}, fixedPixels: [] }]); // prettier-ignore
    }
  });

  test('hands come and go: an action begins after the head and is over before the end', async () => {
    const { action } = await measured('box.mp4');
    // Looked at: the box begins to move about frame 45, slows down about frame 380 and rests about frame 410.
    expect(Math.abs(action!.onset - 45)).toBeLessThanOrEqual(12);
    expect(Math.abs(action!.end - 391)).toBeLessThanOrEqual(25);
  });
});

const pulse = (rate_Hz: number, depth: number) => (frame: number): number =>
  1 + depth * Math.cos((2 * Math.PI * rate_Hz * frame) / GIVEN_RATE_fps + 0.6); // prettier-ignore

describe.skipIf(noRealClips)('a pulse put into the light', () => {
  const lit = new Map<RealClipName, ReturnType<typeof tileLightOf>>();
  const flickerUnder = async (name: RealClipName, gain: (frame: number) => number) => {
    const light = lit.get(name) ?? tileLightOf(await real(name));
    lit.set(name, light);
    return flickerOf(light(gain));
  };

  // The shortest clip has 68 frames, and leaves move in all of them.
  test.each<readonly [RealClipName, number, number]>([
    ['cup.mp4', 100, 0.005],
    ['cup.mp4', 100, 0.01],
    ['cup.mp4', 100, 0.03],
    ['cup.mp4', 230, 0.005],
    ['cup.mp4', 333.3, 0.01],
    ['box.mp4', 100, 0.01],
    ['box.mp4', 100, 0.03],
    ['box.mp4', 230, 0.005],
    ['box.mp4', 333.3, 0.005],
    ['box.mp4', 412, 0.03],
    ['tree.avi', 100, 0.03],
    ['tree.avi', 230, 0.005],
    ['tree.avi', 230, 0.01],
    ['tree.avi', 333.3, 0.03],
  ])('of %s at %d Hz, %d deep, is found with its rate and its depth', async (name, rate_Hz, depth) => {
    const flicker = await flickerUnder(name, pulse(rate_Hz, depth));
    const line = flicker.lines.find(({ beat_Hz, deviation_Hz }) => Math.abs(beat_Hz - rate_Hz) < 0.1 + 4 * deviation_Hz);
    expect([flicker.verdict, line?.looksLike]).toEqual(['flicker', 'light']);
    expect(Math.abs(line!.depthFraction - depth)).toBeLessThan(0.1 * depth + 0.0005);
  }); // prettier-ignore

  test('of the size that is said to be found is, at nine rates of ten from the one it is said of, and of a fifth of it is not', async () => {
    for (const name of NAMES) {
      const { leastDepthFraction: least = 0, leastDepthFrom_Hz: from_Hz = 0 } = await flickerUnder(name, () => 1);
      expect(from_Hz).toBeLessThan(GIVEN_RATE_fps / 4);
      const rates = Array.from({ length: 10 }, (_, i) => from_Hz + 1 + ((490 - from_Hz) * i) / 9);
      const foundOf = async (depth: number) => {
        const isFound = async (rate_Hz: number) => (await flickerUnder(name, pulse(rate_Hz, depth))).lines.some(({ beat_Hz }) => Math.abs(beat_Hz - rate_Hz) < 4);
        return (await Promise.all(rates.map(isFound))).filter(Boolean).length;
      };
      expect([name, (await foundOf(least)) >= 9]).toEqual([name, true]);
      expect([name, await foundOf(least / 5)]).toEqual([name, 0]);
    }
  }); // prettier-ignore

  test('code by code, as a camera would have written it in sixteen bits, comes to the same', async () => {
    // Rec. 709, written down once more.
    const toLight = (signal: number) => (signal < 0.081 ? signal / 4.5 : ((signal + 0.099) / 1.099) ** (1 / 0.45));
    const toSignal = (light: number) => (light < 0.018 ? 4.5 * light : 1.099 * light ** 0.45 - 0.099);
    const { clip, frames } = await real('cup.mp4');
    const written = frames.map((frame, n) => {
      const gain = pulse(230, 0.01)(n);
      const codes = Uint16Array.from({ length: 256 }, (_, code) => Math.max(0, Math.round(256 * (16 + 219 * toSignal(toLight((code - 16) / 219) * gain)))));
      return Uint16Array.from(frame, (code) => codes[code]!);
    });
    const { flicker } = measuredFrames(clip, written, { coding: { bitDepth: 16, blackCode: 256 * 16, whiteCode: 256 * 235 } });
    const line = flicker.lines.find(({ looksLike }) => looksLike === 'light');
    expect(Math.abs(line!.beat_Hz - 230)).toBeLessThan(0.5);
    expect(Math.abs(line!.depthFraction - 0.01)).toBeLessThan(0.0015);
  }, 60_000); // prettier-ignore
});

const EDGE = 24;
/** As many frames as it takes to fill a picture's edge twice over. */
const MOST_FRAMES = 240;
/** Every frame cut out of a larger one, from where a table says. */
function shifted({ clip, frames }: RealFrames, from: (frame: number) => readonly [number, number]): RealFrames {
  const [width, height] = [clip.width - 2 * EDGE, clip.height - 2 * EDGE];
  const cut = frames.slice(0, MOST_FRAMES).map((frame, n) => {
    const [x, y] = from(n);
    const into = new Uint8Array(width * height);
    for (let row = 0; row < height; row += 1) {
      const at = (row + EDGE + y) * clip.width + EDGE + x;
      into.set(frame.subarray(at, at + width), row * width);
    }
    return into;
  });
  return { clip: { ...clip, width, height }, frames: cut, places: [], notes: [] };
}

describe.skipIf(noRealClips)('a shift put into the picture', () => {
  const wave = (size: number, rate_Hz: number, from = 0) => (n: number): number =>
    n < from ? 0 : Math.round(size * Math.sin((2 * Math.PI * rate_Hz * (n - from)) / GIVEN_RATE_fps)); // prettier-ignore

  test.each<readonly [RealClipName, number, number, number]>([
    ['box.mp4', 4, 47, 0],
    ['box.mp4', 2, 83, 40],
    ['tree.avi', 4, 47, 0],
    ['tree.avi', 3, 110, 0],
  ])('of %s by %d px at %d Hz from frame %d on is a shake of that size, rate and beginning', async (name, size, rate_Hz, from) => {
    const path = wave(size, rate_Hz, from);
    const { clip, frames } = shifted(await real(name), (n) => [path(n), 0]);
    const { shake, frames: series } = measuredFrames(clip, frames);
    expect([shake.verdict, shake.whose]).toEqual(['shakes', 'all']);
    expect(Math.abs(shake.rate_Hz! - rate_Hz)).toBeLessThan(0.5);
    if (from > 0) expect(Math.abs(shake.onset! - from)).toBeLessThanOrEqual(3);
    const truth = frames.map((_, n) => -path(n));
    const off = truth.map((x, n) => Math.hypot(series.x_px[n]! - x, series.y_px[n]!));
    expect(off.filter((of) => of < 0.75).length).toBeGreaterThan(0.95 * off.length);
  }); // prettier-ignore

  test.each<RealClipName>(['box.mp4', 'tree.avi'])('of %s that goes on and on is a move, as long as it is', async (name) => {
    const { clip, frames } = shifted(await real(name), (n) => [Math.min(EDGE, Math.round(0.25 * n)), 0]);
    const { shake } = measuredFrames(clip, frames);
    const length = Math.min(EDGE, Math.round(0.25 * (frames.length - 1)));
    expect(shake.verdict).toBe('moves');
    expect(Math.abs(shake.drift_px / length - 1)).toBeLessThan(0.25);
  }); // prettier-ignore
});
