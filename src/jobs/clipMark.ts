/** A clip's file as it lies in its folder: where, how large, and what tells that it was written to. */
import { readdir, stat } from 'node:fs/promises';
import { basename, dirname } from 'node:path';
import { Fault } from '../base/fault.ts';
import { numberedName, numberIn, openClipFile } from '../media/clipFile.ts';
import { diskFault, type Folders, type PlaceInFolder } from './folders.ts';
import type { ClipAt, FileMark } from './types.ts';

const beside = ({ path }: PlaceInFolder, name: string): string => [...path.split('/').slice(0, -1), name].join('/');

/** Throws where a picture of a sequence is a link that leads out of the folder: only the first was looked at so far. */
async function requireOwnPictures(folders: Folders, place: PlaceInFolder, path: string): Promise<void> {
  const numbered = numberedName(basename(path));
  if (!numbered) return;
  for (const entry of await readdir(dirname(path), { withFileTypes: true }))
    if (entry.isSymbolicLink() && numberIn(entry.name, numbered) !== undefined)
      await folders.find({ ...place, path: beside(place, entry.name) });
}

/** Finds a clip. Throws the Faults of `find`, and for what is neither a movie nor pictures. */
export async function findClip(folders: Folders, place: PlaceInFolder): Promise<ClipAt> {
  const path = await folders.find(place);
  const found = await stat(path).catch((cause: unknown) => {
    throw diskFault(place, cause);
  });
  if (!found.isFile())
    throw new Fault({
      code: 'footage.not-a-clip',
      what: found.isDirectory() ? 'This is a folder' : 'This is a pipe or a device, which never ends',
      where: `${place.folder}: ${place.path}`,
      mend: found.isDirectory() ? 'Choose a movie in it, or its pictures.' : 'Save it as a file first.',
    });
  const mark = { size_B: found.size, modified_ms: found.mtimeMs };
  await requireOwnPictures(folders, place, path);
  // One that is still empty is there all the same: measuring it will say so.
  const file = await openClipFile(path).catch(() => undefined);
  if (file?.kind !== 'sequence') return { path, mark };
  return { path, mark: { ...mark, pictures: file.runs.reduce((sum, { count }) => sum + count, 0) } };
}

export const isSameMark = (a: FileMark, b: FileMark): boolean =>
  a.size_B === b.size_B && a.modified_ms === b.modified_ms && a.pictures === b.pictures;
