package report

import (
	"time"

	"stonewrit/grading"
	"stonewrit/grading/gem"
	"stonewrit/photos"
	"stonewrit/templates"
)

// Input is all that a document is made of. Nothing else is asked: no clock, no
// file, no register.
type Input struct {
	Examined *grading.Examined
	Gems     *gem.Table     // the table that Examined was judged with
	Wording  *templates.Set // all languages; the bench file names the one used

	// Photos are the pictures of the stone file, one for each of its photos
	// in their order; one without JPEG stands for a picture that could not be
	// read and is left out.
	Photos    []photos.Photo
	Logo      *Image // of the practice, or nil
	Signature *Image // of the examiner, or nil for a line to sign on

	Number string    // as printed, with its check digits; "" for a draft
	UUID   string    // "" for a draft
	Issued time.Time // the day of issue at the practice
	Draft  bool

	StoneFile []byte // as examined; carried inside the document
	JSON      []byte // the examined stone; carried inside the document
	Program   string // name and version of the program
}

// Compose writes the document of an examined stone: what is said, in which
// order, as the kind of document in the stone file asks. The same input gives
// the same document. The error is one of the wording, or says that the stone
// was not examined.
func Compose(in Input) (Document, error) {
	return Document{}, nil
}
