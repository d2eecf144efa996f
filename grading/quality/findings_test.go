package quality

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"stonewrit/grading/stone"
)

// A diamond, a coloured stone and pearls described so that nothing is to be
// said; the rows of the tests below change one thing each.
const (
	goodDiamond = `report: note
opinion: {species: diamond, growth: natural, treatments: []}
size: {shape: round, cut: brilliant, diameter: [6.48 mm, 6.52 mm], depth: 3.95 mm, table: 57 %, girdle: medium, culet: none}
weight: {measured: 1.025 ct}
tests:
  - {test: magnification, power: 10, corrected: true, sees: [feather]}
quality:
  diamond: {system: "own words after CIBJO", compared_with: master stones, colour: G, clarity: VS2, fluorescence: medium blue, polish: good, symmetry: good}
`
	goodRuby = `report: note
opinion: {species: corundum, variety: ruby, growth: natural, treatments: [heated]}
size: {shape: oval, cut: mixed, length: 8.00 mm, width: 6.20 mm, depth: 3.75 mm}
weight: {measured: 1.520 ct}
appearance: {colour: red, transparency: transparent}
tests:
  - {test: magnification, power: 10, corrected: true, sees: [feather]}
quality:
  colour: {munsell: "5R 4/12", words: strong red, light: D65}
  clarity: visible at 10x
  cut: {window: 10 %, extinction: 15 %}
`
	goodPearls = `report: note
opinion: {species: pearl, growth: cultured, water: saltwater, method: bead nucleus, treatments: []}
tests: [{test: pearl drill hole, sees: [bead nucleus]}]
quality:
  pearl: {shape: round, lustre: high, surface: clean, matching: good, drilled: through, count: 63, sizes: [6.5 mm, 7.0 mm], nacre: {words: thick, method: drill hole}}
`
)

func TestNothingToSayOfGoodFiles(t *testing.T) {
	g := load(t)
	for name, body := range map[string]string{"diamond": goodDiamond, "ruby": goodRuby, "pearls": goodPearls} {
		if list := g.Findings(record(t, g, body), 1.025); len(list) > 0 {
			t.Errorf("%s: %+v", name, list)
		}
	}
}

