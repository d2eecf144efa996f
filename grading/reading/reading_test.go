package reading_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"stonewrit/grading/quantity"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
)

func bench(t testing.TB) reading.Bench {
	t.Helper()
	figures, err := reading.LoadFigures()
	if err != nil {
		t.Fatal(err)
	}
	return reading.Bench{Figures: figures, On: day("2026-10-14"), Reference: func(name string) (float64, float64, bool) {
		return 1.5442, 1.5533, name == "quartz" // Ghosh, Opt. Commun. 163 (1999) 95-102, at 589.3 nm
	}}
}

func day(text string) time.Time {
	d, err := time.Parse(time.DateOnly, text)
	if err != nil {
		panic(err)
	}
	return d
}

func mass(t testing.TB, text string) stone.Mass {
	t.Helper()
	if strings.Contains(text, "ct") {
		c, err := quantity.Parse[quantity.Carat](text)
		if err != nil {
			t.Fatal(err)
		}
		return stone.Mass{Grams: float64(c.V.Grams()), Text: text}
	}
	g, err := quantity.Parse[quantity.Gram](text)
	if err != nil {
		t.Fatal(err)
	}
	return stone.Mass{Grams: float64(g.V), Text: text}
}

func pure(t testing.TB, text string) stone.Pure {
	t.Helper()
	p, err := quantity.Parse[quantity.Number](text)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestWorkedFigures(t *testing.T) {
	src, err := os.ReadFile("testdata/worked.csv")
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(src))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	b := bench(t)
	for _, row := range rows[1:] {
		want, _ := strconv.ParseFloat(row[2], 64)
		tol, _ := strconv.ParseFloat(row[3], 64)
		var got float64
		switch row[0] {
		case "water":
			celsius, _ := strconv.ParseFloat(row[1], 64)
			got = reading.WaterDensity(celsius)
		case "sg":
			air, water, _ := strings.Cut(row[1], ";")
			test := &stone.Gravity{Method: "hydrostatic", Air: pure(t, "0.0"), Bath: &stone.Bath{Density: pure(t, "1.000")}}
			test.InAir.Items = []stone.Mass{mass(t, air)}
			test.InLiquid = stone.List[stone.Mass]{Items: []stone.Mass{mass(t, water)}, Given: true}
			got = b.Gravity(test).V
		}
		if math.Abs(got-want) > tol {
			t.Errorf("%s %s = %.7f, want %s ± %s (%s)", row[0], row[1], got, row[2], row[3], row[4])
		}
	}
}

func weighing(t testing.TB, air, water string) *stone.Gravity {
	g := &stone.Gravity{TestHeader: stone.TestHeader{Instrument: "balance"}, Method: "hydrostatic"}
	g.InAir.Items = []stone.Mass{mass(t, air)}
	g.InWater.Items = []stone.Mass{mass(t, water)}
	celsius, err := quantity.Parse[quantity.Celsius]("20 C")
	if err != nil {
		t.Fatal(err)
	}
	g.Water = celsius
	return g
}

func withBalance(t testing.TB, readability string, checks ...stone.Check) reading.Bench {
	b := bench(t)
	in := stone.Instrument{Kind: "balance", Checks: checks}
	in.Readability.Mass = mass(t, readability)
	b.Instruments = map[string]stone.Instrument{"balance": in}
	return b
}

func balanceCheck(t testing.TB, date, reads string) stone.Check {
	c := stone.Check{Date: stone.Date{Time: day(date)}, Reference: "5 g mass"}
	c.Reading.Mass, c.Reading.Text = mass(t, reads), reads
	return c
}

// Without the buoyancy of air a specific gravity comes out too high by
// (SG - 1) x 0.0012: the ruling's 0.002 for quartz, 0.004 for corundum, 0.006
// for cubic zirconia, by hand.
func TestBuoyancy(t *testing.T) {
	b := withBalance(t, "0.0001 g", balanceCheck(t, "2026-10-01", "5.0000 g"))
	for _, c := range []struct {
		name     string
		sg, high float64
	}{{"quartz", 2.65, 0.002}, {"corundum", 4.00, 0.004}, {"cubic zirconia", 5.9, 0.006}} {
		rho, air := reading.WaterDensity(20), 0.0012
		a := 1.0 * (1 - air/c.sg) // a stone of 1 g, weighed in air, by hand
		w := 1.0 * (1 - rho/c.sg)
		test := weighing(t, "9 g", "1 g")
		test.InAir.Items[0].Grams, test.InWater.Items[0].Grams = a, w
		if got := b.Gravity(test).V; math.Abs(got-c.sg) > 1e-9 {
			t.Errorf("%s: %.6f, want %.2f", c.name, got, c.sg)
		}
		plain := a / (a - w) * rho
		if got := plain - c.sg; math.Abs(got-c.high) > 0.0006 {
			t.Errorf("%s: without air it is %.4f high, the ruling says %.3f", c.name, got, c.high)
		}
	}
}

