/** Edits of the kit as patches on the written shoot, and who refers to a piece of it. */
import { sayList } from '../../../base/sayList.ts';
import { fieldAt } from '../../../document/fieldAt.ts';
import { writtenValueAt } from '../../../document/patch.ts';
import { keysOf, pointerTo } from '../../../document/pointer.ts';
import { SHOOT } from '../../../document/schema.ts';
import type { Shape } from '../../../document/shape.ts';
import { isList, isRecord, type Written, type WrittenRecord } from '../../../document/written.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import { freshId } from '../../../document/freshId.ts';
import type { KitKind } from './kinds.ts';

export const itemPath = (kindKey: string, id: string) => pointerTo(['kit', kindKey, id]);

/** What is written of an item; empty where nothing is, or something that is no item. */
export function itemAt(written: Written, kindKey: string, id: string): WrittenRecord {
  const item = writtenValueAt(written, itemPath(kindKey, id));
  return isRecord(item) ? item : {};
}

export function titleOf(id: string, item: WrittenRecord): string {
  const { title } = item;
  return typeof title === 'string' && title.trim() !== '' ? title : id;
}

/** Items of a kind by id, in the order written. */
export function itemsOf(written: Written, kindKey: string): readonly (readonly [string, WrittenRecord])[] {
  const items = writtenValueAt(written, pointerTo(['kit', kindKey]));
  if (!isRecord(items)) return [];
  return Object.keys(items).map((id) => [id, itemAt(written, kindKey, id)] as const);
}

export interface NewItem {
  readonly id: string;
  readonly patch: readonly PatchOperation[];
}

/** Adds a piece of kit under an id nobody has. */
export function addItem(written: Written, { key, stem }: Pick<KitKind, 'key' | 'stem'>, item: WrittenRecord): NewItem {
  const id = freshId(written, stem, pointerTo(['kit', key]));
  return { id, patch: [{ op: 'add', path: itemPath(key, id), value: item }] };
}

/** The same once more, under an id of its own. */
export function duplicateItem(written: Written, kind: KitKind, id: string): NewItem {
  const item = itemAt(written, kind.key, id);
  return addItem(written, { ...kind, stem: id.replace(/-\d+$/, '') }, { ...item, title: `${titleOf(id, item)}, again` });
} // prettier-ignore

export interface Use {
  /** JSON Pointer of the mention. */
  readonly path: string;
  /** `Two quinces meet`, `the defaults of shots`. */
  readonly where: string;
}

function holderOf(written: Written, path: string): string {
  const [section = '', id = '', third = ''] = keysOf(path) ?? [];
  if (section === 'defaults') return 'the defaults of shots';
  const holder = writtenValueAt(written, pointerTo(section === 'kit' ? [section, id, third] : [section, id]));
  return isRecord(holder) ? titleOf(section === 'kit' ? third : id, holder) : id;
}

/** Pointers of every mention of an entry, found by the table of the shoot's form. */
function mentionsOf(of: Shape, value: Written, path: string, to: string, id: string): readonly string[] {
  if (of.shape === 'reference') return of.to === to && value === id ? [path] : [];
  const within = (key: string | number, part: Shape, item: Written) => mentionsOf(part, item, path + pointerTo([key]), to, id);
  if (of.shape === 'list' && isList(value)) return value.flatMap((item, i) => within(i, of.of, item));
  if (!isRecord(value)) return [];
  if (of.shape === 'map') return Object.entries(value).flatMap(([key, item]) => within(key, of.of, item));
  if (of.shape !== 'record') return [];
  return Object.entries(of.fields).flatMap(([key, field]) => {
    const item = Object.hasOwn(value, key) ? value[key] : undefined;
    return item === undefined ? [] : within(key, field.of, item);
  });
} // prettier-ignore

/** Everything in the shoot that refers to a piece of kit. */
export function usesOf(written: Written, kindKey: string, id: string): readonly Use[] {
  return mentionsOf(SHOOT, written, '', `kit.${kindKey}`, id).map((path) => ({ path, where: holderOf(written, path) }));
}

/** Shots that fix one mode of a camera. */
export function usesOfMode(written: Written, cameraId: string, modeId: string): readonly Use[] {
  const shots = writtenValueAt(written, '/shots');
  const shared = writtenValueAt(written, '/defaults/camera');
  return Object.entries(isRecord(shots) ? shots : {}).flatMap(([id, shot]) => {
    if (!isRecord(shot) || shot['mode'] !== modeId) return [];
    const camera = shot['camera'] ?? shared;
    if (camera !== undefined && camera !== cameraId) return [];
    return [{ path: pointerTo(['shots', id, 'mode']), where: titleOf(id, shot) }];
  });
}

/** Takes an entry out, and with it every mention: what a shot no longer fixes is solved for again. */
export function removeEntry(written: Written, path: string, uses: readonly Use[]): readonly PatchOperation[] {
  const lists = new Map<string, Set<string>>();
  const single: PatchOperation[] = [];
  for (const use of uses) {
    const keys = keysOf(use.path) ?? [];
    const parent = pointerTo(keys.slice(0, -1));
    if (fieldAt(parent)?.of.shape !== 'list') single.push({ op: 'remove', path: use.path });
    else lists.set(parent, (lists.get(parent) ?? new Set()).add(keys.at(-1)!));
  }
  const lifted = [...lists].map(([list, places]): PatchOperation => {
    const value = writtenValueAt(written, list);
    return { op: 'replace', path: list, value: isList(value) ? value.filter((_, i) => !places.has(String(i))) : [] };
  });
  return [...single, ...lifted, { op: 'remove', path }];
}

/** `Two quinces meet and Honey coils`, each once. */
export function sayUses(uses: readonly Use[]): string {
  return sayList([...new Set(uses.map(({ where }) => where))]);
}
