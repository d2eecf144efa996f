package identify

import (
	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/reading"
)

// Distances in index that are limits of the method (common practice, from
// memory): no edge below the limit excludes a material only when its highest
// index lies clearly below it.
const (
	clearlyBelow   = 0.02
	uOfAbsentEdge  = 0.005
	unseenPart     = 0.3 // of the birefringence, after three turns or more
	isotropicStray = 0.0005
	opaqueStray    = 0.003 // a fine opaque mass shows one edge, if any
)

// index judges an index test ray by ray: the low edge against the lower ray,
// the high edge against the higher one, the birefringence against its own
// range; the worst of them is the verdict.
func index(v *reading.IndexValue, m *gem.Material, r rule) finding {
	switch {
	case v.Edges == 0 && v.Over == 0:
		return said(cannotTell, "no reading that can be used")
	case v.Edges == 0:
		return overLimit(v, m)
	case !m.Low.Known():
		return unknown()
	case v.Suspect != "" && v.Spot:
		return said(cannotTell, "the reading may be the contact liquid's own index")
	case v.Edges == 1:
		return oneEdge(v, m, r)
	}
	return twoEdges(v, m, r)
}

func overLimit(v *reading.IndexValue, m *gem.Material) finding {
	switch {
	case !m.Low.Known():
		return unknown()
	case m.High.Max < v.Over-clearlyBelow && !v.Poor:
		return finding{verdict: conflicts, known: true, figure: "index above", value: v.Over, low: m.Low.Min, high: m.High.Max,
			d: v.Over - m.High.Max, u: uOfAbsentEdge, digits: 3, note: "an edge should have been seen"}
	case m.Low.Min > v.Over-clearlyBelow:
		return finding{verdict: agrees, known: true, figure: "index above", value: v.Over, low: m.Low.Min, high: m.High.Max, tell: tellOver}
	case m.High.Max < v.Over-clearlyBelow:
		return said(cannotTell, "no edge was seen, which poor contact also causes")
	}
	return said(cannotTell, "its index lies about the limit of the contact liquid")
}

func tellOver(f finding) phrase.Line {
	return phrase.Say("no edge below %.2f, and its index begins at %.3f", f.value, f.low)
}

// oneEdge is one index anywhere between the two of a doubly refractive stone.
func oneEdge(v *reading.IndexValue, m *gem.Material, r rule) finding {
	f := r.judge(within("index", v.Low, m.Low.Min, m.High.Max, v.U, 3), sharpIndex)
	if v.High > v.Low {
		f = worse(f, r.judge(within("index", v.High, m.Low.Min, m.High.Max, v.U, 3), sharpIndex))
	}
	if v.UpperOver && v.Limit > v.Low {
		biref := birefringenceOf(m)
		least := finding{figure: "birefringence above", value: v.Limit - v.Low, low: biref.Min, high: biref.Max, u: uOfAbsentEdge, digits: 3}
		least.d = max(least.value-biref.Max, 0)
		if least.d > r.reject*least.u {
			least.verdict, least.known = conflicts, true
			return least
		}
	}
	if v.Most > 0 && m.Birefringence.Known() {
		most := within("birefringence below", v.Most, 0, 0, v.BirefringenceU, 3)
		most.low, most.high = m.Birefringence.Min, m.Birefringence.Max
		most.d = max(m.Birefringence.Min-v.Most, 0)
		if most.d > r.reject*most.u {
			most.verdict, most.known = conflicts, true
			f = worse(f, most)
		}
	}
	return f
}

