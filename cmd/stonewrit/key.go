package main

import (
	"errors"
	"io"
	"os"
	"time"

	"github.com/google/uuid"

	"stonewrit/report/register"
	"stonewrit/report/seal"
)

// mostKey is above any key with its chain of certificates.
const mostKey = 1 << 20 // bytes

// key loads the key that documents are signed with; nil for no file. A file that
// needs no password is not asked one for.
func (p *program) key(file string) (*seal.Key, error) {
	if file == "" {
		return nil, nil
	}
	info, err := os.Stat(file)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, notAFile(file, info)
	}
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, mostKey))
	if err != nil {
		return nil, err
	}
	key, err := seal.LoadKey(data, "")
	if errors.Is(err, seal.ErrPassword) {
		var password string
		if password, err = p.secret(keyPassword, "Password of "+file+": "); err == nil {
			key, err = seal.LoadKey(data, password)
		}
	}
	if err != nil {
		return nil, &failure{file + ": " + err.Error(), keyHint(err), err}
	}
	return key, nil
}

func keyHint(err error) string {
	switch {
	case errors.Is(err, seal.ErrPassword):
		return "no number was taken; try again"
	case errors.Is(err, seal.ErrKey):
		return "a .p12 file, or PEM with the key and its certificate; no number was taken"
	}
	return hintOf(err)
}

// render makes the document for the number that was taken, and signs it. It is
// the signed document that the register keeps.
func (i *issuer) render(m *manuscript) register.Render {
	return func(number register.Number, id uuid.UUID, issued time.Time) ([]byte, error) {
		pdf, err := m.print(number, id.String(), issued)
		if err != nil || i.key == nil {
			return pdf, err
		}
		return i.key.Sign(pdf, issued)
	}
}
