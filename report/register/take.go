package register

import (
	"fmt"
	"time"

	"github.com/google/uuid"
)

// has finds the valid entry that the stone has for the content of the request.
// It refuses a stone that has one for another content, unless that is the one
// to be replaced.
func (t *tx) has(req Request, old Number) (Entry, bool, error) {
	valid, err := t.list(`stone = $1 AND state = 'issued'`, `event DESC LIMIT 1`, req.Stone)
	if err != nil {
		return Entry{}, false, err
	}
	same := len(valid) == 1 && valid[0].Content == req.Content
	if old.IsZero() {
		if len(valid) == 1 && !same {
			return Entry{}, false, &ChangedError{
				Number: valid[0].Number, Stone: req.Stone, Parts: valid[0].Content.changed(req.Content)}
		}
	} else if !same || valid[0].Replaces != old {
		if err := t.mayReplace(old, req, same); err != nil {
			return Entry{}, false, err
		}
	}
	if !same {
		return Entry{}, false, nil
	}
	return valid[0], true, nil
}

func (t *tx) mayReplace(old Number, req Request, same bool) error {
	e, err := t.show(old)
	switch {
	case err != nil:
		return err
	case e.Stone != req.Stone:
		return fmt.Errorf("%w: %s is a number of %s, not of %s", ErrRequest, old, e.Stone, req.Stone)
	}
	if err := e.valid(); err != nil {
		return err
	}
	if same {
		return fmt.Errorf("%s: %w as %s", req.Stone, ErrUnchanged, old)
	}
	return nil
}

// enter takes the next number, renders, and writes it all in the transaction.
func (b *Book) enter(t *tx, req Request, old Number, because string, render Render) (Entry, []byte, error) {
	ev, err := b.next(t)
	if err != nil {
		return Entry{}, nil, err
	}
	last, err := t.lastOrdinal(ev.At.Year())
	if err != nil {
		return Entry{}, nil, err
	}
	if ev.Number, err = NewNumber(b.opts.Prefix, ev.At.Year(), last+1); err != nil {
		return Entry{}, nil, err
	}
	id, err := uuid.NewRandomFromReader(b.opts.Rand)
	if err != nil {
		return Entry{}, nil, fmt.Errorf("register: %w", err)
	}
	pdf, err := render(ev.Number, id, ev.At)
	if err != nil {
		return Entry{}, nil, err
	}
	if len(pdf) == 0 {
		return Entry{}, nil, fmt.Errorf("%s: the PDF is empty", req.Stone)
	}
	ev.Kind, ev.Because = issueEvent, because
	ev.Issue = &particulars{
		UUID: id, Stone: req.Stone, Kind: req.Kind, Examined: req.Examined, Examiner: req.Examiner,
		Content: req.Content, PDF: Sum(pdf), Size: int64(len(pdf)), File: ev.Number.String() + pdfSuffix, Office: b.opts.Office,
		Program: req.Program, Data: req.Data, Replaces: old,
	}
	e, err := t.enter(ev, pdf)
	if err != nil {
		return Entry{}, nil, err
	}
	return e, pdf, t.insertPending(e.Event, place{b.opts.Machine, req.Folder})
}

// enter writes an issue event and what follows from it.
func (t *tx) enter(ev event, pdf []byte) (Entry, error) {
	hash, err := t.append(ev)
	if err != nil {
		return Entry{}, err
	}
	e := ev.entry(hash)
	if err := t.insertEntry(e); err != nil {
		return Entry{}, err
	}
	if other, s, ok := ev.change(); ok {
		if err := t.stand(other, s); err != nil {
			return Entry{}, err
		}
	}
	return e, t.insertDocument(e.Event, pdf)
}

// clockSlack is by how much a clock may stand before the newest entry: the
// clocks of two machines in one office are never quite alike.
const clockSlack = 10 * time.Minute

// next begins the event that follows the newest.
func (b *Book) next(t *tx) (event, error) {
	seq, hash, newest, err := t.head()
	if err != nil {
		return event{}, err
	}
	now := b.opts.Now().In(b.opts.Zone).Truncate(time.Second)
	if seq > 0 && newest.Sub(now) > clockSlack && !b.opts.AllowEarlier {
		return event{}, fmt.Errorf("%w: it shows %s, the entry %s", ErrClock,
			now.Format(time.RFC3339), newest.In(b.opts.Zone).Format(time.RFC3339))
	}
	return event{Format: eventFormat, Seq: seq + 1, At: now, Prev: hash}, nil
}
