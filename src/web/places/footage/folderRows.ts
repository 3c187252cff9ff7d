/** What lies in a folder as it is chosen from: the newest first, so that what was just saved stands on top. */
import type { ClipEntry, FolderEntry, FolderListing } from '../../../record/footage.ts';

export interface FolderRow extends FolderEntry {
  /** Below the opened folder. */
  readonly at: string;
  /** It is one of the clips already, under this name. */
  readonly isAdded: boolean;
}

export const pathIn = (path: string, name: string): string => (path === '' ? name : `${path}/${name}`);

/** The folder that a folder lies in; undefined for the one that was opened. */
export const above = (path: string): string | undefined =>
  path === '' ? undefined : path.includes('/') ? path.slice(0, path.lastIndexOf('/')) : '';

const newestFirst = (a: FolderEntry, b: FolderEntry): number => {
  const [before, after] = [a.modified ?? '', b.modified ?? ''];
  return before === after ? 0 : before < after ? 1 : -1;
};

export function rowsOf({ folder, path, entries }: FolderListing, clips: readonly ClipEntry[]): readonly FolderRow[] {
  const added = new Set(clips.filter((clip) => clip.folder === folder).map((clip) => clip.path));
  return entries
    .map((entry) => ({ ...entry, at: pathIn(path, entry.name), isAdded: added.has(pathIn(path, entry.name)) }))
    .toSorted(newestFirst);
}
