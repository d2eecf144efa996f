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
	ctx, err := api.ReadValidateAndOptimize(bytes.NewReader(document), locking(password, rand.Text()))
	if err != nil {
		return nil, fmt.Errorf("%w: %s", ErrNotPDF, firstLine(err))
	}
	// In files of PDF 2.0 the library guards the password in the way of that
	// version, which takes longer to guess. It does not know their list of
	// associated files; the files stay in the list of those embedded.
	latest := model.V20
	ctx.HeaderVersion, ctx.RootVersion = &latest, nil
	catalog, err := ctx.Catalog()
	if err != nil {
		return nil, fmt.Errorf("%w: %s", ErrNotPDF, firstLine(err))
	}
	catalog.Delete("AF")
	var out bytes.Buffer
	if err := api.WriteContext(ctx, &out); err != nil {
		return nil, fmt.Errorf("closing the copy: %s", firstLine(err))
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
	c.Cmd = model.ENCRYPT
	c.Permissions = model.PermissionsPrint | model.PermissionExtractRev3 // and be read aloud
	return c
}
