package register

import (
	"database/sql"
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/google/uuid"
)

const entryColumns = `event, number, uuid, stone, kind, first_day, last_day, examiner, issued,
	stone_sha256, photos_sha256, letterhead_sha256, pdf_sha256, pdf_bytes, file, office, program, data,
	state, reason, replaces, replaced_by, prev, hash`

// addOffice brings the entries of version 1 up to date.
const addOffice = `ALTER TABLE entries ADD COLUMN office TEXT NOT NULL DEFAULT ''`

func (t *tx) insertEntry(e Entry) error {
	_, err := t.sql.ExecContext(t.ctx, `INSERT INTO entries (`+entryColumns+`, year, ordinal)
		VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16, $17,
			$18, $19, $20, $21, $22, $23, $24, $25, $26)`,
		e.Event, e.Number.String(), e.UUID.String(), e.Stone, string(e.Kind),
		e.Examined.First.String(), e.Examined.Last.String(), e.Examiner, e.Issued.Format(time.RFC3339),
		e.Content.Stone.String(), e.Content.Photos.String(), e.Content.Letterhead.String(),
		e.PDF.String(), e.Size, e.File, e.Office, e.Program, e.Data,
		string(e.State), e.Reason, e.Replaces.String(), e.ReplacedBy.String(),
		e.Prev.String(), e.Hash.String(), e.Number.Year(), e.Number.Ordinal())
	return err
}

// list returns the entries that a condition selects, in an order.
func (t *tx) list(where, order string, args ...any) ([]Entry, error) {
	var list []Entry
	err := t.rows(where, order, args, func(e Entry, unreadable error) error {
		list = append(list, e)
		return unreadable
	})
	return list, err
}

// rows calls yield with the entries that a condition selects, in an order,
// until yield returns an error. unreadable is a *cellError.
func (t *tx) rows(where, order string, args []any, yield func(e Entry, unreadable error) error) error {
	if where != "" {
		where = " WHERE " + where
	}
	columns := entryColumns
	if t.noOffice {
		columns = strings.Replace(columns, "office", "''", 1)
	}
	rows, err := t.sql.QueryContext(t.ctx, `SELECT `+columns+`,
		EXISTS (SELECT 1 FROM pending WHERE pending.event = entries.event)
		FROM entries`+where+` ORDER BY `+order, args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		e, err := scanEntry(rows)
		var unreadable *cellError
		if err != nil && !errors.As(err, &unreadable) {
			return err
		}
		if err := yield(e, err); err != nil {
			return err
		}
	}
	return rows.Err()
}

// scanEntry reads a row of entryColumns and whether its file is pending. A
// cell that cannot be read says which.
func scanEntry(rows *sql.Rows) (Entry, error) {
	var e Entry
	var number, id, first, last, issued, kind, state, replaces, replacedBy string
	var stone, photos, letterhead, pdf, prev, hash string
	var pending bool
	err := rows.Scan(&e.Event, &number, &id, &e.Stone, &kind, &first, &last, &e.Examiner, &issued,
		&stone, &photos, &letterhead, &pdf, &e.Size, &e.File, &e.Office, &e.Program, &e.Data,
		&state, &e.Reason, &replaces, &replacedBy, &prev, &hash, &pending)
	if err != nil {
		return Entry{}, err
	}
	e.Kind, e.State = Kind(kind), State(state)
	if pending && e.State == Issued {
		e.State = Reserved
	}
	var bad []string
	read := func(name, text string, err error) {
		if err != nil {
			bad = append(bad, fmt.Sprintf("%s %q", name, text))
		}
	}
	read("number", number, e.Number.UnmarshalText([]byte(number)))
	read("replaces", replaces, e.Replaces.UnmarshalText([]byte(replaces)))
	read("replaced_by", replacedBy, e.ReplacedBy.UnmarshalText([]byte(replacedBy)))
	read("first_day", first, e.Examined.First.UnmarshalText([]byte(first)))
	read("last_day", last, e.Examined.Last.UnmarshalText([]byte(last)))
	read("stone_sha256", stone, e.Content.Stone.UnmarshalText([]byte(stone)))
	read("photos_sha256", photos, e.Content.Photos.UnmarshalText([]byte(photos)))
	read("letterhead_sha256", letterhead, e.Content.Letterhead.UnmarshalText([]byte(letterhead)))
	read("pdf_sha256", pdf, e.PDF.UnmarshalText([]byte(pdf)))
	read("prev", prev, e.Prev.UnmarshalText([]byte(prev)))
	read("hash", hash, e.Hash.UnmarshalText([]byte(hash)))
	e.UUID, err = uuid.Parse(id)
	read("uuid", id, err)
	e.Issued, err = time.Parse(time.RFC3339, issued)
	read("issued", issued, err)
	if len(bad) > 0 {
		return e, &cellError{Event: e.Event, Cells: bad}
	}
	return e, nil
}

// A cellError says which cells of an entry cannot be read, which only a hand
// other than ours can have written.
type cellError struct {
	Event int64
	Cells []string
}

func (e *cellError) Error() string {
	return fmt.Sprintf("the entry of event %d cannot be read: %s", e.Event, strings.Join(e.Cells, ", "))
}

// Unwrap makes it match [ErrNotRegister].
func (e *cellError) Unwrap() error { return ErrNotRegister }
