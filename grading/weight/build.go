package weight

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Proportions are what a cut is built from, all in millimetres but the shares.
// Heights are at the mains.
type proportions struct {
	length, width, end float64 // end: narrow width of a tapered baguette
	reference          float64 // what per cents are of
	table              float64 // share of the reference
	crown              float64 // height, mm
	girdle             float64 // thickness, mm
	pavilion           float64 // depth, mm
	star, lower        float64 // lengths, shares
	culet              float64 // share of the reference
}

// A frame is what the facets of a cut are placed on.
type frame struct {
	o                  outline
	length, width, end float64          // as in proportions
	ways               [waysAround]side // the ways that facets can face
	sector             sector
}

// waysAround is the number of ways that facets can face, evenly spread on a
// round stone, the first along the length.
const waysAround = 32

func (m makeRow) frame(p proportions) (*frame, error) {
	o := newOutline(m.shape, p.length, p.width, p.end)
	if o == nil {
		return nil, ErrSolid
	}
	f := &frame{o: o, length: p.length, width: p.width, end: p.end}
	n := f.normal(0)
	far := 0
	for i := range o {
		if r2.Dot(n, o[i]) > r2.Dot(n, o[far]) {
			far = i
		}
	}
	for way := range f.ways {
		n := f.normal(way)
		// The farthest corner moves on with the direction, the outline being convex.
		for next := (far + 1) % len(o); r2.Dot(n, o[next]) > r2.Dot(n, o[far]); next = (far + 1) % len(o) {
			far = next
		}
		f.ways[way] = side{n, r2.Dot(n, o[far])}
	}
	f.sector = m.sector(f)
	return f, nil
}

// normal is the direction of a way: stretching the stone to a round one, it
// would be that of a radius.
func (f *frame) normal(way int) r2.Vec {
	s, c := math.Sincos(2 * math.Pi * float64(way) / waysAround)
	return r2.Unit(r2.Vec{X: c / f.length, Y: s / f.width})
}

// A plane is a height over the girdle edge at the mains, in mm, for a facet of
// the crown; for one of the pavilion a depth under the lower edge.
type plane struct {
	height float64 // at the middle of the stone
	slope  r2.Vec  // what the height loses for each mm along x and y
}

// A rise is a facet of a crown or pavilion.
type rise struct {
	name string
	plane
}

// level is a facet square to the axis.
func level(name string, height float64) rise { return rise{name, plane{height: height}} }

// facet is the plane of a facet that would, on a round stone of radius 1, face
// the given way, falling from height at the axis by slope over the radius. On
// other outlines the radius is how far the outline reaches in that direction,
// which on an oval is a plain stretching of the round stone.
func (f *frame) facet(name string, way int, height, slope float64) rise {
	w := f.ways[way%waysAround]
	return rise{name, plane{height, r2.Scale(slope/w.dist, w.normal)}}
}

// above is the half space under a facet of the crown.
func (r rise) above() halfSpace {
	return newHalfSpace(r.name, r3.Vec{X: r.slope.X, Y: r.slope.Y, Z: 1}, r.height)
}

// below is the half space over a facet of the pavilion, for a girdle of the
// given thickness.
func (r rise) below(girdle float64) halfSpace {
	return newHalfSpace(r.name, r3.Vec{X: r.slope.X, Y: r.slope.Y, Z: -1}, r.height+girdle)
}

// body builds the whole cut. The top edge of the girdle lies at z = 0 where
// the mains meet it.
func (m makeRow) body(p proportions) (Solid, error) {
	f, err := m.frame(p)
	if err != nil {
		return Solid{}, err
	}
	var spaces []halfSpace
	for _, r := range m.crownFacets(f, p) {
		spaces = append(spaces, r.above())
	}
	for _, r := range m.pavilionFacets(f, p) {
		spaces = append(spaces, r.below(p.girdle))
	}
	for _, s := range f.o.sides() {
		spaces = append(spaces, newHalfSpace("girdle", r3.Vec{X: s.normal.X, Y: s.normal.Y}, s.dist))
	}
	return intersect(spaces, 2*(p.length+p.width+p.crown+p.girdle+p.pavilion))
}
