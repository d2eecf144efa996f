-- The book, version 2, as in schema_sqlite.sql; it says what each column is.
-- The tables stand in a schema of their own.

CREATE TABLE book (version INTEGER NOT NULL);
INSERT INTO book VALUES (2);

CREATE TABLE events (
    seq    BIGINT PRIMARY KEY,
    number TEXT NOT NULL,
    at     TEXT NOT NULL,
    body   TEXT NOT NULL,
    hash   TEXT NOT NULL
);

CREATE TABLE entries (
    event       BIGINT PRIMARY KEY REFERENCES events (seq),
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
    pdf_bytes   BIGINT NOT NULL,
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
);
CREATE INDEX entries_stone ON entries (stone, event);

CREATE TABLE documents (
    event BIGINT PRIMARY KEY REFERENCES entries (event),
    gzip  BYTEA NOT NULL
);
-- gzip does not get smaller: do not try.
ALTER TABLE documents ALTER COLUMN gzip SET STORAGE EXTERNAL;

CREATE TABLE pending (
    event   BIGINT PRIMARY KEY REFERENCES entries (event),
    machine TEXT NOT NULL,
    folder  TEXT NOT NULL
);

-- Nothing is deleted. This stops slips; the chain shows intent.
CREATE FUNCTION refuse() RETURNS trigger LANGUAGE plpgsql AS
$$ BEGIN RAISE EXCEPTION '% of the register are never %', TG_TABLE_NAME,
    CASE TG_OP WHEN 'UPDATE' THEN 'changed' ELSE 'deleted' END; END $$;
CREATE TRIGGER stay BEFORE UPDATE OR DELETE OR TRUNCATE ON events EXECUTE FUNCTION refuse();
CREATE TRIGGER stay BEFORE DELETE OR TRUNCATE ON entries EXECUTE FUNCTION refuse();
CREATE TRIGGER stay BEFORE UPDATE OR DELETE OR TRUNCATE ON documents EXECUTE FUNCTION refuse();
