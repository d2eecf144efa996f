package weight

import (
	_ "embed"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
)

//go:embed SOURCES.md
var sources string

func TestTablesUseTheWordsOfTheStoneFile(t *testing.T) {
	// The vocabulary of the stone file.
	shapes := strings.Split("round, oval, cushion, square, rectangle, cut-corner square, cut-corner rectangle, pear, marquise, heart, triangle, curved triangle, kite, half moon, baguette, tapered baguette, hexagon, octagon, lozenge, shield, drop, bead, irregular", ", ")
	cuts := strings.Split("brilliant, old mine, old European, single, princess, radiating cushion, step, mixed, checkerboard, rose, double rose, briolette, cabochon, double cabochon, flat cabochon, bead, faceted bead, carved, tablet, rough", ", ")
	e := newEstimator(t)
	check := func(shape, cut string) {
		t.Helper()
		if !slices.Contains(shapes, shape) || !slices.Contains(cuts, cut) {
			t.Errorf("%q %q is not in the vocabulary", shape, cut)
		}
	}
	for _, f := range e.factors {
		check(f.shape, f.cut)
	}
	for _, m := range e.makes {
		check(m.shape, m.cut)
	}
	for _, word := range []string{"extremely thin", "very thin", "thin", "medium", "slightly thick", "thick", "very thick", "extremely thick"} {
		if _, ok := e.words[wordKey{"girdle", word}]; !ok {
			t.Errorf("girdle %q has no thickness", word)
		}
	}
	for _, word := range []string{"none", "slight", "moderate", "strong"} {
		if _, ok := e.words[wordKey{"bulge", word}]; !ok {
			t.Errorf("bulge %q has no share", word)
		}
	}
}

func TestEveryRowNamesASourceThatIsListed(t *testing.T) {
	listed := regexp.MustCompile(`(?m)^\| ([A-Z]\d) \|`).FindAllStringSubmatch(sources, -1)
	keys := map[string]bool{}
	for _, m := range listed {
		keys[m[1]] = true
	}
	for name, src := range map[string][]byte{
		"factors.csv": factorsCSV, "words.csv": wordsCSV, "makes.csv": makesCSV,
		"limits.csv": limitsCSV, "round_diamond.csv": roundDiamondCSV,
	} {
		if err := eachRow(name, src, func(r *record) {
			if !keys[r.text("source")] {
				r.fail("source", r.text("source")+" is not in SOURCES.md")
			}
		}); err != nil {
			t.Error(err)
		}
	}
}

func TestGirdleCorrectionIsThatOfTheBody(t *testing.T) {
	// What a girdle two per cent thicker adds at the same total depth: the
	// factor's correction against the polyhedron, crown and pavilion lowered
	// together.
	e := newEstimator(t)
	for _, row := range []struct{ shape, cut string }{{"round", "brilliant"}, {"cut-corner rectangle", "step"}, {"square", "princess"}} {
		d := Dimensions{Shape: row.shape, Cut: row.cut, Length: Measure{6, 0.01}, Width: Measure{6, 0.01}, Depth: Measure{3.9, 0.01}, Bulge: "none"}
		m, _ := e.makeFor(d)
		at := func(girdle float64) (factor, body float64) {
			d.GirdlePercent = Measure{girdle, 0.1}
			c, err := e.byFactor(d)
			if err != nil {
				t.Fatal(err)
			}
			rest := 3.9 - 6*girdle/100
			s, err := m.body(proportions{length: 6, width: 6, reference: 6, table: 0.6, star: 0.5, lower: 0.75,
				girdle: 6 * girdle / 100, crown: 0.25 * rest, pavilion: 0.75 * rest})
			if err != nil {
				t.Fatal(err)
			}
			return c.Volume.Value, s.Volume()
		}
		f0, b0 := at(2.5)
		f1, b1 := at(4.5)
		if got, want := f1/f0-1, b1/b0-1; math.Abs(got/want-1) > 0.15 {
			t.Errorf("%s %s: factor grows by %.2f %%, body by %.2f %%", row.shape, row.cut, 100*got, 100*want)
		} else {
			t.Logf("%s %s: factor grows by %.2f %%, body by %.2f %%", row.shape, row.cut, 100*got, 100*want)
		}
	}
}
