package seal

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
)

// A Document is what a PDF says of itself, whether or not it is true.
type Document struct {
	// From the XMP metadata.
	Number   string
	UUID     string
	Kind     string
	Stone    string   // SHA-256 of the stone file, or of the piece file, hexadecimal
	Stones   []string // of the files of a piece's stones, in the order of the files
	Examined string   // SHA-256 of the JSON of the examined stone, hexadecimal; "" in a document that does not say it
	Shown    string   // SHA-256 of the SHA-256 of each page's content, one after another, hexadecimal; "" in a document that does not say it

	Files      []File
	Pages      []string // text of each page, a line for each string shown, without spaces
	Signatures []Signature
	Locked     bool // it was opened with a password

	shown     Digest // of what the pages do show, as Shown
	revisions int    // how often the file was added to, and once for its making
}

// A File travels inside a document.
type File struct {
	Name string
	Data []byte
}

const (
	maxDocument = 256 << 20 // bytes; far above a document with twelve photos
	maxStream   = 64 << 20  // bytes of one part, unpacked
	maxPages    = 1000
)

// Open reads a PDF. A password is needed only for a copy that is closed with
// one. Nothing in a PDF that was made to do harm gets further than an error.
//
// Errors: [ErrNotPDF], [ErrForeign], [ErrLocked], [ErrPassword].
func Open(data []byte, password string) (doc *Document, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			doc, err = nil, fmt.Errorf("%w: %v", ErrNotPDF, fault)
		}
	}()
	if err := looksLikePDF(data); err != nil {
		return nil, err
	}
	ctx, err := api.ReadAndValidate(bytes.NewReader(data), reading(password))
	switch {
	case errors.Is(err, pdfcpu.ErrWrongPassword) && password == "":
		return nil, ErrLocked
	case errors.Is(err, pdfcpu.ErrWrongPassword):
		return nil, ErrPassword
	case err != nil:
		return nil, fmt.Errorf("%w: %s", ErrNotPDF, firstLine(err))
	}
	doc = &Document{Locked: ctx.Encrypt != nil, revisions: bytes.Count(data, []byte("%%EOF"))}
	for _, step := range []func(*model.Context) error{doc.metadata, doc.files, doc.pages} {
		if err := step(ctx); err != nil {
			return nil, err
		}
	}
	doc.signatures(ctx, data)
	return doc, nil
}

// looksLikePDF spares the reader what is plainly none.
func looksLikePDF(data []byte) error {
	switch {
	case len(data) > maxDocument:
		return fmt.Errorf("%w: it has %d bytes, more than %d", ErrNotPDF, len(data), maxDocument)
	case !bytes.HasPrefix(data, []byte("%PDF-")):
		return fmt.Errorf("%w: it does not begin with %%PDF-", ErrNotPDF)
	case !bytes.Contains(data[max(0, len(data)-1024):], []byte("%%EOF")):
		return fmt.Errorf("%w: its end is missing", ErrNotPDF)
	}
	return nil
}

// reading is how the library reads: within bounds, without the network, and
// without making a folder for its settings.
func reading(password string) *model.Configuration {
	api.DisableConfigDir()
	c := model.NewDefaultConfiguration()
	c.UserPW, c.OwnerPW = password, password
	c.Cmd = model.VALIDATE // whoever has the password may read
	c.Offline = true
	c.Limits.MaxStreamBytes, c.Limits.MaxDecodeBytes = maxStream, maxStream
	return c
}

func firstLine(err error) string {
	line, _, _ := strings.Cut(err.Error(), "\n")
	return line
}

func (d *Document) files(ctx *model.Context) error {
	if err := ctx.LocateNameTree("EmbeddedFiles", false); err != nil {
		return fmt.Errorf("%w: %s", ErrNotPDF, firstLine(err))
	}
	if ctx.Names["EmbeddedFiles"] == nil {
		return nil
	}
	list, err := ctx.ExtractAttachments(nil)
	if err != nil {
		return fmt.Errorf("%w: %s", ErrNotPDF, firstLine(err))
	}
	for _, a := range list {
		data, err := io.ReadAll(io.LimitReader(a.Reader, maxStream))
		if err != nil {
			return fmt.Errorf("%w: %s", ErrNotPDF, firstLine(err))
		}
		d.Files = append(d.Files, File{a.FileName, data})
	}
	return nil
}

func (d *Document) pages(ctx *model.Context) error {
	if ctx.PageCount > maxPages {
		return fmt.Errorf("%w: it has %d pages", ErrForeign, ctx.PageCount)
	}
	all := sha256.New()
	for n := range ctx.PageCount {
		content, err := pdfcpu.ExtractPageContent(ctx, n+1)
		if err != nil {
			return fmt.Errorf("%w: %s", ErrNotPDF, firstLine(err))
		}
		var src []byte
		if content != nil {
			if src, err = io.ReadAll(io.LimitReader(content, maxStream)); err != nil {
				return fmt.Errorf("%w: %s", ErrNotPDF, firstLine(err))
			}
		}
		page := Sum(src)
		all.Write(page[:])
		d.Pages = append(d.Pages, text(src, fontsOf(ctx, n+1)))
	}
	d.shown = Digest(all.Sum(nil))
	return nil
}

// numberForm is how numbers are printed.
var numberForm = regexp.MustCompile(`[A-Z][A-Z0-9]{0,7}-[0-9]{4}-[0-9]{6}-[0-9]{2}`)

// Numbers are the numbers that a page names, in their order.
func Numbers(page string) []string { return numberForm.FindAllString(page, -1) }
