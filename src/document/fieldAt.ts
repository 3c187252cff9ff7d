/** Which row of the table a place in the written shoot belongs to. */
import { keysOf } from './pointer.ts';
import { SHOOT } from './schema.ts';
import type { Field, Shape } from './shape.ts';
import { memberOf } from './written.ts';

const ROOT: Field = { readAs: '', of: SHOOT, says: 'The shoot.' };

function within({ of, says }: Field, key: string): Field | undefined {
  if (of.shape === 'record') return memberOf(of.fields, key);
  if (of.shape === 'map') return { readAs: '', of: of.of, says };
  if (of.shape === 'list' && /^(?:-|\d+)$/.test(key)) return { readAs: '', of: of.of, says };
  return undefined;
}

/** The field that a JSON Pointer leads to, ids of maps and places in lists skipped; undefined where the form has none. */
export function fieldAt(pointer: string): Field | undefined {
  let field: Field | undefined = ROOT;
  for (const key of keysOf(pointer) ?? ['']) field = field && within(field, key);
  return field;
}

/** The key in the read form of a written key. */
export function readKeyOf(writtenKey: string, { readAs }: Field): string {
  return readAs === '' ? writtenKey : readAs;
}

export type CollectionShape = Extract<Shape, { readonly shape: 'list' | 'map' | 'record' }>;
export type ValueShape = Exclude<Shape, CollectionShape>;

export function isCollectionShape(of: Shape): of is CollectionShape {
  return of.shape === 'list' || of.shape === 'map' || of.shape === 'record';
}
