package gem

import (
	"fmt"
	"io/fs"
)

// A harm is what one test does to the stones of one scope: all of them (any),
// porous ones, those of a class, of a material with all that stands below it,
// or stones with a treatment.
type harm struct {
	test, scope, name string
	presumed          bool // holds also where the treatment is customary and nobody has asked
	mountedOnly       bool
	text              string
}

// HarmOf tells what a test does to a stone of material m that should not be
// done to it, and whether there is anything: harm is a property of test,
// material and mounting together. A nil m stands for an unknown material and
// gives what holds for every one.
//
// A treatment that is customary for m counts where the sheet says that it is
// to be presumed; HarmToTreated answers for a treatment that is known. For
// ultrasonic and steam the care of the material decides, and only a plain
// "yes" there is harmless. A word that is not one of Tests counts as harmful.
func (t *Table) HarmOf(test string, m *Material, mounted bool) (harm string, harmful bool) {
	word, ok := knownTest(test)
	switch {
	case !ok:
		return fmt.Sprintf("the table does not know what %q does to a stone", test), true
	case word == "ultrasonic" || word == "steam":
		return t.harmOfCleaning(word, m)
	}
	for _, h := range t.evidence.harms {
		if h.test == word && (mounted || !h.mountedOnly) && t.inScope(h, m) {
			return h.text, true
		}
	}
	return t.harmIfCustomary(word, m)
}

// HarmToTreated tells what a test does to a stone with the treatment tr, and
// whether there is anything.
func (t *Table) HarmToTreated(test string, tr *Treatment) (harm string, harmful bool) {
	word, _ := knownTest(test)
	if (word == "ultrasonic" || word == "steam") && tr.Care != "" {
		return tr.Care, true
	}
	for _, h := range t.evidence.harms {
		if h.test == word && t.spoils(h, tr) {
			return h.text, true
		}
	}
	return "", false
}

func (t *Table) inScope(h harm, m *Material) bool {
	switch {
	case h.scope == "any":
		return true
	case m == nil:
		return false
	case h.scope == "porous":
		return m.Porous
	case h.scope == "class":
		return m.Class == h.name
	case h.scope == "material":
		return t.IsWithin(m, t.byName[fold(h.name)])
	}
	return false
}

// spoils reports whether h is about the treatment tr or a wider word for it.
func (t *Table) spoils(h harm, tr *Treatment) bool {
	wider, ok := t.evidence.treatments.find(h.name)
	return h.scope == "treatment" && ok && t.TreatmentIsWithin(tr, wider)
}

func (t *Table) harmIfCustomary(test string, m *Material) (string, bool) {
	if m == nil {
		return "", false
	}
	for _, use := range m.Treatments {
		tr, ok := t.evidence.treatments.find(use.Treatment)
		if !ok || use.Customary == Sometimes {
			continue
		}
		for _, h := range t.evidence.harms {
			if h.test == test && h.presumed && t.spoils(h, tr) {
				return fmt.Sprintf("%s is %s treated (%s): %s", m.Name, use.Customary, tr.Name, h.text), true
			}
		}
	}
	return "", false
}

func (t *Table) harmOfCleaning(word string, m *Material) (string, bool) {
	if m == nil {
		return "the material is not known", true
	}
	care := t.CareFor(m)
	answer := care.Ultrasonic
	if word == "steam" {
		answer = care.Steam
	}
	if answer == "yes" {
		return "", false
	}
	if care.Note == "" {
		return word + " cleaning can harm it", true
	}
	return care.Note, true
}

func (t *Table) readHarm(fsys fs.FS) error {
	s := openSheet(fsys, "harm.csv", "test", "scope", "name", "presumed", "mounting", "harm", "source")
	for _, r := range s.rows {
		r.source("source")
		h := harm{
			test: r.must("test"), scope: r.word("scope", "any", "porous", "class", "material", "treatment"),
			name: r.text("name"), presumed: r.yes("presumed"),
			mountedOnly: r.word("mounting", "any", "mounted") == "mounted", text: r.must("harm"),
		}
		t.checkHarm(r, h)
		t.evidence.harms = append(t.evidence.harms, h)
	}
	return s.err()
}

func (t *Table) checkHarm(r row, h harm) {
	if word, ok := knownTest(h.test); !ok || word != h.test {
		r.fail("test", "%q is not the word of a test", h.test)
	}
	switch h.scope {
	case "class":
		r.word("name", "mineral", "rock", "organic", "glass", "plastic", "crystal", "composite")
	case "material":
		if m := t.byName[fold(h.name)]; m == nil || m.Name != h.name {
			r.fail("name", "%q is not the name of a material", h.name)
		}
	case "treatment":
		if tr, ok := t.evidence.treatments.find(h.name); !ok || tr.Name != h.name {
			r.fail("name", "%q is not the name of a treatment", h.name)
		}
	default:
		r.word("name", "")
	}
	if h.presumed && h.scope != "treatment" {
		r.fail("presumed", "stands with a treatment only")
	}
}
