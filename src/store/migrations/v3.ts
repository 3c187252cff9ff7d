/**
 * Version 3: footage. What happened to clips is only ever added to. A job keeps what it can be gone on from beside how
 * far it has come, and of a clip the newest measurement is kept.
 */
export const FOOTAGE = `
CREATE TABLE happenings (
  shoot TEXT NOT NULL REFERENCES shoots (id),
  number INTEGER NOT NULL CHECK (number > 0),
  eventId TEXT NOT NULL UNIQUE,
  who TEXT NOT NULL,
  name TEXT,
  at TEXT NOT NULL,
  event TEXT NOT NULL,
  PRIMARY KEY (shoot, number)
) STRICT;

CREATE TRIGGER happeningsStand BEFORE UPDATE ON happenings
  BEGIN SELECT RAISE(ABORT, 'what happened is never changed'); END;
CREATE TRIGGER happeningsStay BEFORE DELETE ON happenings
  BEGIN SELECT RAISE(ABORT, 'what happened is never removed'); END;

CREATE TABLE jobs (
  id TEXT PRIMARY KEY NOT NULL,
  shoot TEXT NOT NULL REFERENCES shoots (id),
  clip TEXT NOT NULL,
  kind TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('waiting', 'running', 'done', 'failed', 'stopped')),
  input TEXT NOT NULL,
  done INTEGER NOT NULL CHECK (done >= 0),
  total INTEGER,
  fault TEXT,
  at TEXT NOT NULL,
  checkpoint BLOB
) STRICT;

CREATE INDEX jobsOfShoot ON jobs (shoot, at);

CREATE TABLE measurements (
  shoot TEXT NOT NULL REFERENCES shoots (id),
  clip TEXT NOT NULL,
  at TEXT NOT NULL,
  isWhole INTEGER NOT NULL CHECK (isWhole IN (0, 1)),
  basis TEXT NOT NULL,
  body TEXT NOT NULL,
  PRIMARY KEY (shoot, clip)
) STRICT;
`;
