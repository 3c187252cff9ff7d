/** What lies in a folder that was opened: folders, movies, and numbered pictures gathered into sequences. */
import type { Dirent } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { isMovieName, numberedName, numberIn, type NumberedName } from '../media/clipFile.ts';
import type { FolderEntry, FolderListing } from '../record/footage.ts';
import { diskFault, type Folders, type PlaceInFolder } from './folders.ts';

const MOST_ENTRIES = 500;

/** Numbers within names count as numbers, whatever language the machine speaks. */
const inOrder = new Intl.Collator('en', { numeric: true }).compare;

/** A name as text; undefined for bytes that are none, which no address can carry. */
function textOf(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

type Found = Pick<FolderEntry, 'name' | 'kind' | 'pictures'>;

/** Pictures that differ in their number alone, each lot under the name of its first. */
export function sequencesIn(names: readonly string[]): readonly Found[] {
  const lots = new Map<string, { readonly name: string; readonly of: NumberedName }[]>();
  for (const name of names) {
    const of = numberedName(name);
    if (!of) continue;
    const key = `${of.before}\0${of.after}`;
    const lot = lots.get(key) ?? [];
    lot.push({ name, of });
    lots.set(key, lot);
  }
  const found: Found[] = [];
  for (const lot of lots.values()) {
    let rest = lot.sort((a, b) => Number(a.of.digits) - Number(b.of.digits) || a.of.digits.length - b.of.digits.length);
    while (rest.length > 0) {
      const [first] = rest as [(typeof rest)[number]];
      const others = rest.filter(({ name }) => numberIn(name, first.of) === undefined);
      const pictures = rest.length - others.length;
      if (pictures > 1) found.push({ name: first.name, kind: 'sequence', pictures });
      rest = others;
    }
  }
  return found;
} // prettier-ignore

type Kind = Pick<Dirent, 'isDirectory' | 'isFile' | 'isSymbolicLink'>;

interface Kinds {
  readonly folders: string[];
  readonly files: string[];
}

/** Whether a link leads to a folder or a file of the same opened folder; undefined for any other. */
async function behindLink(folders: Folders, place: PlaceInFolder): Promise<'folder' | 'file' | undefined> {
  try {
    const found = await stat(await folders.find(place));
    return found.isDirectory() ? 'folder' : found.isFile() ? 'file' : undefined;
  } catch {
    return undefined;
  }
}

const below = ({ path }: PlaceInFolder, name: string): string => (path === '' ? name : `${path}/${name}`);

async function sorted(folders: Folders, place: PlaceInFolder, entries: readonly (readonly [string, Kind])[]): Promise<Kinds> {
  const kinds: Kinds = { folders: [], files: [] };
  for (const [name, entry] of entries) {
    const link = entry.isSymbolicLink() ? await behindLink(folders, { ...place, path: below(place, name) }) : undefined;
    if (entry.isDirectory() || link === 'folder') kinds.folders.push(name);
    else if (entry.isFile() || link === 'file') kinds.files.push(name);
  }
  return kinds;
} // prettier-ignore

async function described(folder: string, found: Found): Promise<FolderEntry> {
  const now = await stat(join(folder, found.name)).catch(() => undefined);
  if (!now) return found;
  return { ...found, ...(found.kind === 'movie' && { size_B: now.size }), modified: new Date(now.mtimeMs).toISOString() };
} // prettier-ignore

/** Of very many those that were written to last: what a camera just saved is never what is left out. */
function newestOf(entries: readonly FolderEntry[]): readonly FolderEntry[] {
  if (entries.length <= MOST_ENTRIES) return entries;
  const when = ({ modified = '' }: FolderEntry) => modified;
  const newest = entries.toSorted((a, b) => (when(a) === when(b) ? 0 : when(a) < when(b) ? 1 : -1));
  const kept = new Set(newest.slice(0, MOST_ENTRIES));
  return entries.filter((entry) => kept.has(entry));
}

/** What lies in a folder: folders first, hidden ones left out. Throws the Faults of `find`, and for what is no folder. */
export async function listFolder(folders: Folders, place: PlaceInFolder): Promise<FolderListing> {
  const path = await folders.find(place);
  const read = await readdir(path, { withFileTypes: true, encoding: 'buffer' }).catch((cause: unknown) => {
    throw diskFault(place, cause);
  });
  const named = read.map((entry) => [textOf(entry.name), entry] as const);
  const unnamed = named.filter(([name]) => name === undefined).length;
  const shown = named.flatMap(([name, entry]) => (name === undefined || name.startsWith('.') ? [] : [[name, entry] as const])); // prettier-ignore
  const { folders: inside, files } = await sorted(folders, place, shown);
  const clips: Found[] = [
    ...files.filter(isMovieName).map((name): Found => ({ name, kind: 'movie' })),
    ...sequencesIn(files),
  ];
  const all: readonly Found[] = [
    ...inside.sort(inOrder).map((name): Found => ({ name, kind: 'folder' })),
    ...clips.sort((a, b) => inOrder(a.name, b.name)),
  ];
  return {
    folder: place.folder,
    path: place.path,
    entries: newestOf(await Promise.all(all.map((found) => described(path, found)))),
    more: Math.max(0, all.length - MOST_ENTRIES),
    ...(unnamed > 0 && { unnamed }),
  };
}
