package weight

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
)

// heapUp integrates a height over the disc of radius 1 between two radii, by
// Gauss-Legendre in polar coordinates, stretched to half axes a and b. It knows
// no section areas.
func heapUp(a, b, from, to float64, height func(r float64) float64) float64 {
	// r = sin s, which takes the steep rim off a dome.
	inner := quad.Fixed(func(s float64) float64 {
		r := math.Sin(s)
		return height(r) * r * math.Cos(s)
	}, math.Asin(from), math.Asin(to), 200, quad.Legendre{}, 0)
	return 2 * math.Pi * a * b * inner
}

func TestDomesBeadsAndConesAgreeWithNumericalIntegration(t *testing.T) {
	// Within 1e-6 (issue 4), by an integration that shares no code.
	a, b, c := 4.1, 2.9, 2.2
	dome := func(r float64) float64 { return c * math.Sqrt(max(0, 1-r*r)) }
	cut := 0.8 // plane that cuts a cap off
	rim := math.Sqrt(1 - cut*cut/(c*c))
	cone := func(r float64) float64 { return c * (1 - r) }
	for _, row := range []struct {
		name      string
		got, want float64
	}{
		{"dome", ellipsoidZone(a, b, c, 0, c), heapUp(a, b, 0, 1, dome)},
		{"bead", ellipsoidZone(a, b, c, -c, c), 2 * heapUp(a, b, 0, 1, dome)},
		{"cap", ellipsoidZone(a, b, c, cut, c), heapUp(a, b, 0, rim, func(r float64) float64 { return dome(r) - cut })},
		{"dome less its cap", ellipsoidZone(a, b, c, 0, cut),
			heapUp(a, b, 0, rim, func(float64) float64 { return cut }) + heapUp(a, b, rim, 1, dome)},
		{"cone", coneFrustum(a, b, c, 0), heapUp(a, b, 0, 1, cone)},
		{"frustum", coneFrustum(a, b, c*0.6, 0.4),
			heapUp(a, b, 0, 0.4, func(float64) float64 { return c * 0.6 }) + heapUp(a, b, 0.4, 1, cone)},
		{"drop", dropVolume(9, 5, 4), heapUp(2.5, 2, 0, 1, func(r float64) float64 {
			return 2.5*math.Sqrt(max(0, 1-r*r)) + 6.5*(1-r)
		})},
	} {
		if math.Abs(row.got/row.want-1) > 1e-6 {
			t.Errorf("%s: %.9g mm3, integration gives %.9g", row.name, row.got, row.want)
		}
	}
}

func TestStonesOfRoundSurfacesAgreeWithNumericalIntegration(t *testing.T) {
	e := newEstimator(t)
	dome := func(h float64) func(r float64) float64 {
		return func(r float64) float64 { return h * math.Sqrt(max(0, 1-r*r)) }
	}
	for _, row := range []struct {
		name  string
		stone Dimensions
		want  float64
	}{
		{"oval cabochon", Dimensions{Shape: "oval", Cut: "cabochon", Length: Measure{8, 0}, Width: Measure{6, 0}, Depth: Measure{3.1, 0}},
			heapUp(4, 3, 0, 1, dome(3.1))},
		{"round bead", Dimensions{Shape: "bead", Cut: "bead", Length: Measure{7, 0}}, 2 * heapUp(3.5, 3.5, 0, 1, dome(3.5))},
		{"oval bead", Dimensions{Shape: "oval", Cut: "bead", Length: Measure{8, 0}, Width: Measure{6, 0}, Depth: Measure{5.5, 0}}, 2 * heapUp(4, 3, 0, 1, dome(2.75))},
	} {
		c, err := e.bySolid(row.stone)
		if err != nil {
			t.Errorf("%s: %v", row.name, err)
			continue
		}
		if math.Abs(c.Volume.Value/row.want-1) > 1e-6 {
			t.Errorf("%s: %.9g mm3, integration gives %.9g", row.name, c.Volume.Value, row.want)
		}
	}
}
