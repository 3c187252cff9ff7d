/** Edits of a camera's modes as patches: one cell, one row, or a whole pasted table at once. */
import { fieldAt, isCollectionShape } from '../../../document/fieldAt.ts';
import { writtenValueAt } from '../../../document/patch.ts';
import { pointerTo } from '../../../document/pointer.ts';
import { readValue } from '../../../document/readValue.ts';
import type { Size } from '../../../document/shape.ts';
import { isRecord, type Written, type WrittenRecord } from '../../../document/written.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import { MODE_KEYS, type ModeKey } from './modeKeys.ts';
import type { PastedRow } from './pasteModes.ts';

export const modesPath = (cameraId: string) => pointerTo(['kit', 'cameras', cameraId, 'modes']);

export interface WrittenMode {
  readonly id: string;
  /** As written; an empty text where nothing is. */
  readonly cells: Readonly<Record<ModeKey, string>>;
}

const textOf = (mode: WrittenRecord, key: ModeKey): string => {
  const value = Object.hasOwn(mode, key) ? mode[key] : undefined;
  return value === undefined || value === null || typeof value === 'object' ? '' : String(value);
};

/** The modes of a camera in the order written. */
export function modesOf(written: Written, cameraId: string): readonly WrittenMode[] {
  const modes = writtenValueAt(written, modesPath(cameraId));
  return Object.entries(isRecord(modes) ? modes : {}).map(([id, mode]) => {
    const of = isRecord(mode) ? mode : {};
    const cells = Object.fromEntries(MODE_KEYS.map((key) => [key, textOf(of, key)]));
    return { id, cells: cells as Readonly<Record<ModeKey, string>> };
  });
}

const FIELD = (key: ModeKey) => fieldAt(`/kit/cameras/-/modes/-/${key}`)!;

function readCellValue(key: ModeKey, text: string) {
  const { of } = FIELD(key);
  return isCollectionShape(of) ? undefined : readValue(of, '', text);
}

/** What is wrong with a text in a column of modes; an empty one is merely not said. */
export function cellProblem(key: ModeKey, text: string): string | undefined {
  const read = text.trim() === '' ? undefined : readCellValue(key, text.trim());
  return read?.ok === false ? read.what : undefined;
}

/** A text as it goes into the document: whole numbers as numbers where the form takes them. */
export function asCell(key: ModeKey, text: string): Written {
  return FIELD(key).of.shape === 'number' && /^\d{1,15}$/.test(text) ? Number(text) : text;
}

/** Pixels told apart by what they mean: `4096x2304` is `4096 × 2304`. */
export function sizeOf(pixels: string): Size | undefined {
  const read = readCellValue('pixels', pixels);
  return read?.ok === true ? (read.value as Size) : undefined;
}

/** An id for a new mode that tells its size: `mode-4096x2304`. */
export function freshModeId(taken: ReadonlySet<string>, pixels: string): string {
  const size = sizeOf(pixels);
  const stem = size ? `mode-${size.widthCount}x${size.heightCount}` : 'mode';
  if (size && !taken.has(stem)) return stem;
  for (let n = size ? 2 : 1; ; n += 1) if (!taken.has(`${stem}-${n}`)) return `${stem}-${n}`;
}

export interface NewMode {
  readonly id: string;
  readonly patch: readonly PatchOperation[];
}

export function addMode(written: Written, cameraId: string, cells: PastedRow): NewMode {
  const id = freshModeId(new Set(modesOf(written, cameraId).map((mode) => mode.id)), cells.pixels ?? '');
  const value = Object.fromEntries(MODE_KEYS.flatMap((key) => (cells[key] ? [[key, asCell(key, cells[key])]] : [])));
  return { id, patch: [{ op: 'add', path: modesPath(cameraId) + pointerTo([id]), value }] };
}

/** Writes one cell; an empty text takes away what is there. */
export function cellPatch(written: Written, path: string, key: ModeKey, text: string): readonly PatchOperation[] {
  const body = text.trim();
  const at = path + pointerTo([key]);
  if (body !== '') return [{ op: 'add', path: at, value: asCell(key, body) }];
  return writtenValueAt(written, at) === undefined ? [] : [{ op: 'remove', path: at }];
}

