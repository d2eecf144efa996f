package gem

import (
	"io/fs"
	"slices"
)

// A Caution is what is to be printed beside a test that can harm the person
// who makes it, or the piece. Its wording leaves the decision to the supplier's
// safety data, local rules and the practice's own rules.
type Caution struct {
	ID    string
	Tests []string // words of Tests
	// From is the figure of the liquid from which on the caution applies: its
	// index with a refractometer, its specific gravity with heavy liquids;
	// 0 for a caution that applies to the test whatever the liquid.
	From    float64
	Never   bool // a test made so is recorded, and never suggested
	Wording string
	Source  string
}

// CautionsFor returns the cautions that belong to a test, a word of Tests, in
// the order of the sheet.
func (t *Table) CautionsFor(test string) []Caution {
	word, _ := knownTest(test)
	var found []Caution
	for _, c := range t.evidence.cautions {
		if slices.Contains(c.Tests, word) {
			found = append(found, c)
		}
	}
	return found
}

func (t *Table) readCautions(fsys fs.FS) error {
	s := openSheet(fsys, "cautions.csv", "id", "tests", "from", "suggest", "wording", "source")
	for _, r := range s.rows {
		c := Caution{
			ID: r.must("id"), Tests: r.words("tests", Tests()...), From: r.number("from"),
			Never:   r.word("suggest", "yes", "never") == "never",
			Wording: r.must("wording"), Source: r.source("source"),
		}
		if len(c.Tests) == 0 {
			r.fail("tests", "is empty")
		}
		if slices.ContainsFunc(t.evidence.cautions, func(b Caution) bool { return b.ID == c.ID }) {
			r.fail("id", "%q is taken", c.ID)
		}
		t.evidence.cautions = append(t.evidence.cautions, c)
	}
	return s.err()
}
