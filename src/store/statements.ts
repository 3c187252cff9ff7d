/** The store's questions to its database, and a journal row as it is kept and as it is told. */
import type { Patch } from '../document/patch.ts';
import type { Database } from './sqlite.ts';

export interface ShootEntry {
  readonly id: string;
  readonly title: string;
  readonly revision: number;
  /** ISO 8601, UTC. */
  readonly created: string;
  readonly updated: string;
  readonly standing: Standing;
}

export type Standing = 'current' | 'template' | 'archived';

export interface JournalRow {
  readonly number: number;
  readonly editId: string;
  readonly who: string;
  readonly name?: string;
  readonly at: string;
  readonly kind: 'edit' | 'undo' | 'redo' | 'restore';
  readonly patch: Patch;
  readonly summary: string;
  readonly undoes?: number;
  readonly restores?: number;
  readonly reorders?: true;
}

export interface Row {
  readonly number: number;
  readonly editId: string;
  readonly who: string;
  readonly name: string | null;
  readonly at: string;
  readonly kind: JournalRow['kind'];
  readonly patch: string;
  readonly inverse: string;
  readonly splices: string;
  readonly summary: string;
  readonly undoes: number | null;
  readonly restores: number | null;
  readonly textOf: number;
  readonly reorders: number;
}

export const patchOf = (json: string) => JSON.parse(json) as Patch;

export function journalRow(row: Row): JournalRow {
  const { number, editId, who, at, kind, summary } = row;
  return {
    number,
    editId,
    who,
    ...(row.name === null ? {} : { name: row.name }),
    at,
    kind,
    patch: patchOf(row.patch),
    summary,
    ...(row.undoes === null ? {} : { undoes: row.undoes }),
    ...(row.restores === null ? {} : { restores: row.restores }),
    ...(row.reorders === 1 ? { reorders: true } : {}),
  };
}

export function prepareStatements(db: Database) {
  return {
    list: db.prepare<[], ShootEntry>('SELECT id, title, revision, created, updated, standing FROM shoots ORDER BY updated DESC, id'),
    entry: db.prepare<[string], ShootEntry>('SELECT id, title, revision, created, updated, standing FROM shoots WHERE id = ?'),
    setStanding: db.prepare<[Standing, string]>('UPDATE shoots SET standing = ? WHERE id = ?'),
    shoot: db.prepare<[string], { revision: number; title: string; text: string }>('SELECT revision, title, text FROM shoots WHERE id = ?'),
    revision: db.prepare<[string], number>('SELECT revision FROM shoots WHERE id = ?').pluck(),
    brought: db.prepare<[string], string>('SELECT id FROM shoots WHERE importId = ?').pluck(),
    add: db.prepare<[{ id: string; title: string; text: string; at: string; editId: string }]>(
      `INSERT INTO shoots (id, title, text, revision, created, updated, importId)
        VALUES (@id, @title, @text, 0, @at, @at, @editId)`,
    ),
    change: db.prepare<[{ id: string; title: string; text: string; at: string; number: number }]>(
      'UPDATE shoots SET title = @title, text = @text, revision = @number, updated = @at WHERE id = @id',
    ),
    record: db.prepare<[Row & { readonly shoot: string }]>(
      `INSERT INTO journal
          (shoot, number, editId, who, name, at, kind, patch, inverse, splices, summary, undoes, restores, textOf, reorders)
        VALUES
          (@shoot, @number, @editId, @who, @name, @at, @kind, @patch, @inverse, @splices, @summary, @undoes, @restores, @textOf, @reorders)`,
    ),
    sent: db.prepare<[string], Row & { readonly shoot: string }>('SELECT * FROM journal WHERE editId = ?'),
    row: db.prepare<[string, number], Row>('SELECT * FROM journal WHERE shoot = ? AND number = ?'),
    rows: db.prepare<[string, number, number], Row>(
      'SELECT * FROM journal WHERE shoot = ? AND number > ? ORDER BY number LIMIT ?',
    ),
    rowsBefore: db.prepare<[string, number, number], Row>(
      'SELECT * FROM journal WHERE shoot = ? AND number < ? ORDER BY number DESC LIMIT ?',
    ),
    /** What is needed to go back through the text, newest first. */
    steps: db.prepare<[string, number, number], Pick<Row, 'number' | 'splices' | 'textOf'>>(
      'SELECT number, splices, textOf FROM journal WHERE shoot = ? AND number > ? AND number <= ? ORDER BY number DESC',
    ),
    since: db.prepare<[string, number], { rowCount: number; patch_B: number }>(
      `SELECT COUNT(*) AS rowCount, COALESCE(SUM(LENGTH(CAST(patch AS BLOB))), 0) AS patch_B
        FROM journal WHERE shoot = ? AND number > ?`,
    ),
    lastDone: db.prepare<[{ shoot: string; who: string; upTo: number }], Row>(
      `SELECT * FROM journal AS done WHERE shoot = @shoot AND who = @who AND number <= @upTo AND kind <> 'undo'
        AND NOT EXISTS (SELECT 1 FROM journal WHERE shoot = @shoot AND undoes = done.number AND number <= @upTo)
        ORDER BY number DESC LIMIT 1`,
    ),
    lastUndone: db.prepare<[{ shoot: string; who: string; upTo: number }], Row>(
      `SELECT * FROM journal AS undone WHERE shoot = @shoot AND who = @who AND number <= @upTo AND kind = 'undo'
        AND NOT EXISTS (SELECT 1 FROM journal WHERE shoot = @shoot AND undoes = undone.number AND number <= @upTo)
        AND NOT EXISTS (SELECT 1 FROM journal
          WHERE shoot = @shoot AND who = @who AND kind IN ('edit', 'restore') AND number > undone.number AND number <= @upTo)
        ORDER BY number DESC LIMIT 1`,
    ),
    keepContent: db.prepare<[{ sha256: string; size_B: number; kind: string; bytes: Uint8Array }]>(
      'INSERT INTO contents (sha256, size_B, kind, bytes) VALUES (@sha256, @size_B, @kind, @bytes) ON CONFLICT DO NOTHING',
    ),
    content: db.prepare<[string], { kind: string; size_B: number; bytes: Buffer }>(
      'SELECT kind, size_B, bytes FROM contents WHERE sha256 = ?',
    ),
    contentSize: db.prepare<[string], number>('SELECT size_B FROM contents WHERE sha256 = ?').pluck(),
    addFile: db.prepare<[{ shoot: string; sha256: string; name: string }]>(
      `INSERT INTO shootFiles (shoot, sha256, name) VALUES (@shoot, @sha256, @name)
        ON CONFLICT (shoot, sha256) DO UPDATE SET name = @name`,
    ),
    fileName: db.prepare<[string, string], string>('SELECT name FROM shootFiles WHERE shoot = ? AND sha256 = ?').pluck(),
    shareFiles: db.prepare<[{ from: string; to: string }]>(
      'INSERT INTO shootFiles (shoot, sha256, name) SELECT @to, sha256, name FROM shootFiles WHERE shoot = @from',
    ),
  };
} // prettier-ignore

export type Statements = ReturnType<typeof prepareStatements>;
