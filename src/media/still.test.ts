import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { clipFolder, ffmpeg, noFfmpeg, testCard } from '../../test/footage/clips.ts';
import { numbersIn, NUMBERED_FORMS } from '../../test/footage/numbered.ts';
import { openClipFile } from './clipFile.ts';
import { decodeFrames } from './decode.ts';
import { frameTimesOf } from './frameTimes.ts';
import { probeClip, type Clip } from './probe.ts';
import { stillOf } from './still.ts';

const folder = clipFolder();
const at = (name: string) => join(folder, name);

async function stillsOf(path: string) {
  const clip = await probeClip(await openClipFile(path));
  const times = clip.file.kind === 'movie' ? await frameTimesOf(clip) : ({ kind: 'counted' } as const);
  return { clip, still: (frame: number, width = 64) => stillOf({ clip, times, frame, width }) };
}

/** Places of the frames as measuring has them. */
async function placesOf(clip: Clip): Promise<readonly number[]> {
  const places: number[] = [];
  for await (const { place } of decodeFrames({ clip })) places.push(place);
  return places;
}

/** Colours of the middle of a picture. */
function middleOf(input: readonly string[], bytes?: Uint8Array): readonly number[] {
  const { stdout } = spawnSync('ffmpeg', ['-v', 'error', ...input, '-vf', 'crop=2:2,scale=1:1:flags=area', '-frames:v', '1', '-f', 'rawvideo', '-pix_fmt', 'rgb24', 'pipe:1'], { ...(bytes && { input: bytes }) }); // prettier-ignore
  return [...stdout];
}

describe.skipIf(noFfmpeg).each(NUMBERED_FORMS)('$says', ({ name, make, at: numberAt, count }) => {
  test('gives the frame that is asked for, as measuring counts them', async () => {
    make(at(name));
    const { clip, still } = await stillsOf(at(name));
    expect((await placesOf(clip)).at(-1)).toBe(count - 1);
    for (const frame of [0, 17, 30, count - 1])
      expect([frame, ...numbersIn({ bytes: await still(frame) })]).toEqual([frame, numberAt(frame)]);
    for (const frame of [count]) await expect(still(frame)).rejects.toMatchObject({ code: 'media.no-such-frame', where: at(name) }); // prettier-ignore
  });
});

describe.skipIf(noFfmpeg)('a still', () => {
  const sizeOf = (bytes: Uint8Array): string => String(spawnSync('ffprobe', ['-v', 'error', '-show_entries', 'stream=codec_name,width,height', '-of', 'csv=p=0', 'pipe:0'], { input: bytes }).stdout).trim(); // prettier-ignore

  test('is a JPEG as wide as is asked for, and never wider than the clip', async () => {
    testCard(at('wide.mp4'), { size: '128x72', as: ['-c:v', 'libx264', '-pix_fmt', 'yuv420p'], seconds: 0.2 });
    const { still } = await stillsOf(at('wide.mp4'));
    expect(sizeOf(await still(1, 64))).toBe('mjpeg,64,36');
    expect(sizeOf(await still(1, 4096))).toBe('mjpeg,128,72');
    expect(sizeOf(await still(1, 1))).toBe('mjpeg,1,1');
  });

  // The definitions of the two matrices: shares of red and blue in brightness.
  test.each([
    ['Rec. 601 of the whole range', 'small.mkv', '64x48', 0.299, 0.114, 0, 255, 255, ['-colorspace', 'smpte170m', '-color_range', 'pc']],
    ['Rec. 709 that the clip tells', 'told.mkv', '64x48', 0.2126, 0.0722, 16, 219, 224, ['-colorspace', 'bt709', '-color_range', 'tv']],
    ['Rec. 709 as is usual for its size', 'large.mkv', '1280x720', 0.2126, 0.0722, 16, 219, 224, []],
    ['Rec. 601 as is usual for its size', 'plain.mkv', '64x48', 0.299, 0.114, 16, 219, 224, []],
  ])('has the colours of %s', async (_, name, size, ofRed, ofBlue, black, range, spread, tags) => {
    const [y, cb, cr] = [101, 95, 187];
    ffmpeg(['-f', 'lavfi', '-i', `nullsrc=s=${size}:r=25:d=0.08,format=yuv444p,geq=lum=${y}:cb=${cb}:cr=${cr}`, '-c:v', 'ffv1', ...tags, at(name)]);
    const light = (y - black) / range;
    const red = light + (2 * (1 - ofRed) * (cr - 128)) / spread;
    const blue = light + (2 * (1 - ofBlue) * (cb - 128)) / spread;
    const green = (light - ofRed * red - ofBlue * blue) / (1 - ofRed - ofBlue);
    const { still } = await stillsOf(at(name));
    const shown = middleOf(['-i', 'pipe:0'], await still(0));
    expect(Math.max(...shown.map((code, i) => Math.abs(code - 255 * [red, green, blue][i]!)))).toBeLessThanOrEqual(3);
  }); // prettier-ignore

  test('of light in floating point is shown by the curve of screens', async () => {
    ffmpeg(['-f', 'lavfi', '-i', 'color=c=gray:s=32x24:r=25:d=0.08,format=gbrpf32le', '-frames:v', '2', at('light_%02d.exr')]); // prettier-ignore
    const { still } = await stillsOf(at('light_01.exr'));
    const [red] = middleOf(['-i', 'pipe:0'], await still(0));
    // The gray of the source as light of 128/255, on a screen 188.
    expect(Math.abs(red! - 188)).toBeLessThanOrEqual(3);
  });
});
