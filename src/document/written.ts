/** The written form: a shoot as the plain JSON value that its text stands for. */
import { Fault } from '../base/fault.ts';

export type WrittenRecord = { readonly [key: string]: Written };
export type WrittenList = readonly Written[];
export type Written = null | boolean | number | string | WrittenList | WrittenRecord;

/** Maps and lists may stand this deep in one another; a shoot needs eight. */
export const DEEPEST = 64;

export function isList(value: unknown): value is WrittenList {
  return Array.isArray(value);
}

export function isRecord(value: unknown): value is WrittenRecord {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** An own member of a record, or undefined; never something inherited. */
export function memberOf<T>(record: Readonly<Record<string, T>>, key: string): T | undefined {
  return Object.hasOwn(record, key) ? record[key] : undefined;
}

/** Sets a member as an own one whatever its name: plain assignment to `__proto__` would change the record's nature. */
export function setMember<T>(record: Record<string, T>, key: string, value: T): void {
  if (key === '__proto__')
    Object.defineProperty(record, key, { value, writable: true, enumerable: true, configurable: true });
  else record[key] = value;
}

/** Whether two written values say the same, whatever the order of their keys. */
export function isSame(a: Written, b: Written): boolean {
  if (a === b) return true;
  if (isList(a)) return isList(b) && a.length === b.length && a.every((item, i) => isSame(item, b[i]!));
  if (!isRecord(a) || !isRecord(b)) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every((key) => Object.hasOwn(b, key) && isSame(a[key]!, b[key]!));
}

/** How deep maps and lists stand in one another; stops counting just beyond `DEEPEST`. */
export function depthOf(value: Written, deepest = DEEPEST + 1): number {
  if (typeof value !== 'object' || value === null || deepest === 0) return 0;
  let most = 0;
  for (const item of Object.values(value)) most = Math.max(most, depthOf(item, deepest - 1));
  return most + 1;
}

/**
 * `next` with every part that says the same as in `previous` taken from `previous`, so that what was worked out for an
 * unchanged part is found again by identity.
 */
export function shareUnchanged(previous: Written, next: Written): Written {
  if (previous === next) return previous;
  if (isList(previous) && isList(next)) {
    const shared = next.map((item, i) => (i < previous.length ? shareUnchanged(previous[i]!, item) : item));
    return shared.length === previous.length && shared.every((item, i) => item === previous[i]) ? previous : shared;
  }
  if (!isRecord(previous) || !isRecord(next)) return next;
  const keys = Object.keys(next);
  const shared: Record<string, Written> = {};
  for (const key of keys) {
    const before = memberOf(previous, key);
    setMember(shared, key, before === undefined ? next[key]! : shareUnchanged(before, next[key]!));
  }
  const before = Object.keys(previous);
  const isUnchanged =
    keys.length === before.length && keys.every((key, i) => key === before[i] && shared[key] === previous[key]);
  return isUnchanged ? previous : shared;
}

function notJson(where: string, got: string): Fault {
  return new Fault({
    code: 'written.not-json',
    what: `A shoot holds text, finite numbers, yes and no, lists and maps; this is ${got}`,
    where: where === '' ? 'the whole value' : where,
    mend: 'Send plain JSON.',
  });
}

/** Throws a Fault (`written.not-json`, `document.too-deep`) unless a value from outside is plain JSON. */
export function requireWritten(value: unknown, where = '', depth = 0): asserts value is Written {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return;
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw notJson(where, String(value));
    return;
  }
  if (typeof value !== 'object') throw notJson(where, `of type ${typeof value}`);
  if (depth >= DEEPEST) throw tooDeep(where);
  if (!Array.isArray(value) && ![Object.prototype, null].includes(Object.getPrototypeOf(value) as object | null))
    throw notJson(where, 'an object of another kind');
  for (const [key, item] of Object.entries(value)) {
    if (key === '__proto__') throw notJson(`${where}/${key}`, 'a key that programs keep for themselves');
    requireWritten(item, `${where}/${key}`, depth + 1);
  }
}

export function tooDeep(where: string): Fault {
  return new Fault({
    code: 'document.too-deep',
    what: `Maps and lists stand more than ${DEEPEST} deep in one another`,
    where: where === '' ? 'the document' : where,
    mend: 'Take out the nesting; a shoot needs eight levels.',
  });
}
