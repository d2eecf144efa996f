package quality

import (
	"strings"

	"stonewrit/grading/stone"
)

// Cleanness is what the recorded examinations at ten times or more with a
// corrected magnifier show: nothing without one; included if any of them, at
// whatever magnification, or the graded clarity tells of something inside.
// Features of the surface leave the stone clean inside.
func (g *Grader) Cleanness(s *stone.Stone) Cleanness {
	if !g.magnified(s) {
		return NotMagnified
	}
	marks := false
	for _, t := range s.Tests {
		m, ok := t.Test.(*stone.Magnification)
		if !ok || m.SetAside != "" {
			continue
		}
		for _, word := range m.Sees.Items {
			f, err := g.gems.Feature(word)
			if err != nil || f.Place != "surface" {
				return Included // what the table does not know lies inside, to be safe
			}
			marks = true
		}
	}
	if marks {
		return CleanInside
	}
	return Clean
}

// magnified reports whether the stone was examined at ten times or more with a
// corrected magnifier.
func (g *Grader) magnified(s *stone.Stone) bool {
	for _, t := range s.Tests {
		m, ok := t.Test.(*stone.Magnification)
		if ok && m.SetAside == "" && float64(m.Power) >= g.limit("loupe") && m.Corrected {
			return true
		}
	}
	return false
}

// ContextOf is what the words about a stone are judged by.
func (g *Grader) ContextOf(s *stone.Stone) Context {
	c := Context{Subject: g.SubjectOf(s), Clean: g.Cleanness(s)}
	var sizes []stone.Length
	if p := s.Quality.Pearl; p != nil {
		sizes = p.Sizes.Items
	}
	for _, l := range append(append(sizes, s.Size.Sizes.Items...), s.Size.Diameter.Items...) {
		c.Largest = max(c.Largest, l.Float())
	}
	if d := s.Quality.Diamond; d != nil && c.Clean != NotMagnified {
		if grades, err := g.ParseDiamondClarity(d.Clarity); err == nil && !strings.EqualFold(grades.Best.Name, "FL") {
			c.Clean = CleanInside
			if grades.Worst.Name != "IF" {
				c.Clean = Included
			}
		}
	}
	return c
}
