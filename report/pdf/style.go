package pdf

import (
	"math"

	"stonewrit/report"
)

// Point is a length on the page, 1/72 inch.
type Point = report.Point

// The three sizes of text and the distance of their baselines. There are no
// others on any page.
const (
	sizeLarge Point = 16
	sizeBody  Point = 10
	sizeSmall Point = 8

	leadLarge Point = 20.5
	leadBody  Point = 13.6
	leadSmall Point = 10.6
)

// Where things stand on a page, the same for both papers.
const (
	edgeLeft   Point = 51 // left edge of the margin column
	edgeRight  Point = 51 // white to the right of the main column
	edgeTop    Point = 36 // white above the head
	edgeBottom Point = 34 // white below the foot
	marginWide Point = 94 // the column of section names
	gutter     Point = 18 // between margin and main column
	mainLeft         = edgeLeft + marginWide + gutter
	safeEdge   Point = 18  // nothing may come nearer to the edge of the paper
	afterHead  Point = 22  // white between head and text
	aboveFoot  Point = 12  // white between text and foot
	betweenSec Point = 9   // white above and below the line between sections
	between    Point = 6.5 // white between blocks
	ruleThin   Point = 0.35
	ruleThick  Point = 0.7
)

// leading is the distance of baselines for text of size.
func leading(size Point) Point {
	switch {
	case size >= sizeLarge:
		return leadLarge
	case size >= sizeBody:
		return leadBody
	}
	return leadSmall
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
