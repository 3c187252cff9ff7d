/** Edits of one shot as patches on the written shoot, and what is written where. */
import { fieldAt, isCollectionShape } from '../../../document/fieldAt.ts';
import { writtenValueAt } from '../../../document/patch.ts';
import { readValue } from '../../../document/readValue.ts';
import type { Written } from '../../../document/written.ts';
import { parseQuantity } from '../../../base/quantity.ts';
import { KINDS, type KindName } from '../../../base/kinds.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import type { Checked } from '../../parts/QuantityField.tsx';

/** Who says a value: the shot itself, the shoot's defaults, or nobody. */
export type Holder = 'shot' | 'defaults' | 'nobody';

export interface Found {
  readonly text: string;
  readonly holder: Holder;
  readonly path: string;
}

/** What is written for a key of a shot (`frameWidth`, `action/speed`), in the shot or else in the defaults. */
export function findWritten(written: Written, shotId: string, key: string): Found {
  const own = `/shots/${shotId}/${key}`;
  const shared = `/defaults/${key}`;
  const at = (path: string): string | undefined => {
    const value = writtenValueAt(written, path);
    return value === undefined || value === null || typeof value === 'object' ? undefined : String(value);
  };
  const ownText = at(own);
  if (ownText !== undefined) return { text: ownText, holder: 'shot', path: own };
  const sharedText = at(shared);
  if (sharedText !== undefined) return { text: sharedText, holder: 'defaults', path: shared };
  return { text: '', holder: 'nobody', path: own };
}

/** A plain number is written as one where the form takes numbers, so that no needless quotes come into the text. */
function asWritten(pointer: string, text: string): Written {
  const shape = fieldAt(pointer)?.of.shape;
  const isNumber = (shape === 'number' || shape === 'rate') && /^\d{1,15}(\.\d+)?$/.test(text);
  return isNumber ? Number(text) : text;
}

/**
 * The patch that writes a text at a pointer, or takes away what is there when the text is empty. Sections it needs are
 * added where the patch is laid on.
 */
export function writingPatch(written: Written, pointer: string, text: string): readonly PatchOperation[] {
  const body = text.trim();
  if (body === '') return clearingPatch(written, [pointer]);
  return [{ op: 'add', path: pointer, value: asWritten(pointer, body) }];
}

/** The patch that takes away whatever of these is written. */
export function clearingPatch(written: Written, pointers: readonly string[]): readonly PatchOperation[] {
  return pointers
    .filter((path) => writtenValueAt(written, path) !== undefined)
    .map((path) => ({ op: 'remove', path }) as const);
}

/** The kind of quantity that stands at a pointer, where it is one. */
export function kindAt(pointer: string): KindName | undefined {
  const of = fieldAt(pointer)?.of;
  if (of?.shape === 'quantity') return of.kind;
  return of?.shape === 'rate' ? 'rate' : undefined;
}

/**
 * A bare number given the unit that stood there before, or that this field is usually written in: people type `250` over
 * `240 mm`. Anything else is left as typed.
 */
export function completeUnit(pointer: string, text: string, before: string): string {
  const body = text.trim();
  const kind = kindAt(pointer);
  if (kind === undefined || !/^[+\-−]?\d+(\.\d+)?$/.test(body) || KINDS[kind].units.length === 0) return text;
  if (kind === 'rate') return text;
  const unit = /[^\d\s./+\-−±].*$/.exec(before.split('±')[0]!.trim())?.[0];
  const whole = `${body} ${unit ?? /[^\d\s./].*$/.exec(KINDS[kind].example)?.[0] ?? ''}`;
  return parseQuantity(kind, whole).ok ? whole : text;
}

/** What a typed text would be read as at a pointer; empty is fine, and leaves it unsaid. */
export function checkTyped(pointer: string, text: string, before: string): Checked {
  if (text.trim() === '') return { ok: true };
  const field = fieldAt(pointer);
  if (!field || isCollectionShape(field.of)) return { ok: true };
  const whole = completeUnit(pointer, text, before);
  const read = readValue(field.of, field.readAs, asWritten(pointer, whole.trim()));
  if (!read.ok) return { ok: false, why: read.near === undefined ? read.what : `${read.what}; did you mean ${read.near}?` };
  return whole === text ? { ok: true } : { ok: true, says: `read as ${whole}` };
} // prettier-ignore
