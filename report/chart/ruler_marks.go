package chart

import (
	"cmp"
	"slices"

	"stonewrit/report"
)

// standing draws what stands on the ruler: brackets, ticks, distances, figures.
func (r *ruler) standing() {
	top := r.levels()
	for i := range r.marks {
		if m := &r.marks[i]; m.bound == 0 {
			r.bracket(m)
		} else {
			r.arrow(m)
		}
	}
	for _, p := range r.pairs {
		r.distance(p, bracketAt(top)-10)
	}
	for _, m := range r.marks {
		r.name(m)
	}
}

func bracketAt(level int) pt { return firstBracket - pt(level)*levelHigh }

// levels puts each bracket on the lowest level where it clears the others, and
// returns the highest level used.
func (r *ruler) levels() int {
	var used [][]box
	for i := range r.marks {
		m := &r.marks[i]
		left, right := r.reach(*m)
		b := box{left - 2, 0, right + 2, 1}
		if k := r.closing(*m); k >= 0 && k < i {
			m.level = r.marks[k].level
			continue
		}
		for m.level = 0; m.level < len(used) && slices.ContainsFunc(used[m.level], b.overlaps); {
			m.level++
		}
		if m.level == len(used) {
			used = append(used, nil)
		}
		used[m.level] = append(used[m.level], b)
	}
	return len(used) - 1
}

// reach is how far a bracket or an arrow extends. An arrow ends at a mark that
// bounds the range from the other side, or with the ruler.
func (r *ruler) reach(m mark) (left, right pt) {
	x := r.scale.at(m.at)
	if m.bound == 0 {
		return r.scale.at(m.at - m.expanded), r.scale.at(m.at + m.expanded)
	}
	left, right = r.scale.from, x
	if m.bound > 0 {
		left, right = x, r.scale.to
	}
	if k := r.closing(m); k >= 0 {
		at := r.scale.at(r.marks[k].at)
		left, right = min(x, at), max(x, at)
	}
	return left, right
}

// closing is the mark that bounds an open range from the other side, -1 for
// none.
func (r *ruler) closing(m mark) int {
	return slices.IndexFunc(r.marks, func(o mark) bool {
		return m.bound != 0 && o.bound == -m.bound && float64(m.bound)*(o.at-m.at) > 0
	})
}

// bracket draws a tick under a bracket that spans the expanded uncertainty.
func (r *ruler) bracket(m *mark) {
	x, y := r.scale.at(m.at), bracketAt(m.level)
	left, right := r.reach(*m)
	if m.expanded > 0 {
		r.add(report.Polyline{Points: []xy{{X: left, Y: y + 3}, {X: left, Y: y}, {X: right, Y: y}, {X: right, Y: y + 3}}, Pen: report.Pen{Width: report.Thin}})
	}
	r.line(x, 0, x, y-2.5, report.Pen{Width: report.Thick})
	r.wall = append(r.wall, box{left, y - 2.5, right, y + 3}, box{x - 1, y, x + 1, 0})
	r.drops = append(r.drops, drop{x, guide()})
}

// arrow draws the end of an open range and an arrow along it. Where the range
// is closed by another mark, the two arrows lie over each other.
func (r *ruler) arrow(m *mark) {
	x, y := r.scale.at(m.at), bracketAt(m.level)
	left, right := r.reach(*m)
	tip, pen := xy{X: right, Y: y}, report.Pen{Width: report.Thin}
	if m.bound < 0 {
		tip.X = left
	}
	r.line(x, 0, x, y-2.5, report.Pen{Width: report.Thick})
	if right-left > 10 {
		r.line(x, y, tip.X-pt(m.bound)*3, y, pen)
		r.add(arrowhead(tip, float64(m.bound), 0, pen))
	} else {
		r.line(left, y, right, y, pen)
	}
	r.wall = append(r.wall, box{left, y - 1.5, right, y + 1.5}, box{x - 1, y - 2.5, x + 1, 0})
	r.drops = append(r.drops, drop{x, report.Pen{Width: report.Hairline, Grey: quiet, Dash: []pt{2, 2}}})
}

