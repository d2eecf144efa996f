package stone

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"stonewrit/grading/phrase"
	"strings"
)

// Severity says what a problem does to the work.
type Severity string

// An error stops reading; missing stops issue; a finding gives exit status 1;
// warnings and notes are told and stop nothing.
const (
	Error   Severity = "error"
	Missing Severity = "missing"
	Finding Severity = "finding"
	Warning Severity = "warning"
	Note    Severity = "note"
)

// A Problem is one thing wrong with a file, at its place in the file.
type Problem struct {
	Severity  Severity    `json:"severity"`
	Path      string      `json:"path"`   // "tests[0].readings[1]"; empty for the whole file
	Line      int         `json:"line"`   // from 1
	Column    int         `json:"column"` // from 1
	Message   phrase.Line `json:"message"`
	Hint      phrase.Line `json:"hint,omitempty"`
	Statement string      `json:"requirement,omitempty"` // the required statement that lacks its input
}

// Where is file:line:column and the key's path, as printed before a message.
func (p Problem) Where(file string) string {
	s := fmt.Sprintf("%s:%d:%d", file, p.Line, p.Column)
	if p.Path != "" {
		s += ": " + p.Path
	}
	return s
}

// Problems is a list of problems; as an error it tells the first and counts the
// rest.
type Problems []Problem

func (ps Problems) Error() string {
	switch len(ps) {
	case 0:
		return "no problem"
	case 1:
		return ps[0].Message.String()
	}
	return fmt.Sprintf("%s, and %d more", ps[0].Message, len(ps)-1)
}

// Has reports whether any problem is of the severity.
func (ps Problems) Has(s Severity) bool {
	return slices.ContainsFunc(ps, func(p Problem) bool { return p.Severity == s })
}

var longQuote = regexp.MustCompile(`"((?:[^"\\]|\\.){60})(?:[^"\\]|\\.){40,}"`)

// brief cuts what a message quotes, so that a page of text in a place for a word
// is not told whole. The hint of such a text is left out.
func (p Problem) brief() Problem {
	if said := p.Message.String(); len(said) > 160 {
		if cut := longQuote.ReplaceAllString(said, `"$1…"`); cut != said {
			p.Message = phrase.Line(cut)
		}
		if said = p.Message.String(); len(said) > 4000 {
			p.Message = phrase.Line(strings.ToValidUTF8(said[:4000], "") + "…")
		}
	}
	if len(p.Hint) > 400 {
		p.Hint = ""
	}
	return p
}

// At gives each problem that has a path alone its place in the file.
func (ps Problems) At(position func(path string) Position) Problems {
	placed := slices.Clone(ps)
	for i, p := range placed {
		if p.Line == 0 {
			at := position(p.Path)
			placed[i].Line, placed[i].Column = at.Line, at.Column
		}
	}
	return placed
}

// Sort puts the problems in the order of the file; those of one place keep
// their order.
func (ps Problems) Sort() {
	slices.SortStableFunc(ps, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
}
