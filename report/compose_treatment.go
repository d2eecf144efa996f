package report

import (
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/identify"
	"stonewrit/templates"
)

// treatments is what is to be said of all treatments together.
func (c *composer) treatments() templates.Treatments {
	o, claim := c.s.Opinion, c.e.Verdict.Treatment
	f := templates.Treatments{
		Subject: c.subject, Name: c.commonName(), Named: c.treatmentNames(o.Treatments.Items), Told: c.treatmentNames(o.Told.Items),
		NotExamined: !o.Treatments.Given, NoneSeen: o.Treatments.Given && len(o.Treatments.Items) == 0, Magnified: c.magnified(),
		Issuer: c.reportedBy(claim), Stated: c.e.Verdict.Opinion.Stated, Supported: claim.Standing == identify.Supported, Undecided: claim.Standing == identify.Undecided,
	}
	for _, t := range c.disclosed() {
		f.Wordings = append(f.Wordings, c.sentence(t.Wording))
		if t.Care != "" && t.Permanence != "permanent" {
			f.Wordings = append(f.Wordings, c.sentence(t.Care))
		}
	}
	if !f.Supported && len(f.Named) == 0 {
		f.Customary = c.customary()
	}
	return f
}

// commonName is the material as the trade speaks of it: the variety if there is
// one.
func (c *composer) commonName() string {
	n := c.name(true)
	if n.Growth != "natural" || n.Imitates != "" {
		return ""
	}
	return c.line("name.variety", templates.Name{Variety: n.Narrow, Growth: n.Growth, Diamond: n.Diamond})
}

func (c *composer) magnified() bool {
	for _, a := range c.s.Tests {
		if h := a.Header(); h.Kind == "magnification" && h.SetAside == "" {
			return true
		}
	}
	return false
}

// disclosed are the treatments of the opinion as the table knows them.
func (c *composer) disclosed() []*gem.Treatment {
	var list []*gem.Treatment
	for _, claim := range c.s.Opinion.Treatments.Items {
		if t, err := c.Gems.Treatment(claim.Name); err == nil {
			list = append(list, t)
		}
	}
	return list
}

// customary are the treatments that are always or often given to the material
// and that the opinion does not name.
func (c *composer) customary() []string {
	m := c.opinion().Narrow
	if m == nil || c.opinion().Growth != gem.Natural && c.opinion().Growth != gem.Cultured {
		return nil
	}
	var list []string
	for _, use := range m.Treatments {
		t, err := c.Gems.Treatment(use.Treatment)
		if err != nil || use.Customary == gem.Sometimes || c.names(t) {
			continue
		}
		list = append(list, c.w.Term(t.Name))
	}
	return list
}

// names reports whether the opinion names the treatment, a wider or a narrower
// one.
func (c *composer) names(t *gem.Treatment) bool {
	for _, d := range c.disclosed() {
		if c.Gems.TreatmentIsWithin(d, t) || c.Gems.TreatmentIsWithin(t, d) {
			return true
		}
	}
	return false
}

// treatment discloses every treatment in plain words, with its permanence and
// the care it needs, and what is customary and cannot be seen; one text each.
func (c *composer) treatment() []Text {
	texts := c.namedTreatments()
	if rest := c.otherTreatment(); !rest.Empty() {
		texts = append(texts, rest)
	}
	if len(texts) > 0 {
		texts[0] = together(Strong(c.line("treatment.head", templates.None{})), texts[0])
	}
	return texts
}

// namedTreatments is a paragraph for each treatment of the opinion.
func (c *composer) namedTreatments() []Text {
	var out []Text
	for _, claim := range c.s.Opinion.Treatments.Items {
		t, err := c.Gems.Treatment(claim.Name)
		if err != nil {
			continue
		}
		f := templates.Treatment{Name: upperFirst(c.treatmentName(claim)), Wording: c.sentence(t.Wording), Care: c.sentence(t.Care), Radioactivity: c.sentence(t.Radioactivity)}
		if strings.HasPrefix(f.Wording, f.Name) {
			f.Name = ""
		}
		f.MayFade = t.Permanence == "may fade" && !strings.Contains(t.Wording+t.Care, "fade")
		named := c.say("treatment.named", f)
		if claim.Amount != "" {
			named = together(named, c.say("treatment.amounts", templates.None{}))
		}
		out = append(out, named)
	}
	return out
}

// otherTreatment is what is to be said beside: none seen, not examined, not
// proved, customary, told by others.
func (c *composer) otherTreatment() Text {
	f := c.treatments()
	first := c.say("treatment.standing", f)
	if len(f.Named) == 0 {
		first = c.say("treatment.none", f)
	}
	var customary, told Text
	if !f.Supported || len(f.Named) > 0 {
		if f.Customary = c.customary(); len(f.Customary) > 0 {
			customary = c.say("treatment.customary", f)
		}
	}
	if len(f.Told) > 0 {
		told = c.say("treatment.told", f)
	}
	return together(first, customary, told)
}

// compositeNotice is what the law wants beside the name of a stone held
// together by glass.
func (c *composer) compositeNotice() Text {
	n := c.name(true)
	if !n.Bound {
		return nil
	}
	return c.say("composite.notice", templates.Care{Subject: c.subject, Name: n.Narrow})
}
