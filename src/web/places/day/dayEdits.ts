/** Edits of the order of the day, as patches on the written shoot. */
import { writtenValueAt } from '../../../document/patch.ts';
import { isList, type Written } from '../../../document/written.ts';
import type { PatchOperation } from '../../../plan/types.ts';

const PATH = '/order/day';

/** The order with one shot moved to another place; the same order where it stays. */
export function movedTo(order: readonly string[], shotId: string, to: number): readonly string[] {
  const from = order.indexOf(shotId);
  const place = Math.min(order.length - 1, Math.max(0, to));
  return from < 0 || from === place ? order : order.toSpliced(from, 1).toSpliced(place, 0, shotId);
}

/** Fixes the order of the day. */
export const fixOrderPatch = (order: readonly string[]): readonly PatchOperation[] => [
  { op: 'add', path: PATH, value: [...order] },
];

/** Lets the order be found again; nothing where none is fixed. */
export const findOrderPatch = (written: Written): readonly PatchOperation[] =>
  isList(writtenValueAt(written, PATH)) ? [{ op: 'remove', path: PATH }] : [];
