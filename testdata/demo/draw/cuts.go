package main

import "math"

// plane bounds a solid: inside is where the dot product with n is at most d.
type plane struct {
	n vec
	d float64
}

// solid is the convex body inside all its planes: the table at the top, the
// middle of the girdle at z = 0.
type solid []plane

// tangent is a straight line touching the outline, at distance h from the middle.
type tangent struct{ cos, sin, h float64 }

// outline gives n tangents spaced around the girdle, the first at phase.
type outline func(n int, phase float64) []tangent

// tier is a row of facets. Slope is that of a round stone of the same width; at
// the girdle's edge the row stands at at times the outline.
type tier struct {
	n         int
	phase     float64 // in steps between facets
	slope, at float64
}

// cut is a crown above and a pavilion below a girdle, for half a width of one.
type cut struct {
	crown, pavilion []tier
	tableHeight     float64
	culetDepth      float64 // below the girdle, where it is cut off
	steps           bool    // rows run parallel to the outline and meet in a keel, not in a point
}

const girdle = 0.045 // thickness, of half a width

// chain lets each row begin where the one before it ends: ends are the distances
// from the middle, of the outline, at which rows end.
func chain(n int, phase float64, slopes, ends []float64) (rows []tier, height float64) {
	at := 1.0
	for i, slope := range slopes {
		rows = append(rows, tier{n, phase, slope, at})
		height = (at - ends[i]) * slope
		if i+1 < len(slopes) {
			at = ends[i] + height/slopes[i+1]
		}
	}
	return rows, height
}

// build makes the solid of a cut for an outline, scaled to the whole depth.
func (c cut) build(o outline, width, depth float64) solid {
	half := width / 2
	tall := depth / (c.tableHeight + c.culetDepth + girdle)
	var s solid
	for _, t := range o(64, 0) {
		s = append(s, plane{vec{t.cos, t.sin, 0}, t.h})
	}
	add := func(rows []tier, up float64) {
		for _, row := range rows {
			for _, t := range o(row.n, row.phase) {
				s = append(s, c.facet(t, row, half, tall, up))
			}
		}
	}
	add(c.crown, 1)
	add(c.pavilion, -1)
	s = append(s, plane{vec{0, 0, 1}, (c.tableHeight + girdle/2) * tall})
	return append(s, plane{vec{0, 0, -1}, (c.culetDepth + girdle/2) * tall})
}

func (c cut) facet(t tangent, row tier, half, tall, up float64) plane {
	edge, level := t.h*row.at, t.h/half
	if c.steps {
		edge, level = t.h+(row.at-1)*half, 1
	}
	rise := level * half / (row.slope * tall)
	n := vec{t.cos, t.sin, up * rise}
	d := edge + rise*girdle/2*tall
	return plane{n.unit(), d / n.length()}
}

// brilliant is the round brilliant's plan: kite, star and paired girdle facets.
// Angles are near those usual for diamond (common practice, no source); the
// paired facets are as steep as makes rows meet halfway on the crown and at four
// fifths on the pavilion.
func brilliant() cut {
	const main, table = 0.687, 0.57 // tangent of 34.5 degrees
	height := (1 - table) * main
	star := 0.39
	starAt := table*math.Cos(math.Pi/8) + height/star
	return cut{
		crown:       []tier{{8, 0, main, 1}, {16, 0.5, 0.805, 1}, {8, 0.5, star, starAt}},
		pavilion:    []tier{{8, 0, 0.862, 1}, {16, 0.5, 0.876, 1}},
		tableHeight: height, culetDepth: 0.855,
	}
}

// mixed is a brilliant crown over a stepped pavilion.
func mixed() cut {
	c := brilliant()
	c.pavilion, c.culetDepth = chain(16, 0.5, []float64{1.5, 1.02, 0.84}, []float64{0.80, 0.42, 0.04})
	return c
}

// stepped has rows of facets parallel to the girdle above and below.
func stepped() cut {
	c := cut{steps: true}
	c.crown, c.tableHeight = chain(8, 0, []float64{1.15, 0.80, 0.55}, []float64{0.88, 0.74, 0.60})
	c.pavilion, c.culetDepth = chain(8, 0, []float64{1.6, 1.05, 0.80}, []float64{0.80, 0.48, 0.03})
	return c
}

// curve gives points of an outline for an angle; tangents follow from it.
func curve(at func(angle float64) (x, y float64)) outline {
	return func(n int, phase float64) []tangent {
		out := make([]tangent, n)
		for i := range out {
			a := (float64(i) + phase) * 2 * math.Pi / float64(n)
			x0, y0 := at(a - 1e-5)
			x1, y1 := at(a + 1e-5)
			dx, dy := x1-x0, y1-y0
			l := math.Hypot(dx, dy)
			x, y := at(a)
			out[i] = tangent{dy / l, -dx / l, (x*dy - y*dx) / l}
		}
		return out
	}
}

func oval(length, width float64) outline {
	return curve(func(a float64) (x, y float64) { return length / 2 * math.Cos(a), width / 2 * math.Sin(a) })
}

// cushion is a superellipse: bulging sides, rounded corners.
func cushion(length, width float64) outline {
	bulge := func(v float64) float64 { return math.Copysign(math.Pow(math.Abs(v), 2/2.9), v) }
	return curve(func(a float64) (x, y float64) {
		a += 1e-3 // its corners of curvature are no place to take a tangent
		return length / 2 * bulge(math.Cos(a)), width / 2 * bulge(math.Sin(a))
	})
}

// pear is a drop with its point to the right.
func pear(length, width float64) outline {
	const widest = 0.7698 // of sin(a) sin(a/2)
	return curve(func(a float64) (x, y float64) {
		a += 1e-3
		return length/2*math.Cos(a) + 0.06*length, width / 2 / widest * math.Sin(a) * math.Abs(math.Sin(a/2))
	})
}

// octagon is a rectangle whose corners are cut off at 45 degrees.
func octagon(length, width, corner float64) outline {
	return func(int, float64) (out []tangent) {
		for i := range 8 {
			h := []float64{length / 2, 0, width / 2, 0}[i%4]
			if i%2 == 1 {
				h = (length/2 + width/2 - corner) / math.Sqrt2
			}
			sin, cos := math.Sincos(float64(i) * math.Pi / 4)
			out = append(out, tangent{cos, sin, h})
		}
		return out
	}
}

// moved turns a solid around the y axis and shifts it.
func (s solid) moved(angle float64, by vec) solid {
	out := make(solid, len(s))
	for i, p := range s {
		n := p.n.aboutY(angle)
		out[i] = plane{n, p.d + n.dot(by)}
	}
	return out
}
