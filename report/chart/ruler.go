package chart

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/report"
)

// mostRivals is how many rivals a ruler shows, as many as the text names.
const mostRivals = 8

// ruler is a scale with the stone's marks standing on it and the ranges of
// materials hung below. Its upper edge lies at y = 0 while it is drawn.
type ruler struct {
	canvas
	title     string
	least     float64 // that it spans
	decimals  int     // of its figures, at least
	marks     []mark
	pairs     []pair
	materials []Material

	scale scale
	rows  []Material // that are drawn
	more  int        // rivals that are not
	none  []string   // materials without a figure
	drops []drop     // lines from the marks through the rows
}

// mark is a value on the ruler, or the end of an open range.
type mark struct {
	at       float64
	expanded float64 // uncertainty, k = 2
	bound    int     // +1 somewhere above at, -1 below; 0 for a value
	text     string
	side     int // where its text is wanted: -1 left, +1 right
	level    int // of its bracket above the ruler
}

// pair is the distance of two marks, with its figure.
type pair struct {
	low, high float64
	text      string
}

// drop is a thin line down from a mark.
type drop struct {
	x   pt
	pen report.Pen
}

// Heights, from the upper edge of the ruler, which is at 0; up is negative.
const (
	firstBracket pt = -9
	levelHigh    pt = 8
	majorTick    pt = 6.5
	halfTick     pt = 5
	minorTick    pt = 3
	figureLine   pt = 15.5 // baseline of the figures
	rowsBegin    pt = 28
	rowHigh      pt = 12.4
	beside       pt = 5 // from the end of a line to its name
)

// drawn is the figure. Names so long that it grows too high leave room for
// fewer rivals.
func (r *ruler) drawn(caption, alt string, said []string) report.Figure {
	for most := mostRivals; ; most-- {
		try := *r
		try.draw(most)
		f := try.figure(report.FigureWidth, caption, try.alt(alt, said))
		if f.Height <= report.FigureHeight || most == 0 {
			return f
		}
	}
}

func (r *ruler) draw(most int) {
	r.marks = slices.Clone(r.marks) // they are given their levels
	r.choose(most)
	r.lay()
	r.graduation()
	r.standing()
	bottom := r.hanging()
	r.dropLines(bottom)
	r.headed(r.title)
}

// choose parts the materials into rows, those left over and those without a
// figure.
func (r *ruler) choose(most int) {
	rivals := 0
	for _, m := range r.materials {
		if !m.Own {
			if rivals++; rivals > most {
				r.more++
				continue
			}
		}
		m.Ranges = known(m.Ranges)
		if len(m.Ranges) == 0 {
			r.none = append(r.none, m.Name)
			continue
		}
		r.rows = append(r.rows, m)
	}
}

// known leaves out ranges that are none, and the second of two that are alike.
func known(list []gem.Range) []gem.Range {
	var out []gem.Range
	for _, r := range list {
		sound := r.Known() && r.Min <= r.Max && r.Min > 0 && r.Max < 100
		if sound && (len(out) == 0 || out[len(out)-1] != r) {
			out = append(out, r)
		}
	}
	return out
}

// lay finds the stretch of figures that the ruler shows: all marks with their
// uncertainty, the whole range of what the stone is said to be, and of rivals
// what lies near. Ranges that go on beyond it end in an arrow.
func (r *ruler) lay() {
	low, high := math.Inf(1), math.Inf(-1)
	take := func(a, b float64) { low, high = min(low, a), max(high, b) }
	for _, m := range r.marks {
		take(m.at-m.expanded, m.at+m.expanded)
	}
	for _, m := range r.rows {
		if m.Own {
			take(ends(m.Ranges))
		}
	}
	span := max(high-low, r.least)
	nearLow, nearHigh := low-0.5*span, high+0.5*span
	for _, m := range r.rows {
		for _, end := range flat(ends(m.Ranges)) {
			if end >= nearLow && end <= nearHigh {
				take(end, end)
			}
		}
	}
	for _, m := range r.marks { // room for arrows
		switch m.bound {
		case +1:
			take(m.at, m.at+0.3*span)
		case -1:
			take(m.at-0.3*span, m.at)
		}
	}
	pad := max(0.04*(high-low), (r.least-(high-low))/2)
	r.scale = scale{low: low - pad, high: high + pad, from: 0, to: report.FigureWidth}
}

func flat(a, b float64) []float64 { return []float64{a, b} }

// graduation draws the ruler itself. Its ends move out to the next tick, and in
// from the figure's sides by half a figure.
func (r *ruler) graduation() {
	g := graduate(r.scale, 44, r.decimals)
	minor := g.step / float64(g.parts)
	r.scale.low = math.Floor(r.scale.low/minor+1e-6) * minor
	r.scale.high = math.Ceil(r.scale.high/minor-1e-6) * minor
	inset := max(r.width(r.Words.number(r.scale.high, g.decimals)), r.width(r.Words.number(r.scale.low, g.decimals)))/2 + 1
	r.scale.from, r.scale.to = inset, report.FigureWidth-inset
	r.line(r.scale.from, 0, r.scale.to, 0, report.Pen{Width: report.Thin})
	for _, t := range g.ticks(r.scale) {
		x, long := r.scale.at(t.at), minorTick
		switch {
		case t.major:
			long = majorTick
			r.label(x, figureLine, black(r.Words.number(t.at, g.decimals)), report.AnchorMiddle)
		case t.half:
			long = halfTick
		}
		r.line(x, 0, x, long, hairline())
	}
}

// hanging draws the rows and returns where they end.
func (r *ruler) hanging() pt {
	y := rowsBegin
	for _, m := range r.rows {
		y += r.row(m, y) + rowHigh
	}
	if r.more > 0 && r.Words.More != "" {
		y += r.note(fill(r.Words.More, "count", strconv.Itoa(r.more)), y)
	}
	if len(r.none) > 0 && r.Words.Unknown != "" {
		y += r.note(fill(r.Words.Unknown, "names", strings.Join(r.none, ", ")), y)
	}
	if y == rowsBegin {
		return figureLine
	}
	return y - rowHigh/2
}

// note sets a text over the whole width, its first line about y, and returns
// the height taken.
func (r *ruler) note(text string, y pt) pt {
	high := pt(0)
	for _, line := range r.wrapped(text, report.FigureWidth) {
		r.label(0, y+high, faded(line), report.AnchorStartCentred)
		high += lineHigh + 1.4
	}
	return high + 2
}

// dropLines lead from the marks down through the rows; they give way to labels.
func (r *ruler) dropLines(bottom pt) {
	top := figureLine + descent + 1.5
	for _, d := range r.drops {
		y := top
		for _, b := range r.crossed(d.x, top, bottom) {
			if b.top > y {
				r.line(d.x, y, d.x, b.top, d.pen)
			}
			y = max(y, b.bottom)
		}
		if y < bottom {
			r.line(d.x, y, d.x, bottom, d.pen)
		}
	}
}
