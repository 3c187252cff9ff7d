/** What was done to clips and not sent yet, kept so that a closed or crashed page loses nothing. */
import type { FootageEvent } from '../../record/footage.ts';
import type { StorageLike } from './keep.ts';

export interface UnsentHappening {
  readonly eventId: string;
  readonly event: FootageEvent;
  /** By this device's clock, for showing until the server says its own. */
  readonly at: string;
  /** Of one browser, sent in the order of these. */
  readonly sequence: number;
}

export interface FootageKeep {
  readonly put: (shootId: string, unsent: UnsentHappening) => void;
  readonly drop: (shootId: string, eventId: string) => void;
  /** In the order in which they are to be sent. */
  readonly unsent: (shootId: string) => readonly UnsentHappening[];
}

const UNSENT = 'longsecond.footage';
const keyOf = (shootId: string, eventId: string) => `${UNSENT}/${shootId}/${eventId}`;

/** Another program, or an older version of this one, may have written under our keys: what does not fit is left alone. */
function readUnsent(text: string | null): UnsentHappening | undefined {
  try {
    const value = JSON.parse(text ?? 'null') as Partial<UnsentHappening> | null;
    const isWhole =
      typeof value?.eventId === 'string' &&
      typeof value.event === 'object' &&
      typeof value.event.clipId === 'string' &&
      typeof value.at === 'string' &&
      typeof value.sequence === 'number';
    return isWhole ? (value as UnsentHappening) : undefined;
  } catch {
    return undefined;
  }
}

/** Keeps in a browser's Storage. Where that is shut or full the page works on, and only a crash would lose something. */
export function keepFootageIn(storage: StorageLike): FootageKeep {
  return {
    put: (shootId, unsent) => {
      try {
        storage.setItem(keyOf(shootId, unsent.eventId), JSON.stringify(unsent));
      } catch {
        storage.removeItem(keyOf(shootId, unsent.eventId));
      }
    },
    drop: (shootId, eventId) => storage.removeItem(keyOf(shootId, eventId)),
    unsent: (shootId) =>
      Array.from({ length: storage.length }, (_, i) => storage.key(i))
        .filter((key) => key?.startsWith(`${UNSENT}/${shootId}/`))
        .map((key) => readUnsent(storage.getItem(key!)))
        .filter((unsent) => unsent !== undefined)
        .sort((a, b) => a.sequence - b.sequence),
  };
}
