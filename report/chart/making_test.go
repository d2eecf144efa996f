package chart_test

import (
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"stonewrit/grading/stone"
	"stonewrit/grading/weight"
	"stonewrit/report"
	"stonewrit/report/chart"
)

// ratio is the scale that the drawing says: paper over stone.
func (l look) ratio() float64 {
	l.t.Helper()
	for _, text := range l.texts() {
		rest, ok := strings.CutPrefix(text, "scale ")
		if !ok {
			continue
		}
		parts := strings.Split(strings.SplitN(rest, ",", 2)[0], "\u00a0:\u00a0")
		a, _ := strconv.ParseFloat(parts[0], 64)
		b, _ := strconv.ParseFloat(parts[1], 64)
		return a / b
	}
	l.t.Fatalf("no scale is said: %q", l.texts())
	return 0
}

// mm is a length on paper as one of the stone; an inch is 25.4 mm.
func (l look) mm(p report.Point) float64 { return float64(p) / 72 * 25.4 / l.ratio() }

// plan is the closed outline face up.
func (l look) plan() rect {
	l.t.Helper()
	for _, s := range l.Shapes {
		if p, ok := s.(report.Polygon); ok && !p.Pen.None && p.Pen.Width > 1 {
			pen := p.Pen
			pen.None = true
			return around(pen, p.Points...)
		}
	}
	l.t.Fatalf("no outline is drawn")
	return rect{}
}

// profile is the box of the outline in profile.
func (l look) profile() (rect, bool) {
	out, ok := rect{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}, false
	for _, s := range l.Shapes {
		if p, is := s.(report.Polyline); is && p.Pen.Width >= 0.8 {
			r := around(report.Pen{None: true}, p.Points...)
			out, ok = rect{min(out.left, r.left), min(out.top, r.top), max(out.right, r.right), max(out.bottom, r.bottom)}, true
		}
	}
	return out, ok
}

func (r rect) width() report.Point  { return report.Point(r.right - r.left) }
func (r rect) height() report.Point { return report.Point(r.bottom - r.top) }

// TestMakingIsToScale: outline and profile have the measured extents at the
// scale that is said.
func TestMakingIsToScale(t *testing.T) {
	d := drawer(t)
	for name, dims := range map[string]weight.Dimensions{
		"oval mixed": ovalMixed(), "round": roundDiamond(), "nothing but lengths": plainOval(), "steps": stepCut(), "dome": cabochon(), "pear": pear(), "heart": heartCut(), "bead": bead(),
	} {
		t.Run(name, func(t *testing.T) {
			f, ok := d.Making(making(t, dims))
			l := lookAt(t, f, ok)
			wide := dims.Width.Value
			if wide == 0 {
				wide = dims.Length.Value
			}
			plan := l.plan()
			if got := l.mm(plan.width()); !close2(got, wide, 1e-3) {
				t.Errorf("face up %.4f mm wide, want %.4f", got, wide)
			}
			if got := l.mm(plan.height()); !close2(got, dims.Length.Value, 1e-3) {
				t.Errorf("face up %.4f mm long, want %.4f", got, dims.Length.Value)
			}
			profile, ok := l.profile()
			if !ok {
				if name != "heart" && name != "bead" {
					t.Error("no profile is drawn")
				}
				return
			}
			if got := l.mm(profile.width()); !close2(got, wide, 1e-3) {
				t.Errorf("profile %.4f mm wide, want %.4f", got, wide)
			}
			// Heights are brought into agreement with the depth before they are
			// drawn; a per cent of it is left where parts and depth differ.
			if got := l.mm(profile.height()); !close2(got, dims.Depth.Value, 0.01*dims.Depth.Value) {
				t.Errorf("profile %.4f mm high, want %.4f", got, dims.Depth.Value)
			}
		})
	}
}

// TestDimensionLinesSpanWhatTheySay: between the tips of the arrows of a level
// dimension lies the length whose figure stands over it.
func TestDimensionLinesSpanWhatTheySay(t *testing.T) {
	f, ok := drawer(t).Making(making(t, ovalMixed()))
	l := lookAt(t, f, ok)
	for text, want := range map[string]float64{"6.20": 6.20, "3.53": 0.57 * 6.20, "8.00": 8.00, "3.75": 3.75} {
		label := l.label(text)
		got := math.Inf(1)
		for _, a := range l.Shapes {
			p, ok := a.(report.Polygon)
			if !ok || len(p.Points) != 3 {
				continue
			}
			tip := p.Points[0]
			across, away := float64(tip.X-label.At.X), float64(tip.Y-label.At.Y)
			if label.Turn == 90 {
				across, away = float64(tip.Y-label.At.Y), float64(tip.X-label.At.X)
			}
			if away > 0 && away < 5 {
				got = min(got, 2*math.Abs(across)) // the figure stands in the middle
			}
		}
		if mm := l.mm(report.Point(got)); !close2(mm, want, 0.01) {
			t.Errorf("%s spans %.4f mm", text, mm)
		}
	}
}