func TestGravityUncertainty(t *testing.T) {
	fine := withBalance(t, "0.0001 g", balanceCheck(t, "2026-10-01", "5.0003 g"))
	coarse := withBalance(t, "0.001 g", balanceCheck(t, "2026-10-01", "5.000 g"))
	for _, c := range []struct {
		name       string
		b          reading.Bench
		air, water string
		u, tol     float64
		why        string
	}{
		{"fine", fine, "0.3040 g", "0.2281 g", 0.016, 0.0005, "0.3 mg in water on 0.0759 g lost, by hand"},
		{"coarse", coarse, "0.304 g", "0.228 g", 0.019, 0.001, "the same with steps of 1 mg, by hand"},
		{"useless", coarse, "0.041 g", "0.029 g", 0.12, 0.02, "a 0.205 ct stone on a 0.001 g balance cannot agree"},
	} {
		if got := c.b.Gravity(weighing(t, c.air, c.water)).U; math.Abs(got-c.u) > c.tol {
			t.Errorf("%s: u = %.4f, want %.3f: %s", c.name, got, c.u, c.why)
		}
	}
}

// A balance that reads 5.0003 g for 5 g is wrong by a factor, which leaves a
// specific gravity as it is; taken as an offset it would move 3.993 to 3.989.
func TestBalanceFactor(t *testing.T) {
	checked := withBalance(t, "0.0001 g", balanceCheck(t, "2026-10-01", "5.0003 g"))
	exact := withBalance(t, "0.0001 g", balanceCheck(t, "2026-10-01", "5.0000 g"))
	test := weighing(t, "0.3040 g", "0.2281 g")
	if a, b := checked.Gravity(test).V, exact.Gravity(test).V; a != b {
		t.Errorf("the specific gravity moves from %.4f to %.4f with a span error", b, a)
	}
}

func TestChecks(t *testing.T) {
	for _, c := range []struct {
		name  string
		b     reading.Bench
		state reading.State
		why   string
	}{
		{"none", withBalance(t, "0.0001 g"), reading.CheckNone, "no check on record"},
		{"valid", withBalance(t, "0.0001 g", balanceCheck(t, "2026-09-02", "5.0003 g")), reading.CheckValid, "42 days old, 90 hold"},
		{"later", withBalance(t, "0.0001 g", balanceCheck(t, "2026-10-20", "5.0003 g")), reading.CheckNone, "a check after the day does not count"},
		{"overdue", withBalance(t, "0.0001 g", balanceCheck(t, "2026-06-01", "5.0003 g")), reading.CheckOverdue, "135 days old"},
		{"failed", withBalance(t, "0.0001 g", balanceCheck(t, "2026-10-01", "5.0004 g")), reading.CheckFailed, "more than three readabilities off"},
	} {
		if got := c.b.Gravity(weighing(t, "0.3040 g", "0.2281 g")).Check.State; got != c.state {
			t.Errorf("%s: %s, want %s: %s", c.name, got, c.state, c.why)
		}
	}
}

func turn(t testing.TB, edges ...string) stone.Edges {
	var e stone.Edges
	for _, text := range edges {
		if text == "over" {
			e.Over = true
			continue
		}
		e.Seen = append(e.Seen, pure(t, text))
	}
	return e
}

func refractometer(t testing.TB, turns ...stone.Edges) *stone.Refractometer {
	r := &stone.Refractometer{TestHeader: stone.TestHeader{Instrument: "r"}}
	r.Readings = stone.List[stone.Edges]{Items: turns, Given: true}
	return r
}

func withRefractometer(t testing.TB, limit string, checks ...stone.Check) reading.Bench {
	b := bench(t)
	b.Instruments = map[string]stone.Instrument{"r": {Kind: "refractometer", Limit: pure(t, limit), Checks: checks}}
	return b
}

func quartzCheck(t testing.TB, low, high string) stone.Check {
	c := stone.Check{Date: stone.Date{Time: day("2026-10-01")}, Reference: "quartz"}
	c.Readings = stone.List[stone.Edges]{Items: []stone.Edges{turn(t, low, high)}, Given: true}
	return c
}

