/**
 * One process owns a store. The owner holds a lock of the operating system on a file beside the store, taken through
 * the database library, so that a process that dies in any way lets go of it; inside stands its number, for words.
 */
import { join } from 'node:path';
import { Fault } from '../base/fault.ts';
import { guarded, isBusy, storeFault, type Database, type OpenDatabase } from './sqlite.ts';

const LOCK_FILE = 'longsecond.lock';

/** Long enough for another that only looks who the owner is, short enough to be refused at once. */
const PATIENCE_ms = 250;

export interface Lock {
  readonly release: () => void;
}

function ownerOf(lock: Database): string {
  try {
    const pid = lock.prepare<[], number>('SELECT pid FROM owner').pluck().get();
    return pid === undefined ? 'another process' : `process ${pid}`;
  } catch {
    // The owner is just taking hold of it: that there is one is all that can be said.
    return 'another process';
  }
}

/** Takes hold of a folder. Throws Fault `store.locked` naming the process that has it. */
export function lockFolder({
  open,
  folder,
  pid,
}: {
  readonly open: OpenDatabase;
  readonly folder: string;
  readonly pid: number;
}): Lock {
  const file = join(folder, LOCK_FILE);
  const lock = guarded(file, () => new open(file, { timeout: PATIENCE_ms }));
  try {
    lock.exec('BEGIN IMMEDIATE');
    lock.exec('CREATE TABLE IF NOT EXISTS owner (pid INTEGER NOT NULL)');
    lock.exec('DELETE FROM owner');
    lock.prepare<[number]>('INSERT INTO owner VALUES (?)').run(pid);
    lock.exec('COMMIT');
    // Held from here on: a transaction that never ends keeps every other writer out and lets readers see the number.
    lock.exec('BEGIN IMMEDIATE');
  } catch (error) {
    const owner = isBusy(error) ? ownerOf(lock) : undefined;
    lock.close();
    if (owner === undefined) throw storeFault(error, file);
    throw new Fault({
      code: 'store.locked',
      what: `These shoots are open in ${owner}`,
      where: folder,
      mend: 'Use the Longsecond that is running, stop it first, or name another folder with --data.',
      retry: true,
      cause: error,
    });
  }
  return { release: () => void lock.close() };
}
