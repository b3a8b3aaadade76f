-- Mails that came in, each with its one end. No address is kept: a sender is a customer's code, "owner", "crew" or nobody.
CREATE TABLE mail_in (
    seq        INTEGER PRIMARY KEY,
    validity   INTEGER NOT NULL,
    uid        INTEGER NOT NULL,
    message_id TEXT NOT NULL,
    sha256     TEXT NOT NULL CHECK (length(sha256) = 64),
    state      TEXT NOT NULL CHECK (state IN ('taken', 'asked', 'aside')),
    sender     TEXT NOT NULL,
    answered   INTEGER NOT NULL CHECK (answered IN (0, 1)),
    at         INTEGER NOT NULL,
    note       TEXT NOT NULL,
    UNIQUE (validity, uid)
) STRICT;

CREATE INDEX mail_in_by_id ON mail_in (message_id);
CREATE INDEX mail_in_by_content ON mail_in (sha256);
CREATE INDEX mail_in_by_time ON mail_in (at);

CREATE TRIGGER mail_in_stays BEFORE UPDATE ON mail_in
BEGIN SELECT RAISE(ABORT, 'a mail''s end stays as it is'); END;
CREATE TRIGGER mail_in_is_kept BEFORE DELETE ON mail_in
BEGIN SELECT RAISE(ABORT, 'a mail that came in is kept'); END;
