package report

import (
	"crypto/sha256"
	"slices"

	"stonewrit/templates"
)

const (
	module      Point = 1.2 // side of a module of the code: 0.42 mm
	quietZone         = 4   // modules of white above and below: ISO/IEC 18004, 9.1; beside it the page is white
	codeOverlap Point = 0.04
)

// code is the code of a numbered document, small.
func (c *composer) code() []Block {
	if c.Code == nil || c.Number == "" || len(c.JSON) == 0 {
		return nil
	}
	rows, err := c.Code(c.Number, sha256.Sum256(c.JSON))
	if err != nil {
		if c.err == nil {
			c.err = err
		}
		return nil
	}
	return []Block{Figure{
		Width: Point(len(rows)) * module, Height: Point(len(rows)+2*quietZone) * module, Shapes: modules(rows),
		Caption: c.say("verify.code", templates.None{}), Alt: c.line("alt.code", templates.None{}),
	}}
}

// modules draws the dark modules, those of a row that touch as one. Each
// reaches a little below itself, or white lines could show between rows.
func modules(rows [][]bool) []Shape {
	var shapes []Shape
	for y, row := range rows {
		for x := 0; x < len(row); {
			if !row[x] {
				x++
				continue
			}
			run := slices.Index(row[x:], false)
			if run < 0 {
				run = len(row) - x
			}
			dark := Rectangle(XY{Point(x) * module, Point(y+quietZone) * module}, Point(run)*module, module+codeOverlap)
			dark.Pen, dark.Fill = Pen{None: true}, Fill{Solid: true}
			shapes, x = append(shapes, dark), x+run
		}
	}
	return shapes
}
