package quality

import (
	"regexp"
	"strings"
	"testing"

	"stonewrit/grading/phrase/phrasetest"
)

var letters = regexp.MustCompile(`[A-Za-z]+`)

// Every part of a name can be said in another language, its order too; what
// the examiner wrote himself stands as it is.
func TestNamesInAnotherLanguage(t *testing.T) {
	g := load(t)
	for _, c := range []struct{ body, left string }{
		{"opinion: {species: diamond, growth: natural, treatments: [laser drilled]}\nsize: {facets: 16}", ""},
		{"opinion: {species: corundum, variety: ruby, growth: laboratory-grown, method: flame fusion}", ""},
		{"opinion: {species: corundum, variety: ruby, growth: undetermined, treatments_stated: [heated]}", ""},
		{"opinion: {species: beryl, variety: emerald, growth: natural, treatments: [{name: oil, amount: few}]}", ""},
		{"opinion: {species: beryl, variety: emerald, growth: natural, treatments: [{name: oil, where: under the table}]}", "under the table"},
		{"opinion: {growth: composite, imitates: emerald, layers: [{part: crown, material: rock crystal}, {part: join, material: glue}, {part: pavilion, material: flame-fusion corundum}]}", ""},
		{"opinion: {species: corundum, variety: ruby, growth: laboratory-grown, treatments: [lead-glass filled]}", ""},
		{"opinion: {species: turquoise, growth: natural, treatments: [reconstructed]}", ""},
		{"opinion: {species: freshwater pearl, growth: cultured}\nquality: {pearl: {count: 40}}", ""},
		{"opinion: {species: pearl, growth: undetermined}", ""},
		{"opinion: {species: glass imitation of pearl, growth: artificial}", ""},
	} {
		name := g.Name(g.SubjectOf(record(t, g, c.body)))
		if left := strings.Join(letters.FindAllString(name.Line().In(phrasetest.Masked{}), -1), " "); left != c.left {
			t.Errorf("of %q stays %q, want %q", name, left, c.left)
		}
	}
}

func TestMetalsInAnotherLanguage(t *testing.T) {
	g := load(t)
	for _, m := range []Metal{
		{Name: "gold"}, {Name: "gold", Colour: "rose", Karat: 18}, {Name: "gold", PerMille: 585}, {Name: "gold", Colour: "white", PerMille: 750, Plated: "rhodium"},
		{Name: "silver", PerMille: 925, Plated: "gold"}, {Name: "silver", PerMille: 800}, {Name: "platinum", PerMille: 950}, {Name: "palladium", PerMille: 500}, {Name: "steel"},
	} {
		if left := letters.FindString(g.MetalLine(m).In(phrasetest.Masked{})); left != "" {
			t.Errorf("of %q stays %q", g.MetalName(m), left)
		}
	}
}

// The sentence of what cannot be read is a form like any other.
func TestUnreadInAnotherLanguage(t *testing.T) {
	g := load(t)
	for _, read := range []func(string) error{
		func(s string) error { _, err := g.ParseDiamondColour(s); return err },
		func(s string) error { _, err := g.ParseFluorescence(s); return err },
		func(s string) error { _, err := ParseMunsell(s); return err },
	} {
		err := read("zx")
		if err == nil {
			t.Fatal("zx is read")
		}
		if left := letters.FindAllString(says(err).In(phrasetest.Masked{}), -1); len(left) != 1 || left[0] != "zx" {
			t.Errorf("of %q stays %q, want what was written alone", err, left)
		}
	}
}

// What is to be written instead follows the language; the words refused, which
// the examiner wrote, do not.
func TestRefusalsInAnotherLanguage(t *testing.T) {
	g := load(t)
	ruby := Context{Subject: g.SubjectOf(record(t, g, "opinion: {species: corundum, variety: ruby, growth: laboratory-grown}"))}
	for _, text := range []string{"a ruby", "25 points of it", "1/2 carat", "18 karat ruby", "14 carat gold", "yellow emerald"} {
		found := g.Refused(text, ruby)
		if len(found) == 0 {
			t.Errorf("%q is not refused", text)
		}
		for _, r := range found {
			if left := letters.FindString(r.Proper.In(phrasetest.Masked{})); left != "" {
				t.Errorf("%q: of %q stays %q", text, r.Proper, left)
			}
		}
	}
}
