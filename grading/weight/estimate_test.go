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
	// Figures of the stone file's example: 8.00 x 6.20 x 3.75 mm, factor 0.0020, specific gravity
	// 4.00, measured 1.52 ct; the ranges are those that tables give for corundum.
	two := func(v float64) float64 { return math.Round(v*100) / 100 }
	for _, g := range []weight.Gravity{{Low: 4, High: 4}, {Low: 3.99, High: 4.01}, {Low: 3.95, High: 4.05}} {
		got, err := estimator(t).Estimate(contractStone(), g)
		if err != nil {
			t.Fatal(err)
		}
		c := got.Chosen
		if two(c.Carats.Value) != 1.49 || two(c.Low) != 1.40 || two(c.High) != 1.58 {
			t.Errorf("%v: estimate %.4f, %.4f to %.4f ct; want 1.49, 1.40 to 1.58", g, c.Carats.Value, c.Low, c.High)
		}
		if c.Method != weight.ByFactor || c.Basis.String() != "0.0020 x length x width x depth (oval mixed)" {
			t.Errorf("method %q, %q; want the factor 0.0020", c.Method, c.Basis)
		}
		implied := weight.ImpliedGravity(c.Volume, weight.Measure{Value: 1.520, U: 0.0003})
		if two(implied.Value) != 4.09 {
			t.Errorf("implied specific gravity %.4f, want 4.09", implied.Value)
		}
		if len(got.Warnings) != 0 {
			t.Errorf("warnings %q on a stone without fault", got.Warnings)
		}
	}
	if found := estimator(t).Contradictions(contractStone(), weight.Measure{Value: 1.52, U: 0.0003}, weight.Gravity{Low: 3.99, High: 4.01}); len(found) > 0 {
		t.Errorf("contradictions %v in a stone without fault", found)
	}
}

func TestRivalsWidenTheIntervalToTheirHull(t *testing.T) {
	e := estimator(t)
	one, err := e.Estimate(contractStone(), weight.Gravity{Low: 3.95, High: 4.05})
	if err != nil {
		t.Fatal(err)
	}
	two, err := e.Estimate(contractStone(), weight.Gravity{Low: 3.95, High: 4.05}, weight.Gravity{Low: 3.58, High: 3.64})
	if err != nil {
		t.Fatal(err)
	}
	if two.Gravity != (weight.Gravity{Low: 3.58, High: 4.05}) {
		t.Errorf("hull %v, want 3.58 to 4.05", two.Gravity)
	}
	if two.Chosen.Carats.U <= one.Chosen.Carats.U {
		t.Errorf("u %.4f ct with a rival, %.4f without", two.Chosen.Carats.U, one.Chosen.Carats.U)
	}
	for _, bad := range [][]weight.Gravity{nil, {{Low: 4, High: 3}}, {{Low: 0.1, High: 3}}, {{Low: math.NaN(), High: 3}}} {
		if _, err := e.Estimate(contractStone(), bad...); !errors.Is(err, weight.ErrGravity) {
			t.Errorf("%v: error %v, want ErrGravity", bad, err)
		}
	}
}

func TestLikeStonesShareTheirError(t *testing.T) {
	// The u of a sum of like stones does not shrink by the root of n.
	d := weight.Dimensions{Shape: "round", Cut: "brilliant", AsDiamond: true, Length: mm(1.4), Width: mm(1.3), Count: 12}
	diamond := weight.Gravity{Low: 3.51, High: 3.53}
	twelve, err := estimator(t).Estimate(d, diamond)
	if err != nil {
		t.Fatal(err)
	}
	d.Count = 1
	one, err := estimator(t).Estimate(d, diamond)
	if err != nil {
		t.Fatal(err)
	}
	a, b := twelve.Chosen.Carats, one.Chosen.Carats
	if math.Abs(a.Value-12*b.Value) > 1e-12 || math.Abs(a.U-12*b.U) > 1e-12 {
		t.Errorf("twelve weigh %.5f with u %.5f, one %.5f with u %.5f ct", a.Value, a.U, b.Value, b.U)
	}
	if math.Abs(twelve.Each.Value-b.Value) > 1e-12 || twelve.Count != 12 {
		t.Errorf("each %.5f ct of %d, want %.5f of 12", twelve.Each.Value, twelve.Count, b.Value)
	}
}

func TestWithoutDepthTheSolidIsBuiltFromItsParts(t *testing.T) {
	d := contractStone()
	d.Depth = weight.Measure{}
	got, err := estimator(t).Estimate(d, weight.Gravity{Low: 4, High: 4})
	if err != nil {
		t.Fatal(err)
	}
	if got.Chosen.Method != weight.BySolid || len(got.Omitted) != 2 {
		t.Errorf("method %q, omitted %v; want the solid alone", got.Chosen.Method, got.Omitted)
	}
	if !strings.Contains(got.Because.String(), "only way") || !strings.Contains(got.Because.String(), "depth") {
		t.Errorf("because %q does not say that the depth is missing", got.Because)
	}
}

func TestDepthMayBeAPerCent(t *testing.T) {
	d := contractStone()
	want, err := estimator(t).Estimate(d, weight.Gravity{Low: 4, High: 4})
	if err != nil {
		t.Fatal(err)
	}
	d.Depth, d.TotalDepth = weight.Measure{}, weight.Measure{Value: 100 * 3.75 / 6.20, U: 0.2}
	got, err := estimator(t).Estimate(d, weight.Gravity{Low: 4, High: 4})
	if err != nil {
		t.Fatal(err)
	}
	if a, b := got.Candidates[0].Carats.Value, want.Candidates[0].Carats.Value; math.Abs(a/b-1) > 1e-9 {
		t.Errorf("by the factor %.6f ct with the depth in per cent, %.6f in millimetres", a, b)
	}
}

func TestDiamondIsWeighedByTheFittedSolid(t *testing.T) {
	d := weight.Dimensions{Shape: "round", Cut: "brilliant", AsDiamond: true,
		Length: mm(6.52), Width: mm(6.48), Depth: mm(4.00), Table: weight.Measure{Value: 57, U: 0.5}}
	got, err := estimator(t).Estimate(d, weight.Gravity{Low: 3.51, High: 3.53})
	if err != nil {
		t.Fatal(err)
	}
	if got.Chosen.Method != weight.ByFittedSolid || len(got.Candidates) != 3 {
		t.Errorf("method %q of %d candidates, want the fitted solid of three", got.Chosen.Method, len(got.Candidates))
	}
	d.AsDiamond = false
	got, err = estimator(t).Estimate(d, weight.Gravity{Low: 3.99, High: 4.01})
	if err != nil {
		t.Fatal(err)
	}
	if got.Chosen.Method == weight.ByFittedSolid || len(got.Candidates) != 2 {
		t.Errorf("a coloured stone was weighed by %q", got.Chosen.Method)
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
