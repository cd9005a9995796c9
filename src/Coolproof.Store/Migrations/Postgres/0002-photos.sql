-- Bytes of photos, apart from the journal, which names them.
CREATE TABLE coolproof.photos (
    id         text   NOT NULL PRIMARY KEY,
    media_type text   NOT NULL,
    bytes      bytea  NOT NULL,
    kept_ms    bigint NOT NULL
);
