import Sqlite from 'better-sqlite3';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { SMALL_SHOOT, tempFolder, tempStore } from '../../test/tempStore.ts';
import { Fault } from '../base/fault.ts';
import { MIGRATIONS } from './migrations/all.ts';
import { JOURNAL } from './migrations/v1.ts';
import { HISTORY_AND_FILES } from './migrations/v2.ts';
import { openDatabase, openStore } from './openStore.ts';

const AT = '2027-03-09T07:30:00.000Z';

async function refusal(opening: Promise<unknown>): Promise<Fault> {
  const error: unknown = await opening.then(
    () => undefined,
    (thrown: unknown) => thrown,
  );
  if (error instanceof Fault) return error;
  throw error instanceof Error ? error : new Error('it opened');
}

/** The database's complaint about a migration, which is a bug of whoever wrote it, where any refusal will do. */
function asFault(error: unknown): never {
  throw new Fault({ code: 'test', what: String(error), where: 'the migration', mend: 'Mend it.' });
}

function integrityOf(file: string): unknown {
  const db = new Sqlite(file, { readonly: true });
  try {
    return db.pragma('integrity_check', { simple: true });
  } finally {
    db.close();
  }
}

describe('opening', () => {
  test('a folder that is not there is made, for its owner alone', async () => {
    const folder = join(tempFolder(), 'deep', 'down');
    const store = await tempStore(folder);
    expect(store.list()).toEqual([]);
    if (process.platform !== 'win32') expect(statSync(folder).mode & 0o077).toBe(0);
  });

  test('what was stored is there when it is opened again', async () => {
    const folder = tempFolder();
    const first = await openStore({ folder });
    first.bringIn({ editId: 'import-0001', at: AT, text: SMALL_SHOOT, id: 's' });
    const patch = [{ op: 'replace', path: '/shoot/seed', value: 8 }] as const;
    first.edit('s', { editId: 'edit-00001', who: 'ada', at: AT, revision: 0, patch, summary: 'Seed' });
    const { text } = first.open('s');
    first.close();
    const second = await tempStore(folder);
    expect(second.open('s')).toMatchObject({ text, revision: 1 });
    expect(second.undo('s', { editId: 'undo-00001', who: 'ada', at: AT }).revision).toBe(2);
    expect(second.open('s').text).toBe(SMALL_SHOOT);
  });

  test('every commit is synced before it is acknowledged, and references are kept', () => {
    const db = openDatabase(Sqlite, join(tempFolder(), 'new.sqlite'));
    const settings = ['journal_mode', 'synchronous', 'foreign_keys'].map((name) => db.pragma(name, { simple: true }));
    db.close();
    const FULL = 2;
    expect(settings).toEqual(['wal', FULL, 1]);
  });

  test('a folder that cannot be made is refused', async () => {
    const file = join(tempFolder(), 'a-file');
    writeFileSync(file, '');
    const fault = await refusal(openStore({ folder: join(file, 'below') }));
    expect(fault).toMatchObject({ code: 'store.unwritable', where: join(file, 'below') });
  });

  test.each(['longsecond.sqlite', 'longsecond.lock'])('a %s of other bytes is refused and left alone', async (name) => {
    const folder = tempFolder();
    const bytes = Buffer.alloc(8192, 'no database');
    writeFileSync(join(folder, name), bytes);
    expect(await refusal(openStore({ folder }))).toMatchObject({ code: 'store.damaged', where: join(folder, name) });
    expect(readFileSync(join(folder, name))).toEqual(bytes);
  });

  test('damage inside the file is told as damage, not as a bug', async () => {
    const folder = tempFolder();
    const store = await openStore({ folder });
    store.bringIn({ editId: 'import-0001', at: AT, text: `${SMALL_SHOOT}# ${'x'.repeat(60_000)}\n`, id: 's' });
    const { file } = store;
    store.close();
    const bytes = readFileSync(file);
    // Past the first page, so that it still opens.
    bytes.fill(0xa5, 4096);
    writeFileSync(file, bytes);
    const fault = await refusal(openStore({ folder }).then((opened) => { try { opened.open('s'); } finally { opened.close(); } })); // prettier-ignore
    expect(fault).toMatchObject({ code: 'store.damaged', where: file });
  });
});

