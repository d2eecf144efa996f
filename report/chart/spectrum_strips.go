package chart

import (
	"slices"

	"stonewrit/grading/gem"
	"stonewrit/report"
)

// A bright line stands at the foot of the strip, and a dark line at the same
// place ends above it.
const brightHigh pt = 11

// lineHighOf is how high a dark line is drawn.
func lineHighOf(line Absorption, all []Absorption) pt {
	meets := func(o Absorption) bool {
		return o.Kind == Emission && line.From >= o.From-2 && line.To <= o.To+2
	}
	if line.Kind == Line && slices.ContainsFunc(all, meets) {
		return stripHigh - brightHigh - 1.5
	}
	return stripHigh
}

// strip is the rectangle of a strip.
func (c *spectrumChart) strip(y pt) report.Polygon {
	return report.Rectangle(xy{X: c.scale.from, Y: y}, c.scale.to-c.scale.from, stripHigh)
}

func (c *spectrumChart) ground(y pt) {
	ground := c.strip(y)
	ground.Pen, ground.Fill = report.Pen{None: true}, report.Fill{Solid: true, Grey: 0.945}
	c.add(ground)
}

func (c *spectrumChart) frame(y pt) {
	frame := c.strip(y)
	frame.Pen = hairline()
	c.add(frame)
}

// dark draws one thing seen, a line so high.
func (c *spectrumChart) dark(a Absorption, high pt) {
	from, to := c.scale.at(a.From), c.scale.at(a.To)
	switch a.Kind {
	case Band:
		c.shade(from, to, 0.62)
	case Cutoff:
		c.shade(c.scale.from, from, 0.4)
		c.line(from, 0, from, stripHigh, report.Pen{Width: report.Thin})
	case Emission:
		c.bright(from, to, 0, report.Pen{Width: report.Thin})
	default:
		pen := report.Pen{Width: 1.1}
		if a.Doubtful {
			pen.Dash = []pt{2, 1.6}
		}
		c.line(from, 0, from, high, pen)
		c.whisker(a)
	}
}

// whisker spans the expanded uncertainty of a line, at the scale.
func (c *spectrumChart) whisker(a Absorption) {
	u := expand(a.U)
	from, to := c.scale.at(c.scale.within(a.From-u)), c.scale.at(c.scale.within(a.From+u))
	if to-from > 1.5 {
		c.line(from, stripHigh-2.6, to, stripHigh-2.6, report.Pen{Width: report.Thin})
	}
}

func (c *spectrumChart) shade(from, to pt, shade float64) {
	area := report.Rectangle(xy{X: from}, to-from, stripHigh)
	area.Pen, area.Fill = report.Pen{None: true}, report.Fill{Solid: true, Grey: shade}
	c.add(area)
}

// bright draws a bright line: white between two lines.
func (c *spectrumChart) bright(from, to, y pt, pen report.Pen) {
	half := max((to-from)/2, 1.2)
	middle := min(max((from+to)/2, half+pen.Width), report.FigureWidth-half-pen.Width)
	top, foot := y+stripHigh-brightHigh, y+stripHigh
	area := report.Rectangle(xy{X: middle - half, Y: top}, 2*half, brightHigh)
	area.Pen, area.Fill = report.Pen{None: true}, report.Fill{Solid: true, Grey: 1}
	c.add(area, report.Polyline{Points: []xy{{X: middle - half, Y: foot}, {X: middle - half, Y: top}, {X: middle + half, Y: top}, {X: middle + half, Y: foot}}, Pen: pen})
}

// lowerStrip draws what is published: full lines for what is always there,
// dashed for often, dotted for sometimes; bands and cutoffs hatched.
func (c *spectrumChart) lowerStrip(published []Absorption, name string) {
	y := stripHigh + scaleHigh
	for _, a := range linesLast(published) {
		c.expected(a, y, lineHighOf(a, published))
	}
	c.frame(y)
	bottom := c.flags(published, y+stripHigh, +1)
	c.key(published, fill(c.Words.Published, "name", name), bottom+ascent+4)
}

// expected draws one thing published, a line so high.
func (c *spectrumChart) expected(a Absorption, y, high pt) {
	from, to := c.scale.at(a.From), c.scale.at(a.To)
	pen := frequencyPen(a.Frequency)
	upright := func(x pt) { c.line(x, y, x, y+high, pen) }
	switch a.Kind {
	case Band:
		c.hatch(from, to, y)
		upright(from)
		upright(to)
	case Cutoff:
		c.hatch(c.scale.from, from, y)
		upright(from)
		if to > from {
			upright(to)
		}
	case Emission:
		c.bright(from, to, y, pen)
	default:
		upright((from + to) / 2)
	}
}

func (c *spectrumChart) hatch(from, to, y pt) {
	if to-from < 0.5 {
		return
	}
	area := report.Rectangle(xy{X: from, Y: y}, to-from, stripHigh)
	area.Pen, area.Fill = report.Pen{None: true, Grey: 0.5}, report.Fill{Hatch: 2.6, Angle: 45}
	c.add(area)
}

// frequencyPen tells by its dashes how dependable a line is.
func frequencyPen(f gem.Frequency) report.Pen {
	switch f {
	case gem.Always:
		return report.Pen{Width: 1}
	case gem.Often:
		return report.Pen{Width: 0.8, Dash: []pt{4, 2}}
	}
	return report.Pen{Width: 0.8, Dash: []pt{0.9, 2.1}}
}
