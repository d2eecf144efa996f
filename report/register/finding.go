package register

import (
	"fmt"
	"strings"
)

// A FindingKind is what an audit can find.
type FindingKind string

// The kinds of finding.
const (
	Damaged      FindingKind = "damaged database"       // by the database's own test
	BrokenChain  FindingKind = "broken chain"           // an event was changed, removed or put in
	ChangedEntry FindingKind = "changed entry"          // an entry is not what the chain says
	NumberGap    FindingKind = "number gap"             // a number of a series is not there
	ChangedCopy  FindingKind = "changed stored PDF"     // or none is stored
	MissingPDF   FindingKind = "missing PDF"            // from the folder
	ChangedPDF   FindingKind = "changed PDF"            // in the folder
	StrayPDF     FindingKind = "PDF not on register"    // in the folder
	Unfinished   FindingKind = "unfinished issue"       // in progress, or interrupted and not yet settled
	Leftover     FindingKind = "leftover of an old run" // a temporary file in the folder
)

// A Finding is one thing wrong, and where.
type Finding struct {
	Kind   FindingKind
	Event  int64  // place in the log, if it concerns one
	Number Number // if it concerns one
	File   string // path below the folder, if it concerns one
	Detail string
}

// String returns the finding as one line.
func (f Finding) String() string {
	var where []string
	if !f.Number.IsZero() {
		where = append(where, f.Number.String())
	}
	if f.Event != 0 {
		where = append(where, fmt.Sprintf("event %d", f.Event))
	}
	if f.File != "" {
		where = append(where, f.File)
	}
	line := string(f.Kind)
	if len(where) > 0 {
		line = strings.Join(where, ", ") + ": " + line
	}
	if f.Detail != "" {
		line += ": " + f.Detail
	}
	return line
}

// An Audit is what was looked at and what was found.
type Audit struct {
	Entries int
	Events  int
	// Head is the hash of the newest event. Noted outside the register, it
	// shows later whether the log up to there was written anew.
	Head     Digest
	Findings []Finding // first the log, then the entries, the PDFs, the folder
	// Elsewhere counts the numbers whose PDFs other offices keep, by office, and
	// that are not in the folder. What the register stores of them was proven.
	Elsewhere map[string]int
}

// Clean reports whether nothing was found.
func (a Audit) Clean() bool { return len(a.Findings) == 0 }

func (a *Audit) find(f Finding, format string, args ...any) {
	f.Detail = fmt.Sprintf(format, args...)
	a.Findings = append(a.Findings, f)
}
