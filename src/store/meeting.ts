/**
 * When two edits meet: one path lies within the other, or one takes away what the other refers to. Edits that do not
 * meet give the same shoot in either order, so the later is carried over to what is there now.
 */
import { fieldAt } from '../document/fieldAt.ts';
import { pathsMeet, writtenValueAt, type Operation, type Patch } from '../document/patch.ts';
import { keysOf, pointerTo } from '../document/pointer.ts';
import type { Shape } from '../document/shape.ts';
import { isList, memberOf, type Written } from '../document/written.ts';

/** What of a journal row matters to an edit that was made without knowing of it. */
export interface EditSince {
  readonly number: number;
  readonly who: string;
  readonly name?: string;
  readonly at: string;
  readonly summary: string;
  readonly patch: Patch;
  readonly undoes?: number;
}

/** What an edit ran into; `yours` or `theirs` is absent where the place would be, or is, empty. */
export interface Conflict {
  readonly path: string;
  readonly yours?: Written;
  readonly theirs?: Written;
  readonly number: number;
  readonly who: string;
  readonly name?: string;
  readonly at: string;
  readonly summary: string;
}

/** Positions in a list move when it changes, so a path into one stands for the whole list. */
function anchored(written: Written, path: string): string {
  const keys = keysOf(path) ?? [];
  const depth = keys.findIndex((_, index) => isList(writtenValueAt(written, pointerTo(keys.slice(0, index)))));
  return depth === -1 ? path : pointerTo(keys.slice(0, depth));
}

function shapeWithin(shape: Shape | undefined, key: string): Shape | undefined {
  if (shape?.shape === 'record') return memberOf(shape.fields, key)?.of;
  return shape?.shape === 'map' || shape?.shape === 'list' ? shape.of : undefined;
}

/** Pointers to every entry that a value refers to, by the shape it has in a shoot. */
function referencesIn(shape: Shape | undefined, value: Written): readonly string[] {
  if (shape?.shape === 'reference')
    return typeof value === 'string' ? [pointerTo([...shape.to.split('.'), value])] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, item]) => referencesIn(shapeWithin(shape, key), item));
}

const valueOf = (operation: Operation): Written | undefined => ('value' in operation ? operation.value : undefined);

function takesAway(operation: Operation, entry: string): boolean {
  if (entry !== operation.path && !entry.startsWith(`${operation.path}/`)) return false;
  const value = valueOf(operation);
  return value === undefined || writtenValueAt(value, entry.slice(operation.path.length)) === undefined;
}

function takesAwayReferred(by: Operation, from: Operation): boolean {
  const value = valueOf(from);
  if (value === undefined) return false;
  return referencesIn(fieldAt(from.path)?.of, value).some((entry) => takesAway(by, entry));
}

/** The newest edit since that one of these operations meets, with both values; undefined where none does. */
export function findMeeting({
  patch,
  since,
  written,
}: {
  readonly patch: Patch;
  readonly since: readonly EditSince[];
  /** The shoot as it now is. */
  readonly written: Written;
}): Conflict | undefined {
  for (const { number, who, name, at, summary, patch: other } of since.toReversed())
    for (const theirs of other)
      for (const yours of patch) {
        const isMet =
          pathsMeet(anchored(written, yours.path), anchored(written, theirs.path)) ||
          takesAwayReferred(theirs, yours) ||
          takesAwayReferred(yours, theirs);
        if (!isMet) continue;
        const wanted = valueOf(yours);
        const there = writtenValueAt(written, yours.path);
        return {
          path: yours.path,
          ...(wanted === undefined ? {} : { yours: wanted }),
          ...(there === undefined ? {} : { theirs: there }),
          number,
          who,
          ...(name === undefined ? {} : { name }),
          at,
          summary,
        };
      }
  return undefined;
}

/** Rows whose effect still stands: a row and the one that took it back, both among these, cancel. */
export function standing<Row extends EditSince>(rows: readonly Row[]): readonly Row[] {
  const gone = new Set<number>();
  const numbers = new Set(rows.map(({ number }) => number));
  for (const { number, undoes } of rows.toReversed()) {
    if (gone.has(number) || undoes === undefined || !numbers.has(undoes)) continue;
    gone.add(number).add(undoes);
  }
  return rows.filter(({ number }) => !gone.has(number));
}
