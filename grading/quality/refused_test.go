package quality

import (
	"strings"
	"testing"
	"time"
)

// Clauses as in data/SOURCES.md. refuse lists the words that must be refused;
// a word after a star is advice; an empty list accepts the text.
func TestRefused(t *testing.T) {
	g := load(t)
	const (
		ruby         = "species: corundum, variety: ruby, growth: natural"
		openRuby     = "species: corundum, variety: ruby, growth: undetermined"
		grownRuby    = "species: corundum, variety: ruby, growth: laboratory-grown, method: flux"
		diamond      = "species: diamond, growth: natural"
		openDiamond  = "species: diamond, growth: undetermined"
		grownDiamond = "species: diamond, growth: laboratory-grown, method: vapour"
		howlite      = "species: howlite, growth: natural, imitates: turquoise"
		gulfPearl    = "species: pearl, growth: natural, water: saltwater"
		pearls       = "species: pearl, growth: cultured, method: bead nucleus, water: saltwater"
		emerald      = "species: beryl, variety: emerald, growth: natural"
		zirconia     = "species: cubic zirconia, growth: artificial, imitates: diamond"
	)
	for _, c := range []struct{ opinion, text, refuse, why string }{
		{ruby, "A fine ruby, real and genuine.", "", "23.27: these words are for the natural stone"},
		{openRuby, "a genuine stone", "genuine", "the growth is open: not shown natural"},
		{grownRuby, "a laboratory-grown ruby of even colour", "", "23.25(b)"},
		{grownRuby, "a laboratory-grown, oval ruby", "ruby", "23.25(b): the prefix stands directly before the name"},
		{grownRuby, "a synthetic ruby", "", "ISO 18323 accepts the word"},
		{grownRuby, "two rubies", "rubies", "several are named as one is"},
		{grownRuby, "a cultured gem", "*cultured gem", "23.25(b) note 2; gem follows the rule of the name"},
		{grownRuby, "natural", "natural", "23.27"},
		{grownRuby, "by natural daylight", "", "the light is natural"},
		{openRuby, "ruby red", "", "a colour"},
		{diamond, "a diamond", "*diamond", "never bare, but no falsehood: advice"},
		{diamond, "a natural diamond in an emerald-cut outline", "", "a cut, not an emerald"},
		{openDiamond, "a diamond", "diamond", "ISO 18323 2.2: bare diamond means natural"},
		{openDiamond, "a natural or laboratory-grown diamond", "", "it says both"},
		{openDiamond, "passed the diamond tester", "", "an instrument"},
		{grownDiamond, "lab-grown diamond", "lab grown;diamond", "ISO 18323: no abbreviations"},
		{diamond, "blue-white natural diamond", "*blue white", "23.15"},
		{diamond, "a pure natural diamond, eye-clean", "pure;eye clean", "CIBJO rules 1986"},
		{diamond, "the natural diamond is flawless", "flawless", "23.13(a): nobody magnified"},
		{diamond, "perfect cleavage in four directions", "", "a term of mineralogy"},
		{howlite, "turquoise bead", "turquoise", "23.25(b): imitation before what it poses as"},
		{howlite, "imitation turquoise of natural howlite", "", "howlite is natural"},
		{howlite, "faux turquoise", "faux;turquoise", "23.25(b) note 1"},
		{zirconia, "simulated diamond", "", "23.25(b) accepts simulated"},
		{zirconia, "a precious gem", "gem;precious", "23.27"},
		{pearls, "a strand of pearls", "pearls", "23.20(b)"},
		{pearls, "a strand of cultured pearls with a mother-of-pearl clasp", "", "mother-of-pearl is another thing"},
		{pearls, "oriental cultured pearls", "", "oriental stands before cultured here, not before pearl"},
		{pearls, "oriental pearls", "oriental pearls;pearls", "23.21(c)"},
		{gulfPearl, "a natural oriental pearl", "*pearl", "23.21(c)-(d): natural salt-water; natural directly before pearl is advised"},
		{emerald, "an evening emerald", "evening emerald", "23.26: a peridot"},
		{ruby, "resembles a green amethyst", "green amethyst", "23.26(b)(2)"},
		{ruby, "an unheated stone", "*unheated", "none seen is not none"},
		{ruby, "25 points", "25 points", "23.18(b)"},
		{ruby, "25 points (0.25 ct)", "", "23.18(b): decimal carats stand beside it"},
		{ruby, "1/2 carat", "1/2 ct", "23.18(d)"},
		{ruby, "1/2 ct (0.45 to 0.54 ct)", "", "23.18(d): the range stands beside it"},
		{ruby, "½ ct ±0.04", "", "23.18(d): the tolerance stands beside it"},
		{ruby, "half a carat", "half ct", "23.18(d)"},
		{ruby, "a 2 karat ruby", "2 karat", "23.18(b) note: carat"},
		{ruby, "an 18 K gold ring", "", "the karat of gold"},
		{ruby, "an 18 ct gold ring", "*18 carat gold", "a carat is a mass"},
		{ruby, "", "", "nothing is said"},
	} {
		s := record(t, g, "opinion: {"+c.opinion+"}")
		got := map[string]bool{}
		for _, r := range g.Refused(c.text, g.ContextOf(s)) {
			word := r.Word
			if r.Advice {
				word = "*" + word
			}
			got[word] = true
			if r.Proper == "" || r.Clause == "" {
				t.Errorf("%q: %+v says neither what is proper nor why", c.text, r)
			}
		}
		want := strings.Split(c.refuse, ";")
		if c.refuse == "" {
			want = nil
		}
		if c.refuse == "*cultured gem" {
			want = []string{"*cultured", "gem"}
		}
		ok := len(got) == len(want)
		for _, w := range want {
			ok = ok && got[w]
		}
		if !ok {
			t.Errorf("%q of {%s}: refused %v, want %v: %s", c.text, c.opinion, sortedBool(got), want, c.why)
		}
	}
}

