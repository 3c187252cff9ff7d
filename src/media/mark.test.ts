/** Reading that is stopped after a frame and gone on from gives the frames, places and notes of reading in one go. */
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { clipFolder, ffmpeg, noFfmpeg, testCard } from '../../test/footage/clips.ts';
import { Fault } from '../base/fault.ts';
import { openClipFile } from './clipFile.ts';
import { decodeFrames } from './decode.ts';
import { digestOf, type Mark } from './mark.ts';
import { probeClip, type Clip } from './probe.ts';

const folder = clipFolder();
const at = (name: string) => join(folder, name);
/** So that no frame is like another. */
const NOISE = 'noise=alls=40:allf=t:all_seed=7';
const H264 = ['-c:v', 'libx264', '-pix_fmt', 'yuv420p', '-threads', '1'];

interface Frame {
  readonly digest: string;
  readonly place: number;
  readonly mark: Mark;
}

async function read(clip: Clip, after?: Mark, most = Infinity) {
  const frames: Frame[] = [];
  const notes: string[] = [];
  for await (const { plane, place, mark } of decodeFrames({ clip, ...(after && { after }), onNote: (note) => notes.push(note) })) {
    const { buffer, byteOffset, byteLength } = plane.data;
    frames.push({ digest: digestOf(buffer.slice(byteOffset, byteOffset + byteLength) as ArrayBuffer), place, mark: structuredClone(mark()) });
    if (frames.length === most) break;
  }
  return { frames, notes };
} // prettier-ignore

const clipOf = async (name: string) => probeClip(await openClipFile(name));
const told = ({ frames }: { readonly frames: readonly Frame[] }) =>
  frames.map(({ digest, place }) => ({ digest, place }));
const card = (as: readonly string[]) => (path: string) => testCard(path, { as: ['-vf', NOISE, ...as], seconds: 2 });

const FORMS: readonly (readonly [string, string, (path: string) => void])[] = [
  ['H.264 of one long group of pictures', 'long.mp4', card([...H264, '-g', '250', '-bf', '3'])],
  ['H.264 of open groups', 'open.mkv', card([...H264, '-g', '12', '-bf', '3', '-x264-params', 'open-gop=1:scenecut=0'])],
  ['H.264 that is refreshed bit by bit', 'refresh.mp4', card([...H264, '-g', '12', '-intra-refresh', '1'])],
  ['H.264 in a stream that begins late', 'late.ts', card([...H264, '-g', '20', '-bf', '2', '-output_ts_offset', '40'])],
  ['H.264 without times', 'bare.h264', card([...H264, '-g', '12', '-f', 'h264'])],
  ['H.264 beside sound that begins before it', 'sound.mov', (path) => {
    ffmpeg(['-itsoffset', '0.5', '-f', 'lavfi', '-i', `testsrc2=s=64x48:r=25:d=2,${NOISE}`, '-f', 'lavfi', '-i', 'sine=d=2', '-fps_mode', 'passthrough', ...H264, '-g', '10', '-c:a', 'aac', `file:${path}`]);
  }],
  ['ProRes', 'pro.mov', card(['-c:v', 'prores_ks', '-pix_fmt', 'yuv422p10le'])],
  ['FFV1 timed in milliseconds', 'ms.mkv', (path) => testCard(path, { as: ['-vf', NOISE, '-c:v', 'ffv1', '-pix_fmt', 'gray'], rate: '30000/1001', seconds: 2 })],
  ['a clip of which frames are missing', 'gap.nut', (path) => {
    ffmpeg(['-f', 'lavfi', '-i', `testsrc2=s=64x48:r=25:d=2,${NOISE}`, '-vf', "select='not(between(n,17,29))'", '-fps_mode', 'passthrough', '-c:v', 'ffv1', '-pix_fmt', 'gray', path]);
  }],
  ['a clip whose frames come at any time', 'vary.nut', (path) => {
    ffmpeg(['-f', 'lavfi', '-i', `testsrc2=s=64x48:r=25:d=2,${NOISE}`, '-vf', "settb=1/1000,setpts='N*40+13*mod(N*N,5)'", '-fps_mode', 'passthrough', '-enc_time_base', '1/1000', '-c:v', 'ffv1', '-pix_fmt', 'gray', path]);
  }],
  ['numbered pictures of which some are missing', 'p/p003.png', (path) => {
    mkdirSync(at('p'));
    ffmpeg(['-f', 'lavfi', '-i', `testsrc2=s=64x48:r=25:d=2,${NOISE}`, '-pix_fmt', 'gray', path.replace('003', '%03d')]);
    for (const gone of ['017', '018', '030']) rmSync(path.replace('003', gone));
  }],
]; // prettier-ignore

describe.skipIf(noFfmpeg).each(FORMS)('%s', (_, name, make) => {
  test('goes on as if it had not been stopped, and once more from there', async () => {
    make(at(name));
    const clip = await clipOf(at(name));
    const whole = await read(clip);
    expect(new Set(whole.frames.map(({ digest }) => digest)).size).toBe(whole.frames.length);
    expect(whole.frames.length).toBeGreaterThan(30);
    const last = whole.frames.length - 1;
    for (const stop of [0, 16, last]) {
      const rest = await read(clip, whole.frames[stop]!.mark);
      expect(told(rest)).toEqual(told(whole).slice(stop + 1));
      expect(new Set(rest.notes)).toEqual(new Set(whole.notes));
    }
    const [{ mark }] = (await read(clip, whole.frames[20]!.mark, 7)).frames.slice(-1) as [Frame];
    expect(mark).toEqual(whole.frames[27]!.mark);
    expect(told(await read(clip, mark))).toEqual(told(whole).slice(28));
  });
});

describe.skipIf(noFfmpeg)('a clip that is not as it was', () => {
  const reading = async (clip: Clip, mark: Mark) => read(clip, mark).then(() => undefined, (error: unknown) => error); // prettier-ignore

  test.each([
    ['another take under the same name', `${NOISE},hue=b=1`, 2],
    ['cut before that frame', NOISE, 0.4],
  ])('%s: it says to begin anew', async (_, filter, seconds) => {
    const path = at(`other ${seconds}.mp4`);
    testCard(path, { as: ['-vf', NOISE, ...H264, '-g', '10'], seconds: 2 });
    const [{ mark }] = (await read(await clipOf(path), undefined, 20)).frames.slice(-1) as [Frame];
    testCard(path, { as: ['-vf', filter, ...H264, '-g', '10'], seconds });
    const fault = await reading(await clipOf(path), mark);
    expect(fault).toBeInstanceOf(Fault);
    expect(fault).toMatchObject({ code: 'media.not-as-before', where: path });
  });

  test('pictures of which that one is gone: it says to begin anew', async () => {
    mkdirSync(at('q'));
    ffmpeg(['-f', 'lavfi', '-i', `testsrc2=s=64x48:r=25:d=0.4,${NOISE}`, '-pix_fmt', 'gray', at('q/q%03d.png')]);
    const clip = await clipOf(at('q/q001.png'));
    const [{ mark }] = (await read(clip, undefined, 4)).frames.slice(-1) as [Frame];
    rmSync(at('q/q004.png'));
    expect(await reading(await clipOf(at('q/q001.png')), mark)).toMatchObject({ code: 'media.not-as-before' });
  });
});
