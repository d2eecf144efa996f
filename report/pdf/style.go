package pdf

import (
	"math"

	"stonewrit/report"
)

// Point is a length on the page, 1/72 inch.
type Point = report.Point

// The three sizes of text. There are no others on any page.
const (
	sizeLarge Point = 16
	sizeBody  Point = 10
	sizeSmall Point = 8
)

// From these distances of baselines on, text is of the large and of the body
// size.
const (
	leastLeadLarge Point = 18
	leastLeadBody  Point = 12
)

const (
	safeEdge  Point = 18 // nothing may come nearer to the edge of the paper
	ruleThin  Point = 0.35
	ruleThick Point = 0.7
)

// grid is where things stand on a page and how close, the same for both papers.
type grid struct {
	edge       Point // white to the left of the margin column and to the right of the main one
	top        Point // white above the head
	bottom     Point // white below the foot
	margin     Point // the column of section names
	gutter     Point // between margin and main column
	footLeast  Point // least height of the foot
	aboveTitle Point // white above the line over the title
	afterDraft Point // white below the word for a draft
	afterHead  Point // white between head and text
	aboveFoot  Point // white between text and foot
	betweenSec Point // white above and below the line between sections
	between    Point // white between blocks
	rowPad     Point // white above and below a row of a table

	leadPhotoWide, leadPhotoHigh   Point // the most that the photo on page one takes
	leadLarge, leadBody, leadSmall Point // distance of the baselines
}

// wideGrid is that of most documents.
func wideGrid() grid {
	return grid{
		edge: 51, top: 36, bottom: 34, margin: 94, gutter: 18, footLeast: 21.2, aboveTitle: 9, afterDraft: 8, afterHead: 22, aboveFoot: 12,
		betweenSec: 9, between: 6.5, rowPad: 2.6,
		leadPhotoWide: 138, leadPhotoHigh: 150, leadLarge: 20.5, leadBody: 13.6, leadSmall: 10.6,
	}
}

// gridsOf are the grids that a document may stand on, the widest first. A short
// form should keep to one page.
func gridsOf(short bool) []grid {
	if !short {
		return []grid{wideGrid()}
	}
	near := grid{
		edge: 45, top: 30, bottom: 26, margin: 74, gutter: 13, footLeast: 18, aboveTitle: 7, afterDraft: 2, afterHead: 13, aboveFoot: 8,
		betweenSec: 5, between: 4, rowPad: 1.4,
		leadPhotoWide: 106, leadPhotoHigh: 96, leadLarge: 19, leadBody: 12.6, leadSmall: 9.9,
	}
	closer, closest := near, near
	closer.leadSmall, closer.between, closer.betweenSec, closer.rowPad = 9.6, 3.5, 4, 1
	closer.edge, closer.margin, closer.gutter = 41, 68, 12
	closest.edge, closest.margin, closest.gutter = 37, 66, 12
	closest.top, closest.bottom, closest.footLeast, closest.aboveFoot = 24, 20, 15, 4
	closest.aboveTitle, closest.afterDraft, closest.afterHead = 5, 1, 8
	closest.betweenSec, closest.between, closest.rowPad = 3, 2.6, 0.7
	closest.leadLarge, closest.leadBody, closest.leadSmall = 18.6, 12.4, 9.3
	return []grid{near, closer, closest}
}

// mainLeft is the left edge of the main column.
func (g grid) mainLeft() Point { return g.edge + g.margin + g.gutter }

// leading is the distance of baselines for text of size.
func (g grid) leading(size Point) Point {
	switch {
	case size >= sizeLarge:
		return g.leadLarge
	case size >= sizeBody:
		return g.leadBody
	}
	return g.leadSmall
}

// Ink is one of the few inks that a page is printed with.
type Ink uint8

// The inks. Grey is dark enough for small text on white: contrast 5.9 to 1.
const (
	InkBlack Ink = iota
	InkGrey
	InkPale // lines between rows, never text
	InkAccent
)

// rgb returns the colour of an ink.
func (k Ink) rgb(accent report.Color) report.Color {
	switch k {
	case InkGrey:
		return report.Color{R: 0x60, G: 0x60, B: 0x60}
	case InkPale:
		return report.Color{R: 0xb4, G: 0xb4, B: 0xb4}
	case InkAccent:
		return printable(accent)
	}
	return report.Color{R: 0x14, G: 0x14, B: 0x14}
}

// printable returns the accent colour, darkened until text in it stands out
// from white paper by at least 4.5 to 1 (WCAG 2.2, success criterion 1.4.3).
// The zero colour is the built-in accent.
func printable(c report.Color) report.Color {
	if c == (report.Color{}) {
		return report.Color{R: 0x1f, G: 0x3d, B: 0x52}
	}
	for contrast(c) < 4.5 {
		c.R, c.G, c.B = darker(c.R), darker(c.G), darker(c.B)
	}
	return c
}

func darker(v uint8) uint8 { return uint8(float64(v) * 0.94) }

// contrast is the contrast ratio of a colour against white: WCAG 2.2, terms
// "contrast ratio" and "relative luminance".
func contrast(c report.Color) float64 {
	linear := func(v uint8) float64 {
		x := float64(v) / 255
		if x <= 0.04045 {
			return x / 12.92
		}
		return math.Pow((x+0.055)/1.055, 2.4)
	}
	return 1.05 / (0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B) + 0.05)
}
