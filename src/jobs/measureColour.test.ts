/** Clips in colour from their files to what is said of them, held against what ffmpeg itself makes of the same pixels. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { clipFolder, ffmpeg, noFfmpeg } from '../../test/footage/clips.ts';
import { writeColourClip, type ColourScene, type Light3, type Written } from '../../test/footage/colour.ts';
import { signalsOf } from '../measure/colour/coding.ts';
import { openClipFile } from '../media/clipFile.ts';
import { decodeFrames } from '../media/decode.ts';
import { probeClip } from '../media/probe.ts';
import { measureClip } from './measureClip.ts';

const folder = clipFolder();
const at = (name: string) => join(folder, name);

const FRAMES = 100;
const SCENE: ColourScene = {
  width: 160,
  height: 90,
  frames: FRAMES,
  seed: 5,
  light: (frame): Light3 => [1 + (0.03 * frame) / FRAMES, 1, 1 - (0.04 * frame) / FRAMES],
  patches: [
    { from: [0, 0], to: [0.3, 1], reflects: [0.5, 0.08, 0.06] },
    { from: [0.7, 0.5], to: [1, 1], reflects: [0.05, 0.2, 0.5] },
  ],
};
const HD = ['-colorspace', 'bt709', '-color_primaries', 'bt709', '-color_trc', 'bt709', '-color_range', 'tv', '-c:v', 'ffv1'] as const; // prettier-ignore

const measured = (name: string) => measureClip({ name: at(name), captureRate_fps: 1000, isFirstLook: false });

describe.skipIf(noFfmpeg)('a card under a light that grows warmer', () => {
  test.each<readonly [string, Written, readonly string[], { readonly form: object }]>([
    ['yuv422p10', { pixels: 'yuv422p10le' }, HD, { form: { kind: 'ycbcr', matrix: 'bt709', range: 'video' } }],
    ['yuv420p', { pixels: 'yuv420p' }, HD, { form: { kind: 'ycbcr', matrix: 'bt709' } }],
    ['yuv444p10 by Rec. 601, not said', { pixels: 'yuv444p10le', matrix: 'bt601' }, ['-c:v', 'ffv1'], { form: { kind: 'ycbcr', matrix: 'bt601' } }],
    ['yuv422p10 by Rec. 2020', { pixels: 'yuv422p10le', matrix: 'bt2020' }, ['-colorspace', 'bt2020nc', '-c:v', 'ffv1'], { form: { kind: 'ycbcr', matrix: 'bt2020' } }],
    ['gbrp10', { pixels: 'gbrp10le' }, ['-color_trc', 'bt709', '-c:v', 'ffv1'], { form: { kind: 'rgb' } }],
  ])('as %s drifts by as much, on the card alone', async (name, how, as, expected) => {
    const file = `${name.replaceAll(/\W/g, '')}.mkv`;
    writeColourClip(at(file), SCENE, how, as);
    const { clip, measurement } = await measured(file);
    expect(clip.colour).toMatchObject(expected);
    const { verdict, neutral, drift } = measurement.colour!;
    expect(verdict).toBe('drifts');
    // 1 − 0.3 − 0.15 of the picture, less the tiles that the patches' edges run through.
    expect(neutral!.extentFraction).toBeGreaterThan(0.4);
    expect(neutral!.extentFraction).toBeLessThan(0.56);
    // From the middle of the first tenth to that of the last: 0.9 of the way.
    const [red, blue] = [(0.9 * Math.log2(1.03)), 0.9 * Math.log2(0.96)];
    expect(Math.abs(drift!.red_stops / red - 1)).toBeLessThan(0.1);
    expect(Math.abs(drift!.blue_stops / blue - 1)).toBeLessThan(0.1);
    expect(drift!.warmer_mired).toBeGreaterThan(4);
    expect(drift!.warmer_mired).toBeLessThan(9);
  }, 60_000); // prettier-ignore

  test('saved with loss drifts by nearly as much', async () => {
    writeColourClip(at('loss.mov'), SCENE, { pixels: 'yuv422p10le' }, ['-vf', 'setparams=colorspace=bt709:color_primaries=bt709:color_trc=bt709', '-c:v', 'prores_ks', '-profile:v', '1']); // prettier-ignore
    const { measurement } = await measured('loss.mov');
    const { verdict, drift } = measurement.colour!;
    expect(verdict).toBe('drifts');
    expect(Math.abs(drift!.red_stops / (0.9 * Math.log2(1.03)) - 1)).toBeLessThan(0.25);
  });

  test('and steady otherwise is steady, and gray has no colour', async () => {
    writeColourClip(at('steady.mkv'), { ...SCENE, light: () => [1, 1, 1] }, { pixels: 'yuv422p10le' }, HD);
    expect((await measured('steady.mkv')).measurement.colour!.verdict).toBe('steady');
    ffmpeg(['-i', at('steady.mkv'), '-pix_fmt', 'gray10le', '-c:v', 'ffv1', at('gray.mkv')]);
    expect((await measured('gray.mkv')).measurement.colour).toBeUndefined();
  });
});

describe.skipIf(noFfmpeg)('what ffmpeg makes of the same pixels', () => {
  const plain: ColourScene = { ...SCENE, patches: [], frames: 3, light: () => [1.1, 1, 0.85], noise: 0.004 };

  /** Means of our samples' planes, and of the signals worked out from them. */
  async function ours(name: string) {
    const clip = await probeClip(await openClipFile(at(name)));
    const { form, width, height } = clip.colour!;
    const toSignals = signalsOf(form, clip.coding);
    const [codes, signals, into] = [[0, 0, 0], [0, 0, 0], new Float64Array(3)];
    for await (const { colour } of decodeFrames({ clip, colourEvery: 3 }))
      if (colour)
        for (let i = 0; i < width * height; i += 1) {
          const [a, b, c] = [colour.planes[0][i]!, colour.planes[1][i]!, colour.planes[2][i]!];
          toSignals(a, b, c, into);
          for (let j = 0; j < 3; j += 1) codes[j]! += [a, b, c][j]! / (width * height);
          for (let j = 0; j < 3; j += 1) signals[j]! += into[j]! / (width * height);
        }
    return { codes, signals };
  } // prettier-ignore

  test('signalstats finds the same means of brightness and of both differences', async () => {
    writeColourClip(at('stats.mkv'), plain, { pixels: 'yuv422p10le' }, HD);
    const { stdout } = spawnSync('ffmpeg', ['-v', 'error', '-i', at('stats.mkv'), '-frames:v', '1', '-vf', 'signalstats,metadata=print:file=-', '-f', 'null', '-']); // prettier-ignore
    const said = (key: string) => Number(new RegExp(`signalstats\\.${key}=([\\d.]+)`).exec(String(stdout))![1]);
    const { codes } = await ours('stats.mkv');
    expect(Math.abs(codes[0]! - said('YAVG'))).toBeLessThan(0.5);
    expect(Math.abs(codes[1]! - said('UAVG'))).toBeLessThan(0.3);
    expect(Math.abs(codes[2]! - said('VAVG'))).toBeLessThan(0.3);
  });

  test.each([
    ['bt709', 'bt709'],
    ['bt601', 'smpte170m'],
    ['bt2020', 'bt2020nc'],
  ] as const)('its own conversion to red, green and blue by %s comes to our signals', async (matrix, said) => {
    const file = `${matrix}.mkv`;
    writeColourClip(at(file), plain, { pixels: 'yuv444p10le', matrix }, ['-colorspace', said, '-color_range', 'tv', '-c:v', 'ffv1']); // prettier-ignore
    const { stdout } = spawnSync('ffmpeg', ['-v', 'error', '-i', at(file), '-frames:v', '1', '-vf', `scale=in_color_matrix=${matrix}:in_range=tv:out_range=pc:flags=accurate_rnd+full_chroma_int,format=gbrp`, '-f', 'rawvideo', 'pipe:1'], { maxBuffer: 1e9 }); // prettier-ignore
    const all = new Uint8Array(stdout);
    const size = plain.width * plain.height;
    const mean = (plane: number) => all.subarray(plane * size, (plane + 1) * size).reduce((sum, value) => sum + value, 0) / size / 255; // prettier-ignore
    const { signals } = await ours(file);
    [mean(2), mean(0), mean(1)].forEach((theirs, i) => expect(Math.abs(signals[i]! - theirs)).toBeLessThan(0.003));
  });
});
