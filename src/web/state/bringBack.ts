/** Making an edit again where what it edits was taken out since. */
import { applyPatch, writtenValueAt } from '../../document/patch.ts';
import { keysOf, pointerTo } from '../../document/pointer.ts';
import { isList, type Written } from '../../document/written.ts';
import type { PatchOperation } from '../../plan/types.ts';

/** Maps whose entries have an order of their own. */
const ORDERED = ['shots', 'board'] as const;

/** The highest thing on the way to a path that was there then and is not now. */
function goneAt(path: string, then: Written, now: Written): string | undefined {
  const keys = keysOf(path) ?? [];
  for (let depth = 1; depth < keys.length; depth += 1) {
    const at = pointerTo(keys.slice(0, depth));
    if (writtenValueAt(now, at) === undefined) return writtenValueAt(then, at) === undefined ? undefined : at;
  }
  return undefined;
}

/** The order as it now is with an id put in again, after the one that it followed. */
function orderWith(id: string, before: readonly Written[], now: readonly Written[]): readonly Written[] {
  const earlier = before.slice(0, before.indexOf(id)).findLast((each) => now.includes(each));
  return now.toSpliced(earlier === undefined ? 0 : now.indexOf(earlier) + 1, 0, id);
}

function orderOperation(path: string, then: Written, now: Written): readonly PatchOperation[] {
  const [section, id, ...deeper] = keysOf(path) ?? [];
  if (id === undefined || deeper.length > 0 || !ORDERED.some((each) => each === section)) return [];
  const at = `/order/${section}`;
  const [before, order] = [writtenValueAt(then, at), writtenValueAt(now, at)];
  if (!isList(before) || !isList(order) || !before.includes(id) || order.includes(id)) return [];
  return [{ op: 'replace', path: at, value: orderWith(id, before, order) }];
}

/** Whether an edit can be made on the shoot as it is. */
export function canApply(written: Written, patch: readonly PatchOperation[]): boolean {
  try {
    applyPatch(written, patch);
    return true;
  } catch {
    return false;
  }
}

/**
 * The edit with all that it needs put back first: each thing that was there `then` and is not `now`, as it was, in the
 * order where it stood. Undefined where that would not make the edit possible.
 */
export function bringBackPatch({ then, now, patch }: { readonly then: Written; readonly now: Written; readonly patch: readonly PatchOperation[] }): readonly PatchOperation[] | undefined {
  const gone = new Set(patch.flatMap(({ path }) => goneAt(path, then, now) ?? []));
  const back = [...gone].flatMap((path): readonly PatchOperation[] => [
    { op: 'add', path, value: writtenValueAt(then, path)! },
    ...orderOperation(path, then, now),
  ]);
  const whole = [...back, ...patch];
  return canApply(now, whole) ? whole : undefined;
} // prettier-ignore
