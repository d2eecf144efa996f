package quality

import "stonewrit/grading/gem"

// A Restriction is what may limit the sale or the carrying over a border of a
// material.
type Restriction struct {
	Material *gem.Material // the row that the note is for
	Note     string        // a sentence without capital and full stop
	Source   string
}

// Restrictions are those of the material and of every layer. None means that the
// table has none, not that there is none: law differs and changes.
func (g *Grader) Restrictions(s Subject) []Restriction {
	materials := []*gem.Material{s.narrow()}
	for _, l := range s.Layers {
		materials = append(materials, l.Material)
	}
	var list []Restriction
	for _, r := range g.restricted {
		for _, m := range materials {
			if m != nil && g.gems.IsWithin(m, r.Material) {
				list = append(list, r)
				break
			}
		}
	}
	return list
}

func (g *Grader) readRestricted() error {
	return each("restricted.csv", func(r *row) {
		m := g.find(r.text("material"))
		if m == nil || m.Name != r.text("material") || r.text("note") == "" {
			r.fail("material", "a name of the gem table and a note are needed")
			return
		}
		g.restricted = append(g.restricted, Restriction{m, r.text("note"), r.text("source")})
	}, "material", "note")
}
