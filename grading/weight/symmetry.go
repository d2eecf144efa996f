package weight

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// A sector is the part of an outline between two lines through the origin in
// which the stone mirrors itself, so that a number of such parts make the
// whole. The rest of the stone need not be reckoned with.
type sector struct {
	o     outline
	lines []r2.Vec // normals, pointing into the sector
}

// sector cuts an outline down to what symmetry repeats.
func (m makeRow) sector(f *frame) sector {
	var s sector
	switch m.shape {
	case "pear", "kite", "shield", "tapered baguette":
		s.lines = []r2.Vec{{Y: 1}}
	case "triangle", "curved triangle", "half moon":
		s.lines = []r2.Vec{{X: 1}}
	case "round", "oval":
		s.lines = firstOf(4)
		if f.length == f.width {
			s.lines = firstOf(16)
		}
	case "cushion":
		s.lines = firstOf(4)
		if f.length == f.width {
			s.lines = firstOf(8)
		}
	default:
		s.lines = firstOf(4)
	}
	s.o = f.o
	for _, n := range s.lines {
		s.o = cut(make(outline, 0, len(s.o)+2), s.o, plane{slope: r2.Scale(-1, n)})
	}
	return s
}

// firstOf bounds the first of n sectors, counted from the length.
func firstOf(n float64) []r2.Vec {
	s, c := math.Sincos(2 * math.Pi / n)
	return []r2.Vec{{Y: 1}, {X: s, Y: -c}}
}

// faces tells whether a facet faces along the sector or is level. One that
// faces out of it has a mirror image that is lower all over the sector.
func (s sector) faces(p plane) bool {
	for _, n := range s.lines {
		if r2.Dot(n, p.slope) < -nearness {
			return false
		}
	}
	return true
}
