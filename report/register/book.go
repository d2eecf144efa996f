package register

import (
	"context"
	"errors"
	"io"
	"time"
)

// Options are what a book for writing needs of the world.
type Options struct {
	Prefix string           // letters in front of a number, see [NewNumber]
	Zone   *time.Location   // the practice's time zone, which decides the year of issue
	Now    func() time.Time // the clock
	Rand   io.Reader        // randomness for UUIDs

	// Wait is how long to wait for another writer; 0 is half a minute.
	Wait time.Duration
	// Machine is the name of this machine, where several use one register on a
	// server. What one of them left unfinished is not another's to finish,
	// unless it has the folder too.
	Machine string
	// Office is which of several offices with one register this is: the one that
	// keeps the PDFs of the numbers it gives. Leave it empty where there is one.
	Office string
	// AllowEarlier accepts a clock that stands before the newest entry, for a
	// practice whose clock was once wrongly ahead.
	AllowEarlier bool
}

// A Reader reads a book. It never makes or changes a file.
type Reader struct {
	store store
	// name is the file or address as the user gave it.
	name string
}

// A Book is a register open for writing. It may be used by several goroutines,
// and several processes may have the same book open.
type Book struct {
	*Reader
	opts Options
}

// Open opens the register at a path, making the file if there is none; its
// folder must exist. A path that begins with postgres:// is the address of a
// database on a PostgreSQL server, which must exist; the tables are made in
// it. A register with tables of an older version is brought up to date, which
// that version of the program cannot read afterwards; the log stays as it is.
// Close it after use.
//
// Errors: [ErrNotRegister], [ErrNewer], [ErrBusy], [ErrLost], [ErrNumber] for
// the prefix.
func Open(ctx context.Context, path string, opts Options) (*Book, error) {
	if err := checkPrefix(opts.Prefix); err != nil {
		return nil, err
	}
	if err := checkText("office", opts.Office); err != nil {
		return nil, err
	}
	if opts.Zone == nil || opts.Now == nil || opts.Rand == nil {
		return nil, errors.New("register: a zone, a clock and randomness are needed")
	}
	s, err := openStore(ctx, path, opts.wait())
	if err != nil {
		return nil, err
	}
	return &Book{Reader: &Reader{store: s, name: shown(path)}, opts: opts}, nil
}

// OpenReader opens the register at a path or address for reading, also one with
// tables of an older version. Close it after use.
//
// Errors: [ErrNoRegister] if nothing was ever written, [ErrUnsettled] if a
// write was interrupted by a power cut or kill and must be undone first, which
// opening the book for writing does; [ErrNotRegister], [ErrNewer], [ErrBusy],
// [ErrLost].
func OpenReader(ctx context.Context, path string) (*Reader, error) {
	s, err := readStore(ctx, path, defaultWait)
	if err != nil {
		return nil, err
	}
	return &Reader{store: s, name: shown(path)}, nil
}

func shown(path string) string {
	if isAddress(path) {
		return shownAddress(path)
	}
	return path
}

// Close releases the register.
func (r *Reader) Close() error { return r.store.close() }

func (o Options) wait() time.Duration {
	if o.Wait == 0 {
		return defaultWait
	}
	return o.Wait
}

// openStore opens the store that a path or address names, for writing.
func openStore(ctx context.Context, name string, wait time.Duration) (store, error) {
	if isAddress(name) {
		return openPostgres(ctx, name, wait)
	}
	return openSQLite(ctx, name, wait)
}

func readStore(ctx context.Context, name string, wait time.Duration) (store, error) {
	if isAddress(name) {
		return readPostgres(ctx, name, wait)
	}
	return readSQLite(ctx, name, wait)
}
