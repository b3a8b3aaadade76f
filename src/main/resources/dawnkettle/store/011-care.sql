-- The care of the ledger itself: what was noted of the clock, that it was put back from a copy, what was erased.

CREATE TABLE clock_event (
    seq  INTEGER PRIMARY KEY,
    kind TEXT NOT NULL CHECK (kind IN ('gap', 'jump', 'confirmed')),
    at   INTEGER NOT NULL,
    day  TEXT NOT NULL CHECK (day IS date(day)),
    boot TEXT NOT NULL,
    note TEXT NOT NULL
) STRICT;

CREATE TRIGGER clock_event_stays BEFORE UPDATE ON clock_event
BEGIN SELECT RAISE(ABORT, 'what was noted of the clock is only ever added to'); END;
CREATE TRIGGER clock_event_is_kept BEFORE DELETE ON clock_event
BEGIN SELECT RAISE(ABORT, 'what was noted of the clock is only ever added to'); END;

CREATE TABLE restored (
    seq       INTEGER PRIMARY KEY,
    at        INTEGER NOT NULL,
    copy      TEXT NOT NULL,
    copied_at INTEGER NOT NULL,
    is_exact  INTEGER NOT NULL CHECK (is_exact IN (0, 1))
) STRICT;

CREATE TABLE restored_label (
    restored INTEGER NOT NULL REFERENCES restored,
    lot      TEXT NOT NULL,
    product  TEXT NOT NULL,
    PRIMARY KEY (restored, lot, product)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER restored_stays BEFORE UPDATE ON restored
BEGIN SELECT RAISE(ABORT, 'that the ledger was put back stays as it is'); END;
CREATE TRIGGER restored_is_kept BEFORE DELETE ON restored
BEGIN SELECT RAISE(ABORT, 'that the ledger was put back is kept'); END;
CREATE TRIGGER restored_label_stays BEFORE UPDATE ON restored_label
BEGIN SELECT RAISE(ABORT, 'that the ledger was put back stays as it is'); END;
CREATE TRIGGER restored_label_is_kept BEFORE DELETE ON restored_label
BEGIN SELECT RAISE(ABORT, 'that the ledger was put back is kept'); END;

CREATE TABLE erasure (
    seq   INTEGER PRIMARY KEY,
    at    INTEGER NOT NULL,
    mails INTEGER NOT NULL,
    why   TEXT NOT NULL
) STRICT;

CREATE TRIGGER erasure_stays BEFORE UPDATE ON erasure
BEGIN SELECT RAISE(ABORT, 'that something was erased stays as it is'); END;
CREATE TRIGGER erasure_is_kept BEFORE DELETE ON erasure
BEGIN SELECT RAISE(ABORT, 'that something was erased is kept'); END;

-- The words of a mail that is over with may be taken out, all of them or none; nothing else of it may change.
DROP TRIGGER outbox_text_stays;
CREATE TRIGGER outbox_text_stays BEFORE UPDATE OF message_id, subject, message, queued_at ON outbox
WHEN NOT (OLD.state IN ('sent', 'refused') AND NEW.subject = '' AND length(NEW.message) = 0
          AND NEW.message_id = OLD.message_id AND NEW.queued_at = OLD.queued_at)
BEGIN SELECT RAISE(ABORT, 'a queued mail stays as it was written'); END;
DROP TRIGGER outbox_sent_stays;
CREATE TRIGGER outbox_sent_stays BEFORE UPDATE OF state, attempts, next_try, maybe_sent, changed_at, note ON outbox
WHEN OLD.state = 'sent'
BEGIN SELECT RAISE(ABORT, 'a mail is sent once'); END;
