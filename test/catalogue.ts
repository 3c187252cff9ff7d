/** What every catalogue of laws owes its readers: an example that computes, defaults that are the function's own. */
import { describe, expect, test } from 'vitest';
import { computeLaw } from '../src/laws/reckon.ts';
import { exampleOf, inputsOf, type AnyLaw, type LawValue } from '../src/laws/law.ts';

function resultsOfExample(of: AnyLaw, given: Readonly<Record<string, LawValue>>): readonly LawValue[] {
  const worked = computeLaw(of, given);
  if (!('results' in worked)) throw new Error(`${worked.where}: ${worked.what}`);
  return worked.results.map(({ value }) => value);
}

export function catalogueHolds(laws: readonly AnyLaw[]): void {
  test('no two laws share an id, and ids are kebab-case', () => {
    const ids = laws.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/);
  });

  describe.each(laws.map((of) => ({ id: of.id, of })))('$id', ({ of }) => {
    test('its example gives every result it describes, none of them missing or infinite', () => {
      for (const value of resultsOfExample(of, exampleOf(of)))
        expect(typeof value === 'number' ? Number.isFinite(value) : value !== undefined).toBe(true);
    });

    test('its example names only inputs it takes', () => {
      expect(Object.keys(of.takes)).toEqual(expect.arrayContaining(Object.keys(exampleOf(of))));
    });

    const defaults = inputsOf(of).filter((field) => field.default !== undefined);
    for (const { name, default: value } of defaults)
      test(`leaving ${name} out is the same as giving its default`, () => {
        const without = Object.fromEntries(Object.entries(exampleOf(of)).filter(([key]) => key !== name));
        expect(resultsOfExample(of, { ...without, [name]: value! })).toEqual(resultsOfExample(of, without));
      });
  });
}
