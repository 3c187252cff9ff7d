/** Single written values read by their shape: quantities, numbers, rates, words. A refusal says what was expected. */
import { baseUnitsPer, KINDS, unitSuffix, type KindName } from '../base/kinds.ts';
import { nearestName } from '../base/nearest.ts';
import { parseQuantity, writeQuantity } from '../base/quantity.ts';
import { parseRational, ratioOf } from '../base/rational.ts';
import type { ValueShape } from './fieldAt.ts';
import type { ChoiceShape, NumberShape, QuantityShape, Shutter } from './shape.ts';
import { isList, isRecord, type Written } from './written.ts';

export interface Refusal {
  readonly code: string;
  readonly what: string;
  readonly near?: string;
}

export type ValueReading =
  { readonly ok: true; readonly value: unknown; readonly spread?: number } | ({ readonly ok: false } & Refusal);

const refuse = (code: string, what: string, near?: string): ValueReading => ({
  ok: false,
  code,
  what,
  ...(near === undefined ? {} : { near }),
});

/** What was found, short enough for a sentence. */
export function shown(written: Written | undefined): string {
  if (written === null || written === undefined) return 'nothing';
  if (isList(written)) return `a list of ${written.length}`;
  if (isRecord(written)) return 'a map of keys';
  const text = typeof written === 'string' ? JSON.stringify(written) : String(written);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

const wrongType = (written: Written, wanted: string): ValueReading =>
  refuse('value.wrong-type', `Found ${shown(written)}, expected ${wanted}`);

/** A permanent id: a letter, then letters, digits and hyphens. */
export const ID_PATTERN = '^[A-Za-z][A-Za-z0-9-]*$';
const ID = new RegExp(ID_PATTERN);
/** Names that every object answers to, and that would be found where nothing is written. */
export const RESERVED_IDS: readonly string[] = Object.getOwnPropertyNames(Object.prototype).filter((n) => ID.test(n));

export function isId(text: string): boolean {
  return ID.test(text) && !RESERVED_IDS.includes(text);
}

/** The id nearest to what was typed, or undefined when nothing of it can stand in an id. */
export function nearestId(text: string): string | undefined {
  const near = text
    .slice(0, 80)
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^[^A-Za-z]+|-+$/g, '');
  return near !== text && isId(near) ? near : undefined;
}

/** Kinds whose bare number is already whole: stops of aperture and money have no unit, and 25 is a rate. */
export function mayBeBare(kind: KindName): boolean {
  return kind === 'rate' || KINDS[kind].units.length === 0;
}

/** Units in which a read value is counted, in base units of its kind: 0.001 for `focalLength_mm`. */
export function unitsPerRead(readAs: string): number {
  return baseUnitsPer(unitSuffix(readAs));
}

/** A value of its kind in the unit of its read key; rounded to 15 digits where that unit carries a prefix. */
function inReadUnit(value: number, readAs: string): number {
  const per = unitsPerRead(readAs);
  return per === 1 ? value : Number((value / per).toPrecision(15));
}

function quantityRefusal(kind: KindName, text: string): ValueReading {
  const parsed = parseQuantity(kind, text);
  if (parsed.ok) return { ok: true, value: parsed.value };
  const isBare = /^[+\-−]?[\d.\s]+(?:e[+-]?\d+)?$/i.test(text) && KINDS[kind].units.length > 0;
  return refuse(isBare ? 'unit.missing' : 'quantity.unreadable', `Found ${shown(text)}: ${parsed.why}`);
}

function outOfBounds(of: QuantityShape, value: number, text: string): ValueReading | undefined {
  const { kind, least, above, most } = of;
  if (!Number.isFinite(value)) return refuse('value.not-finite', `Found ${text}, expected a finite number`);
  if (above && value <= least) return refuse('value.too-low', `Found ${text}, expected more than zero`);
  if (value < least) return refuse('value.too-low', `Found ${text}, expected at least ${writeQuantity(kind, least)}`);
  if (value > most)
    return refuse('value.too-high', `Found ${text}, expected at most ${writeQuantity(kind, most)}; is the unit right?`);
  return undefined;
}

