/** The units a person chose last, kept in this browser. */
import type { UnitSystem } from '../../../base/quantity.ts';

const KEY = 'longsecond.units';

export function unitsKept(): UnitSystem | undefined {
  try {
    const kept = localStorage.getItem(KEY);
    return kept === 'metric' || kept === 'imperial' ? kept : undefined;
  } catch {
    return undefined;
  }
}

export function keepUnits(system: UnitSystem): void {
  try {
    localStorage.setItem(KEY, system);
  } catch {
    // Storage may be shut; the choice then lasts as long as the address says it.
  }
}
