package templates

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

const orderFile = "order.txt"

// order is the sections of each kind of document.
type order map[string][]string

// Sections lists every section that a document can have.
func Sections() []string {
	return []string{"finding", "ground", "evidence", "tests", "description", "worth", "limits", "photos", "keeping", "verify"}
}

// ShortNote is the kind of a note in the short form.
const ShortNote = "note short"

// Kinds lists the kinds of document; the short form of a note is one of its own.
func Kinds() []string { return []string{"appraisal", "note", ShortNote, "record"} }

func (o order) with(more order) order {
	out := maps.Clone(o)
	if out == nil {
		out = order{}
	}
	maps.Copy(out, more)
	return out
}

// parseOrder reads lines such as "note: finding, ground, tests". Empty lines
// and those that begin with # are passed over.
func parseOrder(text string) (order, []error) {
	out := order{}
	var errs []error
	fail := func(line int, format string, args ...any) {
		errs = append(errs, fmt.Errorf("%s:%d: %s", orderFile, line, fmt.Sprintf(format, args...)))
	}
	for i, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		kind, list, ok := strings.Cut(line, ":")
		kind = strings.TrimSpace(kind)
		switch {
		case !ok:
			fail(i+1, "expected a kind of document, a colon and its sections")
			continue
		case !slices.Contains(Kinds(), kind):
			fail(i+1, "there is no kind of document %q, only: %s", kind, strings.Join(Kinds(), ", "))
			continue
		case out[kind] != nil:
			fail(i+1, "the kind of document %q has its order already", kind)
			continue
		}
		out[kind] = []string{}
		for _, name := range strings.Split(list, ",") {
			name = strings.TrimSpace(name)
			switch {
			case !slices.Contains(Sections(), name):
				fail(i+1, "there is no section %q, only: %s", name, strings.Join(Sections(), ", "))
			case slices.Contains(out[kind], name):
				fail(i+1, "the section %q stands twice", name)
			default:
				out[kind] = append(out[kind], name)
			}
		}
	}
	return out, errs
}

func sorted[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
