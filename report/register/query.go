package register

import (
	"context"
	"fmt"
	"strings"
)

// A Filter selects entries; its zero value selects all.
type Filter struct {
	Stone string
	Kind  Kind
	Year  int // of issue
}

// List returns the entries that a filter selects, by year and number.
func (r *Reader) List(ctx context.Context, f Filter) ([]Entry, error) {
	var where []string
	var args []any
	add := func(column string, value any) {
		args = append(args, value)
		where = append(where, fmt.Sprintf("%s = $%d", column, len(args)))
	}
	if f.Stone != "" {
		add("stone", f.Stone)
	}
	if f.Kind != "" {
		add("kind", string(f.Kind))
	}
	if f.Year != 0 {
		add("year", f.Year)
	}
	return r.list(ctx, strings.Join(where, " AND "), "year, ordinal", args...)
}

// History returns every entry that a stone ever had, oldest first.
func (r *Reader) History(ctx context.Context, stone string) ([]Entry, error) {
	return r.list(ctx, "stone = $1", "event", stone)
}

// Show returns the entry of a number. It returns [ErrNotFound] if there is none.
func (r *Reader) Show(ctx context.Context, n Number) (Entry, error) {
	var e Entry
	err := r.store.read(ctx, func(t *tx) error {
		var err error
		e, err = t.show(n)
		return err
	})
	return e, err
}

// Document returns the PDF of a number as it was issued. It returns
// [ErrNotFound], or [ErrStored] if what is stored is something else.
func (r *Reader) Document(ctx context.Context, n Number) ([]byte, error) {
	var pdf []byte
	err := r.store.read(ctx, func(t *tx) error {
		e, err := t.show(n)
		if err != nil {
			return err
		}
		pdf, err = t.document(e)
		return err
	})
	return pdf, err
}

func (r *Reader) list(ctx context.Context, where, order string, args ...any) ([]Entry, error) {
	var list []Entry
	err := r.store.read(ctx, func(t *tx) error {
		var err error
		list, err = t.list(where, order, args...)
		return err
	})
	return list, err
}

func (t *tx) show(n Number) (Entry, error) {
	list, err := t.list("number = $1", "event", n.String())
	if err != nil {
		return Entry{}, err
	}
	if len(list) == 0 {
		return Entry{}, fmt.Errorf("%s: %w", n, ErrNotFound)
	}
	return list[0], nil
}
