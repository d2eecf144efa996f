package chart_test

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"stonewrit/report"
)

// look reads a figure as a reader does: by its labels and lines, knowing
// nothing of how it was made.
type look struct {
	report.Figure
	t     tester
	width func(string) report.Point
}

type rect struct{ left, top, right, bottom float64 }

func lookAt(t tester, f report.Figure, ok bool) look {
	t.Helper()
	if !ok {
		t.Fatalf("nothing is drawn")
	}
	return look{f, t, measured(t)}
}

// labels are the labels in their order.
func (l look) labels() []report.Label {
	var out []report.Label
	for _, s := range l.Shapes {
		if label, ok := s.(report.Label); ok {
			out = append(out, label)
		}
	}
	return out
}

func (l look) label(text string) report.Label {
	l.t.Helper()
	for _, label := range l.labels() {
		if label.Text.String() == text {
			return label
		}
	}
	l.t.Fatalf("no label %q among %q", text, l.texts())
	return report.Label{}
}

func (l look) texts() []string {
	var out []string
	for _, label := range l.labels() {
		out = append(out, label.Text.String())
	}
	return out
}

func (l look) says(text string) bool { return slices.Contains(l.texts(), text) }

// boxOf is the room of a label by the ascent (0.891 em) and descent (0.216 em)
// of the typeface that documents are set in.
func (l look) boxOf(label report.Label) rect {
	const up, down, half = 0.891 * 8, 0.216 * 8, 0.33 * 8
	w := float64(l.width(label.Text.String()))
	x, y := float64(label.At.X), float64(label.At.Y)
	start := 0.0
	switch label.Anchor {
	case report.AnchorMiddle, report.AnchorMiddleCentred:
		start = -w / 2
	case report.AnchorEnd, report.AnchorEndCentred:
		start = -w
	}
	base := 0.0
	if label.Anchor >= report.AnchorStartCentred {
		base = half
	}
	switch label.Turn {
	case 0:
		return rect{x + start, y + base - up, x + start + w, y + base + down}
	case 90:
		return rect{x + base - up, y - start - w, x + base + down, y - start}
	}
	l.t.Fatalf("label %q is turned by %v", label.Text, label.Turn)
	return rect{}
}

// sound checks what holds of every drawing: all ink inside the box, no label
// over another one, the box small enough for a page, words for those who do not
// see it, and no colour.
func (l look) sound() {
	l.t.Helper()
	if l.Width != report.FigureWidth || !(l.Height > 20 && l.Height <= report.FigureHeight) {
		l.t.Errorf("%v by %v does not fit a page", l.Width, l.Height)
	}
	if l.Alt == "" || strings.ContainsAny(l.Alt, "{}") {
		l.t.Errorf("alt text %q", l.Alt)
	}
	labels := l.labels()
	for i, a := range labels {
		if strings.TrimSpace(a.Text.String()) == "" || strings.ContainsAny(a.Text.String(), "{}") {
			l.t.Errorf("label %q", a.Text)
		}
		for _, b := range labels[i+1:] {
			if ra, rb := l.boxOf(a), l.boxOf(b); ra.overlaps(rb) {
				l.t.Errorf("%q overlaps %q: %.1f, %.1f", a.Text, b.Text, ra, rb)
			}
		}
	}
	for _, s := range l.Shapes {
		r, pen := l.ink(s)
		const slack = 0.02
		if !(r.left >= -slack && r.right <= float64(l.Width)+slack && r.top >= -slack && r.bottom <= float64(l.Height)+slack) {
			l.t.Errorf("%T %+v leaves the box %v by %v", s, s, l.Width, l.Height)
		}
		if pen.Accent || pen.Grey < 0 || pen.Grey > 0.7 {
			l.t.Errorf("%T is drawn in a colour or too pale: %+v", s, pen)
		}
	}
}

func (r rect) overlaps(o rect) bool {
	const slack = 0.05
	return r.left+slack < o.right && o.left+slack < r.right && r.top+slack < o.bottom && o.top+slack < r.bottom
}

