package identify

import (
	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// expected is what the table says of the opinion for this kind of test.
func (j *judgement) expected(e evidence) phrase.Line {
	rows := j.opinion.rows
	if layer := j.layerAt(e.place); layer != nil {
		rows = j.table.Leaves(layer)
	}
	if len(rows) == 0 {
		return ""
	}
	wide := rows
	if n := j.opinion.Narrow; n != nil && n.Low.Known() && n.SG.Known() {
		rows = []*gem.Material{n}
	}
	var low, high, biref, sg gem.Range
	var optics []phrase.Line
	for _, m := range rows {
		low, high, sg, biref = low.Union(m.Low), high.Union(m.High), sg.Union(m.SG), biref.Union(m.Birefringence)
	}
	for _, m := range wide {
		if m.Optic != "" {
			optics = append(optics, opticWords(m))
		}
	}
	switch e.kind {
	case KindIndex:
		if !low.Known() {
			return "not in the table"
		}
		text := span(low.Min, high.Max, 3)
		if biref.Known() && biref.Max > 0 {
			text = phrase.Say("%s and %s, birefringence %s", span(low.Min, low.Max, 3), span(high.Min, high.Max, 3), span(biref.Min, biref.Max, 3))
		}
		return text
	case KindDensity:
		if !sg.Known() {
			return "not in the table"
		}
		return span(sg.Min, sg.Max, 2)
	case KindOptic:
		return phrase.Join("%s or %s", unique(optics)...)
	case KindOther:
		return expectedOther(e.test, rows[0])
	}
	return ""
}

func opticWords(m *gem.Material) phrase.Line {
	switch m.Optic {
	case gem.Isotropic:
		return "singly refractive"
	case gem.Aggregate:
		return "fine aggregate"
	case gem.Opaque:
		return "opaque"
	}
	switch uniaxial := m.Optic == gem.Uniaxial; {
	case uniaxial && m.Sign == "+":
		return "uniaxial positive"
	case uniaxial && m.Sign == "-":
		return "uniaxial negative"
	case uniaxial && m.Sign == "+/-":
		return "uniaxial of either sign"
	case m.Sign == "+":
		return "biaxial positive"
	case m.Sign == "-":
		return "biaxial negative"
	case m.Sign == "+/-":
		return "biaxial of either sign"
	}
	return word(string(m.Optic))
}

func expectedOther(t stone.Test, m *gem.Material) phrase.Line {
	switch t.(type) {
	case *stone.Hardness:
		if m.Hardness.Known() {
			return phrase.Say("hardness %s", span(m.Hardness.Min, m.Hardness.Max, 1))
		}
	case *stone.Thermal:
		return word(m.Thermal)
	case *stone.Electrical:
		return word(m.Electrical)
	case *stone.Magnet:
		return word(m.Magnet)
	}
	return ""
}
