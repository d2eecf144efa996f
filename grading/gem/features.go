package gem

import (
	"fmt"
	"io/fs"
	"slices"
	"strconv"
)

// A FeatureNotFoundError says that the table does not know a term.
type FeatureNotFoundError struct {
	Term    string
	Nearest []string // proper terms that come near, the nearest first
}

func (e *FeatureNotFoundError) Error() string {
	return fmt.Sprintf("%q is not a term of the features table", e.Term)
}

// Feature returns the feature of that term or synonym. Case, spaces, hyphens,
// plural, articles and American spelling do not matter, nor words before it
// that say only how many or how big, nor "inclusion" after it. The error is a
// *FeatureNotFoundError. "bubbles" alone is no term: what bubbles show depends
// on where they are.
func (t *Table) Feature(term string) (*Feature, error) {
	words := wordsOf(term)
	for {
		if found, ok := t.featureOf(words); ok {
			return found, nil
		}
		if len(words) < 2 || !isBare(words[0]) {
			return nil, &FeatureNotFoundError{term, t.evidence.features.nearest(term)}
		}
		words = words[1:]
	}
}

// featureOf finds a term, or what is left of it without "inclusion" if that is
// something in the body of a stone.
func (t *Table) featureOf(words []string) (*Feature, bool) {
	if found, ok := t.evidence.features.findWords(words); ok {
		return found, true
	}
	last := len(words) - 1
	if last < 1 || words[last] != "inclusion" {
		return nil, false
	}
	found, ok := t.evidence.features.findWords(words[:last])
	return found, ok && found.Place == "body"
}

// nowhere is the place of what was looked for and not found.
const nowhere = "nowhere"

// Nothing reports whether the term says that the examiner looked and found
// nothing, which shows nothing.
func (f *Feature) Nothing() bool { return f.Place == nowhere }

// Features returns every feature in the order of the table. The slice is the
// caller's; what it points to is not to be changed.
func (t *Table) Features() []*Feature { return slices.Clone(t.evidence.features.entries) }

func (t *Table) readFeatures(fsys fs.FS) error {
	s := openSheet(fsys, "features.csv", "term", "synonyms", "seen_by", "place", "not_glass", "kind", "nm",
		"wave", "glow", "strength", "pattern", "afterglow", "note", "source")
	for _, r := range s.rows {
		f := &Feature{
			Term: r.must("term"), Synonyms: r.list("synonyms"),
			SeenBy:   r.word("seen_by", "magnification", "spectrum", "luminescence"),
			Place:    r.word("place", "body", "filler", "surface", "join", nowhere, ""),
			NotGlass: r.yes("not_glass"),
			LineKind: r.word("kind", "line", "band", ""), Lines: r.wavelengths("nm"),
			Wave: r.word("wave", "long", "short", ""), Glow: r.list("glow"),
			Strength:  r.word("strength", "weak", "moderate", "strong", ""),
			Pattern:   r.word("pattern", "even", "zoned", "chalky", "along fractures", "surface only", "at the join", ""),
			Afterglow: r.text("afterglow"),
			Note:      r.must("note"), Source: r.source("source"),
		}
		checkFeature(r, f)
		t.evidence.features.add(r, f, f.Term, f.Synonyms)
	}
	return s.err()
}

// checkFeature refuses cells that do not belong to what the feature is seen by.
func checkFeature(r row, f *Feature) {
	magnified, spectrum := f.SeenBy == "magnification", f.SeenBy == "spectrum"
	if magnified != (f.Place != "") {
		r.fail("place", "stands with magnification, and only there")
	}
	lines := f.LineKind != "" || len(f.Lines) > 0
	if lines && (!spectrum || f.LineKind == "" || len(f.Lines) == 0) {
		r.fail("nm", "stands with a spectrum, together with its kind, and only there")
	}
	glow := f.Wave + f.Strength + f.Pattern + f.Afterglow
	if f.SeenBy != "luminescence" && (glow != "" || len(f.Glow) > 0) {
		r.fail("wave", "the columns of glow stand with luminescence only")
	}
}

// wavelengths reads a list of wavelengths in nm.
func (r row) wavelengths(column string) []float64 {
	var nm []float64
	for _, part := range r.list(column) {
		v, err := strconv.ParseFloat(part, 64)
		if err != nil || v < 300 || v > 900 {
			r.fail(column, "%q is not a wavelength of 300 to 900 nm", part)
		}
		nm = append(nm, v)
	}
	return nm
}
