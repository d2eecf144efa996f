package identify

import (
	"fmt"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
)

// expected is what the table says of the opinion for this kind of test.
func (j *judgement) expected(e evidence) string {
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
	var optics []string
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
			text = fmt.Sprintf("%s and %s, birefringence %s", span(low.Min, low.Max, 3), span(high.Min, high.Max, 3), span(biref.Min, biref.Max, 3))
		}
		return text
	case KindDensity:
		if !sg.Known() {
			return "not in the table"
		}
		return span(sg.Min, sg.Max, 2)
	case KindOptic:
		return strings.Join(unique(optics), " or ")
	case KindOther:
		return expectedOther(e.test, rows[0])
	}
	return ""
}

func opticWords(m *gem.Material) string {
	switch m.Optic {
	case gem.Isotropic:
		return "singly refractive"
	case gem.Aggregate:
		return "fine aggregate"
	case gem.Opaque:
		return "opaque"
	}
	if m.Sign != "" {
		return string(m.Optic) + " " + signWord(m.Sign)
	}
	return string(m.Optic)
}

// signWord is the optic sign in a word.
func signWord(sign string) string {
	switch sign {
	case "+":
		return "positive"
	case "-":
		return "negative"
	case "+/-":
		return "of either sign"
	}
	return ""
}

func expectedOther(t stone.Test, m *gem.Material) string {
	switch t.(type) {
	case *stone.Hardness:
		if m.Hardness.Known() {
			return "hardness " + span(m.Hardness.Min, m.Hardness.Max, 1)
		}
	case *stone.Thermal:
		return m.Thermal
	case *stone.Electrical:
		return m.Electrical
	case *stone.Magnet:
		return m.Magnet
	}
	return ""
}
