-- Bytes of photos, apart from the journal, which names them.
CREATE TABLE photos (
    id         TEXT    NOT NULL PRIMARY KEY,
    media_type TEXT    NOT NULL,
    bytes      BLOB    NOT NULL,
    kept_ms    INTEGER NOT NULL
) STRICT;
