-- What was decided: the soak calls and every revision of every day's plan. None of it is ever changed.

CREATE TABLE soak_call (
    production_date TEXT PRIMARY KEY CHECK (production_date IS date(production_date)),
    decided_at      INTEGER NOT NULL,
    notes           TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE soak_call_group (
    production_date TEXT NOT NULL REFERENCES soak_call,
    place           INTEGER NOT NULL,
    soak_group      TEXT NOT NULL,
    beans_mg        INTEGER NOT NULL CHECK (beans_mg >= 0),
    PRIMARY KEY (production_date, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE soak_call_tub (
    production_date    TEXT NOT NULL REFERENCES soak_call,
    place              INTEGER NOT NULL,
    tub                TEXT NOT NULL,
    soak_group         TEXT NOT NULL,
    beans_mg           INTEGER NOT NULL CHECK (beans_mg >= 0),
    bean_lots          TEXT NOT NULL,
    water_mg           INTEGER NOT NULL CHECK (water_mg >= 0),
    water_tenths       INTEGER NOT NULL,
    room_tenths        INTEGER NOT NULL,
    source             TEXT NOT NULL,
    fill_at            INTEGER NOT NULL,
    ready_at           INTEGER NOT NULL,
    latest_grind_at    INTEGER NOT NULL,
    equivalent_minutes INTEGER NOT NULL,
    left_over_mg       INTEGER NOT NULL CHECK (left_over_mg >= 0),
    PRIMARY KEY (production_date, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE plan (
    production_date TEXT NOT NULL CHECK (production_date IS date(production_date)),
    revision        INTEGER NOT NULL CHECK (revision >= 1),
    revision_of     INTEGER CHECK (revision_of < revision),
    computed_at     INTEGER NOT NULL,
    mode            TEXT NOT NULL,
    json            TEXT NOT NULL CHECK (json_valid(json)),
    PRIMARY KEY (production_date, revision)
) STRICT;

-- The revision that holds.
CREATE VIEW plan_in_force AS
SELECT production_date, revision FROM plan AS p
WHERE NOT EXISTS (SELECT 1 FROM plan AS later
                  WHERE later.production_date = p.production_date AND later.revision > p.revision);

CREATE TABLE plan_order (
    production_date TEXT NOT NULL,
    revision        INTEGER NOT NULL,
    order_number    TEXT NOT NULL,
    line            INTEGER NOT NULL,
    customer        TEXT NOT NULL,
    product         TEXT NOT NULL,
    delivery_date   TEXT NOT NULL,
    packs           INTEGER NOT NULL CHECK (packs >= 0),
    planned_packs   INTEGER NOT NULL CHECK (planned_packs BETWEEN 0 AND packs),
    reason          TEXT NOT NULL,
    late            INTEGER NOT NULL CHECK (late IN (0, 1)),
    PRIMARY KEY (production_date, revision, order_number, line),
    FOREIGN KEY (production_date, revision) REFERENCES plan
) STRICT, WITHOUT ROWID;

CREATE TABLE plan_tub (
    production_date TEXT NOT NULL,
    revision        INTEGER NOT NULL,
    place           INTEGER NOT NULL,
    tub             TEXT NOT NULL,
    soak_group      TEXT NOT NULL,
    beans_mg        INTEGER NOT NULL CHECK (beans_mg >= 0),
    left_over_mg    INTEGER NOT NULL CHECK (left_over_mg >= 0),
    bean_lots       TEXT NOT NULL,
    fill_at         INTEGER NOT NULL,
    PRIMARY KEY (production_date, revision, place),
    FOREIGN KEY (production_date, revision) REFERENCES plan
) STRICT, WITHOUT ROWID;

CREATE TABLE plan_batch (
    production_date TEXT NOT NULL,
    revision        INTEGER NOT NULL,
    lot             TEXT NOT NULL,
    batch           TEXT NOT NULL,
    recipe          TEXT NOT NULL,
    beans_mg        INTEGER NOT NULL CHECK (beans_mg >= 0),
    expected_mg     INTEGER NOT NULL CHECK (expected_mg >= 0),
    dose_material   TEXT,
    dose_mg         INTEGER,
    material_lots   TEXT NOT NULL,
    pack_date       TEXT NOT NULL CHECK (pack_date IS date(pack_date)),
    PRIMARY KEY (production_date, revision, lot),
    FOREIGN KEY (production_date, revision) REFERENCES plan
) STRICT, WITHOUT ROWID;

CREATE INDEX plan_batch_by_lot ON plan_batch (lot);

CREATE TABLE plan_batch_tub (
    production_date TEXT NOT NULL,
    revision        INTEGER NOT NULL,
    lot             TEXT NOT NULL,
    tub             TEXT NOT NULL,
    beans_mg        INTEGER NOT NULL CHECK (beans_mg >= 0),
    PRIMARY KEY (production_date, revision, lot, tub),
    FOREIGN KEY (production_date, revision, lot) REFERENCES plan_batch
) STRICT, WITHOUT ROWID;

CREATE TABLE plan_feed (
    production_date TEXT NOT NULL,
    revision        INTEGER NOT NULL,
    lot             TEXT NOT NULL,
    into_lot        TEXT NOT NULL,
    mass_mg         INTEGER NOT NULL CHECK (mass_mg >= 0),
    PRIMARY KEY (production_date, revision, lot, into_lot),
    FOREIGN KEY (production_date, revision, lot) REFERENCES plan_batch
) STRICT, WITHOUT ROWID;

CREATE TABLE plan_pack (
    production_date TEXT NOT NULL,
    revision        INTEGER NOT NULL,
    lot             TEXT NOT NULL,
    product         TEXT NOT NULL,
    packs           INTEGER NOT NULL CHECK (packs >= 0),
    cases           INTEGER NOT NULL CHECK (cases >= 0),
    loose_packs     INTEGER NOT NULL CHECK (loose_packs >= 0),
    PRIMARY KEY (production_date, revision, lot, product),
    FOREIGN KEY (production_date, revision, lot) REFERENCES plan_batch
) STRICT, WITHOUT ROWID;

CREATE TABLE plan_label (
    production_date TEXT NOT NULL,
    revision        INTEGER NOT NULL,
    lot             TEXT NOT NULL,
    product         TEXT NOT NULL,
    cases           INTEGER NOT NULL CHECK (cases >= 0),
    part_cases      INTEGER NOT NULL CHECK (part_cases >= 0),
    packs           INTEGER NOT NULL CHECK (packs >= 0),
    best_before     TEXT NOT NULL CHECK (best_before IS date(best_before)),
    PRIMARY KEY (production_date, revision, lot, product),
    FOREIGN KEY (production_date, revision) REFERENCES plan
) STRICT, WITHOUT ROWID;

CREATE TABLE plan_allocation (
    production_date TEXT NOT NULL,
    revision        INTEGER NOT NULL,
    order_number    TEXT NOT NULL,
    line            INTEGER NOT NULL,
    lot             TEXT NOT NULL,
    route           TEXT NOT NULL,
    customer        TEXT NOT NULL,
    product         TEXT NOT NULL,
    packs           INTEGER NOT NULL CHECK (packs >= 1),
    from_stock      INTEGER NOT NULL CHECK (from_stock IN (0, 1)),
    delivery_date   TEXT NOT NULL,
    PRIMARY KEY (production_date, revision, order_number, line, lot),
    FOREIGN KEY (production_date, revision, order_number, line) REFERENCES plan_order
) STRICT, WITHOUT ROWID;

CREATE INDEX plan_allocation_by_lot ON plan_allocation (lot);

CREATE TRIGGER soak_call_stays BEFORE UPDATE ON soak_call
BEGIN SELECT RAISE(ABORT, 'a soak call stays as it was decided'); END;
CREATE TRIGGER soak_call_is_kept BEFORE DELETE ON soak_call
BEGIN SELECT RAISE(ABORT, 'a soak call stays as it was decided'); END;
CREATE TRIGGER soak_call_group_stays BEFORE UPDATE ON soak_call_group
BEGIN SELECT RAISE(ABORT, 'a soak call stays as it was decided'); END;
CREATE TRIGGER soak_call_group_is_kept BEFORE DELETE ON soak_call_group
BEGIN SELECT RAISE(ABORT, 'a soak call stays as it was decided'); END;
CREATE TRIGGER soak_call_tub_stays BEFORE UPDATE ON soak_call_tub
BEGIN SELECT RAISE(ABORT, 'a soak call stays as it was decided'); END;
CREATE TRIGGER soak_call_tub_is_kept BEFORE DELETE ON soak_call_tub
BEGIN SELECT RAISE(ABORT, 'a soak call stays as it was decided'); END;
CREATE TRIGGER plan_stays BEFORE UPDATE ON plan
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_is_kept BEFORE DELETE ON plan
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_order_stays BEFORE UPDATE ON plan_order
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_order_is_kept BEFORE DELETE ON plan_order
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_tub_stays BEFORE UPDATE ON plan_tub
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_tub_is_kept BEFORE DELETE ON plan_tub
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_batch_stays BEFORE UPDATE ON plan_batch
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_batch_is_kept BEFORE DELETE ON plan_batch
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_batch_tub_stays BEFORE UPDATE ON plan_batch_tub
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_batch_tub_is_kept BEFORE DELETE ON plan_batch_tub
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_feed_stays BEFORE UPDATE ON plan_feed
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_feed_is_kept BEFORE DELETE ON plan_feed
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_pack_stays BEFORE UPDATE ON plan_pack
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_pack_is_kept BEFORE DELETE ON plan_pack
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_label_stays BEFORE UPDATE ON plan_label
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_label_is_kept BEFORE DELETE ON plan_label
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_allocation_stays BEFORE UPDATE ON plan_allocation
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
CREATE TRIGGER plan_allocation_is_kept BEFORE DELETE ON plan_allocation
BEGIN SELECT RAISE(ABORT, 'a plan stays as it was decided'); END;
