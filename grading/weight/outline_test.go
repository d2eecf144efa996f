package weight

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/spatial/r2"
)

func TestOutlinesHaveTheAreaOfTheirCurves(t *testing.T) {
	const l, w = 9.0, 6.0
	// Area under an arc of chord 2 half and height b, by integration; x = half
	// sin s eases the steep end of a short arc.
	lens := func(half, b float64) float64 {
		r := (half*half + b*b) / (2 * b)
		return 2 * quad.Fixed(func(s float64) float64 {
			x := half * math.Sin(s)
			return (b - r + math.Sqrt(r*r-x*x)) * half * math.Cos(s)
		}, 0, math.Pi/2, 200, quad.Legendre{}, 0)
	}
	for _, row := range []struct {
		shape string
		want  float64
		tol   float64
		why   string
	}{
		{"oval", math.Pi * l * w / 4, 1e-12, "ellipse"},
		{"rectangle", l * w, 1e-12, "rectangle"},
		{"lozenge", l * w / 2, 1e-12, "half its box"},
		{"kite", l * w / 2, 1e-12, "half its box"},
		{"triangle", l * w / 2, 1e-12, "half its box"},
		{"hexagon", l * w * 0.75, 1e-12, "three quarters of its box"},
		{"shield", l * w * 0.75, 1e-12, "square and triangle"},
		{"half moon", math.Pi * l * w / 4, 1e-12, "half an ellipse of half axes 4.5 and 6"},
		{"curved triangle", (math.Pi - math.Sqrt(3)) / 2 * l * w, 1e-12, "constant width, stretched"},
		{"marquise", 2 * lens(l/2, w/2), 1e-12, "two arcs, integrated"},
		{"pear", math.Pi*9/2 + lens(6, 3), 1e-12, "half circle and two arcs, integrated"},
		{"tapered baguette", l * w, 1e-12, "rectangle when no narrow width was measured"},
		{"cushion", 4 * quad.Fixed(func(s float64) float64 {
			x := math.Sin(s) * math.Sin(s) // eases the steep end
			return 3 * math.Cbrt(1-x*x*x) * 4.5 * 2 * math.Sin(s) * math.Cos(s)
		}, 0, math.Pi/2, 400, quad.Legendre{}, 0), 1e-6, "superellipse, integrated"},
	} {
		o := newOutline(row.shape, l, w, 0)
		if got := o.area(); math.Abs(got/row.want-1) > row.tol {
			t.Errorf("%s: area %.9g, want %.9g (%s)", row.shape, got, row.want, row.why)
		}
		for i := range o {
			a, b, c := o[i], o[(i+1)%len(o)], o[(i+2)%len(o)]
			if r2.Cross(r2.Sub(b, a), r2.Sub(c, b)) < -1e-9 {
				t.Errorf("%s is not convex at corner %d", row.shape, i+1)
				break
			}
		}
		long := o.support(r2.Vec{X: 1}) + o.support(r2.Vec{X: -1})
		wide := o.support(r2.Vec{Y: 1}) + o.support(r2.Vec{Y: -1})
		if math.Abs(long/l-1) > 0.003 || math.Abs(wide/w-1) > 0.003 {
			t.Errorf("%s is %.3f by %.3f, want %.0f by %.0f", row.shape, long, wide, l, w)
		}
	}
}

// support is how far the outline reaches in the direction of the unit vector n.
func (o outline) support(n r2.Vec) float64 {
	far := math.Inf(-1)
	for _, p := range o {
		far = max(far, r2.Dot(n, p))
	}
	return far
}

func TestShortPearsAndMarquisesHaveTheAreaOfTheirCurves(t *testing.T) {
	// As wide as long their arcs are half circles; hardly longer, nearly so.
	for _, row := range []struct {
		shape        string
		length, want float64
		why          string
	}{
		{"marquise", 6, math.Pi * 9, "circle"},
		{"pear", 6, math.Pi * 9, "circle"},
		{"marquise", 5, math.Pi * 2.5 * 3, "ellipse"},
		{"pear", 5, math.Pi * 2.5 * 3, "ellipse"},
		{"tapered baguette", 6, 6 * 4.5, "trapezium"},
	} {
		if got := outlineArea(row.shape, row.length, 6, 3); math.Abs(got/row.want-1) > 1e-12 {
			t.Errorf("%s of %.0f x 6: area %.9g, want %.9g (%s)", row.shape, row.length, got, row.want, row.why)
		}
	}
	// A curve that steepens without bound is hard on polygons: many sides.
	for _, length := range []float64{6.001, 6.1, 7, 12} {
		for shape, drawn := range map[string]outline{"pear": pear(length/2, 3, 40000), "marquise": marquise(length/2, 3, 40000)} {
			got, want := outlineArea(shape, length, 6, 0), drawn.area()
			if got < want || got > want*(1+1e-5) {
				t.Errorf("%s of %.3f x 6: area %.9g, polygon inside it %.9g", shape, length, got, want)
			}
		}
	}
}