// TestAngleIsDrawnAsMeasured: one arc, of the crown where that was measured.
func TestAngleIsDrawnAsMeasured(t *testing.T) {
	pavilion := roundDiamond()
	pavilion.CrownAngle = weight.Measure{}
	none := plainOval()
	for _, tc := range []struct {
		name string
		d    weight.Dimensions
		text string
		want float64
		tol  float64
	}{
		{"crown", roundDiamond(), "34.5°", 34.5, 1}, {"pavilion", pavilion, "40.9°", 40.9, 1}, {"neither", none, "", 0, 0},
		{"crown of a mixed cut", ovalMixed(), "34.5°", 34.5, 1},
	} {
		f, ok := drawer(t).Making(making(t, tc.d))
		l := lookAt(t, f, ok)
		var arcs []report.Arc
		for _, s := range l.Shapes {
			if a, ok := s.(report.Arc); ok {
				arcs = append(arcs, a)
			}
		}
		switch {
		case tc.text == "" && len(arcs) > 0:
			t.Errorf("%s: an angle is drawn that was not measured", tc.name)
		case tc.text == "":
		case len(arcs) != 1 || !l.says(tc.text):
			t.Errorf("%s: %d arcs, texts %q", tc.name, len(arcs), l.texts())
		case !close2(arcs[0].To-arcs[0].From, tc.want, tc.tol):
			t.Errorf("%s: the arc spans %.2f degrees, want %.2f", tc.name, arcs[0].To-arcs[0].From, tc.want)
		}
	}
}

// TestUsualProportionsAreDashed: what was not measured is dashed and said to
// be; a stone with all figures has no dashes but its middle line.
func TestUsualProportionsAreDashed(t *testing.T) {
	note := "dashed: usual proportions, not measured"
	dashes := func(l look) (n int) {
		for _, s := range l.Shapes {
			if _, pen := l.ink(s); len(pen.Dash) == 2 {
				n++
			}
		}
		return n
	}
	f, ok := drawer(t).Making(making(t, roundDiamond()))
	if l := lookAt(t, f, ok); dashes(l) > 0 || strings.Contains(strings.Join(l.texts(), "|"), note) {
		t.Errorf("all was measured, and %d lines are dashed: %q", dashes(l), l.texts())
	}
	f, ok = drawer(t).Making(making(t, plainOval()))
	l := lookAt(t, f, ok)
	if dashes(l) < 20 || !strings.Contains(strings.Join(l.texts(), "|"), note) {
		t.Errorf("nothing but lengths was measured, and %d lines are dashed: %q", dashes(l), l.texts())
	}
	for _, text := range l.texts() {
		if strings.Contains(text, "%") {
			t.Errorf("a per cent stands at the drawing: %q", text)
		}
	}
}

func TestNoSizeNoMaking(t *testing.T) {
	d := drawer(t)
	for name, dims := range map[string]weight.Dimensions{
		"nothing": {}, "no width": {Shape: "oval", Cut: "brilliant", Length: measure(8)}, "irregular": {Shape: "irregular", Cut: "rough", Length: measure(8), Width: measure(6), Depth: measure(5)},
		"no figure": {Shape: "round", Length: weight.Measure{Value: nan()}}, "a mountain": {Shape: "round", Cut: "brilliant", Length: measure(5000)},
		"a mote": {Shape: "bead", Length: measure(0.01)},
	} {
		if _, ok := d.Making(making(t, dims)); ok {
			t.Errorf("%s: a making is drawn", name)
		}
	}
}

// outlineWords are the words that a stone file has for shape and cut.
func outlineWords(t *testing.T) (shapes, cuts []string) {
	t.Helper()
	words := func(field string) []string {
		f, ok := reflect.TypeFor[stone.Outline]().FieldByName(field)
		if !ok {
			t.Fatalf("no %s", field)
		}
		return strings.Split(f.Tag.Get("words"), "|")
	}
	return words("Shape"), words("Cut")
}

// TestEveryShapeAndCut: every pair of words of a stone file gives a sound
// drawing, at ordinary and at odd proportions, but for irregular stones.
func TestEveryShapeAndCut(t *testing.T) {
	shapes, cuts := outlineWords(t)
	if len(shapes) < 20 || len(cuts) < 15 {
		t.Fatalf("%d shapes, %d cuts", len(shapes), len(cuts))
	}
	d, bodies := drawer(t), 0
	sizes := [][3]float64{{8, 6, 4}, {40, 3, 2.5}, {0.9, 0.8, 0.5}, {120, 90, 60}, {5, 7, 9}}
	for _, shape := range shapes {
		for _, cut := range cuts {
			for i, size := range sizes {
				dims := weight.Dimensions{Shape: shape, Cut: cut, Length: measure(size[0]), Width: measure(size[1]), Depth: measure(size[2])}
				if i%2 == 0 {
					dims.Table, dims.CrownAngle, dims.PavilionDepth, dims.CrownHeight, dims.GirdlePercent = measure(61), measure(33), measure(43), measure(14), measure(3)
				}
				m := making(t, dims)
				f, ok := d.Making(m)
				if shape == "irregular" {
					if ok {
						t.Errorf("an irregular stone is drawn as a %s", cut)
					}
					continue
				}
				if m.Body != nil {
					bodies++
				}
				t.Run(shape+" "+cut, func(t *testing.T) { lookAt(t, f, ok).sound() })
			}
		}
	}
	if bodies < 200 {
		t.Errorf("only %d drawings from a solid", bodies)
	}
}

func TestWordyMaking(t *testing.T) {
	d := drawer(t)
	d.Words.Profile = strings.Repeat("seen along the length of the stone ", 6)
	d.Words.Assumed = strings.Repeat("dashed lines are those of usual proportions ", 12)
	for _, d := range []chart.Drawer{d, {Words: chart.English()}} {
		for _, dims := range []weight.Dimensions{ovalMixed(), plainOval(), heartCut(), bead()} {
			f, ok := d.Making(making(t, dims))
			lookAt(t, f, ok).sound()
		}
	}
}
