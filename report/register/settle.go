package register

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path/filepath"
	"slices"
	"time"
)

// Settled is an entry that an interrupted issue had left without its file.
type Settled struct {
	Entry  Entry
	Folder string
	// Err says why it could not be settled: the folder is gone, or a
	// [FileError]. It stays pending.
	Err error
}

// Settle finishes what interrupted runs have left: it puts the PDF of every
// entry that is still [Reserved] in the folder it was meant for, and removes
// the temporary file of a number that was not taken from folder. It returns
// what it found. Its time does not grow with the register. Call it before
// issuing; when nothing was left it changes nothing.
//
// What another machine left stays for that one, which may be at it just now,
// unless what it left lies in a folder that this machine has too.
func (b *Book) Settle(ctx context.Context, folder string) ([]Settled, error) {
	var found []Settled
	err := b.store.write(ctx, func(t *tx) error {
		places, err := t.pending()
		if err != nil {
			return err
		}
		for _, event := range slices.Sorted(maps.Keys(places)) {
			entries, err := t.list(`event = $1`, `event`, event)
			if err != nil {
				return err
			}
			if len(entries) == 0 {
				return fmt.Errorf("%s: %w: event %d is pending but has no entry", b.name, ErrNotRegister, event)
			}
			at := places[event]
			if at.machine != b.opts.Machine && !leftIn(at.folder, entries[0]) {
				continue
			}
			s := Settled{Entry: entries[0], Folder: at.folder}
			s.Err = b.settle(t, s.Entry, s.Folder)
			found = append(found, s)
		}
		return b.sweep(t, folder)
	})
	return found, err
}

// leftIn reports whether the PDF of an entry lies in a folder, under its name
// or the temporary one.
func leftIn(folder string, e Entry) bool {
	o, err := openOutlet(folder)
	if err != nil {
		return false
	}
	defer o.close()
	for _, name := range []string{e.File, partName(e.File)} {
		if got, err := o.sum(name); err == nil && got == e.PDF {
			return true
		}
	}
	return false
}

func (b *Book) settle(t *tx, e Entry, folder string) error {
	o, err := openOutlet(folder)
	if err != nil {
		return err
	}
	defer o.close()
	pdf, err := t.document(e)
	if err != nil {
		return err
	}
	if _, err := o.deliver(e, pdf); err != nil {
		return err
	}
	return t.clearPending(e.Event)
}

// Restore puts the PDF of a number into a folder, byte for byte as issued,
// whatever its state. written is false if it is there already.
//
// Errors: [ErrNotFound], [ErrStored], [FileError].
func (b *Book) Restore(ctx context.Context, n Number, folder string) (written bool, err error) {
	full, err := filepath.Abs(folder)
	if err != nil {
		return false, err
	}
	err = b.store.write(ctx, func(t *tx) error {
		e, err := t.show(n)
		if err != nil {
			return err
		}
		written, err = b.restore(t, e, full)
		return err
	})
	return written, err
}

func (b *Book) restore(t *tx, e Entry, folder string) (written bool, err error) {
	o, err := makeOutlet(folder)
	if err != nil {
		return false, err
	}
	defer o.close()
	there, err := o.holds(e)
	if err != nil {
		return false, err
	}
	if !there {
		pdf, err := t.document(e)
		if err != nil {
			return false, err
		}
		if written, err = o.deliver(e, pdf); err != nil {
			return false, err
		}
	}
	if e.State != Reserved {
		return written, nil
	}
	return written, t.clearPending(e.Event)
}

// sweep removes from a folder the temporary file of a number that was staged
// and not taken. Numbers are taken one at a time, so that can only be the next
// number of this year, or of the year of the newest entry.
func (b *Book) sweep(t *tx, folder string) error {
	o, err := openOutlet(folder)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return &caused{ErrPDF, err}
	}
	defer o.close()
	_, _, newest, err := t.head()
	if err != nil {
		return err
	}
	now := b.opts.Now()
	for _, at := range []time.Time{now, newest} {
		year := at.In(b.opts.Zone).Year()
		last, err := t.lastOrdinal(year)
		if err != nil {
			return err
		}
		n, err := NewNumber(b.opts.Prefix, year, last+1)
		if err != nil {
			continue // the series is full or the book empty: nothing was staged
		}
		if err := o.discard(n.String() + pdfSuffix); err != nil {
			return err
		}
	}
	return nil
}
