package quality

import (
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
)

// A Subject is a stone as an opinion names it, resolved to rows of the gem
// table.
type Subject struct {
	Species *gem.Material // species or group; nil for none or one the table lacks
	Variety *gem.Material // nil for none
	Written string        // the narrowest name as written

	Growth     gem.Growth // "" for undetermined
	Method     string     // of growing or culturing; "" or undetermined
	Water      string     // of pearls: saltwater, freshwater, undetermined or ""
	Imitates   string     // what it is sold or worn as
	Layers     []Layer    // of a composite, from the crown down
	Treatments []Treated
	Treatment  TreatmentStatus

	Cut    string // style of cutting
	Facets int    // polished facets counted, 0 for not counted
	Many   bool   // several stones alike
}

// A Layer is one part of a composite. Material is nil for glue.
type Layer struct {
	Part, Written string
	Material      *gem.Material
}

// A Treated is one treatment of an opinion.
type Treated struct {
	*gem.Treatment
	Amount string // few, several, most: of the fissures; "" for not told
	Where  string
	Told   bool // by seller or owner, not seen here
}

// A TreatmentStatus says what is known of treatment at all.
type TreatmentStatus string

// NotExamined: nobody looked. NoneSeen: looked, and nothing seen, which is no
// proof of none. Detected: at least one is named.
const (
	NotExamined TreatmentStatus = "not examined"
	NoneSeen    TreatmentStatus = "none seen"
	Detected    TreatmentStatus = "detected"
)

// SubjectOf resolves the opinion of a stone file.
func (g *Grader) SubjectOf(s *stone.Stone) Subject {
	o := s.Opinion
	c := Subject{
		Written: o.Species, Method: o.Method, Water: o.Water, Imitates: o.Imitates,
		Cut: s.Size.Cut, Facets: s.Size.Facets, Many: s.Size.Number() > 1,
	}
	g.resolveNames(&c, o)
	c.Growth = growthOf(o.Growth, c.narrow())
	for _, l := range o.Layers {
		c.Layers = append(c.Layers, Layer{l.Part, l.Material, g.find(l.Material)})
	}
	c.Treatments = append(g.treated(o.Treatments.Items, false), g.treated(o.Told.Items, true)...)
	c.Treatment = statusOf(o)
	if p := s.Quality.Pearl; p != nil {
		c.Many = c.Many || p.Count > 1 || len(p.Sizes.Items) > 1
	}
	return c
}

// resolveNames reads a variety in place of the species as its species with
// that variety, and a row for grown material as what it is grown as.
func (g *Grader) resolveNames(c *Subject, o stone.Opinion) {
	named := g.find(o.Species)
	if v := g.find(o.Variety); v != nil {
		named = v
	}
	if o.Variety != "" {
		c.Written = o.Variety
	}
	if named == nil {
		return
	}
	if named.Level == gem.Counterpart && unset(c.Method) {
		c.Method = named.Method
	}
	for named.Level == gem.Counterpart {
		named = g.find(named.Parent)
	}
	c.Species = g.gems.SpeciesOf(named)
	if named.Level == gem.Variety {
		c.Variety = named
	}
	if written := g.find(o.Species); o.Variety != "" && written != nil && written.Level == gem.Group && c.Variety == nil {
		c.Species = named
	}
}

// growthOf reads "imitation" as what the material is.
func growthOf(written string, m *gem.Material) gem.Growth {
	switch {
	case written == "undetermined":
		return ""
	case written == "imitation" && m == nil:
		return gem.Composite
	case written == "imitation":
		return m.Growth
	}
	return gem.Growth(written)
}

func statusOf(o stone.Opinion) TreatmentStatus {
	switch {
	case len(o.Treatments.Items) > 0:
		return Detected
	case o.Treatments.Given:
		return NoneSeen
	}
	return NotExamined
}

func (g *Grader) treated(claims []stone.TreatmentClaim, told bool) []Treated {
	var list []Treated
	for _, c := range claims {
		if tr, err := g.gems.Treatment(c.Name); err == nil {
			list = append(list, Treated{tr, c.Amount, c.Where, told})
		}
	}
	return list
}

// find is nil for no name and for one that the table does not have.
func (g *Grader) find(name string) *gem.Material {
	if name == "" {
		return nil
	}
	m, err := g.gems.Find(name)
	if err != nil {
		return nil
	}
	return m
}

// WithoutGrowth is the same stone with its growth left open: for a document
// that cannot stand behind the growth of the opinion.
func (s Subject) WithoutGrowth() Subject {
	s.Growth = ""
	return s
}

// settled puts right a growth that the material cannot have, so that no name is
// made of it: what nature does not make is artificial, what nature makes and
// people make too is laboratory-grown, a composite is assembled; cultured is a
// word for pearls alone, laboratory-grown none for pearls.
func (g *Grader) settled(s Subject) Subject {
	m, pearl := s.narrow(), g.is(s, "pearl")
	switch {
	case m == nil:
	case m.Growth == gem.Composite:
		s.Growth = gem.Composite
	case m.Growth == gem.Artificial && s.Growth != gem.LaboratoryGrown:
		s.Growth = gem.Artificial
	case pearl && (s.Growth == gem.LaboratoryGrown || s.Growth == gem.Artificial):
		s.Growth = ""
	case !pearl && s.Growth == gem.Cultured, m.Growth == gem.Natural && s.Growth == gem.Artificial:
		s.Growth = gem.LaboratoryGrown
	}
	return s
}

// narrow is the narrowest row named, or nil.
func (s Subject) narrow() *gem.Material {
	if s.Variety != nil {
		return s.Variety
	}
	return s.Species
}

// is reports whether the stone is, or belongs to, the material of that name.
func (g *Grader) is(s Subject, name string) bool {
	m := g.find(name)
	return m != nil && s.narrow() != nil && g.gems.IsWithin(s.narrow(), m)
}

// seen are the treatments that the examiner names, not those told by others.
func (s Subject) seen() []Treated {
	var list []Treated
	for _, t := range s.Treatments {
		if !t.Told {
			list = append(list, t)
		}
	}
	return list
}

func unset(word string) bool { return word == "" || strings.EqualFold(word, "undetermined") }
