/** Which units this person is shown, kept in this browser; where nothing was chosen, those that the shoot says. */
import { useSyncExternalStore } from 'react';
import type { UnitSystem } from '../../base/quantity.ts';
import { openStorage } from './browser.ts';
import type { StorageLike } from './keep.ts';

export const UNIT_CHOICES = ['shoot', 'metric', 'imperial'] as const;
export type UnitChoice = (typeof UNIT_CHOICES)[number];

const KEY = 'longsecond.units';

/** What is kept; anything that is no choice counts as none. */
export function readUnitChoice(storage: Pick<StorageLike, 'getItem'>): UnitChoice {
  const kept = storage.getItem(KEY);
  return kept === 'metric' || kept === 'imperial' ? kept : 'shoot';
}

export function writeUnitChoice(storage: StorageLike, choice: UnitChoice): void {
  try {
    if (choice === 'shoot') storage.removeItem(KEY);
    else storage.setItem(KEY, choice);
  } catch {
    // Storage is full: the choice lasts as long as the page.
  }
}

/** The units to show for somebody who chose this, in a shoot that says that. */
export function unitsFor(choice: UnitChoice, shootUnits: UnitSystem | undefined): UnitSystem {
  return choice === 'shoot' ? (shootUnits ?? 'metric') : choice;
}

let current: UnitChoice | undefined;
const listeners = new Set<() => void>();

const now = (): UnitChoice => (current ??= readUnitChoice(openStorage()));

function subscribe(changed: () => void): () => void {
  // Another window of the same browser may choose too.
  const onStorage = ({ key }: StorageEvent) => {
    if (key !== KEY && key !== null) return;
    current = undefined;
    changed();
  };
  listeners.add(changed);
  window.addEventListener('storage', onStorage);
  return () => {
    listeners.delete(changed);
    window.removeEventListener('storage', onStorage);
  };
}

/** Chooses for everything this person is shown, here and in other windows of this browser. */
export function chooseUnits(choice: UnitChoice): void {
  current = choice;
  writeUnitChoice(openStorage(), choice);
  for (const listener of [...listeners]) listener();
}

export function useUnitChoice(): UnitChoice {
  return useSyncExternalStore(subscribe, now);
}

/** The units to show to this person, in a shoot that says these or none. */
export function useUnits(shootUnits: UnitSystem | undefined): UnitSystem {
  return unitsFor(useUnitChoice(), shootUnits);
}
