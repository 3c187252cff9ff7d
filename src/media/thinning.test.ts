/** Some rows of a picture are those of the whole one, to the last code value, whatever its form and height. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { clipFolder, ffmpeg, noFfmpeg, testCard } from '../../test/footage/clips.ts';
import { thinnedCodes } from '../../test/footage/thinned.ts';
import { rowCounts, type RowsRead } from '../measure/rowsRead.ts';
import { openClipFile } from './clipFile.ts';
import { decodeFrames, type DecodeGiven } from './decode.ts';
import type { Mark } from './mark.ts';
import { probeClip } from './probe.ts';

const folder = clipFolder();
const at = (name: string) => join(folder, name);

interface Read {
  readonly data: Uint8Array | Uint16Array;
  readonly whole: Uint8Array | Uint16Array | undefined;
  readonly place: number;
  readonly mark: () => Mark;
}

async function read(path: string, more: Omit<DecodeGiven, 'clip'> = {}): Promise<{ readonly frames: readonly Read[]; readonly notes: readonly string[]; readonly width: number; readonly height: number }> {
  const clip = await probeClip(await openClipFile(path));
  const notes: string[] = [];
  const frames: Read[] = [];
  for await (const { plane, place, whole, mark } of decodeFrames({ clip, onNote: (note) => notes.push(note), ...more })) {
    const of = mark();
    frames.push({ data: plane.data.slice(), whole: whole?.data, place, mark: () => of });
  }
  return { frames, notes, width: clip.width, height: clip.height };
} // prettier-ignore

const STEPS: readonly RowsRead[] = [
  { step: 2, judgedStep: 4 },
  { step: 4, judgedStep: 32 },
  { step: 8, judgedStep: 8 },
];

describe.skipIf(noFfmpeg)('rows that are read', () => {
  test.each([
    ['of video of eight bits', 'a.mp4', '64x46', ['-c:v', 'libx264', '-pix_fmt', 'yuv420p']],
    ['of video of ten bits', 'b.mov', '64x48', ['-c:v', 'prores_ks', '-pix_fmt', 'yuv422p10le']],
    ['of video of an odd size', 'c.mkv', '51x37', ['-c:v', 'ffv1', '-pix_fmt', 'yuv420p']],
    ['of video of twelve bits', 'd.mkv', '33x41', ['-c:v', 'ffv1', '-pix_fmt', 'yuv444p12le']],
    ['of gray', 'e.mkv', '35x43', ['-c:v', 'ffv1', '-pix_fmt', 'gray16le']],
    ['of two halves side by side', 'f.nut', '64x50', ['-c:v', 'rawvideo', '-pix_fmt', 'nv12']],
    ['of packed video', 'g.nut', '64x49', ['-c:v', 'rawvideo', '-pix_fmt', 'uyvy422']],
    ['of packed red, green and blue', 'h.nut', '37x45', ['-c:v', 'rawvideo', '-pix_fmt', 'rgb48le']],
    ['of a palette', 'i.gif', '40x39', []],
    ['of an old tape, its halves woven', 'j.mov', '64x48', ['-c:v', 'prores_ks', '-vf', 'setfield=tff', '-flags', '+ildct', '-pix_fmt', 'yuv422p10le']],
  ] as const)('%s are those of the whole picture', async (_, name, size, as) => {
    testCard(at(name), { size, seconds: 0.4, as });
    const { frames: whole, width, height } = await read(at(name));
    expect(whole).toHaveLength(10);
    for (const rowsRead of STEPS) {
      const { frames, notes } = await read(at(name), { rowsRead });
      expect(frames.map(({ place }) => place)).toEqual(whole.map(({ place }) => place));
      expect(notes).toEqual([]);
      frames.forEach(({ data }, i) => expect(data).toEqual(thinnedCodes(whole[i]!.data, width, height, rowsRead)));
      // Of a few frames all rows come as well.
      frames.forEach(({ whole: all }, i) => expect(all).toEqual([0, 1, 3, 7].includes(i) ? whole[i]!.data : undefined));
    }
  }); // prettier-ignore

  test('of numbered pictures are too, gaps and stretches among them', async () => {
    mkdirSync(at('seq'));
    ffmpeg(['-f', 'lavfi', '-i', 'testsrc2=s=40x30:r=25:d=0.4', '-pix_fmt', 'rgb48be', at('seq/p%02d.png')]);
    const name = at('seq/p01.png');
    const stretch = { firstFrame: 3, frameCount: 5 };
    const whole = (await read(name, { stretch })).frames;
    const rowsRead = STEPS[1]!;
    const { frames } = await read(name, { stretch, rowsRead });
    expect(frames.map(({ data }) => data)).toEqual(whole.map(({ data }) => thinnedCodes(data, 40, 30, rowsRead)));
    expect(frames.map(({ whole: all }) => all !== undefined)).toEqual([true, true, false, true, false]);
  });

  test('are all there where frames come at any time, or at the same', async () => {
    ffmpeg(['-f', 'lavfi', '-i', 'testsrc2=s=64x48:r=25:d=1', '-vf', "settb=1/1000,setpts='N*40+13*mod(N*N,5)'", '-fps_mode', 'passthrough', '-enc_time_base', '1/1000', '-c:v', 'ffv1', '-pix_fmt', 'gray', at('vary.nut')]); // prettier-ignore
    testCard(at('raw.h264'), { as: ['-c:v', 'libx264', '-pix_fmt', 'yuv420p', '-bf', '3', '-f', 'h264'] });
    ffmpeg(['-f', 'lavfi', '-i', 'testsrc2=s=64x48:r=25:d=1', '-vf', "settb=1/1000,setpts='floor(N/3)*120'", '-fps_mode', 'passthrough', '-enc_time_base', '1/1000', '-c:v', 'rawvideo', '-pix_fmt', 'gray', '-f', 'matroska', at('same.mkv')]); // prettier-ignore
    for (const name of ['vary.nut', 'raw.h264', 'same.mkv']) {
      const whole = await read(at(name));
      const { frames } = await read(at(name), { rowsRead: STEPS[0]! });
      expect(whole.frames.length).toBeGreaterThanOrEqual(24);
      expect(frames.map(({ place }) => place)).toEqual(whole.frames.map(({ place }) => place));
      frames.forEach(({ data }, i) => expect(data).toEqual(thinnedCodes(whole.frames[i]!.data, 64, 48, STEPS[0]!)));
    }
  });

  test('are gone on with as they would have come, whole ones too', async () => {
    testCard(at('on.mov'), { as: ['-c:v', 'prores_ks', '-pix_fmt', 'yuv422p10le'] });
    const rowsRead = STEPS[1]!;
    const all = (await read(at('on.mov'), { rowsRead })).frames;
    const after = (await read(at('on.mov'), { rowsRead, after: all[5]!.mark() })).frames;
    const plain = ({ data, whole, place }: Read) => ({ data, whole, place });
    expect(after.map(plain)).toEqual(all.slice(6).map(plain));
    expect(after.filter(({ whole }) => whole).map(({ place }) => place)).toEqual([7, 15]);
  });
});

test('rows of a kind are as many as there are', () => {
  for (let height = 3; height < 70; height += 1)
    for (const rows of STEPS) {
      const every = Array.from({ length: height }, (_, y) => y);
      const counted = [every.filter((y) => y % rows.step === 0), every.filter((y) => y % rows.judgedStep === 1), every.filter((y) => y % rows.judgedStep === 2)]; // prettier-ignore
      expect(rowCounts(rows, height)).toEqual(counted.map(({ length }) => length));
    }
});