/** One row of a pasted table against what is there. */
export interface RowChange {
  readonly kind: 'added' | 'changed' | 'same';
  readonly id: string;
  readonly cells: PastedRow;
  /** What stood in the cells that change. */
  readonly before: PastedRow;
  readonly problems: PastedRow;
}

const simple = (text: string) => text.trim().toLowerCase().replace(/\s+/g, ' ');

function isSameCell(key: ModeKey, one: string, other: string): boolean {
  if (simple(one) === simple(other)) return true;
  const [a, b] = [readCellValue(key, one), readCellValue(key, other)];
  return a?.ok === true && b?.ok === true && JSON.stringify(a.value) === JSON.stringify(b.value);
}

/** Whether a row without a known title speaks of a mode: the same pixels, binned alike, and the same bits where both say. */
function isSameMode(row: PastedRow, { cells }: WrittenMode): boolean {
  if (row.pixels === undefined || !isSameCell('pixels', row.pixels, cells.pixels)) return false;
  if (!isSameCell('binning', row.binning ?? '1', cells.binning || '1')) return false;
  return row.bits === undefined || cells.bits === '' || isSameCell('bits', row.bits, cells.bits);
}

export interface Laying {
  readonly modes: readonly WrittenMode[];
  readonly rows: readonly PastedRow[];
  /** The row of the grid to lay the first onto; without it rows go to the modes that they speak of. */
  readonly onto?: number;
}

function targetOf(row: PastedRow, modes: readonly WrittenMode[], used: ReadonlySet<string>): WrittenMode | undefined {
  const free = modes.filter(({ id }) => !used.has(id));
  if (row.title !== undefined) return free.find(({ cells }) => simple(cells.title) === simple(row.title!));
  const same = free.filter((mode) => isSameMode(row, mode));
  return same.length === 1 ? same[0] : undefined;
}

/** What pasting a table would do to each of its rows. */
export function changesOf({ modes, rows, onto }: Laying): readonly RowChange[] {
  const taken = new Set(modes.map(({ id }) => id));
  const used = new Set<string>();
  return rows.map((row, i): RowChange => {
    const target = onto === undefined ? targetOf(row, modes, used) : modes[onto + i];
    const keys = MODE_KEYS.filter((key) => row[key] !== undefined);
    const problems = Object.fromEntries(keys.flatMap((key) => {
      const problem = cellProblem(key, row[key]!);
      return problem === undefined ? [] : [[key, problem]];
    }));
    if (!target) {
      const id = freshModeId(taken, row.pixels ?? '');
      taken.add(id);
      return { kind: 'added', id, cells: row, before: {}, problems };
    }
    used.add(target.id);
    const changed = keys.filter((key) => !isSameCell(key, row[key]!, target.cells[key]));
    const before = Object.fromEntries(changed.map((key) => [key, target.cells[key]]));
    return { kind: changed.length === 0 ? 'same' : 'changed', id: target.id, cells: row, before, problems };
  });
} // prettier-ignore

/** The one patch that does all of it. */
export function changesPatch(cameraId: string, changes: readonly RowChange[]): readonly PatchOperation[] {
  return changes.flatMap(({ kind, id, cells, before }): readonly PatchOperation[] => {
    const path = modesPath(cameraId) + pointerTo([id]);
    const keys = MODE_KEYS.filter((key) => (kind === 'added' ? cells[key] !== undefined : before[key] !== undefined));
    if (kind === 'added')
      return [{ op: 'add', path, value: Object.fromEntries(keys.map((key) => [key, asCell(key, cells[key]!)])) }];
    return keys.map((key) => ({ op: 'add', path: path + pointerTo([key]), value: asCell(key, cells[key]!) }));
  });
}

/** `3 added, 1 changed, 2 as they are`. */
export function sayChanges(changes: readonly RowChange[]): string {
  const count = (kind: RowChange['kind']) => changes.filter((change) => change.kind === kind).length;
  const parts = [
    count('added') > 0 && `${count('added')} added`,
    count('changed') > 0 && `${count('changed')} changed`,
    count('same') > 0 && `${count('same')} as ${count('same') === 1 ? 'it is' : 'they are'}`,
  ].filter((part) => part !== false);
  return parts.length === 0 ? 'nothing to add' : parts.join(', ');
}
