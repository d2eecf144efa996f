package weight

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// outlineSides is the number of sides that stand for a round outline. The
// polygon has the area of the curve, so nothing is lost from the volume.
const outlineSides = 96

// An outline is the shape of a stone seen from above: a convex polygon,
// counterclockwise, its length along x and its width along y, the origin in
// the middle of its bounding box.
type outline []r2.Vec

// newOutline gives the outline of a shape of the given length and width; end
// is the narrow width of a tapered baguette. It gives nil for a shape that is
// not convex (heart) or has no fixed form (irregular).
func newOutline(shape string, length, width, end float64) outline {
	a, b := length/2, width/2
	var curved outline
	switch shape {
	case "round", "oval", "bead":
		curved = ellipse(a, b, outlineSides)
	case "cushion":
		curved = superellipse(a, b, cushionPower, outlineSides)
	case "pear", "drop":
		curved = pear(a, b, outlineSides)
	case "marquise":
		curved = marquise(a, b, outlineSides)
	case "half moon":
		curved = halfMoon(a, b, outlineSides)
	case "curved triangle":
		curved = curvedTriangle(a, b, outlineSides)
	case "tapered baguette":
		n := narrow(width, end) / 2
		return outline{{X: -a, Y: -b}, {X: a, Y: -n}, {X: a, Y: n}, {X: -a, Y: b}}
	default:
		return straight(shape, a, b)
	}
	return curved.enlarged(outlineArea(shape, length, width, end))
}

// narrow is the narrow width of a tapered baguette, which is not tapered when
// none was measured.
func narrow(width, end float64) float64 {
	if end <= 0 {
		return width
	}
	return end
}

// straight gives the outlines bounded by straight lines.
func straight(shape string, a, b float64) outline {
	switch shape {
	case "square", "rectangle", "baguette":
		return outline{{X: -a, Y: -b}, {X: a, Y: -b}, {X: a, Y: b}, {X: -a, Y: b}}
	case "cut-corner square", "cut-corner rectangle":
		return cutCorner(a, b, cornerCut*2*b)
	case "octagon":
		return cutCorner(a, b, (2-math.Sqrt2)*b)
	case "hexagon":
		return outline{{X: -a}, {X: -a / 2, Y: -b}, {X: a / 2, Y: -b}, {X: a}, {X: a / 2, Y: b}, {X: -a / 2, Y: b}}
	case "triangle":
		return outline{{X: -a, Y: -b}, {X: a, Y: -b}, {X: 0, Y: b}}
	case "kite":
		x := -a + kiteShoulder*2*a
		return outline{{X: -a}, {X: x, Y: -b}, {X: a}, {X: x, Y: b}}
	case "lozenge":
		return outline{{X: -a}, {Y: -b}, {X: a}, {Y: b}}
	case "shield":
		return outline{{X: -a, Y: -b}, {X: 0, Y: -b}, {X: a}, {X: 0, Y: b}, {X: -a, Y: b}}
	}
	return nil
}

// Proportions of outlines that the dimensions do not tell; common practice, no
// source, by eye from stones of ordinary make.
const (
	cushionPower = 3.0  // exponent of the superellipse; 2 is an oval
	cornerCut    = 0.15 // cut corner, leg along the side, of the width
	kiteShoulder = 0.35 // widest place of a kite, of the length
)

func cutCorner(a, b, leg float64) outline {
	return outline{
		{X: -a + leg, Y: -b}, {X: a - leg, Y: -b}, {X: a, Y: -b + leg}, {X: a, Y: b - leg},
		{X: a - leg, Y: b}, {X: -a + leg, Y: b}, {X: -a, Y: b - leg}, {X: -a, Y: -b + leg},
	}
}

func ellipse(a, b float64, n int) outline {
	out := make(outline, n)
	for i := range out {
		s, c := math.Sincos(2 * math.Pi * (float64(i) + 0.5) / float64(n))
		out[i] = r2.Vec{X: a * c, Y: b * s}
	}
	return out
}

// superellipse has |x/a|^p + |y/b|^p = 1.
func superellipse(a, b, p float64, n int) outline {
	out := make(outline, n)
	for i := range out {
		s, c := math.Sincos(2 * math.Pi * (float64(i) + 0.5) / float64(n))
		r := math.Pow(math.Pow(math.Abs(c), p)+math.Pow(math.Abs(s), p), -1/p)
		out[i] = r2.Vec{X: a * r * c, Y: b * r * s}
	}
	return out
}

