package identify

import (
	"fmt"
	"slices"

	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
)

// growth weighs the claim of the growth by signs alone: what magnification,
// spectrum patterns, glow patterns or a matched report prove or exclude. Index,
// birefringence and specific gravity are never signs. One exception, printed as
// such: a material that nature does not make is artificial by being itself.
func (j *judgement) growth(species Standing) Claim {
	written := j.c.Stone.Opinion.Growth
	claim := Claim{Opinion: written, Standing: Undecided}
	if written == "" || j.opinion.Growth == "" {
		claim.Because = []string{"no opinion given"}
		return claim
	}
	w := weighing{}
	for _, o := range j.seen {
		for _, s := range j.table.SignsFor(o.feature, j.signRow()) {
			if s.Claim == "growth" {
				j.weighGrowth(&w, s)
			}
		}
	}
	for _, t := range matchedReports(j.c.Stone) {
		j.weighReport(&w, t)
	}
	j.byMaterial(&w, species)
	claim.Standing, claim.Because = w.outcome(j.opinion.Stated)
	if claim.Standing == Undecided {
		claim.Because = append(claim.Because, j.growthOpen()...)
	}
	return claim
}

// weighing collects what signs say for and against a claim.
type weighing struct{ proofs, against, hints []string }

func (w *weighing) outcome(stated bool) (Standing, []string) {
	switch {
	case len(w.against) > 0:
		return Contradicted, w.against
	case len(w.proofs) > 0 && stated:
		return Undecided, append(append([]string{}, w.proofs...), "as stated by the owner, not tested here")
	case len(w.proofs) > 0:
		return Supported, append(w.proofs, w.hints...)
	}
	return Undecided, w.hints
}

func (w *weighing) add(list *[]string, text string) {
	if !slices.Contains(*list, text) {
		*list = append(*list, text)
	}
}

// signRow is the row whose signs apply.
func (j *judgement) signRow() *gem.Material { return j.opinion.Narrow }

func (j *judgement) weighGrowth(w *weighing, s gem.Sign) {
	about, method := s.GrowthAbout()
	same := about == j.opinion.Growth
	opinionMethod := j.c.Stone.Opinion.Method
	methodClash := same && method != "" && opinionMethod != "" && opinionMethod != "undetermined" && opinionMethod != method
	text := fmt.Sprintf("%s: %s", s.Feature, s.Because)
	switch {
	case s.Force == gem.Excludes && same && (method == "" || method == opinionMethod):
		w.add(&w.against, text)
	case s.Force == gem.Proves && (!same || methodClash):
		w.add(&w.against, text)
	case s.Force == gem.Proves:
		w.add(&w.proofs, text)
	case s.Force == gem.Suggests:
		w.add(&w.hints, "suggests "+s.About+" ("+s.Feature+"): "+s.Because)
	}
}

func (j *judgement) weighReport(w *weighing, t *stone.LaboratoryReport) {
	switch stated := gem.Growth(t.States.Growth); stated {
	case "", "undetermined":
	case j.opinion.Growth:
		w.add(&w.proofs, fmt.Sprintf("according to %s it is %s", t.Issuer, stated))
	default:
		w.add(&w.against, fmt.Sprintf("according to %s it is %s", t.Issuer, stated))
	}
}

// byMaterial applies the exception of materials that nature does not make.
func (j *judgement) byMaterial(w *weighing, species Standing) {
	m := j.opinion.Species
	if m == nil || m.Growth != gem.Artificial {
		return
	}
	switch {
	case j.opinion.Growth != gem.Artificial:
		w.add(&w.against, fmt.Sprintf("%s has no natural counterpart that is cut: being %s, the stone is artificial", m.Name, m.Name))
	case species == Supported:
		w.add(&w.proofs, fmt.Sprintf("%s is artificial by being itself", m.Name))
	default:
		w.add(&w.hints, fmt.Sprintf("%s is artificial by being itself, and the species is %s", m.Name, species))
	}
}

// growthOpen tells what is missing for a growth that stays undecided.
func (j *judgement) growthOpen() []string {
	open := []string{"no sign was recorded that proves it; index, birefringence and specific gravity are the same for grown material"}
	if !j.magnified() {
		open[0] = "the stone was not examined under magnification"
	}
	if m := j.opinion.Species; m != nil && j.opinion.Growth == gem.Natural && m.GrownMet == "no" {
		open = append(open, fmt.Sprintf("no laboratory-grown %s of gem quality was met in the trade (as of %s)", m.Name, m.GrownAsOf))
	}
	if m := j.opinion.Narrow; m != nil && m.Class == "organic" && j.opinion.Growth == gem.Natural && pearl(j, m) {
		open = append(open, "a natural pearl is shown by a laboratory's radiograph alone")
	}
	return open
}

func pearl(j *judgement, m *gem.Material) bool {
	p, err := j.table.Find("pearl")
	return err == nil && j.table.IsWithin(m, p)
}

// magnified reports whether the stone was examined under magnification.
func (j *judgement) magnified() bool {
	return slices.ContainsFunc(j.c.Stone.Tests, func(a stone.AnyTest) bool {
		_, ok := a.Test.(*stone.Magnification)
		return ok && a.Header().SetAside == ""
	})
}
