package chart_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"stonewrit/grading/gem"
	"stonewrit/report"
	"stonewrit/report/chart"
)

// upright are the upright lines of at least a strip's third, as wavelengths.
func (l look) upright(pick func(report.Line) bool) []float64 {
	scale := l.levelScale()
	var out []float64
	for _, line := range l.lines(func(line report.Line) bool {
		return line.From.X == line.To.X && line.To.Y-line.From.Y > 8 && pick(line)
	}) {
		out = append(out, scale.at(line.From.X))
	}
	return out
}

// middle is the height of the scale's figures, between the two strips.
func (l look) middle() report.Point { return l.label("500").At.Y }

func same(a, b []float64, by float64) bool {
	return slices.EqualFunc(a, b, func(x, y float64) bool { return close2(x, y, by) })
}

// TestLinesStandAtTheirWavelengths: above the scale what was seen, below it
// what is published, full, dashed and dotted by how dependable it is.
func TestLinesStandAtTheirWavelengths(t *testing.T) {
	f, ok := drawer(t).Spectrum(chart.Spectrum{
		Seen: []chart.Absorption{
			{Kind: chart.Line, From: 476}, {Kind: chart.Line, From: 589, Doubtful: true}, {Kind: chart.Line, From: 694}, {Kind: chart.Cutoff, From: 450},
			{Kind: chart.Band, From: 500, To: 550},
		},
		Name: "a stone",
		Published: []chart.Absorption{
			{Kind: chart.Line, From: 468.5, Frequency: gem.Sometimes}, {Kind: chart.Line, From: 476.5, Frequency: gem.Often},
			{Kind: chart.Line, From: 694.2, Frequency: gem.Always}, {Kind: chart.Line, From: 600, Frequency: gem.Never},
		},
	})
	l := lookAt(t, f, ok)
	middle := l.middle()
	seen := l.upright(func(line report.Line) bool { return line.To.Y < middle })
	slices.Sort(seen)
	if !same(seen, []float64{450, 476, 589, 694}, 0.02) {
		t.Errorf("seen lines at %.2f", seen)
	}
	for _, tc := range []struct {
		name string
		dash func([]report.Point) bool
		want []float64
	}{
		{"always, full", func(d []report.Point) bool { return len(d) == 0 }, []float64{694.2}},
		{"often, dashed", func(d []report.Point) bool { return len(d) == 2 && d[0] > 2 }, []float64{476.5}},
		{"sometimes, dotted", func(d []report.Point) bool { return len(d) == 2 && d[0] < 1.5 }, []float64{468.5}},
	} {
		got := l.upright(func(line report.Line) bool {
			return line.From.Y > middle && line.To.Y-line.From.Y > 20 && tc.dash(line.Pen.Dash)
		})
		if !same(got, tc.want, 0.02) {
			t.Errorf("%s: published lines at %.2f, want %.2f", tc.name, got, tc.want)
		}
	}
	scale := l.levelScale()
	var shaded [][2]float64
	for _, s := range l.Shapes {
		if p, ok := s.(report.Polygon); ok && p.Fill.Solid && p.Fill.Grey < 0.7 {
			shaded = append(shaded, [2]float64{scale.at(p.Points[0].X), scale.at(p.Points[1].X)})
		}
	}
	if len(shaded) != 2 || !same(shaded[0][:], []float64{400, 450}, 0.02) || !same(shaded[1][:], []float64{500, 550}, 0.02) {
		t.Errorf("dark stretches %.2f, want all below the cutoff at 450, and the band", shaded)
	}
	for _, text := range []string{"(589)", "500–550", "468.5", "694.2", "seen in this stone", "published for a stone", "always there", "often", "sometimes"} {
		if !l.says(text) {
			t.Errorf("%q is not said: %q", text, l.texts())
		}
	}
	if l.says("600") && l.says("bright line") {
		t.Error("the key names what does not occur")
	}
}

