package identify

import (
	"slices"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
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
		claim.Because = []phrase.Line{"no opinion given"}
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
	claim.Issuer = w.issuerOf(claim)
	if claim.Standing == Undecided {
		claim.Because = append(claim.Because, j.growthOpen()...)
	}
	return claim
}

// weighing collects what signs say for and against a claim.
type weighing struct {
	proofs, against, hints []phrase.Line
	issuer                 string // of the report that is the first of the proofs
}

// prove adds what a laboratory report proves.
func (w *weighing) prove(t *stone.LaboratoryReport, text phrase.Line) {
	if len(w.proofs) == 0 {
		w.issuer = t.Issuer
	}
	w.add(&w.proofs, text)
}

// issuerOf is the laboratory whose report a supported claim rests on.
func (w *weighing) issuerOf(claim Claim) string {
	if claim.Standing != Supported {
		return ""
	}
	return w.issuer
}

func (w *weighing) outcome(stated bool) (Standing, []phrase.Line) {
	switch {
	case len(w.against) > 0:
		return Contradicted, w.against
	case len(w.proofs) > 0 && stated:
		return Undecided, append(append([]phrase.Line{}, w.proofs...), "as stated by the owner, not tested here")
	case len(w.proofs) > 0:
		return Supported, append(w.proofs, w.hints...)
	}
	return Undecided, w.hints
}

func (w *weighing) add(list *[]phrase.Line, text phrase.Line) {
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
	text := signText(s)
	switch {
	case s.Force == gem.Excludes && same && (method == "" || method == opinionMethod):
		w.add(&w.against, text)
	case s.Force == gem.Proves && (!same || methodClash):
		w.add(&w.against, text)
	case s.Force == gem.Proves:
		w.add(&w.proofs, text)
	case s.Force == gem.Suggests:
		w.add(&w.hints, phrase.Say("suggests %s (%s): %s", growthText(about, method), phrase.Word(s.Feature), phrase.Line(s.Because)))
	}
}

// signText is what a sign shows, and why.
func signText(s gem.Sign) phrase.Line {
	return phrase.Say("%s: %s", phrase.Word(s.Feature), phrase.Line(s.Because))
}

// growthText is a growth with its method, if a sign speaks of one.
func growthText(growth gem.Growth, method string) phrase.Line {
	if method == "" {
		return word(string(growth))
	}
	return phrase.Say("%s: %s", phrase.Word(growth), phrase.Word(method))
}

func (j *judgement) weighReport(w *weighing, t *stone.LaboratoryReport) {
	switch stated := gem.Growth(t.States.Growth); stated {
	case "", "undetermined":
	case j.opinion.Growth:
		w.prove(t, phrase.Say("according to %s it is %s", t.Issuer, phrase.Word(stated)))
	default:
		w.add(&w.against, phrase.Say("according to %s it is %s", t.Issuer, phrase.Word(stated)))
	}
}

// byMaterial applies the exception of materials that nature does not make.
func (j *judgement) byMaterial(w *weighing, species Standing) {
	m := j.opinion.Species
	if m == nil || m.Growth != gem.Artificial {
		return
	}
	name := phrase.Word(m.Name)
	switch {
	case j.opinion.Growth != gem.Artificial:
		w.add(&w.against, phrase.Say("%s has no natural counterpart that is cut: being %s, the stone is artificial", name, name))
	case species == Supported:
		w.add(&w.proofs, phrase.Say("%s is artificial by being itself", name))
	case species == Contradicted:
		w.add(&w.hints, phrase.Say("%s is artificial by being itself, and the species is contradicted", name))
	default:
		w.add(&w.hints, phrase.Say("%s is artificial by being itself, and the species is undecided", name))
	}
}

// growthOpen tells what is missing for a growth that stays undecided.
func (j *judgement) growthOpen() []phrase.Line {
	open := []phrase.Line{"no sign was recorded that proves it; index, birefringence and specific gravity are the same for grown material"}
	if !j.magnified() {
		open[0] = "the stone was not examined under magnification"
	}
	if m := j.opinion.Species; m != nil && j.opinion.Growth == gem.Natural && m.GrownMet == "no" {
		open = append(open, phrase.Say("no laboratory-grown %s of gem quality was met in the trade (as of %s)", phrase.Word(m.Name), m.GrownAsOf))
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
