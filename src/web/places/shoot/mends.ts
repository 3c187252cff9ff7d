/** What can be done about a problem of the document with one press, as patches on the written shoot. */
import { fieldAt, isCollectionShape } from '../../../document/fieldAt.ts';
import { writtenValueAt } from '../../../document/patch.ts';
import { escapeKey, keysOf, pointerTo } from '../../../document/pointer.ts';
import type { Problem } from '../../../document/problem.ts';
import { isList, isRecord, type Written } from '../../../document/written.ts';
import type { PatchOperation } from '../../../plan/types.ts';

export interface Mend {
  readonly label: string;
  /** What the history says. */
  readonly summary: string;
  readonly patch: readonly PatchOperation[];
}

interface Place {
  readonly key: string;
  readonly parentPath: string;
  readonly parent: Written | undefined;
  readonly value: Written;
}

function placeOf(written: Written, path: string): Place | undefined {
  const keys = keysOf(path) ?? [];
  const key = keys.at(-1);
  const value = writtenValueAt(written, path);
  if (key === undefined || value === undefined) return undefined;
  const parentPath = pointerTo(keys.slice(0, -1));
  return { key, parentPath, parent: writtenValueAt(written, parentPath), value };
}

/** Items of lists have no address that stays, so a list is replaced whole. */
function withItem({ key, parentPath, parent }: Place, item: Written | undefined): readonly PatchOperation[] {
  const list = isList(parent) ? parent : [];
  const value = list.flatMap((old, i) => (String(i) !== key ? [old] : item === undefined ? [] : [item]));
  return [{ op: 'replace', path: parentPath, value }];
}

/** Gives a key another name; where that name is taken there is nothing to offer. */
function renamed({ key, parentPath, parent, value }: Place, name: string): readonly PatchOperation[] {
  if (!isRecord(parent) || Object.hasOwn(parent, name)) return [];
  return [
    { op: 'remove', path: `${parentPath}/${escapeKey(key)}` },
    { op: 'add', path: `${parentPath}/${escapeKey(name)}`, value },
  ];
}

const isNamed = ({ code }: Problem) => code === 'key.unknown' || code === 'id.malformed';

/** The mends of a problem, the likeliest first. */
export function mendsOf(written: Written, problem: Problem): readonly Mend[] {
  const { path, near, code } = problem;
  if (code === 'version.missing')
    return [{ label: 'Write it', summary: 'Version written', patch: [{ op: 'add', path: '/longsecond', value: 1 }] }];
  const place = placeOf(written, path);
  if (!place) return [];
  const isInList = isList(place.parent);
  const mends: Mend[] = [];
  if (near !== undefined) {
    const isKey = isNamed(problem) && !(code === 'id.malformed' && typeof place.value === 'string');
    const patch: readonly PatchOperation[] = isKey
      ? renamed(place, near)
      : isInList
        ? withItem(place, near)
        : [{ op: 'replace', path, value: near }];
    if (patch.length > 0)
      mends.push({ label: isKey ? `Call it ${near}` : `Write ${near}`, summary: `${place.key}: ${near}`, patch });
  }
  mends.push({
    label: 'Take it out',
    summary: `${place.key} taken out`,
    patch: isInList ? withItem(place, undefined) : [{ op: 'remove', path }],
  });
  return mends;
}

/** Whether a problem lies in one plain value that can be typed anew where the problem is told. */
export function isTypable(written: Written, { path, code }: Problem): boolean {
  const field = fieldAt(path);
  const place = placeOf(written, path);
  if (code === 'key.unknown' || !field || isCollectionShape(field.of) || !place) return false;
  return typeof place.value !== 'object' && !isList(place.parent);
}

/** "shots, pour-1, shutter": a path as people read it. */
export function sayPath(path: string): string {
  return path === '' ? 'the whole document' : (keysOf(path) ?? [path]).join(', ');
}
