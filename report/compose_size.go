package report

import (
	"math"
	"strconv"
	"strings"

	"stonewrit/grading/quantity"
	"stonewrit/grading/stone"
	"stonewrit/templates"
)

// size is outline, cut and dimensions.
func (c *composer) size() templates.Size {
	z := c.s.Size
	out := templates.Size{Subject: c.subject, Shape: z.Shape, Cut: z.Cut, InSetting: z.InSetting, Hidden: z.Hidden.Items}
	if !c.subject.Pearl {
		out.Form = c.line("size.form", out)
	}
	for _, m := range []struct {
		name string
		list stone.List[stone.Length]
	}{{"diameter", z.Diameter}, {"length", z.Length}, {"width", z.Width}, {"depth", z.Depth}} {
		if low, high := c.ends(m.list); low != "" {
			out.Measures = append(out.Measures, c.line("measure."+m.name, templates.Measure{Low: low, High: high}))
		}
	}
	low, high := c.ends(c.sizes())
	out.Sizes = low
	if high != "" {
		out.Sizes = c.line("span", templates.Span{Low: low, High: high})
	}
	if p := c.s.Quality.Pearl; p != nil {
		out.Strand = c.figure(p.Length)
	}
	return out
}

// sizes is smallest and largest of a strand.
func (c *composer) sizes() stone.List[stone.Length] {
	if p := c.s.Quality.Pearl; p != nil && len(c.s.Size.Sizes.Items) == 0 && len(p.Sizes.Items) > 0 {
		return p.Sizes
	}
	if c.subject.Pearl && len(c.s.Size.Sizes.Items) == 0 {
		return c.s.Size.Diameter
	}
	return c.s.Size.Sizes
}

// ends is the least and the greatest of a list, the second empty where there is
// one alone.
func (c *composer) ends(list stone.List[stone.Length]) (low, high string) {
	var least, most stone.Length
	for i, l := range list.Items {
		if i == 0 || l.Float() < least.Float() {
			least = l
		}
		if i == 0 || l.Float() > most.Float() {
			most = l
		}
	}
	if !least.Given() {
		return "", ""
	}
	if least.Float() == most.Float() {
		return c.length(least), ""
	}
	return c.length(least), c.length(most)
}

func (c *composer) length(l stone.Length) string { return c.figure(l.Digits() + " mm") }

// marginSize is the first dimension with the others as its note.
func (c *composer) marginSize() (string, Text) {
	z := c.s.Size
	var rest []string
	for _, m := range []struct {
		name string
		list stone.List[stone.Length]
	}{{"width", z.Width}, {"depth", z.Depth}} {
		if low, high := c.ends(m.list); low != "" {
			rest = append(rest, c.line("measure."+m.name, templates.Measure{Low: low, High: high}))
		}
	}
	switch {
	case len(c.sizes().Items) > 0:
		return c.ofEnds(c.sizes()), c.say("margin.sizes", templates.None{})
	case len(z.Diameter.Items) > 0:
		return c.ofEnds(z.Diameter), c.say("margin.diameter", templates.Items{Items: rest})
	case len(z.Length.Items) > 0:
		return c.ofEnds(z.Length), c.say("margin.length", templates.Items{Items: rest})
	}
	return "", nil
}

func (c *composer) ofEnds(list stone.List[stone.Length]) string {
	low, high := c.ends(list)
	if high == "" {
		return low
	}
	return c.line("span", templates.Span{Low: withoutUnit(low), High: high})
}

// withoutUnit is a figure without what stands behind its no-break space.
func withoutUnit(s string) string {
	number, _, _ := strings.Cut(s, "\u00a0")
	return number
}

// weight is what is known of the weight.
func (c *composer) weight() templates.Weight {
	e, w := c.e.Weight, templates.Weight{Subject: c.subject, Mounted: c.s.Mounted}
	if m := c.s.Weight.Measured; m.Given() {
		digits, trade := c.weighed()
		w.Measured, w.Before = c.carats(digits), c.s.Weight.When == "before setting"
		w.Grams = c.figure(strconv.FormatFloat(float64(m.V.Grams()), 'f', m.Decimals+1, 64) + " g")
		w.ExceptNine = c.b.Rounding == string(quantity.DownExceptNine)
		if trade != digits {
			w.Trade = c.carats(trade)
		}
	}
	if s := e.Estimate; s != nil {
		chosen := s.Chosen
		w.Estimated, w.Low, w.High = c.caratsOf(chosen.Carats.Value, 2), c.caratsOf(chosen.Low, 2), c.caratsOf(chosen.High, 2)
		w.Method, w.Basis = c.w.Term(string(chosen.Method)), strings.ReplaceAll(c.prose(chosen.Basis), " x ", " × ")
		if s.Count > 1 {
			w.Each = c.caratsOf(s.Each.Value, 3)
		}
		if e.Measured > 0 {
			u := math.Hypot(chosen.Carats.U, e.MeasuredU)
			away := math.Abs(e.Measured - chosen.Carats.Value)
			w.Agrees, w.Differs = away <= 2*u, away > 3*u
		}
	}
	if s := c.s.Weight.Stated; s.Given() {
		w.Stated, w.StatedBy = c.carats(s.Digits()), c.s.Weight.By
	}
	w.None = c.prose(e.NoEstimate)
	return w
}

// weighed is the measured weight as read, and as the trade states it by the
// bench's rule of rounding, in digits.
func (c *composer) weighed() (read, trade string) {
	trade, _ = c.e.Printed()
	return c.s.Weight.Measured.Digits(), trade
}

func (c *composer) carats(digits string) string { return c.figure(digits + " ct") }

func (c *composer) caratsOf(v float64, decimals int) string {
	return c.carats(strconv.FormatFloat(v, 'f', decimals, 64))
}

func oneLine(s string) string { return strings.Join(lines(s), ", ") }
