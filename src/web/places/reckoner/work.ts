/** A law worked out from what its form holds: its results by name, or in words why it refuses. */
import type { UnitSystem } from '../../../base/quantity.ts';
import type { AnyLaw, LawValue } from '../../../laws/law.ts';
import { computeLaw } from '../../../laws/reckon.ts';
import type { ReadTexts } from './lawText.ts';
import { sayRefusal } from './refusal.ts';

export interface Worked {
  /** Absent while an input is missing or cannot be read, and where the law refuses. */
  readonly values: Readonly<Record<string, LawValue>> | undefined;
  readonly refusal: string | undefined;
}

export function work(of: AnyLaw, { given, problems, missing }: ReadTexts, system: UnitSystem): Worked {
  if (problems.size > 0 || missing.length > 0) return { values: undefined, refusal: undefined };
  const worked = computeLaw(of, given, system);
  if (!('results' in worked)) return { values: undefined, refusal: sayRefusal(of, worked.what, system) };
  return { values: Object.fromEntries(worked.results.map(({ name, value }) => [name, value])), refusal: undefined };
}
