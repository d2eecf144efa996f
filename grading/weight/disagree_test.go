package weight

import (
	"testing"

	"pgregory.net/rapid"
)

func TestWaysThreeUncertaintiesApartAreAWarning(t *testing.T) {
	a := Candidate{Method: ByFactor, Volume: Measure{100, 3}}
	for _, row := range []struct {
		volume Measure
		want   int
	}{{Measure{114.9, 4}, 0}, {Measure{115.1, 4}, 1}, {Measure{84.9, 4}, 1}, {Measure{85.1, 4}, 0}} {
		got := disagreements([]Candidate{a, {Method: BySolid, Volume: row.volume}})
		if len(got) != row.want {
			t.Errorf("100 u 3 against %v: %q, want %d warnings (3 x 5 apart)", row.volume, got, row.want)
		}
	}
}

// drawnStone draws a stone of any combination in the table.
func drawnStone(t *rapid.T, e *Estimator) Dimensions {
	c := rapid.SampledFrom(e.Combinations()).Draw(t, "kind")
	w := rapid.Float64Range(2, 15).Draw(t, "width")
	l := w * rapid.Float64Range(1, 2.5).Draw(t, "ratio")
	if c[0] == "round" || c[0] == "bead" {
		l = w
	}
	u := rapid.Float64Range(0.001, 0.1).Draw(t, "u")
	return Dimensions{Shape: c[0], Cut: c[1], Length: Measure{l, u}, Width: Measure{w, u},
		Depth: Measure{w * rapid.Float64Range(0.35, 0.8).Draw(t, "depth"), u}}
}

func TestVolumeGrowsWithTheCubeOfTheSize(t *testing.T) {
	e := newEstimator(t)
	rapid.Check(t, func(t *rapid.T) {
		d := drawnStone(t, e)
		small, err := e.byFactor(d)
		if err != nil {
			t.Fatal(err)
		}
		d.Length.Value, d.Width.Value, d.Depth.Value = 2*d.Length.Value, 2*d.Width.Value, 2*d.Depth.Value
		large, err := e.byFactor(d)
		if err != nil {
			t.Fatal(err)
		}
		if r := large.Volume.Value / small.Volume.Value; r < 8-1e-9 || r > 8+1e-9 {
			t.Errorf("twice the size has %.9f times the volume", r)
		}
	})
}

func TestWorseMeasurementNeverNarrowsTheInterval(t *testing.T) {
	e := newEstimator(t)
	rapid.Check(t, func(t *rapid.T) {
		d := drawnStone(t, e)
		sharp, err := e.byFactor(d)
		if err != nil {
			t.Fatal(err)
		}
		p := rapid.SampledFrom([]*Measure{&d.Length, &d.Width, &d.Depth}).Draw(t, "which")
		p.U *= 2
		blunt, err := e.byFactor(d)
		if err != nil {
			t.Fatal(err)
		}
		if blunt.Volume.U < sharp.Volume.U*(1-1e-9) || blunt.Volume.Value != sharp.Volume.Value {
			t.Errorf("%v became %v", sharp.Volume, blunt.Volume)
		}
	})
}

func TestEveryEstimateHasItsReasonAndBudget(t *testing.T) {
	e := newEstimator(t)
	rapid.Check(t, func(t *rapid.T) {
		est, err := e.Estimate(drawnStone(t, e), Gravity{2.6, 2.7})
		if err != nil {
			t.Fatal(err)
		}
		if est.Because == "" {
			t.Error("no reason")
		}
		for _, c := range est.Candidates {
			var sum float64
			for _, s := range c.Budget {
				sum += s.U * s.U
			}
			if u := c.Volume.U; sum < u*u*(1-1e-9) || sum > u*u*(1+1e-9) {
				t.Errorf("%s: shares make u %.6g squared, volume has %.6g", c.Method, sum, u*u)
			}
			if c.Low > c.Carats.Value || c.High < c.Carats.Value || c.Basis == "" || c.Source == "" {
				t.Errorf("%+v", c)
			}
		}
	})
}
