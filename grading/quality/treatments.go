package quality

import (
	"slices"

	"stonewrit/grading/gem"
)

// A treatmentRow is what this package knows of a treatment beside the gem table.
// It holds for the kinds of the treatment that have no row of their own.
type treatmentRow struct {
	name   string
	naming naming
	care   Care
}

// A naming says how a treatment changes the name itself.
type naming struct {
	kind   string // composite, reconstructed or ""
	binder string // what holds a composite together
}

func (g *Grader) readTreatments() error {
	return each("treatments.csv", func(r *row) {
		t := treatmentRow{name: r.text("treatment")}
		known, err := g.gems.Treatment(t.name)
		if err != nil || known.Name != t.name {
			r.fail("treatment", "is not the name of a treatment of the gem table")
		}
		if slices.ContainsFunc(g.treatments, func(o treatmentRow) bool { return o.name == t.name }) {
			r.fail("treatment", "is there twice")
		}
		t.naming = naming{r.word("naming", "", composite, reconstructed), r.text("binder")}
		if t.naming.kind == composite && t.naming.binder == "" {
			r.fail("binder", "a composite needs what binds it")
		}
		for _, d := range Dangers() {
			t.care[d] = Word(r.word(d.String(), "", "yes", "care", "no"))
		}
		g.treatments = append(g.treatments, t)
	}, "treatment", "naming", "binder", "ultrasonic", "steam", "heat", "solvents", "light", "knocks", "torch")
}

// treatmentRowOf is the row of a treatment, or of the nearest wider word that
// has one.
func (g *Grader) treatmentRowOf(t *gem.Treatment) treatmentRow {
	for t != nil {
		for _, r := range g.treatments {
			if r.name == t.Name {
				return r
			}
		}
		wider, err := g.gems.Treatment(t.Within)
		if err != nil {
			break
		}
		t = wider
	}
	return treatmentRow{}
}

func (g *Grader) naming(t *gem.Treatment) naming { return g.treatmentRowOf(t).naming }
