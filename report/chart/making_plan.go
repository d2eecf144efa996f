package chart

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"stonewrit/report"
)

// Pens of a making drawing.
func contour() report.Pen   { return report.Pen{Width: 1.1} }
func facetEdge() report.Pen { return report.Pen{Width: 0.5} }
func dashedEdge() report.Pen {
	return report.Pen{Width: 0.5, Dash: []pt{2.4, 1.6}}
}

// axis is the pen of a middle line: long and short strokes in turn.
func axisPen() report.Pen {
	return report.Pen{Width: report.Hairline, Grey: grey, Dash: []pt{8, 2, 1.2, 2}}
}

// drawPlan draws the stone face up with its length and width.
func (c *makingChart) drawPlan(s sight) {
	if c.in.Body != nil {
		for _, e := range edgesOf(c.in.Body.Solid, faceUp()) {
			c.edge(s, c.fits.of(e.from), c.fits.of(e.to), c.planOpen(e))
		}
	}
	c.add(report.Polygon{Points: s.all(c.rim), Pen: contour()})
	low, high := extents(c.rim)
	bottom := s.at(low).Y
	leftmost, rightmost := c.rim[0], c.rim[0]
	top, lowest := c.rim[0], c.rim[0]
	for _, p := range c.rim {
		if p.X < leftmost.X-1e-9 || p.X < leftmost.X+1e-9 && p.Y < leftmost.Y {
			leftmost = p
		}
		if p.X > rightmost.X+1e-9 || p.X > rightmost.X-1e-9 && p.Y < rightmost.Y {
			rightmost = p
		}
		if p.Y > top.Y+1e-9 || p.Y > top.Y-1e-9 && p.X > top.X {
			top = p
		}
		if p.Y < lowest.Y-1e-9 || p.Y < lowest.Y+1e-9 && p.X > lowest.X {
			lowest = p
		}
	}
	c.level(s.at(low).X, s.at(high).X, bottom+away, s.at(leftmost).Y, s.at(rightmost).Y, c.diameter(c.wide))
	if c.lengthDrawn() {
		c.length(s, top, lowest)
	}
}

// lengthDrawn reports whether the length has a figure of its own: not on a
// circle of one diameter.
func (c *makingChart) lengthDrawn() bool { return !c.circular() || c.d.Width.Given() }

// length draws the upright dimension at the right of the plan.
func (c *makingChart) length(s sight, top, lowest r2.Vec) {
	_, high := extents(c.rim)
	x := s.at(high).X + away
	from, to := s.at(top), s.at(lowest)
	text := c.diameter(c.long)
	if !c.standing(to.Y-from.Y, text) {
		x = s.at(high).X + 4
	}
	c.outLevel(from.Y, from.X, x)
	c.outLevel(to.Y, to.X, x)
	c.upDown(x, from.Y, to.Y)
	if c.standing(to.Y-from.Y, text) {
		c.upright(x-above, (from.Y+to.Y)/2, black(text))
		return
	}
	c.label(x+4, (from.Y+to.Y)/2, black(text), report.AnchorStartCentred)
}

// edge draws an edge between facets, dashed where it rests on usual figures.
func (c *makingChart) edge(s sight, from, to r2.Vec, open bool) {
	a, b := s.at(from), s.at(to)
	if r2.Norm(r2.Sub(from, to))*float64(c.k) < 0.4 {
		return
	}
	pen := facetEdge()
	if open {
		pen, c.dashed = dashedEdge(), true
	}
	c.add(report.Line{From: a, To: b, Pen: pen})
}

// planOpen reports whether the place of an edge, seen face up, rests on a usual
// figure. The places of steps follow from the table and how many there are.
func (c *makingChart) planOpen(e edge) bool {
	switch {
	case e.touches("girdle"):
		return false
	case e.touches("table"):
		return c.assumed("table")
	case e.touches("star") || e.touches("upper half"):
		return c.assumed("star") || c.assumed("table")
	case strings.HasPrefix(e.names[0], "crown step"):
		return c.assumed("table") || len(c.in.Body.Named("table")) == 0
	}
	return c.assumed("table")
}
