/**
 * Edits: JSON Patch (RFC 6902) on written values. Whatever a patch does not touch keeps its identity, and values are
 * only ever an object's own, so that no path reaches into what objects inherit.
 */
import { Fault } from '../base/fault.ts';
import { fieldAt } from './fieldAt.ts';
import { keysOf, pointerTo } from './pointer.ts';
import { isList, isRecord, isSame, memberOf, requireWritten, setMember, type Written } from './written.ts';

export type Operation =
  | { readonly op: 'add'; readonly path: string; readonly value: Written }
  | { readonly op: 'remove'; readonly path: string }
  | { readonly op: 'replace'; readonly path: string; readonly value: Written }
  | { readonly op: 'move'; readonly from: string; readonly path: string }
  | { readonly op: 'copy'; readonly from: string; readonly path: string }
  | { readonly op: 'test'; readonly path: string; readonly value: Written };

export type Patch = readonly Operation[];

type Keys = readonly string[];

/** Names through which a program's own objects could be reached. */
const REFUSED_KEYS: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

function fault(code: string, what: string, where: string, mend: string): Fault {
  return new Fault({ code, what, where: where === '' ? 'the whole document' : where, mend });
}

function missing(keys: Keys, what: string): Fault {
  return fault('patch.path-missing', what, pointerTo(keys), 'Reload the document and make the edit again.');
}

function parsePath(path: unknown): Keys {
  const keys = typeof path === 'string' ? keysOf(path) : undefined;
  if (!keys)
    throw fault(
      'patch.path-malformed',
      `A path is a JSON Pointer such as /shots/pour-1/shutter; this is ${JSON.stringify(path)}`,
      String(path),
      'Write the path as a JSON Pointer.',
    );
  const refused = keys.find((key) => REFUSED_KEYS.has(key));
  if (refused !== undefined)
    throw fault('patch.path-refused', `No edit may go through "${refused}"`, pointerTo(keys), 'Use another key.');
  return keys;
}

/** The place in a list that a key names: a whole number without leading zeros, or `-` for its end where allowed. */
function indexIn(list: readonly Written[], keys: Keys, mayBeEnd: boolean): number {
  const key = keys.at(-1)!;
  if (mayBeEnd && key === '-') return list.length;
  const index = /^(?:0|[1-9]\d{0,8})$/.test(key) ? Number(key) : -1;
  if (index < 0 || index > list.length || (index === list.length && !mayBeEnd))
    throw missing(keys, `A list of ${list.length} has no place ${JSON.stringify(key)}`);
  return index;
}

function childOf(parent: Written, keys: Keys): Written {
  if (isList(parent)) return parent[indexIn(parent, keys, false)]!;
  const child = isRecord(parent) ? memberOf(parent, keys.at(-1)!) : undefined;
  if (child === undefined) throw missing(keys, `Nothing is written at ${pointerTo(keys)}`);
  return child;
}

function valueAt(root: Written, keys: Keys): Written {
  let value = root;
  for (let i = 0; i < keys.length; i += 1) value = childOf(value, keys.slice(0, i + 1));
  return value;
}

/** The value a pointer leads to, or undefined when nothing is written there. */
export function writtenValueAt(root: Written, pointer: string): Written | undefined {
  let value: Written | undefined = root;
  for (const key of keysOf(pointer) ?? []) {
    if (isList(value)) value = /^\d+$/.test(key) ? value[Number(key)] : undefined;
    else value = isRecord(value) ? memberOf(value, key) : undefined;
  }
  return value;
}

/** `root` with the parent of `keys` replaced by what `change` makes of it; all else is shared. */
function changeParent(root: Written, keys: Keys, change: (parent: Written) => Written, depth = 0): Written {
  if (depth === keys.length - 1) return change(root);
  const step = keys.slice(0, depth + 1);
  const before = childOf(root, step);
  const after = changeParent(before, keys, change, depth + 1);
  return after === before ? root : withMember(root, step, after);
}

