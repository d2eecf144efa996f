package pdf

import (
	"math"
	"slices"
	"strconv"

	"stonewrit/report"
)

// content writes what a page shows, as operators of a content stream. It is
// handed places counted from the upper left corner of the page, and turns them
// over: PDF counts from the lower left. Clauses are of ISO 32000-1.
type content struct {
	out    []byte
	height Point
	accent report.Color
	fonts  [faceCount]*embedded
	pics   *pictures

	// What the operators before have set; all unset at the beginning of a page.
	font        Face
	size        Point
	fill        *report.Color
	pen         *penState
	coordinates [6]float64 // scratch
}

// penState is what lines are drawn with.
type penState struct {
	color report.Color
	width Point
	dash  []Point
}

func (c *content) item(it Placed) {
	switch it := it.(type) {
	case Text:
		c.text(it)
	case Path:
		c.path(it)
	case Picture:
		c.described(it.Image.Alt, func() { c.picture(it) })
	case Drawing:
		c.described(it.Alt, func() {
			for _, inner := range it.Items {
				c.item(inner)
			}
		})
	}
}

// described draws something as marked content with its description in words
// (14.9.3).
func (c *content) described(alt string, draw func()) {
	if alt == "" {
		draw()
		return
	}
	c.out = append(c.out, "/Span <</Alt "+textString(alt)+">> BDC\n"...)
	draw()
	c.op("EMC")
}

// text shows one line of text (9.4).
func (c *content) text(t Text) {
	c.useFill(t.Ink.rgb(c.accent))
	c.op("BT")
	if c.size != t.Size || c.font != t.Face {
		c.font, c.size = t.Face, t.Size
		c.out = append(c.out, t.Face.resource()+" "...)
		c.op("Tf", float64(t.Size))
	}
	x, y := float64(t.At.X), float64(c.height-t.At.Y)
	if t.Turn == 0 {
		c.op("Td", x, y)
	} else {
		sin, cos := math.Sincos(t.Turn * math.Pi / 180)
		c.op("Tm", cos, sin, -sin, cos, x, y)
	}
	c.literal(c.fonts[t.Face].codes(t.S))
	c.op("Tj")
	c.op("ET")
}

// literal writes a string (7.3.4.2).
func (c *content) literal(s []byte) {
	c.out = append(c.out, '(')
	for _, b := range s {
		switch b {
		case '(', ')', '\\':
			c.out = append(c.out, '\\', b)
		case '\r': // readers take a bare one for a line feed
			c.out = append(c.out, '\\', 'r')
		default:
			c.out = append(c.out, b)
		}
	}
	c.out = append(c.out, ')')
}

// path draws lines and outlines (8.5).
func (c *content) path(p Path) {
	c.usePen(p)
	for _, part := range p.Parts {
		c.at("m", part.Start)
		for _, s := range part.Steps {
			if s.Curved {
				c.at("c", s.C1, s.C2, s.To)
			} else {
				c.at("l", s.To)
			}
		}
		if part.Closed {
			c.op("h")
		}
	}
	switch {
	case p.Fill.Solid && p.Pen.None:
		c.op("f")
	case p.Fill.Solid:
		c.op("B")
	case p.Pen.None:
		c.op("n")
	default:
		c.op("S")
	}
}

// usePen sets pen and fill where they change (8.4).
func (c *content) usePen(p Path) {
	pen := penState{color: p.Ink.rgb(c.accent), width: p.Pen.Width, dash: p.Pen.Dash}
	switch {
	case p.Pen.Accent:
		pen.color = InkAccent.rgb(c.accent)
	case p.Pen.Grey > 0:
		pen.color = grey(p.Pen.Grey)
	}
	if !p.Pen.None {
		old := c.pen
		if old == nil || old.color != pen.color {
			c.color("RG", pen.color)
		}
		if old == nil || old.width != pen.width {
			c.op("w", float64(pen.width))
		}
		if old == nil && len(pen.dash) > 0 || old != nil && !slices.Equal(old.dash, pen.dash) {
			c.out = append(c.out, '[')
			for _, v := range pen.dash {
				c.number(float64(v))
			}
			c.out = append(c.out, ']', ' ')
			c.op("d", 0)
		}
		c.pen = &pen
	}
	if p.Fill.Solid {
		fill := grey(p.Fill.Grey)
		if p.Fill.Grey == 0 {
			fill = InkBlack.rgb(c.accent)
		}
		c.useFill(fill)
	}
}

func (c *content) useFill(fill report.Color) {
	if c.fill == nil || *c.fill != fill {
		c.color("rg", fill)
		c.fill = &fill
	}
}

func grey(v float64) report.Color {
	g := uint8(min(max(v, 0), 1) * 255)
	return report.Color{R: g, G: g, B: g}
}

// picture paints a picture: a unit square, stretched and moved to its box
// (8.9.5).
func (c *content) picture(p Picture) {
	c.op("q")
	c.op("cm", float64(p.Box.W), 0, 0, float64(p.Box.H), float64(p.Box.X), float64(c.height-p.Box.Y-p.Box.H))
	c.op("/" + c.pics.name(p.Image) + " Do")
	c.op("Q")
}

func (c *content) at(operator string, places ...report.XY) {
	list := c.coordinates[:0]
	for _, p := range places {
		list = append(list, float64(p.X), float64(c.height-p.Y))
	}
	c.op(operator, list...)
}

func (c *content) color(operator string, v report.Color) {
	c.op(operator, float64(v.R)/255, float64(v.G)/255, float64(v.B)/255)
}

// op writes an operator after its operands (7.8.2).
func (c *content) op(operator string, operands ...float64) {
	for _, v := range operands {
		c.number(v)
	}
	c.out = append(c.out, operator...)
	c.out = append(c.out, '\n')
}

// number writes a number to a thousandth, without what it does not need, and a
// space.
func (c *content) number(v float64) {
	before := len(c.out)
	c.out = strconv.AppendFloat(c.out, v, 'f', 3, 64)
	end := len(c.out)
	for c.out[end-1] == '0' {
		end--
	}
	if c.out[end-1] == '.' {
		end--
	}
	c.out = c.out[:end]
	if string(c.out[before:]) == "-0" {
		c.out = append(c.out[:before], '0')
	}
	c.out = append(c.out, ' ')
}
