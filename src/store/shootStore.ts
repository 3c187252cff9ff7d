/**
 * Shoots, their journal and their files, kept so that nothing acknowledged is lost. The text is the truth: an edit
 * changes it node by node, and text and journal row are written in one transaction. Times are given by the caller.
 */
import { openActs } from './acts.ts';
import { openFiles } from './files.ts';
import { openFootage } from './footage.ts';
import { openHistory } from './history.ts';
import { stepsAt } from './record.ts';
import { openShelf } from './shelf.ts';
import { openShoots } from './shoots.ts';
import type { Database } from './sqlite.ts';
import type { ShootStore } from './types.ts';

export type { ShootStore } from './types.ts';

export interface StoreParts {
  /** Open, of the newest form and ours alone. */
  readonly db: Database;
  readonly file: string;
  readonly backups: readonly string[];
  readonly release: () => void;
}

export function shootStore({ db, file, backups, release }: StoreParts): ShootStore {
  const shelf = openShelf({ db, file });
  const { find, reading, writing } = shelf;
  const watchers = new Set<(shootId: string) => void>();
  const history = openHistory(shelf);
  const files = openFiles(shelf);
  const acts = openActs(shelf, history, (shootId) => {
    for (const changed of [...watchers]) changed(shootId);
  });

  return {
    file,
    backups,
    ...openShoots(shelf, files),
    ...acts,
    open: (shootId) => reading(() => find(shootId)),
    steps: (shootId, who) => reading(() => stepsAt(shelf, shootId, who, find(shootId).revision)),
    journal: (shootId, range) => reading(() => history.journal(shootId, range)),
    history: (shootId, range) => reading(() => history.history(shootId, range)),
    at: (shootId, revision) => reading(() => history.at(shootId, revision)),
    since: (shootId, after) =>
      reading(() => {
        const { revision } = find(shootId);
        return { revision, ...(shelf.sql.since.get(shootId, after) ?? { rowCount: 0, patch_B: 0 }) };
      }),
    keepFile: (shootId, incoming) =>
      writing(() => {
        find(shootId);
        return files.keep(shootId, incoming);
      }),
    fileOf: (shootId, sha256) => reading(() => files.fileOf(shootId, sha256)),
    filesOf: (shootId) => reading(() => files.filesOf(shootId)),
    footage: openFootage(db, shelf),
    watch: (changed) => {
      watchers.add(changed);
      return () => void watchers.delete(changed);
    },
    close: () => {
      db.close();
      release();
    },
  };
}
