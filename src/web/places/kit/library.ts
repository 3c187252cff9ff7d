/** Pieces of kit copied from other shoots: where each came from, and what has changed there since. */
import { fieldAt } from '../../../document/fieldAt.ts';
import { pathsMeet, touchedPaths, writtenValueAt, type Patch } from '../../../document/patch.ts';
import { pointerTo } from '../../../document/pointer.ts';
import type { Shape } from '../../../document/shape.ts';
import { isList, isRecord, isSame, type Written, type WrittenRecord } from '../../../document/written.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import { addItem, itemPath, type NewItem } from './kitEdits.ts';
import type { KitKind } from './kinds.ts';

export interface Origin {
  readonly shootId: string;
  readonly kindKey: string;
  readonly itemId: string;
  readonly revision: number;
}

export function writeOrigin({ shootId, kindKey, itemId, revision }: Origin): string {
  return `${shootId}/${kindKey}/${itemId}@${revision}`;
}

/** An origin as this place writes it; anything else a person may have written there is theirs. */
export function readOrigin(text: Written | undefined): Origin | undefined {
  if (typeof text !== 'string') return undefined;
  const [, shootId, kindKey, itemId, revision] = /^([^/\s]+)\/([A-Za-z]+)\/([^/@\s]+)@(\d{1,12})$/.exec(text.trim()) ?? [];
  if (shootId === undefined || kindKey === undefined || itemId === undefined) return undefined;
  return { shootId, kindKey, itemId, revision: Number(revision) };
} // prettier-ignore

/** What belongs to the shoot an item stands in, and not to the item. */
const OWN_TO_A_SHOOT: ReadonlySet<string> = new Set(['origin', 'availability', 'dayPrice', 'note']);

/** Ids of files that an item names, found by the form of the shoot. */
function filesNamed(of: Shape | undefined, value: Written | undefined): readonly string[] {
  if (of?.shape === 'reference') return of.to === 'files' && typeof value === 'string' ? [value] : [];
  if (of?.shape === 'list' && isList(value)) return value.flatMap((item) => filesNamed(of.of, item));
  if (!isRecord(value)) return [];
  if (of?.shape === 'map') return Object.values(value).flatMap((item) => filesNamed(of.of, item));
  if (of?.shape !== 'record') return [];
  return Object.entries(of.fields).flatMap(([key, field]) => filesNamed(field.of, Object.hasOwn(value, key) ? value[key] : undefined)); // prettier-ignore
}

/** Entries of files that the item brings along and this shoot does not have; their content is kept by its hash. */
function filesBrought(written: Written, from: Written, kindKey: string, item: WrittenRecord): readonly PatchOperation[] {
  const names = new Set(filesNamed(fieldAt(`/kit/${kindKey}/-`)?.of, item));
  return [...names].flatMap((name): readonly PatchOperation[] => {
    const path = pointerTo(['files', name]);
    const entry = writtenValueAt(from, path);
    return entry === undefined || writtenValueAt(written, path) !== undefined ? [] : [{ op: 'add', path, value: entry }];
  });
} // prettier-ignore

export interface Copying {
  readonly kind: KitKind;
  /** The other shoot. */
  readonly from: { readonly id: string; readonly revision: number; readonly written: Written };
  readonly itemId: string;
}

/** Copies an item of another shoot, with where it came from. */
export function copyItem(written: Written, { kind, from, itemId }: Copying): NewItem {
  const item = writtenValueAt(from.written, itemPath(kind.key, itemId));
  const origin = writeOrigin({ shootId: from.id, kindKey: kind.key, itemId, revision: from.revision });
  const value: WrittenRecord = { ...(isRecord(item) ? item : {}), origin };
  const brought = filesBrought(written, from.written, kind.key, value);
  if (writtenValueAt(written, itemPath(kind.key, itemId)) === undefined)
    return { id: itemId, patch: [...brought, { op: 'add', path: itemPath(kind.key, itemId), value }] };
  const added = addItem(written, { key: kind.key, stem: itemId.replace(/-\d+$/, '') }, value);
  return { id: added.id, patch: [...brought, ...added.patch] };
}

export interface Difference {
  /** Keys within the item: `['modes', 'half', 'rate']`. */
  readonly keys: readonly string[];
  readonly ours: Written | undefined;
  readonly theirs: Written | undefined;
}

function differing(ours: Written | undefined, theirs: Written | undefined, keys: readonly string[]): readonly Difference[] {
  if (ours !== undefined && theirs !== undefined && isSame(ours, theirs)) return [];
  if (!isRecord(ours) || !isRecord(theirs)) return [{ keys, ours, theirs }];
  return [...new Set([...Object.keys(ours), ...Object.keys(theirs)])].flatMap((key) => {
    const [one, other] = [ours, theirs].map((each) => (Object.hasOwn(each, key) ? each[key] : undefined));
    return one === undefined && other === undefined ? [] : differing(one, other, [...keys, key]);
  });
} // prettier-ignore

export interface Since {
  readonly ours: WrittenRecord;
  readonly theirs: WrittenRecord;
  readonly origin: Origin;
  /** What happened to the other shoot after the copy was taken. */
  readonly patches: readonly Patch[];
}

/** What differs because the other shoot changed it since; what was only changed here is left out. */
export function newerThere({ ours, theirs, origin, patches }: Since): readonly Difference[] {
  const touched = patches.flatMap((patch) => [...touchedPaths(patch)]);
  const base = itemPath(origin.kindKey, origin.itemId);
  return differing(ours, theirs, []).filter(({ keys }) => {
    if (OWN_TO_A_SHOOT.has(keys[0] ?? '')) return false;
    return touched.some((path) => pathsMeet(path, base + pointerTo(keys)));
  });
}

/** Takes what is newer there, and remembers from which revision. */
export function takePatch(path: string, differences: readonly Difference[], origin: Origin): readonly PatchOperation[] {
  return [
    ...differences.map(({ keys, theirs }): PatchOperation => {
      const at = path + pointerTo(keys);
      return theirs === undefined ? { op: 'remove', path: at } : { op: 'add', path: at, value: theirs };
    }),
    { op: 'add', path: `${path}/origin`, value: writeOrigin(origin) },
  ];
}

/** `modes, half, rate`. */
export function sayKeys(keys: readonly string[], labelOf: (key: string) => string): string {
  return keys.map((key, i) => (i === 0 ? labelOf(key) : key)).join(', ');
}

export function sayThere(value: Written | undefined): string {
  if (value === undefined || value === null) return 'nothing';
  if (isList(value)) return value.map(sayThere).join(', ');
  if (!isRecord(value)) return String(value);
  return Object.entries(value).map(([key, each]) => `${key} ${sayThere(each)}`).join(', '); // prettier-ignore
}
