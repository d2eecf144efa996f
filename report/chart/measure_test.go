package chart_test

import (
	"testing"

	"github.com/go-fonts/liberation/liberationserifregular"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"stonewrit/report"
	"stonewrit/report/chart"
)

// measured is the width of a text in the small size, by another reader of the
// font than the one that sets pages.
func measured(t testing.TB) func(string) report.Point {
	t.Helper()
	f, err := sfnt.Parse(liberationserifregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	var buf sfnt.Buffer
	return func(s string) report.Point {
		var sum fixed.Int26_6
		for _, r := range s {
			i, err := f.GlyphIndex(&buf, r)
			if err != nil {
				t.Fatal(err)
			}
			w, err := f.GlyphAdvance(&buf, i, fixed.I(1000), font.HintingNone)
			if err != nil {
				t.Fatal(err)
			}
			sum += w
		}
		return report.Point(sum) / 64 / 1000 * 8
	}
}

func drawer(t testing.TB) chart.Drawer {
	return chart.Drawer{Words: chart.English(), Width: measured(t)}
}
