package weight

import (
	"errors"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

func TestStepCutWithStraightPavilionIsAHippedRoof(t *testing.T) {
	// Closed form: a roof over length x width that slopes equally on all sides
	// to a ridge of length - width has the volume width x height x (3 length -
	// width) / 6; a frustum of it is the difference of two roofs.
	m := makeRow{shape: "rectangle", crown: styleStep, pavilion: styleStep, tiers: 3}
	p := proportions{length: 8, width: 5, reference: 5, table: 0.6, crown: 0.7, girdle: 0.15, pavilion: 2.2}
	s, err := m.body(p)
	if err != nil {
		t.Fatal(err)
	}
	roof := func(l, w, h float64) float64 { return w * h * (3*l - w) / 6 }
	whole := 0.7 / 0.4 // height of the crown carried on to its ridge
	want := 8*5*0.15 + roof(8, 5, 2.2) + roof(8, 5, whole) - roof(8-0.4*5, 5-0.4*5, whole-0.7)
	if math.Abs(s.Volume()/want-1) > 1e-9 {
		t.Errorf("volume %.12g, want %.12g", s.Volume(), want)
	}
	checkClosed(t, s)
}

func TestOvalIsTheRoundStretched(t *testing.T) {
	// Stretching a body along one axis multiplies its volume by as much.
	m, p := referenceBrilliant()
	round, err := m.body(p)
	if err != nil {
		t.Fatal(err)
	}
	m.shape, p.length = "oval", 1.37
	oval, err := m.body(p)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(oval.Volume()/round.Volume()/1.37-1) > 1e-9 {
		t.Errorf("oval of ratio 1.37 has %.12g times the volume of the round", oval.Volume()/round.Volume())
	}
}

// compareParts holds crown + girdle + pavilion, each integrated over a sector
// and stretched with its height, against the body cut from half spaces, which
// knows of neither.
func compareParts(t interface{ Errorf(string, ...any) }, m makeRow, p proportions) {
	s, err := m.body(p)
	if err != nil {
		t.Errorf("%s %s: %v", m.shape, m.cut, err)
		return
	}
	a := newAreas(m)
	if got := a.volume(p); a.err != nil || math.Abs(got/s.Volume()-1) > 1e-9 {
		t.Errorf("%s %s: %.12g mm3 by parts, %.12g whole, %v: %+v", m.shape, m.cut, got, s.Volume(), a.err, p)
	}
}

// facetted lists the makes that have a body without smooth surfaces.
func facetted(t testing.TB) []makeRow {
	t.Helper()
	return slices.DeleteFunc(newEstimator(t).makes, func(m makeRow) bool {
		return m.crown == styleCone || m.crown == styleDome
	})
}

func TestVolumeByPartsIsThatOfTheWholeBody(t *testing.T) {
	for _, m := range facetted(t) {
		p := proportions{length: 8, width: 6, end: 4, reference: 6, table: 0.58, crown: 0.8, girdle: 0.3, pavilion: 2.5, star: 0.5, lower: 0.75}
		if m.shape == "round" {
			p.length = 6
		}
		if m.crown == styleFacetDome {
			p.girdle = 0
		}
		compareParts(t, m, p)
	}
}

func TestVolumeByPartsIsThatOfAnyBody(t *testing.T) {
	makes := facetted(t)
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom(makes).Draw(t, "make")
		between := func(low, high float64, name string) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		w := between(1, 20, "width")
		table := between(0.2, 0.8, "table")
		// The tips of the stars lie below the table, as on any stone.
		c := math.Cos(eighth / 2)
		shortest := (table/c - table*c) / (1 - table*c)
		culet := between(0.005, 0.15, "culet") // the body loses facets smaller than its nearness
		if rapid.Bool().Draw(t, "pointed") {
			culet = 0
		}
		p := proportions{
			width: w, length: w * between(0.8, 2.5, "ratio"), end: w * between(0.3, 1, "end"), reference: w,
			table: table, star: between(max(0.2, shortest+0.01), 0.9, "star"), lower: between(0.3, 0.9, "lower"), culet: culet,
			crown: w * between(0.02, 0.5, "crown"), pavilion: w * between(0.1, 0.9, "pavilion"),
			girdle: w, // so thick that the scallops of its two edges keep clear of each other
		}
		if m.shape == "round" {
			p.reference = (p.length + p.width) / 2
		}
		compareParts(t, m, p)
	})
}

func TestStarsThatSlopeInwardAreNoSolid(t *testing.T) {
	// With a table of 86 % the stars must reach more than half way, or their tips
	// lie above the table.
	d := roundStone()
	d.CrownAngle, d.CrownHeight = Measure{}, Measure{}
	d.Table, d.Star = Measure{86, 0.5}, Measure{25, 1}
	if c, err := newEstimator(t).bySolid(d); !errors.Is(err, ErrSolid) {
		t.Errorf("volume %v, error %v; want ErrSolid", c.Volume, err)
	}
}

func TestFillIsThatOfTheStoneOneWide(t *testing.T) {
	// Stretching a stone along an axis leaves its fill alone where its steps are
	// not parallel; enlarging it always does.
	for _, m := range facetted(t) {
		p := proportions{length: 8, width: 6, end: 4, reference: 6, table: 0.58, crown: 1, pavilion: 1, star: 0.5, lower: 0.75, culet: 0.1}
		large, err := m.frame(p)
		if err != nil {
			t.Fatal(err)
		}
		u := m.unit(p)
		small, err := m.frame(u)
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range []struct {
			of        string
			got, want float64
		}{
			{"crown", m.crownFill(small, u), m.crownFill(large, p)},
			{"pavilion", m.pavilionFill(small, u), m.pavilionFill(large, p)},
		} {
			if math.Abs(row.got-row.want) > 1e-12 {
				t.Errorf("%s %s: %s fills %.15g of its prism when 1 mm wide, %.15g when 6", m.shape, m.cut, row.of, row.got, row.want)
			}
		}
	}
}

func TestEveryMakeCanBeDrawn(t *testing.T) {
	e := newEstimator(t)
	for _, m := range e.makes {
		d := Dimensions{Shape: m.shape, Cut: m.cut, AsDiamond: m.asDiamond, Length: Measure{8, 0.01}, Width: Measure{6, 0.01}, Depth: Measure{3.6, 0.01}}
		b, err := e.Body(d)
		if m.crown == styleCone {
			if !errors.Is(err, ErrSolid) {
				t.Errorf("%s %s: %v, want ErrSolid", m.shape, m.cut, err)
			}
			continue
		}
		if err != nil {
			t.Errorf("%s %s: %v", m.shape, m.cut, err)
			continue
		}
		checkClosed(t, b.Solid)
		low, high := math.Inf(1), math.Inf(-1)
		for _, v := range b.Vertices {
			low, high = min(low, v.Z), max(high, v.Z)
		}
		if depth := high - low; math.Abs(depth-3.6) > 0.1 {
			t.Errorf("%s %s: drawn %.2f mm deep, measured 3.60", m.shape, m.cut, depth)
		}
		for _, f := range b.Facets {
			if f.Name == "" || math.Abs(r3.Norm(f.Normal)-1) > 1e-9 || b.Area(f) <= 0 {
				t.Errorf("%s %s: facet %+v is no facet", m.shape, m.cut, f)
			}
		}
	}
}
