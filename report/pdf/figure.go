package pdf

import (
	"math"
	"slices"

	"stonewrit/report"
)

// smallFigure is the most height that a figure in the margin takes.
const smallFigure Point = 90

// figure places a drawing whole, with its caption below.
func (s *setter) figure(b report.Figure) []strip {
	wide := b.Width > s.main
	left, width := s.column(wide)
	if b.Aside && b.Width <= s.margin && b.Height <= smallFigure {
		d := Drawing{Alt: b.Alt, Box: Rect{s.edge, 0, b.Width, b.Height}}
		for _, shape := range b.Shapes {
			d.Items = append(d.Items, moveAll(s.press.shape(shape), s.edge, 0)...)
		}
		return []strip{{aside: []Placed{d}, tall: b.Height, besides: true}}
	}
	d := Drawing{Alt: b.Alt, Box: Rect{left, 0, b.Width, b.Height}}
	for _, shape := range b.Shapes {
		d.Items = append(d.Items, moveAll(s.press.shape(shape), left, 0)...)
	}
	out := []strip{{before: s.between + 2, height: b.Height, items: []Placed{d}, wide: wide}}
	caption := s.flow(inked(s.press.lines(b.Caption, sizeSmall, width), InkGrey), left)
	if len(caption) > 0 {
		caption[0].before = 4
	}
	for i := range caption {
		caption[i].wide = wide
	}
	return keepTogether(append(out, caption...))
}

// shape turns a shape of a drawing into placed items.
func (p *typeface) shape(shape report.Shape) []Placed {
	switch sh := shape.(type) {
	case report.Line:
		return []Placed{path(sh.Pen, part(sh.From, sh.To))}
	case report.Polyline:
		if len(sh.Points) > 1 {
			return []Placed{path(sh.Pen, part(sh.Points...))}
		}
	case report.Polygon:
		if len(sh.Points) > 2 {
			return p.polygon(sh)
		}
	case report.Arc:
		return []Placed{arc(sh)}
	case report.Label:
		return p.label(sh)
	}
	return nil
}

// part joins points by straight lines.
func part(points ...report.XY) Part {
	out := Part{Start: points[0]}
	for _, q := range points[1:] {
		out.Steps = append(out.Steps, Step{To: q})
	}
	return out
}

// path returns the path of the parts with its bounds.
func path(pen report.Pen, parts ...Part) Path {
	if pen.Width == 0 {
		pen.Width = report.Thin
	}
	lo := report.XY{X: Point(math.Inf(1)), Y: Point(math.Inf(1))}
	hi := report.XY{X: Point(math.Inf(-1)), Y: Point(math.Inf(-1))}
	grow := func(q report.XY) {
		lo.X, lo.Y, hi.X, hi.Y = min(lo.X, q.X), min(lo.Y, q.Y), max(hi.X, q.X), max(hi.Y, q.Y)
	}
	for _, part := range parts {
		grow(part.Start)
		for _, s := range part.Steps {
			if s.Curved {
				grow(s.C1)
				grow(s.C2)
			}
			grow(s.To)
		}
	}
	half := pen.Width / 2
	if pen.None {
		half = 0
	}
	return Path{Parts: parts, Pen: pen, box: Rect{lo.X - half, lo.Y - half, hi.X - lo.X + 2*half, hi.Y - lo.Y + 2*half}}
}

func (p *typeface) polygon(sh report.Polygon) []Placed {
	outline := part(sh.Points...)
	outline.Closed = true
	out := path(sh.Pen, outline)
	out.Fill = sh.Fill
	if sh.Fill.Hatch <= 0 {
		return []Placed{out}
	}
	hatching := hatch(sh.Points, sh.Fill.Hatch, sh.Fill.Angle)
	if len(hatching) == 0 {
		return []Placed{out}
	}
	return []Placed{path(report.Pen{Width: report.Hairline, Grey: sh.Pen.Grey}, hatching...), out}
}

