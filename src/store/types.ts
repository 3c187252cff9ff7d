/** What a store does, and what it takes and gives. */
import type { Patch } from '../document/patch.ts';
import type { Written } from '../document/written.ts';
import type { NamedFile } from './filesNamed.ts';
import type { FootageShelf } from './footageTypes.ts';
import type { JournalRow, ShootEntry, Standing } from './statements.ts';

/** A shoot at one of its revisions, for looking at. */
export interface ShootAt {
  readonly id: string;
  readonly title: string;
  readonly revision: number;
  readonly text: string;
  readonly written: Written;
}

/** A shoot as it now is. */
export type OpenShoot = ShootAt;

/** What a client could take back or make again. */
export interface Steps {
  readonly undoSummary?: string;
  readonly redoSummary?: string;
}

export interface EditResult extends Steps {
  readonly revision: number;
  readonly patch: Patch;
  readonly reorders?: true;
}

/** Who does something, when, and under which id it may be repeated. */
export interface Act {
  readonly editId: string;
  readonly who: string;
  /** What the person calls themself, for others to read. */
  readonly name?: string | undefined;
  /** ISO 8601, UTC. */
  readonly at: string;
}

export interface Edit extends Act {
  /** The revision that it was made on. */
  readonly revision: number;
  readonly patch: Patch;
  readonly summary: string;
}

export interface Restore extends Act {
  /** The newest revision that the person was looking at. */
  readonly revision: number;
  /** The revision to bring back. */
  readonly to: number;
}

export interface JournalPage {
  /** The newest there is. */
  readonly revision: number;
  readonly rows: readonly JournalRow[];
}

/** Bytes under a name. */
export interface IncomingFile {
  readonly name: string;
  readonly kind: string;
  readonly bytes: Uint8Array;
}

export interface StoredFile {
  readonly name: string;
  readonly kind: string;
  readonly size_B: number;
  readonly bytes: Buffer;
}

/** A shoot from outside, with files that come along; these are asked for one at a time, and kept with it or not at all. */
export interface Import {
  readonly editId: string;
  readonly at: string;
  readonly text: string;
  readonly id?: string | undefined;
  readonly files?: Iterable<IncomingFile>;
}

export interface ShootStore {
  /** The database's file. */
  readonly file: string;
  /** Copies made because opening brought the file to a newer form. */
  readonly backups: readonly string[];
  /** The one changed last comes first. */
  readonly list: () => readonly ShootEntry[];
  readonly open: (shootId: string) => OpenShoot;
  readonly steps: (shootId: string, who: string) => Steps;
  /** Brings a shoot in; repeated under the same edit id it answers the shoot brought in first, as it now is. */
  readonly bringIn: (shoot: Import) => OpenShoot;
  /** The same text under another title and a new id, its files with it; repeated as bringing in is. */
  readonly duplicate: (shootId: string, as: { readonly editId: string; readonly at: string; readonly title: string }) => OpenShoot;
  readonly setStanding: (shootId: string, standing: Standing) => ShootEntry;
  readonly edit: (shootId: string, edit: Edit) => EditResult;
  /** Takes back the newest edit of the one who asks. */
  readonly undo: (shootId: string, act: Act) => EditResult;
  /** Makes again what was last taken back, unless something was edited in between. */
  readonly redo: (shootId: string, act: Act) => EditResult;
  /** Brings back the text of a revision byte for byte, unless others edited what the person was looking at. */
  readonly restore: (shootId: string, restore: Restore) => EditResult;
  /** Oldest first; fewer rows than asked for where they are large. */
  readonly journal: (shootId: string, range: { readonly after: number; readonly limit: number }) => JournalPage;
  /** Newest first; fewer rows than asked for where they are large. */
  readonly history: (shootId: string, range: { readonly before: number; readonly limit: number }) => JournalPage;
  /** The shoot at a revision; throws Fault `revision.unknown` where it never had that one. */
  readonly at: (shootId: string, revision: number) => ShootAt;
  /** How much there is to tell about what followed a revision. */
  readonly since: (shootId: string, after: number) => { readonly revision: number; readonly rowCount: number; readonly patch_B: number };
  /** Keeps a file for a shoot and returns its SHA-256. */
  readonly keepFile: (shootId: string, file: IncomingFile) => string;
  /** A file that the shoot names or that was sent to it; throws Fault `file.unknown` for any other. */
  readonly fileOf: (shootId: string, sha256: string) => StoredFile;
  /** Files that the shoot names: those that are here with their size, and those that are not without. */
  readonly filesOf: (shootId: string) => readonly (NamedFile & { readonly size_B?: number })[];
  /** What the footage of shoots is; of a change to it nobody is called back. */
  readonly footage: FootageShelf;
  /** Calls back after every change that is on disk; returns how to stop that. */
  readonly watch: (changed: (shootId: string) => void) => () => void;
  readonly close: () => void;
} // prettier-ignore
