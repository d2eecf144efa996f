-- The book, version 2. Version 1 had no office in its entries. Digests are
-- hexadecimal text, times RFC 3339 text with the offset of the practice's time
-- zone, so that a person can read it all.

-- The log. body is the exact JSON whose SHA-256 is hash; it holds the hash of
-- the row before.
CREATE TABLE events (
    seq    INTEGER PRIMARY KEY,
    number TEXT NOT NULL,
    at     TEXT NOT NULL,
    body   TEXT NOT NULL,
    hash   TEXT NOT NULL
) STRICT;

-- The view of the log by number. event is the seq of its issue.
CREATE TABLE entries (
    event       INTEGER PRIMARY KEY REFERENCES events (seq),
    number      TEXT NOT NULL UNIQUE,
    year        INTEGER NOT NULL,
    ordinal     INTEGER NOT NULL,
    uuid        TEXT NOT NULL UNIQUE,
    stone       TEXT NOT NULL,
    kind        TEXT NOT NULL,
    first_day   TEXT NOT NULL,
    last_day    TEXT NOT NULL,
    examiner    TEXT NOT NULL,
    issued      TEXT NOT NULL,
    stone_sha256      TEXT NOT NULL,
    photos_sha256     TEXT NOT NULL,
    letterhead_sha256 TEXT NOT NULL,
    pdf_sha256  TEXT NOT NULL,
    pdf_bytes   INTEGER NOT NULL,
    file        TEXT NOT NULL,
    office      TEXT NOT NULL,
    program     TEXT NOT NULL,
    data        TEXT NOT NULL,
    state       TEXT NOT NULL CHECK (state IN ('issued', 'void', 'amended')),
    reason      TEXT NOT NULL,
    replaces    TEXT NOT NULL,
    replaced_by TEXT NOT NULL,
    prev        TEXT NOT NULL,
    hash        TEXT NOT NULL,
    UNIQUE (year, ordinal)
) STRICT;
CREATE INDEX entries_stone ON entries (stone, event);

-- The PDFs as issued, compressed with gzip.
CREATE TABLE documents (
    event INTEGER PRIMARY KEY REFERENCES entries (event),
    gzip  BLOB NOT NULL
) STRICT;

-- Numbers whose file is not yet confirmed in its folder on the machine that
-- took them. Not part of the log.
CREATE TABLE pending (
    event   INTEGER PRIMARY KEY REFERENCES entries (event),
    machine TEXT NOT NULL,
    folder  TEXT NOT NULL
) STRICT;

-- Nothing is deleted. This stops slips; the chain shows intent.
CREATE TRIGGER events_stay BEFORE DELETE ON events
BEGIN SELECT RAISE(ABORT, 'events of the register are never deleted'); END;
CREATE TRIGGER events_keep BEFORE UPDATE ON events
BEGIN SELECT RAISE(ABORT, 'events of the register are never changed'); END;
CREATE TRIGGER entries_stay BEFORE DELETE ON entries
BEGIN SELECT RAISE(ABORT, 'entries of the register are never deleted'); END;
CREATE TRIGGER documents_stay BEFORE DELETE ON documents
BEGIN SELECT RAISE(ABORT, 'stored PDFs are never deleted'); END;
CREATE TRIGGER documents_keep BEFORE UPDATE ON documents
BEGIN SELECT RAISE(ABORT, 'stored PDFs are never changed'); END;
