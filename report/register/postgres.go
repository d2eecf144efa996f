package register

import (
	"context"
	"database/sql"
	_ "embed"
	"errors"
	"fmt"
	"regexp"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/stdlib"
)

const (
	// postgresSchema is where the tables stand unless the address says otherwise.
	postgresSchema = "stonewrit"
	// connectWait is how long to wait for a server that does not answer.
	connectWait = 10 * time.Second
	// idleWait is after how long the server gives up on a writer that holds the
	// book and is not heard of: its machine is off or the line is cut. It is
	// long against the rendering of a document.
	idleWait = 2 * time.Minute
)

//go:embed schema_postgres.sql
var postgresTables string

// A postgresStore is a store in one schema of a PostgreSQL database.
type postgresStore struct {
	db     *sql.DB
	name   string // the address without password
	schema string
	wait   time.Duration
	old    bool // the tables may lack what is newer than version 1; true of readers only
}

// openPostgres opens the register at an address for writing and makes schema
// and tables if there are none. The database must exist.
func openPostgres(ctx context.Context, address string, wait time.Duration) (*postgresStore, error) {
	s, err := dialPostgres(address, wait)
	if err != nil {
		return nil, err
	}
	if err := s.prepare(ctx); err != nil {
		s.close()
		return nil, err
	}
	return s, nil
}

