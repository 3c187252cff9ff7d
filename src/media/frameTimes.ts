/**
 * When each frame of a movie comes by the clock of its file, so that one of them can be reached without reading all before it.
 * Where frames come evenly that is reckoned from the first; where some are missing or come at any time, all times are listed;
 * where there are none, frames can only be counted.
 */
import { ratioOf } from '../base/rational.ts';
import { inputArgs } from './clipFile.ts';
import { createPlaces } from './frames.ts';
import type { Clip } from './probe.ts';
import { runTool } from './tools.ts';

export type FrameTimes =
  | { readonly kind: 'even'; readonly first_ticks: number; readonly ticksPerFrame: number }
  /** Places in order, whether they are one after the other, and the time of each. */
  | {
      readonly kind: 'listed';
      readonly places: Float64Array;
      readonly ticks: Float64Array;
      readonly isCounted: boolean;
    }
  | { readonly kind: 'counted' };

/** Longer than this is waited for a file to be gone through, as on a slow disk. */
const LISTING_ms = 600_000;
/** Twenty digits a frame, ten million frames. */
const MOST_LISTED_B = 200e6;
/** A clock coarser than this many ticks a frame cannot tell a place. */
const FINE = 1.5;

/** Times of frames as they pass, by the clock of the file. */
export function ticksTold(text: string): readonly number[] {
  return [...text.matchAll(/\[Parsed_showinfo[^\]]*\] n: *\d+ pts: *(-?\d+) /g)].map(([, ticks]) => Number(ticks));
}

async function firstTicks({ file }: Clip, signal: AbortSignal | undefined): Promise<number | undefined> {
  const args = ['-hide_banner', '-nostdin', '-nostats', '-v', 'info', '-noautorotate', '-copyts', ...inputArgs(file), '-map', '0:V:0', '-frames:v', '1', '-vf', 'showinfo=checksum=0', '-fps_mode', 'passthrough', '-f', 'null', '-']; // prettier-ignore
  const { err } = await runTool({ tool: 'ffmpeg', args, where: file.name, ...(signal && { signal }) });
  return ticksTold(err)[0];
}

/** Times of all that is in the file, in order; none where any has no time. */
async function listTicks({ file }: Clip, signal: AbortSignal | undefined): Promise<Float64Array | undefined> {
  const args = ['-v', 'error', '-select_streams', 'V:0', '-show_entries', 'packet=pts', '-of', 'csv=p=0', ...inputArgs(file)]; // prettier-ignore
  const { out } = await runTool({ tool: 'ffprobe', args, where: file.name, timeout_ms: LISTING_ms, mostOut_B: MOST_LISTED_B, ...(signal && { signal }) }); // prettier-ignore
  const ticks = Float64Array.from(out.split(/[\s,]+/).filter((text) => text !== ''), Number).sort(); // prettier-ignore
  return ticks.length > 0 && ticks.every(Number.isFinite) ? ticks : undefined;
}

/** The times of a movie's frames. Rejects as `runTool` does. */
export async function frameTimesOf(clip: Clip, signal?: AbortSignal): Promise<FrameTimes> {
  const { fileRate, tick_s, start_s, isEven } = clip;
  if (tick_s === 0 || start_s === undefined) return { kind: 'counted' };
  const ticksPerFrame = fileRate && 1 / (ratioOf(fileRate) * tick_s);
  const first_ticks = await firstTicks(clip, signal);
  if (first_ticks === undefined) return { kind: 'counted' };
  if (isEven && ticksPerFrame !== undefined && ticksPerFrame >= FINE)
    return { kind: 'even', first_ticks, ticksPerFrame };
  const listed = await listTicks(clip, signal);
  if (!listed) return { kind: 'counted' };
  // What comes before the first frame that can be decoded is in the file, and shown by nobody.
  const ticks = listed.filter((of) => of >= first_ticks);
  const { next } = createPlaces({ ticksPerFrame });
  const places = ticks.map(next);
  return { kind: 'listed', places, ticks, isCounted: places.every((place, i) => place === i) };
}
