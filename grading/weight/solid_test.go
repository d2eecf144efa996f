package weight

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

func prism(n int, r, h float64) []halfSpace {
	out := []halfSpace{
		newHalfSpace("top", r3.Vec{Z: 1}, h), newHalfSpace("bottom", r3.Vec{Z: -1}, 0),
	}
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		out = append(out, newHalfSpace("side", r3.Vec{X: c, Y: s}, r))
	}
	return out
}

func pyramid(n int, r, h float64) []halfSpace {
	out := []halfSpace{newHalfSpace("bottom", r3.Vec{Z: -1}, 0)}
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		out = append(out, newHalfSpace("side", r3.Vec{X: c * h, Y: s * h, Z: r}, h*r))
	}
	return out
}

func TestPolyhedraHaveTheVolumeOfTheirClosedForms(t *testing.T) {
	// Closed forms of solid geometry: a regular n-gon about a circle of radius r
	// has the area n r2 tan(pi/n).
	for _, n := range []int{3, 4, 5, 8, 16, 96} {
		base := float64(n) * 1.7 * 1.7 * math.Tan(math.Pi/float64(n))
		for _, row := range []struct {
			name   string
			spaces []halfSpace
			want   float64
			facets int
		}{
			{"prism", prism(n, 1.7, 2.3), base * 2.3, n + 2},
			{"pyramid", pyramid(n, 1.7, 2.3), base * 2.3 / 3, n + 1},
			{"frustum", append(pyramid(n, 1.7, 2.3), newHalfSpace("top", r3.Vec{Z: 1}, 1.15)), base * 2.3 / 3 * 7 / 8, n + 2},
		} {
			s, err := intersect(row.spaces, 10)
			if err != nil {
				t.Fatalf("%s of %d: %v", row.name, n, err)
			}
			if d := math.Abs(s.Volume()/row.want - 1); d > 1e-9 {
				t.Errorf("%s of %d sides: volume %.12g, want %.12g", row.name, n, s.Volume(), row.want)
			}
			if len(s.Facets) != row.facets {
				t.Errorf("%s of %d sides has %d facets, want %d", row.name, n, len(s.Facets), row.facets)
			}
			checkClosed(t, s)
		}
	}
}

// checkClosed checks Euler's formula and that every edge is shared by two
// facets that run through it in opposite directions.
func checkClosed(t *testing.T, s Solid) {
	t.Helper()
	edges := map[[2]int]int{}
	for _, f := range s.Facets {
		for i, c := range f.Corners {
			edges[[2]int{c, f.Corners[(i+1)%len(f.Corners)]}]++
		}
	}
	for e, n := range edges {
		if n != 1 || edges[[2]int{e[1], e[0]}] != 1 {
			t.Errorf("edge %v is not shared by two facets", e)
			return
		}
	}
	if v, e, f := len(s.Vertices), len(edges)/2, len(s.Facets); v-e+f != 2 {
		t.Errorf("%d vertices - %d edges + %d facets is not 2", v, e, f)
	}
}

func TestOpenBodyIsRefused(t *testing.T) {
	if _, err := intersect(pyramid(4, 1, 1)[1:], 10); err == nil {
		t.Error("a pyramid without base was closed")
	}
	if _, err := intersect([]halfSpace{newHalfSpace("a", r3.Vec{Z: 1}, -1), newHalfSpace("b", r3.Vec{Z: -1}, -1)}, 10); err == nil {
		t.Error("two half spaces without a common point made a body")
	}
}
