package register

import (
	"bytes"
	"compress/gzip"
	"database/sql"
	"errors"
	"fmt"
	"io"
)

// insertDocument stores the bytes of a PDF.
func (t *tx) insertDocument(event int64, pdf []byte) error {
	var packed bytes.Buffer
	w := gzip.NewWriter(&packed)
	if _, err := w.Write(pdf); err != nil {
		return err
	}
	if err := w.Close(); err != nil {
		return err
	}
	_, err := t.sql.ExecContext(t.ctx,
		`INSERT INTO documents (event, gzip) VALUES ($1, $2)`, event, packed.Bytes())
	return err
}

// document returns the PDF of an entry as issued. It returns [ErrStored] if
// what is stored is something else.
func (t *tx) document(e Entry) ([]byte, error) {
	var packed []byte
	err := t.sql.QueryRowContext(t.ctx,
		`SELECT gzip FROM documents WHERE event = $1`, e.Event).Scan(&packed)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, fmt.Errorf("%s: %w: nothing is stored", e.Number, ErrStored)
	}
	if err != nil {
		return nil, err
	}
	pdf, err := unpack(packed, e.Size)
	if err != nil {
		return nil, fmt.Errorf("%s: %w: %v", e.Number, ErrStored, err)
	}
	if got := Sum(pdf); got != e.PDF {
		return nil, fmt.Errorf("%s: %w: its SHA-256 is %s, the entry says %s", e.Number, ErrStored, got, e.PDF)
	}
	return pdf, nil
}

// unpack reads no more than one byte beyond the size that is expected, so that
// a forged blob cannot fill memory.
func unpack(packed []byte, size int64) ([]byte, error) {
	r, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		return nil, err
	}
	return io.ReadAll(io.LimitReader(r, size+1))
}
