-- What a person was to know at once: opened, told in a mail, cleared.
CREATE TABLE alarm (
    id         INTEGER PRIMARY KEY,
    key        TEXT NOT NULL,
    happened   TEXT NOT NULL,
    safe       TEXT NOT NULL,
    todo       TEXT NOT NULL,
    useful_by  INTEGER,
    passes     INTEGER NOT NULL CHECK (passes IN (0, 1)),
    opened_at  INTEGER NOT NULL,
    told_at    INTEGER,
    cleared_at INTEGER,
    clear_told INTEGER NOT NULL DEFAULT 0 CHECK (clear_told IN (0, 1))
) STRICT;

CREATE UNIQUE INDEX alarm_open ON alarm (key) WHERE cleared_at IS NULL;
CREATE INDEX alarm_told ON alarm (told_at);

CREATE TRIGGER alarm_text_stays BEFORE UPDATE OF key, happened, safe, todo, useful_by, passes, opened_at ON alarm
BEGIN SELECT RAISE(ABORT, 'an alarm stays as it was written'); END;
CREATE TRIGGER alarm_is_kept BEFORE DELETE ON alarm
BEGIN SELECT RAISE(ABORT, 'an alarm is kept'); END;
