/** A photometric file on its way to a lamp: read here first, sent and named only once somebody takes it. */
import { useEffect, useRef, useState } from 'react';
import type { FileReply } from '../../../api/replies.ts';
import { Fault } from '../../../base/fault.ts';
import type { Photometry } from '../../../laws/light/photometry/photometry.ts';
import type { Refusal } from '../../../laws/light/photometry/refusal.ts';
import { fileReader, lampShelf, server } from '../../state/page.ts';
import { isDropped } from '../../workers/connect.ts';

/** Far above any lamp's; the reader takes more, and the form need not. */
export const LARGEST_B = 5_000_000;

type Bytes = Uint8Array<ArrayBuffer>;

export type Preview =
  | { readonly state: 'none' }
  | { readonly state: 'reading'; readonly name: string }
  | { readonly state: 'refused'; readonly name: string; readonly refusal: Pick<Refusal, 'what' | 'line' | 'mend'> }
  | { readonly state: 'read'; readonly name: string; readonly bytes: Bytes; readonly photometry: Photometry };

export interface PhotometryPreview {
  readonly preview: Preview;
  readonly look: (file: File) => void;
  readonly isSending: boolean;
  /** Why it could not be sent. */
  readonly says: string | undefined;
  /** Sends what is looked at; undefined where that went wrong. */
  readonly send: (shootId: string) => Promise<FileReply | undefined>;
}

async function previewOf(file: File): Promise<Preview> {
  const { name } = file;
  const refused = (what: string, mend: string): Preview => ({ state: 'refused', name, refusal: { what, line: 0, mend } });
  if (file.size > LARGEST_B)
    return refused(`The file is larger than ${LARGEST_B / 1e6} MB`, 'Give the photometric file of one lamp, not an archive or a collection.');
  const bytes = new Uint8Array(await file.arrayBuffer());
  const read = await fileReader.call('photometry', { bytes }).answer;
  if (!read.ok) return { state: 'refused', name, refusal: read.refusal };
  return { state: 'read', name, bytes, photometry: read.photometry };
} // prettier-ignore

export function usePhotometryPreview(): PhotometryPreview {
  const [preview, setPreview] = useState<Preview>({ state: 'none' });
  const [isSending, setSending] = useState(false);
  const [says, setSays] = useState<string>();
  const looked = useRef<File>(undefined);
  useEffect(() => () => void (looked.current = undefined), []);
  return {
    preview,
    isSending,
    says,
    look: (file) => {
      looked.current = file;
      setSays(undefined);
      setPreview({ state: 'reading', name: file.name });
      const show = (next: Preview) => looked.current === file && setPreview(next);
      previewOf(file).then(show, (error: unknown) => {
        if (isDropped(error)) return;
        const what = error instanceof Error ? error.message : String(error);
        show({ state: 'refused', name: file.name, refusal: { what, line: 0, mend: 'Choose it again.' } });
      });
    },
    send: async (shootId) => {
      if (preview.state !== 'read') return undefined;
      const { name, bytes, photometry } = preview;
      setSending(true);
      setSays(undefined);
      try {
        const file = await server.upload(shootId, { name, type: '', bytes });
        lampShelf.put({ kind: 'photometry', sha256: file.sha256, name }, { kind: 'photometry', photometry });
        return file;
      } catch (error) {
        const isFinal = error instanceof Fault && !error.retry;
        setSays(isFinal ? `${error.what} (${error.where}). ${error.mend} Nothing was changed.` : 'It could not be sent: files need the connection. It waits here; try again.');
        return undefined;
      } finally {
        setSending(false);
      }
    },
  };
} // prettier-ignore
