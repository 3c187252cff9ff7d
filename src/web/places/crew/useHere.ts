import { useEffect } from 'react';
import { shootPresence } from '../../state/page.ts';
import { FIELD_SELECTOR, pathOfField } from './where.ts';

/** A server takes places of at most this many characters. */
const LONGEST_PLACE = 120;

const oneLine = (place: string) =>
  [...place.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ').trim()].slice(0, LONGEST_PLACE).join('');

/** The path of the field that the cursor is in, if it is in one. */
function focusedPath(): string | undefined {
  const field = document.activeElement?.closest(FIELD_SELECTOR);
  return field ? pathOfField(field.id) : undefined;
}

/** Tells others on this shoot where one is: the place, and within it the field that the cursor is in. */
export function useHere({ shootId, place, base }: { readonly shootId: string; readonly place: string; readonly base: string }): void {
  useEffect(() => {
    const desk = shootPresence(shootId);
    const tell = () => desk.here({ at: focusedPath() ?? base, place: oneLine(place) });
    // As one field is left the next has not the focus yet.
    const tellSoon = () => queueMicrotask(tell);
    tell();
    document.addEventListener('focusin', tell);
    document.addEventListener('focusout', tellSoon);
    return () => {
      document.removeEventListener('focusin', tell);
      document.removeEventListener('focusout', tellSoon);
    };
  }, [shootId, place, base]);
} // prettier-ignore
