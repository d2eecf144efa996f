package gem

import (
	"fmt"
	"io/fs"
	"slices"
)

// A TreatmentNotFoundError says that the table does not know a treatment.
type TreatmentNotFoundError struct {
	Name    string
	Nearest []string // proper names that come near, the nearest first
}

func (e *TreatmentNotFoundError) Error() string {
	return fmt.Sprintf("%q is not a treatment of the gem table", e.Name)
}

// Treatment returns the treatment of that name or synonym; case, spaces and
// hyphens do not matter. The error is a *TreatmentNotFoundError.
func (t *Table) Treatment(name string) (*Treatment, error) {
	if found, ok := t.evidence.treatments.find(name); ok {
		return found, nil
	}
	return nil, &TreatmentNotFoundError{name, t.evidence.treatments.nearest(name)}
}

// Treatments returns every treatment in the order of the table. The slice is
// the caller's; what it points to is not to be changed.
func (t *Table) Treatments() []*Treatment { return slices.Clone(t.evidence.treatments.entries) }

// TreatmentIsWithin reports whether inner is outer or a kind of it.
func (t *Table) TreatmentIsWithin(inner, outer *Treatment) bool {
	for inner != nil {
		if inner == outer {
			return true
		}
		inner, _ = t.evidence.treatments.find(inner.Within)
	}
	return false
}

func (t *Table) readTreatments(fsys fs.FS) error {
	s := openSheet(fsys, "treatments.csv",
		"name", "within", "synonyms", "permanence", "disclosure", "wording", "care", "radioactivity", "source")
	words := &t.evidence.treatments
	for _, r := range s.rows {
		tr := &Treatment{
			Name: r.must("name"), Within: r.text("within"), Synonyms: r.list("synonyms"),
			Permanence: r.word("permanence", "permanent", "may fade", "not permanent"),
			Disclosure: r.word("disclosure", "general", "specific"),
			Wording:    r.must("wording"), Care: r.text("care"), Radioactivity: r.text("radioactivity"),
			Source: r.source("source"),
		}
		// A wider word stands above its kinds, so no word can be its own kind.
		if wider, ok := words.find(tr.Within); tr.Within != "" && (!ok || wider.Name != tr.Within) {
			r.fail("within", "%q is not the name of a treatment further up", tr.Within)
		}
		words.add(r, tr, tr.Name, tr.Synonyms)
	}
	return s.err()
}

// FillerAmounts returns the words for how many fissures hold a filler. They are
// our own and no scale of others is implied.
func FillerAmounts() []string { return []string{"few", "several", "most"} }

// FillerWording returns how an amount of FillerAmounts is printed, as in "oil
// in several fissures"; "" for another word.
func FillerWording(amount string) string {
	if !slices.Contains(FillerAmounts(), amount) {
		return ""
	}
	return "in " + amount + " fissures"
}
