/** Samples of colour: the code values that a clip holds, whatever form they are in. */
import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { clipFolder, ffmpeg, noFfmpeg, testCard } from '../../test/footage/clips.ts';
import type { ColourSample } from '../measure/colour/meter.ts';
import { openClipFile } from './clipFile.ts';
import { decodeFrames, type DecodeGiven } from './decode.ts';
import type { Mark } from './mark.ts';
import { probeClip } from './probe.ts';

const folder = clipFolder();
const at = (name: string) => join(folder, name);
const [WIDTH, HEIGHT] = [64, 48];

async function read(path: string, every = 2, more: Partial<DecodeGiven> = {}) {
  const clip = await probeClip(await openClipFile(path));
  const samples: ColourSample[] = [];
  const places: number[] = [];
  for await (const { place, colour } of decodeFrames({ clip, colourEvery: every, ...more })) {
    places.push(place);
    if (colour) samples.push(colour);
  }
  return { clip, samples, places };
}

/** All planes of a clip as ffmpeg's own raw output of that form has them. */
function rawOf(path: string, pixelFormat: string, frame: number): Buffer {
  const { stdout } = spawnSync('ffmpeg', ['-v', 'error', '-i', `file:${path}`, '-vf', `select='eq(n,${frame})'`, '-frames:v', '1', '-f', 'rawvideo', '-pix_fmt', pixelFormat, 'pipe:1'], { maxBuffer: 1e9 }); // prettier-ignore
  return stdout;
}

type Raw = Uint8Array | Uint16Array;
const wide = (raw: Buffer): Uint16Array => new Uint16Array(raw.buffer.slice(raw.byteOffset, raw.byteOffset + raw.byteLength)); // prettier-ignore

/** Planes whose colour differences are shared by so many pixels, each at its own pixels. */
function planar(raw: Raw, across: number, down: number): readonly number[][] {
  const size = WIDTH * HEIGHT;
  const shared = (WIDTH / across) * (HEIGHT / down);
  const plane = (from: number) =>
    Array.from({ length: size }, (_, i) => raw[from + Math.floor(Math.floor(i / WIDTH) / down) * (WIDTH / across) + Math.floor((i % WIDTH) / across)]!); // prettier-ignore
  return [Array.from(raw.subarray(0, size)), plane(size), plane(size + shared)];
}
const packed = (raw: Raw, each: number, order: readonly number[]): readonly number[][] =>
  order.map((of) => Array.from({ length: WIDTH * HEIGHT }, (_, i) => raw[each * i + of]!));
const separate = (raw: Raw, order: readonly number[]): readonly number[][] =>
  order.map((of) => Array.from(raw.subarray(of * WIDTH * HEIGHT, (of + 1) * WIDTH * HEIGHT)));

