/** Every form the store has had, oldest first. Only ever added to: what has been released is never edited. */
import { JOURNAL } from './v1.ts';
import { HISTORY_AND_FILES } from './v2.ts';
import { FOOTAGE } from './v3.ts';

export interface Migration {
  /** The form that it brings the store to. */
  readonly version: number;
  readonly sql: string;
}

export const MIGRATIONS: readonly Migration[] = [
  { version: 1, sql: JOURNAL },
  { version: 2, sql: HISTORY_AND_FILES },
  { version: 3, sql: FOOTAGE },
];
