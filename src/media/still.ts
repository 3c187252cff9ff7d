/** One frame of a clip as a JPEG: that frame and no other, its colours as they were coded. */
import { Fault } from '../base/fault.ts';
import { inputArgs, type ClipFile } from './clipFile.ts';
import { ticksTold, type FrameTimes } from './frameTimes.ts';
import type { Clip } from './probe.ts';
import { lastComplaint, runTool } from './tools.ts';

export interface StillGiven {
  readonly clip: Clip;
  /** Of a movie; see `frameTimesOf`. */
  readonly times: FrameTimes;
  /** From 0, missing frames counted; of one that is missing, the one before it is given. */
  readonly frame: number;
  /** Of the picture; never more than the clip has. */
  readonly width: number;
  readonly signal?: AbortSignal;
}

/** Of a JPEG: 2 is the best that is worth its size. */
const QUALITY = '3';
/** Frames that are missing one after the other are looked past for so long at first. */
const LOOK_BACK_s = 2;
/** Where frames can only be counted, all before it are read. */
const COUNTING_ms = 600_000;
/** Half a tick and less: of times that are known. */
const TO_THE_TICK = 0.4;
const ALWAYS = ['-hide_banner', '-nostdin', '-nostats', '-noautorotate'] as const;

/** Where in the file to begin, and which frames are meant. */
interface Reach {
  readonly seek: readonly string[];
  readonly input: readonly string[];
  readonly select: string;
}

function noSuchFrame(frame: number, where: string): Fault {
  return new Fault({
    code: 'media.no-such-frame',
    what: `It has no frame ${frame}`,
    where,
    mend: 'Ask for one before its end.',
  });
}

/** How colours are taken: as the clip says, else as is usual for its size. */
function matrixOf({ colour, height }: Pick<Clip, 'colour' | 'height'>): string {
  if (colour?.form.kind === 'ycbcr') return colour.form.matrix;
  return height >= 720 ? 'bt709' : 'bt601';
}

/** Filters that make a picture of a size of what a clip holds, for eyes. */
export function scaledFor(clip: Pick<Clip, 'colour' | 'height'>, size: { readonly width: number; readonly height: number }, out: 'jpeg' | 'video'): string {
  const to = out === 'jpeg' ? 'out_color_matrix=bt601:out_range=pc' : 'out_color_matrix=bt709:out_range=tv';
  return `scale=${size.width}:${size.height}:flags=area+accurate_rnd+full_chroma_int:in_color_matrix=${matrixOf(clip)}:${to}`;
} // prettier-ignore

/** Light in floating point would come out far too dark: it is shown by the curve of screens. */
export const shownArgs = ({ codec }: Pick<Clip, 'codec'>): readonly string[] =>
  codec === 'exr' ? ['-apply_trc', 'iec61966_2_1'] : [];

async function picture({ clip, width, signal }: StillGiven, { seek, input, select }: Reach): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const across = Math.max(1, Math.min(Math.round(width), clip.width));
  const size = { width: across, height: Math.max(1, Math.round((clip.height * across) / clip.width)) };
  const filters = `select='${select}',${scaledFor(clip, size, 'jpeg')},format=yuvj444p`;
  const args = [...ALWAYS, '-v', 'error', ...seek, ...shownArgs(clip), ...input, '-map', '0:V:0', '-vf', filters, '-frames:v', '1', '-fps_mode', 'passthrough', '-c:v', 'mjpeg', '-q:v', QUALITY, '-f', 'image2pipe', 'pipe:1'];
  const { bytes, err } = await runTool({ tool: 'ffmpeg', args, where: clip.file.name, timeout_ms: COUNTING_ms, mostOut_B: 200e6, ...(signal && { signal }) });
  if (bytes.length > 0) return new Uint8Array(bytes);
  // To have selected nothing is no fault; to have read nothing is.
  if (/error|invalid|no such file/i.test(err) && !/nothing was encoded|could not open encoder|could not write header/i.test(err))
    throw new Fault({ code: 'media.no-still', what: `The frame cannot be read (${lastComplaint(err)})`, where: clip.file.name, mend: 'Check the file, and try again.', retry: true });
  return undefined;
} // prettier-ignore

type Sequence = Extract<ClipFile, { kind: 'sequence' }>;

