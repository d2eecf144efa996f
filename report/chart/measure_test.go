package chart_test

import (
	"math"
	"sync"
	"testing"

	"github.com/go-fonts/liberation/liberationserifregular"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"stonewrit/report"
	"stonewrit/report/chart"
)

// tester is a test, or a test of random inputs.
type tester interface {
	Helper()
	Errorf(format string, args ...any)
	Fatalf(format string, args ...any)
}

// advances are the widths of the characters of the typeface that documents are
// set in, in thousandths of its size, by another reader of the font than the
// one that sets pages.
var advances = sync.OnceValues(func() (map[rune]report.Point, error) {
	f, err := sfnt.Parse(liberationserifregular.TTF)
	if err != nil {
		return nil, err
	}
	var buf sfnt.Buffer
	out := map[rune]report.Point{}
	for r := rune(' '); r < 0x2200; r++ {
		i, err := f.GlyphIndex(&buf, r)
		if err != nil || i == 0 {
			continue
		}
		w, err := f.GlyphAdvance(&buf, i, fixed.I(1000), font.HintingNone)
		if err != nil {
			return nil, err
		}
		out[r] = report.Point(w) / 64
	}
	return out, nil
})

// measured is the width of a text in the small size.
func measured(t tester) func(string) report.Point {
	t.Helper()
	widths, err := advances()
	if err != nil {
		t.Fatalf("%v", err)
	}
	return func(s string) report.Point {
		var sum report.Point
		for _, r := range s {
			sum += widths[r]
		}
		return sum * 8 / 1000
	}
}

func drawer(t testing.TB) chart.Drawer {
	return chart.Drawer{Words: chart.English(), Width: measured(t)}
}

func nan() float64 { return math.NaN() }
