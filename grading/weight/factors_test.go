package weight

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

func newEstimator(t testing.TB) *Estimator {
	t.Helper()
	e, err := New()
	if err != nil {
		t.Fatal(err)
	}
	return e
}

func TestThirtyCombinationsHaveAFactor(t *testing.T) {
	e := newEstimator(t)
	got := e.Combinations()
	if len(got) < 30 {
		t.Errorf("%d combinations of outline and cut, want at least 30", len(got))
	}
	t.Logf("%d combinations of outline and cut", len(got))
	for _, c := range got {
		d := Dimensions{Shape: c[0], Cut: c[1], Length: Measure{6.5, 0.01}, Width: Measure{5, 0.01}, Depth: Measure{3, 0.01}}
		est, err := e.Estimate(d, Gravity{2.65, 2.65})
		if err != nil {
			t.Errorf("%s %s: %v", c[0], c[1], err)
			continue
		}
		v := est.Chosen.Volume
		if v.U <= 0 || v.Value > 6.5*5*3.6 || v.Value < 0.15*6.5*5*3 {
			t.Errorf("%s %s: volume %.1f with u %.1f mm3 of a box of %.1f", c[0], c[1], v.Value, v.U, 6.5*5*3.0)
		}
	}
}

// usualStone is a stone of the size that a factor is meant for.
func usualStone(f factorRow) Dimensions {
	ratio := f.ratio
	if ratio == 1 {
		switch f.shape {
		case "oval", "pear", "half moon", "kite", "lozenge", "baguette", "tapered baguette":
			ratio = 1.3
		case "marquise", "drop":
			ratio = 2
		}
	}
	d := Dimensions{Shape: f.shape, Cut: f.cut, AsDiamond: f.asDiamond,
		Length: Measure{6 * ratio, 0.01}, Width: Measure{6, 0.01}, Depth: Measure{6 * f.usualDepth(), 0.01}}
	if f.form == formCube {
		d.Depth = d.Width
	}
	return d
}

func TestFactorAgainstSolid(t *testing.T) {
	// The trade's factors and the bodies were made from different things. Where
	// they lie more than 5 % apart, the table must say what the body gives.
	e := newEstimator(t)
	for _, f := range e.factors {
		d := usualStone(f)
		if f.form == formCube && f.cut == "brilliant" {
			continue // no depth
		}
		if _, ok := e.makeFor(d); !ok {
			continue
		}
		fv, err := e.byFactor(d)
		if err != nil {
			t.Fatal(err)
		}
		sv, err := e.bySolid(d)
		if err != nil {
			t.Errorf("%s %s: %v", f.shape, f.cut, err)
			continue
		}
		apart := sv.Volume.Value/fv.Volume.Value - 1
		says := f.factor * (1 + apart)
		t.Logf("%-20s %-17s %.2f: factor %.5f, solid %.5f, %+5.1f %%", f.shape, f.cut, f.ratio, f.factor, says, 100*apart)
		if f.source == "S1" && math.Abs(apart) > 0.01 {
			t.Errorf("%s %s: factor %.5f is said to come from the solid, which gives %.5f", f.shape, f.cut, f.factor, says)
		}
		if note := fmt.Sprintf("the solid at usual proportions says %.5f", says); math.Abs(apart) > 0.05 && !strings.Contains(f.note, note) {
			t.Errorf("%s %s at %.2f: the note lacks %q", f.shape, f.cut, f.ratio, note)
		}
	}
}

func TestBrokenTablesAreRefused(t *testing.T) {
	for _, row := range []struct{ name, csv, want string }{
		{"no source", "shape,cut,population,form,ratio,factor,spread,depth_low,depth_high,girdle,source,note\nround,brilliant,,d2D,1,0.0018,0.02,0.5,0.7,yes,,\n", "source"},
		{"low above high", "shape,cut,population,form,ratio,factor,spread,depth_low,depth_high,girdle,source,note\nround,brilliant,,d2D,1,0.0018,0.02,0.8,0.7,yes,M1,\n", "depth_low"},
		{"factor too large", "shape,cut,population,form,ratio,factor,spread,depth_low,depth_high,girdle,source,note\nround,brilliant,,d2D,1,0.18,0.02,0.5,0.7,yes,M1,\n", "factor"},
	} {
		if _, err := readFactors([]byte(row.csv)); err == nil || !strings.Contains(err.Error(), "factors.csv:2: "+row.want) {
			t.Errorf("%s: error %v, want one that names factors.csv:2: %s", row.name, err, row.want)
		}
	}
}

func TestRatioStepsAreInterpolated(t *testing.T) {
	rows := []factorRow{{ratio: 1, factor: 0.0023}, {ratio: 1.5, factor: 0.0026}, {ratio: 2, factor: 0.0028}}
	for _, row := range []struct{ ratio, want float64 }{{0.9, 0.0023}, {1, 0.0023}, {1.25, 0.00245}, {1.5, 0.0026}, {1.75, 0.0027}, {2, 0.0028}, {4, 0.0028}} {
		if got := step(rows, row.ratio).factor; math.Abs(got-row.want) > 1e-12 {
			t.Errorf("ratio %.2f: factor %.5f, want %.5f", row.ratio, got, row.want)
		}
	}
}
