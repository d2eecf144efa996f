package chart

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stonewrit/grading/weight"
	"stonewrit/report"
)

// tableDimension draws the width of the table above it, if it was measured.
func (c *makingChart) tableDimension(s sight) {
	if !c.d.Table.Given() || len(c.in.Body.Named("table")) == 0 {
		return
	}
	_, high := extents(c.side)
	var left, right float64
	for _, p := range c.side {
		if p.Y > high.Y-1e-6*c.wide {
			left, right = min(left, p.X), max(right, p.X)
		}
	}
	if right <= left {
		return
	}
	top := s.at(high).Y
	c.level(s.at(r2.Vec{X: left}).X, s.at(r2.Vec{X: right}).X, top-12, top, top, c.mm(c.ofWidth(c.d.Table)))
}

// height is a measured height in profile.
type height struct {
	top, bottom float64 // mm over the girdle's upper edge
	fromTop     float64 // how far out the stone reaches there, mm
	fromBottom  float64
	text        string
}

// parts are the heights of crown, girdle and pavilion that were measured.
func (c *makingChart) parts() []height {
	b := c.in.Body
	edge := c.wide / 2
	top, bottom := c.reachAt(b.Crown), c.reachAt(-b.Girdle-b.Pavilion)
	var out []height
	add := func(m weight.Measure, h height) {
		if m.Given() && h.top > h.bottom {
			h.text = c.mm(c.ofWidth(m))
			out = append(out, h)
		}
	}
	add(c.d.CrownHeight, height{top: b.Crown, fromTop: top, fromBottom: edge})
	add(c.d.GirdlePercent, height{bottom: -b.Girdle, fromTop: edge, fromBottom: edge})
	add(c.d.PavilionDepth, height{top: -b.Girdle, bottom: -b.Girdle - b.Pavilion, fromTop: edge, fromBottom: bottom})
	return out
}

// reachAt is how far the profile reaches to the left at a height that is its
// highest or lowest.
func (c *makingChart) reachAt(y float64) float64 {
	far := 0.0
	for _, p := range c.side {
		if math.Abs(p.Y-y) < 1e-6*c.wide {
			far = max(far, -p.X)
		}
	}
	return far
}

// depthText is the total depth as printed, "" where it was not measured.
func (c *makingChart) depthText() string {
	switch {
	case c.d.Depth.Given():
		return c.mm(c.d.Depth.Value)
	case c.d.TotalDepth.Given():
		return c.mm(c.ofWidth(c.d.TotalDepth))
	}
	return ""
}

// chainWide is what the heights of the parts take beside the profile.
func (c *makingChart) chainWide() pt {
	wide := pt(0)
	for _, h := range c.parts() {
		wide = max(wide, 4+c.width(h.text))
	}
	if wide > 0 {
		wide += away - 4
	}
	return wide
}

// depthRoom is what stands to the left of the profile.
func (c *makingChart) depthRoom() pt {
	room := c.chainWide()
	if text := c.depthText(); text != "" {
		low, high := extents(c.side)
		room += away + c.figureRoom(c.k*pt(high.Y-low.Y), text)
	}
	return max(room, slim)
}

// heights draws the upright dimensions at the left: the parts in a chain, the
// whole depth outside of it.
func (c *makingChart) heights(s sight) {
	left := s.x - c.k*pt(c.wide)/2
	c.chain(s, left-away+4)
	text := c.depthText()
	if text == "" {
		return
	}
	b := c.in.Body
	x := left - c.chainWide() - away
	top, bottom := r2.Vec{X: -c.reachAt(b.Crown), Y: b.Crown}, r2.Vec{X: -c.reachAt(-b.Girdle - b.Pavilion), Y: -b.Girdle - b.Pavilion}
	c.outLevel(s.at(top).Y, s.at(top).X, x)
	c.outLevel(s.at(bottom).Y, s.at(bottom).X, x)
	c.upDown(x, s.at(top).Y, s.at(bottom).Y)
	c.figureLeft(x, s.at(top).Y, s.at(bottom).Y, text)
}

