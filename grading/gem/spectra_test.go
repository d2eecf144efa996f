package gem

import (
	"math"
	"slices"
	"strings"
	"testing"
)

// A hand spectroscope without a valid check: twice the root sum of 2.5 nm below
// 550 nm, or 5 nm from there on, and 5 nm (common practice, no source).
func handTolerance(nm float64) float64 {
	u := 2.5
	if nm >= 550 {
		u = 5
	}
	return 2 * math.Hypot(u, 5)
}

// TestSpectraExcludeByLines: a pattern of the spectrum that excludes a material
// needs more than one line, and the published lines and bands of that material,
// each taken once, can never be mistaken for the whole of it through a hand
// spectroscope: the true name must not be contradicted.
func TestSpectraExcludeByLines(t *testing.T) {
	table := mustLoad(t)
	held := 0
	for _, f := range table.Features() {
		if f.SeenBy != "spectrum" {
			continue
		}
		for _, s := range table.evidence.signs[f.Term] {
			if s.Claim != "species" || s.Force != Excludes {
				continue
			}
			if len(f.Lines) < 2 {
				t.Errorf("%s excludes %s by %d lines", f.Term, s.About, len(f.Lines))
			}
			about := find(t, table, s.About)
			for _, m := range table.Materials() {
				if !table.IsWithin(m, about) {
					continue
				}
				held++
				for _, colour := range append(m.Colours, "") {
					if couldShow(f, inColour(m, colour), f.Lines, nil) {
						t.Errorf("%s could be seen in %s %s, which it excludes", f.Term, colour, m.Name)
					}
				}
			}
		}
	}
	if held < 60 {
		t.Errorf("%d materials compared, want at least 60", held)
	}
}

// inColour are the absorptions of stones of one colour; of any, if it is "".
func inColour(m *Material, colour string) []Absorption {
	return slices.DeleteFunc(slices.Clone(m.Absorption), func(a Absorption) bool {
		return len(a.Colours) > 0 && !slices.ContainsFunc(a.Colours, func(c string) bool { return colour != "" && strings.Contains(colour, c) })
	})
}

// couldShow reports whether a material's own absorptions, each taken for one
// line at most, could pass for all of the lines.
func couldShow(f *Feature, own []Absorption, lines []float64, taken []int) bool {
	if len(lines) == 0 {
		return true
	}
	for i, a := range own {
		far := Range{a.From, a.To}.Distance(lines[0])
		broad := f.LineKind == "line" && a.To-a.From > 25
		if a.Frequency == Never || a.Kind == "cutoff" || a.Kind == "emission" || broad || far > handTolerance(lines[0]) || slices.Contains(taken, i) {
			continue
		}
		if couldShow(f, own, lines[1:], append(slices.Clone(taken), i)) {
			return true
		}
	}
	return false
}

// What spectra keep apart and what they must leave open. Common practice, no
// source; the reason is the one that a gemmologist would give.
func TestSpectraBySpecies(t *testing.T) {
	table := mustLoad(t)
	tests := []struct {
		term, material string
		excludes       bool
		why            string
	}{
		{"almandine lines", "spinel", true, "no band at 527 nm"},
		{"almandine lines", "tsavorite", true, "a grossular"},
		{"almandine lines", "demantoid", true, "a band at 443 nm"},
		{"almandine lines", "chrysoberyl", true, "a band at 444 nm"},
		{"almandine lines", "rubellite", true, "one broad band in the green"},
		{"almandine lines", "benitoite", true, "no such bands"},
		{"almandine lines", "ruby", true, "as before"},
		{"almandine lines", "high zircon", false, "lines at 516, 537.5 and 562.5 or 589.5 nm lie near through an unchecked instrument"},
		{"almandine lines", "rhodolite", false, "it has them"},
		{"almandine lines", "spessartine", false, "it often has them from iron"},
		{"almandine lines", "garnet-topped doublet", false, "its crown has them"},
		{"almandine lines", "crown or lead glass", false, "glass with neodymium has groups near 510, 525 and 580 nm"},
		{"emerald lines", "emerald", false, "its own"},
		{"emerald lines", "peridot", true, "lines of iron in the blue"},
		{"emerald lines", "chrome tourmaline", true, "no line at 637 nm"},
		{"emerald lines", "crown or lead glass", false, "chromium in glass has bands near 685 and 635 nm"},
		{"emerald lines", "alexandrite", false, "chromium lines nearby"},
		{"zircon lines", "diamond", true, "no uranium"},
		{"zircon lines", "lithium niobate", true, "no uranium"},
		{"zircon lines", "high zircon", false, "its own"},
		{"653.5 nm line", "ruby", false, "one line, and chromium has one at 659 nm"},
		{"cape lines", "zircon", true, "no line at 415.5 nm"},
		{"cape lines", "cubic zirconia", false, "holmium in it has lines near 418 and 473 nm"},
		{"415.5 nm line", "zircon", false, "one line excludes nothing"},
	}
	for _, tt := range tests {
		f, err := table.Feature(tt.term)
		if err != nil {
			t.Error(err)
			continue
		}
		m := find(t, table, tt.material)
		excluded := slices.ContainsFunc(table.SignsFor(f, m), func(s Sign) bool {
			return s.Claim == "species" && s.Force == Excludes && table.IsWithin(m, find(t, table, s.About))
		})
		if excluded != tt.excludes {
			t.Errorf("%s in %s: excluded is %v, want %v: %s", tt.term, tt.material, excluded, tt.excludes, tt.why)
		}
	}
}
