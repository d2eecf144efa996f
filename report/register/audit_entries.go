package register

import (
	"maps"
	"slices"
	"strings"
)

// entries compares the entries with the log, a batch at a time.
func (a *auditor) entries(t *tx) error {
	for from := int64(0); ; {
		made := map[int64]Entry{}
		to, err := t.made(from, auditBatch, made)
		if err != nil {
			return err
		}
		if to == from {
			return a.without(t, from)
		}
		err = t.rows("event > $1 AND event <= $2", "event", []any{from, to}, func(e Entry, unreadable error) error {
			a.Entries++
			chain, ok := made[e.Event]
			delete(made, e.Event)
			a.entry(chain, ok, e, unreadable)
			return nil
		})
		if err != nil {
			return err
		}
		for _, event := range slices.Sorted(maps.Keys(made)) {
			a.find(Finding{Kind: ChangedEntry, Event: event, Number: made[event].Number}, "removed")
		}
		from = to
	}
}

// entry compares an entry with what the log made, if it made one.
func (a *auditor) entry(chain Entry, made bool, e Entry, unreadable error) {
	at := Finding{Kind: ChangedEntry, Event: e.Event, Number: e.Number}
	differ := ""
	if a.broken[e.Event] { // the blame is the event's
		at.Kind, differ = BrokenChain, "its entry says otherwise: "
	}
	if unreadable != nil {
		at.Kind, at.Number = ChangedEntry, chain.Number
		a.find(at, "%v", unreadable)
		return
	}
	if !made {
		if !a.broken[e.Event] {
			a.find(at, "no event of the log made it")
		}
		return
	}
	if s, ok := a.changes[chain.Number]; ok {
		s.apply(&chain)
	}
	if diffs := differences(chain, e); len(diffs) > 0 {
		a.find(at, "%s%s", differ, strings.Join(diffs, "; "))
	}
}

// without finds the entries beyond the end of the log.
func (a *auditor) without(t *tx, end int64) error {
	return t.rows("event > $1", "event", []any{end}, func(e Entry, _ error) error {
		a.Entries++
		a.find(Finding{Kind: ChangedEntry, Event: e.Event, Number: e.Number}, "no event of the log made it")
		return nil
	})
}

// gaps finds the numbers that a series leaves out.
func (a *auditor) gaps(t *tx) error {
	rows, err := t.sql.QueryContext(t.ctx, `SELECT year, ordinal, number FROM entries ORDER BY year, ordinal`)
	if err != nil {
		return err
	}
	defer rows.Close()
	var inYear, last int
	for rows.Next() {
		var year, ordinal int
		var number string
		if err := rows.Scan(&year, &ordinal, &number); err != nil {
			return err
		}
		if year != inYear {
			inYear, last = year, 0
		}
		switch missing := ordinal - last - 1; {
		case missing == 1:
			a.find(Finding{Kind: NumberGap}, "number %d of %d is not on the register", last+1, year)
		case missing > 1:
			a.find(Finding{Kind: NumberGap}, "numbers %d to %d of %d are not on the register", last+1, ordinal-1, year)
		}
		n, err := ParseNumber(number)
		if err == nil && (n.Year() != year || n.Ordinal() != ordinal) {
			a.find(Finding{Kind: ChangedEntry, Number: n}, "filed as number %d of %d", ordinal, year)
		}
		last = ordinal
	}
	return rows.Err()
}
