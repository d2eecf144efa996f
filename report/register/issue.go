package register

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"time"

	"github.com/google/uuid"
)

// Render makes the PDF of a number. The time is that of issue, in the
// practice's time zone. It must not call the book, which waits for it.
type Render func(number Number, id uuid.UUID, issued time.Time) ([]byte, error)

// An Outcome says what issuing did.
type Outcome string

// The outcomes of issuing.
const (
	New       Outcome = "new"       // a number was taken and its PDF written
	Unchanged Outcome = "unchanged" // the stone has its number and the PDF is in its place
	Restored  Outcome = "restored"  // the stone has its number; the lost PDF was put back
)

// Issuance is an entry and how issuing came by it.
type Issuance struct {
	Entry   Entry
	Outcome Outcome
	Path    string // of the PDF
}

// Issue gives a stone the next number of the year, with the PDF that render
// makes for it, or finds the number that the same content already has. It is
// all or nothing, see the package comment.
//
// Errors: those of render; [ErrRequest]; [ChangedError] if the stone has a
// valid number for another content; [FileError] if something else stands where
// the PDF belongs; [ErrSeriesFull], [ErrClock], [ErrBusy], [ErrLost], [ErrWrite], [ErrPDF]. After any
// of them no number is taken. After [ErrUncertain], if the server is lost at
// the commit, one may be; issuing again finds it. After [ErrUndelivered] the number is taken and the register
// holds the PDF; issuing again puts it in its place.
func (b *Book) Issue(ctx context.Context, req Request, render Render) (Issuance, error) {
	return b.issue(ctx, req, Number{}, "", render)
}

// Amend gives a stone a new number that replaces an old one. If the old number
// was already replaced for this very content, it finds that entry as Issue does.
//
// Errors: those of [Book.Issue]; [ErrNotFound]; [ErrState] if the old number is
// void or replaced; [ErrUnchanged]; [ErrRequest] if the old number is another
// stone's or for the reason.
func (b *Book) Amend(ctx context.Context, old Number, because string, req Request, render Render) (Issuance, error) {
	because, err := reasonOf(because)
	if err != nil {
		return Issuance{}, err
	}
	return b.issue(ctx, req, old, because, render)
}

func (b *Book) issue(ctx context.Context, req Request, old Number, because string, render Render) (Issuance, error) {
	req, err := req.complete()
	if err != nil {
		return Issuance{}, err
	}
	if req.Folder, err = filepath.Abs(req.Folder); err != nil {
		return Issuance{}, err
	}
	var done Issuance
	var pdf []byte
	staged := false
	err = b.store.write(ctx, func(t *tx) error {
		had, found, err := t.has(req, old)
		if err != nil {
			return err
		}
		if found {
			done, err = b.again(t, had, req.Folder)
			return err
		}
		done = Issuance{Outcome: New}
		done.Entry, pdf, err = b.enter(t, req, old, because, render)
		if err != nil {
			return err
		}
		if err := stageNew(done.Entry, pdf, req.Folder); err != nil {
			return err
		}
		staged = true
		return nil
	})
	if err != nil {
		if staged { // the commit failed, perhaps with the file still there
			err = b.after(ctx, err, done.Entry, req.Folder)
		}
		if err != nil {
			return Issuance{}, err
		}
	}
	done.Path = filepath.Join(req.Folder, done.Entry.File)
	if done.Outcome == New {
		if err := b.hand(ctx, done.Entry, pdf, req.Folder); err != nil {
			return done, fmt.Errorf("%s: %w", done.Entry.Number, &caused{ErrUndelivered, err})
		}
	}
	return done, nil
}

// after clears up when the commit of an entry failed with an error. If the
// connection broke in the middle, the entry may be on the register: then there
// was no failure. Where that cannot be found out, the temporary file stays for
// the next run, which knows.
func (b *Book) after(ctx context.Context, failed error, e Entry, folder string) error {
	taken := false
	err := b.store.write(context.WithoutCancel(ctx), func(t *tx) error {
		if errors.Is(failed, ErrUncertain) {
			found, err := t.show(e.Number)
			if err == nil && found.UUID == e.UUID {
				taken = true
				return nil
			}
			if err != nil && !errors.Is(err, ErrNotFound) {
				return err
			}
		}
		return b.sweep(t, folder)
	})
	switch {
	case taken:
		return nil
	case errors.Is(err, ErrLost): // as was told
		return failed
	case err != nil:
		return errors.Join(failed, err)
	case errors.Is(failed, ErrUncertain): // now it is: it was not taken
		return fmt.Errorf("%s: %w", b.name, ErrLost)
	}
	return failed
}

// again finds or restores the PDF of an entry that a stone already has.
func (b *Book) again(t *tx, e Entry, folder string) (Issuance, error) {
	done := Issuance{Entry: e, Outcome: Unchanged}
	written, err := b.restore(t, e, folder)
	if written {
		done.Outcome = Restored
	}
	done.Entry.State = e.State.settled()
	return done, err
}

// reason is an error of a file without the name of the file, where that says
// nothing to the user.
func reason(err error) error {
	var at *fs.PathError
	if errors.As(err, &at) {
		return at.Err
	}
	return err
}

// stageNew writes a new PDF aside, before its number is committed, so that a
// folder that cannot take it costs no number.
func stageNew(e Entry, pdf []byte, folder string) error {
	o, err := makeOutlet(folder)
	if err != nil {
		return &caused{ErrPDF, err}
	}
	defer o.close()
	switch _, err := o.root.Lstat(e.File); {
	case err == nil:
		return &FileError{Number: e.Number, Path: o.path(e.File)}
	case !errors.Is(err, fs.ErrNotExist):
		return &caused{ErrPDF, fmt.Errorf("%s: %w", folder, reason(err))}
	}
	if err := o.stage(e.File, pdf); err != nil {
		return &caused{ErrPDF, fmt.Errorf("%s: %w", folder, reason(err))}
	}
	return nil
}

// hand puts a committed PDF in its place and strikes out that it is pending.
// It goes on when the caller's context ends, since the number is taken.
func (b *Book) hand(ctx context.Context, e Entry, pdf []byte, folder string) error {
	return b.store.write(context.WithoutCancel(ctx), func(t *tx) error {
		o, err := openOutlet(folder)
		if err != nil {
			return err
		}
		defer o.close()
		if _, err := o.deliver(e, pdf); err != nil {
			return err
		}
		return t.clearPending(e.Event)
	})
}
