/** Files that were sent to the server and are then named in the shoot: an entry under `files`, once for the same bytes. */
import { freshId } from './freshId.ts';
import { writtenValueAt, type Operation } from './patch.ts';
import { pointerTo } from './pointer.ts';
import { isRecord, type Written } from './written.ts';

/** A file that lies on the server, by what its bytes are. */
export interface SentFile {
  readonly name: string;
  readonly sha256: string;
  readonly size_B: number;
  readonly kind: string;
}

/** What an entry under `files` says of a file that was sent. */
export const fileEntry = ({ name, sha256, size_B, kind }: SentFile): Written => ({
  name,
  sha256,
  size: `${size_B} B`,
  kind,
});

/** The entry that holds these very bytes already. */
export function fileWith(written: Written, sha256: string): string | undefined {
  const files = writtenValueAt(written, '/files');
  if (!isRecord(files)) return undefined;
  return Object.entries(files).find(([, entry]) => isRecord(entry) && entry['sha256'] === sha256)?.[0];
}

export interface NamedFile {
  /** Its id under `files`. */
  readonly id: string;
  /** What names it; empty where it is named already. */
  readonly patch: readonly Operation[];
}

/** Names a file that was sent, under an id that begins as said. */
export function nameFile(written: Written, file: SentFile, stem: string): NamedFile {
  const known = fileWith(written, file.sha256);
  if (known !== undefined) return { id: known, patch: [] };
  const id = freshId(written, stem, '/files');
  return { id, patch: [{ op: 'add', path: `/files/${id}`, value: fileEntry(file) }] };
}

/** Whether anything but what stands at one place speaks of a file. */
function isNamedElsewhere(written: Written, fileId: string, but: string): boolean {
  const mentions = (value: Written, path: string): boolean => {
    if (path === but || path === '/files') return false;
    if (value === fileId) return true;
    if (typeof value !== 'object' || value === null) return false;
    return Object.entries(value).some(([key, item]) => mentions(item, path + pointerTo([key])));
  };
  return mentions(written, '');
}

/** The removal of a file that what stands at one place lets go of, where nothing else speaks of it. */
export function releaseFile(written: Written, fileId: unknown, from: string): readonly Operation[] {
  if (typeof fileId !== 'string') return [];
  const path = pointerTo(['files', fileId]);
  if (writtenValueAt(written, path) === undefined || isNamedElsewhere(written, fileId, from)) return [];
  return [{ op: 'remove', path }];
}