// Every row changes one thing of a good file and names what is to be found.
// Where a clause decides, it stands in the row; "ours" is a rule of this
// program.
func TestFindings(t *testing.T) {
	g := load(t)
	mountedDiamond := strings.NewReplacer("report: note", "report: note\nmounted: true", "1.025 ct}", "1.025 ct, when: before setting}",
		"colour: G, clarity: VS2", "colour: F to H, clarity: VS1 to SI1").Replace(goodDiamond)
	for _, c := range []struct {
		name, body, old, new string
		each                 float64
		want, why            string // "severity path statement"
	}{
		{"no system", goodDiamond, `system: "own words after CIBJO", `, "", 1, "missing quality.diamond.system grade-system", "16 CFR 23.1 note"},
		{"no system, record", strings.ReplaceAll(goodDiamond, `system: "own words after CIBJO", `, ""), "report: note", "report: record", 1, "warning quality.diamond.system grade-system", "16 CFR 23.1 note, S for a record"},
		{"no such colour", goodDiamond, "colour: G", "colour: AA", 1, "finding quality.diamond.colour colour-scale", "IDC 3.1.1.2"},
		{"colour range", goodDiamond, "colour: G", "colour: F to H", 1, "", "a range is a grade"},
		{"fancy", goodDiamond, "colour: G", "colour: fancy yellow", 1, "finding quality.diamond.colour colour-scale", "plain words only"},
		{"not compared", goodDiamond, "compared_with: master stones, ", "", 1, "missing quality.diamond.compared_with colour-master", "IDC 3.1.1.3"},
		{"compared with zirconia", goodDiamond, "compared_with: master stones", "compared_with: a card", 1, "warning quality.diamond.compared_with colour-master", "IDC 3.1.1.3"},
		{"no such clarity", goodDiamond, "clarity: VS2", "clarity: VS3", 1, "finding quality.diamond.clarity clarity-scale", "IDC 2.3"},
		{"P1", goodDiamond, "clarity: VS2", "clarity: P1", 1, "", "P1 is I1"},
		{"loupe clean and a feather", goodDiamond, "clarity: VS2", "clarity: loupe clean", 1, "finding quality.diamond.clarity flawless-stone", "16 CFR 23.13(a)"},
		{"not magnified", goodDiamond, "power: 10", "power: 5", 1, "missing quality.diamond.clarity clarity-10x", "IDC 2.3.1"},
		{"mounted, ranges", mountedDiamond, "", "", 1, "", "ranges are what a setting allows"},
		{"mounted, single grades", mountedDiamond, "colour: F to H, clarity: VS1 to SI1", "colour: G, clarity: VS2", 1, "finding quality.diamond.colour grade-near-edge;warning quality.diamond.clarity grade-near-edge", "a range for mounted stones"},
		{"mounted, better than VVS2", mountedDiamond, "VS1 to SI1", "VVS1 to VS1", 1, "finding quality.diamond.clarity grade-near-edge", "not to be seen in a setting"},
		{"small", goodDiamond, "", "", 0.46, "note quality.diamond.clarity clarity-split", "CIBJO 1986: from 0.47 ct"},
		{"just large enough", goodDiamond, "", "", 0.47, "", "CIBJO 1986: from 0.47 ct"},
		{"no fluorescence", goodDiamond, "fluorescence: medium blue, ", "", 1, "missing quality.diamond.fluorescence fluorescence", "CIBJO, IDC"},
		{"faint", goodDiamond, "medium blue", "faint blue", 1, "finding quality.diamond.fluorescence fluorescence", "none, weak, medium, strong"},
		{"slight", goodDiamond, "medium blue", "slight blue", 1, "", "weak (slight)"},
		{"no colour of it", goodDiamond, "medium blue", "medium", 1, "warning quality.diamond.fluorescence fluorescence", "GB/T 16554-2017 4.2.3"},
		{"none with a colour", goodDiamond, "medium blue", "none blue", 1, "finding quality.diamond.fluorescence fluorescence", "none has no colour"},
		{"ISO 24016 in its scope", goodDiamond, "own words after CIBJO", "ISO 24016", 1.025, "", "loose, natural, over 0.25 ct"},
		{"ISO 24016 too small", goodDiamond, "own words after CIBJO", "ISO 24016:2020", 0.25, "finding quality.diamond.system iso-scope;note quality.diamond.clarity clarity-split", "clause 1: over 0.25 ct"},
		{"ISO 24016 for a treated stone", strings.ReplaceAll(goodDiamond, "own words after CIBJO", "ISO 24016"), "treatments: []}", "treatments: [laser drilled]}", 1, "finding quality.diamond.system iso-scope", "clause 1"},
		{"GB/T 16554, mounted, over a carat", strings.ReplaceAll(mountedDiamond, "own words after CIBJO", "GB/T 16554"), "", "", 1.1, "warning quality.diamond.system mounted-range", "clause 1: 0.2000 g"},
		{"GB/T 16554, mounted, a carat", strings.ReplaceAll(mountedDiamond, "own words after CIBJO", "GB/T 16554"), "", "", 1, "", "clause 1: 0.2000 g"},
		{"no polish", goodDiamond, "polish: good, ", "", 1, "missing quality.diamond report-annex", "CIBJO Diamond Book 2017, Annex B"},
		{"no polish, and why", goodDiamond, "polish: good, symmetry: good}", "symmetry: good}\n  not_graded: {polish: not judged in oil}", 1, "", "the reason is told"},
		{"table without a width", goodDiamond, "diameter: [6.48 mm, 6.52 mm], ", "", 1, "missing size.table cut-measures", "ISO 24016 8.3.3"},
		{"56 facets", goodDiamond, "culet: none", "culet: none, facets: 56", 1, "warning size.cut misleading-cut", "16 CFR 23.17"},
		{"57 facets", goodDiamond, "culet: none", "culet: none, facets: 57", 1, "", "32 and the table above, 24 below"},
		{"grades of a diamond on a ruby", goodRuby, "  clarity:", "  diamond: {colour: G}\n  clarity:", 1, "finding quality.diamond grade-system", "ours"},
		{"two decimals", goodRuby, "1.520 ct", "1.52 ct", 1, "warning weight.measured ct-two-decimals", "the third decimal is kept"},
		{"stated weight true", goodRuby, "{measured: 1.520 ct}", "{measured: 1.524 ct, stated: 1.52 ct}", 1, "", "16 CFR 23.18(c)"},
		{"stated weight false", goodRuby, "{measured: 1.520 ct}", "{measured: 1.525 ct, stated: 1.52 ct}", 1, "finding weight.stated ct-last-decimal", "16 CFR 23.18(c)"},
		{"no light", goodRuby, ", light: D65", "", 1, "missing quality.colour.light test-conditions", "17025 7.8.3.1 a"},
		{"bad notation", goodRuby, "5R 4/12", "5 red 4/12", 1, "finding quality.colour.munsell ", "ASTM D1535"},
		{"words against notation", goodRuby, "words: strong red", "words: pale green", 1, "warning quality.colour.words ", "a clash is a warning"},
		{"appearance against notation", goodRuby, "appearance: {colour: red", "appearance: {colour: blue", 1, "warning appearance.colour ", "a clash is a warning"},
		{"nothing seen, and a feather", goodRuby, "clarity: visible at 10x", "clarity: nothing seen at 10x", 1, "finding quality.clarity flawless-stone", "16 CFR 23.28(a)"},
		{"nothing seen, a feather at 40", strings.ReplaceAll(goodRuby, "power: 10", "power: 40"), "clarity: visible at 10x", "clarity: nothing seen at 10x", 1, "", "ten times does not show it"},
		{"visible, and nothing seen", goodRuby, "sees: [feather]", "sees: []", 1, "warning quality.clarity ", "ours"},
		{"more than the face", goodRuby, "window: 10 %", "window: 90 %", 1, "finding quality.cut ", "arithmetic"},
		{"no cut", goodRuby, "  cut: {window: 10 %, extinction: 15 %}\n", "", 1, "warning quality relative-quality", "USPAP SR 7-2(e)(ii)"},
		{"no cut, appraisal", strings.ReplaceAll(goodRuby, "report: note", "report: appraisal"), "  cut: {window: 10 %, extinction: 15 %}\n", "", 1, "missing quality relative-quality", "USPAP SR 7-2(e)(ii)"},
		{"amount of heat", goodRuby, "treatments: [heated]", "treatments: [{name: heated, amount: few}]", 1, "warning opinion.treatments[0] treat-degree", "our words are for fillers"},
		{"genuine glass", goodRuby, "species: corundum, variety: ruby, growth: natural, treatments: [heated]", "species: glass, growth: artificial, imitates: ruby", 1, "", "no barred word"},
		{"genuine laboratory-grown ruby", strings.ReplaceAll(goodRuby, "growth: natural", "growth: laboratory-grown"), "  clarity:", "  condition: genuine and unworn\n  clarity:", 1, "finding quality.condition no-real", "16 CFR 23.27"},
		{"bare name in a caption", strings.ReplaceAll(goodRuby, "growth: natural", "growth: laboratory-grown"), "quality:", "photos: [{file: a.jpg, caption: the ruby face up}]\nquality:", 1, "finding photos[0].caption lab-prefix", "16 CFR 23.25(b)"},
		{"star without asterism", goodRuby, "  clarity:", "  star: {rays: 6, sharpness: sharp}\n  clarity:", 1, "warning quality.star ", "ours"},
		{"doublet without layers", goodRuby, "species: corundum, variety: ruby, growth: natural, treatments: [heated]", "species: opal doublet, growth: composite", 1, "missing opinion.layers assembled", "CIBJO Gemstone Book 3.2.1"},
		{"pearls without water", goodPearls, "water: saltwater, ", "", 0, "missing opinion.water pearl-qualifier", "CIBJO Pearl Book 4.2"},
		{"water not known", goodPearls, "water: saltwater", "water: undetermined", 0, "", "not determined is an answer"},
		{"one pearl matches", goodPearls, "count: 63, sizes: [6.5 mm, 7.0 mm]", "count: 1, sizes: [6.5 mm]", 0, "warning quality.pearl.matching ", "ours"},
		{"undrilled", goodPearls, "drilled: through", "drilled: undrilled", 0, "finding quality.pearl.drilled ", "ours"},
		{"bare pearls", goodPearls, "quality:", "quality:\n  condition: pearls unworn", 0, "finding quality.condition pearl-cultured", "16 CFR 23.20(b)"},
		{"seed pearls of 7 mm", goodPearls, "quality:", "quality:\n  condition: cultured seed pearls", 0, "finding quality.condition pearl-seed;finding quality.condition pearl-cultured", "16 CFR 23.19(d)"},
		{"no cut, and why", goodRuby, "  cut: {window: 10 %, extinction: 15 %}\n", "  not_graded: {cut: rough}\n  description: a rolled pebble\n", 1, "", "the reason is told"},
		{"no cut, but words", goodRuby, "  cut: {window: 10 %, extinction: 15 %}\n", "  description: oval red stone\n", 1, "warning quality relative-quality", "a description is no reason"},
		{"no lustre", goodPearls, "lustre: high, ", "", 0, "warning quality relative-quality", "USPAP SR 7-2(e)(ii)"},
	} {
		if c.old != "" && !strings.Contains(c.body, c.old) {
			t.Fatalf("%s: the file does not hold %q", c.name, c.old)
		}
		body := strings.Replace(c.body, c.old, c.new, 1)
		var got []string
		for _, p := range g.Findings(record(t, g, body), c.each) {
			got = append(got, fmt.Sprintf("%s %s %s", p.Severity, p.Path, p.Statement))
			if p.Line == 0 || p.Message == "" {
				t.Errorf("%s: %+v has no place or no words", c.name, p)
			}
		}
		want := strings.Split(c.want, ";")
		if c.want == "" {
			want = nil
		}
		slices.Sort(got)
		slices.Sort(want)
		if !slices.Equal(got, want) {
			t.Errorf("%s: got %q, want %q: %s", c.name, got, want, c.why)
		}
	}
}

// Marks of the list of requirements: a lack is missing, a warning or nothing by
// the kind of document.
func TestMarksDecideTheSeverity(t *testing.T) {
	g := load(t)
	for kind, want := range map[string]stone.Severity{"appraisal": stone.Warning, "note": stone.Missing, "record": ""} {
		body := strings.Replace(goodDiamond, "report: note", "report: "+kind, 1)
		body = strings.Replace(body, "fluorescence: medium blue, ", "", 1)
		var got stone.Severity
		for _, p := range g.Findings(record(t, g, body), 1) {
			if p.Statement == "fluorescence" {
				got = p.Severity
			}
		}
		if got != want {
			t.Errorf("%s without fluorescence: %q, want %q (marks S, M, - for A, N, R)", kind, got, want)
		}
	}
}
