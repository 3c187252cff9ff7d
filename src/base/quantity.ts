/** Quantities as people write them, read to plain numbers and printed back. */
import { KINDS, type Kind, type KindName, type Unit } from './kinds.ts';
import { nearestName } from './nearest.ts';
import { isRoundedRate, parseRational, printRational, rational, type Parsed } from './rational.ts';
import { parseStopNumber, printStopNumber } from './stop.ts';

const VULGAR: Readonly<Record<string, number>> = {
  '¼': 1 / 4,
  '⅓': 1 / 3,
  '½': 1 / 2,
  '⅔': 2 / 3,
  '¾': 3 / 4,
  '⅛': 1 / 8,
};
/** Whole and fraction, as a tape is read: 5 1/2, 5½, ½. */
const MIXED = /^(?:(\d{1,6})\s+(\d{1,2})\/(\d{1,2})|(\d{1,6})?\s*([¼⅓½⅔¾⅛]))(?![\d./¼⅓½⅔¾⅛])/;
const FRACTION = /^(\d+(?:\.\d+)?)\s*\/\s*(\d+(?:\.\d+)?)(?![\d./¼⅓½⅔¾⅛])/;
/** Spaces only between thousands, so that "1 2 s" is not twelve seconds. */
const DECIMAL = /^(?:(?:\d{1,3}(?:[ \u00a0\u202f]\d{3})+(?!\d)|\d+)(?:\.\d+)?|\.\d+)(?:e[+-]?\d{1,3})?/i;

const no = (why: string): { readonly ok: false; readonly why: string } => ({ ok: false, why });

/** The number a text begins with, sign apart, and how many characters it took. */
function sizeAtStart(text: string): { readonly size: number; readonly length: number } | undefined {
  const mixed = MIXED.exec(text);
  if (mixed) {
    const [all, whole, above, below, before = '0', vulgar] = mixed;
    if (vulgar !== undefined) return { size: Number(before) + VULGAR[vulgar]!, length: all.length };
    const part = Number(above) / Number(below);
    return part < 1 ? { size: Number(whole) + part, length: all.length } : undefined;
  }
  const fraction = FRACTION.exec(text);
  if (fraction) return { size: Number(fraction[1]) / Number(fraction[2]), length: fraction[0].length };
  const decimal = DECIMAL.exec(text)?.[0];
  return decimal === undefined ? undefined : { size: Number(decimal.replace(/\s/g, '')), length: decimal.length };
}

/** Splits "1/2000 s" into 0.0005 and "s". */
function splitNumber(text: string): { readonly value: number; readonly rest: string } | undefined {
  const sign = /^[+\-−]?/.exec(text)![0];
  const found = sizeAtStart(text.slice(sign.length));
  if (!found) return undefined;
  return {
    value: sign === '-' || sign === '−' ? -found.size : found.size,
    rest: text.slice(sign.length + found.length).trim(),
  };
}

const spellings = (unit: Unit): readonly string[] => [unit.symbol, ...(unit.also ?? [])];

/**
 * Whether a spelling that differs only in case would mean something else: MW is no mW, and a b is a bit where a B is a
 * byte.
 */
function caseMatters(kind: Kind, typed: string, spelling: string): boolean {
  if (typed[0] !== spelling[0] && /^m/i.test(spelling) && unitNamed(kind, typed.slice(1))) return true;
  const isData = kind.unit.startsWith('B') && !/byte|bit/i.test(spelling);
  return isData && [...spelling].some((letter, i) => /b/i.test(letter) && typed[i] !== letter);
}

function unitNamed(kind: Kind, typed: string): Unit | undefined {
  const exact = kind.units.find((unit) => spellings(unit).includes(typed));
  if (exact) return exact;
  const loose = kind.units.flatMap((unit) =>
    spellings(unit)
      .filter((spelling) => spelling.toLowerCase() === typed.toLowerCase())
      .map((spelling) => ({ unit, spelling })),
  );
  const unit = loose[0]?.unit;
  if (unit === undefined || loose.some((other) => other.unit !== unit)) return undefined;
  return loose.some(({ spelling }) => !caseMatters(kind, typed, spelling)) ? unit : undefined;
}