func sortedBool(m map[string]bool) []string {
	n := map[string]int{}
	for k := range m {
		n[k] = 1
	}
	return sortedKeys(n)
}

// Cleanness decides on flawless (16 CFR 23.13(a), 23.28(a)).
func TestFlawlessNeedsAnExamination(t *testing.T) {
	g := load(t)
	for _, c := range []struct {
		tests, quality, text string
		want                 bool
		why                  string
	}{
		{"[{test: magnification, power: 10, corrected: true, sees: []}]", "{}", "flawless", false, "looked at ten times, nothing seen"},
		{"[{test: magnification, power: 10, corrected: true, sees: [feather]}]", "{}", "flawless", true, "a feather was seen"},
		{"[{test: magnification, power: 5, corrected: true, sees: []}]", "{}", "flawless", true, "five times is too little"},
		{"[{test: magnification, power: 10, sees: []}]", "{}", "flawless", true, "the magnifier is not corrected"},
		{"[{test: magnification, power: 10, corrected: true, sees: []}]", "{diamond: {clarity: IF}}", "flawless", true, "IF has marks at its surface"},
		{"[{test: magnification, power: 10, corrected: true, sees: []}]", "{diamond: {clarity: IF}}", "internally flawless", false, "IF is clean inside"},
		{"[{test: magnification, power: 10, corrected: true, sees: []}]", "{diamond: {clarity: VS1}}", "internally flawless", true, "VS1 is not"},
		{"[]", "{}", "internally flawless", true, "nobody looked"},
	} {
		s := record(t, g, "opinion: {species: diamond, growth: natural}\ntests: "+c.tests+"\nquality: "+c.quality)
		if got := len(g.Refused(c.text, g.ContextOf(s))) > 0; got != c.want {
			t.Errorf("%q with %s %s: refused %v, want %v: %s", c.text, c.tests, c.quality, got, c.want, c.why)
		}
	}
}

// The names that this package makes pass its own scan.
func TestOwnNamesAreNotRefused(t *testing.T) {
	g := load(t)
	for _, m := range g.gems.Materials() {
		for _, growth := range []string{"natural", "laboratory-grown", "artificial", "cultured", "undetermined"} {
			s := Subject{Species: g.gems.SpeciesOf(m), Growth: growthOf(growth, m), Water: "saltwater"}
			if m != s.Species {
				s.Variety = m
			}
			text := g.Name(s).String()
			for _, r := range g.Refused(text, Context{Subject: s}) {
				if !r.Advice {
					t.Errorf("%s, %s: the name %q is refused for %q: %s", m.Name, growth, text, r.Word, r.Clause)
				}
			}
		}
	}
}

// A page of text is scanned quickly, and whatever it holds.
func TestLongTexts(t *testing.T) {
	g := load(t)
	c := g.ContextOf(record(t, g, "opinion: {species: diamond, growth: laboratory-grown}"))
	begin := time.Now()
	g.Refused(strings.Repeat("an emerald cut ruby of blue topaz jade \x00 ½ ", 500), c)
	if took := time.Since(begin); took > 5*time.Second {
		t.Errorf("twenty thousand letters took %s", took)
	}
}

func FuzzRefused(f *testing.F) {
	for _, seed := range []string{"a lab-grown diamond of 25 points", "1/2 ct", "½ carat ±0.1", "18 k gold", "\xff-'"} {
		f.Add(seed)
	}
	g := load(f)
	c := Context{Subject: Subject{Species: g.find("pearl"), Growth: "cultured"}}
	f.Fuzz(func(t *testing.T, text string) {
		for _, r := range g.Refused(text, c) {
			if r.Word == "" || r.Proper == "" || r.Clause == "" {
				t.Errorf("%q: %+v", text, r)
			}
		}
	})
}
