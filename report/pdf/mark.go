package pdf

import "stonewrit/report"

// markRoom is the width that a mark takes before the text it belongs to.
const markRoom Point = 12

// mark draws a mark at x, centred on the lower-case letters of a line.
func (p *typeface) mark(m report.Mark, x, y, lead Point) []Placed {
	size := sizeFor(lead)
	radius := size * 0.29
	center := report.XY{X: x + radius*1.4, Y: y + p.baseline(size, lead) - size*0.31}
	var out []Placed
	for _, shape := range report.MarkShapes(m, center, radius) {
		out = append(out, p.shape(shape)...)
	}
	return out
}
