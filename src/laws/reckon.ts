/** One law worked out from inputs as people write them: what `longsecond reckon` and the Reckoner share. */
import { baseUnitsPer, ownUnit, unitSuffix } from '../base/kinds.ts';
import { nearestName } from '../base/nearest.ts';
import {
  parseQuantity,
  showNumber,
  showQuantity,
  writeQuantity,
  type Shown,
  type UnitSystem,
} from '../base/quantity.ts';
import { parseRational, printRational, type Parsed, type Rational } from '../base/rational.ts';
import { inputsOf, resultsOf, type AnyLaw, type InputField, type LawValue } from './law.ts';

export interface ReckonProblem {
  /** The input concerned, or the law's id. */
  readonly where: string;
  readonly what: string;
}

export interface Reckoned {
  readonly given: Readonly<Record<string, LawValue>>;
  /** Inputs the person left to their default. */
  readonly defaulted: readonly string[];
  readonly results: readonly {
    readonly name: string;
    readonly title: string;
    readonly value: LawValue;
    readonly shown: Shown;
  }[];
}

function readPlain(text: string, as: InputField['as']): Parsed<number> {
  const body = text.trim();
  const percent = /^(-?[\d.]+)\s*%$/.exec(body);
  const value = percent ? Number(percent[1]) / 100 : Number(body);
  if (body === '' || !Number.isFinite(value)) return { ok: false, why: `"${body}" is not a number` };
  if (as === 'count' && !Number.isSafeInteger(value)) return { ok: false, why: `"${body}" is not a whole number` };
  return { ok: true, value };
}

const FLAGS: ReadonlyMap<string, boolean> = new Map([
  ['yes', true],
  ['true', true],
  ['no', false],
  ['false', false],
]);

/** Reads one input of a law from text, in the unit of the input's name. */
export function readInput(field: InputField, text: string): Parsed<LawValue> {
  if (field.kind) {
    const read = parseQuantity(field.kind, text);
    return read.ok ? { ok: true, value: read.value / baseUnitsPer(unitSuffix(field.name)) } : read;
  }
  if (field.as === 'rational') return parseRational(text);
  if (field.as === 'timecode') return { ok: true, value: text.trim() };
  if (field.as === 'flag') {
    const flag = FLAGS.get(text.trim().toLowerCase());
    return flag === undefined ? { ok: false, why: 'write yes or no' } : { ok: true, value: flag };
  }
  if (field.choices) {
    if (Object.hasOwn(field.choices, text)) return { ok: true, value: text };
    const near = nearestName(text, Object.keys(field.choices));
    return {
      ok: false,
      why: `"${text}" is none of ${Object.keys(field.choices).join(', ')}${near ? `; did you mean ${near}?` : ''}`,
    };
  }
  return readPlain(text, field.as);
}

const isRational = (value: LawValue): value is Rational => typeof value === 'object';

/** A law's input or result for eyes. */
export function showLawValue(value: LawValue, kind: InputField['kind'], system: UnitSystem = 'metric'): Shown {
  if (isRational(value)) return { number: printRational(value), unit: '' };
  if (typeof value === 'boolean') return { number: value ? 'yes' : 'no', unit: '' };
  if (typeof value === 'string') return { number: value, unit: '' };
  if (kind) return showQuantity(kind, value, { digits: 4, system });
  return { number: showNumber(value, 4), unit: '' };
}

/** One input or result of a law for eyes: its name says which unit the number is in. */
export function showField(
  { name, kind }: Pick<InputField, 'name' | 'kind'>,
  value: LawValue,
  system: UnitSystem = 'metric',
): Shown {
  if (value === Infinity) return { number: 'infinite', unit: '' };
  const own = ownUnit(unitSuffix(name));
  return own && typeof value === 'number'
    ? { number: showNumber(value, 4), unit: own.symbol }
    : showLawValue(value, kind, system);
}

/** The text that `readInput` reads back to this value. */
export function writeInput({ name, kind }: Pick<InputField, 'name' | 'kind'>, value: LawValue): string {
  if (isRational(value)) return printRational(value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number' && kind) return writeQuantity(kind, value * baseUnitsPer(unitSuffix(name)));
  return String(value);
}

/** Works a law out from numbers already read; RangeError from the law becomes a problem. */
export function computeLaw(
  of: AnyLaw,
  given: Readonly<Record<string, LawValue>>,
  system: UnitSystem = 'metric',
): Reckoned | ReckonProblem {
  const defaulted = inputsOf(of)
    .filter((field) => !(field.name in given))
    .map(({ name }) => name);
  try {
    const out: unknown = of.compute(given as never);
    const fields = resultsOf(of);
    const record = typeof out === 'number' ? { [fields[0]!.name]: out } : (out as Record<string, LawValue>);
    return {
      given,
      defaulted,
      results: fields.map(({ name, title, kind }) => ({
        name,
        title,
        value: record[name]!,
        shown: showField({ name, kind }, record[name]!, system),
      })),
    };
  } catch (error) {
    if (error instanceof RangeError) return { where: of.id, what: error.message };
    throw error;
  }
}

/** Works a law out from text; every input that cannot be read is a problem of its own. */
export function reckon(
  of: AnyLaw,
  texts: Readonly<Record<string, string>>,
  system: UnitSystem = 'metric',
): Reckoned | readonly ReckonProblem[] {
  const fields = inputsOf(of);
  const problems: ReckonProblem[] = [];
  const given: Record<string, LawValue> = {};
  for (const name of Object.keys(texts)) {
    if (fields.some((field) => field.name === name)) continue;
    const near = nearestName(
      name,
      fields.map((field) => field.name),
    );
    problems.push({
      where: name,
      what: `${of.id} takes no "${name}"${near ? `; did you mean ${near}?` : `; it takes ${fields.map((f) => f.name).join(', ')}`}`,
    });
  }
  for (const field of fields) {
    const text = texts[field.name];
    if (text === undefined) {
      if (field.default === undefined)
        problems.push({ where: field.name, what: `${field.name} (${field.title}) is needed` });
      continue;
    }
    const read = readInput(field, text);
    if (read.ok) given[field.name] = read.value;
    else problems.push({ where: field.name, what: read.why });
  }
  if (problems.length > 0) return problems;
  const worked = computeLaw(of, given, system);
  return 'where' in worked ? [worked] : worked;
}
