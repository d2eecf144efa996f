package weight

import (
	"math"
	"strconv"

	"stonewrit/grading/phrase"
)

// A repair is one slip undone: the stone as it would be without it.
type repair struct {
	dimension string
	slip      Slip
	stone     stone
	says      phrase.Line
}

// explain looks for one slip that, undone, leaves no contradiction. Simple slips
// are tried before a misread digit, since so many digits can be changed.
func (e *Estimator) explain(s stone, found []Finding) (Finding, bool) {
	if found[0].Slip == Missing {
		return Finding{}, false
	}
	tries := [][]repair{s.swaps(), s.wrongRows(), s.shifts()}
	if s.misfit() > plainMisfit {
		tries = append(tries, s.digits())
	}
	for _, repairs := range tries {
		if good := e.mending(repairs); len(good) > 0 {
			says := good[0].says
			for _, r := range good[1:] {
				says = phrase.Say("%s or %s", says, r.says)
			}
			return Finding{good[0].dimension, good[0].slip, phrase.Semicolons(found[0].Message, says)}, true
		}
	}
	return Finding{}, false
}

// mending keeps the repairs that leave no contradiction, and of these the ones
// with the least misfit, which may be several: without a weight, a diameter
// twice too great and a depth half too small look alike.
func (e *Estimator) mending(repairs []repair) []repair {
	var good []repair
	least := math.Inf(1)
	for _, r := range repairs {
		if !e.consistent(r.stone) {
			continue
		}
		m := r.stone.misfit()
		switch {
		case m < least-alike:
			good, least = []repair{r}, m
		case m <= least+alike:
			good = append(good, r)
		}
	}
	return good
}

// alike is the difference of misfits, in per cent, below which two repairs are
// equally good.
const alike = 0.05

// plainMisfit is the misfit, in per cent, from which a digit is looked for.
// Below it some digit of some figure would always do.
const plainMisfit = 2.5

// misfit tells repairs of one kind apart: how far per cents and roundness are
// off, in per cent.
func (s stone) misfit() float64 {
	var sum float64
	if s.TotalDepth.Given() && s.Depth.Given() {
		sum += math.Abs(s.depthPercent().Value - s.TotalDepth.Value)
	}
	if s.Shape == "round" && s.Width.Given() {
		sum += 100 * math.Abs(s.Length.Value-s.Width.Value) / s.meanDiameter()
	}
	return sum
}

// swaps exchanges two lengths.
func (s stone) swaps() []repair {
	a, b, c := s, s, s
	a.Length, a.Width = s.Width, s.Length
	b.Width, b.Depth = s.Depth, s.Width
	c.Length, c.Depth = s.Depth, s.Length
	return []repair{
		{"length", Swapped, a, "length and width swapped?"},
		{"depth", Swapped, b, "width and depth swapped?"},
		{"depth", Swapped, c, "length and depth swapped?"},
	}
}

// wrongRows takes a figure for that of a neighbouring row.
func (s stone) wrongRows() []repair {
	var out []repair
	ref := s.reference()
	if s.TotalDepth.Given() && s.Depth.Given() {
		r := s
		r.Depth = Measure{s.TotalDepth.Value * ref / 100, s.Depth.U}
		would := inMM(r.Depth.Value)
		switch {
		case s.carats.Given() && math.Abs(s.Depth.Value-s.carats.Value) < 0.005:
			out = append(out, repair{"depth", WrongRow, r, phrase.Say("the weight written for the depth? %s would be %s", pc(s.TotalDepth), would)})
		case math.Abs(s.Depth.Value/ref-1) < 0.02:
			out = append(out, repair{"depth", WrongRow, r, phrase.Say("a diameter written for the depth? %s would be %s", pc(s.TotalDepth), would)})
		}
		t := s
		t.TotalDepth = Measure{}
		if v := s.TotalDepth.Value; v >= 38 && v <= 50 && s.Depth.Value/ref > 0.52 {
			out = append(out, repair{"total_depth", WrongRow, t, "the pavilion depth written for the total depth?"})
		}
		if s.Table.Given() && math.Abs(s.TotalDepth.Value-s.Table.Value) < 0.05 {
			out = append(out, repair{"total_depth", WrongRow, t, "the table written for the total depth?"})
		}
	}
	if s.Shape == "round" && s.Width.Given() {
		r := s
		r.Width, r.Depth = s.Length, s.Width
		out = append(out, repair{"width", WrongRow, r, phrase.Say("%s, the depth, written for the second diameter?", inMM(s.Width.Value))})
	}
	return out
}

// shifts halves or doubles, and moves decimal points.
func (s stone) shifts() []repair {
	var out []repair
	for _, try := range []struct {
		slip    Slip
		factors []float64
		names   []string
	}{
		{HalfOrDouble, []float64{2, 0.5}, []string{"diameter", "length", "width", "depth", "weight"}},
		{DecimalShift, []float64{10, 0.1}, []string{"length", "width", "depth", "diameter", "total_depth", "weight"}},
	} {
		for _, name := range try.names {
			for _, by := range try.factors {
				if r, ok := s.scaled(name, by); ok {
					out = append(out, repair{name, try.slip, r, phrase.Say("%s?", r.figure(name))})
				}
			}
		}
	}
	return out
}

// scaled multiplies one figure, or both diameters.
func (s stone) scaled(name string, by float64) (stone, bool) {
	r := s
	if name == "diameter" {
		r.Length.Value *= by
		r.Width.Value *= by
		return r, s.Width.Given()
	}
	p := r.place(name)
	if !p.Given() {
		return r, false
	}
	p.Value *= by
	return r, true
}

// place is where a figure is kept.
func (s *stone) place(name string) *Measure {
	switch name {
	case "length", "diameter":
		return &s.Length
	case "width":
		return &s.Width
	case "depth":
		return &s.Depth
	case "total_depth":
		return &s.TotalDepth
	}
	return &s.carats
}

// figure prints a figure with its name and unit.
func (s stone) figure(name string) phrase.Line {
	v := s.place(name).Value
	switch name {
	case "total_depth":
		return phrase.Say("total depth %.1f %%", v)
	case "weight":
		return phrase.Say("weight %.2f ct", v)
	case "diameter":
		return phrase.Say("diameters %s and %s", inMM(v), inMM(s.Width.Value))
	}
	return phrase.Say("%s %s", phrase.Word(s.key(name)), inMM(v))
}

// key is the name of a dimension in the stone file: a round stone has diameters
// in place of length and width.
func (s stone) key(name string) string {
	if s.Shape == "round" && (name == "length" || name == "width") {
		return "diameter"
	}
	return name
}

// digits changes one of the first two digits of a figure; the third is within
// reach of the gauge.
func (s stone) digits() []repair {
	var out []repair
	for _, name := range []string{"length", "width", "depth", "total_depth"} {
		v := s.place(name)
		if !v.Given() {
			continue
		}
		text := []byte(strconv.FormatFloat(v.Value, 'f', 2, 64))
		changed := 0
		for i, c := range text {
			if c < '0' || c > '9' || changed == 2 {
				continue
			}
			changed++
			for digit := byte('0'); digit <= '9'; digit++ {
				if digit == c {
					continue
				}
				text[i] = digit
				r := s
				if v, err := strconv.ParseFloat(string(text), 64); err == nil && v > 0 {
					r.place(name).Value = v
					out = append(out, repair{name, DigitSlip, r, phrase.Say("%s?", r.figure(name))})
				}
			}
			text[i] = c
		}
	}
	return out
}
