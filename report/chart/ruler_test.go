package chart_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stonewrit/grading/gem"
	"stonewrit/report"
	"stonewrit/report/chart"
)

// ticks are the places of the stone's marks: the thick lines.
func (l look) ticks() []report.Point {
	var out []report.Point
	for _, line := range l.lines(func(line report.Line) bool { return line.Pen.Width == report.Thick }) {
		out = append(out, line.From.X)
	}
	return out
}

// brackets are the ends of the brackets.
func (l look) brackets() [][2]report.Point {
	var out [][2]report.Point
	for _, s := range l.Shapes {
		if p, ok := s.(report.Polyline); ok && len(p.Points) == 4 {
			out = append(out, [2]report.Point{p.Points[0].X, p.Points[3].X})
		}
	}
	return out
}

// TestMarksStandAtTheirFigures: ticks at the values and brackets of 2u to
// either side (JCGM 100, 6.2.1: U = k u, k = 2), read off by the printed scale.
func TestMarksStandAtTheirFigures(t *testing.T) {
	d := drawer(t)
	for _, tc := range []struct {
		name   string
		figure func() (report.Figure, bool)
		values []float64
		u      float64
		tol    float64
		why    string
	}{
		{"two edges", func() (report.Figure, bool) { return d.Index(rubyIndex()) }, []float64{1.7613, 1.7693}, 0.00105, 1e-6, "both edges"},
		{"brackets over one another", func() (report.Figure, bool) { return d.Index(quartzIndex()) }, []float64{1.544, 1.552}, 0.0021, 1e-6, "raised, not moved"},
		{"two places", func() (report.Figure, bool) { return d.Index(doubletIndex()) }, []float64{1.765, 1.518}, 0.0015, 1e-6, "a composite"},
		{"gravity", func() (report.Figure, bool) { return d.Gravity(rubyGravity()) }, []float64{3.993}, 0.016, 1e-5, "one value"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			f, ok := tc.figure()
			l := lookAt(t, f, ok)
			scale := l.levelScale()
			ticks, brackets := l.ticks(), l.brackets()
			if len(ticks) != len(tc.values) || len(brackets) != len(tc.values) {
				t.Fatalf("%d ticks and %d brackets, want %d: %s", len(ticks), len(brackets), len(tc.values), tc.why)
			}
			for i, want := range tc.values {
				if got := scale.at(ticks[i]); !close2(got, want, tc.tol) {
					t.Errorf("tick at %.5f, want %.5f: %s", got, want, tc.why)
				}
				low, high := scale.at(brackets[i][0]), scale.at(brackets[i][1])
				if !close2(low, want-2*tc.u, tc.tol) || !close2(high, want+2*tc.u, tc.tol) {
					t.Errorf("bracket %.5f to %.5f, want %.5f and 2u = %.5f to either side: %s", low, high, want, 2*tc.u, tc.why)
				}
			}
		})
	}
}

// rangeLines are the level lines below the ruler as figures, top to bottom.
func (l look) rangeLines() [][2]float64 {
	scale := l.levelScale()
	var out [][2]float64
	for _, line := range l.lines(func(line report.Line) bool {
		return line.From.Y == line.To.Y && (line.Pen.Width == 1.2 || line.Pen.Width == 0.6)
	}) {
		out = append(out, [2]float64{scale.at(line.From.X), scale.at(line.To.X)})
	}
	return out
}

func TestRangesHangAtTheirFigures(t *testing.T) {
	f, ok := drawer(t).Index(rubyIndex())
	l := lookAt(t, f, ok)
	want := [][2]float64{{1.757, 1.770}, {1.765, 1.780}}
	got := l.rangeLines()
	if len(got) != 2 {
		t.Fatalf("%d lines, want those of the lower and the higher index", len(got))
	}
	for i := range want {
		if !close2(got[i][0], want[i][0], 1e-6) || !close2(got[i][1], want[i][1], 1e-6) {
			t.Errorf("line %d from %.5f to %.5f, want %v", i, got[i][0], got[i][1], want[i])
		}
	}
}

