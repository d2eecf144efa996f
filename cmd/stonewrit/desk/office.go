package desk

import "context"

// An Office makes documents and keeps the register. The commands are one.
type Office interface {
	// New writes the file of a stone that is not described yet and returns its
	// path below the folder.
	New(ctx context.Context, n NewStone) (file string, err error)
	// Draft makes an unnumbered proof.
	Draft(ctx context.Context, file string) (Paper, error)
	// Issue gives a stone its number. The answer is not Good if it was refused.
	Issue(ctx context.Context, file, authorisedBy string) (Answer, error)
	// Amend gives a stone a new number that replaces another.
	Amend(ctx context.Context, number, file, because, authorisedBy string) (Answer, error)
	// Void withdraws a number.
	Void(ctx context.Context, number, because string) (Answer, error)
	// Verify tells whether a PDF is the document that was issued.
	Verify(ctx context.Context, pdf []byte) (Answer, error)
	// Entries lists the numbers on the register, newest last.
	Entries(ctx context.Context) ([]Entry, error)
	// Document is the PDF of a number as it was issued.
	Document(ctx context.Context, number string) (Paper, error)
	// Inventory makes the list of the whole folder.
	Inventory(ctx context.Context) (Paper, error)
}

// NewStone is what a new stone file starts with, or a new piece file.
type NewStone struct {
	Reference, Kind, Species string
	Piece                    string // kind of the piece; empty for a stone
}

// Paper is a document to be shown.
type Paper struct {
	Name string // of the file
	Type string // media type
	Data []byte
}

// An Answer is what an office says to a request.
type Answer struct {
	Good   bool     // it was done, or it is so
	Number string   // the number it is about, if any
	Lines  []string // what is to be told
}

// An Entry is one number on the register.
type Entry struct {
	Number, Stone, Kind, State, Issued, Reason, Replaces, ReplacedBy string
}
