/** The database library, loaded when first needed, and what its failures mean to a person. */
import type Sqlite from 'better-sqlite3';
import { Fault } from '../base/fault.ts';

export type Database = Sqlite.Database;
export type OpenDatabase = typeof Sqlite;

/** Loads the library. Throws Fault `store.no-sqlite` where it is not built for this machine. */
export async function loadSqlite(): Promise<OpenDatabase> {
  try {
    const { default: open } = await import('better-sqlite3');
    // The package loads its binary only when a database is opened.
    new open(':memory:').close();
    return open;
  } catch (cause) {
    throw new Fault({
      code: 'store.no-sqlite',
      what: 'The database library does not load on this machine',
      where: 'better-sqlite3',
      mend: 'Run npm rebuild better-sqlite3, with a C++ compiler installed, and start again.',
      cause,
    });
  }
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}

/** Whether another connection holds the lock that was wanted. */
export function isBusy(error: unknown): boolean {
  return codeOf(error).startsWith('SQLITE_BUSY');
}

/** The database's failures that come from the world, as faults; anything else is a bug and stays what it is. */
export function storeFault(error: unknown, file: string): Error {
  const code = codeOf(error);
  const says = (kind: string) => code === kind || code.startsWith(`${kind}_`);
  const fault = (details: { readonly code: string; readonly what: string; readonly mend: string }, retry: boolean) =>
    new Fault({ ...details, where: file, retry, cause: error });
  if (says('SQLITE_FULL'))
    return fault(
      {
        code: 'store.full',
        what: 'The disk is full: nothing was stored',
        mend: 'Free some room on that disk, then do it again.',
      },
      true,
    );
  if (says('SQLITE_CORRUPT') || says('SQLITE_NOTADB'))
    return fault(
      {
        code: 'store.damaged',
        what: 'The store is damaged, or is no store of ours',
        mend: 'Copy the whole folder elsewhere first, then start with another folder, or put a backup in its place.',
      },
      false,
    );
  if (says('SQLITE_READONLY') || says('SQLITE_CANTOPEN') || says('SQLITE_PERM'))
    return fault(
      {
        code: 'store.unwritable',
        what: 'The store cannot be written',
        mend: 'Allow writing there, or name another folder with --data.',
      },
      false,
    );
  if (says('SQLITE_IOERR') || says('SQLITE_BUSY') || says('SQLITE_LOCKED'))
    return fault(
      {
        code: 'store.failed',
        what: `The disk refused (${code}): nothing was stored`,
        mend: 'Look at the disk and its connection, then do it again.',
      },
      true,
    );
  return error instanceof Error ? error : new Error(String(error));
}

/** Runs what uses the database, turning the world's failures into faults. */
export function guarded<Result>(file: string, use: () => Result): Result {
  try {
    return use();
  } catch (error) {
    throw storeFault(error, file);
  }
}