export function unitSymbols(kindName: KindName): readonly string[] {
  return KINDS[kindName].units.map(({ symbol }) => symbol);
}

function unitProblem(kindName: KindName, symbol: string): string {
  const kind: Kind = KINDS[kindName];
  const fits = unitSymbols(kindName).join(', ');
  if (symbol === '') return `${kind.name} needs a unit: ${fits}; for example ${kind.example}`;
  const other = (Object.keys(KINDS) as KindName[]).find((name) => name !== kindName && unitNamed(KINDS[name], symbol));
  const near = nearestName(symbol, unitSymbols(kindName));
  if (other) return `"${symbol}" measures ${KINDS[other].name}, but this is ${kind.name}: ${fits}`;
  return `"${symbol}" is no unit of ${kind.name}: ${fits}${near === undefined ? '' : `; did you mean ${near}?`}`;
}

/** 5'6", 5 ft 6½ in: feet and inches as one length. */
function feetAndInches(text: string): number | undefined {
  const match = /^(\d{1,6})\s*(?:'|′|ft|foot|feet)\s*([\d.].*?|[¼⅓½⅔¾⅛])\s*(?:"|″|''|in|inch|inches)$/.exec(text);
  const inches = match && splitNumber(match[2]!);
  if (!inches || inches.rest !== '' || inches.value >= 12) return undefined;
  return Number(match[1]) * 0.3048 + inches.value * 0.0254;
}

/**
 * Reads a written quantity to its kind's unit in code. Decimal points only; a fraction such as 1/2000, vulgar fractions
 * and spaces between thousands are read. The reason of a refusal names the units that would fit.
 */
export function parseQuantity(kindName: KindName, text: string): Parsed<number> {
  const kind: Kind = KINDS[kindName];
  const body = text.trim();
  if (body.length > 60) return no(`${kind.name} is written like ${kind.example}`);
  if (kindName === 'tStop') return parseStopNumber(body.replace(/^T\s*\/?\s*/i, ''));
  if (kindName === 'fStop') return parseStopNumber(body.replace(/^f\s*\/?\s*/i, ''));
  if (kindName === 'length') {
    const feet = feetAndInches(body);
    if (feet !== undefined) return { ok: true, value: feet };
  }
  if (/^[+\-−]?\d{1,3},\d/.test(body))
    return no(`write the decimal point as ".", and no commas; for example ${kind.example}`);
  if (kindName === 'rate') {
    const rate = parseRational(body);
    if (rate.ok) return { ok: true, value: rate.value.num / rate.value.den };
    if (isRoundedRate(body) || !/^[.\d]/.test(body)) return rate;
  }
  const split = splitNumber(body);
  if (!split || !Number.isFinite(split.value))
    return no(`"${body}" is not ${kind.name}; write it like ${kind.example}`);
  if (kind.units.length === 0)
    return split.rest === '' ? { ok: true, value: split.value } : no(`"${split.rest}" was not expected`);
  const unit = unitNamed(kind, split.rest);
  if (!unit) return no(unitProblem(kindName, split.rest));
  return { ok: true, value: split.value * unit.per + (unit.offset ?? 0) };
}

/** Digits enough to read the same number back, and no more. */
const plain = (value: number): string => String(Number(value.toPrecision(15)));

function unitToShow(kind: Kind, value: number, system: UnitSystem): Unit {
  const symbols = kind.show[system];
  const units = symbols.map((symbol) => kind.units.find((unit) => unit.symbol === symbol)!);
  const size = Math.abs(value);
  let best = units[0]!;
  for (const unit of units) if (size >= (kind.from?.[unit.symbol] ?? unit.per * 0.9995)) best = unit;
  return size === 0 ? (units.find(({ per }) => per === 1) ?? best) : best;
}

/**
 * The written form of a value, read back by `parseQuantity` to the same number (to 15 digits): "1/2000 s", "T5.6⅓", "41 klx".
 */
export function writeQuantity(kindName: KindName, value: number): string {
  const kind: Kind = KINDS[kindName];
  if (kindName === 'tStop') return `T${printStopNumber(value, { exact: true })}`;
  if (kindName === 'fStop') return `f/${printStopNumber(value, { exact: true })}`;
  if (kindName === 'rate') return writeRate(value);
  if (kind.units.length === 0) return plain(value);
  if (kindName === 'time' && value > 0 && value < 0.5) {
    const over = Math.round(1 / value);
    if (over <= FINEST_FRACTION && Math.abs(over * value - 1) < 1e-13) return `1/${over} s`;
  }
  const unit = unitToShow(kind, value, 'metric');
  const text = plain((value - (unit.offset ?? 0)) / unit.per);
  return unit.symbol === '°' ? `${text}°` : `${text} ${unit.symbol}`;
}

/** Beyond a millionth nobody says "one over". */
const FINEST_FRACTION = 1e6;

function writeRate(value: number): string {
  for (const den of [1, 2, 4, 5, 8, 10, 20, 25, 50, 100, 1000, 1001]) {
    const num = value * den;
    const whole = Math.round(num);
    if (Math.abs(num - whole) <= 1e-13 * num && whole < 1e9) return `${printRational(rational(whole, den))} fps`;
  }
  return `${plain(value)} fps`;
}

export type UnitSystem = 'metric' | 'imperial';

export interface Shown {
  readonly number: string;
  /** Empty for stops of aperture, whose number carries its letter. */
  readonly unit: string;
}

/** "2.9 px", "15°", "800": a number with its unit as one text. */
export function sayShown({ number, unit }: Shown): string {
  return unit === '' || unit === '°' ? `${number}${unit}` : `${number} ${unit}`;
}

/** A number for eyes: `digits` significant, an exponent only for the very large and small, a minus sign as wide as plus. */
export function showNumber(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return 'unknown';
  const size = Math.abs(value);
  if (size >= 10 ** (digits + 3) || (size > 0 && size < 1e-6))
    return value
      .toExponential(digits - 1)
      .replace('e+', 'e')
      .replaceAll('-', '−');
  const places = size === 0 ? 0 : Math.max(0, digits - 1 - Math.floor(Math.log10(size)));
  const fixed = value.toFixed(Math.min(places, 12));
  const trimmed = fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
  return trimmed === '-0' ? '0' : trimmed.replace('-', '−');
}

/** A value for eyes, in the unit a person of this unit system would say it in. */
export function showQuantity(
  kindName: KindName,
  value: number,
  { digits = 3, system = 'metric' }: { readonly digits?: number; readonly system?: UnitSystem } = {},
): Shown {
  const kind: Kind = KINDS[kindName];
  if (!Number.isFinite(value)) return { number: 'unknown', unit: '' };
  if (kindName === 'tStop') return { number: `T${printStopNumber(value)}`, unit: '' };
  if (kindName === 'fStop') return { number: `f/${printStopNumber(value)}`, unit: '' };
  if (kind.units.length === 0) return { number: showNumber(value, digits), unit: '' };
  if (kindName === 'stops')
    return {
      number: value
        .toFixed(1)
        .replace(/^-0\.0$/, '0.0')
        .replace('-', '−'),
      unit: 'stops',
    };
  if (kindName === 'rate' || kindName === 'pixels')
    return { number: showNumber(value, Math.max(digits, 4)), unit: kind.units[0]!.symbol };
  const unit = unitToShow(kind, value, system);
  return { number: showNumber((value - (unit.offset ?? 0)) / unit.per, digits), unit: unit.symbol };
}

/** An exposure time for eyes: "1/9100 s" below a quarter second, as cameras and crews say it. */
export function showShutter(exposureTime_s: number): Shown {
  if (!(exposureTime_s > 0 && exposureTime_s < 0.25)) return showQuantity('time', exposureTime_s);
  const over = 1 / exposureTime_s;
  return { number: `1/${over < 100 ? showNumber(over, 3) : String(Math.round(over))}`, unit: 's' };
}

/** "+0.4", "−1.3", "0.0": a difference that always shows its sign; nothing rounds to a signed zero. */
export function showSigned(value: number, places = 1): string {
  if (!Number.isFinite(value)) return value > 0 ? '+∞' : '−∞';
  const text = Math.abs(value).toFixed(places);
  if (Number(text) === 0) return text;
  return `${value < 0 ? '−' : '+'}${text}`;
}
