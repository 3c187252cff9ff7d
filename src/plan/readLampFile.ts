/** Reads a file that a lamp names, by what it is named for. Apart from telling plans of it, as the readers are large. */
import type { FaultDetails } from '../base/fault.ts';
import { readMeasuredWaveform } from '../laws/flicker/measured.ts';
import { readPhotometry } from '../laws/light/photometry/read.ts';
import { textOfBytes } from '../laws/light/photometry/text.ts';
import type { LampFile, LampFileState } from './lampFiles.ts';

type Refusal = Pick<FaultDetails, 'what'> & { readonly line: number };

/** `flood.ies, line 4: The count of planes is 0`. */
export function sayRefusal(name: string, { what, line }: Refusal): string {
  return `${name}${line > 0 ? `, line ${line}` : ''}: ${what}`;
}

/** What a file holds, or why it cannot be read. */
export function readLampFile({ kind, name }: LampFile, bytes: Uint8Array): LampFileState {
  const unread = (refusal: Refusal): LampFileState => ({ kind: 'unread', says: sayRefusal(name, refusal) });
  if (kind === 'photometry') {
    const read = readPhotometry(bytes);
    return read.ok ? { kind, photometry: read.photometry } : unread(read.refusal);
  }
  const read = readMeasuredWaveform(textOfBytes(bytes).text);
  return read.ok ? { kind, waveform: read.waveform } : unread(read.refusal);
}
