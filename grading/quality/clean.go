package quality

import (
	"strings"

	"stonewrit/grading/stone"
)

// Cleanness is what the recorded examinations show for the words flawless and
// internally flawless: nothing without one at ten times or more with a corrected
// magnifier; included if one at ten times saw something inside or, where none
// was made at ten times itself, one at a higher magnification did. Features of
// the surface leave the stone clean inside.
func (g *Grader) Cleanness(s *stone.Stone) Cleanness {
	if !g.magnified(s) {
		return NotMagnified
	}
	atTen := g.looked(s, func(m *stone.Magnification) bool { return g.enough(m) && g.low(m) })
	inside, surface := g.look(s, func(m *stone.Magnification) bool { return g.low(m) || !atTen })
	switch {
	case inside:
		return Included
	case surface:
		return CleanInside
	}
	return Clean
}

// includedAtTen reports whether an examination at ten times or less saw
// something inside.
func (g *Grader) includedAtTen(s *stone.Stone) bool {
	inside, _ := g.look(s, g.low)
	return inside
}

// magnified reports whether the stone was examined at ten times or more with a
// corrected magnifier.
func (g *Grader) magnified(s *stone.Stone) bool { return g.looked(s, g.enough) }

func (g *Grader) enough(m *stone.Magnification) bool {
	return float64(m.Power) >= g.limit("loupe") && m.Corrected
}

// low is true of ten times and less, and of a magnification not told.
func (g *Grader) low(m *stone.Magnification) bool { return float64(m.Power) <= g.limit("loupe") }

func (g *Grader) looked(s *stone.Stone, which func(*stone.Magnification) bool) bool {
	for _, t := range s.Tests {
		if m, ok := t.Test.(*stone.Magnification); ok && m.SetAside == "" && which(m) {
			return true
		}
	}
	return false
}

// look tells whether such examinations saw something inside or at the surface.
// What the table does not know lies inside, to be safe.
func (g *Grader) look(s *stone.Stone, which func(*stone.Magnification) bool) (inside, surface bool) {
	for _, t := range s.Tests {
		m, ok := t.Test.(*stone.Magnification)
		if !ok || m.SetAside != "" || !which(m) {
			continue
		}
		for _, word := range m.Sees.Items {
			f, err := g.gems.Feature(word)
			onSurface := err == nil && f.Place == "surface"
			inside, surface = inside || !onSurface, surface || onSurface
		}
	}
	return inside, surface
}

// ContextOf is what the words about a stone are judged by.
func (g *Grader) ContextOf(s *stone.Stone) Context {
	c := Context{Subject: g.SubjectOf(s), Clean: g.Cleanness(s)}
	_, c.Largest = sizes(s)
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
