package weight

import (
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r2"
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

// steps gives rows of facets that rise from the girdle edge by height while
// they run in by the share inset of half the reference.
func (m makeRow) steps(f *frame, p proportions, name string, c curve, inset, height float64) []rise {
	directions := m.directions(f)
	out := make([]rise, 0, m.tiers*len(directions)+1)
	n := float64(m.tiers)
	for k := range m.tiers {
		u0, u1 := float64(k)/n, float64(k+1)/n
		z0, z1 := height*c(u0), height*c(u1)
		slope := (z1 - z0) / ((u1 - u0) * inset)
		tier := name + " step " + strconv.Itoa(k+1)
		for _, d := range directions {
			in := p.reference / 2 // the way in, in mm
			if !parallel(m.shape) {
				in = d.dist
			}
			// At the distance dist - u inset in, the height is z.
			out = append(out, rise{tier, plane{slope*(d.dist/in-u0*inset) + z0, r2.Scale(slope/in, d.normal)}})
		}
	}
	return out
}

// directions are the ways that the facets of a step face: square to the sides,
// or sixteen ways around a curved outline.
func (m makeRow) directions(f *frame) []side {
	if len(f.o) <= 8 {
		return f.o.sides()
	}
	out := make([]side, 0, waysAround/2)
	for k := 0; k < waysAround; k += 2 {
		out = append(out, f.ways[k])
	}
	return out
}
