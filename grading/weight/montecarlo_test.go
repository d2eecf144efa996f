package weight

import (
	"math"
	"math/rand/v2"
	"testing"
)

// sample draws every input and the specific gravity and gives the weights.
func sample(m model, g Gravity, n int) []float64 {
	r := rand.New(rand.NewPCG(20260214, 7)) // any seed; fixed so that a failure repeats
	out := make([]float64, n)
	x := make([]float64, len(m.in))
	for i := range out {
		for j, q := range m.in {
			x[j] = q.Value + q.U*r.NormFloat64()
		}
		out[i] = m.f(x) * (g.Low + (g.High-g.Low)*r.Float64()) / perCarat
	}
	return out
}

func TestIntervalAgreesWithMonteCarlo(t *testing.T) {
	// JCGM 101: distributions propagated by sampling, against JCGM 100 by
	// sensitivities. Standard uncertainties must agree within 3 %, the estimate
	// within a tenth of one, and the interval hold 95.45 % within 1 %.
	e := newEstimator(t)
	g := DimensionU(0.01, false, false)
	oval := Dimensions{Shape: "oval", Cut: "mixed", Length: Measure{8, g}, Width: Measure{6.2, g}, Depth: Measure{3.75, g}}
	set := Dimensions{Shape: "cut-corner rectangle", Cut: "step", Length: Measure{7, 0.05}, Width: Measure{5, 0.05}, Depth: Measure{3.2, 0.15}, Table: Measure{62, 1}}
	small := Dimensions{Shape: "rectangle", Cut: "step", Length: Measure{3, 0.05}, Width: Measure{2, 0.05}, Depth: Measure{1.2, 0.05}, CrownAngle: Measure{38, 2}, Table: Measure{60, 2}}
	round := roundStone()
	bead := Dimensions{Shape: "bead", Cut: "bead", Length: Measure{6, 0.05}}
	for _, row := range []struct {
		name    string
		stone   Dimensions
		gravity Gravity
		by      Method
	}{
		{"oval of known girdle", withGirdle(oval, "medium"), Gravity{3.99, 4.01}, ByFactor},
		{"oval of unknown girdle and material", oval, Gravity{2.65, 4.05}, ByFactor},
		{"step cut in a closed setting", set, Gravity{2.65, 2.75}, ByFactor},
		{"step cut as a solid", set, Gravity{2.65, 2.75}, BySolid},
		{"small step cut with a crown angle", small, Gravity{3.52, 3.52}, BySolid},
		{"round diamond", round, Gravity{3.51, 3.53}, ByFittedSolid},
		{"bead by its diameter", bead, Gravity{2.65, 2.75}, ByFactor},
	} {
		m, want := candidate(t, e, row.stone, row.by, row.gravity)
		drawn := sample(m, row.gravity, 40000)
		mean, sd := moments(drawn)
		held := 0
		for _, w := range drawn {
			if want.Low() <= w && w <= want.High() {
				held++
			}
		}
		share := 100 * float64(held) / float64(len(drawn))
		t.Logf("%-36s %.4f u %.4f ct; sampled %.4f u %.4f ct; holds %.2f %%", row.name, want.Value, want.U, mean, sd, share)
		if math.Abs(sd/want.U-1) > 0.03 || math.Abs(mean-want.Value) > 0.1*want.U {
			t.Errorf("%s: %.4f with u %.4f ct, sampled %.4f with %.4f", row.name, want.Value, want.U, mean, sd)
		}
		if row.gravity.High-row.gravity.Low < 0.5 && math.Abs(share-95.45) > 1 {
			t.Errorf("%s: the interval holds %.2f %% of the samples", row.name, share)
		}
	}
}

func withGirdle(d Dimensions, word string) Dimensions {
	d.Girdle = word
	return d
}

// candidate gives one way's model and weight.
func candidate(t *testing.T, e *Estimator, d Dimensions, by Method, g Gravity) (model, Measure) {
	t.Helper()
	est, err := e.Estimate(d, g)
	if err != nil {
		t.Fatal(err)
	}
	var out Measure
	for _, c := range est.Candidates {
		if c.Method == by {
			out = c.Carats
		}
	}
	switch by {
	case ByFactor:
		rows, err := e.factorFor(d)
		if err != nil {
			t.Fatal(err)
		}
		f := step(rows, d.ratio())
		spread, _ := f.widened(d)
		return e.factorModel(d, f, spread), out
	case BySolid:
		m, f, err := e.solidFigures(d)
		if err != nil {
			t.Fatal(err)
		}
		return f.model(d.Shape, newAreas(m)), out
	}
	return e.round.model(d, d.Table), out
}

func moments(x []float64) (mean, sd float64) {
	for _, v := range x {
		mean += v / float64(len(x))
	}
	for _, v := range x {
		sd += (v - mean) * (v - mean) / float64(len(x)-1)
	}
	return mean, math.Sqrt(sd)
}
