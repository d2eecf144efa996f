package pdf

import (
	"bytes"
	"fmt"
	"sync"

	"github.com/go-fonts/liberation/liberationserifbold"
	"github.com/go-fonts/liberation/liberationserifitalic"
	"github.com/go-fonts/liberation/liberationserifregular"

	"stonewrit/report"
)

// Press holds the parsed typeface that documents are laid out and drawn with.
type Press struct {
	typeface
	writers sync.Pool // of *zlib.Writer
}

// typeface is the faces that text is measured and set with, and how close.
type typeface struct {
	faces [faceCount]*face // from FaceOther on they may be nil
	grid
}

// Family is a typeface: three TrueType files of one family, and others whose
// characters stand in for those that the family lacks, in the order given. A
// face that is nil is the built-in one.
type Family struct {
	Name                  string // for error messages
	Regular, Bold, Italic []byte
	Others                []Font // MostOthers at most
}

// Font is a TrueType file with its name for error messages.
type Font struct {
	Name string
	Data []byte
}

// NewPress returns a press with the built-in typeface, Liberation Serif: it
// has Latin with its extensions, Greek with all accents, and Cyrillic.
func NewPress() (*Press, error) { return NewPressWith(Family{}) }

// NewPressWith returns a press with another typeface. It returns ErrFont if a
// file is damaged or not TrueType.
func NewPressWith(f Family) (*Press, error) {
	sources := [faceCount][]byte{
		or(f.Regular, liberationserifregular.TTF),
		or(f.Bold, liberationserifbold.TTF),
		or(f.Italic, liberationserifitalic.TTF),
	}
	if len(f.Others) > MostOthers {
		return nil, fmt.Errorf("%s: %d fonts for other characters, %d are allowed", f.Name, len(f.Others), MostOthers)
	}
	for i, other := range f.Others {
		sources[int(FaceOther)+i] = other.Data
	}
	p := Press{typeface: typeface{grid: wideGrid()}, writers: sync.Pool{New: newDeflater}}
	for i, src := range sources {
		if src == nil {
			continue
		}
		face, err := parseFace(src)
		if err != nil {
			if i >= int(FaceOther) {
				return nil, fmt.Errorf("font %s: %w", f.Others[i-int(FaceOther)].Name, err)
			}
			return nil, fmt.Errorf("font %s, %s: %w", f.Name, Face(i), err)
		}
		p.faces[i] = face
	}
	return &p, nil
}

// LabelWidth is how wide a label of a drawing is set: a text in the plain voice
// and the small size.
func (p *Press) LabelWidth(s string) Point { return p.natural(report.Plain(s), sizeSmall) }

func or(given, builtin []byte) []byte {
	if given == nil {
		return builtin
	}
	return given
}

func (f Face) String() string {
	if f > FaceOther {
		return fmt.Sprintf("other%d", f-FaceOther+1)
	}
	return [...]string{"regular", "bold", "italic", "other"}[f]
}

// Print checks the document, lays it out and returns it as PDF.
func (p *Press) Print(doc report.Document) ([]byte, error) {
	pages, err := p.Layout(doc)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := p.Write(&out, doc, pages); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}
