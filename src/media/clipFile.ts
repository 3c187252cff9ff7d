/**
 * What a name on the command line stands for: a movie, or the numbered pictures of a sequence. Only plain files are opened:
 * a pipe or a device would be waited on for ever.
 */
import { readdir, stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { Fault } from '../base/fault.ts';

/** Pictures numbered one after the other. */
export interface Run {
  readonly first: number;
  readonly count: number;
}

export type ClipFile =
  | {
      readonly kind: 'movie';
      readonly name: string;
      readonly path: string;
      readonly size_B: number;
      readonly modified_ms: number;
    }
  | {
      readonly kind: 'sequence';
      readonly name: string;
      /** In the form that ffmpeg numbers, with everything else in it taken as it stands. */
      readonly pattern: string;
      readonly runs: readonly Run[];
      /** The first picture. */
      readonly path: string;
    };

const PICTURES = /\.(?:png|tiff?|dpx|exr|jpe?g|bmp|pgm|ppm|jp2|cin|webp)$/i;

const MOVIES = /\.(?:mov|mp4|m4v|qt|mxf|avi|mkv|webm|mts|m2ts|mpe?g|wmv|ogv|y4m|nut|dv)$/i;

/** Whether a name ends as movies do. What it is, reading it tells. */
export const isMovieName = (name: string): boolean => MOVIES.test(name);

/** More stretches than these are a folder of pictures, not a sequence with a few missing. */
const MOST_RUNS = 200;

const WORDS: Readonly<Record<string, readonly [what: string, mend: string]>> = {
  ENOENT: ['There is no such clip', 'Check the name and the folder it is in.'],
  ENOTDIR: ['There is no such clip', 'Check the name and the folder it is in.'],
  EACCES: ['The clip may not be read', 'Check its permissions.'],
  EPERM: ['The clip may not be read', 'Check its permissions.'],
};

function unreadable(where: string, cause: unknown): Fault {
  const { code = '', message } = cause as NodeJS.ErrnoException;
  const [what, mend] = WORDS[code] ?? [`The clip cannot be read: ${message}`, 'Check the disk it is on.'];
  return new Fault({ code: 'media.no-file', what, where, mend, cause });
}

const refused = (code: string, what: string, where: string, mend: string): Fault =>
  new Fault({ code, what, where, mend });

async function plainFile(path: string, name: string) {
  const found = await stat(path).catch((cause: unknown) => {
    throw unreadable(name, cause);
  });
  if (found.isDirectory()) throw refused('media.not-a-file', 'This is a folder', name, 'Name a movie in it, or the first picture of a sequence.'); // prettier-ignore
  if (!found.isFile()) throw refused('media.not-a-file', 'This is a pipe or a device, which never ends', name, 'Save it as a file first.'); // prettier-ignore
  if (found.size === 0) throw refused('media.empty', 'The file is empty', name, 'Save the clip again: its copy may have been cut short.'); // prettier-ignore
  return found;
}

/** Numbers in order as stretches without a gap. */
export function runsOf(numbers: readonly number[]): readonly Run[] {
  const runs: { first: number; count: number }[] = [];
  for (const number of [...new Set(numbers)].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last && number === last.first + last.count) last.count += 1;
    else runs.push({ first: number, count: 1 });
  }
  return runs;
}

/** The digits that number a picture: the last in its name, before what it is a kind of. */
const NUMBERED = /^(.*?)(\d{1,9})(\D*\.[^.]+)$/s;

export interface NumberedName {
  readonly before: string;
  readonly digits: string;
  readonly after: string;
}

/** The name of a numbered picture around its number; undefined for what is none. */
export function numberedName(name: string): NumberedName | undefined {
  const match = PICTURES.test(name) ? NUMBERED.exec(name) : null;
  return match ? { before: match[1]!, digits: match[2]!, after: match[3]! } : undefined;
}

/** The number of a picture of the same sequence as one of this name; undefined for another. */
export function numberIn(entry: string, { before, digits, after }: NumberedName): number | undefined {
  if (!entry.startsWith(before) || !entry.endsWith(after)) return undefined;
  const middle = entry.slice(before.length, entry.length - after.length);
  return /^\d+$/.test(middle) && middle === String(Number(middle)).padStart(digits.length, '0') ? Number(middle) : undefined;
} // prettier-ignore

/** All pictures that differ from this one in their number alone; undefined where it has none, or is alone. */
async function sequenceOf(path: string, name: string): Promise<ClipFile | undefined> {
  const numbered = numberedName(basename(path));
  if (!numbered) return undefined;
  const { before, digits, after } = numbered;
  const folder = dirname(path);
  const entries = await readdir(folder).catch(() => []);
  const numbers = entries.map((entry) => numberIn(entry, numbered)).filter((number) => number !== undefined);
  // From the picture named on: whoever names the tenth does not want the nine before.
  const runs = runsOf(numbers.filter((number) => number >= Number(digits)));
  if (numbers.length < 2 || runs.length === 0) return undefined;
  if (runs.length > MOST_RUNS) throw refused('media.not-a-sequence', `The pictures from this one on are in ${runs.length} pieces`, name, 'Number the pictures of a clip one after the other.'); // prettier-ignore
  const asItIs = (text: string): string => text.replaceAll('%', '%%');
  const pattern = join(asItIs(folder), `${asItIs(before)}%0${digits.length}d${asItIs(after)}`);
  return { kind: 'sequence', name, pattern, runs, path };
}

/** What a name stands for. Throws a Fault for what is no plain file, or holds nothing. */
export async function openClipFile(name: string): Promise<ClipFile> {
  const path = resolve(name);
  const { size, mtimeMs } = await plainFile(path, name);
  const sequence = await sequenceOf(path, name);
  return sequence ?? { kind: 'movie', name, path, size_B: size, modified_ms: mtimeMs };
}

/** Whether a movie has grown or been written to since it was opened. */
export async function hasChanged(file: ClipFile): Promise<boolean> {
  if (file.kind === 'sequence') return false;
  const now = await stat(file.path).catch(() => undefined);
  return now === undefined || now.size !== file.size_B || now.mtimeMs !== file.modified_ms;
}

/**
 * How ffmpeg is told what to open: by the protocol for files, so that no name is taken for an option or an address, and
 * with that protocol alone, so that no list of clips can reach for anything else.
 */
export function inputArgs(file: ClipFile, run?: Run): readonly string[] {
  const only = ['-protocol_whitelist', 'file'];
  if (file.kind === 'movie')
    return PICTURES.test(file.path)
      ? [...only, '-f', 'image2', '-pattern_type', 'none', '-i', `file:${file.path}`]
      : [...only, '-i', `file:${file.path}`];
  const { first } = run ?? file.runs[0]!;
  return [...only, '-f', 'image2', '-pattern_type', 'sequence', '-start_number', String(first), '-i', `file:${file.pattern}`];
} // prettier-ignore
