import { expect, test } from 'vitest';
import { exampleOf, inputsOf, resultsOf, type LawValue } from '../law.ts';
import { computeLaw } from '../reckon.ts';
import { LENS_LAWS } from './catalogue.ts';

test('each law has an id of its own, in kebab case', () => {
  const ids = LENS_LAWS.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of ids) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
});

test.each(LENS_LAWS)('the example of $id computes to a finite number', (of) => {
  const worked = computeLaw(of, exampleOf(of));
  if (!('results' in worked)) throw new Error(worked.what);
  for (const { value } of worked.results) expect(value).toSatisfy(Number.isFinite);
});

test.each(LENS_LAWS)("the defaults that $id tells are the function's own", (of) => {
  const compute = of.compute as (given: Readonly<Record<string, LawValue>>) => number;
  const bare: Record<string, LawValue> = { ...exampleOf(of) };
  const told: Record<string, LawValue> = { ...exampleOf(of) };
  for (const field of inputsOf(of)) {
    if (field.default === undefined) continue;
    delete bare[field.name];
    told[field.name] = field.default;
  }
  expect(compute(bare)).toBe(compute(told));
});

test.each(LENS_LAWS)('each number that $id takes or gives says its unit, or what it is', (of) => {
  for (const { name, kind } of [...inputsOf(of), ...resultsOf(of)])
    if (name.includes('_')) expect(kind, name).toBeDefined();
    else expect(name).toMatch(/(Ratio|Fraction|Count|Number|divisor)$/);
});
