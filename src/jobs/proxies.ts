/** Small copies of clips that a browser plays, made once and kept in a folder. */
import { ratioOf } from '../base/rational.ts';
import { makeProxy, proxyForm, PROXY_FORMS, type ProxyForm } from '../media/proxy.ts';
import type { Clip } from '../media/probe.ts';
import { framesSaid } from './firstLook.ts';
import { keepFiles } from './keptFiles.ts';
import { rememberClips } from './openedClips.ts';
import type { Proxies } from './queueTypes.ts';
import { createTurns, type Turns } from './turns.ts';
import type { ProxyInput } from './types.ts';

export interface ProxiesGiven {
  readonly folder: string;
  readonly most_B?: number;
  /** Shared with whatever else starts ffmpeg. */
  readonly turns?: Turns;
  /** What copies are written in; the best that this ffmpeg has where left out. */
  readonly form?: ProxyForm;
}

/** A thousand copies of a few seconds each. */
const MOST_B = 10e9;
/** To be raised when copies are made in another way. */
const FORM = 1;
const USUAL_PLAYBACK_fps = 24;
/** Files that say to play faster were never meant to be played as they are. */
const FASTEST_fps = 60;
const SLOWED_fps = 25;

function playbackOf(clip: Clip, { playback_fps }: ProxyInput): number {
  const file_fps = clip.fileRate && ratioOf(clip.fileRate);
  if (playback_fps !== undefined) return playback_fps;
  return file_fps === undefined ? USUAL_PLAYBACK_fps : file_fps > FASTEST_fps ? SLOWED_fps : file_fps;
}

const keyOf = ({ path, file, playback_fps }: ProxyInput) => [FORM, path, file, playback_fps ?? null];

export function createProxies({ folder, most_B = MOST_B, turns = createTurns(2), form }: ProxiesGiven): Proxies {
  const kept = keepFiles({ folder, most_B });
  const open = rememberClips();

  const find: Proxies['find'] = async (input) => {
    for (const { ending } of Object.values(PROXY_FORMS)) {
      const file = await kept.find(keyOf(input), ending);
      if (file !== undefined) return file;
    }
    return undefined;
  };

  const make = async (input: ProxyInput, { signal, onProgress }: Parameters<Proxies['make']>[1]): Promise<string> => {
    const there = await find(input);
    if (there !== undefined) return there;
    const { clip, times } = await open(input.path, input.file);
    const as = form ?? (await proxyForm());
    const path = kept.path(keyOf(input), PROXY_FORMS[as].ending);
    const total = framesSaid(clip);
    const partPath = await kept.part(path);
    await makeProxy({
      clip,
      times,
      playback_fps: playbackOf(clip, input),
      form: as,
      path,
      partPath,
      signal,
      onProgress: (frames) => onProgress(frames, total),
    });
    await kept.trim(path);
    return path;
  };

  return { find, make: (input, hooks) => turns.take(() => make(input, hooks), hooks.signal) };
}
