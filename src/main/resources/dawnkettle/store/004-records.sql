-- What happened, as people wrote it down. A mistake is put right by a later record.
-- One row a record; which columns a kind uses is said where it is read and written.

CREATE TABLE record (
    seq          INTEGER PRIMARY KEY,
    kind         TEXT NOT NULL CHECK (kind IN ('received', 'counted-material', 'counted-packs', 'yielded', 'cooked',
                     'cooled', 'soaked', 'lost-batch', 'lost-packs', 'sold', 'delivered', 'returned', 'priced')),
    happened_at  INTEGER NOT NULL,
    recorded_at  INTEGER NOT NULL,
    origin       TEXT NOT NULL CHECK (origin <> ''),
    lot          TEXT,
    product      TEXT,
    material     TEXT,
    recipe       TEXT,
    customer     TEXT,
    order_number TEXT,
    line         INTEGER,
    packs        INTEGER CHECK (packs >= 0),
    amount       INTEGER CHECK (amount >= 0),
    unit         TEXT CHECK (unit IN ('kilogram', 'litre', 'piece')),
    beans_mg     INTEGER CHECK (beans_mg >= 0),
    mass_mg      INTEGER CHECK (mass_mg >= 0),
    tenths       INTEGER,
    minutes      INTEGER CHECK (minutes >= 0),
    minor        INTEGER,
    currency     TEXT,
    day          TEXT CHECK (day IS date(day)),
    best_before  TEXT CHECK (best_before IS date(best_before)),
    place        TEXT,
    note         TEXT,
    UNIQUE (origin, kind)
) STRICT;

CREATE INDEX record_by_lot ON record (lot, product);
CREATE INDEX record_of_tub ON record (day, place) WHERE kind = 'soaked';
CREATE INDEX record_by_time ON record (kind, happened_at);

CREATE TRIGGER record_stays BEFORE UPDATE ON record
BEGIN SELECT RAISE(ABORT, 'a record is only ever added'); END;
CREATE TRIGGER record_is_kept BEFORE DELETE ON record
BEGIN SELECT RAISE(ABORT, 'a record is only ever added'); END;
