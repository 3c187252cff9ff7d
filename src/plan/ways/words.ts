/** Quantities in the titles of ways, as a crew would say them. */
import type { KindName } from '../../base/kinds.ts';
import { showQuantity } from '../../base/quantity.ts';

export function say(kind: KindName, value: number, digits = 2): string {
  const { number, unit } = showQuantity(kind, value, { digits });
  return unit === '' || unit === '°' ? `${number}${unit}` : `${number} ${unit}`;
}