async function pictureOfSequence(given: StillGiven, file: Sequence): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const [{ first }, last] = [file.runs[0]!, file.runs.at(-1)!];
  const number = first + given.frame;
  if (number >= last.first + last.count) return undefined;
  const run = file.runs.findLast((of) => of.first <= number)!;
  const at = Math.min(number, run.first + run.count - 1);
  return picture(given, { seek: [], input: inputArgs(file, { first: at, count: 1 }), select: 'eq(n,0)' });
}

/** From half a frame before a time on, and for so long. */
function around({ clip }: StillGiven, ticks: number, half: number, seconds: { readonly before: number; readonly for?: number }): Pick<Reach, 'seek' | 'input'> {
  const from_s = (ticks - half) * clip.tick_s - (clip.start_s ?? 0);
  const begin_s = Math.max(0, from_s - seconds.before);
  const length = seconds.for === undefined ? [] : ['-t', (from_s - begin_s + seconds.for).toFixed(9)];
  return { seek: ['-copyts', '-ss', begin_s.toFixed(9), ...length], input: inputArgs(clip.file) };
} // prettier-ignore

const within = (ticks: number, half: number): string => `between(pts,${(ticks - half).toFixed(3)},${(ticks + half).toFixed(3)})`; // prettier-ignore

interface Found {
  readonly ticks: number;
  /** How much earlier reading has to begin for it to be reached. */
  readonly before: number;
}

/** The frame at a time that is not reached by it, or the last one before; undefined past the end, where none comes after. */
async function lastUpTo(given: StillGiven, ticks: number, half: number): Promise<Found | undefined> {
  const { clip, signal } = given;
  for (const before of [LOOK_BACK_s, Infinity]) {
    const { seek, input } = around(given, ticks, half, { before });
    // As far as the first frame that is not before it.
    const filters = `showinfo=checksum=0,select='gte(pts,${(ticks - half).toFixed(3)})'`;
    const args = [...ALWAYS, '-v', 'info', ...seek, ...input, '-map', '0:V:0', '-vf', filters, '-frames:v', '1', '-fps_mode', 'passthrough', '-f', 'null', '-']; // prettier-ignore
    const { err } = await runTool({ tool: 'ffmpeg', args, where: clip.file.name, timeout_ms: COUNTING_ms, mostErr_B: 64e6, ...(signal && { signal }) }); // prettier-ignore
    const told = ticksTold(err);
    const last = told.findLast((of) => of <= ticks + half);
    if (last !== undefined) return told.some((of) => of >= ticks - half) ? { ticks: last, before } : undefined;
  }
  return undefined;
}

async function pictureOfMovie(given: StillGiven): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const { clip, times, frame } = given;
  const all = inputArgs(clip.file);
  if (times.kind === 'counted') return picture(given, { seek: [], input: all, select: `eq(n,${frame})` });
  if (times.kind === 'listed') {
    const { places, ticks } = times;
    if (frame > places.at(-1)!) return undefined;
    const at = ticks[places.findLastIndex((place) => place <= frame)]!;
    const select = within(at, TO_THE_TICK);
    const reached = await picture(given, { ...around(given, at, TO_THE_TICK, { before: 0, for: clip.tick_s }), select });
    return reached ?? picture(given, { seek: ['-copyts'], input: all, select });
  }
  const half = times.ticksPerFrame / 2;
  const at = times.first_ticks + frame * times.ticksPerFrame;
  const length = 2 * half * clip.tick_s;
  const reached = await picture(given, { ...around(given, at, half, { before: 0, for: length }), select: within(at, half) });
  if (reached) return reached;
  const found = await lastUpTo(given, at, half);
  return found && picture(given, { ...around(given, at, half, { before: found.before, for: length }), select: within(found.ticks, TO_THE_TICK) });
} // prettier-ignore

/** A frame as a JPEG. Throws Fault `media.no-such-frame` beyond the last, and what reading it throws. */
export async function stillOf(given: StillGiven): Promise<Uint8Array<ArrayBuffer>> {
  const { file } = given.clip;
  const found = await (file.kind === 'sequence' ? pictureOfSequence(given, file) : pictureOfMovie(given));
  if (found) return found;
  throw noSuchFrame(given.frame, file.name);
}
