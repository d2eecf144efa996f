package register

import (
	"context"
	"errors"
	"path/filepath"
)

// auditBatch is how many rows are held at once, so that memory does not grow
// with the register.
const auditBatch = 500

// A Shelf is where an office keeps its PDFs.
type Shelf struct {
	Folder string // "" where the PDFs are not to be looked at
	Office string // as in [Options]
}

// Audit proves the chain, compares every entry with it, every stored PDF with
// its entry, and the PDFs on a shelf with both. PDFs that this office issued
// into another folder are found missing; those that another office keeps are
// counted, and proven by what the register stores of them. It changes nothing.
// What is wrong with the book is a [Finding]; an error means that the audit
// could not be done.
//
// The log and the entries are read in one state of the book; the PDFs, which
// take longer, one batch after another, so that issuing is not held up.
func (r *Reader) Audit(ctx context.Context, shelf Shelf) (Audit, error) {
	a := &auditor{Reader: r, broken: map[int64]bool{}, changes: map[Number]standing{}, office: shelf.Office}
	err := a.all(ctx, shelf.Folder)
	if errors.Is(err, ErrNotRegister) { // the file cannot be read to its end
		a.find(Finding{Kind: Damaged}, "%v", err)
		err = nil
	}
	return a.Audit, err
}

// An auditor is an audit under way.
type auditor struct {
	*Reader
	Audit
	broken  map[int64]bool      // events that were changed
	changes map[Number]standing // what later events make of entries
	office  string              // whose PDFs must be in the folder
}

func (a *auditor) all(ctx context.Context, folder string) error {
	damage, err := a.store.check(ctx)
	if err != nil {
		return err
	}
	for _, line := range damage {
		a.find(Finding{Kind: Damaged}, "%s", line)
	}
	err = a.store.read(ctx, func(t *tx) error {
		for _, step := range []func(*tx) error{a.chain, a.entries, a.gaps} {
			if err := step(t); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	if folder == "" {
		return a.pdfs(ctx, "")
	}
	folder = filepath.Clean(folder)
	if err := a.pdfs(ctx, folder); err != nil {
		return err
	}
	return a.strays(ctx, folder)
}
