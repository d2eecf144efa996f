package identify

import (
	"math"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// Limits within which a quoted report is taken to be of this stone.
const (
	sameWeight = 0.02 // ct
	sameSize   = 0.1  // mm
)

// matches tells whether a quoted report was matched with the stone in hand, and
// why not. The commonest fraud is a good paper with another stone.
func matches(t *stone.LaboratoryReport, s *stone.Stone) (ok bool, why phrase.Line) {
	switch {
	case t.States == nil || t.States.Words != "":
		return false, "what it states is prose, which is quoted and proves nothing"
	case matchedFigures(t) < 2:
		return false, "fewer than two things of it were compared with the stone in hand"
	}
	if stated, here := t.States.Weight, s.Weight.Measured; stated.Given() && here.Given() && math.Abs(stated.Float()-here.Float()) > sameWeight+atEdge {
		return false, phrase.Say("it states %s, and the stone in hand weighs %s", phrase.Figure(stated.String()), phrase.Figure(here.String()))
	}
	for _, pair := range []struct {
		form         phrase.Line
		stated, here stone.Length
	}{
		{"it states a length of %s, and the stone in hand has %s", t.States.Length, first(s.Size.Length)},
		{"it states a width of %s, and the stone in hand has %s", t.States.Width, first(s.Size.Width)},
		{"it states a depth of %s, and the stone in hand has %s", t.States.Depth, first(s.Size.Depth)},
	} {
		if pair.stated.Given() && pair.here.Given() && math.Abs(pair.stated.Float()-pair.here.Float()) > sameSize+atEdge {
			return false, phrase.Say(pair.form, phrase.Figure(pair.stated.String()), phrase.Figure(pair.here.String()))
		}
	}
	return true, ""
}

// matchedFigures counts what was compared and is stated by the report.
func matchedFigures(t *stone.LaboratoryReport) int {
	n := 0
	for _, what := range t.Matched.Items {
		switch what {
		case "weight":
			if !t.States.Weight.Given() {
				continue
			}
		case "size":
			if !t.States.Length.Given() && !t.States.Diameter.Given {
				continue
			}
		}
		n++
	}
	return n
}

func first(l stone.List[stone.Length]) stone.Length {
	if len(l.Items) == 0 {
		return stone.Length{}
	}
	return l.Items[0]
}

// report makes a quoted report ready as evidence of a species.
func (d *Identifier) report(t *stone.LaboratoryReport, c *Case) evidence {
	ok, why := matches(t, c.Stone)
	e := evidence{kind: KindReport, value: phrase.Say("report of %s", t.Issuer)}
	if t.Number != "" {
		e.value = phrase.Say("report of %s, number %s", t.Issuer, t.Number)
	}
	var stated *gem.Material
	var states phrase.Line
	if ok && t.States.Species != "" {
		states = phrase.Say("according to %s it is %s", t.Issuer, phrase.Word(t.States.Species))
		stated, _ = d.table.Find(t.States.Species)
		if stated != nil {
			stated = d.table.SpeciesOf(stated)
		}
	}
	e.judge = func(m *gem.Material) finding {
		switch {
		case !ok:
			return said(cannotTell, why)
		case stated == nil:
			return said(cannotTell, "it states no species")
		case d.table.IsWithin(m, stated) || d.table.IsWithin(stated, m):
			return said(agrees, states)
		}
		return said(conflicts, states)
	}
	return e
}

// matchedReports are the reports that count.
func matchedReports(s *stone.Stone) []*stone.LaboratoryReport {
	var list []*stone.LaboratoryReport
	for _, any := range s.Tests {
		t, ok := any.Test.(*stone.LaboratoryReport)
		if !ok || t.SetAside != "" {
			continue
		}
		if good, _ := matches(t, s); good {
			list = append(list, t)
		}
	}
	return list
}
