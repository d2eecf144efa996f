package report

import (
	"regexp"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/identify"
	"stonewrit/grading/stone"
	"stonewrit/templates"
)

// opinion is the opinion resolved, with the questions that names ask of it.
type opinion struct {
	identify.Opinion
	written stone.Opinion
}

func (c *composer) opinion() opinion { return opinion{c.e.Verdict.Opinion, c.s.Opinion} }

// speciesName is the species as the table calls it, or as written.
func (o opinion) speciesName() string {
	if o.Species != nil {
		return o.Species.Name
	}
	return o.written.Species
}

// varietyName is the variety, empty where only a species is named. A row for
// material made by people is no variety; its growth is told apart.
func (o opinion) varietyName() string {
	switch {
	case o.Variety != nil && o.Variety.Level == gem.Counterpart:
		return ""
	case o.Variety != nil:
		return o.Variety.Name
	}
	return o.written.Variety
}

// called reports whether the material is, or belongs to, the one named.
func (c *composer) called(name string) bool {
	m, err := c.Gems.Find(name)
	o := c.opinion()
	return err == nil && o.Narrow != nil && c.Gems.IsWithin(o.Narrow, m)
}

// aboutWhat is the subject for grammar. Only pearls of nature or culture are
// called pearls.
func (c *composer) aboutWhat() templates.Subject {
	about := templates.Subject{Count: c.s.Size.Number(), Reference: c.s.Reference}
	about.Pearl = c.called("pearl")
	if p := c.s.Quality.Pearl; p != nil {
		about.Count = max(about.Count, p.Count)
		about.Many = p.Count != 1 && (p.Length != "" || len(p.Sizes.Items) > 1)
	}
	about.Many = about.Many || about.Count > 1
	return about
}

// name is what the stone is called. variety is false for the species alone.
func (c *composer) name(variety bool) templates.Name {
	o := c.opinion()
	n := templates.Name{
		Species: o.speciesName(), Growth: string(o.Growth), Method: o.written.Method, Water: o.written.Water, Imitates: o.written.Imitates,
		Diamond: c.called("diamond"), Pearl: c.subject.Pearl, Subject: c.subject,
		Shown: c.e.Verdict.Growth.Standing == identify.Supported && c.reportedBy(c.e.Verdict.Growth) == "",
	}
	if variety {
		n.Variety = o.varietyName()
	}
	n.Narrow = n.Species
	if n.Variety != "" {
		n.Narrow = n.Variety
	}
	if n.Narrow == "" {
		n.Narrow = c.line("name.none", templates.None{})
		n.Species = n.Narrow
	}
	n.Facets = c.fewFacets(n)
	if told := c.e.Told.Name; n.Imitates == "" && told.Qualifier == "imitation" && len(told.Inside) > 0 {
		n.Imitates, n.Narrow = c.w.Term(told.Noun), told.Inside[0].In(c.w) // "glass imitation of pearl" is an imitation pearl of glass
	}
	for _, l := range o.written.Layers {
		n.Layers = append(n.Layers, templates.Layer{Part: l.Part, Material: c.materialName(l.Material)})
	}
	for _, t := range o.written.Treatments.Items {
		if c.bindsWithGlass(t) {
			n.Bound = true
			continue
		}
		n.Treatments = append(n.Treatments, c.treatmentName(t))
	}
	return n
}

// fewFacets is what has to stand beside the word diamond where the stone has too
// few facets for it (16 CFR 23.12).
func (c *composer) fewFacets(n templates.Name) string {
	inside := c.e.Told.Name.Inside
	if !n.Diamond || n.Imitates != "" || len(inside) == 0 {
		return ""
	}
	last := inside[len(inside)-1]
	if said := last.String(); strings.HasSuffix(said, " facets") || said == c.s.Size.Cut {
		return last.In(c.w)
	}
	return ""
}

// reportedBy is the issuer of the laboratory report that a supported claim rests
// on where no test made here supports it. Signs seen here come first among the
// reasons of a claim.
func (c *composer) reportedBy(claim identify.Claim) string {
	if claim.Standing != identify.Supported || len(claim.Because) == 0 {
		return ""
	}
	return claim.Issuer
}

// bindsWithGlass reports whether a treatment makes the stone a composite: held
// together by glass it is not the bare name (16 CFR 23.25(d)).
func (c *composer) bindsWithGlass(t stone.TreatmentClaim) bool {
	found, err := c.Gems.Treatment(t.Name)
	return err == nil && found.Name == "lead-glass filled"
}

// treatmentName is a treatment with its amount and place.
func (c *composer) treatmentName(t stone.TreatmentClaim) string {
	name := t.Name
	if found, err := c.Gems.Treatment(t.Name); err == nil {
		name = c.w.Term(found.Name)
	}
	return c.line("treatment.name", templates.Treatment{Name: name, Amount: t.Amount, Where: t.Where})
}

func (c *composer) treatmentNames(list []stone.TreatmentClaim) []string {
	var names []string
	for _, t := range list {
		names = append(names, c.treatmentName(t))
	}
	return names
}

// materialName is a material other than the opinion: a rival, a layer.
func (c *composer) materialName(name string) string {
	if m, err := c.Gems.Find(name); err == nil {
		name = m.Name
	}
	return c.word("material", name)
}

var bareDiamond = regexp.MustCompile(`\b[Dd]iamonds?\b`)

// qualified gives every bare "diamond" of the examination's own sentences its
// qualifier: the word alone would mean a natural one (ISO 18323, 2.2 note).
func (c *composer) qualified(s string) string {
	var b strings.Builder
	from := 0
	for _, at := range bareDiamond.FindAllStringIndex(s, -1) {
		b.WriteString(s[from:at[0]])
		word := s[at[0]:at[1]]
		if bare(s, at) && strings.ToLower(word) == "diamond" {
			word = c.word("material", "diamond")
		}
		b.WriteString(word)
		from = at[1]
	}
	b.WriteString(s[from:])
	return b.String()
}

// bare reports whether the word at a place stands without anything that says
// whether the stone grew in nature.
func bare(s string, at []int) bool {
	before, after := strings.TrimRight(s[:at[0]], " \u00a0"), s[at[1]:]
	for _, q := range []string{"natural", "laboratory-grown", "grown", "imitation", "“", "“not"} {
		if strings.HasSuffix(before, q) {
			return false
		}
	}
	for _, q := range []string{" (natural or", ", natural or", " screening", " grown", "”"} {
		if strings.HasPrefix(after, q) {
			return false
		}
	}
	return true
}
