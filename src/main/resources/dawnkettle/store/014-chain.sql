-- A chain over what is only ever added: each night's link holds the SHA-256 of the link before it and of all rows since, part by
-- part, so that an old row that was changed or is missing is found, and where. Mails in the outbox are not in it: their words may
-- be erased.
CREATE TABLE chain (
    seq    INTEGER PRIMARY KEY,
    at     INTEGER NOT NULL,
    before TEXT NOT NULL,
    hash   TEXT NOT NULL UNIQUE CHECK (length(hash) = 64)
) STRICT;

-- Rows of one table: those above one number up to another, or those of a day (and revision).
CREATE TABLE chain_part (
    link      INTEGER NOT NULL REFERENCES chain,
    rows_of   TEXT NOT NULL,
    from_key  TEXT NOT NULL,
    to_key    TEXT NOT NULL,
    columns   TEXT NOT NULL,
    row_count INTEGER NOT NULL,
    hash      TEXT NOT NULL CHECK (length(hash) = 64),
    PRIMARY KEY (rows_of, from_key, to_key)
) STRICT, WITHOUT ROWID;

CREATE INDEX chain_part_by_link ON chain_part (link);

CREATE TRIGGER chain_stays BEFORE UPDATE ON chain
BEGIN SELECT RAISE(ABORT, 'a link of the chain stays as it is'); END;
CREATE TRIGGER chain_is_kept BEFORE DELETE ON chain
BEGIN SELECT RAISE(ABORT, 'a link of the chain is kept'); END;
CREATE TRIGGER chain_part_stays BEFORE UPDATE ON chain_part
BEGIN SELECT RAISE(ABORT, 'a link of the chain stays as it is'); END;
CREATE TRIGGER chain_part_is_kept BEFORE DELETE ON chain_part
BEGIN SELECT RAISE(ABORT, 'a link of the chain is kept'); END;