describe.skipIf(noFfmpeg)('samples of colour', () => {
  // A picture no wider than a sample is sampled whole: every pixel can be held against what the clip has.
  test.each([
    ['video of eight bits', 'a.mp4', ['-c:v', 'libx264', '-pix_fmt', 'yuv420p'], 'yuv420p', (raw: Buffer) => planar(raw, 2, 2), 'bt601'],
    ['video over the whole range', 'b.mp4', ['-c:v', 'libx264', '-vf', 'scale=out_range=pc', '-color_range', 'pc', '-pix_fmt', 'yuvj420p'], 'yuvj420p', (raw: Buffer) => planar(raw, 2, 2), 'bt601'],
    ['video of ten bits', 'c.mov', ['-vf', 'setparams=colorspace=bt709:color_primaries=bt709', '-c:v', 'prores_ks', '-pix_fmt', 'yuv422p10le'], 'yuv422p10le', (raw: Buffer) => planar(wide(raw), 2, 1), 'bt709'],
    ['video of twelve bits, every colour whole', 'd.mkv', ['-c:v', 'ffv1', '-pix_fmt', 'yuv444p12le', '-colorspace', 'bt2020nc'], 'yuv444p12le', (raw: Buffer) => planar(wide(raw), 1, 1), 'bt2020'],
    ['video whose two halves lie side by side', 'e.nut', ['-c:v', 'rawvideo', '-pix_fmt', 'nv12'], 'yuv420p', (raw: Buffer) => planar(raw, 2, 2), 'bt601'],
    ['red, green and blue', 'f.mkv', ['-c:v', 'ffv1', '-pix_fmt', 'gbrp10le'], 'gbrp10le', (raw: Buffer) => separate(wide(raw), [2, 0, 1]), undefined],
    ['red, green and blue of sixteen bits', 'g.mkv', ['-c:v', 'ffv1', '-pix_fmt', 'gbrp16le'], 'gbrp16le', (raw: Buffer) => separate(wide(raw), [2, 0, 1]), undefined],
    ['red, green and blue pixel by pixel', 'h.mov', ['-c:v', 'png', '-pix_fmt', 'rgb24'], 'rgb24', (raw: Buffer) => packed(raw, 3, [0, 1, 2]), undefined],
    ['blue, green and red pixel by pixel', 'i.avi', ['-c:v', 'rawvideo', '-pix_fmt', 'bgr24'], 'bgr24', (raw: Buffer) => packed(raw, 3, [2, 1, 0]), undefined],
    ['sixteen bits the wrong way round', 'j.mov', ['-c:v', 'png', '-pix_fmt', 'rgb48be'], 'rgb48le', (raw: Buffer) => packed(wide(raw), 3, [0, 1, 2]), undefined],
    ['a palette', 'k.gif', [], 'rgb24', (raw: Buffer) => packed(raw, 3, [0, 1, 2]), undefined],
  ] as const)('of %s are those that the clip holds', async (_, name, as, pixels, planes, matrix) => {
    testCard(at(name), { as, seconds: 0.2, size: `${WIDTH}x${HEIGHT}` });
    const { samples, clip, places } = await read(at(name));
    expect(clip.colour!.form).toMatchObject(matrix === undefined ? { kind: 'rgb' } : { kind: 'ycbcr', matrix });
    expect(samples.map(({ place }) => place)).toEqual(places.filter((place) => place % 2 === 0));
    for (const { place, planes: sampled } of samples) {
      const held = planes(rawOf(at(name), pixels, place));
      sampled.forEach((plane, i) => expect([i, Array.from(plane)]).toEqual([i, held[i]]));
    }
  }); // prettier-ignore

  test('of a larger picture are single pixels of it, spread over all of it', async () => {
    testCard(at('large.mkv'), { as: ['-c:v', 'ffv1', '-pix_fmt', 'gbrp'], seconds: 0.04, size: '384x216' });
    const { samples, clip } = await read(at('large.mkv'));
    expect([clip.colour!.width, clip.colour!.height]).toEqual([96, 54]);
    const raw = rawOf(at('large.mkv'), 'gbrp', 0);
    const pixels = new Set(Array.from({ length: 384 * 216 }, (_, i) => `${raw[2 * 384 * 216 + i]} ${raw[i]} ${raw[384 * 216 + i]}`)); // prettier-ignore
    const [red, green, blue] = samples[0]!.planes;
    const sampled = Array.from(red, (of, i) => `${of} ${green[i]} ${blue[i]}`);
    expect(sampled.every((of) => pixels.has(of))).toBe(true);
    expect(new Set(sampled).size).toBeGreaterThan(100);
  });

  test('of numbered pictures with some missing have their places', async () => {
    mkdirSync(at('pictures'));
    ffmpeg(['-f', 'lavfi', '-i', 'testsrc2=s=64x48:r=25:d=0.4', '-pix_fmt', 'rgb48be', at('pictures/p%03d.png')]);
    spawnSync('rm', [at('pictures/p004.png')]);
    const { samples, places } = await read(at('pictures/p001.png'));
    expect(places).toEqual([0, 1, 2, 4, 5, 6, 7, 8, 9]);
    // Three before the gap, and six after it, which are counted anew.
    expect(samples.map(({ place }) => place)).toEqual([0, 2, 4, 6, 8]);
  });

  test('of light in floating point are that light, clipped at white', async () => {
    ffmpeg(['-f', 'lavfi', '-i', 'color=c=0x804020:s=64x48:r=25:d=0.08,format=gbrpf32le', '-frames:v', '2', at('light_%02d.exr')]); // prettier-ignore
    const { samples, clip } = await read(at('light_01.exr'));
    expect(clip.colour).toMatchObject({
      bitDepth: 16,
      own: { curve: { kind: 'linear' }, coding: { whiteCode: 65_535 } },
    });
    const raw = rawOf(at('light_01.exr'), 'gbrpf32le', 0);
    const [green, blue, red] = [0, 1, 2].map((plane) => raw.readFloatLE(4 * plane * WIDTH * HEIGHT));
    [red, green, blue].forEach((light, i) => expect(samples[0]!.planes[i]![0]! / 65_535 / light!).toBeCloseTo(1, 3));
  });

  test('are few of a stretch, and it ends where it should', async () => {
    testCard(at('stretch.mp4'), { as: ['-c:v', 'libx264', '-pix_fmt', 'yuv420p', '-g', '10'], seconds: 4 });
    const { samples, places } = await read(at('stretch.mp4'), 8, { stretch: { firstFrame: 17, frameCount: 20 } });
    expect(places).toEqual(Array.from({ length: 20 }, (_, i) => i));
    expect(samples.map(({ place }) => place)).toEqual([0, 8, 16]);
    const whole = await read(at('stretch.mp4'), 1);
    expect(samples[1]!.planes).toEqual(whole.samples[25]!.planes);
  });

  test.each([
    ['gray has none', ['-c:v', 'ffv1', '-pix_fmt', 'gray'], ''],
    ['constant luminance is not read', ['-c:v', 'ffv1', '-pix_fmt', 'yuv420p', '-colorspace', 'bt2020c'], 'Its colours (bt2020c, unknown) are not read here: nothing is said of them.'],
    ['what is not said is assumed', ['-c:v', 'ffv1', '-pix_fmt', 'yuv420p'], 'Colours are taken to be those of Rec. 601, since the clip does not say.'],
  ])('%s, and that is said', async (_, as, says) => {
    testCard(at('said.mkv'), { as, seconds: 0.2 });
    const { samples, clip } = await read(at('said.mkv'));
    expect(samples.length > 0).toBe(says.includes('taken'));
    expect(clip.notes.filter((note) => /olours/.test(note)).join(' ')).toBe(says);
  }); // prettier-ignore

  test('come with their frames, each at once, however long those wait', async () => {
    testCard(at('wait.mkv'), { as: ['-c:v', 'ffv1', '-pix_fmt', 'yuv444p'], seconds: 8, size: '480x270' });
    const clip = await probeClip(await openClipFile(at('wait.mkv')));
    const told: (number | undefined)[] = [];
    for await (const { place, colour } of decodeFrames({ clip, colourEvery: 3 })) {
      told.push(colour?.place);
      if (place % 50 === 0) await new Promise((resolve) => setTimeout(resolve, 60));
    }
    expect(told).toEqual(Array.from({ length: 200 }, (_, i) => (i % 3 === 0 ? i : undefined)));
  });

  test.each([
    ['a movie', 'again.mp4', ['-c:v', 'libx264', '-pix_fmt', 'yuv420p', '-g', '12']],
    ['pictures', 'again/p%03d.png', ['-pix_fmt', 'rgb24']],
  ])('of %s gone on with are those of one go', async (_, name, as) => {
    mkdirSync(at('again'), { recursive: true });
    testCard(at(name), { as, seconds: 2 });
    const path = at(name.replace('%03d', '001'));
    const whole = await read(path, 8);
    const clip = await probeClip(await openClipFile(path));
    for (const stop of [7, 8, 21]) {
      let mark: Mark | undefined;
      const samples: ColourSample[] = [];
      for await (const frame of decodeFrames({ clip, colourEvery: 8 })) {
        if (frame.colour) samples.push(frame.colour);
        mark = frame.mark();
        if (frame.place === stop) break;
      }
      for await (const { colour } of decodeFrames({ clip, colourEvery: 8, after: mark! }))
        if (colour) samples.push(colour);
      expect(samples).toEqual(whole.samples);
    }
  });
});
