/** The inputs of a law as a person types them: read, with missing units put in, and written for the worked example. */
import { KINDS, ownUnit, unitSuffix, type Kind, type KindName } from '../../../base/kinds.ts';
import {
  parseQuantity,
  sayShown as said,
  showNumber,
  showQuantity,
  showShutter,
  type Shown,
  type UnitSystem,
} from '../../../base/quantity.ts';
import {
  exampleOf,
  inputsOf,
  type AnyLaw,
  type InputField,
  type LawValue,
  type ResultField,
} from '../../../laws/law.ts';
import { readInput, showField, writeInput } from '../../../laws/reckon.ts';

type Named = Pick<InputField, 'name' | 'kind'>;

export { said };

/** Whether a time is one that crews say as a fraction of a second. */
export const isShutter = ({ name, kind }: Named): boolean => kind === 'time' && /^exposureTime/.test(name);

/** An input or result for eyes, as a crew says it. */
export function sayValue(field: Named, value: LawValue, system: UnitSystem): Shown {
  if (typeof value === 'number' && isShutter(field) && Number.isFinite(value)) return showShutter(value);
  return showField(field, value, system);
}

/** The text a person would type for a value: stops by their nearest engraved mark, millimetres as such. */
export function typeValue(field: Named, value: LawValue): string {
  if (typeof value !== 'number') return writeInput(field, value);
  if (field.kind === 'fStop' || field.kind === 'tStop') return said(showField(field, value));
  const own = ownUnit(unitSuffix(field.name));
  return own ? `${Number(value.toPrecision(15))} ${own.symbol}` : writeInput(field, value);
}

/** A law's worked example as texts; what it leaves to its default stays empty. */
export function exampleTexts(of: AnyLaw): Readonly<Record<string, string>> {
  const example = exampleOf(of);
  const texts = inputsOf(of).flatMap((field) => {
    const value = example[field.name];
    return value === undefined ? [] : [[field.name, typeValue(field, value)] as const];
  });
  return Object.fromEntries(texts);
}

export interface Completing {
  /** What stood in the field before. */
  readonly before: string;
  /** A value this field may well hold. */
  readonly likely: LawValue | undefined;
  readonly system: UnitSystem;
}

/** A bare number given the unit that stood there before, or that a person of this unit system would mean; a bare stop its letter. */
export function completeText(field: InputField, text: string, { before, likely, system }: Completing): string {
  const body = text.trim();
  if ((field.kind === 'tStop' || field.kind === 'fStop') && /^\d/.test(body))
    return `${field.kind === 'tStop' ? 'T' : 'f/'}${body}`;
  if (!field.kind || !/^[+\-−]?(?:\d+(?:\.\d+)?|\.\d+)$/.test(body)) return text;
  const kind: Kind = KINDS[field.kind];
  if (kind.units.length === 0 || field.kind === 'rate') return text;
  const stood = /[^\d\s./+\-−].*$/.exec(before.trim())?.[0];
  const meant = likely === undefined ? undefined : showField(field, likely, system).unit;
  for (const unit of [stood, meant, kind.units[0]!.symbol]) {
    const whole = `${body} ${unit ?? ''}`.trim();
    if (unit !== undefined && unit !== '' && parseQuantity(field.kind, whole).ok) return whole;
  }
  return text;
}

export interface ReadTexts {
  readonly given: Readonly<Record<string, LawValue>>;
  /** By input name: why its text cannot be read. */
  readonly problems: ReadonlyMap<string, string>;
  readonly missing: readonly InputField[];
}

export interface Reading {
  readonly texts: Readonly<Record<string, string>>;
  /** What stood in the fields before they were typed into. */
  readonly before: Readonly<Record<string, string>>;
  readonly system: UnitSystem;
}

/** Reads every input; an empty one is left to its default or is missing. */
export function readTexts(of: AnyLaw, { texts, before, system }: Reading): ReadTexts {
  const given: Record<string, LawValue> = {};
  const problems = new Map<string, string>();
  const missing: InputField[] = [];
  const example = exampleOf(of);
  for (const field of inputsOf(of)) {
    const text = texts[field.name] ?? '';
    if (text.trim() === '') {
      if (field.default === undefined) missing.push(field);
      continue;
    }
    const likely = field.default ?? example[field.name];
    const read = readInput(field, completeText(field, text, { before: before[field.name] ?? '', likely, system }));
    if (read.ok) given[field.name] = read.value;
    else problems.set(field.name, read.why);
  }
  return { given, problems, missing };
}

/** How a typed text was read, where that says more than the text; empty otherwise. */
export function sayReading(field: InputField, text: string, value: LawValue, system: UnitSystem): string {
  if (!field.kind || typeof value !== 'number') return '';
  const shown = said(showField(field, value, system));
  const plain = (words: string) =>
    words
      .replace(/\s/g, '')
      .replace(/(\.\d*?)0+(?!\d)/, '$1')
      .replace(/\.(?!\d)/, '')
      .toLowerCase();
  return plain(shown) === plain(text) ? '' : `= ${shown}`;
}

const OTHER: Readonly<Record<UnitSystem, UnitSystem>> = { metric: 'imperial', imperial: 'metric' };

function inOtherUnits(kindName: KindName, value: number, system: UnitSystem): string {
  const { metric, imperial }: Kind['show'] = KINDS[kindName].show;
  if (metric.join() === imperial.join()) return '';
  return said(showQuantity(kindName, value, { digits: 3, system: OTHER[system] }));
}

const GIB_B = 2 ** 30;

/** The same result said another way, for whoever thinks in the other unit; empty where there is none. */
export function sayAlso(field: ResultField, value: LawValue, system: UnitSystem): string {
  if (typeof value === 'object') return value.den === 1 ? '' : showNumber(value.num / value.den, 6);
  if (typeof value !== 'number' || !Number.isFinite(value)) return '';
  const { kind, as, name } = field;
  if (isShutter(field)) return value < 0.25 ? said(showField(field, value, system)) : '';
  if (kind === 'fStop' || kind === 'tStop') {
    const exact = showNumber(value, 4);
    return exact === said(showField(field, value)).replace(/^(?:T|f\/)/, '') ? '' : `${exact} exactly`;
  }
  if (kind === 'stops') return `a factor of ${showNumber(2 ** value, 3)}`;
  if (kind === 'bytes') return value >= GIB_B / 10 ? `${showNumber(value / GIB_B, 4)} GiB` : '';
  if (as === 'fraction') return `${showNumber(value * 100, 3)} %`;
  return kind && !ownUnit(unitSuffix(name)) ? inOtherUnits(kind, value, system) : '';
}

const quoted = (text: string): string => (/^[\w./:%+-]+$/.test(text) ? text : `'${text.replaceAll("'", "'\\''")}'`);

/** The line that asks the command the same. */
export function commandLine(of: AnyLaw, texts: Readonly<Record<string, string>>, system: UnitSystem): string {
  const pairs = inputsOf(of).flatMap(({ name }) => {
    const text = texts[name]?.trim() ?? '';
    return text === '' ? [] : [`${name}=${quoted(text)}`];
  });
  return ['longsecond reckon', of.id, ...pairs, ...(system === 'imperial' ? ['--imperial'] : [])].join(' ');
}
