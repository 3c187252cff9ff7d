/** What the state needs of a browser: a place to keep things, names that nobody else has, and time. */
import { pageStorage, type StorageLike } from './keep.ts';

/** Storage may be shut, by the person or by the way the page is shown; then things last as long as the page. */
export function openStorage(): StorageLike {
  try {
    const { localStorage } = window;
    localStorage.getItem('longsecond');
    return localStorage;
  } catch {
    return pageStorage();
  }
}

/** 24 letters and digits that nobody else has; needs no secure context. */
export function makeId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

const CLIENT = 'longsecond.client';

/** The name this browser goes by: undo takes back what was done under it, in this window or an earlier one. */
export function clientName(storage: StorageLike): string {
  const known = storage.getItem(CLIENT);
  if (known !== null && /^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/.test(known)) return known;
  const name = `browser-${makeId().slice(0, 8)}`;
  try {
    storage.setItem(CLIENT, name);
  } catch {
    // Storage is full: the name lasts as long as the page.
  }
  return name;
}

/** Runs something later; the function returned takes that back. */
export function after(wait_ms: number, run: () => void): () => void {
  const timer = setTimeout(run, wait_ms);
  return () => clearTimeout(timer);
}

/** Whether the device asks for less motion. */
export const isMotionReduced = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;
