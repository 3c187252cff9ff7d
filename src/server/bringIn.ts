/** Shoots that come from files when the server starts. */
import { randomUUID } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { basename, extname } from 'node:path';
import { Fault } from '../base/fault.ts';
import { idFrom } from '../store/shootId.ts';
import type { ShootStore } from '../store/shootStore.ts';
import type { Clock } from './clock.ts';

function readShootFile(file: string): string {
  let bytes: Buffer;
  try {
    bytes = readFileSync(file);
  } catch (cause) {
    const isMissing = (cause as NodeJS.ErrnoException).code === 'ENOENT';
    throw new Fault({
      code: 'shoot.unreadable-file',
      what: isMissing ? 'There is no such file' : 'The file cannot be read',
      where: file,
      mend: 'Check the path and its permissions.',
      cause,
    });
  }
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch (cause) {
    throw new Fault({
      code: 'shoot.not-text',
      what: 'The file is not text in UTF-8',
      where: file,
      mend: 'Give a shoot as YAML or JSON, saved as UTF-8.',
      cause,
    });
  }
}

export interface BroughtIn {
  readonly id: string;
  /** False where a shoot had that id already, which was left as it is. */
  readonly isNew: boolean;
}

interface Bringing {
  readonly store: ShootStore;
  readonly clock: Clock;
  readonly file: string;
  readonly id: string;
}

function bringInAs({ store, clock, file, id }: Bringing): BroughtIn {
  if (store.list().some((shoot) => shoot.id === id)) return { id, isNew: false };
  store.bringIn({ editId: randomUUID(), at: clock.now().toISOString(), text: readShootFile(file), id });
  return { id, isNew: true };
}

/**
 * Brings in a file under an id made from its name, unless there is a shoot of that id already: its edits are worth more.
 * Throws Fault `shoot.unreadable-file`, `shoot.not-text`, or what reading the shoot throws.
 */
export function bringInFile(from: Omit<Bringing, 'id'>): BroughtIn {
  const id = idFrom(basename(from.file, extname(from.file)), () => false);
  return bringInAs({ ...from, id });
}

/** Brings in the demo where there are no shoots at all; undefined where there are, or where there is no demo. */
export function bringInDemo(from: Omit<Bringing, 'id'>): BroughtIn | undefined {
  if (from.store.list().length > 0 || !existsSync(from.file)) return undefined;
  return bringInAs({ ...from, id: 'demo' });
}
