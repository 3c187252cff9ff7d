/** What the person at this browser calls themself, kept here and sent with every edit. */
import { useSyncExternalStore } from 'react';
import { plainName } from '../../api/name.ts';
import { openStorage } from './browser.ts';
import type { StorageLike } from './keep.ts';

const NAME = 'longsecond.name';
const ASKED = 'longsecond.name-asked';

export function readName(storage: Pick<StorageLike, 'getItem'>): string | undefined {
  return plainName(storage.getItem(NAME) ?? undefined);
}

/** Keeps what was typed as a name that the server takes; nothing typed takes the name away. */
export function writeName(storage: StorageLike, typed: string): void {
  const name = plainName(typed);
  try {
    if (name === undefined) storage.removeItem(NAME);
    else storage.setItem(NAME, name);
  } catch {
    // Storage is full: the name lasts as long as the page.
  }
}

export interface Person {
  readonly name: string | undefined;
  /** Whether they were asked, and said not now. */
  readonly wasAsked: boolean;
}

let current: Person | undefined;
const listeners = new Set<() => void>();

const read = (): Person => {
  const storage = openStorage();
  return { name: readName(storage), wasAsked: storage.getItem(ASKED) !== null };
};

export const personNow = (): Person => (current ??= read());

const change = (next: Person) => {
  current = next;
  for (const listener of [...listeners]) listener();
};

export function subscribePerson(changed: () => void): () => void {
  // Another window of the same browser may say the name too.
  const onStorage = ({ key }: StorageEvent) => {
    if (key === NAME || key === ASKED || key === null) change(read());
  };
  listeners.add(changed);
  window.addEventListener('storage', onStorage);
  return () => {
    listeners.delete(changed);
    window.removeEventListener('storage', onStorage);
  };
}

export function sayName(typed: string): void {
  writeName(openStorage(), typed);
  change({ ...personNow(), name: plainName(typed) });
}

/** They do not want to say it now: it is not asked again, and can be said from the menu of people. */
export function putNameOff(): void {
  try {
    openStorage().setItem(ASKED, 'yes');
  } catch {
    // Storage is full: it is asked again when the page is opened anew.
  }
  change({ ...personNow(), wasAsked: true });
}

export function usePerson(): Person {
  return useSyncExternalStore(subscribePerson, personNow);
}
