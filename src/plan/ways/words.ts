/** Quantities in the titles of ways, as a crew would say them. */
import type { KindName } from '../../base/kinds.ts';
import { sayShown, showQuantity } from '../../base/quantity.ts';

export function say(kind: KindName, value: number, digits = 2): string {
  return sayShown(showQuantity(kind, value, { digits }));
}
