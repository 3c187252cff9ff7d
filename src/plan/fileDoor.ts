/** A door by which whoever has read a shoot's files tells plans what they hold, by the hash that the document names. */
import type { Shoot } from '../document/schema.ts';

export type FilesOf<Content> = ReadonlyMap<string, Content>;

/** Why a file that the shoot names is not read, by its hash: half a sentence that begins with its name. */
export type UnreadFiles = ReadonlyMap<string, string>;

export interface Told<Content> {
  readonly files: FilesOf<Content>;
  readonly unread: UnreadFiles;
}

export interface FileDoor<Content> {
  readonly tell: (shoot: Shoot, files: FilesOf<Content>, unread?: UnreadFiles) => void;
  /** All that was told of a shoot's files, the very same until something else is; undefined where nobody read them. */
  readonly toldOf: (shoot: Shoot) => Told<Content> | undefined;
}

const NONE: UnreadFiles = new Map();

const isSame = <T>(a: ReadonlyMap<string, T>, b: ReadonlyMap<string, T>): boolean =>
  a === b || (a.size === b.size && [...a].every(([key, value]) => b.get(key) === value));

/**
 * A hash decides what a file holds, so a plan made with it is the same wherever it was read. What was told stays with the
 * shoot's files through every edit that leaves those alone.
 */
export function fileDoor<Content extends object>(): FileDoor<Content> {
  const told = new WeakMap<Shoot['files'], Told<Content>>();
  // The same told of other files, such as those of a shoot with one picture more, is no reason to plan again.
  let last: Told<Content> | undefined;
  return {
    tell: (shoot, files, unread = NONE) => {
      if (!last || !isSame(last.files, files) || !isSame(last.unread, unread)) last = { files, unread };
      told.set(shoot.files, last);
    },
    toldOf: ({ files }) => told.get(files),
  };
}
