package quality

import (
	"slices"
	"strings"
	"testing"
)

// Materials that must never meet ultrasonic cleaning or steam: trade cleaning
// charts and common practice, as the list of requirements has them
// (ultra-never), and those that two charts differ on for steam (ultra-differ).
func TestNeverUltrasonicOrSteam(t *testing.T) {
	g := load(t)
	for _, c := range []struct{ opinion, both string }{
		{"species: beryl, variety: emerald, growth: natural", ""}, {"species: opal, growth: natural", ""}, {"species: pearl, growth: cultured", ""},
		{"species: precious coral, growth: natural", ""}, {"species: turquoise, growth: natural", ""}, {"species: zoisite, variety: tanzanite, growth: natural", ""},
		{"species: malachite, growth: natural", ""}, {"species: amber, growth: natural", ""},
		{"species: olivine, variety: peridot, growth: natural", ""}, {"species: iolite, growth: natural", ""}, {"species: spodumene, growth: natural", ""},
		{"species: orthoclase, growth: natural", ""}, {"species: labradorite, growth: natural", ""}, {"species: fluorite, growth: natural", ""},
		{"species: apatite, growth: natural", ""}, {"species: andalusite, growth: natural", ""}, {"species: titanite, growth: natural", ""},
		{"species: benitoite, growth: natural", ""}, {"species: rhodochrosite, growth: natural", ""}, {"species: lapis lazuli, growth: natural", ""},
		{"species: jet, growth: natural", ""}, {"species: ivory, growth: natural", ""}, {"species: tortoiseshell, growth: natural", ""}, {"species: shell, growth: natural", ""},
		{"growth: composite, layers: [{part: crown, material: diamond}, {part: pavilion, material: diamond}]", ""},
		{"species: diamond, growth: natural, treatments: [fracture filled]", ""}, {"species: corundum, variety: ruby, growth: natural, treatments: [lead-glass filled]", ""},
		{"species: spinel, growth: natural, treatments: [oil]", ""}, {"species: quartz, growth: natural, treatments: [dyed]", ""}, {"species: diamond, growth: natural, treatments: [coated]", ""},
		{"species: topaz, growth: natural", "steam"}, {"species: jadeite, growth: natural", "steam"}, {"species: garnet, growth: natural", "steam"},
		{"species: quartz, growth: natural", "steam"}, {"species: zircon, growth: natural", "steam"},
	} {
		a := g.CareOf(g.SubjectOf(record(t, g, "opinion: {"+c.opinion+"}")), false)
		if a.Words[Steam] != No {
			t.Errorf("%s: steam %q", c.opinion, a.Words[Steam])
		}
		if c.both == "" && a.Words[Ultrasonic] != No {
			t.Errorf("%s: ultrasonic %q", c.opinion, a.Words[Ultrasonic])
		}
	}
}

func TestCareTakesTheStricter(t *testing.T) {
	g := load(t)
	for _, c := range []struct {
		opinion  string
		fissures bool
		danger   Danger
		want     Word
		because  string
		why      string
	}{
		{"species: corundum, variety: ruby, growth: natural, treatments: []", false, Ultrasonic, Yes, "corundum", "a sound ruby stands it"},
		{"species: corundum, variety: ruby, growth: natural, treatments: []", true, Ultrasonic, No, "fissures", "open fissures: ultra-never"},
		{"species: diamond, growth: natural, treatments: [laser drilled]", false, Ultrasonic, Careful, "laser drilled", "channels reach the surface"},
		{"species: diamond, growth: natural, treatments: []", false, Torch, Careful, "diamond", "a torch is sudden heat"},
		{"species: moissanite, growth: artificial", false, Torch, Careful, "moissanite", "heat does no harm, a torch still asks for care"},
		{"species: diamond, growth: natural, treatments: [coated]", false, Torch, No, "coated", "filled, oiled, coated or glued stones must not meet a torch"},
		{"species: beryl, variety: emerald, growth: natural", false, Solvents, No, "emerald", "they draw the oil out"},
		{"species: spinel, growth: natural, treatments: [{name: oil, amount: few}]", false, Solvents, No, "oil", "they draw the oil out"},
		{"species: quartz, variety: amethyst, growth: natural", false, Light, Careful, "quartz", "the colour fades"},
		{"species: quartz, growth: natural, treatments: [dyed]", false, Light, No, "dyed", "the gem table keeps dyed stones from strong light"},
		{"growth: composite, layers: [{part: crown, material: diamond}, {part: join, material: glue}, {part: pavilion, material: glass}]", false, Torch, No, "the join", "glue gives way"},
	} {
		a := g.CareOf(g.SubjectOf(record(t, g, "opinion: {"+c.opinion+"}")), c.fissures)
		if a.Words[c.danger] != c.want || !slices.Contains(a.Because[c.danger], c.because) {
			t.Errorf("%s, fissures %v: %s is %q because %v, want %q because %s: %s", c.opinion, c.fissures, c.danger, a.Words[c.danger], a.Because[c.danger], c.want, c.because, c.why)
		}
	}
}

