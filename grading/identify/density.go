package identify

import (
	"math"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/reading"
)

// density judges a specific gravity. index is the stone's index, nil if none
// was read: for solid solutions and glass the two are judged together.
func density(g *reading.GravityValue, m *gem.Material, r rule, index *reading.IndexValue) finding {
	switch {
	case g.Void != "":
		return said(cannotTell, g.Void)
	case !m.SG.Known():
		return unknown()
	case g.Bound != "":
		return bound(g, m)
	}
	low, high, narrowed := m.SG.Min, m.SG.Max, false
	if l, h, ok := jointGravity(m, index); ok {
		low, high, narrowed = l, h, true
	}
	f := r.judge(within("specific gravity", g.V, low, high, g.U, 3), sharpGravity)
	f.joint = narrowed
	return f
}

// bound judges a stone that sinks or floats in a liquid: it conflicts only
// beyond three standard uncertainties of the liquid.
func bound(g *reading.GravityValue, m *gem.Material) finding {
	f := finding{known: true, figure: boundName(g.Bound), value: g.Liquid, low: m.SG.Min, high: m.SG.Max, u: g.U, digits: 2}
	fits := m.SG.Min >= g.Liquid
	f.d = max(g.Liquid-m.SG.Max, 0)
	if g.Bound == "below" {
		fits, f.d = m.SG.Max <= g.Liquid, max(m.SG.Min-g.Liquid, 0)
	}
	switch {
	case f.d > 3*f.u+atEdge:
		f.verdict = conflicts
	case fits:
		f.verdict, f.tell = agrees, tellAbove
		if g.Bound == "below" {
			f.tell = tellBelow
		}
	default:
		f.verdict, f.tell = cannotTell, tellAstride
	}
	return f
}

func boundName(bound string) phrase.Word {
	if bound == "below" {
		return "specific gravity below"
	}
	return "specific gravity above"
}

func tellAbove(f finding) phrase.Line {
	return phrase.Say("above the liquid's %.2f, as its whole range %s", f.value, span(f.low, f.high, 2))
}

func tellBelow(f finding) phrase.Line {
	return phrase.Say("below the liquid's %.2f, as its whole range %s", f.value, span(f.low, f.high, 2))
}

func tellAstride(f finding) phrase.Line {
	return phrase.Say("its range %s lies about the liquid's %.2f", span(f.low, f.high, 2), f.value)
}

// Width in index about a solid solution's line that one reading may lie off
// it, beside its uncertainty: the figures of the end members are rounded
// (common practice, from memory).
const offLine = 0.005

// jointGravity is the range of specific gravity that a solid solution or a
// glass has at the stone's index; ok is false where the table has no such line,
// no index was read, or the index lies off the line, which the index test says
// better.
func jointGravity(m *gem.Material, v *reading.IndexValue) (low, high float64, ok bool) {
	if len(m.Joint) < 2 || v == nil || v.Edges == 0 && (v.Over == 0 || v.Poor) {
		return 0, 0, false
	}
	from, to := v.Low-2*v.U-offLine, v.High+2*v.U+offLine
	if v.Edges == 0 {
		from, to = v.Over-clearlyBelow, math.Inf(1)
	}
	low, high = math.Inf(1), math.Inf(-1)
	for i := range m.Joint {
		for k := i + 1; k < len(m.Joint); k++ {
			if m.JointShape != "hull" && k > i+1 {
				break // a line runs from corner to corner; of an area every pair counts
			}
			if l, h, crosses := clip(m.Joint[i], m.Joint[k], from, to); crosses {
				low, high, ok = min(low, l), max(high, h), true
			}
		}
	}
	return low - m.JointSG, high + m.JointSG, ok
}

// clip gives the range of specific gravity of the side between two indices.
func clip(a, b gem.Corner, from, to float64) (low, high float64, ok bool) {
	if a.Index > b.Index {
		a, b = b, a
	}
	if b.Index < from || a.Index > to {
		return 0, 0, false
	}
	at := func(n float64) float64 {
		if b.Index == a.Index {
			return a.SG
		}
		return a.SG + (b.SG-a.SG)*(n-a.Index)/(b.Index-a.Index)
	}
	p, q := at(max(from, a.Index)), at(min(to, b.Index))
	if a.Index == b.Index {
		p, q = a.SG, b.SG
	}
	return min(p, q), max(p, q), true
}

// implied judges the specific gravity that weight and dimensions imply. It is
// weak: it conflicts only far outside the range, and counts for nothing else.
func implied(i *Implied, m *gem.Material) finding {
	if !m.SG.Known() {
		return unknown()
	}
	f := within("implied specific gravity", i.SG.V, m.SG.Min, m.SG.Max, i.SG.U, 2)
	f.known, f.verdict = true, cannotTell
	switch ratioLow, ratioHigh := i.SG.V/m.SG.Min, i.SG.V/m.SG.Max; {
	case !i.Consistent:
		f.note = "the dimensions do not agree with one another"
	case f.d > 3*f.u && (ratioLow < 0.8 || ratioHigh > 1.25):
		f.verdict = conflicts
	case f.d <= 2*f.u:
		f.verdict = agrees
	default:
		f.note = "too weak to decide"
	}
	return f
}
