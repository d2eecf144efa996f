package gem

import (
	"cmp"
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strings"
)

// A misnomer is a name of the trade that says what the stone is not.
type misnomer struct{ name, proper, reason string }

// A NotFoundError says that the table does not know a name.
type NotFoundError struct {
	Name    string
	Nearest []string // names that differ by few letters, the nearest first
}

func (e *NotFoundError) Error() string {
	return fmt.Sprintf("%q is not a name of the gem table", e.Name)
}

// A MisnomerError refuses a name that misleads about what a stone is.
type MisnomerError struct{ Name, Proper, Reason string }

func (e *MisnomerError) Error() string {
	return fmt.Sprintf("%q is a misleading name for %s: %s", e.Name, e.Proper, e.Reason)
}

// Find returns the material of that name or synonym; case, spaces, hyphens and
// accents do not matter. It returns a *MisnomerError for a name that misleads
// and a *NotFoundError for one that the table does not have.
func (t *Table) Find(name string) (*Material, error) {
	key := fold(name)
	if m := t.byName[key]; m != nil {
		return m, nil
	}
	if wrong, ok := t.misnomers[key]; ok {
		return nil, &MisnomerError{name, wrong.proper, wrong.reason}
	}
	if key == "" {
		return nil, &NotFoundError{Name: name} // no name is near to nothing
	}
	return nil, &NotFoundError{name, t.nearest(key)}
}

// nearest returns at most three names within a third of their letters of key.
func (t *Table) nearest(key string) []string {
	type candidate struct {
		name     string
		distance int
	}
	var near []candidate
	for _, known := range slices.Sorted(maps.Keys(t.byName)) {
		if d, ok := nearness(key, known); ok {
			near = append(near, candidate{t.byName[known].Name, d})
		}
	}
	slices.SortStableFunc(near, func(a, b candidate) int { return cmp.Compare(a.distance, b.distance) })
	var names []string
	for _, c := range near {
		if len(names) < 3 && !slices.Contains(names, c.name) {
			names = append(names, c.name)
		}
	}
	return names
}

func (t *Table) readNames(fsys fs.FS) error {
	s := openSheet(fsys, "names.csv", "name", "kind", "material", "reason", "source")
	t.misnomers = map[string]misnomer{}
	synonyms := map[string]*Material{}
	for _, r := range s.rows {
		r.source("source")
		name, m := r.must("name"), t.owner(r)
		key := fold(name)
		if t.byName[key] != nil || synonyms[key] != nil || t.misnomers[key] != (misnomer{}) {
			r.fail("name", "%q is taken", name)
		}
		if m == nil {
			continue
		}
		switch r.word("kind", "synonym", "misnomer") {
		case "synonym":
			synonyms[key] = m
			m.Synonyms = append(m.Synonyms, name)
		case "misnomer":
			t.misnomers[key] = misnomer{name, m.Name, r.must("reason")}
		}
	}
	for _, m := range t.materials {
		slices.Sort(m.Synonyms)
	}
	// Synonyms become findable only now, so that every row above names its
	// material by the one proper name.
	maps.Copy(t.byName, synonyms)
	return s.err()
}

// fold makes names comparable: small letters and digits alone, accents of the
// Latin letters taken off.
func fold(name string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(name) {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			b.WriteRune(r)
		case strings.ContainsRune("éèêë", r):
			b.WriteByte('e')
		case strings.ContainsRune("àâä", r):
			b.WriteByte('a')
		case strings.ContainsRune("öôó", r):
			b.WriteByte('o')
		case strings.ContainsRune("üûú", r):
			b.WriteByte('u')
		case strings.ContainsRune("íî", r):
			b.WriteByte('i')
		}
	}
	return b.String()
}
