/**
 * A small copy of a clip that a browser plays: a frame for every frame, at an even rate, any of them reached at once. It is
 * written under another name and has its own only when it is whole.
 */
import { open, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import { Fault } from '../base/fault.ts';
import { ratioOf } from '../base/rational.ts';
import { inputArgs, type ClipFile } from './clipFile.ts';
import type { FrameTimes } from './frameTimes.ts';
import type { Clip } from './probe.ts';
import { scaledFor, shownArgs } from './still.ts';
import { lastComplaint, runTool, stalled, startTool } from './tools.ts';
import { watchOver } from './watchdog.ts';

/** What a copy is written in, the best first: not every ffmpeg has every one. */
export const PROXY_FORMS = {
  h264: { encoder: 'libx264', ending: 'mp4', says: 'H.264 in MP4', args: ['-c:v', 'libx264', '-preset', 'veryfast', '-crf', '20', '-bf', '0', '-pix_fmt', 'yuv420p', '-movflags', '+faststart', '-f', 'mp4'] },
  vp8: { encoder: 'libvpx', ending: 'webm', says: 'VP8 in WebM', args: ['-c:v', 'libvpx', '-deadline', 'realtime', '-cpu-used', '4', '-crf', '8', '-b:v', '6M', '-auto-alt-ref', '0', '-pix_fmt', 'yuv420p', '-f', 'webm'] },
  mpeg4: { encoder: 'mpeg4', ending: 'mpeg4.mp4', says: 'MPEG-4 in MP4, which few browsers play', args: ['-c:v', 'mpeg4', '-q:v', '3', '-bf', '0', '-pix_fmt', 'yuv420p', '-movflags', '+faststart', '-f', 'mp4'] },
} as const; // prettier-ignore
export type ProxyForm = keyof typeof PROXY_FORMS;

export interface ProxyGiven {
  readonly clip: Clip;
  /** Of a movie; see `frameTimesOf`. */
  readonly times: FrameTimes;
  readonly playback_fps: number;
  readonly form: ProxyForm;
  /** Where it is to be, and under which name until then, in the same folder. */
  readonly path: string;
  readonly partPath: string;
  readonly signal?: AbortSignal;
  readonly onProgress?: (frames: number) => void;
  readonly timeout_ms?: number;
}

const MOST_WIDE = 960;
/** Between frames that stand by themselves: near enough that any frame is there at once. */
const GROUP = 12;
const STALL_ms = 120_000;

/** The first form that this ffmpeg writes. Throws a Fault for one that writes none. */
export async function proxyForm(env?: NodeJS.ProcessEnv): Promise<ProxyForm> {
  const { out } = await runTool({ tool: 'ffmpeg', args: ['-hide_banner', '-v', 'error', '-encoders'], where: 'ffmpeg', ...(env && { env }) }); // prettier-ignore
  const found = (Object.keys(PROXY_FORMS) as ProxyForm[]).find((form) => out.split(/\s+/).includes(PROXY_FORMS[form].encoder)); // prettier-ignore
  if (found) return found;
  throw new Fault({ code: 'media.no-encoder', what: 'This ffmpeg writes none of the forms that copies are made in', where: 'ffmpeg', mend: 'Install a whole ffmpeg, with libx264.' }); // prettier-ignore
}

/** Even sizes, as the forms ask for. */
function sizeOf({ width, height }: Clip): { readonly width: number; readonly height: number } {
  const even = (value: number): number => Math.max(2, 2 * Math.floor(value / 2));
  const across = even(Math.min(MOST_WIDE, width));
  return { width: across, height: even((height * across) / width) };
}

/** Frames at the times of their places, each lasting as long as any; one that is missing is stood for by the one before. */
const evenly = (place: string, playback_fps: number): string => `settb=AVTB,setpts='${place}/(${playback_fps}*TB)',fps=${playback_fps}`; // prettier-ignore

/** As it is measured and as its stills are shown: no pixel wider than it is high, whatever the clip asks for. */
const shown = (clip: Clip): string => `${scaledFor(clip, sizeOf(clip), 'video')},setsar=1`;

/** Frames by their places: of a movie by their times, or counted where they come at any time. */
function placed({ fileRate }: Clip, times: FrameTimes, playback_fps: number): string {
  const isTimed = fileRate && (times.kind === 'even' || (times.kind === 'listed' && !times.isCounted));
  const place = isTimed ? `round((T-STARTT)*${ratioOf(fileRate)})` : 'N';
  return evenly(place, playback_fps);
}

type Sequence = Extract<ClipFile, { kind: 'sequence' }>;

/** Runs of pictures one after the other; where some are missing the one before stands for them. */
function graphOfSequence(clip: Clip, file: Sequence, playback_fps: number): readonly string[] {
  const { runs } = file;
  const inputs = runs.flatMap((run) => [...shownArgs(clip), ...inputArgs(file, run)]);
  const parts = runs.map((run, i) => {
    const next = runs[i + 1];
    const gap = next ? next.first - run.first - run.count : 0;
    return `[${i}:V:0]trim=end_frame=${run.count}${gap > 0 ? `,tpad=stop=${gap}:stop_mode=clone` : ''}[r${i}]`;
  });
  const joined = `${runs.map((_, i) => `[r${i}]`).join('')}concat=n=${runs.length},${evenly('N', playback_fps)}`;
  return [...inputs, '-filter_complex', `${parts.join(';')};${joined},${shown(clip)}[out]`, '-map', '[out]'];
} // prettier-ignore

function argsOf({ clip, times, playback_fps, form, partPath }: ProxyGiven): readonly string[] {
  const { file } = clip;
  const from =
    file.kind === 'sequence'
      ? graphOfSequence(clip, file, playback_fps)
      : [...shownArgs(clip), ...inputArgs(file), '-map', '0:V:0', '-vf', `${placed(clip, times, playback_fps)},${shown(clip)}`]; // prettier-ignore
  const colour = ['-colorspace', 'bt709', '-color_primaries', 'bt709', '-color_trc', 'bt709', '-color_range', 'tv'];
  return ['-hide_banner', '-nostdin', '-nostats', '-v', 'error', '-noautorotate', '-y', ...from, '-fps_mode', 'passthrough', '-g', String(GROUP), ...colour, '-an', '-sn', '-dn', '-map_metadata', '-1', ...PROXY_FORMS[form].args, '-progress', 'pipe:1', `file:${partPath}`]; // prettier-ignore
}

const NOT_TURNED = [0x10000, 0, 0, 0, 0x10000, 0, 0, 0, 0x40000000] as const;
/** The head of a track stands at the front of a copy; the matrix lies so far behind its name. */
const HEAD_B = 4096;
const MATRIX_AT_B = 44;

/** Takes back what a clip asks of whoever shows it: to be turned. ffmpeg hands that on to MP4, filters or none. */
async function unturn(path: string): Promise<void> {
  const file = await open(path, 'r+');
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(HEAD_B), 0, HEAD_B, 0);
    const at = buffer.subarray(0, bytesRead).indexOf('tkhd');
    if (at < 0) return;
    const matrix = Buffer.alloc(4 * NOT_TURNED.length);
    for (const [i, cell] of NOT_TURNED.entries()) matrix.writeInt32BE(cell, 4 * i);
    await file.write(matrix, 0, matrix.length, at + MATRIX_AT_B);
  } finally {
    await file.close();
  }
}

