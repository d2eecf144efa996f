package reading

import (
	"slices"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// Character is the optic character and sign that the tests show together.
type Character struct {
	Kind string // isotropic, uniaxial, biaxial or "" for not shown
	Sign string // "+", "-" or ""
	By   string // what shows it
}

// characterOf combines the polariscope's figure with the refractometer's edges.
// Where a figure shows a uniaxial stone the moving edge alone gives the sign.
func characterOf(s *stone.Stone, index []IndexValue) Character {
	var c Character
	for _, any := range s.Tests {
		p, ok := any.Test.(*stone.Polariscope)
		if !ok || p.SetAside != "" {
			continue
		}
		switch p.Figure {
		case "uniaxial", "open centre", "bull's-eye":
			c = Character{Kind: "uniaxial", By: "figure in the polariscope"}
		case "biaxial":
			c = Character{Kind: "biaxial", By: "figure in the polariscope"}
		}
	}
	for i := range index {
		v := &index[i]
		if v.Test.Header().SetAside != "" || v.Edges != 2 {
			continue
		}
		if v.Biaxial && c.Kind == "" {
			c.Kind, c.By = "biaxial", "both edges of the refractometer moved"
		}
		if c.Kind == "uniaxial" && v.LowMoved != v.HighMoved {
			v.Sign, v.SignSure = map[bool]string{true: "-", false: "+"}[v.LowMoved], true
		}
		if c.Sign == "" {
			c.Sign = v.Sign
		}
	}
	return c
}

// Best is the index value of the stone: the one with the smallest uncertainty
// among the tests that are not set aside; nil if there is none.
func (v Values) Best() *IndexValue {
	var best *IndexValue
	for i := range v.Index {
		x := &v.Index[i]
		if x.Test.Header().SetAside != "" || x.Suspect != "" && x.Edges == 0 {
			continue
		}
		if best == nil || better(x, best) {
			best = x
		}
	}
	return best
}

// better prefers a reading to a bound, two edges to one, then the smaller u.
func better(a, b *IndexValue) bool {
	if (a.Edges > 0) != (b.Edges > 0) {
		return a.Edges > 0
	}
	if a.U != b.U {
		return a.U < b.U
	}
	return a.Edges > b.Edges
}

// BestGravity is the specific gravity of the stone: of the values found by
// weighing here the one with the smallest uncertainty, else of the values taken
// from elsewhere; bounds are left out. It is nil if there is none.
func (v Values) BestGravity() *GravityValue {
	var best *GravityValue
	for i := range v.Gravity {
		g := &v.Gravity[i]
		if g.Test.Header().SetAside == "" && g.Void == "" && g.Bound == "" && (best == nil || closer(g, best)) {
			best = g
		}
	}
	return best
}

func closer(a, b *GravityValue) bool {
	if a.Weighed != b.Weighed {
		return a.Weighed
	}
	return a.U < b.U
}

// caveats are the printed limits of these readings.
func (b Bench) caveats(s *stone.Stone, v Values) []phrase.Line {
	var list []phrase.Line
	add := func(form phrase.Line, parts ...any) {
		if text := phrase.Say(form, parts...); !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	for _, x := range v.Index {
		b.checkCaveat(add, x.Test, x.Check)
		if x.Check.State == CheckValid && x.Edges > 0 && x.Check.Known > 0 && abs(x.Low-x.Check.Known) > b.Figures["index far from check"] {
			add("%s was checked at index %.3f only; the reading near %.3f lies far from it.", name(x.Test), x.Check.Known, x.Low)
		}
		if x.Suspect != "" {
			add("Refractometer: %s.", x.Suspect)
		}
	}
	for _, g := range v.Gravity {
		if g.Weighed {
			b.checkCaveat(add, g.Test, g.Check)
		}
		for _, n := range g.Notes {
			add("Specific gravity: %s.", n)
		}
	}
	return list
}

func (b Bench) checkCaveat(add func(phrase.Line, ...any), t stone.Test, c Check) {
	if c.State != CheckValid {
		add("%s: %s; a wider uncertainty was allowed for.", name(t), c.Words())
	}
}

func name(t stone.Test) phrase.Line {
	if h := t.Header(); h.Instrument != "" {
		return phrase.Say("%s", h.Instrument)
	}
	return phrase.Say("Instrument of the %s test (not named)", phrase.Word(t.Header().Kind))
}

func abs(x float64) float64 { return max(x, -x) }
