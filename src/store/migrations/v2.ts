/**
 * Version 2: names of people and restores in the journal, what each shoot is to those who look through the list, and
 * files kept by hash. The journal is made anew, as the kinds that a row may have stand in its definition.
 */
export const HISTORY_AND_FILES = `
CREATE TABLE journalOfV2 (
  shoot TEXT NOT NULL REFERENCES shoots (id),
  number INTEGER NOT NULL CHECK (number > 0),
  editId TEXT NOT NULL UNIQUE,
  who TEXT NOT NULL,
  name TEXT,
  at TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('edit', 'undo', 'redo', 'restore')),
  patch TEXT NOT NULL,
  inverse TEXT NOT NULL,
  splices TEXT NOT NULL,
  summary TEXT NOT NULL,
  undoes INTEGER CHECK ((undoes IS NULL) = (kind IN ('edit', 'restore'))),
  restores INTEGER CHECK ((restores IS NULL) = (kind <> 'restore')),
  textOf INTEGER NOT NULL,
  reorders INTEGER NOT NULL CHECK (reorders IN (0, 1)),
  PRIMARY KEY (shoot, number),
  FOREIGN KEY (shoot, undoes) REFERENCES journalOfV2 (shoot, number)
) STRICT;

INSERT INTO journalOfV2
    (shoot, number, editId, who, at, kind, patch, inverse, splices, summary, undoes, textOf, reorders)
  SELECT shoot, number, editId, who, at, kind, patch, inverse, splices, summary, undoes, textOf, reorders
    FROM journal ORDER BY shoot, number;

DROP TABLE journal;
ALTER TABLE journalOfV2 RENAME TO journal;
CREATE UNIQUE INDEX journalUndoneOnce ON journal (shoot, undoes) WHERE undoes IS NOT NULL;
CREATE INDEX journalByWho ON journal (shoot, who, number);

ALTER TABLE shoots ADD COLUMN standing TEXT NOT NULL DEFAULT 'current'
  CHECK (standing IN ('current', 'template', 'archived'));

CREATE TABLE contents (
  sha256 TEXT PRIMARY KEY NOT NULL CHECK (length(sha256) = 64),
  size_B INTEGER NOT NULL CHECK (size_B = length(bytes)),
  kind TEXT NOT NULL,
  bytes BLOB NOT NULL
) STRICT;

CREATE TABLE shootFiles (
  shoot TEXT NOT NULL REFERENCES shoots (id),
  sha256 TEXT NOT NULL REFERENCES contents (sha256),
  name TEXT NOT NULL,
  PRIMARY KEY (shoot, sha256)
) STRICT;
`;
