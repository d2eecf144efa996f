package register

import (
	"context"
	"database/sql"
	_ "embed"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"time"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

const (
	// schemaVersion is of the tables: 1 without entries.office, 2 with it.
	schemaVersion = 2
	// applicationID marks the file as ours in its header: "STWR" in ASCII.
	applicationID = 0x53545752
	// defaultWait is how long a writer waits for another. It is long against
	// the tens of milliseconds that an issue takes.
	defaultWait = 30 * time.Second
)

//go:embed schema_sqlite.sql
var sqliteSchema string

// A sqliteStore is a store in one SQLite file.
type sqliteStore struct {
	db   *sql.DB
	path string
	turn chan struct{} // holds a token while a writer of this process is at work
	old  bool          // the tables may lack what is newer than version 1; true of readers only
}

// openSQLite opens the register file at path for writing and makes it, readable
// by its owner alone, if there is none.
func openSQLite(ctx context.Context, path string, wait time.Duration) (*sqliteStore, error) {
	// A file that exists is not opened here: closing it would drop the locks
	// that SQLite holds on it elsewhere in this process (POSIX advisory locks).
	if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) {
		f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_RDWR, 0o600)
		if err != nil && !errors.Is(err, fs.ErrExist) {
			return nil, fmt.Errorf("register: %w", err)
		}
		if err == nil {
			f.Close()
		}
	}
	s, err := dialSQLite(path, "rw", wait)
	if err != nil {
		return nil, err
	}
	if err := s.write(ctx, s.prepare); err != nil {
		s.close()
		return nil, err
	}
	return s, nil
}

// readSQLite opens the register file at path for reading only. It makes and
// changes no file. It returns [ErrNoRegister] if nothing was ever written.
func readSQLite(ctx context.Context, path string, wait time.Duration) (*sqliteStore, error) {
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("%s: %w", path, ErrNoRegister)
	}
	s, err := dialSQLite(path, "ro", wait)
	if err != nil {
		return nil, err
	}
	err = s.read(ctx, func(t *tx) error {
		version, err := s.recognise(t)
		if err == nil && version == 0 {
			return fmt.Errorf("%s: %w: the file is empty", s.path, ErrNoRegister)
		}
		s.old = version < schemaVersion
		return err
	})
	if err != nil {
		s.close()
		return nil, err
	}
	return s, nil
}

func dialSQLite(path, mode string, wait time.Duration) (*sqliteStore, error) {
	full, err := filepath.Abs(path)
	if err != nil {
		return nil, fmt.Errorf("register: %w", err)
	}
	name := url.URL{Scheme: "file", Path: filepath.ToSlash(full), RawQuery: url.Values{
		"mode":          {mode},
		"_txlock":       {"immediate"}, // a writer holds the lock from its first statement
		"_busy_timeout": {fmt.Sprint(wait.Milliseconds())},
		"_synchronous":  {"EXTRA"}, // FULL, and the folder synced after a commit
		"_foreign_keys": {"on"},
		"_dqs":          {"false"},
	}.Encode()}
	connector, err := sqlite.NewConnector(name.String())
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	return &sqliteStore{db: sql.OpenDB(connector), path: path, turn: make(chan struct{}, 1)}, nil
}

// prepare makes the tables in a fresh file, recognises one that has them, and
// brings those of an older version up to date.
func (s *sqliteStore) prepare(t *tx) error {
	version, err := s.recognise(t)
	switch {
	case err != nil || version == schemaVersion:
		return err
	case version > 0:
		return s.upgrade(t)
	}
	return s.execute(t,
		sqliteSchema,
		fmt.Sprintf("PRAGMA application_id = %d", applicationID),
		fmt.Sprintf("PRAGMA user_version = %d", schemaVersion),
	)
}

// upgrade brings tables of version 1 up to date. The log stays as it is.
func (s *sqliteStore) upgrade(t *tx) error {
	has, err := s.hasOffice(t)
	if err != nil {
		return err
	}
	if !has {
		if err := s.execute(t, addOffice); err != nil {
			return err
		}
	}
	return s.execute(t, fmt.Sprintf("PRAGMA user_version = %d", schemaVersion))
}

func (s *sqliteStore) execute(t *tx, statements ...string) error {
	for _, statement := range statements {
		if _, err := t.sql.ExecContext(t.ctx, statement); err != nil {
			return err
		}
	}
	return nil
}

