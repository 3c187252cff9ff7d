import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { kindOfSuffix, unitSuffix } from '../base/kinds.ts';
import type { Rational } from '../base/rational.ts';
import { CATALOGUE } from './catalogue.ts';
import { exampleOf, inputsOf, law, resultsOf, type AnyLaw, type LawValue } from './law.ts';

const WORDS = {
  id: 'stretched',
  title: 'Stretched',
  says: 'A length pulled out.',
  equation: 'L = k · l + s',
  holds: 'Within reason.',
  sources: [],
};

interface Pull {
  readonly length_m: number;
  readonly factor: number;
  readonly slack_m?: number;
}

const pulled_m = ({ length_m, factor, slack_m = 0 }: Pull): number => factor * length_m + slack_m;
const EXAMPLE = { length_m: 2, factor: 3 };
const TAKES = { length_m: 'Length', factor: 'Factor', slack_m: { title: 'Slack', default: 0 } };

describe('a description is tied to its function by the compiler', () => {
  test('a whole one is accepted, and computes', () => {
    const described = law(pulled_m, { ...WORDS, takes: TAKES, gives: { long_m: 'Long' }, example: EXAMPLE });
    expect(described.compute(described.example)).toBe(6);
  });

  test('one that leaves an input out is refused, an optional one too', () => {
    const described = law(pulled_m, {
      ...WORDS,
      // @ts-expect-error: slack_m is not described
      takes: { length_m: '', factor: '' },
      gives: { long_m: '' },
      example: EXAMPLE,
    });
    expect(described.takes).not.toHaveProperty('slack_m');
  });

  test('one that names an input the function does not take is refused', () => {
    const described = law(pulled_m, {
      ...WORDS,
      // @ts-expect-error: the function takes no weight_kg
      takes: { length_m: '', factor: '', slack_m: '', weight_kg: '' },
      gives: { long_m: '' },
      example: EXAMPLE,
    });
    expect(described.takes).toHaveProperty('weight_kg');
  });

  test('one whose default or example is of another type is refused', () => {
    const wrong = law(pulled_m, {
      ...WORDS,
      // @ts-expect-error: a default must be a number here
      takes: { ...TAKES, slack_m: { title: 'Slack', default: 'none' } },
      gives: { long_m: '' },
      // @ts-expect-error: factor is missing
      example: { length_m: 2 },
    });
    expect(wrong.id).toBe('stretched');
  });

  test('one that names a result the function does not give is refused', () => {
    const both = ({ length_m }: { readonly length_m: number }) => ({ half_m: length_m / 2, twice_m: length_m * 2 });
    const described = law(both, {
      ...WORDS,
      takes: { length_m: '' },
      // @ts-expect-error: the function gives no third_m
      gives: { half_m: '', third_m: '' },
      example: { length_m: 1 },
    });
    expect(described.compute({ length_m: 1 })).toEqual({ half_m: 0.5, twice_m: 2 });
  });
});

describe('inputs and results are asked for by what their names and descriptions say', () => {
  interface Everything {
    readonly exposureTime_s: number;
    readonly pixelPitch_um: number;
    readonly stop: number;
    readonly isoSpeed: number;
    readonly share: number;
    readonly playRate: Rational;
    readonly mounted: boolean;
    readonly shape: 'round' | 'square';
  }
  const everything: AnyLaw = law((given: Everything) => given.share, {
    ...WORDS,
    takes: {
      exposureTime_s: 'Exposure time',
      pixelPitch_um: { title: 'Pitch', note: 'of one pixel' },
      stop: { title: 'Stop', as: 'tStop' },
      isoSpeed: { title: 'Index', as: 'isoSpeed', default: 800 },
      share: 'Share',
      playRate: { title: 'Play rate', as: 'rational' },
      mounted: { title: 'Mounted', as: 'flag' },
      shape: { title: 'Shape', choices: { round: 'a disc', square: 'a box' } },
    },
    gives: { size_m: 'Size' },
    example: {
      exposureTime_s: 1,
      pixelPitch_um: 10,
      stop: 4,
      isoSpeed: 800,
      share: 1,
      playRate: { num: 24, den: 1 },
      mounted: true,
      shape: 'round',
    },
  });

  test('each input has its kind, what it is, its note and its default', () => {
    expect(inputsOf(everything).map(({ name, kind, as }) => [name, kind, as])).toEqual([
      ['exposureTime_s', 'time', 'quantity'],
      ['pixelPitch_um', 'length', 'quantity'],
      ['stop', 'tStop', 'quantity'],
      ['isoSpeed', undefined, 'isoSpeed'],
      ['share', undefined, 'ratio'],
      ['playRate', undefined, 'rational'],
      ['mounted', undefined, 'flag'],
      ['shape', undefined, 'choice'],
    ]);
    expect(inputsOf(everything)[1]).toMatchObject({ title: 'Pitch', note: 'of one pixel', default: undefined });
    expect(inputsOf(everything)[3]).toMatchObject({ title: 'Index', note: undefined, default: 800 });
    expect(inputsOf(everything)[7]!.choices).toEqual({ round: 'a disc', square: 'a box' });
  });

  test('each result has its kind', () => {
    expect(resultsOf(everything)).toEqual([{ name: 'size_m', title: 'Size', kind: 'length', as: 'quantity' }]);
  });

  test('an example reads as a record of its inputs', () => {
    expect(exampleOf(everything)).toEqual(everything.example);
    expect(exampleOf(everything)).not.toBe(everything.example);
  });
});

