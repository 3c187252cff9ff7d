/**
 * Files of lamps as this page has read them: each fetched once by its hash, read, kept for the page's life, told to plans
 * and sent to the workers. What a hash stands for never changes, so nothing here is ever read twice.
 */
import { Fault } from '../../base/fault.ts';
import type { Shoot } from '../../document/schema.ts';
import { lampFileKey, lampFilesOf, tellLampFiles, type LampFile, type LampFileContent, type LampFileState } from '../../plan/lampFiles.ts'; // prettier-ignore

export interface LampShelfNeeds {
  /** Rejects with a Fault where the server refuses, and with anything else where there is no answer. */
  readonly fetchBytes: (shootId: string, sha256: string) => Promise<Uint8Array>;
  /** Asked for one file at a time. */
  readonly read: (file: LampFile, bytes: Uint8Array) => Promise<LampFileState>;
  /** Hears of every file that was read, for the workers. */
  readonly keep: (name: string, content: LampFileContent) => void;
  readonly after: (wait_ms: number, run: () => void) => () => void;
}

export interface LampDesk {
  /** Tells plans of a shoot what is known of its files, and has the others read. May be called while rendering. */
  readonly tell: (shoot: Shoot) => void;
  readonly close: () => void;
}

export interface LampShelf {
  /** For one open shoot; `changed` hears when more is known of a file that it names. */
  readonly open: (shootId: string, changed: () => void) => LampDesk;
  /** Tells plans what is known already, and asks for nothing. */
  readonly tell: (shoot: Shoot) => void;
  /** Takes what was read of a file before the shoot named it, such as for its preview. */
  readonly put: (file: LampFile, content: LampFileContent) => void;
}

/** After this long a file that could not be fetched is asked for again, if it is still wanted. */
const RETRY_ms = 5000;

const isAway = (error: unknown): boolean => !(error instanceof Fault) || error.retry;

export function openLampShelf({ fetchBytes, read, keep, after }: LampShelfNeeds): LampShelf {
  const states = new Map<string, LampFileState>();
  const listeners = new Set<(key: string) => void>();

  const set = (key: string, state: LampFileState | undefined) => {
    if (state) states.set(key, state);
    else states.delete(key);
    if (state && state.kind !== 'unread') keep(key, state);
    for (const listener of [...listeners]) listener(key);
  };

  let lastRead: Promise<unknown> = Promise.resolve();
  const readNext = (file: LampFile, bytes: Uint8Array): Promise<LampFileState> => {
    const next = lastRead.then(() => read(file, bytes));
    lastRead = next.catch(() => undefined);
    return next;
  };

  const fetched = async (shootId: string, file: LampFile): Promise<LampFileState> => {
    const { name, sha256 } = file;
    const unread = (says: string): LampFileState => ({ kind: 'unread', says: `${name} ${says}` });
    let bytes;
    try {
      bytes = await fetchBytes(shootId, sha256.toLowerCase());
    } catch (error) {
      if (!isAway(error)) return unread('is not here: only its name was brought in');
      after(RETRY_ms, () => set(lampFileKey(file), undefined));
      return unread('could not be fetched, and is asked for again: is the server there?');
    }
    try {
      return await readNext(file, bytes);
    } catch (error) {
      return unread(`could not be read: ${error instanceof Error ? error.message : String(error)}`);
    }
  };

  const ask = (shootId: string, file: LampFile) => {
    const key = lampFileKey(file);
    if (states.has(key)) return;
    states.set(key, { kind: 'unread', says: `${file.name} is being read` });
    void fetched(shootId, file).then((state) => {
      // It may have been read for a preview meanwhile.
      if (states.get(key)?.kind === 'unread') set(key, state);
    });
  };

  const tell = (shoot: Shoot) => tellLampFiles(shoot, (file) => states.get(lampFileKey(file)));

  return {
    open: (shootId, changed) => {
      let wanted: ReadonlySet<string> = new Set();
      const listener = (key: string) => {
        if (wanted.has(key)) changed();
      };
      listeners.add(listener);
      return {
        tell: (shoot) => {
          const files = lampFilesOf(shoot);
          wanted = new Set(files.map(lampFileKey));
          for (const file of files) ask(shootId, file);
          tell(shoot);
        },
        close: () => void listeners.delete(listener),
      };
    },
    tell,
    put: (file, content) => set(lampFileKey(file), content),
  };
}
