/** A folder of files that can be made again, kept to a size: those that nobody asked for longest go first. */
import { createHash } from 'node:crypto';
import { mkdir, readdir, rm, stat, utimes } from 'node:fs/promises';
import { join } from 'node:path';

/** Ends the name of what is not whole yet. */
const PART = '.part';

export interface KeptFiles {
  /** Where the file of a key is, or is to be. */
  readonly path: (key: unknown, ending: string) => string;
  /** The file of a key where it is there; it counts as asked for now. */
  readonly find: (key: unknown, ending: string) => Promise<string | undefined>;
  /** A name beside the file for what is not whole yet. Makes the folder. */
  readonly part: (path: string) => Promise<string>;
  /** Drops what is too much, but never this file. */
  readonly trim: (but: string) => Promise<void>;
}

export interface KeptFilesGiven {
  readonly folder: string;
  readonly most_B: number;
}

/** Nobody else works in the folder: what is not whole there was left by a program that was ended. */
export function keepFiles({ folder, most_B }: KeptFilesGiven): KeptFiles {
  let count = 0;
  const cleared = readdir(folder).then(
    (names) => Promise.all(names.filter((name) => name.endsWith(PART)).map((name) => rm(join(folder, name), { force: true }))),
    () => [],
  ); // prettier-ignore

  const path: KeptFiles['path'] = (key, ending) =>
    join(folder, `${createHash('sha256').update(JSON.stringify(key)).digest('hex').slice(0, 40)}.${ending}`);

  return {
    path,

    find: async (key, ending) => {
      const file = path(key, ending);
      const now = new Date();
      // Its time is when it was asked for last; to set that also tells whether it is there.
      return utimes(file, now, now).then(
        () => file,
        () => undefined,
      );
    },

    part: async (file) => {
      await cleared;
      await mkdir(folder, { recursive: true });
      count += 1;
      return `${file}.${count}${PART}`;
    },

    trim: async (but) => {
      const names = (await readdir(folder)).filter((name) => !name.endsWith(PART));
      const files = await Promise.all(
        names.map(async (name) => {
          const file = join(folder, name);
          const found = await stat(file).catch(() => undefined);
          return found?.isFile() ? { file, size_B: found.size, asked_ms: found.mtimeMs } : undefined;
        }),
      );
      let left_B = 0;
      const newestFirst = files.filter((of) => of !== undefined).sort((a, b) => Number(b.file === but) - Number(a.file === but) || b.asked_ms - a.asked_ms); // prettier-ignore
      for (const { file, size_B } of newestFirst) {
        left_B += size_B;
        if (left_B > most_B && file !== but) await rm(file, { force: true });
      }
    },
  };
}