// A material without a row gets the careful answer.
func TestUnknownMaterialIsKeptFromAll(t *testing.T) {
	a := load(t).CareOf(Subject{Written: "unobtainium"}, false)
	if !a.Unknown || len(a.With(No)) != len(Dangers()) {
		t.Errorf("unknown material: %v", a.Words)
	}
}

// Whatever is added to what is known of a stone, no word becomes milder.
func TestMoreKnowledgeNeverMakesMilder(t *testing.T) {
	g := load(t)
	order := []Word{Yes, Careful, No}
	for _, m := range g.gems.Materials() {
		s := Subject{Species: g.gems.SpeciesOf(m), Variety: m, Growth: m.Growth, Treatment: NotExamined}
		before := g.CareOf(s, false)
		for _, tr := range g.gems.Treatments() {
			s.Treatments = []Treated{{Treatment: tr}}
			after := g.CareOf(s, true)
			for _, d := range Dangers() {
				if slices.Index(order, after.Words[d]) < slices.Index(order, before.Words[d]) && !customary(g, s, before, d) {
					t.Errorf("%s with %s and fissures: %s went from %s to %s", m.Name, tr.Name, d, before.Words[d], after.Words[d])
				}
			}
		}
	}
}

// customary reports whether the word came from a treatment that is presumed
// until it, or a kind of it, is named.
func customary(g *Grader, s Subject, before Advice, d Danger) bool {
	return slices.ContainsFunc(before.Because[d], func(because string) bool {
		tr, err := g.gems.Treatment(strings.TrimPrefix(because, "customary: "))
		return err == nil && s.names(tr, g.gems)
	})
}

// What the gem table says of a treatment in words, this package says by danger:
// "no ultrasonic" there is no here.
func TestTreatmentWordsAgreeWithTheGemTable(t *testing.T) {
	g := load(t)
	for _, tr := range g.gems.Treatments() {
		care := strings.ToLower(tr.Care)
		row := g.treatmentRowOf(tr)
		if row.name == "" {
			t.Errorf("%s has no row in treatments.csv, and no wider word has", tr.Name)
			continue
		}
		for phrase, d := range map[string]Danger{"no ultrasonic": Ultrasonic, "no steam": Steam, "steam or": Steam, "no heat": Heat, "torch": Torch, "solvents": Solvents, "strong light": Light} {
			if strings.Contains(care, phrase) && row.care[d] != No && row.care[d] != Careful {
				t.Errorf("%s: the gem table says %q, treatments.csv says %q of %s", tr.Name, tr.Care, row.care[d], d)
			}
		}
		if strings.Contains(care, "no ultrasonic") && row.care[Ultrasonic] != No {
			t.Errorf("%s: ultrasonic %q", tr.Name, row.care[Ultrasonic])
		}
	}
}

func TestFissured(t *testing.T) {
	g := load(t)
	for body, want := range map[string]bool{
		"tests: [{test: magnification, power: 10, sees: [feather]}]":                       true,
		"tests: [{test: magnification, power: 10, sees: [flash effect]}]":                  true,
		"tests: [{test: magnification, power: 10, sees: [needles]}]":                       false,
		"tests: [{test: magnification, power: 10, set_aside: wrong stone, sees: [crack]}]": false,
		"tests: []": false,
	} {
		if got := g.Fissured(record(t, g, body)); got != want {
			t.Errorf("%s: %v, want %v", body, got, want)
		}
	}
}
