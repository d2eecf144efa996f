// Package report turns an examined stone into a document.
//
// This file and its neighbours block.go, text.go and figure.go hold the
// document model: what a document says and in which order, as plain data. The
// model knows nothing of pages, fonts or PDF; package report/pdf lays it out
// and draws it. A document is a list of sections, a section a name and a list
// of blocks, and a block is one of the types of block.go.
//
// The model has three sizes of text (large, body, small) and one typeface. A
// block chooses its size; a run of text chooses only its voice: plain, strong,
// italic or quiet.
package report

import "time"

// Document is one appraisal, note or record, ready to be laid out. The zero
// value of every field is allowed; what a kind of document must say is decided
// by whoever composes it.
type Document struct {
	Kind     string // "appraisal", "note" or "record": for the metadata only
	Title    string // the kind in plain words, as printed: "Stone note"
	Language string // BCP 47 tag of the text: "en", "de"

	Number string // report number, printed on every page; empty while unnumbered
	UUID   string
	Draft  bool // prints the word for a draft on every page
	Short  bool // set tighter, to keep to one page where it can

	Date     time.Time // date of issue, written into the file
	DateText string    // the same date as printed, in the document's language

	Practice Practice
	Paper    Paper
	Accent   Color // for section names and the letterhead; zero is the built-in ink

	Sections []Section
	End      string // last line of the document, at the foot of its last page only

	Words       Words
	Metadata    Metadata
	Attachments []Attachment
}

// Practice is the letterhead. On page one it stands whole, on the pages after
// it only Name.
type Practice struct {
	Name    string
	Address []string // one line each
	Contact []string // telephone, mail, web; one line each
	Logo    *Image
}

// Section is one part of the document. Name stands in the wide left margin
// beside the first block, and again where the section goes on on a new page.
// A section without a name and one without blocks are both allowed.
type Section struct {
	Name   string
	Blocks []Block
}

// Words are the few words that the layout itself sets. A field left empty is
// set in English.
type Words struct {
	PageOf     string // "page {page} of {pages}"
	Draft      string // "DRAFT"
	DraftNote  string // stands beside Draft
	Unnumbered string // in the place of the number while there is none
	Continued  string // below the name of a section that goes on on a new page
}

// Metadata is written into the file, not on the page.
type Metadata struct {
	Author   string // the examiner
	Subject  string
	Keywords []string
	Program  string   // name and version of the program
	Digest   string   // SHA-256 of the stone file, or of the piece file, hexadecimal
	Stones   []string // of the files of a piece's stones, in the order of the attachments
	Examined string   // SHA-256 of the JSON of the examined stone, hexadecimal
}

// Attachment is a file carried inside the document.
type Attachment struct {
	Name        string // file name without folder
	Type        string // media type: "application/json"
	Description string
	Data        []byte
}

// Image is a JPEG or PNG picture, upright, in the pixels to be printed.
type Image struct {
	Data []byte
	Alt  string // says in words what is to be seen
}

// Paper is a page size.
type Paper uint8

// The two page sizes.
const (
	A4     Paper = iota // 210 mm by 297 mm, ISO 216
	Letter              // 8.5 inches by 11 inches
)

// Size returns the width and height of the page.
func (p Paper) Size() (width, height Point) {
	if p == Letter {
		return 612, 792
	}
	return Millimetres(210), Millimetres(297)
}

// Color is an sRGB colour.
type Color struct{ R, G, B uint8 }

// Point is a length on the page, 1/72 inch.
type Point float64

// Millimetres returns the page length of mm millimetres; an inch is 25.4 mm by
// definition.
func Millimetres(mm float64) Point { return Point(mm * 72 / 25.4) }

// Millimetres returns the length in millimetres.
func (p Point) Millimetres() float64 { return float64(p) * 25.4 / 72 }
