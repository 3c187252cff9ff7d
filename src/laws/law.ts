/**
 * What a law is: a function of named numbers, and beside it a description from which the command, the Reckoner's form,
 * the documentation page and the words of a trace are all made.
 */
import { kindOfSuffix, unitSuffix, type KindName } from '../base/kinds.ts';
import type { Rational } from '../base/rational.ts';

/** A plain number's meaning where its name carries no unit. */
export type Bare = 'ratio' | 'fraction' | 'count' | 'isoSpeed' | 'fStop' | 'tStop' | 'rational' | 'flag' | 'timecode';

export interface TakenDetails<Value> {
  readonly title: string;
  /** What the number is, where its name's unit suffix does not say; the default is `ratio`. */
  readonly as?: Bare;
  /** For a choice: the words it may be, each with what it means. */
  readonly choices?: Readonly<Record<string & Value, string>>;
  /** Used where the person gives none; must equal the function's own default. */
  readonly default?: Value;
  readonly note?: string;
}

/** An input: a title alone, or a title with more to say. */
export type Taken<Value> = string | TakenDetails<Value>;

/** A result: a title alone, or a title with what its bare number is. */
export type Given = string | { readonly title: string; readonly as?: Bare };

export type LawValue = number | string | boolean | Rational;

export interface LawDescription<Input extends object, Result extends string> {
  /** Kebab-case, permanent: the word after `longsecond reckon`. */
  readonly id: string;
  readonly title: string;
  /** One sentence a cinematographer would say. */
  readonly says: string;
  readonly equation: string;
  readonly takes: { readonly [K in keyof Required<Input>]: Taken<Exclude<Input[K], undefined>> };
  readonly gives: Readonly<Record<Result, Given>>;
  /** Where it holds and what it leaves out. */
  readonly holds: string;
  /** Keys of docs/sources.yaml. */
  readonly sources: readonly string[];
  /** Keys of docs/safety.md. */
  readonly cautions?: readonly string[];
  /** Words of the trade that should find it. */
  readonly words?: readonly string[];
  readonly example: Input;
}

export interface Law<Input extends object = never, Result extends string = string> extends LawDescription<
  Input,
  Result
> {
  readonly compute: (given: Input) => number | Readonly<Record<Result, LawValue>>;
}

/** A law with its types forgotten, as lists hold it. */
export interface AnyLaw {
  readonly id: string;
  readonly title: string;
  readonly says: string;
  readonly equation: string;
  readonly takes: Readonly<Record<string, Taken<LawValue>>>;
  readonly gives: Readonly<Record<string, Given>>;
  readonly holds: string;
  readonly sources: readonly string[];
  readonly cautions?: readonly string[];
  readonly words?: readonly string[];
  /** Inputs that compute, named as in `takes`; `exampleOf` reads them as a record. */
  readonly example: object;
  readonly compute: (given: never) => unknown;
}

/**
 * Ties a description to its function: the compiler refuses a description that names an input the function does not
 * take, or leaves one out. A function that returns one number gives exactly one result; one that returns a record
 * gives keys of it.
 *
 * A page that does not show a description need not load it: the call is marked as having no side effects.
 */
/* @__NO_SIDE_EFFECTS__ */
export function law<
  Compute extends (given: never) => number | object,
  const Result extends (ReturnType<Compute> extends number ? string : keyof ReturnType<Compute> & string),
>(
  compute: Compute,
  description: LawDescription<Parameters<Compute>[0], Result>,
): LawDescription<Parameters<Compute>[0], Result> & { readonly compute: Compute } {
  return { ...description, compute };
}

/** A law's example as a record of its inputs. */
export function exampleOf({ example }: AnyLaw): Readonly<Record<string, LawValue>> {
  return { ...example };
}

export interface InputField {
  readonly name: string;
  readonly title: string;
  readonly note: string | undefined;
  readonly kind: KindName | undefined;
  readonly as: Bare | 'quantity' | 'choice';
  readonly choices: Readonly<Record<string, string>> | undefined;
  readonly default: LawValue | undefined;
}

const detailsOf = <T>(taken: Taken<T>): TakenDetails<T> => (typeof taken === 'string' ? { title: taken } : taken);

/** Each input of a law with its kind worked out: what a form, a command or a page needs to know to ask for it. */
export function inputsOf(of: AnyLaw): readonly InputField[] {
  return Object.entries(of.takes).map(([name, taken]) => {
    const { title, as, choices, default: fallback, note } = detailsOf(taken);
    const kind = as === 'fStop' || as === 'tStop' ? as : kindOfSuffix(unitSuffix(name));
    return {
      name,
      title,
      note,
      kind,
      as: choices ? 'choice' : kind ? 'quantity' : (as ?? 'ratio'),
      choices,
      default: fallback,
    };
  });
}

export interface ResultField {
  readonly name: string;
  readonly title: string;
  readonly kind: KindName | undefined;
  readonly as: Bare | 'quantity';
}

/** Each result of a law with its kind worked out. */
export function resultsOf(of: AnyLaw): readonly ResultField[] {
  return Object.entries(of.gives).map(([name, given]) => {
    const { title, as } = typeof given === 'string' ? { title: given } : given;
    const kind = as === 'fStop' || as === 'tStop' ? as : kindOfSuffix(unitSuffix(name));
    return { name, title, kind, as: kind ? 'quantity' : (as ?? 'ratio') };
  });
}
