package pdf

import (
	"math"
	"testing"

	"stonewrit/report"
)

// TestHatchStaysInside: of a square of 10 with hatch lines 1 apart, each of 10
// lines is 10 long; turned by 45 degrees the lines' total length times their
// distance still is the area, by hand.
func TestHatchStaysInside(t *testing.T) {
	square := []report.XY{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 10}, {X: 0, Y: 10}}
	for _, tc := range []struct {
		gap        Point
		angle      float64
		wantLength float64
		tol        float64
	}{
		{1, 0, 100, 1e-9},
		{1, 90, 100, 1e-9},
		{0.05, 45, 100 / 0.05, 5},
		{0.05, 30, 100 / 0.05, 5},
	} {
		var sum float64
		for _, p := range hatch(square, tc.gap, tc.angle) {
			a, b := p.Start, p.Steps[0].To
			for _, q := range []report.XY{a, b} {
				if q.X < -1e-9 || q.X > 10+1e-9 || q.Y < -1e-9 || q.Y > 10+1e-9 {
					t.Fatalf("angle %v: %v lies outside", tc.angle, q)
				}
			}
			sum += math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y))
		}
		if math.Abs(sum-tc.wantLength) > tc.tol {
			t.Errorf("angle %v: lines of %.4f in all, want %.4f", tc.angle, sum, tc.wantLength)
		}
	}
	// 45 degrees rises to the right: y falls, since it counts downwards.
	p := hatch(square, 3, 45)[1]
	a, b := p.Start, p.Steps[0].To
	if slope := (b.Y - a.Y) / (b.X - a.X); math.Abs(float64(slope)+1) > 1e-9 {
		t.Errorf("slope %v, want -1", slope)
	}
}

// TestArcIsRound: points of the curves lie on the circle, from 0 at the right
// counted against the clock.
func TestArcIsRound(t *testing.T) {
	c := report.XY{X: 50, Y: 60}
	p := arc(report.Arc{Center: c, RX: 20, RY: 20, From: 0, To: 270})
	at := p.Parts[0].Start
	if math.Hypot(float64(at.X-70), float64(at.Y-60)) > 1e-9 {
		t.Errorf("starts at %v, want 70, 60", at)
	}
	for _, s := range p.Parts[0].Steps {
		for u := 0.0; u <= 1; u += 0.125 {
			x, y := bezier(at, s, u)
			if r := math.Hypot(x-50, y-60); math.Abs(r-20) > 0.001 {
				t.Errorf("radius %.5f, want 20", r)
			}
		}
		at = s.To
	}
	if math.Hypot(float64(at.X-50), float64(at.Y-80)) > 1e-9 {
		t.Errorf("ends at %v, want 50, 80: three quarters round, below the centre", at)
	}
}

func bezier(from report.XY, s Step, u float64) (x, y float64) {
	f := func(a, b, c, d Point) float64 {
		v := 1 - u
		return v*v*v*float64(a) + 3*v*v*u*float64(b) + 3*v*u*u*float64(c) + u*u*u*float64(d)
	}
	return f(from.X, s.C1.X, s.C2.X, s.To.X), f(from.Y, s.C1.Y, s.C2.Y, s.To.Y)
}

func TestLabelAnchorsAndTurns(t *testing.T) {
	press := newPress(t)
	at := report.XY{X: 100, Y: 100}
	width := press.natural(report.Plain("7.82 mm"), sizeSmall)
	for _, tc := range []struct {
		name   string
		anchor report.Anchor
		turn   float64
		x, y   Point // where the text begins
	}{
		{"start", report.AnchorStart, 0, 100, 100},
		{"middle", report.AnchorMiddle, 0, 100 - width/2, 100},
		{"end", report.AnchorEnd, 0, 100 - width, 100},
		{"upwards, middle", report.AnchorMiddle, 90, 100, 100 + width/2},
		{"upside down, end", report.AnchorEnd, 180, 100 + width, 100},
	} {
		got := press.label(report.Label{At: at, Text: report.Plain("7.82 mm"), Anchor: tc.anchor, Turn: tc.turn})[0].(Text)
		if math.Hypot(float64(got.At.X-tc.x), float64(got.At.Y-tc.y)) > 1e-6 {
			t.Errorf("%s: begins at %v, want %v, %v", tc.name, got.At, tc.x, tc.y)
		}
		if tc.turn == 90 && !(got.box.H > got.box.W && math.Abs(float64(got.box.H-width)) < 1e-6) {
			t.Errorf("%s: box %v, want it %v high", tc.name, got.box, width)
		}
	}
}

// A photo of 400 pixels at 0.025 mm each shows 10 mm. Printed 200 pt wide, one
// millimetre is 20 pt, and the longest round bar within two fifths is 2 mm.
func TestScaleBarIsToScale(t *testing.T) {
	press := newPress(t)
	s := &setter{press: &press.typeface, grid: press.grid}
	items, _ := s.scaleBar(&report.Photo{MMPerPixel: 0.025}, pixelSize{400, 300}, 200, 0)
	bar, label := items[0].(Path), items[1].(Text)
	if got := bar.box.W - bar.Pen.Width; math.Abs(float64(got-40)) > 1e-9 || label.S != "2\u00a0mm" {
		t.Errorf("bar of %v pt labelled %q, want 40 pt, 2 mm", got, label.S)
	}
	for _, mm := range []float64{0, -1, math.NaN(), math.Inf(1), 1e-12, 1e12} {
		if items, tall := s.scaleBar(&report.Photo{MMPerPixel: mm}, pixelSize{400, 300}, 200, 0); len(items) > 0 || tall != 0 {
			t.Errorf("a scale of %v mm a pixel draws a bar", mm)
		}
	}
	for limit, want := range map[float64]float64{4.1: 2, 5: 5, 9.99: 5, 10: 10, 0.3: 0.2, 0.02: 0.02} {
		if got := roundLength(limit); math.Abs(got-want) > 1e-12 {
			t.Errorf("round length within %v is %v, want %v", limit, got, want)
		}
	}
}
