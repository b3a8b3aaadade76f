-- The order book. Lines and amendments are only ever added; of two lines with one order and line number the first stands.
-- In every table: instants are INTEGER milliseconds since 1970-01-01T00:00Z, days are ISO 8601 text, masses are INTEGER
-- milligrams, money is INTEGER minor units, temperatures are INTEGER tenths of a degree Celsius.

CREATE TABLE dropped_file (
    sha256   TEXT PRIMARY KEY CHECK (length(sha256) = 64),
    name     TEXT NOT NULL,
    taken_at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE order_line (
    seq           INTEGER PRIMARY KEY,
    order_number  TEXT NOT NULL,
    line          INTEGER NOT NULL CHECK (line >= 1),
    customer      TEXT NOT NULL,
    product       TEXT NOT NULL,
    packs         INTEGER NOT NULL CHECK (packs >= 1),
    delivery_date TEXT NOT NULL CHECK (delivery_date IS date(delivery_date)),
    source        TEXT NOT NULL CHECK (source IN ('file', 'command', 'mail', 'standing')),
    origin        TEXT NOT NULL,
    taken_at      INTEGER NOT NULL,
    UNIQUE (order_number, line, customer, product, packs, delivery_date)
) STRICT;

CREATE INDEX order_line_by_delivery ON order_line (delivery_date);

CREATE TABLE amendment (
    seq          INTEGER PRIMARY KEY,
    order_number TEXT NOT NULL,
    line         INTEGER NOT NULL,
    packs        INTEGER NOT NULL CHECK (packs >= 0),
    source       TEXT NOT NULL CHECK (source IN ('file', 'command', 'mail', 'standing')),
    origin       TEXT NOT NULL,
    taken_at     INTEGER NOT NULL,
    late         INTEGER NOT NULL CHECK (late IN (0, 1))
) STRICT;

CREATE INDEX amendment_by_line ON amendment (order_number, line);

CREATE TABLE book_close (
    production_date TEXT PRIMARY KEY CHECK (production_date IS date(production_date)),
    closed_at       INTEGER NOT NULL,
    line_count      INTEGER NOT NULL,
    pack_count      INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- A line belongs to one close for good.
CREATE TABLE book_close_line (
    order_number    TEXT NOT NULL,
    line            INTEGER NOT NULL,
    production_date TEXT NOT NULL REFERENCES book_close,
    place           INTEGER NOT NULL,
    customer        TEXT NOT NULL,
    route           TEXT NOT NULL,
    product         TEXT NOT NULL,
    packs           INTEGER NOT NULL CHECK (packs >= 1),
    delivery_date   TEXT NOT NULL CHECK (delivery_date IS date(delivery_date)),
    source          TEXT NOT NULL,
    PRIMARY KEY (order_number, line)
) STRICT, WITHOUT ROWID;

CREATE UNIQUE INDEX book_close_line_by_day ON book_close_line (production_date, place);

CREATE TRIGGER dropped_file_stays BEFORE UPDATE ON dropped_file
BEGIN SELECT RAISE(ABORT, 'a dropped file is only ever added'); END;
CREATE TRIGGER dropped_file_is_kept BEFORE DELETE ON dropped_file
BEGIN SELECT RAISE(ABORT, 'a dropped file is only ever added'); END;
CREATE TRIGGER order_line_stays BEFORE UPDATE ON order_line
BEGIN SELECT RAISE(ABORT, 'an order line is only ever added'); END;
CREATE TRIGGER order_line_is_kept BEFORE DELETE ON order_line
BEGIN SELECT RAISE(ABORT, 'an order line is only ever added'); END;
CREATE TRIGGER amendment_stays BEFORE UPDATE ON amendment
BEGIN SELECT RAISE(ABORT, 'an amendment is only ever added'); END;
CREATE TRIGGER amendment_is_kept BEFORE DELETE ON amendment
BEGIN SELECT RAISE(ABORT, 'an amendment is only ever added'); END;
CREATE TRIGGER book_close_stays BEFORE UPDATE ON book_close
BEGIN SELECT RAISE(ABORT, 'a close stays as it is'); END;
CREATE TRIGGER book_close_is_kept BEFORE DELETE ON book_close
BEGIN SELECT RAISE(ABORT, 'a close stays as it is'); END;
CREATE TRIGGER book_close_line_stays BEFORE UPDATE ON book_close_line
BEGIN SELECT RAISE(ABORT, 'a close stays as it is'); END;
CREATE TRIGGER book_close_line_is_kept BEFORE DELETE ON book_close_line
BEGIN SELECT RAISE(ABORT, 'a close stays as it is'); END;
CREATE TRIGGER book_close_is_whole BEFORE INSERT ON book_close_line
WHEN NEW.place > (SELECT line_count FROM book_close WHERE production_date = NEW.production_date)
BEGIN SELECT RAISE(ABORT, 'a close stays as it is'); END;
