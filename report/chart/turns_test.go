package chart_test

import (
	"strings"
	"testing"

	"stonewrit/report"
	"stonewrit/report/chart"
)

// discs are the middles of filled marks, rings those of open ones.
func (l look) discs() (discs, rings []report.XY) {
	for _, s := range l.Shapes {
		if a, ok := s.(report.Arc); ok {
			if a.Pen.None {
				discs = append(discs, a.Center)
			} else {
				rings = append(rings, a.Center)
			}
		}
	}
	return discs, rings
}

func TestTurnsStandAtTheirFigures(t *testing.T) {
	in := topazTurns()
	f, ok := drawer(t).Turns(in)
	l := lookAt(t, f, ok)
	scale := l.uprightScale()
	discs, rings := l.discs()
	if len(discs) != len(in.Turns) || len(rings) != len(in.Turns) {
		t.Fatalf("%d discs and %d rings for %d turns", len(discs), len(rings), len(in.Turns))
	}
	for i, turn := range in.Turns {
		high := turn.High
		if high == 0 {
			high = turn.Low // one edge: both marks on one place
		}
		if got := scale.at(discs[i].Y); !close2(got, turn.Low, 1e-6) {
			t.Errorf("turn %d: disc at %.5f, want %.5f", i+1, got, turn.Low)
		}
		if got := scale.at(rings[i].Y); !close2(got, high, 1e-6) {
			t.Errorf("turn %d: ring at %.5f, want %.5f", i+1, got, high)
		}
		if i > 0 && discs[i].X <= discs[i-1].X {
			t.Errorf("turn %d stands left of the one before", i+1)
		}
		if number := l.label(string(rune('1' + i))); !close2(float64(number.At.X), float64(discs[i].X), 0.01) {
			t.Errorf("number %d stands at %v, its turn at %v", i+1, number.At.X, discs[i].X)
		}
	}
	for _, text := range []string{"lowest 1.6100\u00a0±\u00a00.0022", "highest 1.6200\u00a0±\u00a00.0022", "0.0100"} {
		if !l.says(text) {
			t.Errorf("%q is not said: %q", text, l.texts())
		}
	}
}

func TestOneTurnIsNoDrawing(t *testing.T) {
	d := drawer(t)
	for name, turns := range map[string][]chart.Turn{
		"none": nil, "one": {{Low: 1.54, High: 1.55}}, "two, one of them nothing": {{Low: 1.54}, {}}, "all over": {{Over: true}, {Over: true}},
		"no figures": {{Low: nan()}, {Low: nan()}}, "turned about": {{Low: 1.55, High: 1.54}, {Low: 1.55, High: 1.54}},
	} {
		if _, ok := d.Turns(chart.Turns{Turns: turns}); ok {
			t.Errorf("%s: turns are drawn", name)
		}
	}
}

func TestNastyTurns(t *testing.T) {
	many, wide := chart.Turns{Decimals: 4}, chart.Turns{Decimals: 4, U: 0.4}
	for i := range 200 {
		many.Turns = append(many.Turns, chart.Turn{Low: 1.54 + float64(i%7)/1000, High: 1.55 + float64(i%3)/1000, Over: i%50 == 0})
	}
	wide.Turns = []chart.Turn{{Low: 1.3, High: 2.9}, {Low: 1.30000001, High: 2.9}}
	still := chart.Turns{Turns: []chart.Turn{{Low: 1.54}, {Low: 1.54}, {Low: 1.54}}, Decimals: 3, U: 0.001}
	near := chart.Turns{Turns: []chart.Turn{{Low: 1.54, High: 1.5405}, {Low: 1.5401}}, Decimals: 4, U: 0.001}
	wordy := drawer(t)
	wordy.Words.Lowest = strings.Repeat("the lowest of all lower edges ", 10) + "{figure}"
	wordy.Words.Turn = strings.Repeat("position of the stone on the instrument ", 10)
	wordy.Words.Turns = strings.Repeat("refractive index from turn to turn ", 10)
	for _, d := range []chart.Drawer{drawer(t), {Words: chart.English()}, wordy} {
		for name, in := range map[string]chart.Turns{
			"many": many, "wide": wide, "still": still, "near": near, "ruby": rubyTurns(), "topaz": topazTurns(), "over": stillTurns(),
		} {
			t.Run(name, func(t *testing.T) {
				f, ok := d.Turns(in)
				lookAt(t, f, ok).sound()
			})
		}
	}
}
