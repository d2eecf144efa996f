package weight

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// parallel tells whether the steps of a shape run parallel to its sides, all
// equally far in, so that a long stone ends in a keel. Steps of the other
// shapes shrink the outline toward its middle.
func parallel(shape string) bool {
	switch shape {
	case "square", "rectangle", "baguette", "tapered baguette",
		"cut-corner square", "cut-corner rectangle", "octagon":
		return true
	}
	return false
}

// A curve gives the height of a row of facets, from 0 at the girdle to 1, over
// the way in, from 0 to 1.
type curve func(in float64) float64

// steepening rises with slope 1+by at the girdle and 1-by at the end.
func steepening(by float64) curve {
	return func(in float64) float64 { return in * (1 + by*(1-in)) }
}

// domed is a quarter of an ellipse.
func domed(in float64) float64 { return math.Sqrt(in * (2 - in)) }

// steps gives rows of facets from the girdle edge at height edge, rising (up
// +1) or falling (up -1) by height while they run in by the share inset of
// half the reference.
func (m makeRow) steps(f frame, p proportions, name string, c curve, inset, height, edge, up float64) []halfSpace {
	var out []halfSpace
	n := float64(m.tiers)
	for k := range m.tiers {
		u0, u1 := float64(k)/n, float64(k+1)/n
		z0, z1 := height*c(u0), height*c(u1)
		slope := (z1 - z0) / ((u1 - u0) * inset)
		tier := fmt.Sprintf("%s step %d", name, k+1)
		for _, d := range m.directions(f) {
			in := p.reference / 2 // the way in, in mm
			if !parallel(m.shape) {
				in = d.dist
			}
			// At the distance dist - u inset in, the height is z.
			n := r3.Vec{X: d.normal.X * slope / in, Y: d.normal.Y * slope / in, Z: up}
			out = append(out, newHalfSpace(tier, n, slope*(d.dist/in-u0*inset)+z0+up*edge))
		}
	}
	return out
}

// directions are the ways that the facets of a step face: square to the sides,
// or sixteen ways around a curved outline.
func (m makeRow) directions(f frame) []side {
	if len(f.o) <= 8 {
		return f.o.sides()
	}
	out := make([]side, 16)
	for k := range out {
		s, c := math.Sincos(2 * math.Pi * float64(k) / 16)
		n := r2.Unit(r2.Vec{X: c / f.a, Y: s / f.b})
		out[k] = side{n, f.o.support(n)}
	}
	return out
}