// hasOffice reports whether the entries say their office. Some of version 1 do.
func (s *sqliteStore) hasOffice(t *tx) (has bool, err error) {
	err = t.sql.QueryRowContext(t.ctx,
		`SELECT EXISTS (SELECT 1 FROM pragma_table_info('entries') WHERE name = 'office')`).Scan(&has)
	return has, err
}

// recognise returns the version of the tables, 0 if the file holds nothing yet,
// and an error unless it is that or a register of a version that this program
// knows.
func (s *sqliteStore) recognise(t *tx) (version int, err error) {
	var id, tables int
	err = t.sql.QueryRowContext(t.ctx, `SELECT
		(SELECT application_id FROM pragma_application_id),
		(SELECT user_version FROM pragma_user_version),
		(SELECT count(*) FROM sqlite_schema)`).Scan(&id, &version, &tables)
	switch {
	case err != nil:
		return 0, err
	case id == 0 && version == 0 && tables == 0:
		return 0, nil
	case id != applicationID || version < 1:
		return 0, fmt.Errorf("%s: %w: it is a database of another program", s.path, ErrNotRegister)
	case version > schemaVersion:
		return 0, fmt.Errorf("%s: %w: its tables are of version %d, this program knows %d",
			s.path, ErrNewer, version, schemaVersion)
	}
	return version, nil
}

func (s *sqliteStore) write(ctx context.Context, f func(*tx) error) error {
	select {
	case s.turn <- struct{}{}:
		defer func() { <-s.turn }()
	case <-ctx.Done():
		return ctx.Err()
	}
	return s.transact(ctx, sql.TxOptions{}, f)
}

func (s *sqliteStore) read(ctx context.Context, f func(*tx) error) error {
	return s.transact(ctx, sql.TxOptions{ReadOnly: true}, func(t *tx) error {
		if s.old {
			has, err := s.hasOffice(t)
			if err != nil {
				return err
			}
			t.noOffice = !has
		}
		return f(t)
	})
}

func (s *sqliteStore) transact(ctx context.Context, opts sql.TxOptions, f func(*tx) error) error {
	t, err := s.db.BeginTx(ctx, &opts)
	if err != nil {
		return s.explain(err)
	}
	defer t.Rollback() // does nothing after a commit
	if err := f(&tx{ctx: ctx, sql: t}); err != nil {
		return s.explain(err)
	}
	return s.explain(t.Commit())
}

func (s *sqliteStore) check(ctx context.Context) ([]string, error) {
	var found []string
	err := s.read(ctx, func(t *tx) error {
		for _, query := range []string{
			`SELECT integrity_check FROM pragma_integrity_check WHERE integrity_check <> 'ok'`,
			`SELECT format('row %d of %s has no row of %s it belongs to', "rowid", "table", "parent")
				FROM pragma_foreign_key_check`,
		} {
			lines, err := t.lines(query)
			if err != nil {
				return err
			}
			found = append(found, lines...)
		}
		return nil
	})
	return found, err
}

func (s *sqliteStore) close() error { return s.db.Close() }

// explain gives an error of SQLite its meaning for the user.
func (s *sqliteStore) explain(err error) error {
	var e *sqlite.Error
	if !errors.As(err, &e) {
		return err
	}
	because := strings.TrimSpace(e.Error())
	switch e.Code() {
	case sqlite3.SQLITE_READONLY_ROLLBACK, sqlite3.SQLITE_READONLY_RECOVERY:
		return fmt.Errorf("%s: %w", s.path, ErrUnsettled)
	}
	switch e.Code() & 0xff { // the primary code
	case sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED:
		return fmt.Errorf("%s: %w", s.path, ErrBusy)
	case sqlite3.SQLITE_NOTADB, sqlite3.SQLITE_CORRUPT:
		return fmt.Errorf("%s: %w: %s", s.path, ErrNotRegister, because)
	case sqlite3.SQLITE_FULL:
		return fmt.Errorf("%s: %w: the disk is full", s.path, ErrWrite)
	case sqlite3.SQLITE_READONLY, sqlite3.SQLITE_PERM, sqlite3.SQLITE_CANTOPEN:
		return fmt.Errorf("%s: %w: no right to write there, or to make a file beside it", s.path, ErrWrite)
	}
	switch e.Code() {
	case sqlite3.SQLITE_IOERR_WRITE, sqlite3.SQLITE_IOERR_FSYNC, sqlite3.SQLITE_IOERR_DIR_FSYNC, sqlite3.SQLITE_IOERR_TRUNCATE:
		return fmt.Errorf("%s: %w: the disk is full, or fails (%s)", s.path, ErrWrite, because)
	}
	return fmt.Errorf("%s: %w", s.path, err)
}
