import { describe, expect, test } from 'vitest';
import { CATALOGUE, lawNamed, speaksOf, SUBJECTS } from './catalogue.ts';
import { exampleOf, inputsOf, resultsOf } from './law.ts';
import { computeLaw, reckon, writeInput } from './reckon.ts';
import { SOURCES } from './sources.ts';

const LAWS = CATALOGUE.map((law) => [law.id, law] as const);

test('every law is found by its id, and no two share one', () => {
  expect(new Set(CATALOGUE.map(({ id }) => id)).size).toBe(CATALOGUE.length);
  for (const law of CATALOGUE) expect(lawNamed(law.id)).toBe(law);
});

test('every subject has laws', () => {
  for (const { title, laws } of SUBJECTS) expect(laws.length, title).toBeGreaterThan(0);
});

test('a search finds a law by trade words, inputs and results, all words of it together', () => {
  const found = (search: string) => CATALOGUE.filter((law) => speaksOf(law, search)).map(({ id }) => id);
  expect(found('footcandles incident')).toContain('light-needed');
  expect(found('Meter Constant')).toContain('light-needed');
  expect(found('footcandles hyperfocal')).toEqual([]);
  expect(found('')).toHaveLength(CATALOGUE.length);
});

describe.each(LAWS)('%s', (id, law) => {
  test('is named in lower case with hyphens, says something, and ends its sentence', () => {
    expect(id).toMatch(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/);
    expect(law.says).toMatch(/^[A-Z0-9].*\.$/s);
    expect(law.holds).not.toBe('');
    expect(law.equation).not.toBe('');
  });

  test('cites at least one source, all of them listed', () => {
    expect(law.sources.length).toBeGreaterThan(0);
    for (const key of law.sources) expect(Object.keys(SOURCES)).toContain(key);
  });

  test('has inputs and results whose names end in a unit that is known', () => {
    for (const { name, kind } of [...inputsOf(law), ...resultsOf(law)])
      if (name.includes('_')) expect(kind, name).toBeDefined();
  });

  test('works its example out to finite numbers or words', () => {
    const worked = computeLaw(law, exampleOf(law));
    if (!('results' in worked)) throw new Error(worked.what);
    for (const { name, value, shown } of worked.results) {
      expect(value, name).toBeDefined();
      expect(shown.number, name).not.toBe('unknown');
    }
  });

  test('gives the same from its example written as text', () => {
    const example = exampleOf(law);
    const texts = inputsOf(law).flatMap((field) => {
      const value = example[field.name];
      return value === undefined ? [] : [[field.name, writeInput(field, value)] as const];
    });
    const worked = computeLaw(law, example);
    const read = reckon(law, Object.fromEntries(texts));
    if (!('results' in worked) || !('results' in read)) throw new Error(JSON.stringify(read));
    for (const [index, { name, value }] of worked.results.entries()) {
      const again = read.results[index]!.value;
      if (typeof value === 'number') expect(Number(again) / value, name).toBeCloseTo(1, 9);
      else expect(again, name).toEqual(value);
    }
  });

  test('states the defaults that its function has', () => {
    const defaults = inputsOf(law).filter((field) => field.default !== undefined);
    const example = exampleOf(law);
    const left = Object.entries(example).filter(([name]) => !defaults.some((field) => field.name === name));
    const given = [...left, ...defaults.map((field) => [field.name, field.default!] as const)];
    const byDefault = computeLaw(law, Object.fromEntries(left));
    const byHand = computeLaw(law, Object.fromEntries(given));
    const values = (worked: typeof byHand) => ('results' in worked ? worked.results.map(({ value }) => value) : worked);
    expect(values(byDefault)).toEqual(values(byHand));
  });
});
