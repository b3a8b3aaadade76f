-- What was made while the clock was in doubt: it hangs on a wall, and is no decision yet. Once the clock is right it becomes
-- one, or goes. And each start of the service, by which one that dies again and again is known.

CREATE TABLE unconfirmed_call (
    production_date TEXT PRIMARY KEY CHECK (production_date IS date(production_date)),
    decided_at      INTEGER NOT NULL,
    notes           TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE unconfirmed_call_group (
    production_date TEXT NOT NULL REFERENCES unconfirmed_call ON DELETE CASCADE,
    place           INTEGER NOT NULL,
    soak_group      TEXT NOT NULL,
    beans_mg        INTEGER NOT NULL CHECK (beans_mg >= 0),
    PRIMARY KEY (production_date, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE unconfirmed_call_tub (
    production_date    TEXT NOT NULL REFERENCES unconfirmed_call ON DELETE CASCADE,
    place              INTEGER NOT NULL,
    tub                TEXT NOT NULL,
    soak_group         TEXT NOT NULL,
    beans_mg           INTEGER NOT NULL CHECK (beans_mg >= 0),
    bean_lots          TEXT NOT NULL,
    lot_beans_mg       TEXT NOT NULL,
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

CREATE TABLE unconfirmed_plan (
    production_date TEXT PRIMARY KEY CHECK (production_date IS date(production_date)),
    made_at         INTEGER NOT NULL,
    json            TEXT NOT NULL,
    taken_at        INTEGER
) STRICT, WITHOUT ROWID;

CREATE TABLE service_start (
    seq      INTEGER PRIMARY KEY,
    at       INTEGER NOT NULL,
    ended_at INTEGER
) STRICT;
