package identify

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"stonewrit/grading/gem"
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
	case t.Shows == "metal" || t.Shows == "unclear":
		return said(CannotTell, "the tester showed "+t.Shows)
	case m.Thermal == "":
		return unknown()
	case t.Condition == "touching metal" && t.Shows == "diamond":
		return said(CannotTell, "metal beside the stone conducts heat as well")
	case t.Shows == "not diamond" && conducts && !diamond:
		return said(CannotTell, "testers differ on this material")
	case t.Shows == "not diamond" && diamond && (small || t.Condition != "" && t.Condition != "dry"):
		return said(CannotTell, "the stone is small, cold, wet or in contact with metal")
	case t.Shows == "not diamond" && diamond:
		return said(Conflicts, "the tester shows that it is not diamond")
	case t.Shows == "not diamond":
		return said(Agrees, "the tester shows that it is not diamond")
	case !conducts:
		return said(Conflicts, "the tester shows "+t.Shows+"; this material does not conduct heat so well")
	case t.Shows == "moissanite" && diamond:
		return said(CannotTell, "the tester shows moissanite; boron-bearing diamond may do so")
	}
	return said(Agrees, "the tester shows "+t.Shows+", which fits diamond and moissanite alike")
}

func electrical(t *stone.Electrical, m *gem.Material) finding {
	switch {
	case t.Shows == "unclear":
		return said(CannotTell, "the tester was not clear")
	case m.Electrical == "":
		return unknown()
	case m.Electrical == "either":
		return said(CannotTell, "this material may conduct or not")
	case m.Electrical == t.Shows:
		return said(Agrees, "an "+t.Shows+", as this material is")
	}
	return said(CannotTell, "testers differ; this material is usually an "+m.Electrical)
}

// magnet conflicts only where the table says never.
func magnet(t *stone.Magnet, m *gem.Material) finding {
	switch {
	case m.Magnet == "":
		return unknown()
	case t.Shows == "strong" && m.Magnet == "none":
		return said(Conflicts, "strongly attracted, which this material never is")
	case t.Shows == "none" && m.Magnet == "strong":
		return said(Conflicts, "not attracted, and this material always is")
	case t.Shows == m.Magnet:
		return said(Agrees, "attraction "+t.Shows+", as usual for it")
	}
	return said(CannotTell, "attraction of this material varies")
}

func filter(t *stone.Filter, m *gem.Material) finding {
	if len(m.Filter) == 0 {
		return unknown()
	}
	if slices.ContainsFunc(m.Filter, func(c string) bool { return strings.EqualFold(c, t.Shows) }) {
		return said(Agrees, t.Shows+" through the filter, as this material may be")
	}
	return said(CannotTell, "the filter shows the colouring element, not the material")
}

// scratchSlack is how far beyond a reference mineral a scratch still speaks:
// a bound without uncertainty would contradict at the tie.
const scratchSlack = 0.5

// hardness turns scratches into bounds.
func hardness(t *stone.Hardness, m *gem.Material, table *gem.Table) finding {
	if !m.Hardness.Known() {
		return unknown()
	}
	f := said(CannotTell, "its hardness lies about that of the reference")
	for _, name := range t.Scratches.Items {
		h, ok := hardnessOf(name, table)
		switch {
		case ok && m.Hardness.Max < h-scratchSlack:
			return said(Conflicts, fmt.Sprintf("it scratches %s (%g), and its hardness is %s at the most", name, h, decimal(m.Hardness.Max, 1)))
		case ok && m.Hardness.Min > h:
			f = said(Agrees, fmt.Sprintf("it scratches %s (%g), as a hardness of %s does", name, h, span(m.Hardness.Min, m.Hardness.Max, 1)))
		}
	}
	for _, name := range t.ScratchedBy.Items {
		h, ok := hardnessOf(name, table)
		switch {
		case ok && m.Hardness.Min > h+scratchSlack:
			return said(Conflicts, fmt.Sprintf("%s (%g) scratches it, and its hardness is %s at the least", name, h, decimal(m.Hardness.Min, 1)))
		case ok && m.Hardness.Max < h:
			f = said(Agrees, fmt.Sprintf("%s (%g) scratches it, as expected of a hardness of %s", name, h, span(m.Hardness.Min, m.Hardness.Max, 1)))
		}
	}
	return f
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
		return said(CannotTell, "doubling was not seen, which along the axis proves nothing")
	case m.Optic == gem.Isotropic:
		return said(Conflicts, "edges are seen double, which a singly refractive stone does not do")
	case biref.Max < doublingHardlySeen:
		return said(Conflicts, fmt.Sprintf("edges are seen double; its birefringence is %s at the most", decimal(biref.Max, 3)))
	case biref.Max >= doublingSeen && doubly(m):
		return said(Agrees, "edges are seen double, as its birefringence makes them")
	}
	return said(CannotTell, "edges are seen double; in a large stone its birefringence may do that")
}

func carbonateFlash(t *stone.CarbonateFlash, m *gem.Material) finding {
	biref := gem.Range{Max: m.High.Max - m.Low.Min}
	switch {
	case !m.Low.Known():
		return unknown()
	case t.Shows == "not seen" || len(t.Readings.Items) < 2 && t.Shows != "seen":
		return said(CannotTell, "no swing was seen, which proves nothing")
	case biref.Max >= flashBirefringence:
		return said(Agrees, "the spot reading swings, as its birefringence makes it")
	case biref.Max < flashBirefringence/2:
		return said(Conflicts, "the spot reading swings between two indices, and its birefringence is too small for that")
	}
	return said(CannotTell, "the spot reading swings")
}
