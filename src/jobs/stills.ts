/** Single frames of clips as pictures, made once and kept in a folder. */
import { readFile, rename, rm, writeFile } from 'node:fs/promises';
import { stillOf } from '../media/still.ts';
import { keepFiles } from './keptFiles.ts';
import { rememberClips } from './openedClips.ts';
import type { StillFrom, Stills } from './queueTypes.ts';
import { createTurns, type Turns } from './turns.ts';

export interface StillsGiven {
  readonly folder: string;
  readonly most_B?: number;
  /** Shared with whatever else starts ffmpeg. */
  readonly turns?: Turns;
}

/** Ten thousand stills of a hundred kilobytes. */
const MOST_B = 1e9;
/** To be raised when stills are made in another way. */
const FORM = 1;
/** What is too much is looked for after so many new ones. */
const TRIM_EACH = 50;

export function createStills({ folder, most_B = MOST_B, turns = createTurns(2) }: StillsGiven): Stills {
  const kept = keepFiles({ folder, most_B });
  const open = rememberClips();
  const making = new Map<string, Promise<Uint8Array<ArrayBuffer>>>();
  let made = 0;

  /** A still that cannot be kept, as on a full disk, is none the worse. */
  const keep = async (path: string, bytes: Uint8Array): Promise<void> => {
    const part = await kept.part(path);
    try {
      await writeFile(part, bytes);
      await rename(part, path);
      made += 1;
      if (made % TRIM_EACH === 1) await kept.trim(path);
    } finally {
      await rm(part, { force: true });
    }
  };

  const make = async ({ path, file, frame, width }: StillFrom, to: string): Promise<Uint8Array<ArrayBuffer>> => {
    const bytes = await turns.take(async () => {
      const { clip, times } = await open(path, file);
      return stillOf({ clip, times, frame, width });
    });
    await keep(to, bytes).catch(() => undefined);
    return bytes;
  };

  return {
    still: async (asked) => {
      const { path, file, frame, width } = asked;
      const key = [FORM, path, file, frame, width];
      const there = await kept.find(key, 'jpg');
      const bytes = there === undefined ? undefined : await readFile(there).catch(() => undefined);
      if (bytes) return new Uint8Array(bytes);
      const to = kept.path(key, 'jpg');
      const begun = making.get(to) ?? make(asked, to).finally(() => making.delete(to));
      making.set(to, begun);
      return begun;
    },
  };
}
