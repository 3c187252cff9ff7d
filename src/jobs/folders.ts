/**
 * The folders that clips may be taken from: those named when the server was started, and nothing above or beside them,
 * however a path is written and wherever a link leads.
 */
import { realpath, stat } from 'node:fs/promises';
import { basename, isAbsolute, join, resolve, sep } from 'node:path';
import { Fault } from '../base/fault.ts';
import type { OpenedFolder } from './types.ts';

/** A folder that was opened, and a path below it, parted by `/`. */
export interface PlaceInFolder {
  readonly folder: string;
  readonly path: string;
}

export interface Folders {
  readonly opened: readonly OpenedFolder[];
  /** Whether each is there now: a disk may be plugged in later. */
  readonly look: () => Promise<readonly { readonly name: string; readonly isThere: boolean }[]>;
  /** Where a place really is, every link followed. Throws a Fault for one that is not there or leads out of its folder. */
  readonly find: (place: PlaceInFolder) => Promise<string>;
  /** Throws a Fault for a path of this machine that lies in none of them, as one found when others were open. */
  readonly requireInside: (path: string) => Promise<void>;
}

const MOST_SHOWN = 200;

/** The last parts of a path as a name; the whole of one that has no parts, such as a drive. */
function nameOf(path: string, partCount: number): string {
  const parts = path.split(/[/\\]/).filter((part) => part !== '');
  return parts.slice(-partCount).join('/') || path;
}

/** Names people know folders by: what each is called, with as much of what lies above as tells all of them apart. */
export function nameFolders(given: readonly string[]): readonly OpenedFolder[] {
  const paths = [...new Set(given.map((path) => resolve(path)))];
  return paths.map((path) => {
    const others = paths.filter((other) => other !== path);
    const most = path.split(sep).length;
    let partCount = 1;
    while (partCount < most && others.some((other) => nameOf(other, partCount) === nameOf(path, partCount))) partCount += 1; // prettier-ignore
    return { name: nameOf(path, partCount), path };
  });
}

const isThere = (path: string): Promise<boolean> =>
  stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );

function refused(place: PlaceInFolder, what: string): Fault {
  return new Fault({
    code: 'footage.path-refused',
    what,
    where: `${place.folder}: ${place.path.slice(0, MOST_SHOWN)}`,
    mend: 'Choose a clip inside a folder that was opened with --footage.',
  });
}

/** What the disk says of a place, as a fault that names it as people know it. */
export function diskFault(place: PlaceInFolder, cause: unknown): Fault {
  const { code = '', message } = cause as NodeJS.ErrnoException;
  const where = `${place.folder}: ${place.path.slice(0, MOST_SHOWN)}`;
  if (code === 'EACCES' || code === 'EPERM')
    return new Fault({ code: 'footage.unreadable', what: 'It may not be read', where, mend: 'Check its permissions.', cause }); // prettier-ignore
  if (code === 'ENOTDIR')
    return new Fault({ code: 'footage.not-a-folder', what: 'This is no folder', where, mend: 'Look into the folder above it.', cause }); // prettier-ignore
  if (code === 'ENOENT' || code === 'ELOOP' || code === 'ENAMETOOLONG' || code === 'EILSEQ' || code === 'EINVAL')
    return new Fault({
      code: 'footage.path-unknown',
      what: 'There is nothing of this name',
      where,
      mend: 'Look into the folder again: it may have been moved or renamed.',
      cause,
    });
  return new Fault({
    code: 'footage.unreadable',
    what: `The disk refused (${code === '' ? message : code})`,
    where,
    mend: 'Look at the disk and its connection, then try again.',
    retry: true,
    cause,
  });
}

/** A part of a path that could lead anywhere but one folder down. */
function isUnsafe(part: string): boolean {
  if (part === '' || part === '.' || part === '..') return true;
  return process.platform === 'win32' && /[\\:]/.test(part);
}

function partsOf(place: PlaceInFolder): readonly string[] {
  const { path } = place;
  if (path.includes('\0')) throw refused(place, 'The path has a nought in it');
  if (isAbsolute(path)) throw refused(place, 'The path does not begin in its folder');
  const parts = path === '' ? [] : path.split('/');
  if (parts.some(isUnsafe)) throw refused(place, 'The path leads out of its folder, or nowhere');
  return parts;
}

const isWithin = (root: string, path: string): boolean =>
  path === root || path.startsWith(root.endsWith(sep) ? root : root + sep);

/** The folders of these paths, those that are not there among them. */
export function openFolders(given: readonly string[]): Folders {
  const opened = nameFolders(given);

  const rootOf = async (place: PlaceInFolder): Promise<string> => {
    const folder = opened.find(({ name }) => name === place.folder);
    if (!folder)
      throw new Fault({
        code: 'footage.folder-unknown',
        what: 'No folder of this name is open',
        where: place.folder.slice(0, MOST_SHOWN),
        mend: 'Stop Longsecond and start it with --footage and the path of that folder.',
      });
    if (await isThere(folder.path)) return realpath(folder.path);
    throw new Fault({
      code: 'footage.folder-gone',
      what: 'The folder is not there now',
      where: folder.name,
      mend: 'Plug in the disk that it is on, then try again.',
      retry: true,
    });
  };

  return {
    opened,
    look: () => Promise.all(opened.map(async ({ name, path }) => ({ name, isThere: await isThere(path) }))),
    find: async (place) => {
      const parts = partsOf(place);
      const root = await rootOf(place);
      const found = await realpath(join(root, ...parts)).catch((cause: unknown) => {
        throw diskFault(place, cause);
      });
      if (isWithin(root, found)) return found;
      throw refused(place, 'It is a link that leads out of its folder');
    },
    requireInside: async (path) => {
      const found = await realpath(path).catch(() => undefined);
      for (const folder of opened)
        if (found !== undefined && (await isThere(folder.path)) && isWithin(await realpath(folder.path), found)) return;
      throw new Fault({
        code: 'footage.path-refused',
        what: found === undefined ? 'The clip is not there now' : 'The folder of this clip is not open now',
        where: basename(path),
        mend: 'Start Longsecond with --footage and the path of its folder, then ask for it again.',
      });
    },
  };
}
