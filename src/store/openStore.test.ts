import Sqlite from 'better-sqlite3';
import { spawn } from 'node:child_process';
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { bundle, type Bundled } from '../../test/bundled.ts';
import { SMALL_SHOOT, tempFolder, tempStore } from '../../test/tempStore.ts';
import { Fault } from '../base/fault.ts';
import { applyPatch } from '../document/patch.ts';
import { readShootText } from '../document/text.ts';
import { MIGRATIONS } from './migrations/all.ts';
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
  const next = { version: 2, sql: "ALTER TABLE shoots ADD COLUMN colour TEXT NOT NULL DEFAULT 'amber'" };

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
    const third = { version: 3, sql: 'CREATE TABLE more (id TEXT) STRICT' };
    const store = await openStore({ folder, migrations: [...MIGRATIONS, next, third] });
    const { backups } = store;
    expect(store.open('s').text).toBe(SMALL_SHOOT);
    store.close();
    expect(backups.map((file) => basename(file))).toEqual([
      'longsecond.v1.backup.sqlite',
      'longsecond.v2.backup.sqlite',
    ]);
    expect(backups.map(integrityOf)).toEqual(['ok', 'ok']);
    const [first = ''] = backups;
    const old = new Sqlite(first, { readonly: true });
    expect(old.prepare('SELECT text FROM shoots').pluck().get()).toBe(SMALL_SHOOT);
    expect(old.pragma('user_version', { simple: true })).toBe(1);
    old.close();
  });

  test('a step that fails leaves the store in its old form, and an earlier backup is not written over', async () => {
    const folder = await oldStore();
    const broken = { version: 2, sql: `${next.sql}; CREATE NONSENSE` };
    for (let i = 0; i < 2; i += 1)
      await refusal(openStore({ folder, migrations: [...MIGRATIONS, broken] }).catch(asFault));
    expect(backupsIn(folder).sort()).toEqual(['longsecond.v1-2.backup.sqlite', 'longsecond.v1.backup.sqlite']);
    expect((await tempStore(folder)).open('s').text).toBe(SMALL_SHOOT);
  });

  test('a store of a newer form is refused untouched', async () => {
    const folder = await oldStore();
    (await openStore({ folder, migrations: [...MIGRATIONS, next] })).close();
    const before = readFileSync(join(folder, 'longsecond.sqlite'));
    expect(await refusal(openStore({ folder }))).toMatchObject({ code: 'store.newer' });
    expect(readFileSync(join(folder, 'longsecond.sqlite'))).toEqual(before);
  });
});

describe('a process that is killed in a burst of edits', () => {
  const ROUNDS = 20;
  let burstProgram: Bundled;

  beforeAll(async () => {
    burstProgram = await bundle('test/editInABurst.ts');
  }, 60_000);

  afterAll(() => burstProgram.remove());

  /** Runs until so many edits were acknowledged and a moment more; returns the last number heard. */
  async function burst(folder: string, round: number): Promise<number> {
    const child = spawn(process.execPath, [burstProgram.file, folder, String(round)], { stdio: ['ignore', 'pipe', 'pipe'] }); // prettier-ignore
    onTestFinished(() => void child.kill('SIGKILL'));
    let heard = '';
    let complaint = '';
    child.stderr.on('data', (bytes: Buffer) => (complaint += bytes.toString()));
    const ended = new Promise((resolveEnd) => child.once('close', resolveEnd));
    const started = new Promise<void>((begin, fail) => {
      child.stdout.on('data', (bytes: Buffer) => {
        heard += bytes.toString();
        if (heard.split('\n').length > 1 + (round % 4)) begin();
      });
      child.once('close', () => fail(new Error(`it ended by itself: ${complaint}`)));
    });
    await started;
    const locked = round === 0 ? await refusal(openStore({ folder })) : undefined;
    if (locked) {
      expect(locked.code).toBe('store.locked');
      expect(locked.what).toContain(String(child.pid));
    }
    await wait((round * 7) % 23);
    child.kill('SIGKILL');
    await ended;
    const lines = heard.split('\n');
    return Number(lines.at(-2));
  }

  test('loses no edit that it acknowledged, and leaves a sound store that opens at once', async () => {
    const folder = tempFolder();
    const first = await openStore({ folder });
    first.bringIn({ editId: 'import-0001', at: AT, text: SMALL_SHOOT, id: 's' });
    first.close();
    let before = 0;
    for (let round = 0; round < ROUNDS; round += 1) {
      const acknowledged = await burst(folder, round);
      expect(acknowledged).toBeGreaterThan(before);
      const store = await openStore({ folder });
      const { revision, text, written } = store.open('s');
      expect(revision).toBeGreaterThanOrEqual(acknowledged);
      let replayed = readShootText(SMALL_SHOOT).written;
      for (let told = 0; told < revision;) {
        const { rows } = store.journal('s', { after: told, limit: 500 });
        expect(rows[0]?.number).toBe(told + 1);
        for (const { patch } of rows) replayed = applyPatch(replayed, patch);
        told += rows.length;
      }
      expect(replayed).toEqual(written);
      expect(readShootText(text).written).toEqual(written);
      store.close();
      expect(integrityOf(store.file)).toBe('ok');
      before = revision;
    }
  }, 180_000);
});
