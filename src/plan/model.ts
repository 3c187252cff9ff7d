/**
 * A model: numbers by name, each worked out from others by a law or chosen among what can be set. One list of steps
 * serves the plan (worked through in order), the bands (worked again from a changed input) and the traces (walked
 * back). An unknown number is NaN inside a model and never leaves it: whatever rests on it is unknown too.
 */
import { kindOfSuffix, unitSuffix, type KindName } from '../base/kinds.ts';
import type { AnyLaw } from '../laws/law.ts';

export interface Step {
  readonly name: string;
  readonly title: string;
  readonly kind: KindName | undefined;
  readonly as: string | undefined;
  readonly origin: { readonly by: 'law'; readonly law: AnyLaw } | { readonly by: 'choice'; readonly says: string };
  /** Names of the inputs, and what the function calls each. */
  readonly inputs: readonly (readonly [argument: string, name: string])[];
  /** Inputs that may be unknown. */
  readonly optional: ReadonlySet<string>;
}

interface WorkedStep extends Step {
  readonly out: number;
  readonly slots: Int32Array;
  readonly keys: readonly string[];
  readonly mayMiss: readonly boolean[];
  /** Filled afresh for each call: laws read their inputs and keep nothing. */
  readonly scratch: Record<string, number>;
  readonly compute: (given: Record<string, number>) => number;
}

export interface Model {
  readonly names: readonly string[];
  readonly slotOf: ReadonlyMap<string, number>;
  readonly steps: readonly WorkedStep[];
  readonly stepOf: ReadonlyMap<string, WorkedStep>;
  /** Names no step works out: what the document must give. */
  readonly givens: readonly string[];
  /** Steps to work again by what changed and what is held: worked out once. */
  readonly affected: Map<string, readonly WorkedStep[]>;
  /** The given names that each number rests on: worked out once. */
  readonly roots: Map<string, readonly string[]>;
}

interface Described {
  readonly title: string;
  readonly kind?: KindName;
  readonly as?: string;
}

type LawInputs<L> = L extends { readonly compute: (given: infer Input extends object) => unknown }
  ? { readonly [K in keyof Input]?: string }
  : never;

interface LawWithNumber {
  readonly takes: object;
  readonly gives: Readonly<Record<string, string | { readonly title: string; readonly as?: string }>>;
  readonly compute: (given: never) => number;
}

interface LawWithResults {
  readonly takes: object;
  readonly gives: Readonly<Record<string, string | { readonly title: string; readonly as?: string }>>;
  readonly compute: (given: never) => object;
}

/** Collects steps in the order they are worked; a name is worked out once. */
export function modelBuilder() {
  const steps: Omit<WorkedStep, 'out' | 'slots'>[] = [];
  const known = new Set<string>();
  const compared = new Set<string>();

  function add(
    name: string,
    described: Described,
    origin: Step['origin'],
    compute: (given: never) => number,
    inputs: Readonly<Record<string, string | undefined>>,
    optional: readonly string[],
  ) {
    if (known.has(name)) throw new RangeError(`the model works out ${name} twice`);
    known.add(name);
    const pairs = Object.entries(inputs).filter((pair): pair is [string, string] => pair[1] !== undefined);
    steps.push({
      name,
      title: described.title,
      kind: described.kind ?? kindOfSuffix(unitSuffix(name)),
      as: described.as,
      origin,
      inputs: pairs,
      optional: new Set(optional),
      keys: pairs.map(([argument]) => argument),
      mayMiss: pairs.map(([argument]) => optional.includes(argument)),
      scratch: Object.fromEntries(pairs.map(([argument]) => [argument, NaN])),
      compute: compute as (given: Record<string, number>) => number,
    });
  }

  function addLaw(
    name: string,
    of: LawWithNumber | LawWithResults,
    given: string | { readonly title: string; readonly as?: string },
    compute: (given: never) => number,
    inputs: object,
    title: string | undefined,
  ) {
    // A spread of several inputs escapes the compiler's check for surplus names.
    const surplus = Object.keys(inputs).find((argument) => !(argument in of.takes));
    if (surplus !== undefined) throw new RangeError(`the law behind ${name} takes no ${surplus}`);
    const { title: own, as } = typeof given === 'string' ? { title: given, as: undefined } : given;
    add(
      name,
      {
        title: title ?? own,
        ...(as === 'tStop' || as === 'fStop' ? { kind: as } : {}),
        ...(as === undefined ? {} : { as }),
      },
      { by: 'law', law: of as unknown as AnyLaw },
      compute,
      inputs as Readonly<Record<string, string | undefined>>,
      [],
    );
  }

  return {
    /** A number that a law gives from others: `inputs` maps the law's arguments to names. */
    law<L extends LawWithNumber>(name: string, of: L, inputs: LawInputs<L>, title?: string): void {
      addLaw(name, of, Object.values(of.gives)[0]!, of.compute, inputs, title);
    },
    /** One of the numbers that a law of several results gives. */
    lawGiving<L extends LawWithResults>(
      name: string,
      of: L,
      result: keyof L['gives'] & string,
      inputs: LawInputs<L>,
      title?: string,
    ): void {
      const compute = (given: never): number => (of.compute(given) as Readonly<Record<string, number>>)[result]!;
      addLaw(name, of, of.gives[result]!, compute, inputs, title);
    },
    /** A number chosen or combined by the plan itself, said in words. */
    choose(
      name: string,
      described: Described & { readonly says: string; readonly optional?: readonly string[] },
      inputs: Readonly<Record<string, string>>,
      compute: (given: Record<string, number>) => number,
    ): void {
      add(name, described, { by: 'choice', says: described.says }, compute, inputs, described.optional ?? []);
    },
    /** Numbers that limits compare although no step uses them. */
    given(...also: readonly string[]): void {
      for (const name of also) compared.add(name);
    },
    build(): Model {
      const names: string[] = [];
      const slotOf = new Map<string, number>();
      const slot = (name: string): number => {
        const at = slotOf.get(name);
        if (at !== undefined) return at;
        slotOf.set(name, names.length);
        return names.push(name) - 1;
      };
      const worked = steps.map((step) => ({
        ...step,
        slots: Int32Array.from(step.inputs, ([, name]) => slot(name)),
        out: slot(step.name),
      }));
      compared.forEach(slot);
      return {
        names,
        slotOf,
        affected: new Map(),
        roots: new Map(),
        steps: worked,
        stepOf: new Map(worked.map((step) => [step.name, step])),
        givens: names.filter((name) => !known.has(name)),
      };
    },
  };
}

