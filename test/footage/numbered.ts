/** Clips whose frames carry their number as brightness, so that it can be told which of them came. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { ffmpeg } from './clips.ts';

/** Codes from one number to the next, and frames that there are. */
const STEP = 3;
export const NUMBERED = 60;
const sourceOf = (rate: string) =>
  `nullsrc=s=64x48:r=${rate}:d=9,trim=end_frame=${NUMBERED},geq=lum='16+${STEP}*N':cb=128:cr=128,format=yuv420p`;
const SOURCE = sourceOf('25');
const H264 = ['-c:v', 'libx264', '-crf', '2', '-threads', '1'];

export interface NumberedForm {
  readonly says: string;
  readonly name: string;
  readonly make: (path: string) => void;
  /** Number of the frame at a place. */
  readonly at: (place: number) => number;
  readonly count: number;
}

const made = (as: readonly string[], filters = 'null') => (path: string) => ffmpeg(['-f', 'lavfi', '-i', `${SOURCE},${filters}`, ...as, `file:${path}`]); // prettier-ignore
const all = { at: (place: number) => place, count: NUMBERED };
const gapped = { at: (place: number) => (place >= 17 && place <= 29 ? 16 : place), count: NUMBERED };

export const NUMBERED_FORMS: readonly NumberedForm[] = [
  { says: 'H.264 of one long group of pictures', name: 'long.mp4', make: made([...H264, '-g', '250', '-bf', '3']), ...all },
  { says: 'H.264 in a stream that begins late', name: 'late.ts', make: made([...H264, '-g', '20', '-bf', '2', '-output_ts_offset', '40']), ...all },
  { says: 'H.264 without times', name: 'bare.h264', make: made([...H264, '-g', '12', '-bf', '0', '-f', 'h264']), ...all },
  { says: 'H.264 beside sound that begins before it', name: 'sound.mov', make: (path) => ffmpeg(['-itsoffset', '0.5', '-f', 'lavfi', '-i', SOURCE, '-f', 'lavfi', '-i', 'sine=d=2', '-fps_mode', 'passthrough', ...H264, '-g', '10', '-c:a', 'aac', `file:${path}`]), ...all },
  { says: 'ProRes', name: 'pro.mov', make: made(['-c:v', 'prores_ks', '-pix_fmt', 'yuv422p10le']), ...all },
  { says: 'FFV1 timed in milliseconds', name: 'ms.mkv', make: (path) => ffmpeg(['-f', 'lavfi', '-i', sourceOf('30000/1001'), '-c:v', 'ffv1', `file:${path}`]), ...all },
  { says: 'as many frames a second as there are ticks', name: 'ticks.mkv', make: (path) => ffmpeg(['-f', 'lavfi', '-i', sourceOf('1000'), '-c:v', 'ffv1', `file:${path}`]), ...all },
  { says: 'a clip of which frames are missing', name: 'gap.nut', make: made(['-fps_mode', 'passthrough', '-c:v', 'ffv1'], "select='not(between(n,17,29))'"), ...gapped },
  { says: 'a clip whose frames come at any time', name: 'vary.nut', make: made(['-fps_mode', 'passthrough', '-enc_time_base', '1/1000', '-c:v', 'ffv1'], "settb=1/1000,setpts='N*40+13*mod(N*N,5)'"), ...all },
  { says: 'numbered pictures of which some are missing', name: 'p/p000.png', make: (path) => {
    mkdirSync(dirname(path), { recursive: true });
    ffmpeg(['-f', 'lavfi', '-i', SOURCE, '-start_number', '0', '-pix_fmt', 'gray', path.replace('000', '%03d')]);
    for (let gone = 17; gone <= 29; gone += 1) rmSync(path.replace('000', String(gone).padStart(3, '0')));
  }, ...gapped },
]; // prettier-ignore

/** Numbers of the frames in what ffmpeg can read, in order. */
export function numbersIn(input: { readonly path: string } | { readonly bytes: Uint8Array }): readonly number[] {
  const from = 'path' in input ? ['-i', `file:${input.path}`] : ['-i', 'pipe:0'];
  const { stdout, stderr, status } = spawnSync(
    'ffmpeg',
    ['-v', 'error', ...from, '-vf', 'scale=1:1:flags=area', '-fps_mode', 'passthrough', '-f', 'rawvideo', '-pix_fmt', 'gray', 'pipe:1'],
    { ...('bytes' in input && { input: input.bytes }), maxBuffer: 1e9 },
  );
  if (status !== 0) throw new Error(String(stderr));
  // Video levels are drawn out to the whole range on the way.
  return Array.from(stdout, (code) => Math.round((code * 219) / 255 / STEP));
} // prettier-ignore
