/** Clips that were looked into lately, so that a second frame of one does not ask for all of it again. */
import { openClipFile } from '../media/clipFile.ts';
import { frameTimesOf, type FrameTimes } from '../media/frameTimes.ts';
import { probeClip, type Clip } from '../media/probe.ts';
import type { FileMark } from './types.ts';

const MOST_KEPT = 32;

export interface OpenedClip {
  readonly clip: Clip;
  readonly times: FrameTimes;
}

async function openClip(path: string): Promise<OpenedClip> {
  const clip = await probeClip(await openClipFile(path));
  return { clip, times: clip.file.kind === 'movie' ? await frameTimesOf(clip) : { kind: 'counted' } };
}

/** What opens clips; one whose file is another meanwhile is opened again. */
export function rememberClips(): (path: string, file: FileMark) => Promise<OpenedClip> {
  const known = new Map<string, Promise<OpenedClip>>();
  return (path, file) => {
    const key = JSON.stringify([path, file]);
    const before = known.get(key);
    const opened = before ?? openClip(path);
    known.delete(key);
    known.set(key, opened);
    opened.catch(() => known.delete(key));
    const [oldest] = known.keys();
    if (known.size > MOST_KEPT && oldest !== undefined) known.delete(oldest);
    return opened;
  };
}
