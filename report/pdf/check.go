package pdf

import (
	"errors"
	"fmt"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"stonewrit/report"
)

// ErrShape says that a block cannot be set as it is: a drawing too large for a
// page, a row with more cells than its table has columns, or a letterhead that
// leaves no room for text.
var ErrShape = errors.New("cannot be set on a page")

// MissingCharacter is an error: a character that no font of the press has, or
// that cannot be set by placing letters one after another.
type MissingCharacter struct {
	Char  rune
	Place string // where in the document, in words
	Near  string // the text around it
	Why   string

	NoFont bool // another font would help
}

// noFont is why a character cannot be printed that another font would help.
const noFont = "no font has it"

func (m MissingCharacter) Error() string {
	return fmt.Sprintf("%s: cannot print %q (U+%04X) in %q: %s", m.Place, string(m.Char), m.Char, m.Near, m.Why)
}

// Check returns everything that would keep the document from being printed,
// joined: each MissingCharacter, and errors that are ErrImage or ErrShape. Call
// it before a number is taken.
func (p *Press) Check(doc report.Document) error {
	var errs []error
	for _, m := range p.Missing(doc) {
		errs = append(errs, m)
	}
	eachImage(&doc, func(place string, img *report.Image) {
		if _, err := pixels(img); err != nil {
			errs = append(errs, fmt.Errorf("%s: %w", place, err))
		}
	})
	for i, sec := range doc.Sections {
		for j, b := range sec.Blocks {
			if err := checkShape(b); err != nil {
				errs = append(errs, fmt.Errorf("section %d %q, block %d: %w", i+1, sec.Name, j+1, err))
			}
		}
	}
	if err := newFrame(p.setter(&doc, gridsOf(doc.Short)[0])).room(); err != nil {
		errs = append(errs, err)
	}
	return errors.Join(errs...)
}

func checkShape(b report.Block) error {
	switch b := b.(type) {
	case report.Figure:
		if !(b.Width > 0 && b.Width <= report.FigureWideWidth && b.Height > 0 && b.Height <= report.FigureHeight) {
			return fmt.Errorf("%w: the drawing is %.0f by %.0f pt, the most is %.0f by %.0f",
				ErrShape, b.Width, b.Height, report.FigureWideWidth, report.FigureHeight)
		}
	case report.Table:
		for i, row := range b.Rows {
			if len(row.Cells) > len(b.Columns) {
				return fmt.Errorf("%w: row %d has %d cells, the table %d columns", ErrShape, i+1, len(row.Cells), len(b.Columns))
			}
		}
	}
	return nil
}

// Missing returns the characters of the document that the press cannot print,
// each once for each place, in reading order.
func (p *Press) Missing(doc report.Document) []MissingCharacter {
	var out []MissingCharacter
	eachText(&doc, func(place string, t report.Text) {
		seen := make(map[rune]bool)
		for _, run := range t {
			face := voiceOf(run.Style, sizeBody).face
			if p.hasAll(run.Text, face) {
				continue
			}
			text := []rune(norm.NFC.String(run.Text))
			for i, r := range text {
				why := p.cannot(face, r)
				if i == 0 && isAccent(r) {
					why = "no letter stands before this accent"
				}
				if why == "" || seen[r] {
					continue
				}
				seen[r] = true
				out = append(out, MissingCharacter{Char: r, Place: place, Near: near(text, i), Why: why, NoFont: why == noFont})
			}
		}
	})
	return out
}

// hasAll is the quick answer for plain text: nothing in it needs a second look.
func (p *Press) hasAll(s string, face Face) bool {
	for _, r := range s {
		if r < ' ' || r > 0x2ff || !p.faces[face].has(r) {
			return false
		}
	}
	return true
}

// cannot says why a character cannot be printed, or nothing if it can.
func (p *Press) cannot(face Face, r rune) string {
	shown, ok := drawn(r)
	switch {
	case r == '\n' || !ok:
		return ""
	case r == utf8.RuneError:
		return "the text is damaged here"
	case unicode.IsControl(r) && r != '\t':
		return "a control character"
	case needsShaping(r):
		return "its script joins or reorders letters, which this program cannot do"
	case !p.faces[p.face(face, shown)].has(shown):
		return noFont
	}
	return ""
}

// needsShaping reports whether letters of r's script change with their
// neighbours, stack, or run from right to left. Scripts: Unicode 15, chapters
// 9, 12, 13 and 16.
func needsShaping(r rune) bool {
	if r < 0x590 {
		return false
	}
	return unicode.In(r,
		unicode.Hebrew, unicode.Arabic, unicode.Syriac, unicode.Thaana, unicode.Nko,
		unicode.Devanagari, unicode.Bengali, unicode.Gurmukhi, unicode.Gujarati, unicode.Oriya,
		unicode.Tamil, unicode.Telugu, unicode.Kannada, unicode.Malayalam, unicode.Sinhala,
		unicode.Thai, unicode.Lao, unicode.Tibetan, unicode.Myanmar, unicode.Khmer, unicode.Mongolian,
	)
}

// near returns a few characters on either side of the one at i.
func near(text []rune, i int) string {
	const around = 12
	from, to := max(0, i-around), min(len(text), i+around+1)
	return string(text[from:to])
}
