/** Edits of the board, as patches on the written shoot. */
import { writtenValueAt } from '../../../document/patch.ts';
import { isList, isRecord, type Written } from '../../../document/written.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import { releasePatch } from './boardPictures.ts';
import { freshId } from '../../../document/freshId.ts';
import { moved } from './shotList.ts';

const orderPatch = (ids: readonly string[]): PatchOperation => ({ op: 'add', path: '/order/board', value: [...ids] });

export interface NewFrame {
  readonly frameId: string;
  readonly patch: readonly PatchOperation[];
}

export function newFrame(written: Written, ids: readonly string[]): NewFrame {
  const frameId = freshId(written, 'frame', '/board');
  const add: PatchOperation = { op: 'add', path: `/board/${frameId}`, value: { title: 'New frame' } };
  const isStated = isList(writtenValueAt(written, '/order/board'));
  return { frameId, patch: isStated ? [add, orderPatch([...ids, frameId])] : [add] };
}

export function moveFramePatch(ids: readonly string[], frameId: string, by: 1 | -1): readonly PatchOperation[] {
  const order = moved(ids, frameId, by);
  return order ? [orderPatch(order)] : [];
}

/** Takes a frame off the board, out of every list that names it, and with it a picture that nothing else shows. */
export function removeFramePatch(written: Written, frameId: string): readonly PatchOperation[] {
  const shots = writtenValueAt(written, '/shots');
  const lists = ['/order/board', '/defaults/board', ...(isRecord(shots) ? Object.keys(shots) : []).map((id) => `/shots/${id}/board`)];
  const mentions = lists.flatMap((path): readonly PatchOperation[] => {
    const list = writtenValueAt(written, path);
    if (!isList(list) || !list.includes(frameId)) return [];
    return [{ op: 'replace', path, value: list.filter((id) => id !== frameId) }];
  });
  return [...mentions, { op: 'remove', path: `/board/${frameId}` }, ...releasePatch(written, frameId)];
} // prettier-ignore

/** Has a shot serve a frame, or no longer. */
export function servePatch(written: Written, shotId: string, frameId: string, serves: boolean): readonly PatchOperation[] {
  const path = `/shots/${shotId}/board`;
  const list = writtenValueAt(written, path);
  const others = (isList(list) ? list : []).filter((id) => id !== frameId);
  return [{ op: 'add', path, value: serves ? [...others, frameId] : others }];
} // prettier-ignore
