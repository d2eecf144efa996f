package quality

import (
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// A Reason says why a standard may not be cited for a stone, and which key of
// the file says so.
type Reason struct {
	Path string
	Text phrase.Line
}

// OutsideISO24016 are the reasons why ISO 24016 may not be cited for a stone:
// its scope (clause 1) is one loose, natural, polished diamond over 0.25 ct, not
// of fancy colour, not assembled and not treated; the small exception of 7.4 for
// treatment is not made here. each is the mass of one stone in ct, 0 for not
// known. The empty list says that nothing speaks against it, not that the stone
// was graded by it.
func (g *Grader) OutsideISO24016(s *stone.Stone, each float64) []Reason {
	c := g.SubjectOf(s)
	var list []Reason
	add := func(against bool, path string, text phrase.Line) {
		if against {
			list = append(list, Reason{path, text})
		}
	}
	add(!g.is(c, "diamond") && len(c.Layers) == 0, "opinion.species", "it is for diamond alone")
	add(s.Mounted, "mounted", "it is for loose stones")
	add(c.Growth != gem.Natural && c.Growth != gem.Composite, "opinion.growth", "it is for stones whose growth is natural")
	add(c.Growth == gem.Composite || len(c.Layers) > 0, "opinion.growth", "it is not for assembled stones")
	add(each == 0, "weight", "the mass is not known")
	add(each > 0 && each <= g.limit("ISO 24016 mass"), "weight", phrase.Say("the mass must be over %s ct", figured(g.limit("ISO 24016 mass"))))
	add(len(c.seen()) > 0, "opinion.treatments", "it is not for treated stones")
	add(len(c.seen()) < len(c.Treatments), "opinion.treatments_stated", "it is not for treated stones")
	add(c.Treatment == NotExamined, "opinion.treatments", "the stone was not examined for treatment")
	add(fancy(s), "quality.diamond.colour", "it is not for fancy colours")
	add(s.Size.Cut == "rough", "size.cut", "it is for polished stones")
	add(s.Size.Number() > 1, "size.count", "it is for one stone")
	return list
}

// OutsideGBT16554 are the reasons why GB/T 16554 may not be cited: a loose stone
// from 0.0400 g, a mounted one from 0.0400 to 0.2000 g; above that grades of a
// mounted stone are "by reference" (clause 1, edition of 2010).
func (g *Grader) OutsideGBT16554(s *stone.Stone, each float64) []Reason {
	grams := each / 5 // one carat is 0.2 g
	switch {
	case each == 0:
		return []Reason{{"weight", "the mass is not known"}}
	case grams < g.limit("GB/T 16554 loose"):
		return []Reason{{"weight", phrase.Say("the mass must be at least %s", inGrams(g.limit("GB/T 16554 loose")))}}
	case s.Mounted && grams > g.limit("GB/T 16554 mounted"):
		return []Reason{{"mounted", phrase.Say("a mounted stone over %s is graded by reference alone", inGrams(g.limit("GB/T 16554 mounted")))}}
	}
	return nil
}

func fancy(s *stone.Stone) bool {
	d := s.Quality.Diamond
	return d != nil && strings.Contains(strings.ToLower(d.Colour), "fancy")
}