export type Builder = ReturnType<typeof modelBuilder>;

function compute(step: WorkedStep, values: Float64Array): number {
  const { slots, keys, mayMiss, scratch } = step;
  for (let i = 0; i < slots.length; i += 1) {
    const value = values[slots[i]!]!;
    if (value !== value && !mayMiss[i]) return NaN;
    scratch[keys[i]!] = value;
  }
  return step.compute(scratch);
}

/** Works steps through in order, writing each number to its slot. A law's refusal leaves its number unknown. */
export function work(steps: readonly WorkedStep[], values: Float64Array): void {
  for (let i = 0; i < steps.length; i += 1) {
    const step = steps[i]!;
    try {
      values[step.out] = compute(step, values);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      values[step.out] = NaN;
    }
  }
}

/** Why a step has no number although all its inputs are known; undefined when it has one or lacks an input. */
export function refusal(step: WorkedStep, values: Float64Array): string | undefined {
  try {
    const value = compute(step, values);
    const lacks = step.slots.some((slot, i) => Number.isNaN(values[slot]!) && !step.mayMiss[i]);
    return Number.isNaN(value) && !lacks ? 'no answer at these values' : undefined;
  } catch (error) {
    if (error instanceof RangeError) return error.message;
    throw error;
  }
}

/**
 * The model in which these inputs, where they may be unknown, must be known: a wish that is written and cannot be read
 * is no wish left out.
 */
export function requiring(model: Model, must: (input: string) => boolean): Model {
  const steps = model.steps.map((step) => ({
    ...step,
    optional: new Set(step.inputs.filter(([argument, name]) => step.optional.has(argument) && !must(name)).map(([argument]) => argument)),
    mayMiss: step.inputs.map(([, name], i) => step.mayMiss[i]! && !must(name)),
  }));
  return { ...model, steps, stepOf: new Map(steps.map((step) => [step.name, step])), affected: new Map() };
} // prettier-ignore

/** The steps to work again when these names change; names in `held` keep their number. */
export function affectedSteps(
  model: Model,
  changed: readonly string[],
  held: readonly string[] = [],
): readonly WorkedStep[] {
  return kept(model.affected, `${changed.join()} ${held.join()}`, () => {
    const dirty = new Set(changed);
    return model.steps.filter((step) => {
      if (held.includes(step.name) || !step.inputs.some(([, name]) => dirty.has(name))) return false;
      dirty.add(step.name);
      return true;
    });
  });
}

/** The steps among these that any of the named numbers rests on. */
export function neededSteps(steps: readonly WorkedStep[], names: readonly string[]): readonly WorkedStep[] {
  const needed = new Set(names);
  return steps
    .toReversed()
    .filter((step) => {
      if (!needed.has(step.name)) return false;
      for (const [, name] of step.inputs) needed.add(name);
      return true;
    })
    .toReversed();
}

function kept<T>(by: Map<string, T>, key: string, make: () => T): T {
  let value = by.get(key);
  if (value === undefined) by.set(key, (value = make()));
  return value;
}

/** The given names that a number rests on, nearest first. */
export function rootsOf(model: Model, name: string): readonly string[] {
  return kept(model.roots, name, () => walkToRoots(model, name));
}

function walkToRoots(model: Model, name: string): readonly string[] {
  const roots = new Set<string>();
  const seen = new Set<string>();
  const queue = [name];
  for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
    if (seen.has(next)) continue;
    seen.add(next);
    const step = model.stepOf.get(next);
    if (step) for (const [, input] of step.inputs) queue.push(input);
    else roots.add(next);
  }
  return [...roots];
}
