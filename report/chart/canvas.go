package chart

import (
	"math"
	"slices"

	"stonewrit/report"
)

// Short names for what every drawing is made of.
type (
	pt = report.Point
	xy = report.XY
)

// Pens of the drawings.
const (
	grey  = 0.38 // of helping lines and of what is not this stone's: 5 to 1 against white paper
	quiet = 0.62 // of lines that lead the eye
)

func hairline() report.Pen { return report.Pen{Width: report.Hairline} }

func guide() report.Pen { return report.Pen{Width: report.Hairline, Grey: quiet} }

// box is a rectangle.
type box struct{ left, top, right, bottom pt }

func (b box) overlaps(o box) bool {
	return b.left < o.right && o.left < b.right && b.top < o.bottom && o.top < b.bottom
}

func (b box) grown(by pt) box { return box{b.left - by, b.top - by, b.right + by, b.bottom + by} }

func (b box) with(o box) box {
	return box{min(b.left, o.left), min(b.top, o.top), max(b.right, o.right), max(b.bottom, o.bottom)}
}

// canvas gathers shapes; y may run from anywhere, since figure moves all up or
// down in the end.
type canvas struct {
	Drawer
	shapes []report.Shape
	labels []box // that are set
	wall   []box // what labels keep clear of beside one another
}

func (c *canvas) add(s ...report.Shape) { c.shapes = append(c.shapes, s...) }

func (c *canvas) line(x1, y1, x2, y2 pt, pen report.Pen) {
	c.add(report.Line{From: xy{X: x1, Y: y1}, To: xy{X: x2, Y: y2}, Pen: pen})
}

// black and faded are the two inks of a label.
func black(s string) report.Text { return report.Plain(s) }
func faded(s string) report.Text { return report.Quiet(s) }

// label sets a text and keeps its box.
func (c *canvas) label(x, y pt, text report.Text, anchor report.Anchor) box {
	l := report.Label{At: xy{X: x, Y: y}, Text: text, Anchor: anchor}
	b := c.boxOf(l)
	c.labels = append(c.labels, b)
	c.add(l)
	return b
}

// upright sets a text that reads upwards, its middle at y and its baseline at x.
func (c *canvas) upright(x, y pt, text report.Text) box {
	l := report.Label{At: xy{X: x, Y: y}, Text: text, Anchor: report.AnchorMiddle, Turn: 90}
	b := c.boxOf(l)
	c.labels = append(c.labels, b)
	c.add(l)
	return b
}

// headed sets a title over all that is drawn.
func (c *canvas) headed(title string) {
	lines := c.wrapped(title, report.FigureWidth)
	y := c.bounds().top - 6
	for i := range lines {
		c.label(0, y, black(lines[len(lines)-1-i]), report.AnchorStart)
		y -= lineHigh + 1
	}
}

// boxOf is the room that a label takes; labels are level or read upwards.
func (c *canvas) boxOf(l report.Label) box {
	w := c.width(l.Text.String())
	across := pt(0)
	switch l.Anchor {
	case report.AnchorMiddle, report.AnchorMiddleCentred:
		across = w / 2
	case report.AnchorEnd, report.AnchorEndCentred:
		across = w
	}
	down := pt(0)
	if l.Anchor >= report.AnchorStartCentred {
		down = halfCaps
	}
	if l.Turn == 90 {
		x := l.At.X + down
		return box{x - ascent, l.At.Y + across - w, x + descent, l.At.Y + across}
	}
	y := l.At.Y + down
	return box{l.At.X - across, y - ascent, l.At.X - across + w, y + descent}
}

// free reports whether a label's box keeps clear of labels and walls.
func (c *canvas) free(b box) bool {
	near := b.grown(0.8)
	clash := func(o box) bool { return near.overlaps(o) }
	return !slices.ContainsFunc(c.labels, clash) && !slices.ContainsFunc(c.wall, clash)
}

// arrowhead is a slender filled triangle with its tip at a place, pointing along
// the direction.
func arrowhead(tip xy, dx, dy float64, pen report.Pen) report.Polygon {
	const long, half = 4.4, 1.15
	n := math.Hypot(dx, dy)
	ux, uy := pt(dx/n), pt(dy/n)
	back := xy{X: tip.X - long*ux, Y: tip.Y - long*uy}
	return report.Polygon{
		Points: []xy{tip, {X: back.X - half*uy, Y: back.Y + half*ux}, {X: back.X + half*uy, Y: back.Y - half*ux}},
		Pen:    report.Pen{None: true}, Fill: report.Fill{Solid: true, Grey: pen.Grey},
	}
}

// bounds is the box of all that was drawn.
func (c *canvas) bounds() box {
	all := box{pt(math.Inf(1)), pt(math.Inf(1)), pt(math.Inf(-1)), pt(math.Inf(-1))}
	for _, s := range c.shapes {
		all = all.with(c.shapeBox(s))
	}
	return all
}

func (c *canvas) shapeBox(s report.Shape) box {
	switch s := s.(type) {
	case report.Line:
		return pointsBox(s.Pen, s.From, s.To)
	case report.Polyline:
		return pointsBox(s.Pen, s.Points...)
	case report.Polygon:
		return pointsBox(s.Pen, s.Points...)
	case report.Arc:
		return arcBox(s)
	case report.Label:
		return c.boxOf(s)
	}
	return box{}
}

func pointsBox(pen report.Pen, points ...xy) box {
	b := box{points[0].X, points[0].Y, points[0].X, points[0].Y}
	for _, p := range points[1:] {
		b = b.with(box{p.X, p.Y, p.X, p.Y})
	}
	return b.grown(halfPen(pen))
}

func halfPen(pen report.Pen) pt {
	switch {
	case pen.None:
		return 0
	case pen.Width == 0:
		return report.Thin / 2
	}
	return pen.Width / 2
}

// arcBox holds the ends of an arc and what it passes straight right, above,
// left or below of its middle.
func arcBox(a report.Arc) box {
	at := func(deg float64) xy {
		s, c := math.Sincos(deg * math.Pi / 180)
		return xy{X: a.Center.X + a.RX*pt(c), Y: a.Center.Y - a.RY*pt(s)}
	}
	points := []xy{at(a.From), at(a.To)}
	for deg := math.Ceil(a.From/90) * 90; deg < a.To; deg += 90 {
		points = append(points, at(deg))
	}
	return pointsBox(a.Pen, points...)
}

// figure moves everything down to begin at the top, and closes the box. The
// width is given: a drawing keeps to it by its own reckoning.
func (c *canvas) figure(width pt, caption, alt string) report.Figure {
	b := c.bounds()
	f := report.Figure{Width: width, Height: b.bottom - b.top, Alt: alt}
	if caption != "" {
		f.Caption = report.Plain(caption)
	}
	for _, s := range c.shapes {
		f.Shapes = append(f.Shapes, moved(s, 0, -b.top))
	}
	return f
}

func moved(s report.Shape, dx, dy pt) report.Shape {
	shift := func(p xy) xy { return xy{X: p.X + dx, Y: p.Y + dy} }
	all := func(points []xy) []xy {
		out := make([]xy, len(points))
		for i, p := range points {
			out[i] = shift(p)
		}
		return out
	}
	switch s := s.(type) {
	case report.Line:
		s.From, s.To = shift(s.From), shift(s.To)
		return s
	case report.Polyline:
		s.Points = all(s.Points)
		return s
	case report.Polygon:
		s.Points = all(s.Points)
		return s
	case report.Arc:
		s.Center = shift(s.Center)
		return s
	case report.Label:
		s.At = shift(s.At)
		return s
	}
	return s
}
