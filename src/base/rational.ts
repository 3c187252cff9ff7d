/** Exact ratios: frame rates stay 24000/1001 from the document to the timeline, never 23.976. */
import { requireCount } from './domain.ts';

export interface Rational {
  readonly num: number;
  readonly den: number;
}

function gcd(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}

/** num/den in lowest terms. Throws RangeError unless both are whole, num zero or above and den one or above. */
export function rational(num: number, den = 1): Rational {
  requireCount({ num });
  requireCount({ den }, 1);
  const divisor = gcd(num, den);
  return { num: num / divisor, den: den / divisor };
}

export const ratioOf = ({ num, den }: Rational): number => num / den;

/** a/b, exactly. Throws RangeError if b is zero or a product leaves the safe integers. */
export function dividedBy(a: Rational, b: Rational): Rational {
  return rational(a.num * b.den, a.den * b.num);
}

/** a·b, exactly. Throws RangeError if a product leaves the safe integers. */
export function times(a: Rational, b: Rational): Rational {
  return rational(a.num * b.num, a.den * b.den);
}

/** "24", "24000/1001": the form that `parseRational` reads back to the same ratio. */
export function printRational({ num, den }: Rational): string {
  return den === 1 ? String(num) : `${num}/${den}`;
}

/** Whole rates whose 1000/1001th is in use under a rounded name: 23.976 is a name, 24000/1001 the rate. */
const SLOWED = [24, 30, 48, 60, 72, 96, 120, 240];

const withoutUnit = (text: string): string =>
  text
    .trim()
    .replace(/\s*(fps|frames a second)$/i, '')
    .trim();

/** The exact ratio that a decimal is a rounded or cut-off name of, or undefined. */
function exactRateNamed(body: string): string | undefined {
  const decimals = /^\d{1,4}\.(\d{1,12}?)0*$/.exec(body)?.[1];
  if (decimals === undefined || decimals === '0') return undefined;
  const scale = 10 ** decimals.length;
  const named = Math.round(Number(body) * scale);
  const rate = SLOWED.find((whole) => {
    const exact = (whole * 1000 * scale) / 1001;
    return named === Math.round(exact) || named === Math.floor(exact);
  });
  return rate === undefined ? undefined : `${rate * 1000}/1001`;
}

/** Whether a text is a rounded name of a rate, such as 23.976, which stands for another exact ratio. */
export function isRoundedRate(text: string): boolean {
  return exactRateNamed(withoutUnit(text)) !== undefined;
}

export type Parsed<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };

/**
 * Reads "25", "24000/1001", "12.5", each optionally followed by "fps". Refuses a rounded label such as 23.976 and
 * names the exact ratio it stands for.
 */
export function parseRational(text: string): Parsed<Rational> {
  const body = withoutUnit(text);
  const exact = exactRateNamed(body);
  if (exact !== undefined) return { ok: false, why: `${body} is a rounded name; write ${exact}` };
  const match = /^(\d{1,15})(?:\.(\d{1,6})|\s*\/\s*(\d{1,9}))?$/.exec(body);
  if (!match) return { ok: false, why: 'a rate is written as 25, 12.5 or 24000/1001' };
  const [, whole = '0', decimals = '', below] = match;
  const den = below === undefined ? 10 ** decimals.length : Number(below);
  const num = below === undefined ? Number(whole + decimals) : Number(whole);
  if (den === 0 || !Number.isSafeInteger(num)) return { ok: false, why: `${body} is not a rate` };
  return { ok: true, value: rational(num, den) };
}
