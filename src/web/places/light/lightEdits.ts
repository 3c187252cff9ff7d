/** Edits of the set-ups of the light, as patches on the written shoot. */
import { writtenValueAt } from '../../../document/patch.ts';
import { pointerTo } from '../../../document/pointer.ts';
import type { Position } from '../../../document/shape.ts';
import { writePosition } from '../../../document/write.ts';
import { isRecord, type Written, type WrittenRecord } from '../../../document/written.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import { freshId } from '../shoot/shotList.ts';
import { atAzimuth, tidyPlace } from './geometry.ts';

export const setupPath = (setupId: string) => pointerTo(['lighting', setupId]);
export const lampPath = (setupId: string, lampId: string) => pointerTo(['lighting', setupId, 'lamps', lampId]);

const recordAt = (written: Written, path: string): WrittenRecord => {
  const value = writtenValueAt(written, path);
  return isRecord(value) ? value : {};
};

export interface Made {
  readonly id: string;
  readonly patch: readonly PatchOperation[];
}

export function addSetup(written: Written): Made {
  const id = freshId(written, 'light', '/lighting');
  return { id, patch: [{ op: 'add', path: setupPath(id), value: { title: 'New set-up' } }] };
}

/** The same lamps at the same places once more. What was read stays behind: nobody has read the copy. */
export function duplicateSetup(written: Written, setupId: string, title: string): Made {
  const id = freshId(written, setupId.replace(/-\d+$/, ''), '/lighting');
  const kept = Object.entries(recordAt(written, setupPath(setupId))).filter(
    ([key]) => !['illuminance', 'luminance', 'reading'].includes(key),
  );
  return { id, patch: [{ op: 'add', path: setupPath(id), value: { ...Object.fromEntries(kept), title: `${title}, again` } }] };
} // prettier-ignore

/** Takes a set-up out, and with it every shot's mention of it. */
export function removeSetup(written: Written, setupId: string): readonly PatchOperation[] {
  const shots = Object.keys(recordAt(written, '/shots')).map((id) => pointerTo(['shots', id, 'lighting']));
  const mentions = [...shots, '/defaults/lighting'].filter((path) => writtenValueAt(written, path) === setupId);
  return [
    ...mentions.map((path): PatchOperation => ({ op: 'remove', path })),
    { op: 'remove', path: setupPath(setupId) },
  ];
}

/** Where a lamp is first put: to the left of the front, somewhat above, the next ones further round. */
const FIRST: Position = { right_m: 0, away_m: -1.2, up_m: 0.8 };
const FIRST_deg = -45;
const APART_deg = 75;

/** Puts a lamp of the kit into a set-up, or one that is not yet said. */
export function addLamp(written: Written, setupId: string, kitLampId: string | undefined): Made {
  const section = `${setupPath(setupId)}/lamps`;
  const count = Object.keys(recordAt(written, section)).length;
  const stem = kitLampId?.replace(/-\d+$/, '') ?? 'lamp';
  const id = freshId(written, stem, section);
  const at = tidyPlace(atAzimuth(FIRST, FIRST_deg + count * APART_deg));
  const value = { ...(kitLampId === undefined ? {} : { lamp: kitLampId }), at: writePosition(at) };
  return { id, patch: [{ op: 'add', path: lampPath(setupId, id), value }] };
}

/** The same lamp once more, a little further round. */
export function duplicateLamp(written: Written, { setupId, lampId, at }: { readonly setupId: string; readonly lampId: string; readonly at: Position }): Made {
  const id = freshId(written, lampId.replace(/-\d+$/, ''), `${setupPath(setupId)}/lamps`);
  const value = { ...recordAt(written, lampPath(setupId, lampId)), at: writePosition(at) };
  return { id, patch: [{ op: 'add', path: lampPath(setupId, id), value }] };
} // prettier-ignore

/** What of a lamp a drag moves. */
export type Moved = 'at' | 'aim';

export function placeLamp(setupId: string, lampId: string, moved: Moved, place: Position): readonly PatchOperation[] {
  return [{ op: 'add', path: `${lampPath(setupId, lampId)}/${moved}`, value: writePosition(tidyPlace(place)) }];
}

/** Several lamps at once, as one edit. */
export function switchLamps(written: Written, setupId: string, lampIds: readonly string[], isOff: boolean): readonly PatchOperation[] {
  return lampIds.flatMap((id): readonly PatchOperation[] => {
    const path = `${lampPath(setupId, id)}/off`;
    if (isOff) return [{ op: 'add', path, value: true }];
    return writtenValueAt(written, path) === undefined ? [] : [{ op: 'remove', path }];
  });
} // prettier-ignore

/** What the meter read, marked as read; taken away, the mark goes with it once nothing is read any more. */
export function readingPatch(written: Written, setupId: string, key: 'illuminance' | 'luminance', text: string): readonly PatchOperation[] {
  const path = `${setupPath(setupId)}/${key}`;
  const other = `${setupPath(setupId)}/${key === 'illuminance' ? 'luminance' : 'illuminance'}`;
  const mark = `${setupPath(setupId)}/reading`;
  const has = (at: string) => writtenValueAt(written, at) !== undefined;
  if (text.trim() !== '')
    return [
      { op: 'add', path, value: text.trim() },
      ...(has(mark) ? [] : [{ op: 'add', path: mark, value: 'metered' } as const]),
    ];
  if (!has(path)) return [];
  return [{ op: 'remove', path }, ...(has(other) || !has(mark) ? [] : [{ op: 'remove', path: mark } as const])];
} // prettier-ignore
