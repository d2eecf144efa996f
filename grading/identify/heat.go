package identify

import (
	"slices"
	"strconv"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/quantity"
	"stonewrit/grading/stone"
)

// smallForProbe is the size in mm below which a thermal tester may miss a
// diamond (common practice, from memory).
const smallForProbe = 1.5

// thermal judges a thermal tester. One that shows diamond fits diamond and
// moissanite alike.
func thermal(t *stone.Thermal, m *gem.Material, size float64) finding {
	small := size > 0 && size < smallForProbe
	conducts := m.Thermal == "diamond"
	diamond := m.Name == "diamond" || m.Parent == "diamond"
	switch {
	case t.Shows == "metal":
		return said(cannotTell, "the tester showed metal")
	case t.Shows == "unclear":
		return said(cannotTell, "the tester showed unclear")
	case m.Thermal == "":
		return unknown()
	case t.Condition == "touching metal" && t.Shows == "diamond":
		return said(cannotTell, "metal beside the stone conducts heat as well")
	case t.Shows == "not diamond" && conducts && !diamond:
		return said(cannotTell, "testers differ on this material")
	case t.Shows == "not diamond" && diamond && (small || t.Condition != "" && t.Condition != "dry"):
		return said(cannotTell, "the stone is small, cold, wet or in contact with metal")
	case t.Shows == "not diamond" && diamond:
		return said(conflicts, "the tester shows that it is not diamond")
	case t.Shows == "not diamond":
		return said(agrees, "the tester shows that it is not diamond")
	case !conducts && t.Shows == "moissanite":
		return said(conflicts, "the tester shows moissanite; this material does not conduct heat so well")
	case !conducts:
		return said(conflicts, "the tester shows diamond; this material does not conduct heat so well")
	case t.Shows == "moissanite" && diamond:
		return said(cannotTell, "the tester shows moissanite; boron-bearing diamond may do so")
	case t.Shows == "moissanite":
		return said(agrees, "the tester shows moissanite, which fits diamond and moissanite alike")
	}
	return said(agrees, "the tester shows diamond, which fits diamond and moissanite alike")
}

func electrical(t *stone.Electrical, m *gem.Material) finding {
	switch {
	case t.Shows == "unclear":
		return said(cannotTell, "the tester was not clear")
	case m.Electrical == "":
		return unknown()
	case m.Electrical == "either":
		return said(cannotTell, "this material may conduct or not")
	case m.Electrical != t.Shows && m.Electrical == "conductor":
		return said(cannotTell, "testers differ; this material is usually a conductor")
	case m.Electrical != t.Shows:
		return said(cannotTell, "testers differ; this material is usually an insulator")
	case t.Shows == "conductor":
		return said(agrees, "a conductor, as this material is")
	}
	return said(agrees, "an insulator, as this material is")
}

// magnet conflicts only where the table says never.
func magnet(t *stone.Magnet, m *gem.Material) finding {
	switch {
	case m.Magnet == "":
		return unknown()
	case t.Shows == "strong" && m.Magnet == "none":
		return said(conflicts, "strongly attracted, which this material never is")
	case t.Shows == "none" && m.Magnet == "strong":
		return said(conflicts, "not attracted, and this material always is")
	case t.Shows != m.Magnet:
		return said(cannotTell, "attraction of this material varies")
	case t.Shows == "none":
		return said(agrees, "attraction none, as usual for it")
	case t.Shows == "weak":
		return said(agrees, "attraction weak, as usual for it")
	}
	return said(agrees, "attraction strong, as usual for it")
}

// filter judges a colour filter; may tells of a colour that the material may
// show.
func filter(t *stone.Filter, m *gem.Material, may phrase.Line) finding {
	if len(m.Filter) == 0 {
		return unknown()
	}
	if slices.ContainsFunc(m.Filter, func(c string) bool { return strings.EqualFold(c, t.Shows) }) {
		return said(agrees, may)
	}
	return said(cannotTell, "the filter shows the colouring element, not the material")
}

// scratchSlack is how far beyond a reference mineral a scratch still speaks:
// a bound without uncertainty would contradict at the tie.
const scratchSlack = 0.5

