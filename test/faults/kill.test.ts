/** Processes killed with SIGKILL in the middle of their work: what they acknowledged is there, and nothing is half done. */
import Sqlite from 'better-sqlite3';
import { spawn, type ChildProcessByStdio } from 'node:child_process';
import type { Readable, Writable } from 'node:stream';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { createClient, type Send } from '../../src/api/client.ts';
import { Fault } from '../../src/base/fault.ts';
import { applyPatch } from '../../src/document/patch.ts';
import { readShootText } from '../../src/document/text.ts';
import { openStore } from '../../src/store/openStore.ts';
import { bundle, type Bundled } from '../bundled.ts';
import { SMALL_SHOOT, tempFolder } from '../tempStore.ts';

const AT = '2027-03-09T07:30:00.000Z';

function checkOf(file: string, pragma: 'integrity_check' | 'quick_check'): unknown {
  const db = new Sqlite(file, { readonly: true });
  try {
    return db.pragma(pragma, { simple: true });
  } finally {
    db.close();
  }
}

async function folderWithShoot(): Promise<string> {
  const folder = tempFolder();
  const store = await openStore({ folder });
  store.bringIn({ editId: 'import-0001', at: AT, text: SMALL_SHOOT, id: 's' });
  store.close();
  return folder;
}

async function lockFault(folder: string): Promise<Fault> {
  const error: unknown = await openStore({ folder }).then(
    (store) => store.close(),
    (thrown: unknown) => thrown,
  );
  if (error instanceof Fault) return error;
  throw new Error('the store opened while another process had it', { cause: error });
}

type Child = ChildProcessByStdio<Writable, Readable, Readable>;

interface Running {
  readonly child: Child;
  readonly heard: () => readonly string[];
  /** Resolves once so many lines were heard; rejects where the process ends before. */
  readonly lines: (count: number) => Promise<void>;
  readonly kill: () => Promise<void>;
}

function run(program: Bundled, args: readonly string[] = []): Running {
  const child: Child = spawn(process.execPath, [program.file, ...args], { stdio: ['pipe', 'pipe', 'pipe'] });
  onTestFinished(() => void child.kill('SIGKILL'));
  let said = '';
  let complaint = '';
  let hasEnded = false;
  let look = () => {};
  child.stderr.on('data', (bytes: Buffer) => (complaint += bytes.toString()));
  // A process that has just been killed no longer takes what is written to it.
  child.stdin.on('error', () => undefined);
  child.stdout.on('data', (bytes: Buffer) => {
    said += bytes.toString();
    look();
  });
  const ended = new Promise<void>((resolve) =>
    child.once('close', () => {
      hasEnded = true;
      look();
      resolve();
    }),
  );
  const heard = () => said.split('\n').slice(0, -1);
  return {
    child,
    heard,
    lines: (count) =>
      new Promise((resolve, reject) => {
        look = () => {
          if (heard().length >= count) resolve();
          else if (hasEnded) reject(new Error(`it ended by itself: ${complaint}`));
        };
        look();
      }),
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
  };
}

