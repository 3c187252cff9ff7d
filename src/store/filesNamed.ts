/** The files that a shoot names. */
import { writtenValueAt } from '../document/patch.ts';
import { isRecord, memberOf, type Written } from '../document/written.ts';

export interface NamedFile {
  /** Its id under `files`. */
  readonly id: string;
  readonly name?: string;
  /** Lower-case; absent where none is written, or what is written is no hash. */
  readonly sha256?: string;
}

const SHA256 = /^[0-9a-f]{64}$/;

/** Every entry under `files`, as far as it can be made out: a shoot may have problems. */
export function filesNamed(written: Written): readonly NamedFile[] {
  const files = writtenValueAt(written, '/files');
  if (!isRecord(files)) return [];
  return Object.entries(files).map(([id, entry]) => {
    const member = (key: string) => {
      const value = isRecord(entry) ? memberOf(entry, key) : undefined;
      return typeof value === 'string' ? value : undefined;
    };
    const name = member('name');
    const sha256 = member('sha256')?.toLowerCase();
    return {
      id,
      ...(name === undefined ? {} : { name }),
      ...(sha256 !== undefined && SHA256.test(sha256) ? { sha256 } : {}),
    };
  });
}
