/** Where a picture is being read, and what the law says there. */
import type { UnitSystem } from '../../../base/quantity.ts';
import type { AnyLaw, InputField, LawValue, ResultField } from '../../../laws/law.ts';
import { computeLaw, readInput } from '../../../laws/reckon.ts';
import { numberOf } from './axis.ts';
import { said, sayValue } from './lawText.ts';
import { sayRefusal } from './refusal.ts';

/** Inputs by name, each as it would be typed. */
export interface Cursor {
  readonly texts: Readonly<Record<string, string>>;
  /** Moved by keys, so that whoever listens is told. */
  readonly isByKey: boolean;
}

/** The number a cursor stands at for one input. */
export function cursorNumber(cursor: Cursor | undefined, field: InputField): number | undefined {
  const text = cursor?.texts[field.name];
  if (text === undefined) return undefined;
  const read = readInput(field, text);
  return read.ok ? numberOf(read.value) : undefined;
}

export interface Told {
  /** "T8, 1/1250 s". */
  readonly where: string;
  /** "25 klx", or why there is none. */
  readonly says: string;
  readonly isRefused: boolean;
  readonly value: LawValue | undefined;
}

export interface Telling {
  readonly of: AnyLaw;
  readonly given: Readonly<Record<string, LawValue>>;
  readonly fields: readonly InputField[];
  readonly result: ResultField;
  readonly system: UnitSystem;
}

/** What the law says for what is given with some inputs put in the place of others. */
export function tell(
  { of, given, fields, result, system }: Telling,
  texts: Readonly<Record<string, string>> = {},
): Told {
  const values: Record<string, LawValue> = { ...given };
  for (const field of fields) {
    const read = texts[field.name] === undefined ? undefined : readInput(field, texts[field.name]!);
    if (read?.ok) values[field.name] = read.value;
  }
  const where = fields
    .flatMap((field) => {
      const value = values[field.name] ?? field.default;
      return value === undefined ? [] : [said(sayValue(field, value, system))];
    })
    .join(', ');
  const worked = computeLaw(of, values, system);
  if (!('results' in worked))
    return { where, says: sayRefusal(of, worked.what, system), isRefused: true, value: undefined };
  const value = worked.results.find(({ name }) => name === result.name)!.value;
  return { where, says: said(sayValue(result, value, system)), isRefused: false, value };
}
