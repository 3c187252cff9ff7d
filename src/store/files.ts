/** Files of shoots, kept once by what they hold however many shoots have them. */
import { createHash } from 'node:crypto';
import { Fault } from '../base/fault.ts';
import { filesNamed, type NamedFile } from './filesNamed.ts';
import type { Shelf } from './shelf.ts';
import type { IncomingFile, StoredFile } from './types.ts';

export interface Files {
  /** Keeps a file inside a transaction of the caller's, and returns its SHA-256. */
  readonly keep: (shootId: string, file: IncomingFile) => string;
  readonly fileOf: (shootId: string, sha256: string) => StoredFile;
  readonly filesOf: (shootId: string) => readonly (NamedFile & { readonly size_B?: number })[];
}

export function openFiles({ sql, find }: Shelf): Files {
  return {
    keep: (shootId, { name, kind, bytes }) => {
      const sha256 = createHash('sha256').update(bytes).digest('hex');
      sql.keepContent.run({ sha256, size_B: bytes.byteLength, kind, bytes });
      sql.addFile.run({ shoot: shootId, sha256, name });
      return sha256;
    },

    fileOf: (shootId, sha256) => {
      const { written } = find(shootId);
      const named = filesNamed(written).find((file) => file.sha256 === sha256);
      const sentAs = sql.fileName.get(shootId, sha256);
      const content = named || sentAs !== undefined ? sql.content.get(sha256) : undefined;
      if (content) return { name: named?.name ?? sentAs ?? sha256, ...content };
      throw new Fault({
        code: 'file.unknown',
        what: 'This shoot has no such file here',
        where: `${shootId}/files/${sha256}`,
        mend: 'Send the file to this shoot again.',
      });
    },

    filesOf: (shootId) =>
      filesNamed(find(shootId).written).map((file) => {
        const size_B = file.sha256 === undefined ? undefined : sql.contentSize.get(file.sha256);
        return { ...file, ...(size_B === undefined ? {} : { size_B }) };
      }),
  };
}
