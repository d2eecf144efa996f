package report

// FigureWidth is the width that a drawing may take in the main column of
// either page size; FigureWideWidth the width when it takes the left margin
// too. FigureHeight is the greatest height that fits a page below its head.
const (
	FigureWidth     Point = 372
	FigureWideWidth Point = 488
	FigureHeight    Point = 480
)

// Figure is a drawing in ink: a list of shapes in a box of Width by Height.
// Coordinates count from the upper left corner, x to the right, y downwards.
// Later shapes are drawn over earlier ones. A drawing wider than FigureWidth
// takes the left margin too.
type Figure struct {
	Width, Height Point
	Shapes        []Shape
	Caption       Text
	Alt           string // says in words what the drawing shows
	Aside         bool   // stands in the margin, without its caption, if it is small enough
}

// XY is a place in a drawing.
type XY struct{ X, Y Point }

// Shape is one of Line, Polyline, Polygon, Arc and Label.
type Shape interface{ shape() }

// Pen is how a line is drawn. The zero pen is a thin black line.
type Pen struct {
	Width  Point   // zero is Thin
	Grey   float64 // 0 black to 1 white
	Accent bool    // in the document's accent colour instead
	Dash   []Point // lengths drawn and left out in turn; none is a full line
	None   bool    // no line at all, for a Polygon that is only filled
}

// Three line widths are enough.
const (
	Hairline Point = 0.4
	Thin     Point = 0.7
	Thick    Point = 1.4
)

// Fill is what stands inside a closed shape. The zero fill is nothing.
type Fill struct {
	Solid bool    // an even grey
	Grey  float64 // of a solid fill: 0 black to 1 white
	Hatch Point   // distance between hatch lines; zero is no hatching
	Angle float64 // of the hatch lines, degrees from the horizontal, upwards to the right
}

// Line joins two places.
type Line struct {
	From, To XY
	Pen      Pen
}

// Polyline joins several.
type Polyline struct {
	Points []XY
	Pen    Pen
}

// Polygon is a closed outline.
type Polygon struct {
	Points []XY
	Pen    Pen
	Fill   Fill
}

// Arc is part of an ellipse whose axes are horizontal and vertical. Angles are
// degrees from the right, counted upwards (against the clock); an arc from 0
// to 360 is closed and may be filled solid.
type Arc struct {
	Center   XY
	RX, RY   Point
	From, To float64
	Pen      Pen
	Fill     Fill
}

// Anchor is the point of a label that stands at its place.
type Anchor uint8

// Anchors: start, middle or end of the text, on its baseline or at the middle
// of its capitals' height.
const (
	AnchorStart Anchor = iota
	AnchorMiddle
	AnchorEnd
	AnchorStartCentred
	AnchorMiddleCentred
	AnchorEndCentred
)

// Label is one line of text in the small size. Turn is degrees against the
// clock: 90 reads upwards.
type Label struct {
	At     XY
	Text   Text
	Anchor Anchor
	Turn   float64
}

func (Line) shape()     {}
func (Polyline) shape() {}
func (Polygon) shape()  {}
func (Arc) shape()      {}
func (Label) shape()    {}

// Rectangle is the polygon of a rectangle with sides along the page.
func Rectangle(at XY, width, height Point) Polygon {
	return Polygon{Points: []XY{at, {at.X + width, at.Y}, {at.X + width, at.Y + height}, {at.X, at.Y + height}}}
}

// Disc is a filled circle.
func Disc(center XY, radius Point) Arc {
	return Arc{Center: center, RX: radius, RY: radius, To: 360, Pen: Pen{None: true}, Fill: Fill{Solid: true}}
}

// MarkShapes draws a mark of the given radius, for drawings that need the same
// signs as the text.
func MarkShapes(m Mark, center XY, radius Point) []Shape {
	ring := Arc{Center: center, RX: radius, RY: radius, To: 360, Pen: Pen{Width: radius / 3.2}}
	switch m {
	case MarkFilled:
		return []Shape{Disc(center, radius+radius/6.4)}
	case MarkOpen:
		return []Shape{ring}
	case MarkStruck:
		d := radius * 1.05
		return []Shape{ring, Line{From: XY{center.X - d, center.Y + d}, To: XY{center.X + d, center.Y - d}, Pen: Pen{Width: radius / 2.6}}}
	}
	return nil
}