const SPREAD = /\s*(?:±|\+\s*\/\s*[-−])\s*/;

/** The value and the spread of `1.5 m/s ± 0.2 m/s`; the unit may stand once, at the end. */
function splitSpread(kind: KindName, text: string): { readonly value: string; readonly spread?: string } {
  const [value = '', ...spreads] = text.split(SPREAD);
  if (spreads.length === 0) return { value };
  const spread = spreads.join('±');
  const isBare = /^[+\-−]?[\d.\s]+$/.test(value) && KINDS[kind].units.length > 0;
  const unit = isBare ? /[\p{L}°'"′″].*$/u.exec(spread)?.[0] : undefined;
  return { value: unit === undefined ? value : `${value} ${unit}`, spread };
}

const spreadMalformed = (text: string, why: string): ValueReading =>
  refuse('spread.malformed', `Found ${shown(text)}: ${why}`);

function readSpread(of: QuantityShape, value: number, spread: string, text: string): ValueReading {
  const percent = /^(\d+(?:\.\d+)?|\.\d+)\s*%$/.exec(spread);
  const parsed = percent
    ? ({ ok: true, value: (Math.abs(value) * Number(percent[1])) / 100 } as const)
    : parseQuantity(of.kind, spread);
  if (!parsed.ok) {
    const example = `${KINDS[of.kind].example} ± 10 %`;
    return spreadMalformed(text, `after ± stands a spread in the same unit or in percent, as in ${example}`);
  }
  if (!Number.isFinite(parsed.value) || parsed.value < 0 || parsed.value > of.most)
    return spreadMalformed(text, 'the spread must be zero or more, and finite');
  if (of.above && parsed.value >= value) return spreadMalformed(text, 'the spread reaches down to zero');
  return { ok: true, value: parsed.value };
}

function readQuantity(of: QuantityShape, readAs: string, written: Written): ValueReading {
  const { kind } = of;
  if (typeof written !== 'string' && typeof written !== 'number')
    return wrongType(written, `${KINDS[kind].name} such as ${KINDS[kind].example}`);
  if (typeof written === 'number' && !Number.isFinite(written))
    return refuse('value.not-finite', `Found ${written}, expected ${KINDS[kind].name} such as ${KINDS[kind].example}`);
  const text = String(written);
  const parts = splitSpread(kind, text);
  if (parts.spread !== undefined && !of.spread)
    return refuse('spread.unexpected', `Found ${shown(text)}: this value takes no spread`);
  const value = quantityRefusal(kind, parts.value);
  if (!value.ok) return value;
  const amount = value.value as number;
  const beyond = outOfBounds(of, amount, shown(written));
  if (beyond) return beyond;
  if (parts.spread === undefined) return { ok: true, value: inReadUnit(amount, readAs) };
  const spread = readSpread(of, amount, parts.spread, text);
  if (!spread.ok) return spread;
  return { ok: true, value: inReadUnit(amount, readAs), spread: inReadUnit(spread.value as number, readAs) };
}

const NUMBER_EXAMPLES: Readonly<Record<NumberShape['as'], string>> = {
  ratio: 'a number such as 1.5, 1/40 or 25 %',
  fraction: 'a share such as 0.25 or 25 %',
  count: 'a whole number such as 12',
  isoSpeed: 'an exposure index such as 800',
};

function plainNumber(text: string, as: NumberShape['as']): number | undefined {
  const body = as === 'isoSpeed' ? text.trim().replace(/^(?:EI|ISO)\s*/i, '') : text.trim();
  const match = /^([+-]?(?:\d{1,15}(?:\.\d{0,15})?|\.\d{1,15})(?:e[+-]?\d{1,3})?)(?:\s*\/\s*(\d{1,15}(?:\.\d{1,15})?)|\s*(%))?$/i.exec(body); // prettier-ignore
  if (!match) return undefined;
  const [, number, below, percent] = match;
  return Number(number) / (percent === undefined ? Number(below ?? 1) : 100);
}

function readNumber({ as, least, most }: NumberShape, written: Written): ValueReading {
  const wanted = NUMBER_EXAMPLES[as];
  if (typeof written !== 'number' && typeof written !== 'string') return wrongType(written, wanted);
  const value = typeof written === 'number' ? written : plainNumber(written, as);
  if (value === undefined) return refuse('number.unreadable', `Found ${shown(written)}, expected ${wanted}`);
  if (!Number.isFinite(value)) return refuse('value.not-finite', `Found ${String(written)}, expected ${wanted}`);
  if (as === 'count' && !Number.isSafeInteger(value))
    return refuse('number.not-whole', `Found ${shown(written)}, expected a whole number`);
  if (value < least)
    return refuse(
      'value.too-low',
      `Found ${shown(written)}, expected ${least < 1e-6 ? 'more than zero' : `at least ${least}`}`,
    );
  if (value > most) {
    const percent = as === 'fraction' && value <= 100 ? `; for a share write ${value} %` : '';
    return refuse('value.too-high', `Found ${shown(written)}, expected at most ${most}${percent}`);
  }
  return { ok: true, value };
}

const FASTEST_fps = 1e7;

function readRate(written: Written): ValueReading {
  if (typeof written !== 'number' && typeof written !== 'string')
    return wrongType(written, 'a rate such as 25 or 24000/1001');
  const parsed = parseRational(String(written).trim());
  if (!parsed.ok) return refuse('rate.unreadable', `Found ${shown(written)}: ${parsed.why}`);
  if (parsed.value.num === 0) return refuse('value.too-low', `Found ${shown(written)}, expected a rate above zero`);
  if (ratioOf(parsed.value) > FASTEST_fps)
    return refuse('value.too-high', `Found ${shown(written)}, expected at most ${FASTEST_fps} fps`);
  return { ok: true, value: parsed.value };
}

const LONGEST_EXPOSURE_s = 3600;
const SHUTTER_EXAMPLE = 'a time such as 1/2000 s or an angle such as 172.8°';

function readShutter(written: Written): ValueReading {
  if (typeof written !== 'string') {
    if (typeof written !== 'number') return wrongType(written, SHUTTER_EXAMPLE);
    return refuse('unit.missing', `Found ${written}, expected ${SHUTTER_EXAMPLE}, with its unit`);
  }
  const isAngle = /(?:°|deg\w*|rad)\s*$/i.test(written);
  const parsed = parseQuantity(isAngle ? 'angle' : 'time', written);
  if (!parsed.ok) {
    const isBare = /^[\d\s./]+$/.test(written);
    return refuse(
      isBare ? 'unit.missing' : 'shutter.unreadable',
      `Found ${shown(written)}, expected ${SHUTTER_EXAMPLE}`,
    );
  }
  const { value } = parsed;
  if (!(value > 0)) return refuse('value.too-low', `Found ${shown(written)}, expected a shutter that opens`);
  if (!(value <= (isAngle ? 360 : LONGEST_EXPOSURE_s)))
    return refuse('value.too-high', `Found ${shown(written)}, expected at most ${isAngle ? '360°' : '1 h'}`);
  const shutter: Shutter = isAngle ? { shutterAngle_deg: value } : { exposureTime_s: value };
  return { ok: true, value: shutter };
}

export const SIZE_PATTERN = '^\\s*(\\d{1,7})\\s*[x×X]\\s*(\\d{1,7})\\s*$';
const SIZE = new RegExp(SIZE_PATTERN);
const MOST_PIXELS = 1e6;

function readSize(written: Written): ValueReading {
  const wanted = 'pixels across and down such as 4096 x 2304';
  if (typeof written !== 'string') return wrongType(written, wanted);
  const match = SIZE.exec(written);
  if (!match) return refuse('size.unreadable', `Found ${shown(written)}, expected ${wanted}`);
  const [widthCount, heightCount] = [Number(match[1]), Number(match[2])];
  if (widthCount < 1 || heightCount < 1)
    return refuse('value.too-low', `Found ${shown(written)}, expected at least 1 x 1`);
  if (widthCount > MOST_PIXELS || heightCount > MOST_PIXELS)
    return refuse('value.too-high', `Found ${shown(written)}, expected at most ${MOST_PIXELS} each way`);
  return { ok: true, value: { widthCount, heightCount } };
}

const FARTHEST_m = 1000;

function readPosition(written: Written): ValueReading {
  const wanted = 'three lengths, right, away and up, such as 0.8 m, -1.2 m, 1.5 m';
  if (typeof written !== 'string') return wrongType(written, wanted);
  const parts = written.split(',').map((part) => part.trim());
  if (parts.length !== 3) return refuse('position.unreadable', `Found ${shown(written)}, expected ${wanted}`);
  const read = parts.map((part) => parseQuantity('length', part));
  const bad = read.findIndex(({ ok }) => !ok);
  if (bad >= 0) {
    // Nought is nought in any unit.
    if (parts.every((part, i) => read[i]!.ok || /^[+\-−]?0+(\.0*)?$/.test(part)))
      return readPosition(parts.map((part, i) => (read[i]!.ok ? part : '0 m')).join(', '));
    return quantityRefusal('length', parts[bad]!);
  }
  const [right_m, away_m, up_m] = read.map((each) => (each.ok ? each.value : NaN)) as [number, number, number];
  const far = [right_m, away_m, up_m].findIndex((value) => !(Math.abs(value) <= FARTHEST_m));
  if (far >= 0)
    return refuse('value.too-high', `Found ${shown(parts[far])}, expected at most ${FARTHEST_m} m either way`);
  return { ok: true, value: { right_m, away_m, up_m } };
}

export const CLOCK_PATTERN = '^(0?\\d|[12]\\d|3[0-5]):([0-5]\\d)$';
const CLOCK = new RegExp(CLOCK_PATTERN);

function readClock(written: Written): ValueReading {
  const wanted = 'a time of day from 00:00 to 35:59, such as 07:30';
  if (typeof written !== 'string') return wrongType(written, wanted);
  const match = CLOCK.exec(written.trim());
  if (!match) return refuse('clock.malformed', `Found ${shown(written)}, expected ${wanted}`);
  return { ok: true, value: Number(match[1]) * 3600 + Number(match[2]) * 60 };
}

function readChoice({ words }: ChoiceShape, written: Written): ValueReading {
  const names = Object.keys(words);
  if (typeof written !== 'string') return wrongType(written, `one of ${names.join(', ')}`);
  if (Object.hasOwn(words, written)) return { ok: true, value: written };
  return refuse(
    'choice.unknown',
    `Found ${shown(written)}, expected one of ${names.join(', ')}`,
    nearestName(written, names),
  );
}

const FLAGS: ReadonlyMap<string, boolean> = new Map([
  ['yes', true],
  ['true', true],
  ['no', false],
  ['false', false],
]);

function readFlag(written: Written): ValueReading {
  if (typeof written === 'boolean') return { ok: true, value: written };
  const value = typeof written === 'string' ? FLAGS.get(written.toLowerCase()) : undefined;
  return value === undefined ? wrongType(written, 'yes or no') : { ok: true, value };
}

function readText(longest: number, written: Written): ValueReading {
  if (typeof written === 'string') {
    if (written.length <= longest) return { ok: true, value: written };
    return refuse('text.too-long', `Found ${written.length} characters, expected at most ${longest}`);
  }
  const isWord = typeof written === 'number' || typeof written === 'boolean';
  return wrongType(written, isWord ? `text; put quotes round it: "${String(written)}"` : 'text');
}

function readReference(to: string, written: Written): ValueReading {
  if (typeof written !== 'string') return wrongType(written, `an id of ${to}`);
  if (isId(written)) return { ok: true, value: written };
  return refuse(
    'id.malformed',
    `Found ${shown(written)}, expected an id of ${to}: a letter, then letters, digits and hyphens`,
    nearestId(written),
  );
}

/** Reads one value; `readAs` is the key it will stand under, whose unit the value is then in. Never throws. */
export function readValue(of: ValueShape, readAs: string, written: Written): ValueReading {
  switch (of.shape) {
    case 'quantity':
      return readQuantity(of, readAs, written);
    case 'number':
      return readNumber(of, written);
    case 'rate':
      return readRate(written);
    case 'shutter':
      return readShutter(written);
    case 'size':
      return readSize(written);
    case 'position':
      return readPosition(written);
    case 'clock':
      return readClock(written);
    case 'choice':
      return readChoice(of, written);
    case 'flag':
      return readFlag(written);
    case 'text':
      return readText(of.longest, written);
    case 'figure':
      return readText(of.longest, typeof written === 'number' ? String(written) : written);
    case 'reference':
      return readReference(of.to, written);
  }
}

/** Half of the third of a stop that separates neighbouring markings. */
const HALF_THIRD_STOP = 2 ** (1 / 12) - 1;
const VULGAR_PARTS: Readonly<Record<string, number>> = { '¼': 4, '¾': 4, '⅓': 3, '⅔': 3, '½': 2, '⅛': 8 };

interface LastDigit {
  /** Half a unit in it; of the value itself, or as a share of the value. */
  readonly half: number;
  readonly isShare: boolean;
  readonly rest: string;
}

const halfPlace = (digits: string): number => 0.5 * 10 ** -(digits.split('.')[1]?.length ?? 0);

function lastDigitOf(number: string): LastDigit | undefined {
  const parts = /^(?:\d+\s+\d+\/(\d+)|\d*\s*([¼⅓½⅔¾⅛]))/.exec(number);
  const below = parts && (parts[1] === undefined ? VULGAR_PARTS[parts[2]!]! : Number(parts[1]));
  if (below) return { half: 0.5 / below, isShare: false, rest: number.slice(parts[0].length) };
  const fraction = /^\d+(?:\.\d+)?\s*\/\s*(\d+(?:\.\d+)?)/.exec(number);
  if (fraction)
    return {
      half: halfPlace(fraction[1]!) / Number(fraction[1]),
      isShare: true,
      rest: number.slice(fraction[0].length),
    };
  const decimal = /^([\d\s]*\.?\d+)(?:e([+-]?\d+))?/i.exec(number);
  if (!decimal) return undefined;
  const half = halfPlace(decimal[1]!) * 10 ** Number(decimal[2] ?? 0);
  return { half, isShare: false, rest: number.slice(decimal[0].length) };
}

/**
 * Half a unit in the last written digit of a quantity, in its kind's unit: what a published figure may be off by.
 * `240 mm` → 0.0005, `1.50 m` → 0.005, `1/2000 s` → half a unit of the 2000, `5⅓ stops` → half a third, `24000/1001` →
 * 0. A spread after it is not looked at. Undefined for what cannot be read.
 */
export function halfLastDigit(kind: KindName, text: string): number | undefined {
  const body = splitSpread(kind, text).value.trim();
  const whole = parseQuantity(kind, body);
  if (!whole.ok) return undefined;
  if (kind === 'rate' && body.includes('/')) return 0;
  const isStop = kind === 'tStop' || kind === 'fStop';
  if (isStop && /[¼⅓½⅔¾]|\s\d\//.test(body)) return whole.value * HALF_THIRD_STOP;
  const inches = /\d\s*(?:'|′|ft|foot|feet)\s*(\S.*)$/.exec(body)?.[1];
  if (kind === 'length' && inches !== undefined) return halfLastDigit(kind, inches.replace(/(?:"|″|''|inch|inches)$/, ' in')); // prettier-ignore
  const digit = lastDigitOf(body.replace(isStop ? /^[Tf]\s*\/?\s*/i : /^[+\-−]/, ''));
  if (!digit) return undefined;
  return digit.isShare ? Math.abs(whole.value) * digit.half : digit.half * unitSize(kind, digit.rest.trim());
}

/** How many of its kind's units one of a written unit holds, scale offsets left out. */
function unitSize(kind: KindName, unit: string): number {
  if (KINDS[kind].units.length === 0 || unit === '') return 1;
  const [zero, one] = [parseQuantity(kind, `0 ${unit}`), parseQuantity(kind, `1 ${unit}`)];
  return zero.ok && one.ok ? one.value - zero.value : 1;
}
