/** Measured figures as people write them: value and spread in one unit, with no more digits than the spread leaves. */
import { KINDS, type Kind, type KindName } from '../../base/kinds.ts';
import { showQuantity } from '../../base/quantity.ts';

export interface Figured {
  readonly kind: KindName;
  /** Both in the base unit of the kind. */
  readonly value: number;
  /** How far off it may be: says how many digits mean anything. */
  readonly spread: number;
}

interface InUnit {
  readonly number: string;
  readonly spread: string;
  readonly unit: string;
}

const MOST_DECIMALS = 6;

function inUnit({ kind, value, spread }: Figured): InUnit {
  const { unit } = showQuantity(kind, value);
  const { units }: Kind = KINDS[kind];
  const per = units.find(({ symbol }) => symbol === unit)?.per ?? 1;
  // Two digits of the spread, and the value to the same place.
  const known = spread > 0 ? spread / per : Math.abs(value / per) / 100;
  const decimals = Math.min(MOST_DECIMALS, 1 - Math.floor(Math.log10(Math.max(known, 1e-12))));
  const plain = (of: number): string => {
    if (decimals >= 0) return (of / per).toFixed(decimals);
    return String(Math.round((of / per) * 10 ** decimals) * 10 ** -decimals);
  };
  return { number: plain(value), spread: plain(spread), unit: per === 1 && unit === '' ? (units[0]?.symbol ?? '') : unit };
} // prettier-ignore

/** "12.4 ms ± 0.3 ms", as a shoot takes it. */
export function withSpread(figure: Figured): string {
  const { number, spread, unit } = inUnit(figure);
  return `${number} ${unit} ± ${spread} ${unit}`;
}

/** "12.4 ms". */
export function withoutSpread(figure: Figured): string {
  const { number, unit } = inUnit(figure);
  return `${Number(number)} ${unit}`;
}
