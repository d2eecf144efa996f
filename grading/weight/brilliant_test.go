package weight

import (
	"math"
	"testing"
)

func referenceBrilliant() (makeRow, proportions) {
	m := makeRow{shape: "round", cut: "brilliant", crown: styleBrilliant, pavilion: styleBrilliant}
	deg := math.Pi / 180
	return m, proportions{
		length: 1, width: 1, reference: 1, table: 0.57,
		crown: 0.43 / 2 * math.Tan(34.5*deg), girdle: 0.03, pavilion: math.Tan(40.75*deg) / 2,
		star: 0.5, lower: 0.77,
	}
}

func TestRoundBrilliantHasThePublishedVolume(t *testing.T) {
	// Numerical integration of the height field, independent of any polyhedron:
	// 0.20984 within 0.0003 per cubed diameter (issue 4).
	m, p := referenceBrilliant()
	s, err := m.body(p)
	if err != nil {
		t.Fatal(err)
	}
	if v := s.Volume(); math.Abs(v-0.20984) > 0.0003 {
		t.Errorf("volume %.5f of the cubed diameter, want 0.20984 within 0.0003", v)
	} else {
		t.Logf("volume %.5f of the cubed diameter", v)
	}
	checkClosed(t, s)
	for name, want := range map[string]int{
		"table": 1, "star": 8, "main": 8, "upper half": 16,
		"lower half": 16, "pavilion main": 8, "culet": 0, "girdle": outlineSides,
	} {
		if got := len(s.Named(name)); got != want {
			t.Errorf("%d facets named %s, want %d", got, name, want)
		}
	}
}
