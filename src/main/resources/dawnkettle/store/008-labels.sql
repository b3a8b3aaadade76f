-- The labels that are about to be sent, noted before their first byte: after a power cut only these are in doubt.

CREATE TABLE label_in_flight (
    seq         INTEGER PRIMARY KEY,
    lot         TEXT NOT NULL,
    product     TEXT NOT NULL,
    from_number INTEGER NOT NULL CHECK (from_number >= 1),
    to_number   INTEGER NOT NULL CHECK (to_number >= from_number),
    at          INTEGER NOT NULL,
    landed_at   INTEGER
) STRICT;

CREATE INDEX label_in_flight_now ON label_in_flight (lot, product) WHERE landed_at IS NULL;

CREATE TRIGGER label_in_flight_stays BEFORE UPDATE OF seq, lot, product, from_number, to_number, at ON label_in_flight
BEGIN SELECT RAISE(ABORT, 'what was sent stays as it was noted'); END;
CREATE TRIGGER label_lands_once BEFORE UPDATE ON label_in_flight WHEN OLD.landed_at IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'a group that has landed stays as it was noted'); END;
CREATE TRIGGER label_in_flight_is_kept BEFORE DELETE ON label_in_flight
BEGIN SELECT RAISE(ABORT, 'what was sent stays as it was noted'); END;

-- Of a run that was on its way when this step was taken nobody noted the group, so that all of it counts as on the line.
INSERT INTO label_in_flight (lot, product, from_number, to_number, at)
SELECT substr(key, 7, instr(substr(key, 7), '/') - 1), substr(key, 7 + instr(substr(key, 7), '/')), 1, 99999, changed_at
FROM effect WHERE state = 'sending' AND key GLOB 'label/*/*';
