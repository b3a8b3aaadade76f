-- Three kinds of records more: hands that are away, a station that is down, and one that is up again. A CHECK cannot be
-- changed, so the table is written anew with all its rows; the view on it is made again.
-- A tub of the soak call keeps how much of each lot of beans is in it, in the order of its lots.

DROP VIEW record_standing;
ALTER TABLE record RENAME TO record_before;

CREATE TABLE record (
    seq          INTEGER PRIMARY KEY,
    kind         TEXT NOT NULL CHECK (kind IN ('received', 'counted-material', 'counted-packs', 'yielded', 'cooked',
                     'cooled', 'soaked', 'lost-batch', 'lost-packs', 'sold', 'delivered', 'returned', 'priced', 'packed',
                     'came-late', 'used-material', 'lost-material', 'wasted', 'soak-seen', 'containers', 'loaded',
                     'destroyed', 'held', 'released', 'cancelled', 'held-bought', 'released-bought', 'worked', 'away', 'down', 'up')),
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
    cancels      INTEGER REFERENCES record (seq),
    half_hands   INTEGER CHECK (half_hands > 0),
    from_at      INTEGER,
    until_at     INTEGER CHECK (until_at > from_at),
    UNIQUE (origin, kind)
) STRICT;

INSERT INTO record SELECT *, NULL, NULL, NULL FROM record_before;
DROP TABLE record_before;

CREATE INDEX record_by_lot ON record (lot, product);
CREATE INDEX record_by_time ON record (kind, happened_at);
CREATE INDEX record_cancelled ON record (cancels) WHERE cancels IS NOT NULL;

CREATE TRIGGER record_stays BEFORE UPDATE ON record
BEGIN SELECT RAISE(ABORT, 'a record is only ever added'); END;
CREATE TRIGGER record_is_kept BEFORE DELETE ON record
BEGIN SELECT RAISE(ABORT, 'a record is only ever added'); END;

-- Records that count: all but those that a later one cancelled. A cancelling record is not cancelled itself; what it
-- took back is written down again instead.
CREATE VIEW record_standing AS
SELECT * FROM record AS r WHERE NOT EXISTS (SELECT 1 FROM record AS c WHERE c.cancels = r.seq);

ALTER TABLE soak_call_tub ADD COLUMN lot_beans_mg TEXT NOT NULL DEFAULT '';
