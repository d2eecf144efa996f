package report

import (
	"crypto/sha256"
	"errors"
	"time"

	"stonewrit/grading"
	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
	"stonewrit/photos"
	"stonewrit/templates"
)

// Input is all that a document is made of. Nothing else is asked: no clock, no
// file, no register.
type Input struct {
	Examined *grading.Examined
	Piece    *grading.ExaminedPiece // instead of Examined, for a piece of jewellery
	Set      []Set                  // of a piece: what belongs to each of its stone files, in their order
	Gems     *gem.Table             // the table that Examined was judged with
	Wording  *templates.Set         // all languages; the bench file names the one used

	// Photos are the pictures of the stone file, one for each of its photos
	// in their order; one without JPEG stands for a picture that could not be
	// read and is left out.
	Photos    []photos.Photo
	Logo      *Image   // of the practice, or nil
	Signature *Image   // of the examiner, or nil for a line to sign on
	Evidence  []Figure // drawings of the evidence, in their order

	Number string    // as printed, with its check digits; "" for a draft
	UUID   string    // "" for a draft
	Issued time.Time // the day of issue at the practice
	Draft  bool
	Copy   bool // marked as a copy made to show, on every page

	// Code makes the code that stands at the end of a numbered document, from
	// its number and the SHA-256 of JSON: rows of modules, true where dark. nil
	// leaves it out.
	Code func(number string, examined [sha256.Size]byte) ([][]bool, error)

	Replaces *Replaced // the document that this one amends, or nil

	StoneFile []byte // as examined, of a piece the piece file; carried inside the document
	JSON      []byte // the examined stone; carried inside the document
	Program   string // name and version of the program
}

// Set is what belongs to a stone with a file of its own that is set in a piece.
type Set struct {
	Photos    []photos.Photo // one for each of the stone file's photos
	Evidence  []Figure
	StoneFile []byte
}

// Replaced is an issued document that an amendment takes the place of.
type Replaced struct {
	Number  string
	Issued  time.Time
	Because string   // why, without capital and full stop
	Changes []Change // what differs
}

// Change is one thing in which an amendment differs from what it replaces. New
// or Old is "" where it is not there; both are for what is not a field.
type Change struct{ Field, Old, New string }

// ErrNotExamined says that the stone file has errors, so there is nothing to
// write a document about.
var ErrNotExamined = errors.New("the stone was not examined")

// Compose writes the document of an examined stone: what is said, in which
// order, as the kind of document in the stone file asks. The same input gives
// the same document. It returns ErrNotExamined, or an error of the wording.
func Compose(in Input) (Document, error) {
	if in.Piece != nil {
		in.Examined = asOne(in.Piece)
	}
	if in.Examined == nil || in.Examined.Stone == nil || in.Examined.Problems.Has(stone.Error) {
		return Document{}, ErrNotExamined
	}
	c := &composer{Input: in, e: in.Examined, s: in.Examined.Stone, b: in.Examined.Bench, p: in.Piece}
	if c.b == nil {
		c.b = &stone.Bench{}
	}
	language := c.b.Terms.Language
	if language == "" {
		language = templates.DefaultLanguage
	}
	var err error
	if c.w, err = in.Wording.Language(language); err != nil {
		return Document{}, err
	}
	kind := c.s.Report
	if c.short = c.shortForm(); c.short {
		kind = templates.ShortNote
	}
	order, err := in.Wording.Order(kind)
	if err != nil {
		return Document{}, err
	}
	c.prepare()
	doc := c.head()
	for _, name := range order {
		if blocks := c.section(name); len(blocks) > 0 {
			doc.Sections = append(doc.Sections, Section{Name: c.sectionName(name), Blocks: blocks})
		}
	}
	return doc, c.err
}

// composer is the work on one document. It keeps the first error of the
// wording and goes on with nothing said, so that the sections need not ask.
type composer struct {
	Input
	e       *grading.Examined
	s       *stone.Stone
	b       *stone.Bench           // never nil
	p       *grading.ExaminedPiece // nil for a stone
	items   []*composer            // of a piece, one for each of its items
	w       *templates.Wording
	subject templates.Subject
	kind    templates.Kind
	short   bool // a note in the short form
	err     error
}

func (c *composer) prepare() {
	c.kind = templates.Kind{
		Appraisal: c.s.Report == stone.Appraisal, Note: c.s.Report == stone.ShortNote, Record: c.s.Report == stone.Record,
		Sold: c.s.Report == stone.Appraisal && c.s.Sold != nil && *c.s.Sold,
	}
	c.subject = c.aboutWhat()
	if c.p != nil {
		c.preparePiece()
	}
}

// section is the blocks of one section; none leaves the section out.
func (c *composer) section(name string) []Block {
	if c.p != nil {
		if blocks, ok := c.pieceSection(name); ok {
			return blocks
		}
	}
	if c.short {
		if blocks, ok := c.shortSection(name); ok {
			return blocks
		}
	}
	switch name {
	case "finding":
		return c.finding()
	case "ground":
		return c.ground()
	case "evidence":
		return c.evidence()
	case "tests":
		return c.tests()
	case "description":
		return c.description()
	case "worth":
		return c.worth()
	case "limits":
		return c.limits()
	case "photos":
		return c.photos()
	case "keeping":
		return c.keeping()
	case "verify":
		return c.verify()
	}
	return nil
}

// evidence is the drawings, each a block of its own.
func (c *composer) evidence() []Block {
	var blocks []Block
	for _, f := range c.Evidence {
		blocks = append(blocks, f)
	}
	return blocks
}
