/** Brings a store to its newest form, a step at a time, each from a copy of the file that can be gone back to. */
import { closeSync, existsSync, fsyncSync, openSync } from 'node:fs';
import { Fault } from '../base/fault.ts';
import type { Migration } from './migrations/all.ts';
import type { Database } from './sqlite.ts';

function freeName(file: string, version: number): string {
  for (let count = 1; ; count += 1) {
    const name = `${file.replace(/\.sqlite$/, '')}.v${version}${count === 1 ? '' : `-${count}`}.backup.sqlite`;
    if (!existsSync(name)) return name;
  }
}

/** On disk before anything is changed: the copy is worth nothing if it is lost with what it was made for. */
function backUp(db: Database, file: string, version: number): string {
  const backup = freeName(file, version);
  db.prepare<[string]>('VACUUM INTO ?').run(backup);
  const opened = openSync(backup, 'r+');
  try {
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
  return backup;
}

/** Applies what is missing and returns the backups made. Throws Fault `store.newer` for a store of a later release. */
export function migrate(db: Database, file: string, migrations: readonly Migration[]): readonly string[] {
  const current = Number(db.pragma('user_version', { simple: true }));
  const newest = Math.max(0, ...migrations.map(({ version }) => version));
  if (current > newest)
    throw new Fault({
      code: 'store.newer',
      what: `The store has form ${current}; this release knows forms up to ${newest}`,
      where: file,
      mend: 'Start the newer release that wrote it, or name another folder with --data.',
    });
  const backups: string[] = [];
  for (const { version, sql } of migrations) {
    const from = Number(db.pragma('user_version', { simple: true }));
    if (version <= from) continue;
    // A store that is only being made has nothing to go back to.
    if (current > 0) backups.push(backUp(db, file, from));
    db.transaction(() => {
      db.exec(sql);
      db.pragma(`user_version = ${version}`);
    }).immediate();
  }
  return backups;
}
