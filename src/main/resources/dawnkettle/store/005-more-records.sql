-- Two kinds of record more: packs filled from a batch, and packs that came after a close. A CHECK cannot be changed, so
-- the table is written anew with all its rows.

ALTER TABLE record RENAME TO record_before;

CREATE TABLE record (
    seq          INTEGER PRIMARY KEY,
    kind         TEXT NOT NULL CHECK (kind IN ('received', 'counted-material', 'counted-packs', 'yielded', 'cooked',
                     'cooled', 'soaked', 'lost-batch', 'lost-packs', 'sold', 'delivered', 'returned', 'priced', 'packed',
                     'came-late')),
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

INSERT INTO record SELECT * FROM record_before;
DROP TABLE record_before;

CREATE INDEX record_by_lot ON record (lot, product);
CREATE INDEX record_by_time ON record (kind, happened_at);

CREATE TRIGGER record_stays BEFORE UPDATE ON record
BEGIN SELECT RAISE(ABORT, 'a record is only ever added'); END;
CREATE TRIGGER record_is_kept BEFORE DELETE ON record
BEGIN SELECT RAISE(ABORT, 'a record is only ever added'); END;
