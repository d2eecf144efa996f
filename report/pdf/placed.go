package pdf

import (
	"math"

	"stonewrit/report"
)

// Page is a page with everything placed on it.
type Page struct {
	Width, Height Point
	Items         []Placed
	Sections      []SectionStart // sections that begin here, for the outline
}

// SectionStart says where a section begins on its page.
type SectionStart struct {
	Name string
	Y    Point
}

// Placed is an item with its place: a Text, a Path, a Picture or a Drawing.
type Placed interface {
	// Bounds is the box that the item's ink stays within.
	Bounds() Rect
	moved(dx, dy Point) Placed
}

// Rect is a box on the page; X, Y is its upper left corner.
type Rect struct{ X, Y, W, H Point }

func (r Rect) moved(dx, dy Point) Rect {
	return Rect{round(r.X + dx), round(r.Y + dy), r.W, r.H}
}

// overlaps reports whether two boxes share more than slack in both directions.
func (r Rect) overlaps(o Rect, slack Point) bool {
	return r.X+slack < o.X+o.W && o.X+slack < r.X+r.W && r.Y+slack < o.Y+o.H && o.Y+slack < r.Y+r.H
}

// Text is one line, or part of a line, in one voice.
type Text struct {
	At   report.XY // left end of the baseline
	S    string
	Face Face
	Size Point
	Ink  Ink
	Turn float64 // degrees against the clock about At

	Accent bool // an accent set on the text before it
	box    Rect
}

// Bounds is the box from the typeface's ascent to its descent.
func (t Text) Bounds() Rect { return t.box }

func (t Text) moved(dx, dy Point) Placed {
	t.At = report.XY{X: round(t.At.X + dx), Y: round(t.At.Y + dy)}
	t.box = t.box.moved(dx, dy)
	return t
}

// Path is a line or an outline.
type Path struct {
	Parts []Part
	Pen   report.Pen
	Fill  report.Fill // solid or none; hatching is lines of its own
	Ink   Ink         // where the pen has no grey of its own
	box   Rect
}

// Part is one unbroken part of a Path: Start, then straight lines and curves.
type Part struct {
	Start  report.XY
	Steps  []Step
	Closed bool
}

// Step goes on to To, straight or, if Curved, as a cubic curve pulled by C1
// and C2.
type Step struct {
	C1, C2, To report.XY
	Curved     bool
}

// Bounds is the box round the line's points and the width of its pen.
func (p Path) Bounds() Rect { return p.box }

func (p Path) moved(dx, dy Point) Placed {
	shift := func(q report.XY) report.XY { return report.XY{X: round(q.X + dx), Y: round(q.Y + dy)} }
	parts := make([]Part, len(p.Parts))
	for i, part := range p.Parts {
		steps := make([]Step, len(part.Steps))
		for j, s := range part.Steps {
			steps[j] = Step{shift(s.C1), shift(s.C2), shift(s.To), s.Curved}
		}
		parts[i] = Part{shift(part.Start), steps, part.Closed}
	}
	p.Parts, p.box = parts, p.box.moved(dx, dy)
	return p
}

// Picture is an image in its box.
type Picture struct {
	Image *report.Image
	Box   Rect
}

// Bounds is the box of the picture.
func (p Picture) Bounds() Rect { return p.Box }

func (p Picture) moved(dx, dy Point) Placed {
	p.Box = p.Box.moved(dx, dy)
	return p
}

// Drawing is a figure: its items in their order, and what they show in words.
type Drawing struct {
	Items []Placed
	Alt   string
	Box   Rect
}

// Bounds is the box of the figure.
func (d Drawing) Bounds() Rect { return d.Box }

func (d Drawing) moved(dx, dy Point) Placed {
	items := make([]Placed, len(d.Items))
	for i, it := range d.Items {
		items[i] = it.moved(dx, dy)
	}
	d.Items, d.Box = items, d.Box.moved(dx, dy)
	return d
}

// round keeps coordinates to a hundredth of a point, so that two processors
// that differ in the last bit of a float still place alike.
func round(p Point) Point { return Point(math.Round(float64(p)*100) / 100) }

// rule is a horizontal line.
func rule(x, y, width, thick Point, ink Ink) Path {
	return Path{
		Parts: []Part{{Start: report.XY{X: x, Y: y}, Steps: []Step{{To: report.XY{X: x + width, Y: y}}}}},
		Pen:   report.Pen{Width: thick}, Ink: ink,
		box: Rect{x, y - thick/2, width, thick},
	}
}
