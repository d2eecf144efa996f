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

// A frame places the planes of a cut on an outline. The top edge of the girdle
// lies at z = 0 where the mains meet it.
type frame struct {
	o    outline
	a, b float64 // half length and half width
}

// plane is the half space of a facet that would, on a round stone of radius 1,
// face azimuth phi (radians from the length axis), sloping from height at the
// axis by slope over the radius; up is +1 for the crown and -1 for the
// pavilion. On other outlines the radius is how far the outline reaches in
// that direction, which on an oval is a plain stretching of the round stone.
func (f frame) plane(name string, phi, slope, height, up float64) halfSpace {
	s, c := math.Sincos(phi)
	n := r2.Unit(r2.Vec{X: c / f.a, Y: s / f.b})
	reach := f.o.support(n)
	return newHalfSpace(name, r3.Vec{X: n.X * slope / reach, Y: n.Y * slope / reach, Z: up}, height)
}

// walls are the planes of the girdle.
func (f frame) walls() []halfSpace {
	var out []halfSpace
	for _, s := range f.o.sides() {
		out = append(out, newHalfSpace("girdle", r3.Vec{X: s.normal.X, Y: s.normal.Y}, s.dist))
	}
	return out
}

// horizontal is a facet square to the axis at height z, facing up or down.
func horizontal(name string, z, up float64) halfSpace {
	return halfSpace{name, r3.Vec{Z: up}, up * z}
}

// body builds the whole cut.
func (m makeRow) body(p proportions) (Solid, error) {
	f, err := m.frame(p)
	if err != nil {
		return Solid{}, err
	}
	spaces := m.crownPlanes(f, p)
	spaces = append(spaces, m.pavilionPlanes(f, p, -p.girdle)...)
	return intersect(append(spaces, f.walls()...), m.reach(p))
}

func (m makeRow) frame(p proportions) (frame, error) {
	o := newOutline(m.shape, p.length, p.width, p.end)
	if o == nil {
		return frame{}, ErrSolid
	}
	return frame{o, p.length / 2, p.width / 2}, nil
}

func (m makeRow) reach(p proportions) float64 {
	return 2 * (p.length + p.width + p.crown + p.girdle + p.pavilion)
}

// crownArea is the volume of the crown over its height: the volume above the
// girdle edge at the mains, less what the scallops of the girdle dip below it,
// so that crown + girdle x area + pavilion make the whole. It has the unit of
// an area and does not depend on the height, the crown being stretched along
// the axis with it.
func (m makeRow) crownArea(p proportions) (float64, error) {
	f, err := m.frame(p)
	if err != nil {
		return 0, err
	}
	if m.crown == styleDome {
		return domeArea(f.o), nil
	}
	p.crown = p.reference
	return m.halfArea(f, m.crownPlanes(f, p), p, horizontal("base", -p.reference, -1))
}

// pavilionArea is the same for the pavilion.
func (m makeRow) pavilionArea(p proportions) (float64, error) {
	f, err := m.frame(p)
	if err != nil {
		return 0, err
	}
	switch m.pavilion {
	case styleFlat:
		return 0, nil
	case styleDome:
		return domeArea(f.o), nil
	}
	p.pavilion = p.reference
	return m.halfArea(f, m.pavilionPlanes(f, p, 0), p, horizontal("base", p.reference, 1))
}

// halfArea takes the prism of one reference length under (or over) the girdle
// edge off again.
func (m makeRow) halfArea(f frame, planes []halfSpace, p proportions, base halfSpace) (float64, error) {
	spaces := append([]halfSpace{base}, planes...)
	s, err := intersect(append(spaces, f.walls()...), m.reach(p))
	if err != nil {
		return 0, err
	}
	return s.Volume()/p.reference - f.o.area(), nil
}