const isLaw = (value: unknown): value is AnyLaw =>
  typeof value === 'object' && value !== null && 'compute' in value && 'takes' in value && 'id' in value;

describe('the laws of every folder', () => {
  const modules = import.meta.glob<Readonly<Record<string, unknown>>>(['./*/**/*.ts', '!./**/*.test.ts'], {
    eager: true,
  });
  const exported = Object.entries(modules).flatMap(([file, module]) =>
    Object.values(module)
      .filter(isLaw)
      .map((of) => ({ file, of })),
  );

  test('are all in the catalogue', () => {
    expect(exported.length).toBeGreaterThan(0);
    for (const { file, of } of exported) expect(CATALOGUE, `${of.id} of ${file}`).toContain(of);
    expect(new Set(exported.map(({ of }) => of)).size).toBe(CATALOGUE.length);
  });

  test('have ids of their own', () => {
    const ids = CATALOGUE.map(({ id }) => id);
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
  });

  test('have titles of their own', () => {
    const titles = CATALOGUE.map(({ title }) => title);
    expect(titles.filter((title, i) => titles.indexOf(title) !== i)).toEqual([]);
  });
});

const sources = parse(readFileSync(new URL('../../docs/sources.yaml', import.meta.url), 'utf8')) as Readonly<
  Record<string, { readonly title?: string; readonly seen?: string }>
>;

function resultsFor(of: AnyLaw, given: Readonly<Record<string, LawValue>>): readonly unknown[] {
  const out = of.compute(given as never);
  return typeof out === 'number' ? [out] : Object.keys(of.gives).map((name) => (out as Record<string, unknown>)[name]);
}

describe.each(CATALOGUE.map((of) => ({ id: of.id, of })))('the law $id', ({ of }) => {
  const example = exampleOf(of);

  test('computes its example to finite numbers, ratios or words', () => {
    for (const result of resultsFor(of, example)) {
      expect(result).toBeDefined();
      if (typeof result === 'number') expect(Number.isFinite(result)).toBe(true);
    }
  });

  test('cites sources that docs/sources.yaml lists with a title and how they were seen', () => {
    expect(of.sources).not.toEqual([]);
    for (const key of of.sources) {
      expect(sources[key]?.title, key).toBeTypeOf('string');
      expect(['opened', 'excerpt', 'memory', 'practice'], key).toContain(sources[key]?.seen);
    }
  });

  test('says of every input and result what its number is, by a unit in its name or in words', () => {
    for (const [name, told] of Object.entries({ ...of.gives, ...of.takes })) {
      const isSaid = typeof told === 'object' && ('as' in told || 'choices' in told);
      expect(isSaid || kindOfSuffix(unitSuffix(name)) !== undefined, name).toBe(true);
    }
  });

  const withDefault = inputsOf(of).filter((field) => field.default !== undefined);
  for (const { name, default: value } of withDefault)
    test(`means by its default of ${name} what its function does when ${name} is left out`, () => {
      const without = Object.fromEntries(Object.entries(example).filter(([key]) => key !== name));
      expect(resultsFor(of, { ...without, [name]: value! })).toEqual(resultsFor(of, without));
    });
});
