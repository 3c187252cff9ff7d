import { useState } from 'react';
import type { FileReply } from '../../../api/replies.ts';
import { Fault } from '../../../base/fault.ts';
import { keptText } from '../../../laws/flicker/keptText.ts';
import { readMeasuredText } from '../../../laws/flicker/measuredText.ts';
import { server } from '../../state/page.ts';
import type { RecordOptions, RecordSource } from './RecordSource.tsx';

export interface SendRecord {
  readonly isSending: boolean;
  /** Why it is not sent. */
  readonly says: string | undefined;
  /** Sends what is kept of a record; undefined where that went wrong. */
  readonly send: (shootId: string, source: RecordSource, options: RecordOptions) => Promise<FileReply | undefined>;
}

type Bytes = Uint8Array<ArrayBuffer>;

/** The bytes that are kept: the file's own, unless something was told beside it that it does not say. */
function keptFile({ name, text, bytes }: RecordSource, { dark, unit_s }: RecordOptions): { readonly name: string; readonly bytes: Bytes } {
  if (dark === undefined && unit_s === undefined) return { name, bytes: bytes ?? new TextEncoder().encode(text) };
  const record = readMeasuredText(text, unit_s === undefined ? {} : { unit_s });
  const stem = name.replace(/\.[^.]*$/, '');
  return { name: `${stem}, as read.csv`, bytes: new TextEncoder().encode(keptText(record, { dark: dark ?? 0 })) };
} // prettier-ignore

/** Sends a light record to be kept with the shoot. What is not sent stays in the page and can be sent again. */
export function useSendRecord(): SendRecord {
  const [isSending, setSending] = useState(false);
  const [says, setSays] = useState<string>();
  return {
    isSending,
    says,
    send: async (shootId, source, options) => {
      setSending(true);
      setSays(undefined);
      try {
        return await server.upload(shootId, { type: 'text/csv', ...keptFile(source, options) });
      } catch (error) {
        if (error instanceof Fault && !error.retry)
          setSays(`${error.what} (${error.where}). ${error.mend} Nothing was changed.`);
        else setSays('It could not be sent: files need the connection. It waits here; try again.');
        return undefined;
      } finally {
        setSending(false);
      }
    },
  };
}
