/** What lies between two states of a shoot: as a patch that live clients can follow, and as characters of its text. */
import type { Operation, Patch } from '../document/patch.ts';
import { pointerTo } from '../document/pointer.ts';
import type { Splice } from '../document/splice.ts';
import { isRecord, isSame, memberOf, type Written, type WrittenRecord } from '../document/written.ts';

/** No patch may step through these; where one of them differs, what holds it is replaced whole. */
const UNREACHABLE = ['__proto__', 'constructor', 'prototype'] as const;

function isReachable(from: WrittenRecord, to: WrittenRecord): boolean {
  return UNREACHABLE.every((key) => {
    const [before, after] = [memberOf(from, key), memberOf(to, key)];
    return before === undefined || after === undefined ? before === after : isSame(before, after);
  });
}

function differences(keys: readonly string[], from: Written, to: Written): readonly Operation[] {
  if (isSame(from, to)) return [];
  if (!isRecord(from) || !isRecord(to) || !isReachable(from, to))
    return [{ op: 'replace', path: pointerTo(keys), value: to }];
  const removed = Object.keys(from)
    .filter((key) => !Object.hasOwn(to, key))
    .map((key): Operation => ({ op: 'remove', path: pointerTo([...keys, key]) }));
  const kept = Object.entries(to).flatMap(([key, value]): readonly Operation[] => {
    const before = memberOf(from, key);
    const within = [...keys, key];
    return before === undefined ? [{ op: 'add', path: pointerTo(within), value }] : differences(within, before, value);
  });
  return [...removed, ...kept];
}

/** The patch that makes one written value say what the other does: key by key, lists replaced whole. */
export function differenceOf(from: Written, to: Written): Patch {
  return differences([], from, to);
}

const isHighHalf = (unit: number) => unit >= 0xd800 && unit <= 0xdbff;

/** One splice from one text to the other, of whole characters; none where they are the same. */
export function splicesBetween(from: string, to: string): readonly Splice[] {
  if (from === to) return [];
  const most = Math.min(from.length, to.length);
  let head = 0;
  while (head < most && from.charCodeAt(head) === to.charCodeAt(head)) head += 1;
  if (head > 0 && isHighHalf(from.charCodeAt(head - 1))) head -= 1;
  let tail = 0;
  while (tail < most - head && from.charCodeAt(from.length - 1 - tail) === to.charCodeAt(to.length - 1 - tail))
    tail += 1;
  if (tail > 0 && (from.charCodeAt(from.length - tail) & 0xfc00) === 0xdc00) tail -= 1;
  return [{ at: head, removed: from.slice(head, from.length - tail), inserted: to.slice(head, to.length - tail) }];
}
