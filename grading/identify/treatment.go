package identify

import (
	"slices"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// treatment weighs the claim of the treatments. "None seen" is not untreated:
// an empty list is supported only by a matched report or by signs that exclude
// the treatments that are customary.
func (j *judgement) treatment() Claim {
	list := j.c.Stone.Opinion.Treatments
	claim := Claim{Standing: Undecided, Opinion: treatmentText(list)}
	if !list.Given {
		claim.Because = []phrase.Line{"no opinion given: treatment was not examined"}
		return claim
	}
	named := j.named(list.Items)
	w := weighing{}
	excluded, proved := j.weighTreatments(&w, named)
	if len(w.against) > 0 {
		claim.Standing, claim.Because = Contradicted, w.against
		return claim
	}
	if len(named) == 0 {
		return j.noneSeen(claim, w, excluded)
	}
	return j.namedOnes(claim, w, named, proved)
}

func treatmentText(list stone.List[stone.TreatmentClaim]) string {
	if !list.Given {
		return ""
	}
	if len(list.Items) == 0 {
		return "none seen"
	}
	var names []string
	for _, t := range list.Items {
		text := t.Name
		if t.Amount != "" || t.Where != "" {
			text += " (" + strings.TrimSpace(amountText(t.Amount)+" "+t.Where) + ")"
		}
		names = append(names, text)
	}
	return strings.Join(names, ", ")
}

func amountText(amount string) string {
	if amount == "" {
		return ""
	}
	return "in " + amount
}

func (j *judgement) named(claims []stone.TreatmentClaim) []*gem.Treatment {
	var list []*gem.Treatment
	for _, c := range claims {
		if t, err := j.table.Treatment(c.Name); err == nil {
			list = append(list, t)
		}
	}
	return list
}

// weighTreatments collects signs: a proof of a treatment that the opinion does
// not name, and an exclusion of one that it names, contradict.
func (j *judgement) weighTreatments(w *weighing, named []*gem.Treatment) (excluded, proved []*gem.Treatment) {
	for _, o := range j.seen {
		for _, s := range j.table.SignsFor(o.feature, j.signRow()) {
			if s.Claim != "treatment" {
				continue
			}
			t, err := j.table.Treatment(s.About)
			if err != nil {
				continue
			}
			text := signText(s)
			covered := slices.ContainsFunc(named, func(n *gem.Treatment) bool {
				return j.table.TreatmentIsWithin(n, t) || j.table.TreatmentIsWithin(t, n)
			})
			switch {
			case s.Force == gem.Proves && !covered:
				w.add(&w.against, phrase.Say("not in the opinion: %s; %s", phrase.Word(t.Name), text))
			case s.Force == gem.Proves:
				proved = append(proved, t)
				w.add(&w.proofs, text)
			case s.Force == gem.Excludes && slices.ContainsFunc(named, func(n *gem.Treatment) bool { return j.table.TreatmentIsWithin(n, t) }):
				w.add(&w.against, text)
			case s.Force == gem.Excludes:
				excluded = append(excluded, t)
				w.add(&w.hints, phrase.Say("excludes %s (%s): %s", phrase.Word(t.Name), phrase.Word(s.Feature), phrase.Line(s.Because)))
			case s.Force == gem.Suggests:
				w.add(&w.hints, phrase.Say("suggests %s (%s): %s", phrase.Word(t.Name), phrase.Word(s.Feature), phrase.Line(s.Because)))
			}
		}
	}
	for _, r := range matchedReports(j.c.Stone) {
		j.weighReportedTreatments(w, r, named, &proved)
	}
	return excluded, proved
}

func (j *judgement) weighReportedTreatments(w *weighing, r *stone.LaboratoryReport, named []*gem.Treatment, proved *[]*gem.Treatment) {
	if !r.States.Treatments.Given {
		return
	}
	stated := j.named(r.States.Treatments.Items)
	for _, t := range stated {
		if slices.ContainsFunc(named, func(n *gem.Treatment) bool { return j.table.TreatmentIsWithin(n, t) || j.table.TreatmentIsWithin(t, n) }) {
			*proved = append(*proved, t)
			w.prove(r, phrase.Say("according to %s: %s", r.Issuer, phrase.Word(t.Name)))
		} else {
			w.add(&w.against, phrase.Say("according to %s: %s, which the opinion does not name", r.Issuer, phrase.Word(t.Name)))
		}
	}
	if len(stated) == 0 && len(named) == 0 {
		w.prove(r, phrase.Say("according to %s no treatment was found", r.Issuer))
	}
	if len(stated) == 0 && len(named) > 0 {
		w.add(&w.against, phrase.Say("according to %s no treatment was found", r.Issuer))
	}
}

// noneSeen words an empty list.
func (j *judgement) noneSeen(claim Claim, w weighing, excluded []*gem.Treatment) Claim {
	if len(w.proofs) > 0 && !j.opinion.Stated {
		claim.Standing, claim.Because, claim.Issuer = Supported, append(w.proofs, w.hints...), w.issuer
		return claim
	}
	if !j.magnified() {
		claim.Because = []phrase.Line{"the stone was not examined under magnification"}
		return claim
	}
	open := j.unseenTreatments(excluded)
	claim.Because = append([]phrase.Line{"nothing that shows treatment was seen"}, w.hints...)
	if len(open) > 0 {
		claim.Because = append(claim.Because, phrase.Say("these tests cannot show: %s", phrase.Commas(open...)))
	} else if len(excluded) > 0 && !j.opinion.Stated {
		claim.Standing = Supported
	}
	return claim
}

// unseenTreatments are the usual treatments of the material that nothing seen on
// a bench shows and that no sign excludes.
func (j *judgement) unseenTreatments(excluded []*gem.Treatment) []phrase.Line {
	var open []phrase.Line
	if j.opinion.Narrow == nil {
		return nil
	}
	for _, use := range j.opinion.Narrow.Treatments {
		t, err := j.table.Treatment(use.Treatment)
		if err != nil || use.Seen == "bench" || slices.ContainsFunc(excluded, func(e *gem.Treatment) bool { return j.table.TreatmentIsWithin(t, e) }) {
			continue
		}
		text := word(t.Name)
		if use.Customary != gem.Sometimes {
			text = phrase.Say("%s (commonly done; assume so)", phrase.Word(t.Name))
		}
		open = append(open, text)
	}
	return open
}

// namedOnes supports a list when each of its treatments has its proof.
func (j *judgement) namedOnes(claim Claim, w weighing, named, proved []*gem.Treatment) Claim {
	var open []phrase.Line
	for _, n := range named {
		if !slices.ContainsFunc(proved, func(p *gem.Treatment) bool { return j.table.TreatmentIsWithin(p, n) || j.table.TreatmentIsWithin(n, p) }) {
			open = append(open, word(n.Name))
		}
	}
	claim.Because = append(w.proofs, w.hints...)
	switch {
	case len(open) > 0:
		claim.Because = append(claim.Because, phrase.Say("no sign was recorded that proves: %s", phrase.Commas(open...)))
	case j.opinion.Stated:
		claim.Because = append(claim.Because, "as stated by the owner, not tested here")
	default:
		claim.Standing, claim.Issuer = Supported, w.issuer
	}
	return claim
}