// hardness turns scratches into bounds.
func hardness(bounds []scratch, m *gem.Material) finding {
	if !m.Hardness.Known() {
		return unknown()
	}
	f := said(cannotTell, "its hardness lies about that of the reference")
	for _, b := range bounds {
		one := finding{known: true, figure: phrase.Word(b.name), value: b.hardness, low: m.Hardness.Min, high: m.Hardness.Max, tell: b.tell()}
		switch {
		case b.scratched && m.Hardness.Max < b.hardness-scratchSlack, !b.scratched && m.Hardness.Min > b.hardness+scratchSlack:
			one.verdict = conflicts
			return one
		case b.scratched && m.Hardness.Min > b.hardness, !b.scratched && m.Hardness.Max < b.hardness:
			one.verdict = agrees
			f = one
		}
	}
	return f
}

// scratch is one reference: the stone scratches it, or is scratched by it.
type scratch struct {
	name      string
	hardness  float64
	scratched bool // the stone scratches it
}

func (b scratch) tell() func(finding) phrase.Line {
	if b.scratched {
		return tellScratches
	}
	return tellScratched
}

func tellScratches(f finding) phrase.Line {
	return phrase.Say("it scratches %s (%g), and a hardness of %s is published", f.figure, f.value, span(f.low, f.high, 1))
}

func tellScratched(f finding) phrase.Line {
	return phrase.Say("%s (%g) scratches it, and a hardness of %s is published", f.figure, f.value, span(f.low, f.high, 1))
}

// scratches looks the references of a hardness test up.
func scratches(t *stone.Hardness, table *gem.Table) []scratch {
	var list []scratch
	for _, name := range t.Scratches.Items {
		if h, ok := hardnessOf(name, table); ok {
			list = append(list, scratch{name, h, true})
		}
	}
	for _, name := range t.ScratchedBy.Items {
		if h, ok := hardnessOf(name, table); ok {
			list = append(list, scratch{name, h, false})
		}
	}
	return list
}

func hardnessOf(name string, table *gem.Table) (float64, bool) {
	if h, err := strconv.ParseFloat(name, 64); err == nil {
		return h, true
	}
	m, err := table.Find(name)
	if err != nil || !m.Hardness.Known() {
		return 0, false
	}
	return m.Hardness.Mid(), true
}

// strongBirefringence is what makes facet edges look double through a loupe,
// and flashBirefringence what makes a spot reading swing (common practice, from
// memory).
const (
	doublingSeen       = 0.020
	doublingHardlySeen = 0.008
	flashBirefringence = 0.10
)

func doubling(t *stone.Doubling, m *gem.Material) finding {
	switch biref := birefringenceOf(m); {
	case m.Optic == "":
		return unknown()
	case t.Shows != "seen" && t.Sees != "seen":
		return said(cannotTell, "doubling was not seen, which along the axis proves nothing")
	case m.Optic == gem.Isotropic:
		return said(conflicts, "edges are seen double, which a singly refractive stone does not do")
	case biref.Max < doublingHardlySeen:
		return finding{verdict: conflicts, known: true, value: biref.Max, tell: tellSingle}
	case biref.Max >= doublingSeen && doubly(m):
		return said(agrees, "edges are seen double, as its birefringence makes them")
	}
	return said(cannotTell, "edges are seen double; in a large stone its birefringence may do that")
}

func tellSingle(f finding) phrase.Line {
	return phrase.Say("edges are seen double; its birefringence is %s at the most", phrase.Figure(quantity.Decimal(f.value, 3)))
}

func carbonateFlash(t *stone.CarbonateFlash, m *gem.Material) finding {
	biref := birefringenceOf(m)
	switch {
	case !m.Low.Known():
		return unknown()
	case t.Shows == "not seen" || len(t.Readings.Items) < 2 && t.Shows != "seen":
		return said(cannotTell, "no swing was seen, which proves nothing")
	case biref.Max >= flashBirefringence:
		return said(agrees, "the spot reading swings, as its birefringence makes it")
	case biref.Max < flashBirefringence/2:
		return said(conflicts, "the spot reading swings between two indices, and its birefringence is too small for that")
	}
	return said(cannotTell, "the spot reading swings")
}