// TestNamesInTheOrderOfFit: the own name first, then eight rivals in the order
// given (rulings D4), then how many more.
func TestNamesInTheOrderOfFit(t *testing.T) {
	f, ok := drawer(t).Index(quartzIndex())
	l := lookAt(t, f, ok)
	want := []string{"quartz", "scapolite", "labradorite", "oligoclase", "iolite", "glass, made", "amber", "beryllonite"}
	last := report.Point(0)
	for _, name := range want {
		y := l.label(name).At.Y
		if y <= last {
			t.Errorf("%s hangs at %v, above the name before it", name, y)
		}
		last = y
	}
	for _, text := range []string{"and 2 more", "not in the table: ivory"} {
		if !l.says(text) {
			t.Errorf("%q is not said: %q", text, l.texts())
		}
	}
	if l.says("one more") || l.says("and another") {
		t.Error("a ninth rival is named")
	}
}

// TestOverTheLimit: a tick at the limit, no bracket, and an arrow from there to
// the end of the scale.
func TestOverTheLimit(t *testing.T) {
	f, ok := drawer(t).Index(overIndex())
	l := lookAt(t, f, ok)
	scale := l.levelScale()
	if ticks := l.ticks(); len(ticks) != 1 || !close2(scale.at(ticks[0]), 1.81, 1e-4) || len(l.brackets()) > 0 {
		t.Fatalf("ticks %v, brackets %v: want one at 1.81 without", ticks, l.brackets())
	}
	if !l.says("over 1.81") {
		t.Errorf("the limit is not said: %q", l.texts())
	}
	tip := report.Point(0)
	for _, s := range l.Shapes {
		if p, ok := s.(report.Polygon); ok && len(p.Points) == 3 && p.Points[0].X > p.Points[1].X {
			tip = max(tip, p.Points[0].X)
		}
	}
	if scale.at(tip) < 2.7 {
		t.Errorf("the arrow ends at %.3f, before the last range at 2.70", scale.at(tip))
	}
}

// TestBounds: a stone that sinks in one liquid and floats in another lies
// between; each mark stands at its liquid.
func TestBounds(t *testing.T) {
	f, ok := drawer(t).Gravity(betweenGravity())
	l := lookAt(t, f, ok)
	scale := l.levelScale()
	ticks := l.ticks()
	if len(ticks) != 2 || !close2(scale.at(ticks[0]), 2.62, 1e-4) || !close2(scale.at(ticks[1]), 2.67, 1e-4) {
		t.Fatalf("ticks %v, want 2.62 and 2.67", ticks)
	}
	if !l.says("above 2.62") || !l.says("below 2.67") {
		t.Errorf("bounds are not said: %q", l.texts())
	}
}

func TestBirefringenceStandsBetweenTheEdges(t *testing.T) {
	f, ok := drawer(t).Index(rubyIndex())
	l := lookAt(t, f, ok)
	ticks := l.ticks()
	if got, want := l.label("0.0080").At.X, (ticks[0]+ticks[1])/2; !close2(float64(got), float64(want), 0.01) {
		t.Errorf("0.0080 stands at %v, want %v", got, want)
	}
}

func TestNoReadingNoRuler(t *testing.T) {
	d := drawer(t)
	materials := rubyIndex().Materials
	for name, in := range map[string]chart.Index{
		"nothing":        {Materials: materials},
		"no edge":        {Readings: []chart.IndexReading{{Edges: 0}}, Materials: materials},
		"zero":           {Readings: []chart.IndexReading{{Edges: 1}}, Materials: materials},
		"no figure":      {Readings: []chart.IndexReading{{Edges: 1, Low: nan()}}, Materials: materials},
		"turned about":   {Readings: []chart.IndexReading{{Edges: 2, Low: 1.77, High: 1.76}}, Materials: materials},
		"out of reason":  {Readings: []chart.IndexReading{{Edges: 1, Low: 17.62}}, Materials: materials},
		"edges and none": {Readings: []chart.IndexReading{{Edges: 2, Low: 1.76}}, Materials: materials},
	} {
		if _, ok := d.Index(in); ok {
			t.Errorf("%s: a ruler is drawn", name)
		}
	}
	if _, ok := d.Gravity(chart.Gravity{Materials: materials, U: 0.1}); ok {
		t.Error("a ruler of no specific gravity is drawn")
	}
}

