package quality

import (
	"slices"
	"testing"
)

// Clauses: 16 CFR 23.24, for diamonds 23.14, for pearls 23.23; classes by the
// CIBJO treatment annex (second hand), bleaching specific since the congress of
// 2024.
func TestDisclosures(t *testing.T) {
	g := load(t)
	for _, c := range []struct {
		opinion            string
		class              Class
		fades, care, whole bool // not permanent, special care, composite
		clause             string
	}{
		{"species: corundum, variety: ruby, growth: natural, treatments: [heated]", General, false, false, false, "16 CFR 23.24(c)"},
		{"species: beryl, variety: emerald, growth: natural, treatments: [oil]", General, true, true, false, "16 CFR 23.24(a)"},
		{"species: quartz, growth: natural, treatments: [dyed]", Specific, true, true, false, "16 CFR 23.24(b)"},
		{"species: corundum, growth: natural, treatments: [surface diffusion]", Specific, false, true, false, "16 CFR 23.24(c)"},
		{"species: diamond, growth: natural, treatments: [laser drilled]", Specific, false, false, false, "16 CFR 23.14(c)"},
		{"species: diamond, growth: natural, treatments: [fracture filled]", Specific, true, true, false, "16 CFR 23.14(a)"},
		{"species: pearl, growth: cultured, treatments: [bleached]", Specific, false, true, false, "16 CFR 23.23(c)"},
		{"species: corundum, variety: ruby, growth: natural, treatments: [lead-glass filled]", Specific, true, true, true, "16 CFR 23.25(d)"},
	} {
		list := g.Disclosures(g.SubjectOf(record(t, g, "opinion: {"+c.opinion+"}")))
		if len(list) != 1 {
			t.Fatalf("%s: %d disclosures", c.opinion, len(list))
		}
		d := list[0]
		if d.Class != c.class || d.NotPermanent != c.fades || d.SpecialCare != c.care || d.Composite != c.whole || !d.Value || !slices.Contains(d.Clauses, c.clause) {
			t.Errorf("%s: %s, not permanent %v, care %v, composite %v, %v; want %s %v %v %v with %s", c.opinion, d.Class, d.NotPermanent, d.SpecialCare, d.Composite, d.Clauses, c.class, c.fades, c.care, c.whole, c.clause)
		}
	}
}

// Reactor and accelerator stones carry a note on radioactivity (10 CFR 30, NRC
// IN 90-62).
func TestRadioactivity(t *testing.T) {
	g := load(t)
	for name, want := range map[string]bool{"neutron irradiated": true, "electron irradiated": true, "irradiated": true, "heated": false} {
		d := g.Disclosures(g.SubjectOf(record(t, g, "opinion: {species: topaz, growth: natural, treatments: ["+name+"]}")))
		if d[0].Radioactivity != want {
			t.Errorf("%s: note on radioactivity %v, want %v", name, d[0].Radioactivity, want)
		}
	}
}

// Common practice, no source: what is commonly done and cannot be seen here is
// told as such; what a bench would have seen is not, once somebody looked.
func TestCustomary(t *testing.T) {
	g := load(t)
	has := func(opinion, treatment string) (listed, ask bool) {
		for _, c := range g.Customary(g.SubjectOf(record(t, g, "opinion: {"+opinion+"}"))) {
			if c.Treatment.Name == treatment {
				return true, c.Ask
			}
		}
		return false, false
	}
	for _, c := range []struct {
		opinion, treatment string
		listed, ask        bool
		why                string
	}{
		{"species: zoisite, variety: tanzanite, growth: natural, treatments: []", "heated", true, true, "heating of tanzanite is nowhere seen"},
		{"species: zoisite, variety: tanzanite, growth: natural, treatments: [heated]", "heated", false, false, "it is named"},
		{"species: zoisite, variety: tanzanite, growth: natural, treatments: [low heat]", "heated", false, false, "a kind of it is named"},
		{"species: beryl, variety: emerald, growth: natural", "oil", true, true, "nobody looked"},
		{"species: beryl, variety: emerald, growth: natural, treatments: []", "oil", false, false, "a bench sees oil, and somebody looked"},
		{"species: pearl, growth: cultured, method: bead nucleus", "bleached", true, true, "cultured pearls are bleached as a rule"},
		{"species: pearl, growth: natural", "bleached", true, false, "natural ones sometimes"},
	} {
		listed, ask := has(c.opinion, c.treatment)
		if listed != c.listed || ask != c.ask {
			t.Errorf("%s: %s listed %v, to be said %v; want %v, %v: %s", c.opinion, c.treatment, listed, ask, c.listed, c.ask, c.why)
		}
	}
}
