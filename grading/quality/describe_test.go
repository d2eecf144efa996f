package quality

import (
	"math"
	"slices"
	"testing"
)

func TestColourOf(t *testing.T) {
	g := load(t)
	s := record(t, g, "quality: {colour: {munsell: \"5R 4/12\", light: D65, change: {incandescent: red, daylight: green}}}")
	c := g.ColourOf(s)
	if c.Name() != "strong red" || c.Notation == nil || c.Light != "D65" {
		t.Errorf("5R 4/12 is %q (%+v), want strong red as the contract's example has it", c.Name(), c)
	}
	if want := []ByLight{{"daylight", "green"}, {"incandescent", "red"}}; !slices.Equal(c.Changes, want) {
		t.Errorf("changes %v, want %v in the order of the lights' names", c.Changes, want)
	}
	if c := g.ColourOf(record(t, g, "quality: {colour: {munsell: nonsense, words: blue}}")); c.Notation != nil || c.Name() != "blue" {
		t.Errorf("a notation that cannot be read: %+v", c)
	}
}

// Words tied to ten times and to the unaided eye.
func TestClarityOf(t *testing.T) {
	for words, want := range map[string]Visibility{
		"nothing seen at 10x": {}, "visible at 10x": {AtTenTimes: true}, "visible to the eye": {AtTenTimes: true, ByEye: true}, "prominent": {true, true, true},
	} {
		if got, ok := ClarityOf(words); !ok || got != want {
			t.Errorf("%q: %+v, %v; want %+v", words, got, ok, want)
		}
	}
	if _, ok := ClarityOf("eye clean"); ok {
		t.Error("eye clean is no word for clarity (CIBJO rules 1986)")
	}
}

func TestFaceInTenths(t *testing.T) {
	g := load(t)
	got := FaceOf(record(t, g, "quality: {cut: {window: 14 %, extinction: 15 %}}").Quality.Cut)
	if want := (Face{1, 2, true, true}); got != want {
		t.Errorf("14 %% and 15 %%: %+v, want %+v", got, want)
	}
	if got := FaceOf(nil); got.HasWindow || got.HasExtinction {
		t.Errorf("no cut: %+v", got)
	}
}

// By hand: 3.95 / 6.50 = 60.77 %, 8.00 / 6.20 = 129.03 %, 3.75 / 6.20 = 60.48 %.
func TestProportions(t *testing.T) {
	g := load(t)
	for _, c := range []struct {
		size, name string
		want       float64
		worked     bool
	}{
		{"{diameter: [6.48 mm, 6.52 mm], depth: 3.95 mm, table: 57 %}", "total depth", 60.769, true},
		{"{diameter: [6.48 mm, 6.52 mm], depth: 3.95 mm, table: 57 %}", "table", 57, false},
		{"{length: 8.00 mm, width: 6.20 mm, depth: 3.75 mm}", "length to width", 129.032, true},
		{"{length: 8.00 mm, width: 6.20 mm, depth: 3.75 mm}", "total depth", 60.484, true},
		{"{length: 8.00 mm, width: 6.20 mm, depth: 3.75 mm, total_depth: 61 %}", "total depth", 61, false},
	} {
		var got *Proportion
		for _, p := range Proportions(record(t, g, "size: "+c.size).Size) {
			if p.Name == c.name {
				got = &p
			}
		}
		if got == nil || math.Abs(got.Percent-c.want) > 0.001 || got.Worked != c.worked {
			t.Errorf("%s: %s is %+v, want %g, worked out %v", c.size, c.name, got, c.want, c.worked)
		}
	}
}

func TestPearlsOf(t *testing.T) {
	g := load(t)
	p := g.PearlsOf(record(t, g, goodPearls))
	if p == nil || p.Name.String() != "saltwater cultured pearls (with bead nucleus)" || p.Count != 63 || p.Least != 6.5 || p.Greatest != 7 || p.Nacre != "thick" || p.NacreBy != "drill hole" || p.Seed {
		t.Errorf("%+v", p)
	}
	// 16 CFR 23.19(d), 23.21(b): about 2 mm or less, and natural.
	for body, want := range map[string]bool{
		"opinion: {species: pearl, growth: natural, water: saltwater}\nquality: {pearl: {sizes: [1.5 mm, 2.0 mm]}}":  true,
		"opinion: {species: pearl, growth: natural, water: saltwater}\nquality: {pearl: {sizes: [1.5 mm, 2.1 mm]}}":  false,
		"opinion: {species: pearl, growth: cultured, water: saltwater}\nquality: {pearl: {sizes: [1.5 mm, 2.0 mm]}}": false,
		"opinion: {species: pearl, growth: natural, water: saltwater}":                                               false,
	} {
		if got := g.PearlsOf(record(t, g, body)).Seed; got != want {
			t.Errorf("%s: seed pearls %v, want %v", body, got, want)
		}
	}
	if g.PearlsOf(record(t, g, goodRuby)) != nil {
		t.Error("a ruby is described as pearls")
	}
}

// The species list of the requirement restricted-material: coral, ivory,
// tortoiseshell.
func TestRestrictions(t *testing.T) {
	g := load(t)
	for opinion, want := range map[string]int{
		"{species: black coral, growth: natural}": 1, "{species: elephant ivory, growth: natural}": 1, "{species: tortoiseshell, growth: natural}": 1, "{species: ruby, growth: natural}": 0,
		"{growth: composite, layers: [{part: top, material: precious coral}, {part: back, material: glass}]}": 1,
	} {
		if got := g.Restrictions(g.SubjectOf(record(t, g, "opinion: "+opinion))); len(got) != want {
			t.Errorf("%s: %v, want %d", opinion, got, want)
		}
	}
}

// Reasons name the key that stands against the standard.
func TestOutsideISO24016(t *testing.T) {
	g := load(t)
	for body, want := range map[string]string{
		"opinion: {species: diamond, growth: natural, treatments: []}":                                  "",
		"opinion: {species: diamond, growth: natural}":                                                  "opinion.treatments",
		"opinion: {species: diamond, growth: undetermined, treatments: []}":                             "opinion.growth",
		"opinion: {species: corundum, growth: natural, treatments: []}":                                 "opinion.species",
		"opinion: {species: diamond, growth: natural, treatments: []}\nsize: {count: 2}":                "size.count",
		"opinion: {species: diamond, growth: natural, treatments: []}\nsize: {cut: rough}":              "size.cut",
		"opinion: {species: diamond, growth: natural, treatments: [laser drilled]}":                     "opinion.treatments",
		"opinion: {species: diamond, growth: natural, treatments: [], treatments_stated: [irradiated]}": "opinion.treatments_stated",
	} {
		got := ""
		for _, r := range g.OutsideISO24016(record(t, g, body), 1) {
			got += r.Path
		}
		if got != want {
			t.Errorf("%s: against it %q, want %q", body, got, want)
		}
	}
	if len(g.OutsideISO24016(record(t, g, "opinion: {species: diamond, growth: natural, treatments: []}"), 0)) != 1 {
		t.Error("a mass that is not known is no mass over 0.25 ct")
	}
}
