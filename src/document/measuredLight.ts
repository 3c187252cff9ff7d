/** A lamp's light over time as it was measured, as an edit of the shoot: its file, and its entry under the lamp. */
import { freshId } from './freshId.ts';
import { nameFile, type SentFile } from './namedFiles.ts';
import type { Operation } from './patch.ts';
import { pointerTo } from './pointer.ts';
import type { Written, WrittenRecord } from './written.ts';

/** As it is written; empty where it is left out. */
export interface MeasuredAs {
  readonly level: string;
  readonly colour: string;
  readonly supply: string;
  readonly hasOwnRate: boolean;
}

export const measuredPath = (lampId: string, measuredId?: string) =>
  pointerTo(['kit', 'lamps', lampId, 'measured', ...(measuredId === undefined ? [] : [measuredId])]);

const plainNumber = (text: string): Written => (/^\d{1,15}(\.\d+)?$/.test(text) ? Number(text) : text);

export interface TakenRecord {
  readonly lampId: string;
  readonly file: SentFile;
  readonly as: MeasuredAs;
  /** What people call it; the name of the file where left out. */
  readonly title?: string;
  readonly note?: string;
}

/** One edit that names the file and says what it was measured of. */
export function takeRecordPatch(
  written: Written,
  { lampId, file, as, title = file.name, note = '' }: TakenRecord,
): readonly Operation[] {
  const { id: fileId, patch } = nameFile(written, file, 'light');
  const { level, colour, supply, hasOwnRate } = as;
  const entry: WrittenRecord = {
    title,
    ...(note === '' ? {} : { note }),
    file: fileId,
    ...(level.trim() === '' ? {} : { level: plainNumber(level.trim()) }),
    ...(colour.trim() === '' ? {} : { colour: colour.trim() }),
    ...(supply === '' ? {} : { supply }),
    ...(hasOwnRate ? { ownRate: true } : {}),
  };
  const id = freshId(written, 'measured', measuredPath(lampId));
  return [...patch, { op: 'add', path: measuredPath(lampId, id), value: entry }];
}