// nastyIndices are what a ruler must bear.
func nastyIndices() map[string]chart.Index {
	long := strings.Repeat("laboratory-grown opal with polymer ", 9)[:300]
	word := strings.Repeat("W", 300)
	many := rubyIndex()
	for range 40 {
		many.Materials = append(many.Materials, rival("chrysoberyl", span(1.74, 1.75), span(1.75, 1.76)))
	}
	longNames := rubyIndex()
	for range 12 {
		longNames.Materials = append(longNames.Materials, rival(long, span(1.4, 1.9)), rival(word, span(1.75, 1.78)))
	}
	unknown := rubyIndex()
	for range 20 {
		unknown.Materials = append(unknown.Materials, rival(long))
	}
	tight := chart.Index{Readings: []chart.IndexReading{
		{Edges: 2, Low: 1.5440, High: 1.5441, U: 0.01, Decimals: 4, Birefringence: 0.0001, Place: "table"},
		{Edges: 2, Low: 1.5442, High: 1.5443, U: 0.01, Decimals: 4, Birefringence: 0.0001, Place: "crown"},
		{Edges: 1, Low: 1.5442, U: 0.01, Decimals: 4, Place: strings.Repeat("a place far down on the pavilion ", 12)},
		{Edges: 0, Limit: 1.81, Place: "stone 3 of 7"},
	}}
	far := chart.Index{
		Readings:  []chart.IndexReading{{Edges: 1, Low: 1.46, U: 0.002, Decimals: 3}},
		Materials: []chart.Material{own("moissanite", span(2.64, 2.66), span(2.68, 2.70)), rival("far away", span(3.2, 3.3))},
	}
	blunt := chart.Index{Readings: []chart.IndexReading{{Edges: 1, Low: 1.5, U: 0.6, Decimals: 2}}}
	left := chart.Index{Readings: []chart.IndexReading{{Edges: 2, Low: 1.757, High: 1.780, U: 0, Decimals: 4, Birefringence: 0.023}}, Materials: rubyIndex().Materials}
	upper := chart.Index{Readings: []chart.IndexReading{{Edges: 1, Low: 1.757, U: 0.001, Limit: 1.81, UpperOver: true, Decimals: 3}}, Materials: []chart.Material{own("benitoite", span(1.755, 1.759), span(1.80, 1.806))}}
	odd := rubyIndex()
	odd.Materials = append(odd.Materials, rival("upside down", gem.Range{Min: 1.8, Max: 1.7}), rival("no figure", gem.Range{Min: nan(), Max: 1.7}))
	return map[string]chart.Index{
		"many rivals": many, "long names": longNames, "names without figure": unknown, "marks on one another": tight, "far from the name": far,
		"blunt": blunt, "no uncertainty": left, "upper over": upper, "odd ranges": odd,
		"ruby": rubyIndex(), "quartz": quartzIndex(), "over": overIndex(), "doublet": doubletIndex(),
	}
}

