package chart

import (
	"cmp"
	"slices"

	"stonewrit/grading/gem"
	"stonewrit/report"
)

// row hangs a material at y: a thin line for each of its ranges, its name at
// the end of them where that is free of the lines from the marks, else in a gap
// of the line, else below. It returns what it takes beside the height of a row.
func (r *ruler) row(m Material, y pt) pt {
	low, high := ends(m.Ranges)
	left, right := r.scale.at(r.scale.within(low)), r.scale.at(r.scale.within(high))
	w := r.width(m.Name)
	text := black(m.Name)
	if !m.Own {
		text = faded(m.Name)
	}
	gap := box{}
	below := pt(0)
	toRight := box{right + beside, y - 1, right + beside + w, y + 1}
	toLeft := box{left - beside - w, y - 1, left - beside, y + 1}
	hole, wide := r.hole(m.Ranges, w, y)
	switch {
	case r.onFigure(toRight) && !r.cut(toRight):
		r.label(toRight.left, y, text, report.AnchorStartCentred)
	case r.onFigure(toLeft) && !r.cut(toLeft):
		r.label(toLeft.right, y, text, report.AnchorEndCentred)
	case wide:
		gap = hole
		r.label((hole.left+hole.right)/2, y, text, report.AnchorMiddleCentred)
	case r.onFigure(toRight):
		r.label(toRight.left, y, text, report.AnchorStartCentred)
	case r.onFigure(toLeft):
		r.label(toLeft.right, y, text, report.AnchorEndCentred)
	default:
		below = r.hungName(m, left, y)
	}
	for i, one := range m.Ranges {
		r.span(one, y+rayAt(i, len(m.Ranges)), gap, rangePen(m.Own))
	}
	return below
}

// rayAt is where the line of a ray lies: the lower index above.
func rayAt(i, of int) pt {
	if of < 2 {
		return 0
	}
	return pt(2*i-1) * 1.6
}

func rangePen(own bool) report.Pen {
	if own {
		return report.Pen{Width: 1.2}
	}
	return report.Pen{Width: 0.6, Grey: grey}
}

func (r *ruler) onFigure(b box) bool { return b.left >= 0 && b.right <= report.FigureWidth }

// cut reports whether a line from a mark would run through a box.
func (r *ruler) cut(b box) bool {
	return slices.ContainsFunc(r.drops, func(d drop) bool { return d.x > b.left-1.5 && d.x < b.right+1.5 })
}

// hole is the widest stretch between the lines from the marks that all of a
// material's lines run through, and whether the name has room in it with some
// line left on either side.
func (r *ruler) hole(ranges []gem.Range, w, y pt) (box, bool) {
	left, right := r.scale.from, r.scale.to
	for _, one := range ranges {
		left, right = max(left, r.scale.at(one.Min)), min(right, r.scale.at(one.Max))
	}
	stops := []pt{left, right}
	for _, d := range r.drops {
		if d.x > left && d.x < right {
			stops = append(stops, d.x)
		}
	}
	slices.SortFunc(stops, func(a, b pt) int { return cmp.Compare(a, b) })
	at, widest := pt(0), pt(0)
	for i, stop := range stops[1:] {
		if stop-stops[i] > widest+0.01 {
			at, widest = (stop+stops[i])/2, stop-stops[i]
		}
	}
	return box{at - w/2 - 3, y - 4, at + w/2 + 3, y + 4}, left < right && widest >= w+26
}

// hungName sets a name below its line, in as many lines as it takes.
func (r *ruler) hungName(m Material, left, y pt) pt {
	taken := pt(1)
	for _, line := range r.wrapped(m.Name, report.FigureWidth) {
		x := min(left, report.FigureWidth-r.width(line))
		text := black(line)
		if !m.Own {
			text = faded(line)
		}
		taken += lineHigh + 1
		r.label(max(0, x), y+taken, text, report.AnchorStartCentred)
	}
	return taken + 2
}

// span draws one range at y with a stop at either end, an arrowhead where it
// goes on beyond the ruler, and a gap where its name stands.
func (r *ruler) span(one gem.Range, y pt, gap box, pen report.Pen) {
	left, right := r.scale.at(r.scale.within(one.Min)), r.scale.at(r.scale.within(one.Max))
	if one.Max < r.scale.low || one.Min > r.scale.high { // all of it beyond the ruler
		tip, side := right, 1.0
		if one.Max < r.scale.low {
			tip, side = left, -1
		}
		r.line(tip-pt(side)*12, y, tip-pt(side)*3, y, pen)
		r.add(arrowhead(xy{X: tip, Y: y}, side, 0, pen))
		return
	}
	end := func(x pt, inside bool, side float64) pt {
		if inside {
			r.line(x, y-1.6, x, y+1.6, report.Pen{Width: 0.6, Grey: pen.Grey})
			return x
		}
		r.add(arrowhead(xy{X: x, Y: y}, side, 0, pen))
		return x - pt(side)*3
	}
	from, to := end(left, r.scale.holds(one.Min), -1), end(right, r.scale.holds(one.Max), 1)
	if gap != (box{}) {
		r.line(from, y, gap.left, y, pen)
		from = gap.right
	}
	r.line(from, y, to, y, pen)
}