describe('a process that is killed in a burst of edits, undos and restores', () => {
  const ROUNDS = 200;
  let program: Bundled;

  beforeAll(async () => {
    program = await bundle('test/faults/editInABurst.ts');
  }, 60_000);

  afterAll(() => program.remove());

  test(`loses nothing that it acknowledged in ${ROUNDS} kills, and leaves a sound store that opens at once`, async () => {
    const folder = await folderWithShoot();
    let replayed = readShootText(SMALL_SHOOT).written;
    let told = 0;
    let next = run(program);
    for (let round = 0; round < ROUNDS; round += 1) {
      const burst = next;
      // Loads its program while this one is at work; it touches the store only once it is told to.
      next = run(program);
      burst.child.stdin.write(`${folder} ${round}\n`);
      await burst.lines(1 + (round % 4));
      if (round === 0) {
        const locked = await lockFault(folder);
        expect(locked.code).toBe('store.locked');
        expect(locked.what).toContain(String(burst.child.pid));
      }
      await wait((round * 7) % 23);
      await burst.kill();
      const acknowledged = Number(burst.heard().at(-1));
      expect(acknowledged).toBeGreaterThan(told);

      const store = await openStore({ folder });
      const { revision, text, written } = store.open('s');
      expect(revision).toBeGreaterThanOrEqual(acknowledged);
      while (told < revision) {
        const { rows } = store.journal('s', { after: told, limit: 500 });
        expect(rows[0]?.number).toBe(told + 1);
        for (const { patch } of rows) replayed = applyPatch(replayed, patch);
        told += rows.length;
      }
      expect(replayed).toEqual(written);
      expect(readShootText(text).written).toEqual(written);
      if (round === ROUNDS - 1) expect(store.at('s', 0).text).toBe(SMALL_SHOOT);
      store.close();
      expect(checkOf(store.file, round % 20 === 19 ? 'integrity_check' : 'quick_check')).toBe('ok');
    }
    await next.kill();
  }, 300_000);
});

describe('a server that is killed while edits arrive', () => {
  const ROUNDS = 12;
  let program: Bundled;

  beforeAll(async () => {
    program = await bundle('test/faults/serveAStore.ts');
  }, 60_000);

  afterAll(() => program.remove());

  test(`keeps every edit that it answered in ${ROUNDS} kills, and one sent again after no answer is made once`, async () => {
    const folder = await folderWithShoot();
    const answered = new Set<string>();
    let unanswered: string | undefined;
    let count = 0;
    for (let round = 0; round < ROUNDS; round += 1) {
      const server = run(program, [folder]);
      await server.lines(1);
      const send: Send = async ({ method, path, headers, body }) => {
        const address = `http://127.0.0.1:${server.heard()[0]}${path}`;
        const answer = await fetch(address, { method, headers, ...(body === undefined ? {} : { body }) });
        return { status: answer.status, text: await answer.text() };
      };
      const api = createClient({ send, client: 'ada', name: () => 'Ada' });
      const edit = async (editId: string) => {
        const patch = [{ op: 'add', path: '/shots/splash/note', value: `note of ${editId}` }] as const;
        const { revision } = await api.open('s');
        unanswered = editId;
        await api.edit('s', { editId, revision, patch, summary: editId });
        answered.add(editId);
        unanswered = undefined;
      };
      if (unanswered !== undefined) await edit(unanswered);
      let dying: Promise<void> | undefined;
      await (async () => {
        for (let made = 0; ; made += 1) {
          // Some way into what follows, wherever that is.
          if (made === 2 + (round % 4)) dying = wait((round * 7) % 23).then(() => server.kill());
          await edit(`edit-${String((count += 1)).padStart(6, '0')}`);
        }
      })().catch((error: unknown) => {
        // Only a connection that broke; what the server itself refuses is a Fault, and wrong here.
        if (!(error instanceof TypeError)) throw error;
      });
      await dying;
    }
    const store = await openStore({ folder });
    onTestFinished(() => store.close());
    const kept: string[] = [];
    for (let after = 0; ;) {
      const { rows } = store.journal('s', { after, limit: 500 });
      if (rows.length === 0) break;
      expect(rows.every(({ name }) => name === 'Ada')).toBe(true);
      kept.push(...rows.map(({ editId }) => editId));
      after += rows.length;
    }
    expect(new Set(kept).size).toBe(kept.length);
    expect([...answered].filter((editId) => !kept.includes(editId))).toEqual([]);
    // At most the very last one was stored and never answered.
    expect(kept.length - answered.size).toBeLessThanOrEqual(1);
    expect(answered.size).toBeGreaterThan(ROUNDS);
    expect(checkOf(store.file, 'integrity_check')).toBe('ok');
  }, 120_000);
});
