package quality

import (
	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
)

// Pearls are what is to be told of pearls: always natural, cultured or
// imitation, and the water.
type Pearls struct {
	Name            Name
	Count           int     // 1 for one
	Least, Greatest float64 // mm, 0 for not measured
	Shape, Colour   string
	Overtone        string
	Lustre, Surface string
	Nacre           string // thickness in words; "" for none, which needs NacreBy
	NacreBy         string // how it was judged
	Matching        string
	Drilled         string
	Strand          string // length of a strand, with its unit
	Seed            bool   // natural and small enough to be called seed pearls (16 CFR 23.19(d), 23.21(b))
}

// PearlsOf is the description of pearls, nil for anything else. A nacre whose
// method is not told is left out (16 CFR 23.22).
func (g *Grader) PearlsOf(s *stone.Stone) *Pearls {
	c := g.ContextOf(s)
	_, imitates := g.imitationOf(c.Subject)
	if !g.is(c.Subject, "pearl") && !imitates && s.Quality.Pearl == nil {
		return nil
	}
	p := &Pearls{Name: g.Name(c.Subject), Count: s.Size.Number()}
	if q := s.Quality.Pearl; q != nil {
		p.describe(q)
	}
	p.Least, p.Greatest = sizes(s)
	p.Seed = c.Growth == gem.Natural && p.Greatest > 0 && p.Greatest <= g.limit("seed pearl")
	return p
}

func (p *Pearls) describe(q *stone.PearlGrade) {
	p.Count = max(p.Count, q.Count)
	p.Shape, p.Colour, p.Overtone, p.Lustre, p.Surface = q.Shape, q.Colour, q.Overtone, q.Lustre, q.Surface
	p.Matching, p.Drilled, p.Strand = q.Matching, q.Drilled, q.Length
	if q.Nacre != nil && q.Nacre.Method != "" {
		p.Nacre, p.NacreBy = q.Nacre.Words, q.Nacre.Method
	}
}

// sizes are the least and the greatest size of pearls that the file gives, mm.
func sizes(s *stone.Stone) (least, greatest float64) {
	var all []stone.Length
	if q := s.Quality.Pearl; q != nil {
		all = append(all, q.Sizes.Items...)
	}
	if len(all) == 0 {
		all = append(append(all, s.Size.Sizes.Items...), s.Size.Diameter.Items...)
	}
	for i, l := range all {
		v := l.Float()
		if i == 0 || v < least {
			least = v
		}
		greatest = max(greatest, v)
	}
	return least, greatest
}
