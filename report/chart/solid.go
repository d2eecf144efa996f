package chart

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"stonewrit/grading/weight"
)

// axes are the directions of a view: to the right and up on the paper, and
// towards the reader.
type axes struct{ right, up, toward r3.Vec }

// The views. A solid has its length along x and its table towards z; face up
// the length stands upright, and in profile one looks along it.
func faceUp() axes { return axes{r3.Vec{Y: -1}, r3.Vec{X: 1}, r3.Vec{Z: 1}} }
func along() axes  { return axes{r3.Vec{Y: -1}, r3.Vec{Z: 1}, r3.Vec{X: -1}} }

func (a axes) of(p r3.Vec) r2.Vec { return r2.Vec{X: r3.Dot(a.right, p), Y: r3.Dot(a.up, p)} }

// seen are the corners of a solid in a view.
func seen(s weight.Solid, a axes) []r2.Vec {
	out := make([]r2.Vec, len(s.Vertices))
	for i, p := range s.Vertices {
		out[i] = a.of(p)
	}
	return out
}

// edge is an edge between two facets that face the reader.
type edge struct {
	from, to r2.Vec
	names    [2]string // of the facets
}

func (e edge) touches(name string) bool { return e.names[0] == name || e.names[1] == name }

// edgesOf lists the edges that are seen inside the outline of a view. Those
// between facets that only stand for a curved face are none.
func edgesOf(s weight.Solid, a axes) []edge {
	type pair struct{ from, to int }
	first := map[pair]weight.Facet{}
	var out []edge
	for _, f := range s.Facets {
		if r3.Dot(f.Normal, a.toward) < 1e-6 {
			continue
		}
		for i, p := range f.Corners {
			q := f.Corners[(i+1)%len(f.Corners)]
			k := pair{min(p, q), max(p, q)}
			g, ok := first[k]
			if !ok {
				first[k] = f
				continue
			}
			if f.Name == g.Name && curved(f.Name) {
				continue
			}
			out = append(out, edge{a.of(s.Vertices[k.from]), a.of(s.Vertices[k.to]), [2]string{g.Name, f.Name}})
		}
	}
	return out
}

// curved reports whether facets of the name stand for a curved face.
func curved(name string) bool { return name == "girdle" || name == "dome" || name == "base" }

// hull is the convex outline of places, against the clock from the lowest; a
// place on a straight side is left out.
func hull(places []r2.Vec) []r2.Vec {
	sorted := slices.Clone(places)
	slices.SortFunc(sorted, func(a, b r2.Vec) int { return cmp.Or(cmp.Compare(a.Y, b.Y), cmp.Compare(b.X, a.X)) })
	half := func(list []r2.Vec) []r2.Vec {
		var out []r2.Vec
		for _, p := range list {
			for len(out) >= 2 && r2.Cross(r2.Sub(out[len(out)-1], out[len(out)-2]), r2.Sub(p, out[len(out)-1])) <= 1e-9 {
				out = out[:len(out)-1]
			}
			out = append(out, p)
		}
		return out[:len(out)-1]
	}
	if len(sorted) < 3 {
		return sorted
	}
	up := half(sorted)
	slices.Reverse(sorted)
	return append(up, half(sorted)...)
}

// fitting moves and stretches a view a little, so that its extents are the
// measured ones: outlines of many corners are drawn to the right area and
// reach out too far by some parts in a thousand.
type fitting struct{ add, by r2.Vec }

// fitted finds the fitting that gives an outline the extents, about its middle.
func fitted(outline []r2.Vec, wide, long float64) fitting {
	low, high := extents(outline)
	return fitting{
		add: r2.Scale(-0.5, r2.Add(low, high)),
		by:  r2.Vec{X: wide / (high.X - low.X), Y: long / (high.Y - low.Y)},
	}
}

func (f fitting) of(p r2.Vec) r2.Vec {
	return r2.Vec{X: (p.X + f.add.X) * f.by.X, Y: (p.Y + f.add.Y) * f.by.Y}
}

func (f fitting) all(places []r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(places))
	for i, p := range places {
		out[i] = f.of(p)
	}
	return out
}

// extents are the lower left and upper right corner of the box round places.
func extents(places []r2.Vec) (low, high r2.Vec) {
	low, high = r2.Vec{X: math.Inf(1), Y: math.Inf(1)}, r2.Vec{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, p := range places {
		low = r2.Vec{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
		high = r2.Vec{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	return low, high
}
