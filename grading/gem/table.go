package gem

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
)

// A Table is the whole reference table. It is made by Load and never changes
// afterwards, so it may be shared freely.
type Table struct {
	materials  []*Material          // by name
	byName     map[string]*Material // folded names and synonyms
	misnomers  map[string]misnomer  // folded
	children   map[string][]*Material
	figured    map[*Material]bool   // has an index or specific gravity of its own
	rules      map[string][]Rule    // by name of the variety
	references map[string]Reference // by folded name
	evidence   evidence
	version    string
}

// Load reads the data compiled into the package. An error means that the data
// is faulty; it lists every mistake with file, line and column.
func Load() (*Table, error) { return load(files) }

func load(fsys fs.FS) (*Table, error) {
	t := &Table{children: map[string][]*Material{}}
	if err := t.readMaterials(fsys); err != nil {
		return nil, err
	}
	err := errors.Join(
		t.readNames(fsys),
		t.readJoints(fsys),
		t.readAbsorption(fsys),
		t.readGlow(fsys),
		t.readPleochroism(fsys),
		t.readTreatmentUse(fsys),
		t.readCare(fsys),
		t.readReferences(fsys),
		t.readRules(fsys),
		t.readEvidence(fsys),
	)
	if err != nil {
		return nil, err
	}
	t.noteFigured()
	t.inherit()
	t.version, err = digest(fsys)
	return t, err
}

// Version identifies the state of the data: it changes when a figure, a name
// or a source does, and is the same on every machine.
func (t *Table) Version() string { return t.version }

// Materials returns every material, by name. The slice is the caller's; what
// it points to is not to be changed.
func (t *Table) Materials() []*Material {
	return append([]*Material(nil), t.materials...)
}

func digest(fsys fs.FS) (string, error) {
	names, err := fs.Glob(fsys, "data/*")
	if err != nil {
		return "", err
	}
	h := sha256.New()
	for _, name := range names { // Glob of an embedded folder is in name order
		raw, err := fs.ReadFile(fsys, name)
		if err != nil {
			return "", err
		}
		fmt.Fprintf(h, "%s %d\n%s", name, len(raw), raw)
	}
	return hex.EncodeToString(h.Sum(nil))[:12], nil
}
