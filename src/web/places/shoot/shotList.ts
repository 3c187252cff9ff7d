/** Edits of the list of shots, as patches on the written shoot. */
import { freshId } from '../../../document/freshId.ts';
import { writtenValueAt } from '../../../document/patch.ts';
import { isList, isRecord, type Written } from '../../../document/written.ts';
import type { PatchOperation } from '../../../plan/types.ts';

/** Ids as read: what the list shows, in its order. */
export type ShotIds = readonly string[];

const orderPatch = (ids: ShotIds): PatchOperation => ({ op: 'add', path: '/order/shots', value: [...ids] });

/** The order with one shot a place earlier or later; undefined at either end. */
export function moved(ids: ShotIds, shotId: string, by: 1 | -1): ShotIds | undefined {
  const from = ids.indexOf(shotId);
  const to = from + by;
  if (from < 0 || to < 0 || to >= ids.length) return undefined;
  return ids.toSpliced(from, 1).toSpliced(to, 0, shotId);
}

export function movePatch(ids: ShotIds, shotId: string, by: 1 | -1): readonly PatchOperation[] {
  const order = moved(ids, shotId, by);
  return order ? [orderPatch(order)] : [];
}

export interface NewShot {
  readonly shotId: string;
  readonly patch: readonly PatchOperation[];
}

export function newShot(written: Written, ids: ShotIds): NewShot {
  const shotId = freshId(written, 'shot');
  const add: PatchOperation = { op: 'add', path: `/shots/${shotId}`, value: { title: `New shot` } };
  // Where no order is stated the order is that of writing, and the new shot comes last by itself.
  const isStated = isList(writtenValueAt(written, '/order/shots'));
  return { shotId, patch: isStated ? [add, orderPatch([...ids, shotId])] : [add] };
}

/** A shot once more, under a new id right after itself. */
export function copyShot(written: Written, ids: ShotIds, shotId: string, title: string): NewShot {
  const copyId = freshId(written, shotId.replace(/-\d+$/, ''));
  const shot = writtenValueAt(written, `/shots/${shotId}`);
  const value = { ...(isRecord(shot) ? shot : {}), title: `${title}, again` };
  const order = ids.toSpliced(ids.indexOf(shotId) + 1, 0, copyId);
  return { shotId: copyId, patch: [{ op: 'add', path: `/shots/${copyId}`, value }, orderPatch(order)] };
}

/** Takes a shot out, and with it every mention of it in the order and in what others wait for. */
export function removePatch(written: Written, shotId: string): readonly PatchOperation[] {
  const lists = ['/order/shots', '/defaults/after'];
  const shots = writtenValueAt(written, '/shots');
  for (const id of isRecord(shots) ? Object.keys(shots) : []) if (id !== shotId) lists.push(`/shots/${id}/after`);
  const mentions = lists.flatMap((path): readonly PatchOperation[] => {
    const list = writtenValueAt(written, path);
    if (!isList(list) || !list.includes(shotId)) return [];
    return [{ op: 'replace', path, value: list.filter((id) => id !== shotId) }];
  });
  return [...mentions, { op: 'remove', path: `/shots/${shotId}` }];
}
