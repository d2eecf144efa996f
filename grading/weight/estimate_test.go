package weight_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"stonewrit/grading/weight"
)

func estimator(t testing.TB) *weight.Estimator {
	t.Helper()
	e, err := weight.New()
	if err != nil {
		t.Fatal(err)
	}
	return e
}

func mm(v float64) weight.Measure {
	return weight.Measure{Value: v, U: weight.DimensionU(0.01, false, false)}
}

// contractStone is the stone of the file format's example.
func contractStone() weight.Dimensions {
	pc := func(v float64) weight.Measure { return weight.Measure{Value: v, U: 0.5} }
	return weight.Dimensions{
		Shape: "oval", Cut: "mixed",
		Length: mm(8.00), Width: mm(6.20), Depth: mm(3.75),
		Table: pc(57), CrownAngle: pc(34.5), CrownHeight: pc(15),
		PavilionAngle: pc(40.8), PavilionDepth: pc(43), Girdle: "medium", Bulge: "none",
	}
}

func TestContractStoneWeighsAsItsFormatSays(t *testing.T) {
	// Figures: ruling A2, 8.00 x 6.20 x 3.75 mm, 4.00 x 0.0020.
	got, err := estimator(t).Estimate(contractStone(), weight.Gravity{Low: 3.99, High: 4.01})
	if err != nil {
		t.Fatal(err)
	}
	two := func(v float64) float64 { return math.Round(v*100) / 100 }
	c := got.Chosen
	if two(c.Carats.Value) != 1.49 || two(c.Low) != 1.40 || two(c.High) != 1.58 {
		t.Errorf("estimate %.4f, %.4f to %.4f ct; want 1.49, 1.40 to 1.58", c.Carats.Value, c.Low, c.High)
	}
	if c.Method != weight.ByFactor || !strings.HasPrefix(c.Basis, "0.0020 x length x width x depth") {
		t.Errorf("method %q, %q; want the factor 0.0020", c.Method, c.Basis)
	}
	if len(got.Warnings) != 0 {
		t.Errorf("warnings %q on a stone without fault", got.Warnings)
	}
}

func TestNoFactorNamesTheNearest(t *testing.T) {
	d := weight.Dimensions{Shape: "heart", Cut: "rough", Length: mm(5), Width: mm(5), Depth: mm(3)}
	_, err := estimator(t).Estimate(d, weight.Gravity{Low: 3.5, High: 3.5})
	if !errors.Is(err, weight.ErrNoFactor) {
		t.Fatalf("error %v, want ErrNoFactor", err)
	}
	if !strings.Contains(err.Error(), "heart brilliant") {
		t.Errorf("error %q does not name heart brilliant", err)
	}
}
