package register

import (
	"fmt"
	"time"

	"github.com/google/uuid"
)

// A Kind is the kind of a document.
type Kind string

// The kinds of document.
const (
	Appraisal Kind = "appraisal"
	Note      Kind = "note"
	Record    Kind = "record"
)

// ParseKind reads a kind as written in a stone file.
func ParseKind(s string) (Kind, error) {
	switch k := Kind(s); k {
	case Appraisal, Note, Record:
		return k, nil
	}
	return "", fmt.Errorf("kind of document %q is not one of appraisal, note, record", s)
}

// A State says how an entry stands.
type State string

// The states of an entry.
const (
	Reserved State = "reserved" // on the register with its PDF, whose file is not yet confirmed
	Issued   State = "issued"
	Void     State = "void"    // withdrawn, still on file
	Amended  State = "amended" // replaced by another number, still on file
)

// An Entry is one number on the register and what it was given to.
type Entry struct {
	Number   Number
	UUID     uuid.UUID
	Stone    string // the stone's own reference
	Kind     Kind
	Examined Span
	Examiner string    // id of the examiner
	Issued   time.Time // to the second, in the practice's time zone
	Content  Content
	PDF      Digest
	Size     int64  // of the PDF, in bytes
	File     string // name of the PDF, without folder
	Office   string // which office keeps it; "" in a practice of one
	Program  string // version of the program
	Data     string // version of the reference tables

	State      State
	Reason     string // why it was voided or amended
	Replaces   Number // the number this one replaces, if any
	ReplacedBy Number // the number that replaces this one, if any

	Event int64  // place of its issue in the log of events, from 1
	Prev  Digest // hash of the event before
	Hash  Digest // hash of the event of its issue
}

// fields returns the entry as names and printed values, in a fixed order, for
// comparing.
func (e Entry) fields() [][2]string {
	return [][2]string{
		{"number", e.Number.String()}, {"uuid", e.UUID.String()},
		{"stone", e.Stone}, {"kind", string(e.Kind)},
		{"examined from", e.Examined.First.String()}, {"examined to", e.Examined.Last.String()},
		{"examiner", e.Examiner}, {"issued", e.Issued.Format(time.RFC3339)},
		{"digest of the stone file", e.Content.Stone.String()},
		{"digest of the photos", e.Content.Photos.String()},
		{"digest of the letterhead", e.Content.Letterhead.String()},
		{"digest of the PDF", e.PDF.String()}, {"size of the PDF", fmt.Sprint(e.Size)},
		{"file", e.File}, {"office", e.Office}, {"program", e.Program}, {"data", e.Data},
		{"state", string(e.State.settled())}, {"reason", e.Reason},
		{"replaces", e.Replaces.String()}, {"replaced by", e.ReplacedBy.String()},
		{"hash before", e.Prev.String()}, {"hash", e.Hash.String()},
	}
}

// settled returns the state without regard to whether the file is confirmed.
func (s State) settled() State {
	if s == Reserved {
		return Issued
	}
	return s
}

// differences says where an entry differs from what the chain says it is.
func differences(chain, entry Entry) []string {
	var diffs []string
	has := entry.fields()
	for i, want := range chain.fields() {
		if got := has[i]; got != want {
			diffs = append(diffs, fmt.Sprintf("%s is %q, the chain says %q", want[0], got[1], want[1]))
		}
	}
	return diffs
}
