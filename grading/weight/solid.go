package weight

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// ErrSolid says that proportions do not enclose a body.
var ErrSolid = errors.New("proportions do not make a solid")

// A Solid is a convex body with plane faces, in millimetres. Its length lies
// along x, its width along y, the table faces z. It can be drawn as it is.
type Solid struct {
	Vertices []r3.Vec
	Facets   []Facet
}

// A Facet is one face of a solid.
type Facet struct {
	Name   string // "table", "star", "main", "upper half", "girdle", "lower half", "pavilion main", "culet", "crown step 1" ...
	Normal r3.Vec // unit vector outward
	// Corners index the vertices, counterclockwise as seen from outside.
	Corners []int
}

// A halfSpace is the side of a plane that holds normal . x <= dist, the normal
// being a unit vector.
type halfSpace struct {
	name   string
	normal r3.Vec
	dist   float64
}

// newHalfSpace scales the normal to unit length.
func newHalfSpace(name string, normal r3.Vec, dist float64) halfSpace {
	n := r3.Norm(normal)
	return halfSpace{name, r3.Scale(1/n, normal), dist / n}
}

// nearness is the distance, over the size of the body, below which points are
// one.
const nearness = 1e-10

// intersect gives the body that all half spaces share. reach is a length that
// the body stays well inside of, measured from the origin; a body that does
// not is not enclosed, and ErrSolid.
func intersect(spaces []halfSpace, reach float64) (Solid, error) {
	faces := cube(reach)
	eps := nearness * reach
	for _, h := range spaces {
		faces = clip(faces, h, eps)
	}
	if len(faces) < 4 {
		return Solid{}, ErrSolid
	}
	for _, f := range faces {
		if f.name == "" {
			return Solid{}, ErrSolid
		}
	}
	return assemble(faces, 10*eps), nil
}

// A face is a facet whose corners are still points.
type face struct {
	halfSpace
	points []r3.Vec
}

// cube is the body that clipping starts from; its faces have no name.
func cube(reach float64) []face {
	var faces []face
	for axis := range 3 {
		for _, sign := range []float64{-1, 1} {
			points := make([]r3.Vec, 4)
			for i, c := range [4][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
				if sign < 0 {
					c[0] = -c[0]
				}
				var v [3]float64
				v[axis], v[(axis+1)%3], v[(axis+2)%3] = sign*reach, c[0]*reach, c[1]*reach
				points[i] = r3.Vec{X: v[0], Y: v[1], Z: v[2]}
			}
			var n [3]float64
			n[axis] = sign
			faces = append(faces, face{halfSpace{"", r3.Vec{X: n[0], Y: n[1], Z: n[2]}, reach}, points})
		}
	}
	return faces
}

// clip cuts off what lies outside the half space and closes the cut with a new
// face. Points nearer to the plane than eps count as lying in it.
func clip(faces []face, h halfSpace, eps float64) []face {
	if !anyBeyond(faces, h, eps) {
		return faces
	}
	kept := make([]face, 0, len(faces)+1)
	var rim []r3.Vec
	for _, f := range faces {
		if within(f.points, h, eps) {
			kept = append(kept, f)
			continue
		}
		points, onPlane := clipPolygon(f.points, h, eps)
		for _, p := range onPlane {
			rim = appendNew(rim, p, 10*eps)
		}
		if len(points) >= 3 {
			f.points = points
			kept = append(kept, f)
		}
	}
	if len(rim) >= 3 {
		kept = append(kept, face{h, around(rim, h.normal)})
	}
	return kept
}

// within tells whether all points lie inside, clear of the plane.
func within(points []r3.Vec, h halfSpace, eps float64) bool {
	for _, p := range points {
		if r3.Dot(h.normal, p)-h.dist >= -eps {
			return false
		}
	}
	return true
}

func anyBeyond(faces []face, h halfSpace, eps float64) bool {
	for _, f := range faces {
		for _, p := range f.points {
			if r3.Dot(h.normal, p)-h.dist > eps {
				return true
			}
		}
	}
	return false
}