// pear is half an ellipse on the left and two arcs to a point on the right,
// which meet where the stone is widest without a corner. The round end is a
// half circle when the stone is long enough.
func pear(a, b float64, n int) outline {
	head, tail := pearEnds(a, b)
	out := make(outline, 0, n)
	x0 := -a + head
	for i := range n/2 + 1 {
		s, c := math.Sincos(math.Pi/2 + math.Pi*float64(i)/float64(n/2))
		out = append(out, r2.Vec{X: x0 + head*c, Y: b * s})
	}
	for i := 1; i <= n/4; i++ {
		x := tail * float64(i) / float64(n/4)
		out = append(out, r2.Vec{X: x0 + x, Y: -arcHeight(x, tail, b)})
	}
	for i := n/4 - 1; i > 0; i-- {
		x := tail * float64(i) / float64(n/4)
		out = append(out, r2.Vec{X: x0 + x, Y: arcHeight(x, tail, b)})
	}
	return out
}

// pearEnds are the lengths of the round end of a pear and of its arcs.
func pearEnds(a, b float64) (head, tail float64) {
	head = min(b, a)
	return head, 2*a - head
}

// arcHeight is the height over x of the arc that starts flat at (0, b) and
// meets the axis at reach. An arc too short to be part of a circle is
// flattened to an ellipse.
func arcHeight(x, reach, b float64) float64 {
	if reach <= b {
		return b * math.Sqrt(max(0, 1-x*x/(reach*reach)))
	}
	r := arcRadius(reach, b)
	return b - r + math.Sqrt(r*r-x*x)
}

func arcRadius(reach, b float64) float64 { return (reach*reach + b*b) / (2 * b) }

// marquise is bounded by two arcs of a circle that meet in points.
func marquise(a, b float64, n int) outline {
	out := make(outline, 0, n)
	for i := range n / 2 {
		x := -a + 2*a*float64(i)/float64(n/2)
		out = append(out, r2.Vec{X: x, Y: -arcHeight(math.Abs(x), a, b)})
	}
	for i := range n / 2 {
		x := a - 2*a*float64(i)/float64(n/2)
		out = append(out, r2.Vec{X: x, Y: arcHeight(math.Abs(x), a, b)})
	}
	return out
}

// halfMoon is half an ellipse over its straight side.
func halfMoon(a, b float64, n int) outline {
	out := make(outline, 0, n+1)
	for i := range n + 1 {
		s, c := math.Sincos(math.Pi * float64(i) / float64(n))
		out = append(out, r2.Vec{X: a * c, Y: -b + 2*b*s})
	}
	return out
}

// curvedTriangle is the triangle of constant width (three arcs, each about the
// corner opposite), stretched to length and width.
func curvedTriangle(a, b float64, n int) outline {
	corner := [3]r2.Vec{}
	for k := range corner {
		s, c := math.Sincos(math.Pi/2 + 2*math.Pi*float64(k)/3)
		corner[k] = r2.Scale(1/math.Sqrt(3), r2.Vec{X: c, Y: s})
	}
	top := 1/math.Sqrt(3) - 0.5 // middle of the height, which is 1
	out := make(outline, 0, n)
	for k := range corner {
		from := math.Pi/2 + 2*math.Pi*float64(k)/3 + math.Pi - math.Pi/6
		for i := range n / 3 {
			s, c := math.Sincos(from + math.Pi/3*float64(i)/float64(n/3))
			p := r2.Add(corner[k], r2.Vec{X: c, Y: s})
			out = append(out, r2.Vec{X: 2 * a * p.X, Y: 2 * b * (p.Y - top)})
		}
	}
	return out
}

// enlarged is the polygon scaled to an area.
func (o outline) enlarged(area float64) outline {
	s := math.Sqrt(area / o.area())
	for i := range o {
		o[i] = r2.Scale(s, o[i])
	}
	return o
}

// area is the area of the polygon.
func (o outline) area() float64 {
	var sum float64
	for i, p := range o {
		sum += r2.Cross(p, o[(i+1)%len(o)])
	}
	return sum / 2
}

// A side is one edge of an outline: outward unit normal and distance of its
// line from the origin.
type side struct {
	normal r2.Vec
	dist   float64
}

// sides gives the edges in order.
func (o outline) sides() []side {
	out := make([]side, len(o))
	for i, p := range o {
		along := r2.Unit(r2.Sub(o[(i+1)%len(o)], p))
		n := r2.Vec{X: along.Y, Y: -along.X}
		out[i] = side{n, r2.Dot(n, p)}
	}
	return out
}