func twoEdges(v *reading.IndexValue, m *gem.Material, r rule) finding {
	biref := birefringenceOf(m)
	if narrow, ok := jointBirefringence(m, v); ok {
		biref = narrow
	}
	unseen := biref.Max
	if v.Turns >= 3 {
		unseen *= unseenPart
	}
	lowMax, highMin := m.Low.Max+unseen, m.High.Min-unseen
	switch {
	case m.Optic == gem.Isotropic:
		lowMax, highMin = m.Low.Max, m.High.Min
	case m.Optic == gem.Uniaxial && m.Sign == "+":
		lowMax = m.Low.Max // the ordinary ray does not move
	case m.Optic == gem.Uniaxial && m.Sign == "-":
		highMin = m.High.Min
	}
	lowMax, highMin = min(lowMax, max(m.High.Max, m.Low.Max)), max(highMin, m.Low.Min)
	f := r.judge(within("lower edge", v.Low, m.Low.Min, lowMax, v.U, 4), sharpIndex)
	if f.verdict == conflicts {
		return f
	}
	f = worse(f, r.judge(within("upper edge", v.High, highMin, m.High.Max, v.U, 4), sharpIndex))
	if f.verdict == conflicts {
		return f
	}
	f = worse(f, seenBirefringence(v, biref, r))
	return worse(f, character(v, m, f))
}

// seenBirefringence is a lower bound, and after three turns also bounds the
// true one from above.
func seenBirefringence(v *reading.IndexValue, biref gem.Range, r rule) finding {
	f := finding{figure: "birefringence", value: v.Birefringence, low: biref.Min, high: biref.Max, u: v.BirefringenceU, digits: 4}
	f.d = max(v.Birefringence-biref.Max, 0)
	if v.Most > 0 {
		f.d = max(f.d, biref.Min-v.Most)
	}
	f = r.judge(f, sharpBirefringence)
	if f.d == 0 && v.Birefringence < biref.Min {
		f.note = "less than the full birefringence, as any one facet may show"
		f.low = 0
	}
	return f
}

// birefringenceOf is the material's own range, or what its indices imply.
func birefringenceOf(m *gem.Material) gem.Range {
	switch {
	case m.Optic == gem.Isotropic:
		return gem.Range{Min: 0, Max: isotropicStray}
	case m.Optic == gem.Opaque && !m.Birefringence.Known():
		return gem.Range{Min: 0, Max: opaqueStray}
	case m.Birefringence.Known():
		return m.Birefringence
	}
	return gem.Range{Min: 0, Max: 2 * max(m.High.Mid()-m.Low.Mid(), 0)}
}

// jointBirefringence is the birefringence that a solid solution has at the
// stone's mean index, where the table lets it follow composition; what a few
// turns leave unseen of the index widens it.
func jointBirefringence(m *gem.Material, v *reading.IndexValue) (gem.Range, bool) {
	if len(m.Joint) < 2 || !m.Joint[0].Birefringence.Known() || v.Turns < 3 {
		return gem.Range{}, false
	}
	a, b := m.Joint[0], m.Joint[len(m.Joint)-1]
	mean := (v.Low + v.High) / 2
	off := 2*v.U + offLine
	at := func(n float64) float64 { return min(max((n-a.Index)/(b.Index-a.Index), 0), 1) }
	low, high := at(mean-off), at(mean+off)
	return gem.Range{
		Min: a.Birefringence.Min + low*(b.Birefringence.Min-a.Birefringence.Min),
		Max: a.Birefringence.Max + high*(b.Birefringence.Max-a.Birefringence.Max),
	}, true
}

// character compares what the moving edges show.
func character(v *reading.IndexValue, m *gem.Material, sofar finding) finding {
	switch {
	case v.Biaxial && (m.Optic == gem.Uniaxial || m.Optic == gem.Isotropic):
		return said(conflicts, "both edges moved, as in biaxial stones alone")
	case v.SignSure && m.Sign != "" && m.Sign != "+/-" && v.Sign != m.Sign && (m.Optic == gem.Uniaxial || m.Optic == gem.Biaxial):
		if v.Sign == "+" {
			return said(conflicts, "the moving edge shows the optic sign +, its sign is -")
		}
		return said(conflicts, "the moving edge shows the optic sign -, its sign is +")
	}
	return sofar
}
