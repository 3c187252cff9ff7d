import { describe, expect, test } from 'vitest';
import { lawNamed } from '../../../laws/catalogue.ts';
import { exampleOf, inputsOf, resultsOf, type LawValue } from '../../../laws/law.ts';
import { levelsOf } from './levels.ts';
import { startGrid } from './sample.ts';

const of = lawNamed('light-needed')!;
const result = resultsOf(of)[0]!;
const input = (name: string) => inputsOf(of).find((each) => each.name === name)!;

function mapOf(given: Readonly<Record<string, LawValue>> = {}, over = 'stop') {
  const across = {
    over: input(over),
    and: input('isoSpeed'),
    overAxis: { scale: 'log', from: 2, to: 32 },
    andAxis: { scale: 'log', from: 100, to: 6400 },
    columns: 9,
    rows: 9,
  } as const;
  const { grid, work } = startGrid({ of, given: { ...exampleOf(of), ...given }, result: result.name }, across);
  work(1000);
  return { grid, across };
}

describe('the levels of a map', () => {
  const found = levelsOf(mapOf(), { result, nowValue: 40_000, system: 'metric' })!;

  test('are round, rise, and lie among the results', () => {
    const labels = found.levels.map(({ label }) => label);
    expect(labels).toContain('10 klx');
    expect(labels).toContain('50 klx');
    for (const [i, { at }] of found.levels.entries()) if (i > 0) expect(at).toBeGreaterThan(found.levels[i - 1]!.at);
    const places = [...found.places.values];
    for (const { at } of found.levels) {
      expect(at).toBeGreaterThan(Math.min(...places));
      expect(at).toBeLessThan(Math.max(...places));
    }
  });

  test('are in the unit of the person', () => {
    const labels = levelsOf(mapOf(), { result, nowValue: 40_000, system: 'imperial' })!.levels.map(
      ({ label }) => label,
    );
    expect(labels).toContain('1000 fc');
  });

  test('put the result as it is now where the grid has it', () => {
    // The middle of both axes is T8 at 800, which needs 40 klx at 1/2000 s.
    expect(found.places.values[4 * 9 + 4]).toBeCloseTo(found.nowAt!, 9);
  });
});

test('a law without an answer anywhere has no levels', () => {
  expect(levelsOf(mapOf({ exposureTime_s: 0 }), { result, nowValue: undefined, system: 'metric' })).toBeUndefined();
});

test('where all results are the same there is nothing to draw a line between', () => {
  const { grid, across } = mapOf();
  const flat = { across, grid: { ...grid, values: grid.values.map(() => 7) } };
  const found = levelsOf(flat, { result, nowValue: 7, system: 'metric' })!;
  expect(found.levels).toEqual([]);
  expect(found.nowAt).toBeUndefined();
});