function withMember(parent: Written, keys: Keys, value: Written): Written {
  const key = keys.at(-1)!;
  if (isList(parent)) return parent.map((item, i) => (String(i) === key ? value : item));
  if (!isRecord(parent)) throw missing(keys, `There is no map or list to hold ${pointerTo(keys)}`);
  const copy: Record<string, Written> = { ...parent };
  setMember(copy, key, value);
  return copy;
}

function add(root: Written, keys: Keys, value: Written): Written {
  if (keys.length === 0) return value;
  return changeParent(root, keys, (parent) => {
    if (isList(parent)) return parent.toSpliced(indexIn(parent, keys, true), 0, value);
    return withMember(parent, keys, value);
  });
}

function remove(root: Written, keys: Keys): Written {
  if (keys.length === 0) throw missing(keys, 'The whole document cannot be removed');
  return changeParent(root, keys, (parent) => {
    childOf(parent, keys);
    if (isList(parent)) return parent.toSpliced(indexIn(parent, keys, false), 1);
    const { [keys.at(-1)!]: _removed, ...rest } = parent as Readonly<Record<string, Written>>;
    return rest;
  });
}

function replace(root: Written, keys: Keys, value: Written): Written {
  if (valueAt(root, keys) === value) return root;
  return keys.length === 0 ? value : changeParent(root, keys, (parent) => withMember(parent, keys, value));
}

const startsWith = (keys: Keys, start: Keys): boolean =>
  start.length <= keys.length && start.every((key, i) => key === keys[i]);

function requireOutside(from: Keys, to: Keys): void {
  if (startsWith(to, from) && to.length > from.length)
    throw fault(
      'patch.into-itself',
      `${pointerTo(from)} cannot be moved into itself`,
      pointerTo(to),
      'Move it elsewhere.',
    );
}

interface Step {
  readonly after: Written;
  readonly inverse: Patch;
}

/** `-` made into the place it stands for, so that an inverse can name it. */
function settled(root: Written, keys: Keys): Keys {
  if (keys.at(-1) !== '-') return keys;
  const parent = valueAt(root, keys.slice(0, -1));
  return isList(parent) ? [...keys.slice(0, -1), String(parent.length)] : keys;
}

/** What takes back an `add` at `keys`, given what stands there before it. */
function inverseOfAdd(root: Written, keys: Keys): Operation {
  const path = pointerTo(keys);
  if (keys.length === 0) return { op: 'replace', path, value: root };
  const parent = valueAt(root, keys.slice(0, -1));
  const before = isRecord(parent) ? memberOf(parent, keys.at(-1)!) : undefined;
  return before === undefined ? { op: 'remove', path } : { op: 'replace', path, value: before };
}

function moveStep(root: Written, from: Keys, to: Keys): Step {
  requireOutside(from, to);
  const value = valueAt(root, from);
  if (pointerTo(from) === pointerTo(to)) return { after: root, inverse: [] };
  const without = remove(root, from);
  const place = settled(without, to);
  const after = add(without, place, value);
  const undone = inverseOfAdd(without, place);
  const path = pointerTo(from);
  if (undone.op === 'remove' && !startsWith(from, to))
    return { after, inverse: [{ op: 'move', from: pointerTo(place), path }] };
  return { after, inverse: [undone, { op: 'add', path, value }] };
}

