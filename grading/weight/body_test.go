package weight

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
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

func TestVolumeByPartsIsThatOfTheWholeBody(t *testing.T) {
	// Crown + girdle + pavilion, each stretched with its height, against the body
	// built at once.
	e := newEstimator(t)
	for _, m := range e.makes {
		if m.crown == styleCone || m.crown == styleDome {
			continue
		}
		p := proportions{length: 8, width: 6, end: 4, reference: 6, table: 0.58, crown: 0.8, girdle: 0.3, pavilion: 2.5, star: 0.5, lower: 0.75}
		if m.shape == "round" {
			p.length = 6
		}
		if m.crown == styleFacetDome {
			p.girdle = 0
		}
		s, err := m.body(p)
		if err != nil {
			t.Errorf("%s %s: %v", m.shape, m.cut, err)
			continue
		}
		a := newAreas(m)
		if got := a.volume(p); a.err != nil || math.Abs(got/s.Volume()-1) > 1e-9 {
			t.Errorf("%s %s: %.12g mm3 by parts, %.12g whole, %v", m.shape, m.cut, got, s.Volume(), a.err)
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
