package chart

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// outlineOf is the outline of a shape that no solid is described for, its
// length upright. A shape without a form of its own is nil.
func outlineOf(shape string, wide, long float64) []r2.Vec {
	switch shape {
	case "round", "oval", "bead":
		return ellipse(wide, long)
	case "heart":
		return heart(wide, long)
	case "drop":
		return drop2(wide, long)
	}
	return nil
}

// smooth is how many corners a curve is drawn with.
const smooth = 96

func ellipse(wide, long float64) []r2.Vec {
	out := make([]r2.Vec, smooth)
	for i := range out {
		s, c := math.Sincos(2 * math.Pi * float64(i) / smooth)
		out[i] = r2.Vec{X: wide / 2 * c, Y: long / 2 * s}
	}
	return out
}

// heart is the curve x = 16 sin3 t, y = 13 cos t - 5 cos 2t - 2 cos 3t - cos 4t
// stretched to width and length, its point downwards (common practice, from
// memory).
func heart(wide, long float64) []r2.Vec {
	out := make([]r2.Vec, smooth)
	for i := range out {
		t := 2 * math.Pi * float64(i) / smooth
		out[i] = r2.Vec{X: 16 * math.Pow(math.Sin(t), 3), Y: 13*math.Cos(t) - 5*math.Cos(2*t) - 2*math.Cos(3*t) - math.Cos(4*t)}
	}
	return fitted(out, wide, long).all(out)
}

// drop2 is a circle as wide as the stone with its tangents from the point, which
// is up; a drop that is no longer than wide is an ellipse.
func drop2(wide, long float64) []r2.Vec {
	r := wide / 2
	if long <= wide*1.01 {
		return ellipse(wide, long)
	}
	middle := -long/2 + r
	reach := math.Asin(r / (long/2 - middle)) // height above the middle at which a tangent touches
	out := []r2.Vec{{Y: long / 2}}
	for i := range smooth + 1 {
		t := math.Pi - reach + (math.Pi+2*reach)*float64(i)/smooth
		s, c := math.Sincos(t)
		out = append(out, r2.Vec{X: r * c, Y: middle + r*s})
	}
	return out
}