// hatch returns parallel lines, gap apart and turned by angle degrees, inside a
// polygon: for each line, the stretches between its crossings with the outline
// taken two by two.
func hatch(points []report.XY, gap Point, angle float64) []Part {
	sin, cos := math.Sincos(angle * math.Pi / 180)
	// along and across are coordinates turned with the hatching; y points down.
	along := func(q report.XY) float64 { return float64(q.X)*cos - float64(q.Y)*sin }
	across := func(q report.XY) float64 { return float64(q.X)*sin + float64(q.Y)*cos }
	back := func(u, v float64) report.XY {
		return report.XY{X: Point(u*cos + v*sin), Y: Point(-u*sin + v*cos)}
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, q := range points {
		lo, hi = min(lo, across(q)), max(hi, across(q))
	}
	const most = 2000 // lines; more would be a grey
	if (hi-lo)/float64(gap) > most {
		return nil
	}
	var out []Part
	for v := lo + float64(gap)/2; v < hi; v += float64(gap) {
		var cuts []float64
		for i, a := range points {
			b := points[(i+1)%len(points)]
			va, vb := across(a), across(b)
			if (va <= v) == (vb <= v) {
				continue
			}
			cuts = append(cuts, along(a)+(along(b)-along(a))*(v-va)/(vb-va))
		}
		slices.Sort(cuts)
		for i := 0; i+1 < len(cuts); i += 2 {
			out = append(out, part(back(cuts[i], v), back(cuts[i+1], v)))
		}
	}
	return out
}

// arc draws part of an ellipse as cubic curves of at most 45 degrees each; the
// distance of their handles is 4/3 tan(a/4), by which such a curve meets the
// arc of angle a at its ends and middle.
func arc(sh report.Arc) Path {
	from, to := sh.From, sh.To
	if to < from {
		from, to = to, from
	}
	to = min(to, from+360)
	n := max(1, int(math.Ceil((to-from)/45)))
	step := (to - from) / float64(n) * math.Pi / 180
	k := 4.0 / 3 * math.Tan(step/4)
	at := func(a float64) (q, tangent report.XY) {
		sin, cos := math.Sincos(a)
		q = report.XY{X: sh.Center.X + sh.RX*Point(cos), Y: sh.Center.Y - sh.RY*Point(sin)}
		return q, report.XY{X: -sh.RX * Point(sin), Y: -sh.RY * Point(cos)}
	}
	a := from * math.Pi / 180
	q, t := at(a)
	out := Part{Start: q, Closed: to-from >= 360}
	for range n {
		q2, t2 := at(a + step)
		out.Steps = append(out.Steps, Step{
			C1: report.XY{X: q.X + t.X*Point(k), Y: q.Y + t.Y*Point(k)},
			C2: report.XY{X: q2.X - t2.X*Point(k), Y: q2.Y - t2.Y*Point(k)},
			To: q2, Curved: true,
		})
		q, t, a = q2, t2, a+step
	}
	placed := path(sh.Pen, out)
	placed.Fill = report.Fill{Solid: sh.Fill.Solid, Grey: sh.Fill.Grey}
	return placed
}

// label places one line of text at its anchor.
func (p *typeface) label(sh report.Label) []Placed {
	lines := p.lines(sh.Text, sizeSmall, 1e6)
	if len(lines) == 0 {
		return nil
	}
	l := lines[0]
	across, down := Point(0), Point(0)
	switch sh.Anchor {
	case report.AnchorMiddle, report.AnchorMiddleCentred:
		across = l.width / 2
	case report.AnchorEnd, report.AnchorEndCentred:
		across = l.width
	}
	if sh.Anchor >= report.AnchorStartCentred {
		down = Point(p.faces[FaceRegular].capitals) * sizeSmall / 2
	}
	sin, cos := math.Sincos(sh.Turn * math.Pi / 180)
	turned := func(x, y Point) report.XY { // from the anchor, before turning; y down
		return report.XY{X: sh.At.X + x*Point(cos) + y*Point(sin), Y: sh.At.Y - x*Point(sin) + y*Point(cos)}
	}
	var out []Placed
	x := -across
	for _, pc := range l.pieces {
		t := p.text(pc, 0, 0)
		t.At, t.Turn = turned(x+t.At.X, down+t.At.Y), sh.Turn
		corners := []report.XY{
			turned(x+t.box.X, down+t.box.Y), turned(x+t.box.X+t.box.W, down+t.box.Y),
			turned(x+t.box.X, down+t.box.Y+t.box.H), turned(x+t.box.X+t.box.W, down+t.box.Y+t.box.H),
		}
		t.box = path(report.Pen{None: true}, part(corners...)).box
		out = append(out, t)
		x += pc.width
	}
	return out
}
