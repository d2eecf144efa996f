package gem

import (
	"io/fs"
	"slices"
	"strings"
)

// anyMaterial stands in the material column of a sign that holds for all.
const anyMaterial = "any"

// SignsFor returns what f shows in m: the signs of m, of the names above it
// and of every material, in that order. Of two signs about the same thing the
// one that stands nearer to m is given alone. A nil m gives the signs that
// hold for every material.
func (t *Table) SignsFor(f *Feature, m *Material) []Sign {
	var found []Sign
	for ; m != nil; m = t.parent(m) {
		found = t.signsOf(found, f, m.Name)
	}
	return t.signsOf(found, f, anyMaterial)
}

// signsOf appends the signs of f in the named material that say something
// about what no sign found before speaks of.
func (t *Table) signsOf(found []Sign, f *Feature, material string) []Sign {
	before := found
	for _, s := range t.evidence.signs[f.Term] {
		spoken := slices.ContainsFunc(before, func(b Sign) bool { return b.Claim == s.Claim && b.About == s.About })
		if s.Material == material && !spoken {
			found = append(found, s)
		}
	}
	return found
}

// GrowthAbout returns the growth that a sign about growth speaks of, and the
// method if it names one: flux of "laboratory-grown: flux". What proves a
// method proves the growth; what excludes a growth excludes its methods.
func (s Sign) GrowthAbout() (growth Growth, method string) {
	word, method, _ := strings.Cut(s.About, ": ")
	return Growth(word), method
}

func (t *Table) readSigns(fsys fs.FS) error {
	s := openSheet(fsys, "signs.csv", "feature", "material", "claim", "force", "about", "because", "source")
	t.evidence.signs = map[string][]Sign{}
	for _, r := range s.rows {
		sign := Sign{
			Feature: r.must("feature"), Material: r.must("material"),
			Claim: r.word("claim", "species", "growth", "treatment"),
			Force: Force(r.word("force", "proves", "suggests", "excludes", "allows")),
			About: r.must("about"), Because: r.must("because"), Source: r.source("source"),
		}
		t.checkSign(r, sign)
		t.evidence.signs[sign.Feature] = append(t.evidence.signs[sign.Feature], sign)
	}
	return s.err()
}

func (t *Table) checkSign(r row, s Sign) {
	if f, ok := t.evidence.features.find(s.Feature); !ok || f.Term != s.Feature {
		r.fail("feature", "%q is not a term of features.csv", s.Feature)
	}
	if s.Material != anyMaterial {
		t.owner(r)
	}
	switch s.Claim {
	case "species":
		if m := t.byName[fold(s.About)]; m == nil || m.Name != s.About {
			r.fail("about", "%q is not the name of a material", s.About)
		}
	case "growth":
		if !t.knowsGrowth(s) {
			r.fail("about", "%q is neither a growth nor a growth with a method of the table", s.About)
		}
	case "treatment":
		if tr, ok := t.evidence.treatments.find(s.About); !ok || tr.Name != s.About {
			r.fail("about", "%q is not the name of a treatment", s.About)
		}
	}
	for _, other := range t.evidence.signs[s.Feature] {
		if other.Material == s.Material && other.Claim == s.Claim && other.About == s.About {
			r.fail("about", "%s in %s speaks twice about %q", s.Feature, s.Material, s.About)
		}
	}
}

// knowsGrowth reports whether the growth of a sign exists and whether some
// material of the table is made by the method that the sign names.
func (t *Table) knowsGrowth(s Sign) bool {
	growth, method := s.GrowthAbout()
	if method == "" {
		return slices.Contains([]Growth{Natural, Cultured, LaboratoryGrown, Artificial, Composite}, growth)
	}
	return slices.ContainsFunc(t.materials, func(m *Material) bool { return m.Growth == growth && m.Method == method })
}
