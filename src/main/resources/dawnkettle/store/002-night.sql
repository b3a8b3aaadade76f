-- The night: its steps, what they do to the world, the labels that came out, the mails that wait.

CREATE TABLE step (
    step          TEXT NOT NULL,
    business_date TEXT NOT NULL CHECK (business_date IS date(business_date)),
    revision      INTEGER NOT NULL CHECK (revision >= 1),
    state         TEXT NOT NULL CHECK (state IN ('due', 'started', 'done', 'failed', 'skipped')),
    due_at        INTEGER NOT NULL,
    attempts      INTEGER NOT NULL DEFAULT 0,
    changed_at    INTEGER NOT NULL,
    note          TEXT NOT NULL DEFAULT '',
    PRIMARY KEY (step, business_date, revision)
) STRICT, WITHOUT ROWID;

CREATE TABLE step_event (
    seq           INTEGER PRIMARY KEY,
    step          TEXT NOT NULL,
    business_date TEXT NOT NULL,
    revision      INTEGER NOT NULL,
    state         TEXT NOT NULL,
    at            INTEGER NOT NULL,
    note          TEXT NOT NULL
) STRICT;

CREATE UNIQUE INDEX step_done_once ON step_event (step, business_date, revision) WHERE state = 'done';

CREATE TRIGGER step_enters_as_due BEFORE INSERT ON step WHEN NEW.state <> 'due'
BEGIN SELECT RAISE(ABORT, 'a step begins as due'); END;
CREATE TRIGGER step_moves_on BEFORE UPDATE ON step
WHEN NOT ((OLD.state IN ('due', 'failed', 'started') AND NEW.state = 'started')
       OR (OLD.state = 'started' AND NEW.state IN ('done', 'failed'))
       OR (OLD.state IN ('due', 'failed', 'started') AND NEW.state = 'skipped'))
BEGIN SELECT RAISE(ABORT, 'a step goes from due to started to done, and is done once'); END;
CREATE TRIGGER step_is_kept BEFORE DELETE ON step
BEGIN SELECT RAISE(ABORT, 'a step is kept'); END;
CREATE TRIGGER step_entered AFTER INSERT ON step
BEGIN INSERT INTO step_event (step, business_date, revision, state, at, note)
      VALUES (NEW.step, NEW.business_date, NEW.revision, NEW.state, NEW.changed_at, NEW.note); END;
CREATE TRIGGER step_moved AFTER UPDATE ON step
BEGIN INSERT INTO step_event (step, business_date, revision, state, at, note)
      VALUES (NEW.step, NEW.business_date, NEW.revision, NEW.state, NEW.changed_at, NEW.note); END;
CREATE TRIGGER step_event_stays BEFORE UPDATE ON step_event
BEGIN SELECT RAISE(ABORT, 'a step''s history is only ever added to'); END;
CREATE TRIGGER step_event_is_kept BEFORE DELETE ON step_event
BEGIN SELECT RAISE(ABORT, 'a step''s history is only ever added to'); END;

CREATE TABLE effect (
    key           TEXT PRIMARY KEY,
    kind          TEXT NOT NULL CHECK (kind IN ('sheet', 'label', 'mail')),
    business_date TEXT NOT NULL CHECK (business_date IS date(business_date)),
    state         TEXT NOT NULL CHECK (state IN ('intended', 'sending', 'done', 'failed', 'ambiguous')),
    attempts      INTEGER NOT NULL DEFAULT 0,
    intended_at   INTEGER NOT NULL,
    changed_at    INTEGER NOT NULL,
    note          TEXT NOT NULL DEFAULT ''
) STRICT, WITHOUT ROWID;

CREATE TABLE effect_event (
    seq   INTEGER PRIMARY KEY,
    key   TEXT NOT NULL REFERENCES effect,
    state TEXT NOT NULL,
    at    INTEGER NOT NULL,
    note  TEXT NOT NULL
) STRICT;

CREATE UNIQUE INDEX effect_done_once ON effect_event (key) WHERE state = 'done';

