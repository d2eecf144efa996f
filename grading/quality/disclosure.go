package quality

import (
	"slices"
	"strings"

	"stonewrit/grading/gem"
)

// A Class says how a treatment is disclosed: general by words that name it in
// the text, specific in writing beside the name (CIBJO Gemstone Book, treatment
// annex, second hand). Heating is general and told all the same.
type Class string

// The classes of disclosure.
const (
	General  Class = "general"
	Specific Class = "specific"
)

// A Disclosure is what has to be said of one treatment.
type Disclosure struct {
	Treated
	Class         Class
	NotPermanent  bool // 16 CFR 23.24(a): treated, and that it may not last
	SpecialCare   bool // 23.24(b): treated, and that special care is needed
	Value         bool // 23.24(c): moves the value; told always, as no price is known here
	Composite     bool // 23.25(d): not the stone with a treatment, but a composite
	Radioactivity bool // a note on radioactivity goes with it (10 CFR 30, 32)
	Clauses       []string
}

// Disclosures lists what has to be said of each treatment named, those told by
// others as well.
func (g *Grader) Disclosures(s Subject) []Disclosure {
	var list []Disclosure
	for _, t := range s.Treatments {
		d := Disclosure{
			Treated: t, Class: Class(t.Disclosure), Value: true,
			NotPermanent:  t.Permanence != "permanent",
			SpecialCare:   t.Care != "",
			Composite:     g.naming(t.Treatment).kind != "",
			Radioactivity: t.Radioactivity != "",
		}
		d.Clauses = g.clauses(s, d)
		list = append(list, d)
	}
	return list
}

func (g *Grader) clauses(s Subject, d Disclosure) []string {
	base := "23.24"
	switch {
	case g.is(s, "pearl"):
		base = "23.23"
	case g.is(s, "diamond"):
		base = "23.14"
	}
	var list []string
	for _, c := range []struct {
		holds bool
		part  string
	}{{d.NotPermanent, "(a)"}, {d.SpecialCare, "(b)"}, {d.Value, "(c)"}} {
		if c.holds {
			list = append(list, "16 CFR "+base+c.part)
		}
	}
	if d.Composite {
		list = append(list, "16 CFR 23.25(d)")
	}
	if d.Class == Specific && base == "23.14" {
		list = append(list, "ISO 18323, 2.3")
	}
	return list
}

// A CustomaryTreatment is one that is commonly done to a material, was not named
// and cannot be ruled out by what was done here.
type CustomaryTreatment struct {
	Treatment *gem.Treatment
	Frequency gem.Frequency // always, often, sometimes
	Seen      string        // where it can be seen at all: bench, laboratory, nowhere
	// Ask is true where the document has to say "commonly treated; assume so":
	// the treatment is usual, and nothing here shows or excludes it.
	Ask bool
}

// Customary lists the customary treatments of the material that the opinion
// does not name, the most usual first. Where the stone was examined for
// treatment, what a bench can see is left out.
func (g *Grader) Customary(s Subject) []CustomaryTreatment {
	m := s.narrow()
	if m == nil || s.Growth == gem.Composite {
		return nil
	}
	var list []CustomaryTreatment
	for _, use := range g.uses(s, m) {
		tr, err := g.gems.Treatment(use.Treatment)
		if err != nil || s.names(tr, g.gems) || use.Seen == "bench" && s.Treatment != NotExamined {
			continue
		}
		list = append(list, CustomaryTreatment{tr, use.Customary, use.Seen, use.Customary != gem.Sometimes})
	}
	slices.SortStableFunc(list, func(a, b CustomaryTreatment) int {
		return strings.Compare(order(a.Frequency), order(b.Frequency))
	})
	return list
}

// uses are the treatments of the row that the growth points to: cultured pearls
// have rows of their own.
func (g *Grader) uses(s Subject, m *gem.Material) []gem.TreatmentUse {
	if s.Growth == gem.Cultured {
		for _, c := range g.gems.CounterpartsOf(s.Species) {
			if c.Growth == gem.Cultured && (unset(s.Method) || c.Method == s.Method) {
				return c.Treatments
			}
		}
	}
	if s.Growth == gem.LaboratoryGrown {
		return nil
	}
	return m.Treatments
}

func order(f gem.Frequency) string {
	return map[gem.Frequency]string{gem.Always: "0", gem.Often: "1", gem.Sometimes: "2"}[f]
}

// names reports whether the opinion names the treatment, a wider word for it or
// a kind of it.
func (s Subject) names(t *gem.Treatment, table *gem.Table) bool {
	return slices.ContainsFunc(s.Treatments, func(named Treated) bool {
		return table.TreatmentIsWithin(named.Treatment, t) || table.TreatmentIsWithin(t, named.Treatment)
	})
}
