/** What ffmpeg is told so that it gives the frames of a clip, all or some, as the code values that it holds. */
import { ratioOf } from '../base/rational.ts';
import type { RowsRead } from '../measure/rowsRead.ts';
import { inputArgs, type Run } from './clipFile.ts';
import type { Clip } from './probe.ts';
import { isWhole, selectWholes, thinned, type Wholes } from './thinning.ts';

/** A stretch of a clip. */
export interface Stretch {
  readonly firstFrame: number;
  readonly frameCount: number;
}

/** The stretches of pictures of a sequence that a stretch of the clip takes in; places are by number, gaps counted. */
export function runsWithin(runs: readonly Run[], stretch: Stretch | undefined): readonly Run[] {
  if (!stretch) return runs;
  const from = runs[0]!.first + stretch.firstFrame;
  const to = from + stretch.frameCount;
  return runs.flatMap(({ first, count }): readonly Run[] => {
    const [begin, end] = [Math.max(first, from), Math.min(first + count, to)];
    return end > begin ? [{ first: begin, count: end - begin }] : [];
  });
}

export interface DecodeArgs {
  readonly clip: Clip;
  readonly run: Run | undefined;
  readonly stretch: Stretch | undefined;
  /** Time of a frame to begin with, in ticks from where the clip begins; what comes then keeps the times of its file. */
  readonly from_ticks: number | undefined;
  /** Every so many frames a sample of colour through a third pipe, the first of the one that is so many on. */
  readonly sampled?: { readonly every: number; readonly first: number } | undefined;
  /** Only these rows of every picture, and some whole ones through a fourth pipe. */
  readonly rows?: { readonly read: RowsRead; readonly wholes: Wholes } | undefined;
}

/** Half a frame before the one that is meant, as times are rounded; of a stretch a quarter, so that none before it comes. */
function seekArgs({ clip: { fileRate, tick_s }, stretch, from_ticks }: DecodeArgs): readonly string[] {
  if (!fileRate) return [];
  if (from_ticks !== undefined)
    return ['-copyts', '-ss', Math.max(0, from_ticks * tick_s - 0.5 / ratioOf(fileRate)).toFixed(9)];
  if (!stretch || stretch.firstFrame <= 0) return [];
  return ['-ss', ((stretch.firstFrame - 0.25) / ratioOf(fileRate)).toFixed(9)];
}

/** What is taken of every picture, and through which pipe its bytes come. */
interface Taken {
  readonly filters: string;
  readonly pixelFormat: string;
  readonly pipe: number;
}

/** Each thing taken is an output of its own, of pictures that are decoded once. */
function takenArgs({ filters, pixelFormat, pipe }: Taken, most: readonly string[]): readonly string[] {
  return ['-map', '0:V:0', ...most, '-vf', filters, '-fps_mode', 'passthrough', '-f', 'rawvideo', '-pix_fmt', pixelFormat, `pipe:${pipe}`]; // prettier-ignore
}

/**
 * What is taken of some frames. Named before the frames, written by one thread, which holds none back, and each at once: so
 * ffmpeg writes it before its frame, and whoever has the frame may wait for it.
 */
const asideArgs = (taken: Taken, most: readonly string[]): readonly string[] =>
  takenArgs(taken, [...most, '-threads', '1', '-flush_packets', '1']);

/** Samples of colour of some frames; where only so many frames are read, of those. */
function colourArgs({ clip: { colour }, sampled }: DecodeArgs, frames: number | undefined): readonly string[] {
  if (!colour || !sampled) return [];
  const { filters, pixelFormat } = colour;
  const { every, first } = sampled;
  const most = frames === undefined ? [] : ['-frames:v', String(Math.max(1, Math.ceil((frames - first) / every)))];
  return asideArgs({ filters: `select='not(mod(n+${(every - first) % every},${every}))',${filters}`, pixelFormat, pipe: 3 }, most);
} // prettier-ignore

/** Some whole pictures; where only so many frames are read, of those. */
function wholeArgs({ clip: { plane }, rows }: DecodeArgs, frames: number | undefined): readonly string[] {
  if (!rows) return [];
  const { filter, pixelFormat } = plane;
  const count = Array.from({ length: frames ?? 0 }, (_, n) => n).filter((n) => isWhole(rows.wholes, n)).length;
  const most = frames === undefined ? [] : ['-frames:v', String(Math.max(1, count))];
  return asideArgs({ filters: `${selectWholes(rows.wholes)},${filter}`, pixelFormat, pipe: 4 }, most);
}

export function decodeArgs(given: DecodeArgs): readonly string[] {
  const { clip, run, stretch, rows } = given;
  const { filter, pixelFormat } = clip.plane;
  const most = run ? ['-frames:v', String(run.count)] : stretch ? ['-frames:v', String(stretch.frameCount)] : [];
  const frames = run?.count ?? stretch?.frameCount;
  const lifted = rows ? thinned(rows.read, filter) : filter;
  const all = takenArgs({ filters: `showinfo=checksum=0,${lifted}`, pixelFormat, pipe: 1 }, most);
  return ['-hide_banner', '-nostdin', '-nostats', '-v', 'info', '-noautorotate', ...seekArgs(given), ...inputArgs(clip.file, run), ...colourArgs(given, frames), ...wholeArgs(given, frames), ...all]; // prettier-ignore
}