// clipPolygon keeps the part of a polygon inside the half space, and lists the
// points of it that lie in the plane. A polygon that only touches the plane
// from outside vanishes but still gives its points.
func clipPolygon(points []r3.Vec, h halfSpace, eps float64) (kept, onPlane []r3.Vec) {
	inside := false
	for i, p := range points {
		q := points[(i+1)%len(points)]
		dp, dq := r3.Dot(h.normal, p)-h.dist, r3.Dot(h.normal, q)-h.dist
		switch {
		case dp < -eps:
			kept, inside = append(kept, p), true
		case dp <= eps:
			kept, onPlane = append(kept, p), append(onPlane, p)
		}
		if (dp < -eps && dq > eps) || (dp > eps && dq < -eps) {
			cut := r3.Add(p, r3.Scale(dp/(dp-dq), r3.Sub(q, p)))
			kept, onPlane = append(kept, cut), append(onPlane, cut)
		}
	}
	if !inside {
		kept = nil
	}
	return kept, onPlane
}

// appendNew appends p unless a point as near as eps is there.
func appendNew(points []r3.Vec, p r3.Vec, eps float64) []r3.Vec {
	for _, q := range points {
		if near(p, q, eps) {
			return points
		}
	}
	return append(points, p)
}

// near tells whether two points differ by no more than eps in each coordinate.
func near(p, q r3.Vec, eps float64) bool {
	return math.Abs(p.X-q.X) <= eps && math.Abs(p.Y-q.Y) <= eps && math.Abs(p.Z-q.Z) <= eps
}

// around orders the corners of a convex polygon counterclockwise about the
// normal.
func around(points []r3.Vec, normal r3.Vec) []r3.Vec {
	var middle r3.Vec
	for _, p := range points {
		middle = r3.Add(middle, p)
	}
	middle = r3.Scale(1/float64(len(points)), middle)
	e1 := r3.Unit(r3.Sub(points[0], middle))
	e2 := r3.Cross(normal, e1)
	sortBy(points, func(p r3.Vec) float64 {
		d := r3.Sub(p, middle)
		return math.Atan2(r3.Dot(d, e2), r3.Dot(d, e1))
	})
	return points
}

// assemble turns faces into a solid whose facets share their vertices.
func assemble(faces []face, eps float64) Solid {
	var s Solid
	for _, f := range faces {
		var corners []int
		for _, p := range f.points {
			i := s.index(p, eps)
			if len(corners) == 0 || (corners[len(corners)-1] != i && corners[0] != i) {
				corners = append(corners, i)
			}
		}
		if len(corners) >= 3 {
			s.Facets = append(s.Facets, Facet{f.name, f.normal, corners})
		}
	}
	return s
}

// index finds a vertex, or makes it.
func (s *Solid) index(p r3.Vec, eps float64) int {
	for i, q := range s.Vertices {
		if near(p, q, eps) {
			return i
		}
	}
	s.Vertices = append(s.Vertices, p)
	return len(s.Vertices) - 1
}

// Volume is the volume in mm3, exact but for rounding: by the divergence
// theorem, a third of the sum over the facets of area times distance of the
// plane from the first vertex.
func (s Solid) Volume() float64 {
	var sum float64
	for _, f := range s.Facets {
		height := r3.Dot(f.Normal, r3.Sub(s.Vertices[f.Corners[0]], s.Vertices[0]))
		sum += height * s.Area(f) / 3
	}
	return sum
}

// Area is the area of one of the solid's facets in mm2.
func (s Solid) Area(f Facet) float64 {
	var sum r3.Vec
	o := s.Vertices[f.Corners[0]]
	for i := 1; i+1 < len(f.Corners); i++ {
		a, b := r3.Sub(s.Vertices[f.Corners[i]], o), r3.Sub(s.Vertices[f.Corners[i+1]], o)
		sum = r3.Add(sum, r3.Cross(a, b))
	}
	return r3.Dot(sum, f.Normal) / 2
}

// Named lists the facets of one name.
func (s Solid) Named(name string) []Facet {
	var out []Facet
	for _, f := range s.Facets {
		if f.Name == name {
			out = append(out, f)
		}
	}
	return out
}