func TestRefractometer(t *testing.T) {
	good := quartzCheck(t, "1.545", "1.554")
	for _, c := range []struct {
		name  string
		b     reading.Bench
		turns []stone.Edges
		check func(v reading.IndexValue) bool
		why   string
	}{
		{"offset", withRefractometer(t, "1.80", good), []stone.Edges{turn(t, "1.762", "1.770")},
			func(v reading.IndexValue) bool { return math.Abs(v.Low-1.76125) < 1e-9 }, "quartz 1.5442 and 1.5533 read 1.545 and 1.554: 0.00075 too high"},
		{"failed check", withRefractometer(t, "1.80", quartzCheck(t, "1.550", "1.559")), []stone.Edges{turn(t, "1.762", "1.770")},
			func(v reading.IndexValue) bool {
				return v.Low == 1.762 && v.Check.State == reading.CheckFailed && v.U > 0.002
			}, "0.0058 off is a failed check: nothing is subtracted and u grows"},
		{"one edge", withRefractometer(t, "1.80", good), []stone.Edges{turn(t, "1.718")},
			func(v reading.IndexValue) bool { return v.Edges == 1 && v.Most == 0 && v.Birefringence == 0 }, "one edge is one index, never a birefringence of zero"},
		{"few turns", withRefractometer(t, "1.80", good), []stone.Edges{turn(t, "1.654", "1.690"), turn(t, "1.660", "1.690")},
			func(v reading.IndexValue) bool { return v.Most == 0 && v.Sign == "" }, "two turns give a lower bound and no sign"},
		{"both move", withRefractometer(t, "1.80", good), []stone.Edges{turn(t, "1.654", "1.690"), turn(t, "1.665", "1.680"), turn(t, "1.658", "1.686")},
			func(v reading.IndexValue) bool { return v.Biaxial }, "both edges moved by more than three times the uncertainty of a difference"},
		{"liquid's own edge", withRefractometer(t, "1.80", good), []stone.Edges{turn(t, "1.798")},
			func(v reading.IndexValue) bool { return v.Edges == 0 && v.Over == 1.80 && v.Suspect != "" }, "within 0.003 of the limit it is the liquid's edge"},
		{"upper edge over", withRefractometer(t, "1.80", good), []stone.Edges{turn(t, "1.757", "over")},
			func(v reading.IndexValue) bool { return v.Edges == 1 && v.UpperOver }, "benitoite's upper edge lies beyond the liquid"},
	} {
		if v := c.b.Refractometer(refractometer(t, c.turns...)); !c.check(v) {
			t.Errorf("%s: %s; got %+v", c.name, c.why, v)
		}
	}
}

// Two references bracket the reading: the offset lies on the line between them.
// By hand: quartz (mean 1.54875) reads 0.00075 high, spinel at 1.728 reads
// 0.002 high; at 1.638375, half way, the offset is 0.001375.
func TestTwoReferences(t *testing.T) {
	spinel := stone.Check{Date: stone.Date{Time: day("2026-10-01")}, Reference: "grown spinel"}
	spinel.Known.Pure, spinel.Known.Text = pure(t, "1.728"), "1.728"
	spinel.Readings = stone.List[stone.Edges]{Items: []stone.Edges{turn(t, "1.730")}, Given: true}
	b := withRefractometer(t, "1.80", quartzCheck(t, "1.545", "1.554"), spinel)
	v := b.Refractometer(refractometer(t, turn(t, "1.638")))
	if want := 0.00075 + (1.638-1.54875)/(1.728-1.54875)*(0.002-0.00075); math.Abs(v.Check.Offset-want) > 1e-9 {
		t.Errorf("offset %.6f, want %.6f", v.Check.Offset, want)
	}
}

// The check's own uncertainty is that of its own reading, whatever the test
// that uses it: a white spot reading does not blunt the check.
func TestCheckUncertainty(t *testing.T) {
	b := withRefractometer(t, "1.80", quartzCheck(t, "1.545", "1.554"))
	test := refractometer(t, turn(t, "1.76"))
	test.Method, test.Light = "spot", "white"
	if v := b.Refractometer(test); math.Abs(v.Check.U-0.001/math.Sqrt2) > 1e-9 {
		t.Errorf("u of the check is %.5f, want 0.001/sqrt 2", v.Check.U)
	}
}

// A stone that gained weight in the bath soaked it up: the test is void.
func TestPorousStone(t *testing.T) {
	b := withBalance(t, "0.0001 g", balanceCheck(t, "2026-10-01", "5.0003 g"))
	test := weighing(t, "0.3040 g", "0.1600 g")
	test.After = mass(t, "0.3043 g")
	if v := b.Gravity(test); v.Void == "" {
		t.Errorf("a gain of 0.3 mg on a 0.1 mg balance leaves the test usable: %+v", v)
	}
}
