/** A lamp's photometric file as edits of the shoot: taken with its entry under `files`, chosen among those there, taken out. */
import type { FileReply } from '../../../api/replies.ts';
import { writtenValueAt } from '../../../document/patch.ts';
import { isRecord, type Written } from '../../../document/written.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import { nameFile, releaseFile } from '../../../document/namedFiles.ts';
import { itemPath, itemsOf, titleOf } from './kitEdits.ts';

export const photometryPath = (lampId: string) => `${itemPath('lamps', lampId)}/file`;

/** Gives a lamp a file that the shoot names; the one it had before goes, where nothing else speaks of it. */
export function giveFilePatch(written: Written, lampId: string, fileId: string): readonly PatchOperation[] {
  const path = photometryPath(lampId);
  const before = writtenValueAt(written, path);
  if (before === fileId) return [];
  return [{ op: 'add', path, value: fileId }, ...releaseFile(written, before, path)];
}

/** One edit that names a file that was sent and gives it to a lamp. */
export function takeFilePatch(written: Written, lampId: string, file: FileReply): readonly PatchOperation[] {
  const { id, patch } = nameFile(written, file, 'photometry');
  return [...patch, ...giveFilePatch(written, lampId, id)];
}

/** One edit that takes a lamp's file out, and its entry where nothing else speaks of that. */
export function dropFilePatch(written: Written, lampId: string): readonly PatchOperation[] {
  const path = photometryPath(lampId);
  const before = writtenValueAt(written, path);
  if (before === undefined) return [];
  return [{ op: 'remove', path }, ...releaseFile(written, before, path)];
}

export interface OtherFile {
  readonly fileId: string;
  readonly name: string;
  /** The lamps that have it. */
  readonly lamps: readonly string[];
}

/** Photometric files that other lamps of the shoot have. */
export function filesOfOthers(written: Written, lampId: string): readonly OtherFile[] {
  const own = writtenValueAt(written, photometryPath(lampId));
  const found = new Map<string, string[]>();
  for (const [id, lamp] of itemsOf(written, 'lamps')) {
    const { file } = lamp;
    if (id === lampId || typeof file !== 'string' || file === own) continue;
    found.set(file, [...(found.get(file) ?? []), titleOf(id, lamp)]);
  }
  return [...found].flatMap(([fileId, lamps]) => {
    const entry = writtenValueAt(written, `/files/${fileId}`);
    if (!isRecord(entry)) return [];
    return [{ fileId, name: typeof entry['name'] === 'string' ? entry['name'] : fileId, lamps }];
  });
}