// distance draws the distance of two marks like a workshop's dimension, at y or
// as much higher as its figure needs.
func (r *ruler) distance(p pair, y pt) {
	left, right := r.scale.at(p.low), r.scale.at(p.high)
	l := report.Label{Text: black(p.text), Anchor: report.AnchorMiddle}
	for l.At = (xy{X: inside((left+right)/2, r.width(p.text), report.FigureWidth), Y: y - above}); !r.free(r.boxOf(l)); l.At.Y -= 2 {
		y -= 2
	}
	for _, x := range []pt{left, right} {
		r.line(x, bracketAt(0)-3, x, y-2, hairline())
		r.wall = append(r.wall, box{x - 0.6, y - 2, x + 0.6, 0})
	}
	r.between(left, right, y)
	r.label(l.At.X, l.At.Y, l.Text, l.Anchor)
	r.wall = append(r.wall, box{left, y - 1.5, right, y + 1.5})
}

// between draws the line of a dimension from left to right: arrows inside, or
// outside where they have no room.
func (c *canvas) between(left, right, y pt) {
	pen := hairline()
	if right-left >= 11 {
		c.line(left+3, y, right-3, y, pen)
		c.add(arrowhead(xy{X: left, Y: y}, -1, 0, pen), arrowhead(xy{X: right, Y: y}, 1, 0, pen))
		return
	}
	c.line(left-9, y, left-3, y, pen)
	c.line(right+3, y, right+9, y, pen)
	c.add(arrowhead(xy{X: left, Y: y}, 1, 0, pen), arrowhead(xy{X: right, Y: y}, -1, 0, pen))
}

// inside is the middle for a text of the width, moved so that it keeps inside
// the figure.
func inside(middle, width, whole pt) pt {
	return min(max(middle, width/2), whole-width/2)
}

// name sets the figure of a mark where there is room: beside its bracket, or
// higher up.
func (r *ruler) name(m mark) {
	labels := r.places(m)
	for _, l := range labels {
		if b := r.boxOf(l); b.left >= -0.01 && b.right <= report.FigureWidth+0.01 && r.free(b) {
			r.label(l.At.X, l.At.Y, l.Text, l.Anchor)
			return
		}
	}
	// Higher than anything that stands there is always room.
	lines := r.wrapped(m.text, report.FigureWidth)
	slices.Reverse(lines)
	y := r.bounds().top - descent - 1
	for _, line := range lines {
		r.label(inside(r.scale.at(m.at), r.width(line), report.FigureWidth), y, black(line), report.AnchorMiddle)
		y -= lineHigh + 1
	}
}

// places are where a mark's figure may stand, the best first.
func (r *ruler) places(m mark) []report.Label {
	x, y := r.scale.at(m.at), bracketAt(m.level)
	left, right := r.reach(m)
	text := black(m.text)
	at := func(x, y pt, anchor report.Anchor) report.Label {
		return report.Label{At: xy{X: x, Y: y}, Text: text, Anchor: anchor}
	}
	var out []report.Label
	switch {
	case m.bound > 0:
		out = append(out, at(x-4, y, report.AnchorEndCentred), at(x+3.5, y-3.4, report.AnchorStart))
	case m.bound < 0:
		out = append(out, at(x+4, y, report.AnchorStartCentred), at(x-3.5, y-3.4, report.AnchorEnd))
	default:
		start, end := at(right+beside, y, report.AnchorStartCentred), at(left-beside, y, report.AnchorEndCentred)
		out = append(out, start, end)
		if m.side < 0 {
			out = []report.Label{end, start}
		}
	}
	for rise := range 4 {
		up := y - 6 - pt(rise)*(lineHigh+1)
		w := r.width(m.text)
		out = append(out,
			at(inside(x, w, report.FigureWidth), up, report.AnchorMiddle),
			at(inside(x-w/2-3, w, report.FigureWidth), up, report.AnchorMiddle),
			at(inside(x+w/2+3, w, report.FigureWidth), up, report.AnchorMiddle))
	}
	return out
}

// crossed lists the labels that a line down at x would cut, from top to bottom.
func (r *ruler) crossed(x, top, bottom pt) []box {
	var out []box
	for _, b := range r.labels {
		b = b.grown(0.6)
		if b.left < x && x < b.right && b.bottom > top && b.top < bottom {
			out = append(out, b)
		}
	}
	slices.SortFunc(out, func(a, b box) int { return cmp.Compare(a.top, b.top) })
	return out
}