describe('one process owns a store', () => {
  test('a second opening is refused with the number of the process that has it', async () => {
    const folder = tempFolder();
    await tempStore(folder);
    const fault = await refusal(openStore({ folder }));
    expect(fault).toMatchObject({ code: 'store.locked', where: folder, retry: true });
    expect(fault.what).toContain(String(process.pid));
  });

  test('a store that was refused is opened once the owner has closed it', async () => {
    const folder = tempFolder();
    const owner = await openStore({ folder });
    await refusal(openStore({ folder }));
    owner.close();
    expect((await tempStore(folder)).list()).toEqual([]);
  });

  test('an opening that fails lets go of the folder', async () => {
    const folder = tempFolder();
    await refusal(openStore({ folder, migrations: [{ version: 1, sql: 'CREATE NONSENSE' }] }).catch(asFault));
    expect((await tempStore(folder)).list()).toEqual([]);
  });
});

describe('migrations', () => {
  const newest = MIGRATIONS.length;
  const next = { version: newest + 1, sql: "ALTER TABLE shoots ADD COLUMN colour TEXT NOT NULL DEFAULT 'amber'" };

  async function oldStore(): Promise<string> {
    const folder = tempFolder();
    const store = await openStore({ folder });
    store.bringIn({ editId: 'import-0001', at: AT, text: SMALL_SHOOT, id: 's' });
    store.close();
    return folder;
  }

  const backupsIn = (folder: string) => readdirSync(folder).filter((name) => name.includes('backup'));

  test('a new store is made in the newest form, with nothing to back up', async () => {
    const folder = tempFolder();
    const store = await tempStore(folder);
    expect(store.backups).toEqual([]);
    expect(backupsIn(folder)).toEqual([]);
  });

  test('versions count up from 1 without a gap', () => {
    expect(MIGRATIONS.map(({ version }) => version)).toEqual(MIGRATIONS.map((_, index) => index + 1));
  });

  test('a copy of the old form is made before each step, whole and sound', async () => {
    const folder = await oldStore();
    const third = { version: newest + 2, sql: 'CREATE TABLE more (id TEXT) STRICT' };
    const store = await openStore({ folder, migrations: [...MIGRATIONS, next, third] });
    const { backups } = store;
    expect(store.open('s').text).toBe(SMALL_SHOOT);
    store.close();
    expect(backups.map((file) => basename(file))).toEqual([
      `longsecond.v${newest}.backup.sqlite`,
      `longsecond.v${newest + 1}.backup.sqlite`,
    ]);
    expect(backups.map(integrityOf)).toEqual(['ok', 'ok']);
    const [first = ''] = backups;
    const old = new Sqlite(first, { readonly: true });
    expect(old.prepare('SELECT text FROM shoots').pluck().get()).toBe(SMALL_SHOOT);
    expect(old.pragma('user_version', { simple: true })).toBe(newest);
    old.close();
  });

  test('a step that fails leaves the store in its old form, and an earlier backup is not written over', async () => {
    const folder = await oldStore();
    const broken = { version: newest + 1, sql: `${next.sql}; CREATE NONSENSE` };
    for (let i = 0; i < 2; i += 1)
      await refusal(openStore({ folder, migrations: [...MIGRATIONS, broken] }).catch(asFault));
    expect(backupsIn(folder).sort()).toEqual([
      `longsecond.v${newest}-2.backup.sqlite`,
      `longsecond.v${newest}.backup.sqlite`,
    ]);
    expect((await tempStore(folder)).open('s').text).toBe(SMALL_SHOOT);
  });

  test('a journal of the first form is kept whole, and can still be taken back', async () => {
    const folder = tempFolder();
    const file = join(folder, 'longsecond.sqlite');
    const old = new Sqlite(file);
    old.exec(JOURNAL);
    old.pragma('user_version = 1');
    const edited = SMALL_SHOOT.replace('seed: 7', 'seed: 8');
    old.prepare('INSERT INTO shoots VALUES (?, ?, ?, 3, ?, ?, ?)').run('s', 'Milk', edited, AT, AT, 'import-0001');
    const row = old.prepare(
      `INSERT INTO journal (shoot, number, editId, who, at, kind, patch, inverse, splices, summary, undoes, textOf, reorders)
        VALUES ('s', ?, ?, 'ada', '${AT}', ?, ?, ?, ?, 'Seed', ?, ?, 0)`,
    );
    const patch = (value: number) => JSON.stringify([{ op: 'replace', path: '/shoot/seed', value }]);
    const at = SMALL_SHOOT.indexOf('7', SMALL_SHOOT.indexOf('seed'));
    const splice = (removed: string, inserted: string) => JSON.stringify([{ at, removed, inserted }]);
    row.run(1, 'edit-00001', 'edit', patch(8), patch(7), splice('7', '8'), null, 1);
    row.run(2, 'undo-00001', 'undo', patch(7), patch(8), splice('8', '7'), 1, 0);
    row.run(3, 'redo-00001', 'redo', patch(8), patch(7), splice('7', '8'), 2, 1);
    old.close();

    const store = await tempStore(folder);
    expect(store.backups.map((backup) => basename(backup))).toEqual([
      'longsecond.v1.backup.sqlite',
      'longsecond.v2.backup.sqlite',
    ]);
    const { rows } = store.journal('s', { after: 0, limit: 10 });
    expect(rows.map(({ number, kind, undoes, who }) => [number, kind, undoes, who])).toEqual([
      [1, 'edit', undefined, 'ada'],
      [2, 'undo', 1, 'ada'],
      [3, 'redo', 2, 'ada'],
    ]);
    expect(rows[0]).not.toHaveProperty('name');
    expect(store.list()).toMatchObject([{ id: 's', standing: 'current' }]);
    expect(store.at('s', 2).text).toBe(SMALL_SHOOT);
    expect(store.undo('s', { editId: 'undo-00002', who: 'ada', at: AT }).revision).toBe(4);
    expect(store.open('s').text).toBe(SMALL_SHOOT);
    store.close();
    const kept = new Sqlite(file);
    expect([kept.pragma('integrity_check', { simple: true }), kept.pragma('foreign_key_check')]).toEqual(['ok', []]);
    // A row that says it takes back one that is not there is refused by the database itself.
    kept.pragma('foreign_keys = ON');
    expect(() => kept.exec('UPDATE journal SET undoes = 99 WHERE number = 2')).toThrow(/FOREIGN KEY/);
    kept.close();
  });

  test('a store of the second form keeps its shoots and files, and takes footage from then on', async () => {
    const folder = tempFolder();
    const old = new Sqlite(join(folder, 'longsecond.sqlite'));
    old.exec(JOURNAL);
    old.exec(HISTORY_AND_FILES);
    old.pragma('user_version = 2');
    old
      .prepare("INSERT INTO shoots VALUES (?, ?, ?, 0, ?, ?, ?, 'template')")
      .run('s', 'Milk', SMALL_SHOOT, AT, AT, 'import-0001');
    const sha256 = createHash('sha256').update('light').digest('hex');
    old.prepare('INSERT INTO contents VALUES (?, 5, ?, ?)').run(sha256, 'text/plain', Buffer.from('light'));
    old.prepare('INSERT INTO shootFiles VALUES (?, ?, ?)').run('s', sha256, 'lamp.ies');
    old.close();

    const store = await tempStore(folder);
    expect(store.list()).toMatchObject([{ id: 's', standing: 'template' }]);
    expect(store.fileOf('s', sha256).bytes.toString()).toBe('light');
    expect(store.footage.happenings('s')).toEqual([]);
    const event = { kind: 'added', clipId: 'clip-00001', folder: 'day', path: 'a.mov' } as const;
    expect(store.footage.addHappening('s', { eventId: 'event-0001', who: 'ada', at: AT, event })).toBe(true);
  });

  test('a store of a newer form is refused untouched', async () => {
    const folder = await oldStore();
    (await openStore({ folder, migrations: [...MIGRATIONS, next] })).close();
    const before = readFileSync(join(folder, 'longsecond.sqlite'));
    expect(await refusal(openStore({ folder }))).toMatchObject({ code: 'store.newer' });
    expect(readFileSync(join(folder, 'longsecond.sqlite'))).toEqual(before);
  });
});
