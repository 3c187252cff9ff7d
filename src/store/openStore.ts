/** Opening the store of a folder: owned, made or brought to its newest form, and ready. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { Fault } from '../base/fault.ts';
import { lockFolder } from './lock.ts';
import { migrate } from './migrate.ts';
import { MIGRATIONS, type Migration } from './migrations/all.ts';
import { shootStore, type ShootStore } from './shootStore.ts';
import { guarded, loadSqlite, storeFault, type Database, type OpenDatabase } from './sqlite.ts';

const FILE = 'longsecond.sqlite';

/** The database of a file, set so that what was committed outlives a loss of power. */
export function openDatabase(open: OpenDatabase, file: string): Database {
  const db = guarded(file, () => new open(file));
  try {
    db.pragma('journal_mode = WAL');
    db.pragma('synchronous = FULL');
    db.pragma('foreign_keys = ON');
    return db;
  } catch (error) {
    db.close();
    throw storeFault(error, file);
  }
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
  } catch (cause) {
    throw new Fault({
      code: 'store.unwritable',
      what: 'The folder for the shoots cannot be made',
      where: folder,
      mend: 'Allow writing there, or name another folder with --data.',
      cause,
    });
  }
}

/**
 * Opens the store of a folder, making it where there is none. Throws Fault `store.locked` where another process has it,
 * `store.unwritable`, `store.damaged`, `store.newer`, `store.full` or `store.failed` as the disk will have it.
 */
export async function openStore({
  folder,
  migrations = MIGRATIONS,
}: {
  readonly folder: string;
  readonly migrations?: readonly Migration[];
}): Promise<ShootStore> {
  const open = await loadSqlite();
  makeFolder(folder);
  const lock = lockFolder({ open, folder, pid: process.pid });
  const file = join(folder, FILE);
  let db: Database | undefined;
  try {
    db = openDatabase(open, file);
    const opened = db;
    const backups = guarded(file, () => migrate(opened, file, migrations));
    return shootStore({ db, file, backups, release: lock.release });
  } catch (error) {
    db?.close();
    lock.release();
    throw error;
  }
}
