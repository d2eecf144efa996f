package chart

import (
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"stonewrit/grading/weight"
	"stonewrit/report"
)

// Making is a cut to be drawn.
type Making struct {
	Dimensions weight.Dimensions
	// Body is the cut as a solid; nil where none is described, and the outline
	// is drawn alone.
	Body *weight.Body
	// Rim is a solid of another cut with the same outline, for want of Body.
	Rim *weight.Body
}

// makingChart is the work on a making drawing.
type makingChart struct {
	canvas
	in     Making
	d      weight.Dimensions
	wide   float64 // extents in mm
	long   float64
	rim    []r2.Vec // outline face up, mm
	side   []r2.Vec // outline in profile, mm, the girdle's upper edge at 0; nil for none
	fits   fitting  // of what is seen face up
	k      pt       // points for each millimetre of the stone
	scale  string
	dashed bool // something rests on usual proportions
}

// Making draws the cut like a workshop drawing: in profile, one half in section
// and one as seen, and face up, to scale, with its measured lengths in
// millimetres. Edges that rest on usual proportions are dashed. Without a solid
// the outline stands alone; beads are a circle. It returns false where the
// dimensions do not tell what to draw.
func (d Drawer) Making(in Making) (report.Figure, bool) {
	c := makingChart{canvas: canvas{Drawer: d}, in: in, d: in.Dimensions}
	for _, word := range []*string{&c.Words.Profile, &c.Words.FaceUp} {
		if c.width(*word) > widestWord {
			*word = "" // the views would have no room beside them
		}
	}
	if !c.measure() {
		return report.Figure{}, false
	}
	c.draw()
	alt := fill(d.Words.MakingAlt, "figures", strings.Join(c.lengths(), " × "))
	return c.figure(report.FigureWidth, d.Words.MakingCaption, alt), true
}

// Extents in mm between which a stone is drawn.
const leastMM, mostMM = 0.2, 900

// measure finds outlines and extents.
func (c *makingChart) measure() bool {
	c.long, c.wide = c.d.Length.Value, c.d.Width.Value
	if c.circular() && !c.d.Width.Given() {
		c.wide = c.long
	}
	if !(c.long >= leastMM && c.long <= mostMM && c.wide >= leastMM && c.wide <= mostMM) {
		return false
	}
	switch body := c.in.Body; {
	case c.d.Shape == "bead":
		c.in.Body, c.rim = nil, ellipse(c.wide, c.long)
	case body != nil && sound3(body):
		c.take(body)
		c.side = c.profile()
	case c.in.Rim != nil:
		c.take(c.in.Rim)
	default:
		c.rim = outlineOf(c.d.Shape, c.wide, c.long)
	}
	return len(c.rim) > 2
}

// sound3 reports whether a body has faces and heights.
func sound3(b *weight.Body) bool {
	return len(b.Facets) > 3 && b.Crown+b.Girdle+b.Pavilion > 0 && b.Crown+b.Girdle+b.Pavilion < mostMM
}

func (c *makingChart) take(body *weight.Body) {
	rim := hull(seen(body.Solid, faceUp()))
	c.fits = fitted(rim, c.wide, c.long)
	c.rim = c.fits.all(rim)
}

func (c *makingChart) circular() bool { return c.d.Shape == "round" || c.d.Shape == "bead" }

// lengths are length, width and depth as printed.
func (c *makingChart) lengths() []string {
	var out []string
	for _, m := range []weight.Measure{c.d.Length, c.d.Width, c.d.Depth} {
		if m.Given() {
			out = append(out, c.mm(m.Value))
		}
	}
	return out
}

func (c *makingChart) mm(v float64) string { return c.Words.number(v, 2) }

// diameter writes an extent, with the sign of a diameter on a round stone.
func (c *makingChart) diameter(v float64) string {
	if c.circular() {
		return "Ø\u00a0" + c.mm(v)
	}
	return c.mm(v)
}

// ofWidth is a per cent of the length that per cents are of, in mm.
func (c *makingChart) ofWidth(m weight.Measure) float64 {
	if c.d.Shape == "round" {
		return m.Value / 100 * (c.wide + c.long) / 2
	}
	return m.Value / 100 * c.wide
}

// assumed reports whether a figure of the body is a usual one.
func (c *makingChart) assumed(name string) bool {
	return c.in.Body != nil && slices.Contains(c.in.Body.Assumed, name)
}

// open tells which heights no measured figure fixes: with the depth, one of the
// two fixes the other one.
func (c *makingChart) open() (crown, pavilion bool) {
	crown, pavilion = c.assumed("crown"), c.assumed("pavilion")
	if c.d.Depth.Given() || c.d.TotalDepth.Given() {
		both := crown && pavilion
		return both, both
	}
	return crown, pavilion
}
