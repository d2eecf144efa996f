package register

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A Request says for what a number is wanted.
type Request struct {
	Stone    string // the stone's own reference
	Kind     Kind
	Examined Span // Last may be left out for one day
	Examiner string
	Content  Content
	Program  string // version of the program
	Data     string // version of the reference tables

	// Folder is where the PDF goes, under the name of its number. It is made,
	// for its owner alone, if there is none.
	Folder string
}

const maxText = 200 // bytes; far above any reference, id or version

// complete checks the request and fills in the last day. Its errors match
// [ErrRequest].
func (r Request) complete() (Request, error) {
	if r.Examined.Last.IsZero() {
		r.Examined.Last = r.Examined.First
	}
	for _, text := range []struct{ name, value string }{
		{"stone", r.Stone}, {"examiner", r.Examiner}, {"program version", r.Program},
		{"data version", r.Data}, {"folder", r.Folder},
	} {
		if strings.TrimSpace(text.value) == "" {
			return r, fmt.Errorf("%w: %s is missing", ErrRequest, text.name)
		}
		if err := checkText(text.name, text.value); err != nil && text.name != "folder" {
			return r, err
		}
	}
	if _, err := ParseKind(string(r.Kind)); err != nil {
		return r, fmt.Errorf("%w: %v", ErrRequest, err)
	}
	switch first, last := r.Examined.First.String(), r.Examined.Last.String(); {
	case first == "":
		return r, fmt.Errorf("%w: the date of examination is missing", ErrRequest)
	case last < first: // dates of this form sort as text
		return r, fmt.Errorf("%w: examined from %s to %s", ErrRequest, first, last)
	}
	c := r.Content
	if c.Stone.IsZero() || c.Photos.IsZero() || c.Letterhead.IsZero() {
		return r, fmt.Errorf("%w: a digest of the content is missing", ErrRequest)
	}
	return r, nil
}

// checkText refuses what would not survive as a line of JSON, or is no name.
func checkText(name, s string) error {
	switch {
	case len(s) > maxText:
		return fmt.Errorf("%w: %s is longer than %d bytes", ErrRequest, name, maxText)
	case !utf8.ValidString(s):
		return fmt.Errorf("%w: %s %q is not UTF-8", ErrRequest, name, s)
	case strings.ContainsFunc(s, unicode.IsControl):
		return fmt.Errorf("%w: %s %q holds a control character", ErrRequest, name, s)
	}
	return nil
}

const maxReason = 2000 // bytes; far above a sentence or two

// reasonOf is a reason on one line. It refuses one that is empty, longer than a
// letter, or would not survive as a line of JSON. Its errors match [ErrRequest].
func reasonOf(because string) (string, error) {
	line := strings.Join(strings.Fields(because), " ")
	switch {
	case line == "":
		return "", fmt.Errorf("%w: a reason is missing", ErrRequest)
	case len(line) > maxReason:
		return "", fmt.Errorf("%w: the reason is longer than %d bytes", ErrRequest, maxReason)
	case !utf8.ValidString(line):
		return "", fmt.Errorf("%w: the reason %q is not UTF-8", ErrRequest, line)
	case strings.ContainsFunc(line, unicode.IsControl):
		return "", fmt.Errorf("%w: the reason %q holds a control character", ErrRequest, line)
	}
	return line, nil
}
