package register

import (
	"fmt"
	"time"
)

// An eventRow is a row of the log as it stands, whether or not it is right.
type eventRow struct {
	seq        int64
	numberText string
	number     Number // zero if numberText is none
	at         time.Time
	body       []byte
	hash       Digest
	event      event
	unreadable error
}

// events calls yield with every row of the log in order.
func (t *tx) events(yield func(eventRow) error) error {
	rows, err := t.sql.QueryContext(t.ctx, `SELECT seq, number, at, body, hash FROM events ORDER BY seq`)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var r eventRow
		var at, hash string
		if err := rows.Scan(&r.seq, &r.numberText, &at, &r.body, &hash); err != nil {
			return err
		}
		r.number, _ = ParseNumber(r.numberText) // compared as text
		if r.hash, err = ParseDigest(hash); err != nil {
			r.unreadable = err
		}
		if r.at, err = time.Parse(time.RFC3339, at); err != nil {
			r.unreadable = err
		}
		if r.event, err = decodeEvent(r.body); err != nil {
			r.unreadable = err
		}
		if err := yield(r); err != nil {
			return err
		}
	}
	return rows.Err()
}

// made puts the entries that the next issue events after from make into a map,
// by event, and returns the last event it looked at. Events that cannot be
// read make none.
func (t *tx) made(from int64, limit int, into map[int64]Entry) (to int64, err error) {
	rows, err := t.sql.QueryContext(t.ctx, fmt.Sprintf(
		`SELECT seq, body, hash FROM events WHERE seq > $1 ORDER BY seq LIMIT %d`, limit), from)
	if err != nil {
		return from, err
	}
	defer rows.Close()
	to = from
	for rows.Next() {
		var body []byte
		var text string
		if err := rows.Scan(&to, &body, &text); err != nil {
			return from, err
		}
		e, err := decodeEvent(body)
		if err != nil || e.Kind != issueEvent {
			continue
		}
		hash, _ := ParseDigest(text) // a wrong one shows in the comparison
		into[to] = e.entry(hash)
	}
	return to, rows.Err()
}

// lines returns the single text column of a query.
func (t *tx) lines(query string) ([]string, error) {
	rows, err := t.sql.QueryContext(t.ctx, query)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var list []string
	for rows.Next() {
		var line string
		if err := rows.Scan(&line); err != nil {
			return nil, err
		}
		list = append(list, line)
	}
	return list, rows.Err()
}