// readPostgres opens the register at an address for reading. It returns
// [ErrNoRegister] if nothing was ever written.
func readPostgres(ctx context.Context, address string, wait time.Duration) (*postgresStore, error) {
	s, err := dialPostgres(address, wait)
	if err != nil {
		return nil, err
	}
	err = s.read(ctx, func(t *tx) error {
		version, err := s.recognise(t)
		if err == nil && version == 0 {
			return fmt.Errorf("%s: %w: schema %s is empty", s.name, ErrNoRegister, s.schema)
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

var schemaName = regexp.MustCompile(`^[a-z_][a-z0-9_]{0,62}$`)

// dialPostgres reads the address; nothing is asked of the server yet.
func dialPostgres(address string, wait time.Duration) (*postgresStore, error) {
	config, err := pgx.ParseConfig(address)
	if err != nil {
		return nil, fmt.Errorf("register: %w", err) // shown without its password
	}
	s := &postgresStore{name: shownAddress(address), schema: postgresSchema, wait: wait}
	if given, ok := config.RuntimeParams["search_path"]; ok {
		if !schemaName.MatchString(given) {
			return nil, fmt.Errorf("%s: search_path %q: expected the name of one schema, of small letters, digits and underscores", s.name, given)
		}
		s.schema = given
		delete(config.RuntimeParams, "search_path") // set in each transaction, so that a pooler between does not matter
	}
	if config.ConnectTimeout == 0 {
		config.ConnectTimeout = connectWait
	}
	s.db = stdlib.OpenDB(*config)
	s.db.SetMaxOpenConns(4)
	return s, nil
}

// prepare makes schema and tables in a fresh database, recognises one that has
// them, and brings those of an older version up to date, which only their owner
// may. A user who may not create schemas can be given one.
func (s *postgresStore) prepare(ctx context.Context) error {
	var version int
	err := s.read(ctx, func(t *tx) (err error) {
		version, err = s.recognise(t)
		return err
	})
	if err != nil || version == schemaVersion {
		return err
	}
	return s.transact(ctx, sql.TxOptions{}, func(t *tx) error {
		// Of two machines that come first together, one waits here.
		if _, err := t.sql.ExecContext(ctx, `SELECT pg_advisory_xact_lock(hashtext($1))`, "stonewrit "+s.schema); err != nil {
			return err
		}
		version, err := s.recognise(t)
		switch {
		case err != nil || version == schemaVersion:
			return err
		case version > 0:
			return s.upgrade(t)
		}
		var exists bool
		err = t.sql.QueryRowContext(ctx, `SELECT EXISTS (SELECT 1 FROM pg_namespace WHERE nspname = $1)`, s.schema).Scan(&exists)
		if err != nil {
			return err
		}
		statement := postgresTables
		if !exists {
			statement = "CREATE SCHEMA " + s.schema + ";\n" + statement
		}
		_, err = t.sql.ExecContext(ctx, statement)
		return err
	})
}

// upgrade brings tables of version 1 up to date. The log stays as it is.
func (s *postgresStore) upgrade(t *tx) error {
	has, err := s.hasOffice(t)
	if err != nil {
		return err
	}
	if !has {
		if _, err := t.sql.ExecContext(t.ctx, addOffice); err != nil {
			return err
		}
	}
	_, err = t.sql.ExecContext(t.ctx, `UPDATE book SET version = $1`, schemaVersion)
	return err
}

// hasOffice reports whether the entries say their office. Some of version 1 do.
func (s *postgresStore) hasOffice(t *tx) (has bool, err error) {
	err = t.sql.QueryRowContext(t.ctx, `SELECT EXISTS (SELECT 1 FROM pg_attribute
		WHERE attrelid = 'entries'::regclass AND attname = 'office' AND NOT attisdropped)`).Scan(&has)
	return has, err
}

// recognise returns the version of the tables, 0 if the schema holds nothing
// yet, and an error unless it is that or a register of a version that this
// program knows.
func (s *postgresStore) recognise(t *tx) (version int, err error) {
	var encoding string
	var tables int
	var ours bool
	err = t.sql.QueryRowContext(t.ctx, `SELECT current_setting('server_encoding'), count(*), coalesce(bool_or(c.relname = 'book'), false)
		FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace WHERE n.nspname = $1`, s.schema).Scan(&encoding, &tables, &ours)
	switch {
	case err != nil:
		return 0, err
	case encoding != "UTF8":
		return 0, fmt.Errorf("%s: %w: the database has the encoding %s; it needs UTF8", s.name, ErrNotRegister, encoding)
	case tables == 0:
		return 0, nil
	case !ours:
		return 0, fmt.Errorf("%s: %w: schema %s holds tables of another program", s.name, ErrNotRegister, s.schema)
	}
	if err := t.sql.QueryRowContext(t.ctx, `SELECT version FROM book`).Scan(&version); err != nil {
		return 0, err
	}
	switch {
	case version < 1:
		return 0, fmt.Errorf("%s: %w: its tables are of version %d", s.name, ErrNotRegister, version)
	case version > schemaVersion:
		return 0, fmt.Errorf("%s: %w: its tables are of version %d, this program knows %d", s.name, ErrNewer, version, schemaVersion)
	}
	return version, nil
}

// write holds the log against other writers from its first statement on;
// readers go on. Each statement sees what was committed before the lock.
func (s *postgresStore) write(ctx context.Context, f func(*tx) error) error {
	return s.transact(ctx, sql.TxOptions{Isolation: sql.LevelReadCommitted}, func(t *tx) error {
		if _, err := t.sql.ExecContext(ctx, `LOCK TABLE events IN SHARE ROW EXCLUSIVE MODE`); err != nil {
			return err
		}
		return f(t)
	})
}

func (s *postgresStore) read(ctx context.Context, f func(*tx) error) error {
	return s.transact(ctx, sql.TxOptions{Isolation: sql.LevelRepeatableRead, ReadOnly: true}, func(t *tx) error {
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

func (s *postgresStore) transact(ctx context.Context, opts sql.TxOptions, f func(*tx) error) error {
	conn, err := s.db.Conn(ctx)
	if err != nil {
		return s.explain(ctx, nil, err)
	}
	defer conn.Close()
	// A commit that has begun is waited for, else nobody knows what became of it.
	t, err := conn.BeginTx(context.WithoutCancel(ctx), &opts)
	if err != nil {
		return s.explain(ctx, conn, err)
	}
	defer t.Rollback() // does nothing after a commit
	if err := s.settings(ctx, t); err != nil {
		return s.explain(ctx, conn, err)
	}
	if err := f(&tx{ctx: ctx, sql: t}); err != nil {
		return s.explain(ctx, conn, err)
	}
	if ctx.Err() != nil {
		return context.Cause(ctx)
	}
	err = s.explain(context.WithoutCancel(ctx), conn, t.Commit())
	if errors.Is(err, ErrLost) {
		return &caused{ErrUncertain, err}
	}
	return err
}

// settings are those of one transaction: whose tables, how long to wait, and
// that a commit is on the disk before it is told.
func (s *postgresStore) settings(ctx context.Context, t *sql.Tx) error {
	_, err := t.ExecContext(ctx, fmt.Sprintf(`SET LOCAL search_path = %s; SET LOCAL lock_timeout = %d; SET LOCAL synchronous_commit = on;
		SET LOCAL idle_in_transaction_session_timeout = %d; SET LOCAL standard_conforming_strings = on`,
		s.schema, max(1, s.wait.Milliseconds()), idleWait.Milliseconds()))
	return err
}

// check looks for rows whose counterpart is gone, which the server itself
// keeps from happening unless it is told not to.
func (s *postgresStore) check(ctx context.Context) ([]string, error) {
	var found []string
	err := s.read(ctx, func(t *tx) error {
		for _, link := range []struct{ child, parent, key string }{
			{"entries", "events", "seq"}, {"documents", "entries", "event"}, {"pending", "entries", "event"},
		} {
			lines, err := t.lines(fmt.Sprintf(`SELECT format('row %%s of %[1]s has no row of %[2]s it belongs to', event)
				FROM %[1]s WHERE NOT EXISTS (SELECT 1 FROM %[2]s p WHERE p.%[3]s = %[1]s.event) ORDER BY event`, link.child, link.parent, link.key))
			if err != nil {
				return err
			}
			found = append(found, lines...)
		}
		return nil
	})
	return found, err
}

func (s *postgresStore) close() error { return s.db.Close() }

// isAddress tells the address of a server from the name of a file.
func isAddress(path string) bool {
	return strings.HasPrefix(path, "postgres://") || strings.HasPrefix(path, "postgresql://")
}
