package chart

import "stonewrit/report"

// Places of a workshop's dimension lines.
const (
	overshoot pt = 2.4 // of the lines out from the stone, beyond the dimension line
	clear     pt = 1.8 // between the stone and such a line
	above     pt = 2.7 // from a dimension line to the baseline of its figure
	tight     pt = 11  // a length that has no room for arrows inside
)

// level draws a level dimension from left to right at y, with lines out from
// the heights at which the stone ends there.
func (c *canvas) level(left, right, y, leftFrom, rightFrom pt, text string) {
	c.out(left, leftFrom, y)
	c.out(right, rightFrom, y)
	c.between(left, right, y)
	c.label(inside((left+right)/2, c.width(text), report.FigureWidth), y-above, black(text), report.AnchorMiddle)
}

// out draws a line from the stone to a dimension line at y, and a little on.
func (c *canvas) out(x, from, y pt) {
	side := pt(1)
	if y < from {
		side = -1
	}
	if (y-from)*side > clear {
		c.line(x, from+side*clear, x, y+side*overshoot, hairline())
	}
}

// outLevel is out for an upright dimension line at x.
func (c *canvas) outLevel(y, from, x pt) {
	side := pt(1)
	if x < from {
		side = -1
	}
	if (x-from)*side > clear {
		c.line(from+side*clear, y, x+side*overshoot, y, hairline())
	}
}

// upDown draws the line of an upright dimension from top to bottom: arrows
// inside, or outside where they have no room.
func (c *canvas) upDown(x, top, bottom pt) {
	pen := hairline()
	if bottom-top >= tight {
		c.line(x, top+3, x, bottom-3, pen)
		c.add(arrowhead(xy{X: x, Y: top}, 0, -1, pen), arrowhead(xy{X: x, Y: bottom}, 0, 1, pen))
		return
	}
	c.line(x, top-9, x, top-3, pen)
	c.line(x, bottom+3, x, bottom+9, pen)
	c.add(arrowhead(xy{X: x, Y: top}, 0, 1, pen), arrowhead(xy{X: x, Y: bottom}, 0, -1, pen))
}

// standing reports whether the figure of an upright dimension reads upwards
// along it; a short one has it level beside.
func (c *canvas) standing(high pt, text string) bool { return high >= c.width(text)+5 }

// figureRoom is what the figure of an upright dimension takes beside its line.
func (c *canvas) figureRoom(high pt, text string) pt {
	if c.standing(high, text) {
		return above + ascent
	}
	return 4 + c.width(text)
}

// figureLeft sets the figure of an upright dimension to the left of its line.
func (c *canvas) figureLeft(x, top, bottom pt, text string) {
	if c.standing(bottom-top, text) {
		c.upright(x-above, (top+bottom)/2, black(text))
		return
	}
	c.label(x-4, (top+bottom)/2, black(text), report.AnchorEndCentred)
}
