/**
 * What an event of the library is: something filmed on a table top, with how fast and how long it usually is, what it
 * depends on, and a function that works both out. Pure data beside a function, as laws are.
 */
import { kindOfSuffix, unitSuffix, type KindName } from '../../base/kinds.ts';
import { sayShown, showQuantity } from '../../base/quantity.ts';
import type { Bare, InputField } from '../law.ts';

/** A figure as it is usually met: `typical` is a start, not a mean. */
export interface Spread {
  readonly low: number;
  readonly typical: number;
  readonly high: number;
}

export interface EventParameter {
  readonly title: string;
  readonly default: number;
  /** What the number is, where its name's unit suffix does not say; the default is `ratio`. */
  readonly as?: Bare;
  readonly note?: string;
}

/** What an event asks of a plan. */
export interface EventFigures {
  /** Its fastest movement that must be sharp. */
  readonly speed_m_per_s: number;
  /** From the first moment that must be filmed to the last. */
  readonly duration_s: number;
  readonly reachWidth_m?: number;
  readonly reachHeight_m?: number;
  readonly reachTowardsLens_m?: number;
  /** What the figures say beyond themselves, in a sentence. */
  readonly remark?: string;
}

/** Each figure as it is usually met; reach follows the subject's size, so it is only worked out. */
export interface EventTypical {
  readonly speed_m_per_s: Spread;
  readonly duration_s: Spread;
}

type Given<Parameters extends Readonly<Record<string, EventParameter>>> = {
  readonly [K in keyof Parameters]: number;
};

export interface EventDetails<Parameters extends Readonly<Record<string, EventParameter>>> {
  /** Kebab-case, permanent: what a shot's action names. */
  readonly id: string;
  readonly title: string;
  /** What happens, in a sentence a cinematographer would say. */
  readonly says: string;
  readonly typical: EventTypical;
  readonly parameters: Parameters;
  readonly compute: (given: Given<Parameters>) => EventFigures;
  /** Ids of the laws that `compute` rests on; none where the figures are practice. */
  readonly laws: readonly string[];
  readonly frameRateReasoning: string;
  readonly frameRate_fps: { readonly low: number; readonly high: number };
  /** Keys of docs/sources.yaml. */
  readonly sources: readonly string[];
  /** Keys of docs/safety.md. */
  readonly cautions: readonly string[];
  /** Words of the trade that should find it. */
  readonly words?: readonly string[];
}

/** An event with its types forgotten, as the library holds it. */
export interface FilmedEvent {
  readonly id: string;
  readonly title: string;
  readonly says: string;
  readonly typical: EventTypical;
  readonly parameters: Readonly<Record<string, EventParameter>>;
  /**
   * Works the event out; what is not given is taken from the parameters' defaults. Throws RangeError for a parameter the
   * event does not have, or a value outside the domain of its laws.
   */
  readonly compute: (given?: Readonly<Record<string, number>>) => EventFigures;
  readonly laws: readonly string[];
  readonly frameRateReasoning: string;
  readonly frameRate_fps: { readonly low: number; readonly high: number };
  readonly sources: readonly string[];
  readonly cautions: readonly string[];
  readonly words: readonly string[];
}

/** Ties an event's description to its function: the compiler refuses a parameter that the function does not know. */
export function filmedEvent<const Parameters extends Readonly<Record<string, EventParameter>>>({
  compute,
  words = [],
  ...details
}: EventDetails<Parameters>): FilmedEvent {
  const names = Object.keys(details.parameters);
  return {
    ...details,
    words,
    compute: (given = {}) => {
      const unknown = Object.keys(given).find((name) => !names.includes(name));
      if (unknown !== undefined) throw new RangeError(`${details.id} has no ${unknown}; it has ${names.join(', ')}`);
      const filled = Object.fromEntries(names.map((name) => [name, given[name] ?? details.parameters[name]!.default]));
      return compute(filled as Given<Parameters>);
    },
  };
}

/** Each parameter of an event with its kind worked out: what a form or a document needs to know to ask for it. */
export function parametersOf({ parameters }: FilmedEvent): readonly InputField[] {
  return Object.entries(parameters).map(([name, { title, note, as, default: fallback }]) => {
    const kind = kindOfSuffix(unitSuffix(name));
    return { name, title, note, kind, as: kind ? 'quantity' : (as ?? 'ratio'), choices: undefined, default: fallback };
  });
}

/** A figure in the words of a remark: `52 ms`. */
export function said(kind: KindName, value: number): string {
  return sayShown(showQuantity(kind, value, { digits: 2 }));
}