function step(root: Written, operation: Operation): Step {
  const keys = parsePath(operation.path);
  const path = operation.path;
  if (operation.op === 'add' || operation.op === 'replace' || operation.op === 'test')
    requireWritten(operation.value, path);
  switch (operation.op) {
    case 'add': {
      const place = settled(root, keys);
      return { after: add(root, place, operation.value), inverse: [inverseOfAdd(root, place)] };
    }
    case 'remove': {
      const after = remove(root, keys);
      return { after, inverse: [{ op: 'add', path, value: valueAt(root, keys) }] };
    }
    case 'replace': {
      const after = replace(root, keys, operation.value);
      return { after, inverse: after === root ? [] : [{ op: 'replace', path, value: valueAt(root, keys) }] };
    }
    case 'copy': {
      const value = valueAt(root, parsePath(operation.from));
      const place = settled(root, keys);
      return { after: add(root, place, value), inverse: [inverseOfAdd(root, place)] };
    }
    case 'move':
      return moveStep(root, parsePath(operation.from), keys);
    case 'test': {
      const found = writtenValueAt(root, path);
      if (found === undefined || !isSame(found, operation.value))
        throw fault(
          'patch.test-failed',
          `The edit expected ${JSON.stringify(operation.value)?.slice(0, 80)} here, and found ${found === undefined ? 'nothing' : JSON.stringify(found).slice(0, 80)}`,
          path,
          'Reload the document and make the edit again.',
        );
      return { after: root, inverse: [] };
    }
    default:
      throw malformed(operation);
  }
}

function malformed(found: unknown): Fault {
  return fault(
    'patch.malformed',
    `An edit is add, remove, replace, move, copy or test with a path; this is ${JSON.stringify(found)?.slice(0, 120)}`,
    'the patch',
    'Send a JSON Patch (RFC 6902).',
  );
}

function requireOperation(operation: unknown): asserts operation is Operation {
  if (!isRecord(operation) || typeof operation['op'] !== 'string') throw malformed(operation);
  const needsValue = ['add', 'replace', 'test'].includes(operation['op']);
  if (needsValue && operation['value'] === undefined) throw malformed(operation);
}

function run(written: Written, patch: Patch): Step {
  if (!Array.isArray(patch)) throw malformed(patch);
  let after = written;
  const inverses: Patch[] = [];
  for (const operation of patch) {
    requireOperation(operation);
    const done = step(after, operation);
    after = done.after;
    inverses.push(done.inverse);
  }
  return { after, inverse: inverses.reverse().flat() };
}

/** `written` after the patch, sharing all that the patch does not touch. Throws a Fault named `patch.…`, and changes nothing, when one operation cannot be done. */
export function applyPatch(written: Written, patch: Patch): Written {
  return run(written, patch).after;
}

/** The patch that takes `patch` back from what it makes of `written`. Throws as `applyPatch` does. */
export function invertPatch(written: Written, patch: Patch): Patch {
  return run(written, patch).inverse;
}

/** Whether one path is the other or lies within it: edits there meet. */
export function pathsMeet(a: string, b: string): boolean {
  const [one, other] = [parsePath(a), parsePath(b)];
  return startsWith(one, other) || startsWith(other, one);
}

/** Every path a patch reads or writes. */
export function touchedPaths(patch: Patch): readonly string[] {
  return patch.flatMap((operation) => ('from' in operation ? [operation.from, operation.path] : [operation.path]));
}

/**
 * The patch with the sections that its additions need, where they are not written yet: adding
 * `/shots/pour-1/action/speed` first adds an empty `/shots/pour-1/action`. Ids that do not exist are not made up.
 */
export function withParents(written: Written, patch: Patch): Patch {
  let now = written;
  const whole: Operation[] = [];
  for (const operation of patch) {
    if (operation.op === 'add' || operation.op === 'copy' || operation.op === 'move') {
      for (const parent of missingParents(now, operation.path)) {
        whole.push(parent);
        now = applyPatch(now, [parent]);
      }
    }
    whole.push(operation);
    now = applyPatch(now, [operation]);
  }
  return whole;
}

function missingParents(written: Written, path: string): readonly Operation[] {
  const keys = parsePath(path);
  const added: Operation[] = [];
  for (let depth = 1; depth < keys.length; depth += 1) {
    const parent = pointerTo(keys.slice(0, depth));
    if ((writtenValueAt(written, parent) ?? null) !== null) continue;
    const of = fieldAt(parent)?.of;
    const grandparent = fieldAt(pointerTo(keys.slice(0, depth - 1)))?.of;
    if (of === undefined || grandparent?.shape === 'map' || grandparent?.shape === 'list') return added;
    added.push({ op: 'add', path: parent, value: of.shape === 'list' ? [] : {} });
  }
  return added;
}
