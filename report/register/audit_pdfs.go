package register

import (
	"context"
	"errors"
	"fmt"
)

// pdfs checks the stored PDFs and those in the folder against the entries.
func (a *auditor) pdfs(ctx context.Context, folder string) error {
	var o *outlet
	if folder != "" {
		var err error
		if o, err = openOutlet(folder); err == nil {
			defer o.close()
		}
	}
	for from := int64(0); ; {
		var batch []Entry
		err := a.store.read(ctx, func(t *tx) error {
			return t.rows("event > $1", fmt.Sprintf("event LIMIT %d", auditBatch), []any{from},
				func(e Entry, unreadable error) error {
					from = e.Event
					if unreadable == nil { // else found before
						batch = append(batch, e)
					}
					return nil
				})
		})
		if err != nil || len(batch) == 0 {
			return err
		}
		if err := a.stored(ctx, batch); err != nil {
			return err
		}
		if folder == "" {
			continue
		}
		for _, e := range batch {
			a.file(o, e)
		}
	}
}

// stored checks the stored PDFs of a batch.
func (a *auditor) stored(ctx context.Context, batch []Entry) error {
	return a.store.read(ctx, func(t *tx) error {
		for _, e := range batch {
			_, err := t.document(e)
			if errors.Is(err, ErrStored) {
				a.find(Finding{Kind: ChangedCopy, Event: e.Event, Number: e.Number}, "%v", err)
			} else if err != nil {
				return err
			}
		}
		return nil
	})
}

func (a *auditor) elsewhere(office string) {
	if a.Elsewhere == nil {
		a.Elsewhere = map[string]int{}
	}
	a.Elsewhere[office]++
}

// file checks the PDF of an entry in the folder; o is nil if that is missing.
func (a *auditor) file(o *outlet, e Entry) {
	at := Finding{Event: e.Event, Number: e.Number, File: e.File}
	var there bool
	var err error
	if o != nil {
		there, err = o.holds(e)
	}
	var other *FileError
	switch {
	case errors.As(err, &other):
		at.Kind = ChangedPDF
		a.find(at, "%s", other.Detail)
	case err != nil:
		at.Kind = ChangedPDF
		a.find(at, "cannot be read: %v", err)
	case !there && e.Office != a.office:
		a.elsewhere(e.Office)
	case !there && e.State == Reserved:
		at.Kind = Unfinished
		a.find(at, "its PDF is not yet in the folder")
	case !there:
		at.Kind = MissingPDF
		a.find(at, "")
	}
}
