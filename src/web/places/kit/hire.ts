/** What of the kit is to be hired, and what a day of it costs. */
import { showNumber } from '../../../base/quantity.ts';
import type { Shoot } from '../../../document/schema.ts';

export interface Hire {
  readonly pieceCount: number;
  readonly hiredCount: number;
  /** Prices of a day, of what is to be hired and has one. */
  readonly dayPrice: number;
  readonly withoutPriceCount: number;
}

interface Piece {
  readonly availability?: string;
  readonly dayPrice?: number;
}

export function hireOf(kit: Shoot['kit']): Hire {
  const sections = Object.values(kit).filter((section) => typeof section === 'object' && !Array.isArray(section));
  const pieces = sections.flatMap((section) => Object.values(section as Readonly<Record<string, Piece>>));
  const hired = pieces.filter(({ availability }) => availability === 'hire');
  const priced = hired.flatMap(({ dayPrice }) => (dayPrice === undefined ? [] : [dayPrice]));
  return {
    pieceCount: pieces.length,
    hiredCount: hired.length,
    dayPrice: priced.reduce((sum, price) => sum + price, 0),
    withoutPriceCount: hired.length - priced.length,
  };
}

/** Money is said to the whole unit unless it has parts. */
export function sayMoney(sum: number): string {
  return Number.isInteger(sum) ? showNumber(sum, 9) : sum.toFixed(2);
}
