package register

import (
	"context"
	"fmt"
)

// Void withdraws a number, for a reason that stays on file. The entry and its
// PDF stay; the stone may be issued anew.
//
// Errors: [ErrNotFound], [ErrState] if the number is void or replaced already,
// [ErrRequest] for the reason, [ErrClock], [ErrBusy], [ErrLost], [ErrWrite];
// [ErrUncertain] if the server is lost at the commit: voiding again tells.
func (b *Book) Void(ctx context.Context, n Number, because string) (Entry, error) {
	because, err := reasonOf(because)
	if err != nil {
		return Entry{}, err
	}
	var e Entry
	err = b.store.write(ctx, func(t *tx) error {
		var err error
		if e, err = t.show(n); err != nil {
			return err
		}
		if err := e.valid(); err != nil {
			return err
		}
		ev, err := b.next(t)
		if err != nil {
			return err
		}
		ev.Kind, ev.Number, ev.Because = voidEvent, n, because
		if _, err := t.append(ev); err != nil {
			return err
		}
		_, s, _ := ev.change()
		s.apply(&e)
		return t.stand(n, s)
	})
	if err != nil {
		return Entry{}, err
	}
	return e, nil
}

// valid returns [ErrState] unless the entry may be voided or replaced.
func (e Entry) valid() error {
	switch e.State {
	case Void:
		return fmt.Errorf("%s: %w: it was voided: %s", e.Number, ErrState, e.Reason)
	case Amended:
		return fmt.Errorf("%s: %w: %s replaces it", e.Number, ErrState, e.ReplacedBy)
	}
	return nil
}
