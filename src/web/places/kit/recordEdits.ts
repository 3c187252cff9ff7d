/** A measured light as an edit of the shoot: its file and its entry under a lamp, and how it is taken out again. */
import { measuredPath } from '../../../document/measuredLight.ts';
import { releaseFile } from '../../../document/namedFiles.ts';
import { writtenValueAt } from '../../../document/patch.ts';
import { isRecord, type Written, type WrittenRecord } from '../../../document/written.ts';
import type { PatchOperation } from '../../../plan/types.ts';

export { measuredPath, takeRecordPatch, type MeasuredAs } from '../../../document/measuredLight.ts';

/** Entries of a lamp by id, in the order written. */
export function measuredOf(written: Written, lampId: string): readonly (readonly [string, WrittenRecord])[] {
  const entries = writtenValueAt(written, measuredPath(lampId));
  if (!isRecord(entries)) return [];
  return Object.entries(entries).map(([id, entry]) => [id, isRecord(entry) ? entry : {}] as const);
}

/** One edit that takes an entry out, and its file where nothing else speaks of that. */
export function dropRecordPatch(written: Written, lampId: string, measuredId: string): readonly PatchOperation[] {
  const path = measuredPath(lampId, measuredId);
  const entry = writtenValueAt(written, path);
  if (entry === undefined) return [];
  const fileId = isRecord(entry) ? entry['file'] : undefined;
  return [{ op: 'remove', path }, ...releaseFile(written, fileId, path)];
}

/** Multiples of the mains that lamps ripple at, and how near to one counts, as plans take them. */
const MOST_MULTIPLE = 12;
const SAME_RIPPLE = 0.01;
const MAINS_Hz = [50, 60] as const;

/** The mains that a rate goes with, these first; undefined for a rate of its own. */
export function mainsOfRate({ rate_Hz, mains_Hz }: { readonly rate_Hz: number; readonly mains_Hz: number | undefined }): number | undefined {
  const goesWith = (of_Hz: number) => {
    const times = rate_Hz / of_Hz;
    const whole = Math.round(times);
    return whole >= 1 && whole <= MOST_MULTIPLE && Math.abs(times / whole - 1) <= SAME_RIPPLE;
  };
  return [...(mains_Hz === undefined ? [] : [mains_Hz]), ...MAINS_Hz].find(goesWith);
} // prettier-ignore
