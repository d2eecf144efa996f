package chart

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stonewrit/report"
)

// profile is the outline along the length, against the clock from the lowest
// place. Domes are curves, not the planes that touch them.
func (c *makingChart) profile() []r2.Vec {
	b := c.in.Body
	dome, base := len(b.Named("dome")) > 0, len(b.Named("base")) > 0
	if !dome {
		places := hull(seen(b.Solid, along()))
		low, high := extents(places)
		by := c.wide / (high.X - low.X)
		for i, p := range places {
			places[i].X = (p.X - (low.X+high.X)/2) * by
		}
		return places
	}
	arc := func(height, level, from, to float64) []r2.Vec {
		var out []r2.Vec
		for i := range smooth/2 + 1 {
			s, k := math.Sincos(from + (to-from)*float64(i)/(smooth/2))
			out = append(out, r2.Vec{X: c.wide / 2 * k, Y: level + height*s})
		}
		return out
	}
	var out []r2.Vec
	if base {
		out = append(out, arc(b.Pavilion, -b.Girdle, math.Pi, 2*math.Pi)...)
	} else {
		out = append(out, r2.Vec{X: -c.wide / 2, Y: -b.Girdle}, r2.Vec{X: c.wide / 2, Y: -b.Girdle})
	}
	for _, p := range arc(b.Crown, 0, 0, math.Pi) {
		if r2.Norm(r2.Sub(p, out[len(out)-1])) > 1e-9 {
			out = append(out, p)
		}
	}
	return out
}

// drawProfile draws the profile: the left half in section, hatched, the right
// half with its facets, with the lengths that were measured.
func (c *makingChart) drawProfile(s sight) {
	hatched := report.Polygon{
		Points: s.all(leftHalf(c.side)), Pen: report.Pen{None: true, Grey: 0.55}, Fill: report.Fill{Hatch: 3.4, Angle: 45},
	}
	c.add(hatched)
	c.facets(s)
	c.contour(s)
	low, high := extents(c.side)
	c.add(report.Line{From: xy{X: s.x, Y: s.at(high).Y - axisOut}, To: xy{X: s.x, Y: s.at(low).Y + axisOut}, Pen: axisPen()})
	c.tableDimension(s)
	c.heights(s)
	c.drawAngle(s)
}

// leftHalf cuts an outline at the middle line.
func leftHalf(places []r2.Vec) []r2.Vec {
	var out []r2.Vec
	for i, p := range places {
		q := places[(i+1)%len(places)]
		if p.X <= 0 {
			out = append(out, p)
		}
		if (p.X < 0) != (q.X < 0) && p.X != q.X {
			t := p.X / (p.X - q.X)
			out = append(out, r2.Vec{Y: p.Y + t*(q.Y-p.Y)})
		}
	}
	return out
}

// facets draws the edges on the right half; under a dome those are the two of
// the girdle.
func (c *makingChart) facets(s sight) {
	body := c.in.Body
	if len(body.Named("dome")) > 0 {
		c.edge(s, r2.Vec{}, r2.Vec{X: c.wide / 2}, false)
		c.edge(s, r2.Vec{Y: -body.Girdle}, r2.Vec{X: c.wide / 2, Y: -body.Girdle}, false)
		return
	}
	low, high := extents(seen(body.Solid, along()))
	by, middle := c.wide/(high.X-low.X), (low.X+high.X)/2
	for _, e := range edgesOf(body.Solid, along()) {
		a, b := e.from, e.to
		a.X, b.X = (a.X-middle)*by, (b.X-middle)*by
		if a.X > b.X {
			a, b = b, a
		}
		if b.X <= 1e-9 {
			continue
		}
		if a.X < 0 {
			a = r2.Add(a, r2.Scale(-a.X/(b.X-a.X), r2.Sub(b, a)))
		}
		c.edge(s, a, b, c.sideOpen(e))
	}
}

// sideOpen reports whether the place of an edge in profile rests on a usual
// figure.
func (c *makingChart) sideOpen(e edge) bool {
	crown, pavilion := c.open()
	switch {
	case e.touches("girdle"):
		return false
	case e.touches("lower half"):
		return pavilion || c.assumed("lower halves")
	case (e.from.Y+e.to.Y)/2 < 0:
		return pavilion
	}
	return crown || c.planOpen(e)
}

// contour draws the outline of the profile in stretches that are full or
// dashed.
func (c *makingChart) contour(s sight) {
	n := len(c.side)
	open := func(i int) bool { return c.stretchOpen(c.side[i%n], c.side[(i+1)%n]) }
	start := 0 // where a stretch begins
	for i := range n {
		if open(i) != open(i+n-1) {
			start = i
			break
		}
	}
	stretch := []r2.Vec{c.side[start]}
	for i := start; i < start+n; i++ {
		stretch = append(stretch, c.side[(i+1)%n])
		if i == start+n-1 || open(i) != open(i+1) {
			pen := contour()
			if open(i) {
				pen, c.dashed = report.Pen{Width: 0.8, Dash: []pt{3.4, 2}}, true
			}
			c.add(report.Polyline{Points: s.all(stretch), Pen: pen})
			stretch = []r2.Vec{c.side[(i+1)%n]}
		}
	}
}

// stretchOpen reports whether a side of the profile rests on usual figures.
func (c *makingChart) stretchOpen(p, q r2.Vec) bool {
	crown, pavilion := c.open()
	table := len(c.in.Body.Named("table")) > 0 && c.assumed("table")
	switch middle := (p.Y + q.Y) / 2; {
	case middle > 1e-6*c.wide:
		return crown || table
	case middle < -c.in.Body.Girdle-1e-6*c.wide:
		return pavilion
	}
	return false
}