// ink is the box of a shape with the width of its line.
func (l look) ink(s report.Shape) (rect, report.Pen) {
	switch s := s.(type) {
	case report.Label:
		return l.boxOf(s), report.Pen{}
	case report.Line:
		return around(s.Pen, s.From, s.To), s.Pen
	case report.Polyline:
		return around(s.Pen, s.Points...), s.Pen
	case report.Polygon:
		return around(s.Pen, s.Points...), s.Pen
	case report.Arc:
		var points []report.XY
		for i := range 65 {
			sin, cos := math.Sincos((s.From + (s.To-s.From)*float64(i)/64) * math.Pi / 180)
			points = append(points, report.XY{X: s.Center.X + s.RX*report.Point(cos), Y: s.Center.Y - s.RY*report.Point(sin)})
		}
		return around(s.Pen, points...), s.Pen
	}
	l.t.Fatalf("%T is no shape", s)
	return rect{}, report.Pen{}
}

func around(pen report.Pen, points ...report.XY) rect {
	half := float64(cmp.Or(pen.Width, report.Thin)) / 2
	if pen.None {
		half = 0
	}
	r := rect{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range points {
		r = rect{min(r.left, float64(p.X)-half), min(r.top, float64(p.Y)-half), max(r.right, float64(p.X)+half), max(r.bottom, float64(p.Y)+half)}
	}
	return r
}

// reader turns places into figures by two figures printed on a scale.
type reader struct{ figure, place, each float64 }

// levelScale reads the level scale whose figures stand at a height: those
// labels that are numbers and share one baseline with most others.
func (l look) levelScale() reader {
	l.t.Helper()
	rows := map[report.Point][]report.Label{}
	for _, label := range l.labels() {
		if _, err := strconv.ParseFloat(label.Text.String(), 64); err == nil && label.Turn == 0 {
			rows[label.At.Y] = append(rows[label.At.Y], label)
		}
	}
	var best []report.Label
	for _, row := range rows {
		if len(row) > len(best) || len(row) == len(best) && row[0].At.Y > best[0].At.Y {
			best = row
		}
	}
	if len(best) < 2 {
		l.t.Fatalf("no scale among %q", l.texts())
	}
	slices.SortFunc(best, func(a, b report.Label) int { return cmp.Compare(a.At.X, b.At.X) })
	a, b := best[1], best[len(best)-2] // those at the ends may be moved in
	if len(best) < 4 {
		a, b = best[0], best[len(best)-1]
	}
	return scaleOf(l.t, a.Text.String(), float64(a.At.X), b.Text.String(), float64(b.At.X))
}

// uprightScale reads a scale whose figures stand to the left, anchored at their
// end.
func (l look) uprightScale() reader {
	l.t.Helper()
	var list []report.Label
	for _, label := range l.labels() {
		if _, err := strconv.ParseFloat(label.Text.String(), 64); err == nil && label.Anchor == report.AnchorEndCentred {
			list = append(list, label)
		}
	}
	if len(list) < 2 {
		l.t.Fatalf("no scale among %q", l.texts())
	}
	a, b := list[0], list[len(list)-1]
	return scaleOf(l.t, a.Text.String(), float64(a.At.Y), b.Text.String(), float64(b.At.Y))
}

func scaleOf(t tester, a string, at float64, b string, bt float64) reader {
	t.Helper()
	fa, _ := strconv.ParseFloat(a, 64)
	fb, _ := strconv.ParseFloat(b, 64)
	if at == bt || fa == fb {
		t.Fatalf("%s at %v and %s at %v are no scale", a, at, b, bt)
	}
	return reader{fa, at, (fb - fa) / (bt - at)}
}

func (r reader) at(place report.Point) float64 { return r.figure + (float64(place)-r.place)*r.each }

// lines are the straight lines that a test picks.
func (l look) lines(pick func(report.Line) bool) []report.Line {
	var out []report.Line
	for _, s := range l.Shapes {
		if line, ok := s.(report.Line); ok && pick(line) {
			out = append(out, line)
		}
	}
	return out
}

func close2(a, b, by float64) bool { return math.Abs(a-b) <= by }
