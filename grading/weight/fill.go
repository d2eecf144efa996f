package weight

import "gonum.org/v1/gonum/spatial/r2"

// mean is the mean over the sector of the lowest of the facets, which is how
// high the stone is: the volume under them over the area. Every facet is
// integrated over the cell in which it is the lowest. That is exact but for
// rounding.
func (s sector) mean(facets []rise) float64 {
	var room [48]plane // more than most cuts have; append finds more if need be
	planes := room[:0]
	for _, f := range facets {
		if s.faces(f.plane) {
			planes = append(planes, f.plane)
		}
	}
	var volume float64
	var one, other [2 * outlineSides]r2.Vec
	for i, p := range planes {
		volume += s.cell(planes, i, one[:0], other[:0]).under(p)
	}
	return volume / s.o.area()
}

// cell is the part of the sector over which plane i is the lowest. Of planes
// that are the same the first counts. It is built in the room of two slices.
func (s sector) cell(planes []plane, i int, one, other outline) outline {
	cell, spare := append(one, s.o...), other
	for d := 1; d < len(planes); d++ {
		j := beside(i, d, len(planes))
		over := planes[i].room(planes[j])
		switch {
		case over == (plane{}):
			if j < i {
				return nil
			}
		case over.negative(cell):
			spare = cut(spare[:0], cell, over)
			if len(spare) < 3 {
				return nil
			}
			cell, spare = spare, cell
		}
	}
	return cell
}

// beside gives the others of n in turn, d counting from 1, outward from i to
// both sides: neighbours in the list are neighbours on the stone, and cut most
// off.
func beside(i, d, n int) int {
	if d%2 == 0 {
		return (i + n - d/2) % n
	}
	return (i + (d+1)/2) % n
}

// at is the height at a point.
func (p plane) at(v r2.Vec) float64 { return p.height - p.slope.X*v.X - p.slope.Y*v.Y }

// room is the height that q has over p.
func (p plane) room(q plane) plane {
	return plane{q.height - p.height, r2.Sub(q.slope, p.slope)}
}

// negative tells whether the height is negative somewhere on a polygon.
func (p plane) negative(o outline) bool {
	for _, v := range o {
		if p.at(v) < 0 {
			return true
		}
	}
	return false
}

// cut appends to out the part of a polygon on which the height is not negative.
func cut(out, o outline, p plane) outline {
	if len(o) == 0 {
		return out
	}
	u := o[len(o)-1]
	hu := p.at(u)
	for _, v := range o {
		hv := p.at(v)
		if (hu < 0) != (hv < 0) {
			t := hu / (hu - hv)
			out = append(out, r2.Vec{X: u.X + t*(v.X-u.X), Y: u.Y + t*(v.Y-u.Y)})
		}
		if hv >= 0 {
			out = append(out, v)
		}
		u, hu = v, hv
	}
	return out
}

// under is the volume between a polygon and a plane over it: the integral of a
// linear function over a triangle is the area times the mean of the corners.
func (o outline) under(p plane) float64 {
	var sum float64
	for i := 2; i < len(o); i++ {
		a, b, c := o[0], o[i-1], o[i]
		sum += r2.Cross(r2.Sub(b, a), r2.Sub(c, a)) * (p.at(a) + p.at(b) + p.at(c))
	}
	return sum / 6
}
