-- The journal: append-only; seq rises in the order of commits and is never used twice.
CREATE TABLE entries (
    seq      INTEGER PRIMARY KEY AUTOINCREMENT,
    id       TEXT    NOT NULL UNIQUE,
    device   TEXT    NOT NULL,
    kind     TEXT    NOT NULL,
    at_ms    INTEGER NOT NULL,
    about    TEXT    NOT NULL,
    corrects TEXT,
    body     TEXT    NOT NULL,
    kept_ms  INTEGER NOT NULL
) STRICT;
