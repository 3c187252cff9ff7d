/** Shoots held read, over the store's database: what every part of the store works with. */
import { Fault } from '../base/fault.ts';
import { writtenValueAt } from '../document/patch.ts';
import { readShootText } from '../document/text.ts';
import type { Written } from '../document/written.ts';
import { guarded, type Database } from './sqlite.ts';
import { prepareStatements, type Statements } from './statements.ts';
import type { OpenShoot } from './types.ts';

/** The journal of a day touches one or two. */
const HELD_COUNT = 8;

export interface Shelf {
  readonly sql: Statements;
  /** A shoot as it now is. Throws Fault `shoot.unknown`. */
  readonly find: (shootId: string) => OpenShoot;
  readonly hold: (shoot: OpenShoot) => OpenShoot;
  /** Runs what only reads, turning the world's failures into faults. */
  readonly reading: <Result>(read: () => Result) => Result;
  /** Runs what writes, wholly or not at all. */
  readonly writing: <Result>(write: () => Result) => Result;
}

/** What people call a shoot: its title, or its id where it has none. */
export function titleOf(written: Written, id: string): string {
  const title = writtenValueAt(written, '/shoot/title');
  return typeof title === 'string' && title.trim() !== '' ? title.trim() : id;
}

export function openShelf({ db, file }: { readonly db: Database; readonly file: string }): Shelf {
  const sql = prepareStatements(db);
  const held = new Map<string, OpenShoot>();

  const hold = (shoot: OpenShoot) => {
    held.delete(shoot.id);
    held.set(shoot.id, shoot);
    const [oldest] = held.keys();
    if (held.size > HELD_COUNT && oldest !== undefined) held.delete(oldest);
    return shoot;
  };

  const find = (shootId: string): OpenShoot => {
    const known = held.get(shootId);
    if (known) return hold(known);
    const stored = sql.shoot.get(shootId);
    if (stored) return hold({ id: shootId, ...stored, written: readShootText(stored.text).written });
    throw new Fault({
      code: 'shoot.unknown',
      what: 'There is no such shoot here',
      where: shootId,
      mend: 'Open one from the list of shoots.',
    });
  };

  return {
    sql,
    find,
    hold,
    reading: (read) => guarded(file, read),
    writing: (write) => guarded(file, () => db.transaction(write).immediate()),
  };
}