// chain draws the heights of the parts; their figures stand level beside the
// line, moved up or down where a part is thin.
func (c *makingChart) chain(s sight, x pt) {
	parts := c.parts()
	var want, wide []pt
	for _, h := range parts {
		top, bottom := s.at(r2.Vec{X: -h.fromTop, Y: h.top}), s.at(r2.Vec{X: -h.fromBottom, Y: h.bottom})
		c.outLevel(top.Y, top.X, x)
		c.outLevel(bottom.Y, bottom.X, x)
		c.upDown(x, top.Y, bottom.Y)
		want, wide = append(want, (top.Y+bottom.Y)/2), append(wide, lineHigh)
	}
	at, _ := spread(want, wide, 0.8, -1000, 1000)
	for i, h := range parts {
		c.label(x-4, at[i], black(h.text), report.AnchorEndCentred)
	}
}

// corner is the angle at an edge of the girdle, at the right of the profile.
type corner struct {
	at       r2.Vec
	drawn    float64 // degrees from the level
	measured float64
	crown    bool
}

// angle is the angle that is drawn: the crown's if it was measured, else the
// pavilion's. It is left out where the profile has no straight side of that
// angle, as on stones cut in steps.
func (c *makingChart) angle() (corner, bool) {
	b, half := c.in.Body, c.wide/2
	out := corner{at: r2.Vec{X: half}, measured: c.d.CrownAngle.Value, crown: true}
	end := r2.Vec{X: c.reachAt(b.Crown), Y: b.Crown}
	if !c.d.CrownAngle.Given() {
		out = corner{at: r2.Vec{X: half, Y: -b.Girdle}, measured: c.d.PavilionAngle.Value}
		end = r2.Vec{X: c.reachAt(-b.Girdle - b.Pavilion), Y: -b.Girdle - b.Pavilion}
	}
	out.drawn = slope(out.at, end)
	return out, out.measured > 0 && math.Abs(out.drawn-out.measured) <= 1 && c.straight(out.at, end)
}

// straight reports whether the right side of the profile runs along the line
// from the girdle to an end of it, within six thousandths of the width.
func (c *makingChart) straight(from, to r2.Vec) bool {
	along := r2.Unit(r2.Sub(to, from))
	for _, p := range c.side {
		between := (p.Y-from.Y)*(to.Y-from.Y) > 0 && p.X > to.X
		if between && math.Abs(r2.Cross(along, r2.Sub(p, from))) > 0.006*c.wide {
			return false
		}
	}
	return true
}

// slope is the angle in degrees between the level and the line from p inward.
func slope(p, q r2.Vec) float64 {
	return math.Atan2(math.Abs(q.Y-p.Y), math.Abs(p.X-q.X)) * 180 / math.Pi
}

func (c *makingChart) degrees(v float64) string { return c.Words.number(v, 1) + "°" }

// drawAngle draws the angle outside the stone, between the level of the girdle
// and the side of the stone drawn on beyond it.
func (c *makingChart) drawAngle(s sight) {
	a, ok := c.angle()
	if !ok {
		return
	}
	p := s.at(a.at)
	turn := a.drawn // of the side drawn on; the crown's falls, the pavilion's rises
	if a.crown {
		turn = -turn
	}
	at := func(radius pt, deg float64) xy {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		return xy{X: p.X + radius*pt(cos), Y: p.Y - radius*pt(sin)}
	}
	c.add(
		report.Line{From: at(clear, 0), To: at(arcRadius+4, 0), Pen: hairline()},
		report.Line{From: at(clear, turn), To: at(arcRadius+4, turn), Pen: hairline()},
		report.Arc{Center: p, RX: arcRadius, RY: arcRadius, From: min(0, turn), To: max(0, turn), Pen: hairline()},
	)
	if a.drawn > 15 { // arrows along the arc, tips on the two lines
		for _, end := range []float64{0, turn} {
			inward := math.Copysign(1, turn)
			if end != 0 {
				inward = -inward
			}
			// the tip points against the way inward, straight along the chord of its length
			back := (end + inward*6) * math.Pi / 180
			dx, dy := math.Sin(back)*inward, math.Cos(back)*inward
			c.add(arrowhead(at(arcRadius, end), dx, dy, hairline()))
		}
	}
	c.label(at(arcRadius+4, turn/2).X, at(arcRadius+4, turn/2).Y, black(c.degrees(a.measured)), report.AnchorStartCentred)
}