/** On the disk, and not only said to be. */
async function settle(path: string): Promise<void> {
  const file = await open(path, 'r');
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Makes a copy. Throws a Fault where it cannot be made, and what the signal says; nothing of it is left then. */
export async function makeProxy(given: ProxyGiven): Promise<void> {
  const { clip, form, path, partPath, signal, onProgress, timeout_ms = STALL_ms } = given;
  const where = clip.file.name;
  signal?.throwIfAborted();
  const { child, ended } = startTool('ffmpeg', argsOf(given));
  const stop = (): boolean => child.kill('SIGKILL');
  const watched = watchOver(timeout_ms, stop);
  signal?.addEventListener('abort', stop);
  let [said, frames] = ['', 0];
  child.stderr!.setEncoding('utf8').on('data', (text: string) => (said = (said + text).slice(-4000)));
  child.stdout!.setEncoding('utf8').on('data', (text: string) => {
    const [, count] = [...text.matchAll(/^frame=\s*(\d+)/gm)].at(-1) ?? [];
    if (count === undefined || Number(count) <= frames) return;
    frames = Number(count);
    watched.see();
    onProgress?.(frames);
  });
  try {
    const code = await ended;
    signal?.throwIfAborted();
    if (watched.hasStalled()) throw stalled(where, timeout_ms);
    if (code !== 0)
      throw new Fault({ code: 'media.no-copy', what: `A small copy cannot be made (${lastComplaint(said)})`, where, mend: 'Check that the clip can be read, and that the disk of the data folder has room.', retry: true }); // prettier-ignore
    if (PROXY_FORMS[form].ending.endsWith('mp4')) await unturn(partPath);
    await settle(partPath);
    await rename(partPath, path);
    if (process.platform !== 'win32') await settle(dirname(path));
  } finally {
    watched.end();
    signal?.removeEventListener('abort', stop);
    stop();
    await ended.catch(() => undefined);
    await rm(partPath, { force: true });
  }
}
