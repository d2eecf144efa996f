package register

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
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

// Open opens the register at a path, making the file if there is none. Its
// folder must exist. Close it after use.
//
// Errors: [ErrNotRegister], [ErrNewer], [ErrBusy], [ErrNumber] for the prefix.
func Open(ctx context.Context, path string, opts Options) (*Book, error) {
	if err := checkPrefix(opts.Prefix); err != nil {
		return nil, err
	}
	if opts.Zone == nil || opts.Now == nil || opts.Rand == nil {
		return nil, errors.New("register: a zone, a clock and randomness are needed")
	}
	if err := checkAddress(path); err != nil {
		return nil, err
	}
	s, err := openSQLite(ctx, path, opts.wait())
	if err != nil {
		return nil, err
	}
	return &Book{Reader: &Reader{store: s, name: path}, opts: opts}, nil
}

// OpenReader opens the register at a path for reading. Close it after use.
//
// Errors: [ErrNoRegister] if nothing was ever written, [ErrUnsettled] if a
// write was interrupted by a power cut or kill and must be undone first, which
// opening the book for writing does; [ErrNotRegister], [ErrNewer], [ErrBusy].
func OpenReader(ctx context.Context, path string) (*Reader, error) {
	if err := checkAddress(path); err != nil {
		return nil, err
	}
	s, err := readSQLite(ctx, path, defaultWait)
	if err != nil {
		return nil, err
	}
	return &Reader{store: s, name: path}, nil
}

// Close releases the register.
func (r *Reader) Close() error { return r.store.close() }

func (o Options) wait() time.Duration {
	if o.Wait == 0 {
		return defaultWait
	}
	return o.Wait
}

func checkAddress(path string) error {
	if strings.HasPrefix(path, "postgres:") || strings.HasPrefix(path, "postgresql:") {
		return fmt.Errorf("register: PostgreSQL is not supported by this version; give the name of a file")
	}
	return nil
}
