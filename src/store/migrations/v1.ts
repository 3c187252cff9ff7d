/**
 * Version 1: shoots, and the journal of what was done to each. A row's number is the revision that it made.
 * `textOf` is the number of the row that first made the very text that this row left, 0 being the text as brought in.
 */
export const JOURNAL = `
CREATE TABLE shoots (
  id TEXT PRIMARY KEY NOT NULL,
  title TEXT NOT NULL,
  text TEXT NOT NULL,
  revision INTEGER NOT NULL CHECK (revision >= 0),
  created TEXT NOT NULL,
  updated TEXT NOT NULL,
  importId TEXT NOT NULL UNIQUE
) STRICT;

CREATE TABLE journal (
  shoot TEXT NOT NULL REFERENCES shoots (id),
  number INTEGER NOT NULL CHECK (number > 0),
  editId TEXT NOT NULL UNIQUE,
  who TEXT NOT NULL,
  at TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('edit', 'undo', 'redo')),
  patch TEXT NOT NULL,
  inverse TEXT NOT NULL,
  splices TEXT NOT NULL,
  summary TEXT NOT NULL,
  undoes INTEGER CHECK ((undoes IS NULL) = (kind = 'edit')),
  textOf INTEGER NOT NULL,
  reorders INTEGER NOT NULL CHECK (reorders IN (0, 1)),
  PRIMARY KEY (shoot, number),
  FOREIGN KEY (shoot, undoes) REFERENCES journal (shoot, number)
) STRICT;

CREATE UNIQUE INDEX journalUndoneOnce ON journal (shoot, undoes) WHERE undoes IS NOT NULL;
CREATE INDEX journalByWho ON journal (shoot, who, number);
`;
