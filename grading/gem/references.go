package gem

import "io/fs"

// A Reference is a stone of known index, by which an instrument is checked.
// Low and High are equal for singly refractive material.
type Reference struct {
	Name      string
	Low, High float64 // at the sodium line, four decimals
	Source    string
}

// Reference returns the known indices of a reference stone; ok is false if the
// table has none for that name. Case, spaces and hyphens do not matter.
func (t *Table) Reference(name string) (r Reference, ok bool) {
	r, ok = t.references[fold(name)]
	return r, ok
}

func (t *Table) readReferences(fsys fs.FS) error {
	s := openSheet(fsys, "references.csv", "name", "low", "high", "source")
	t.references = map[string]Reference{}
	for _, r := range s.rows {
		ref := Reference{Name: r.must("name"), Low: r.number("low"), High: r.number("high"), Source: r.source("source")}
		if ref.High < ref.Low || ref.Low < 1 {
			r.fail("high", "the indices %g and %g are not those of a stone", ref.Low, ref.High)
		}
		t.references[fold(ref.Name)] = ref
	}
	return s.err()
}
