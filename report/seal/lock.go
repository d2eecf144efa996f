package seal

import (
	"bytes"
	"crypto/rand"
	"fmt"
	"strings"
	"unicode"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
)

const lockBits = 256 // AES: ISO 32000-2, 7.6.4.4

// Lock returns a copy of a PDF that opens with the password alone, encrypted
// with AES of 256 bits. It may be printed and not changed. It is another file
// than the one issued, every time. The password may hold letters, digits and
// signs of any language, and no space.
//
// Errors: [ErrUnfit] for the password, [ErrNotPDF].
func Lock(document []byte, password string) ([]byte, error) {
	if err := Fit(password); err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := api.Encrypt(bytes.NewReader(document), &out, locking(password, rand.Text())); err != nil {
		return nil, fmt.Errorf("%w: %v", ErrNotPDF, err)
	}
	return out.Bytes(), nil
}

// Fit returns [ErrUnfit] unless a password may close a copy.
func Fit(password string) error {
	if password == "" || strings.ContainsFunc(password, unfit) {
		return ErrUnfit
	}
	return nil
}

func unfit(r rune) bool { return !unicode.IsGraphic(r) || unicode.IsSpace(r) }

// locking is how the library encrypts. It is kept from making a folder for its
// settings.
func locking(password, owner string) *model.Configuration {
	api.DisableConfigDir()
	c := model.NewAESConfiguration(password, owner, lockBits)
	c.Permissions = model.PermissionsPrint
	return c
}