func TestNastyRulers(t *testing.T) {
	for _, d := range []chart.Drawer{drawer(t), {Words: chart.English()}} {
		for name, in := range nastyIndices() {
			t.Run(name, func(t *testing.T) {
				f, ok := d.Index(in)
				lookAt(t, f, ok).sound()
			})
		}
		for name, in := range map[string]chart.Gravity{
			"ruby": rubyGravity(), "sinks": sinksGravity(), "between": betweenGravity(),
			"contrary":   {Above: 3.3, Below: 2.6, Materials: rubyGravity().Materials},
			"very close": {Above: 2.650, Below: 2.651},
			"light":      {Value: 1.05, U: 0.02, Materials: []chart.Material{own("amber", span(1.03, 1.10)), rival("metal", span(19, 19.4))}},
			"same":       {Above: 2.65, Below: 2.65},
		} {
			t.Run(name, func(t *testing.T) {
				f, ok := d.Gravity(in)
				lookAt(t, f, ok).sound()
			})
		}
	}
}

// TestAnyRuler: whatever the readings and ranges, the drawing is sound, exact
// and the same again.
func TestAnyRuler(t *testing.T) {
	d := drawer(t)
	index := rapid.Float64Range(1.2, 3.2)
	rapid.Check(t, func(rt *rapid.T) {
		var in chart.Index
		for i := range rapid.IntRange(1, 3).Draw(rt, "readings") {
			low := index.Draw(rt, "low")
			in.Readings = append(in.Readings, chart.IndexReading{
				Place: []string{"", "crown", "pavilion"}[i], Edges: rapid.IntRange(1, 2).Draw(rt, "edges"), Low: low, High: low + rapid.Float64Range(0, 0.3).Draw(rt, "biref"),
				U: rapid.Float64Range(0, 0.02).Draw(rt, "u"), Decimals: 4, Birefringence: 0.01, Limit: 1.81, UpperOver: rapid.Bool().Draw(rt, "over"),
			})
		}
		for range rapid.IntRange(0, 11).Draw(rt, "materials") {
			low, wide := index.Draw(rt, "range"), rapid.Float64Range(0.0001, 0.4).Draw(rt, "wide")
			m := rival(rapid.StringMatching(`[a-z]{3,9}( [a-z]{3,12}){0,3}`).Draw(rt, "name"), span(low, low+wide))
			if rapid.Bool().Draw(rt, "two") {
				m.Ranges = append(m.Ranges, span(low+wide/3, low+wide*1.5))
			}
			m.Own = rapid.IntRange(0, 5).Draw(rt, "own") == 0
			in.Materials = append(in.Materials, m)
		}
		f, ok := d.Index(in)
		l := look{f, rt, measured(rt)}
		if !ok {
			rt.Fatalf("nothing is drawn")
		}
		l.sound()
		scale := l.levelScale()
		var want []float64
		for _, r := range in.Readings {
			want = append(want, r.Low)
			if r.High > r.Low {
				want = append(want, r.High)
			} else if r.UpperOver && r.Edges == 1 {
				want = append(want, r.Limit)
			}
		}
		ticks := l.ticks()
		if len(ticks) != len(want) {
			rt.Fatalf("%d ticks, want %d", len(ticks), len(want))
		}
		for i := range want {
			if got := scale.at(ticks[i]); !close2(got, want[i], 0.03*scale.each) { // a thirtieth of a point
				rt.Errorf("tick at %v, want %v", got, want[i])
			}
		}
		if again, _ := d.Index(in); !reflect.DeepEqual(f, again) {
			rt.Errorf("drawn again, it differs")
		}
	})
}

// TestNamesKeepClearOfLeadLines: the thin lines down from the marks give way to
// every label they meet.
func TestNamesKeepClearOfLeadLines(t *testing.T) {
	f, ok := drawer(t).Index(quartzIndex())
	l := lookAt(t, f, ok)
	for _, line := range l.lines(func(line report.Line) bool { return line.From.X == line.To.X && line.Pen.Grey > 0.6 }) {
		r, _ := l.ink(line)
		if i := slices.IndexFunc(l.labels(), func(label report.Label) bool { return l.boxOf(label).overlaps(r) }); i >= 0 {
			t.Errorf("%q is struck through", l.labels()[i].Text)
		}
	}
}
