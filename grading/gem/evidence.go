package gem

import (
	"errors"
	"io/fs"
)

// evidence is the part of the table that speaks of what is seen in a stone and
// of what may be done to it.
type evidence struct {
	treatments terms[Treatment]
	features   terms[Feature]
	signs      map[string][]Sign // by term of the feature
	harms      []harm
	cautions   []Caution
}

// readEvidence follows the sheets of materials, whose names its sheets use.
func (t *Table) readEvidence(fsys fs.FS) error {
	return errors.Join(
		t.readTreatments(fsys),
		t.readFeatures(fsys),
		t.readSigns(fsys),
		t.readHarm(fsys),
		t.readCautions(fsys),
	)
}
