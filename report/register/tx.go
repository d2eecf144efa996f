package register

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"time"
)

// A tx is one transaction on a store: the statements of the book. They use
// numbered parameters and types that SQLite and PostgreSQL share.
type tx struct {
	ctx context.Context
	sql *sql.Tx
	// noOffice is set where the entries are of version 1 and do not say their
	// office.
	noOffice bool
}

// head returns the newest event's place, hash and time; seq 0 if there is none.
func (t *tx) head() (seq int64, hash Digest, at time.Time, err error) {
	var hashText, atText string
	err = t.sql.QueryRowContext(t.ctx,
		`SELECT seq, hash, at FROM events ORDER BY seq DESC LIMIT 1`).Scan(&seq, &hashText, &atText)
	if errors.Is(err, sql.ErrNoRows) {
		return 0, Digest{}, time.Time{}, nil
	}
	if err != nil {
		return 0, Digest{}, time.Time{}, err
	}
	if hash, err = ParseDigest(hashText); err != nil {
		return 0, Digest{}, time.Time{}, fmt.Errorf("event %d: %w", seq, err)
	}
	if at, err = time.Parse(time.RFC3339, atText); err != nil {
		return 0, Digest{}, time.Time{}, fmt.Errorf("event %d: %w", seq, err)
	}
	return seq, hash, at, nil
}

// lastOrdinal returns the highest place taken in the series of a year, or 0.
func (t *tx) lastOrdinal(year int) (int, error) {
	var last int
	err := t.sql.QueryRowContext(t.ctx,
		`SELECT coalesce(max(ordinal), 0) FROM entries WHERE year = $1`, year).Scan(&last)
	return last, err
}

// append adds an event to the log and returns its hash.
func (t *tx) append(e event) (Digest, error) {
	body, hash, err := e.encode()
	if err != nil {
		return Digest{}, err
	}
	_, err = t.sql.ExecContext(t.ctx,
		`INSERT INTO events (seq, number, at, body, hash) VALUES ($1, $2, $3, $4, $5)`,
		e.Seq, e.Number.String(), e.At.Format(time.RFC3339), string(body), hash.String())
	return hash, err
}

// stand writes what an event makes of another entry.
func (t *tx) stand(n Number, s standing) error {
	_, err := t.sql.ExecContext(t.ctx,
		`UPDATE entries SET state = $1, reason = $2, replaced_by = $3 WHERE number = $4`,
		string(s.state), s.reason, s.replacedBy.String(), n.String())
	return err
}

func (t *tx) insertPending(event int64, at place) error {
	_, err := t.sql.ExecContext(t.ctx,
		`INSERT INTO pending (event, machine, folder) VALUES ($1, $2, $3)`, event, at.machine, at.folder)
	return err
}

func (t *tx) clearPending(event int64) error {
	_, err := t.sql.ExecContext(t.ctx, `DELETE FROM pending WHERE event = $1`, event)
	return err
}

// A place is a folder on a machine.
type place struct{ machine, folder string }

// pending returns where the entries whose file is not yet confirmed were meant
// to go, by event.
func (t *tx) pending() (map[int64]place, error) {
	rows, err := t.sql.QueryContext(t.ctx, `SELECT event, machine, folder FROM pending`)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	places := map[int64]place{}
	for rows.Next() {
		var event int64
		var p place
		if err := rows.Scan(&event, &p.machine, &p.folder); err != nil {
			return nil, err
		}
		places[event] = p
	}
	return places, rows.Err()
}