CREATE TRIGGER effect_enters_as_intended BEFORE INSERT ON effect WHEN NEW.state <> 'intended'
BEGIN SELECT RAISE(ABORT, 'an effect is intended first'); END;
CREATE TRIGGER effect_moves_on BEFORE UPDATE ON effect
WHEN NOT ((OLD.state IN ('intended', 'failed', 'ambiguous') AND NEW.state = 'sending')
       OR (OLD.state = 'sending' AND NEW.state IN ('done', 'failed', 'ambiguous'))
       OR (OLD.state = 'ambiguous' AND NEW.state IN ('done', 'failed')))
BEGIN SELECT RAISE(ABORT, 'an effect is intended, then sending, then known or not known to be done'); END;
CREATE TRIGGER effect_is_kept BEFORE DELETE ON effect
BEGIN SELECT RAISE(ABORT, 'an effect is kept'); END;
CREATE TRIGGER effect_entered AFTER INSERT ON effect
BEGIN INSERT INTO effect_event (key, state, at, note) VALUES (NEW.key, NEW.state, NEW.changed_at, NEW.note); END;
CREATE TRIGGER effect_moved AFTER UPDATE ON effect
BEGIN INSERT INTO effect_event (key, state, at, note) VALUES (NEW.key, NEW.state, NEW.changed_at, NEW.note); END;
CREATE TRIGGER effect_event_stays BEFORE UPDATE ON effect_event
BEGIN SELECT RAISE(ABORT, 'an effect''s history is only ever added to'); END;
CREATE TRIGGER effect_event_is_kept BEFORE DELETE ON effect_event
BEGIN SELECT RAISE(ABORT, 'an effect''s history is only ever added to'); END;

-- Labels are numbered from 1 within a lot and product.
CREATE TABLE label_group (
    seq         INTEGER PRIMARY KEY,
    lot         TEXT NOT NULL,
    product     TEXT NOT NULL,
    from_number INTEGER NOT NULL CHECK (from_number >= 1),
    to_number   INTEGER NOT NULL CHECK (to_number >= from_number),
    outcome     TEXT NOT NULL CHECK (outcome IN ('confirmed', 'uncertain', 'void')),
    at          INTEGER NOT NULL,
    note        TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE INDEX label_group_by_lot ON label_group (lot, product);

CREATE TRIGGER label_confirmed_once BEFORE INSERT ON label_group
WHEN NEW.outcome = 'confirmed' AND EXISTS (
    SELECT 1 FROM label_group AS g
    WHERE g.lot = NEW.lot AND g.product = NEW.product AND g.outcome = 'confirmed'
      AND g.from_number <= NEW.to_number AND g.to_number >= NEW.from_number)
BEGIN SELECT RAISE(ABORT, 'a label is confirmed once'); END;
CREATE TRIGGER label_group_stays BEFORE UPDATE ON label_group
BEGIN SELECT RAISE(ABORT, 'the label journal is only ever added to'); END;
CREATE TRIGGER label_group_is_kept BEFORE DELETE ON label_group
BEGIN SELECT RAISE(ABORT, 'the label journal is only ever added to'); END;

CREATE TABLE outbox (
    message_id TEXT PRIMARY KEY,
    subject    TEXT NOT NULL,
    message    BLOB NOT NULL,
    state      TEXT NOT NULL CHECK (state IN ('waiting', 'sending', 'sent', 'refused')),
    attempts   INTEGER NOT NULL DEFAULT 0,
    next_try   INTEGER NOT NULL,
    maybe_sent INTEGER NOT NULL DEFAULT 0 CHECK (maybe_sent IN (0, 1)),
    queued_at  INTEGER NOT NULL,
    changed_at INTEGER NOT NULL,
    note       TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TRIGGER outbox_text_stays BEFORE UPDATE OF message_id, subject, message, queued_at ON outbox
BEGIN SELECT RAISE(ABORT, 'a queued mail stays as it was written'); END;
CREATE TRIGGER outbox_sent_stays BEFORE UPDATE ON outbox WHEN OLD.state = 'sent'
BEGIN SELECT RAISE(ABORT, 'a mail is sent once'); END;
CREATE TRIGGER outbox_is_kept BEFORE DELETE ON outbox
BEGIN SELECT RAISE(ABORT, 'a mail is kept'); END;