// TestScaleOfTheSpectrum: 400 to 700 nm, and 780 where a line lies beyond 700.
func TestScaleOfTheSpectrum(t *testing.T) {
	for _, tc := range []struct {
		nm        float64
		low, high float64
	}{{550, 400, 700}, {700, 400, 700}, {735, 400, 780}, {795, 400, 800}, {389, 380, 700}} {
		f, ok := drawer(t).Spectrum(chart.Spectrum{Seen: []chart.Absorption{{Kind: chart.Line, From: tc.nm}}})
		l := lookAt(t, f, ok)
		scale, left, right := l.levelScale(), report.FigureWidth, report.Point(0)
		for _, s := range l.Shapes {
			if p, ok := s.(report.Polygon); ok { // the strip and what lies in it
				left, right = min(left, p.Points[0].X), max(right, p.Points[1].X)
			}
		}
		if low, high := scale.at(left), scale.at(right); !close2(low, tc.low, 0.01) || !close2(high, tc.high, 0.01) {
			t.Errorf("line at %v: scale from %.2f to %.2f, want %v to %v", tc.nm, low, high, tc.low, tc.high)
		}
	}
}

func TestNothingLookedForNoSpectrum(t *testing.T) {
	d := drawer(t)
	published := rubySpectrum().Published
	if _, ok := d.Spectrum(chart.Spectrum{Published: published, Name: "ruby"}); ok {
		t.Error("a spectrum is drawn that nobody looked at")
	}
	if _, ok := d.Spectrum(chart.Spectrum{Looked: true}); ok {
		t.Error("an empty spectrum is drawn")
	}
	f, ok := d.Spectrum(chart.Spectrum{Looked: true, Published: published, Name: "ruby"})
	if l := lookAt(t, f, ok); !l.says("looked at, no line was seen in this stone") {
		t.Errorf("it is not said that nothing was seen: %q", l.texts())
	}
	f, ok = d.Spectrum(chart.Spectrum{Seen: rubySpectrum().Seen, Name: "howlite"})
	if l := lookAt(t, f, ok); !l.says("none published for howlite") {
		t.Errorf("it is not said that none is published: %q", l.texts())
	}
}

func TestNastySpectra(t *testing.T) {
	long := strings.Repeat("laboratory-grown opal with polymer ", 9)
	crowd := chart.Spectrum{Name: long, Looked: true}
	for i := range 90 {
		nm := 690 + float64(i)/10
		crowd.Seen = append(crowd.Seen, chart.Absorption{Kind: chart.Line, From: nm})
		crowd.Published = append(crowd.Published, chart.Absorption{Kind: chart.Line, From: nm, Frequency: gem.Always}, chart.Absorption{Kind: chart.Band, From: 400 + nm/50, To: nm, Frequency: gem.Often})
	}
	even := chart.Spectrum{Name: "x"}
	for nm := 352.0; nm < 800; nm += 7 {
		even.Seen = append(even.Seen, chart.Absorption{Kind: chart.Line, From: nm, Doubtful: true, U: 0.1})
	}
	ends := chart.Spectrum{Seen: []chart.Absorption{
		{Kind: chart.Line, From: 400, U: 9}, {Kind: chart.Line, From: 700, U: 9}, {Kind: chart.Emission, From: 700}, {Kind: chart.Emission, From: 400}, {Kind: chart.Cutoff, From: 400},
		{Kind: chart.Band, From: 400, To: 700}, {Kind: chart.Cutoff, From: 700},
	}}
	void := chart.Spectrum{Seen: []chart.Absorption{
		{Kind: chart.Line, From: nan()}, {Kind: chart.Band, From: 600, To: 500}, {Kind: chart.Line, From: -3}, {Kind: chart.Line, From: 550, U: nan()}, {Kind: "unheard of", From: 560},
	}}
	for _, d := range []chart.Drawer{drawer(t), {Words: chart.English()}} {
		for name, in := range map[string]chart.Spectrum{
			"crowd": crowd, "even": even, "ends": ends, "void": void, "ruby": rubySpectrum(), "zircon": zirconSpectrum(),
		} {
			t.Run(name, func(t *testing.T) {
				f, ok := d.Spectrum(in)
				lookAt(t, f, ok).sound()
			})
		}
	}
}

// TestEveryPublishedSpectrum draws what the gem table has for each material.
func TestEveryPublishedSpectrum(t *testing.T) {
	d, count := drawer(t), 0
	for _, m := range loaded(t).Gems.Materials() {
		in := chart.Spectrum{Looked: true, Name: m.Name}
		for _, a := range m.Absorption {
			in.Published = append(in.Published, chart.Absorption{Kind: chart.Kind(a.Kind), From: a.From, To: a.To, Frequency: a.Frequency})
		}
		if f, ok := d.Spectrum(in); ok {
			count++
			t.Run(fmt.Sprint(m.Name), func(t *testing.T) { lookAt(t, f, ok).sound() })
		}
	}
	if count < 60 {
		t.Errorf("only %d materials with a spectrum", count)
	}
}
