/**
 * What this browser has not sent yet, kept so that a closed or crashed page loses nothing. Each edit lies under a key of
 * its own and every write is done when the call returns: typing ends where the page ends.
 */
import type { PatchOperation } from '../../plan/types.ts';
import type { Refused } from './refused.ts';

/** An edit, undo, redo or restore on its way to the server. */
export interface Unsent {
  readonly editId: string;
  readonly kind: 'edit' | 'undo' | 'redo' | 'restore';
  readonly patch: readonly PatchOperation[];
  readonly summary: string;
  /** The revision that whoever made it saw. */
  readonly revision: number;
  /** Edits of one browser are sent in the order of these. */
  readonly sequence: number;
  /** For a restore: the revision to bring back. */
  readonly to?: number;
}

export interface Draft {
  readonly patch: readonly PatchOperation[];
  readonly revision: number;
}

export interface Keep {
  readonly put: (shootId: string, unsent: Unsent) => void;
  readonly drop: (shootId: string, editId: string) => void;
  /** In the order in which they are to be sent. */
  readonly unsent: (shootId: string) => readonly Unsent[];
  readonly draft: (shootId: string) => Draft | undefined;
  readonly setDraft: (shootId: string, draft: Draft | undefined) => void;
  /** What was refused and not decided on yet, the oldest first. */
  readonly refused: (shootId: string) => readonly Refused[];
  readonly setRefused: (shootId: string, refused: readonly Refused[]) => void;
}

/** What of a browser's Storage is used. */
export interface StorageLike {
  readonly length: number;
  readonly key: (index: number) => string | null;
  readonly getItem: (key: string) => string | null;
  readonly setItem: (key: string, value: string) => void;
  readonly removeItem: (key: string) => void;
}

const UNSENT = 'longsecond.unsent';
const DRAFT = 'longsecond.draft';
const REFUSED = 'longsecond.refused';

/** Another program, or an older version of this one, may have written under our keys: what does not fit is left alone. */
function readUnsent(text: string | null): Unsent | undefined {
  try {
    const value = JSON.parse(text ?? 'null') as Partial<Unsent> | null;
    const isRestore = value?.kind === 'restore' && typeof value.to === 'number';
    const isWhole =
      typeof value?.editId === 'string' &&
      (value.kind === 'edit' || value.kind === 'undo' || value.kind === 'redo' || isRestore) &&
      Array.isArray(value.patch) &&
      typeof value.summary === 'string' &&
      typeof value.revision === 'number' &&
      typeof value.sequence === 'number';
    return isWhole ? (value as Unsent) : undefined;
  } catch {
    return undefined;
  }
}

function readDraft(text: string | null): Draft | undefined {
  try {
    const value = JSON.parse(text ?? 'null') as Partial<Draft> | null;
    return Array.isArray(value?.patch) && typeof value.revision === 'number' ? (value as Draft) : undefined;
  } catch {
    return undefined;
  }
}

function readRefused(text: string | null): readonly Refused[] {
  try {
    const kept: unknown = JSON.parse(text ?? '[]');
    if (!Array.isArray(kept)) return [];
    return (kept as readonly Partial<Refused>[]).filter((each): each is Refused =>
      [each.id, each.says, each.mend].every((part) => typeof part === 'string'),
    );
  } catch {
    return [];
  }
}

/** Keeps in a browser's Storage. Where that is shut or full the page works on, and only a crash would lose something. */
export function keepIn(storage: StorageLike): Keep {
  const write = (key: string, value: unknown) => {
    try {
      storage.setItem(key, JSON.stringify(value));
    } catch {
      storage.removeItem(key);
    }
  };
  return {
    put: (shootId, unsent) => write(`${UNSENT}/${shootId}/${unsent.editId}`, unsent),
    drop: (shootId, editId) => storage.removeItem(`${UNSENT}/${shootId}/${editId}`),
    unsent: (shootId) => {
      const found: Unsent[] = [];
      for (let i = 0; i < storage.length; i += 1) {
        const key = storage.key(i);
        if (!key?.startsWith(`${UNSENT}/${shootId}/`)) continue;
        const unsent = readUnsent(storage.getItem(key));
        if (unsent) found.push(unsent);
      }
      return found.sort((a, b) => a.sequence - b.sequence);
    },
    draft: (shootId) => readDraft(storage.getItem(`${DRAFT}/${shootId}`)),
    setDraft: (shootId, draft) => {
      if (draft) write(`${DRAFT}/${shootId}`, draft);
      else storage.removeItem(`${DRAFT}/${shootId}`);
    },
    refused: (shootId) => readRefused(storage.getItem(`${REFUSED}/${shootId}`)),
    setRefused: (shootId, refused) => {
      if (refused.length > 0) write(`${REFUSED}/${shootId}`, refused);
      else storage.removeItem(`${REFUSED}/${shootId}`);
    },
  };
}

/** Storage that lasts as long as the page, for browsers that keep theirs shut. */
export function pageStorage(): StorageLike {
  const held = new Map<string, string>();
  return {
    get length() {
      return held.size;
    },
    key: (index) => [...held.keys()][index] ?? null,
    getItem: (key) => held.get(key) ?? null,
    setItem: (key, value) => void held.set(key, value),
    removeItem: (key) => void held.delete(key),
  };
}
