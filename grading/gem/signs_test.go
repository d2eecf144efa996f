package gem

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// signsBy returns the signs of a term in a material, each as "force about".
func signsBy(t *testing.T, table *Table, term, material, claim string) []string {
	t.Helper()
	f, err := table.Feature(term)
	if err != nil {
		t.Fatal(err)
	}
	m, err := table.Find(material)
	if err != nil {
		t.Fatal(err)
	}
	var said []string
	for _, s := range table.SignsFor(f, m) {
		if s.Claim == claim {
			said = append(said, fmt.Sprintf("%s %s", s.Force, s.About))
		}
	}
	return said
}

// What features are agreed to show in the trade. Common practice, no source;
// the reason is the one that a gemmologist would give.
func TestSignsByMaterial(t *testing.T) {
	table := mustLoad(t)
	tests := []struct{ term, material, claim, want, why string }{
		{"curved striae", "corundum", "growth", "proves laboratory-grown", "natural crystals grow by flat faces"},
		{"curved striae", "corundum", "growth", "suggests laboratory-grown: flame fusion", "a few come from pulled crystals"},
		{"curved striae", "ruby", "growth", "excludes natural", "a variety has the signs of its species"},
		{"curved striae", "spinel", "growth", "excludes natural", "as in corundum"},
		{"curved colour bands", "blue sapphire", "growth", "excludes natural", "as curved striae"},
		{"gas bubbles in the body", "corundum", "growth", "excludes natural", "natural corundum did not grow from a melt that could hold gas"},
		{"gas bubbles in the body", "moldavite", "growth", "allows artificial", "bubbles belong in natural glass"},
		{"gas bubbles in the body", "obsidian", "growth", "allows artificial", "bubbles belong in natural glass"},
		{"gas bubbles in the body", "amber", "growth", "allows artificial", "bubbles belong in amber"},
		{"gas bubbles in the body", "topaz", "species", "suggests glass", "a free bubble speaks for glass, though other melts hold them too"},
		{"bubbles in a filler", "ruby", "treatment", "proves fracture filled", "a bubble in a filler speaks of the filler"},
		{"bubbles in a filler", "ruby", "treatment", "suggests glass filled", "oil and resin can hold bubbles"},
		{"flash and bubbles in one fracture", "ruby", "treatment", "proves lead-glass filled", "a gas bubble and a flash together need glass of high index"},
		{"glassy residue in a healed fracture", "ruby", "treatment", "suggests healed with flux", "flux-grown ruby holds the like"},
		{"bubbles in a filler", "emerald", "treatment", "proves fracture filled", "a bubble in a filler speaks of the filler"},
		{"fingerprint", "sapphire", "growth", "suggests natural", "flux-grown and chilled stones hold the like"},
		{"two-phase inclusion", "emerald", "growth", "suggests natural", "hydrothermal emerald holds the like"},
		{"three-phase inclusion", "emerald", "growth", "suggests natural", "the like is described of grown emerald"},
		{"needles", "ruby", "growth", "suggests natural", "grown stones hold needles"},
		{"wispy veils", "ruby", "growth", "suggests laboratory-grown: flux", "natural veils can look the same"},
		{"chevron growth", "emerald", "growth", "proves laboratory-grown: hydrothermal", "a seed cut across the faces on which beryl grows"},
		{"chevron growth", "amethyst", "growth", "allows laboratory-grown: hydrothermal", "natural amethyst is banded in chevrons"},
		{"nail-head spicules", "emerald", "growth", "suggests laboratory-grown", "rare natural emeralds show the like"},
		{"metallic flux", "diamond", "growth", "suggests laboratory-grown: high pressure", "sulphides look alike"},
		{"hourglass graining", "diamond", "growth", "suggests laboratory-grown: high pressure", "rare natural diamonds show sectors"},
		{"triangular platelets", "emerald", "growth", "excludes natural", "platinum comes from a crucible"},
		{"triangular platelets", "ruby", "growth", "suggests laboratory-grown: flux", "plates of haematite look alike in corundum"},
		{"platinum platelets", "ruby", "growth", "proves laboratory-grown", "platinum comes from a crucible, whatever the crystal"},
		{"platinum platelets", "ruby", "growth", "excludes natural", "platinum comes from a crucible"},
		{"platinum platelets", "ruby", "growth", "suggests laboratory-grown: flux", "iridium in pulled crystals looks the same"},
		{"fused silica wisps", "crown or lead glass", "species", "excludes crown or lead glass", "made glass is melted until its sand is gone"},
		{"fused silica wisps", "aventurine glass", "species", "excludes crown or lead glass", "a kind of it"},
		{"wispy veils", "emerald", "growth", "suggests laboratory-grown: flux", "natural veils can look the same"},
		{"horsetail", "demantoid", "growth", "proves natural", "chrysotile would not outlast a melt"},
		{"coloured mineral crystal", "diamond", "growth", "proves natural", "grown diamond holds metal, carbon or nothing"},
		{"lizard-skin cells", "opal", "growth", "suggests laboratory-grown", "natural opals that show them are published"},
		{"bead nucleus seen in the drill hole", "pearl", "growth", "proves cultured: bead nucleus", "people put the bead in"},
		{"bead nucleus seen in the drill hole", "pearl", "growth", "excludes natural", "a natural pearl has no bead"},
		{"join plane", "sapphire", "growth", "proves composite", "a plane with glue joins two pieces"},
		{"intact silk", "blue sapphire", "treatment", "excludes high heat", "rutile needles dissolve in strong heat"},
		{"intact silk", "ruby", "growth", "suggests natural", "grown star stones hold needles"},
		{"partly dissolved silk", "ruby", "treatment", "proves high heat", "rubies that hold silk come from rocks that stayed cooler"},
		{"partly dissolved silk", "blue sapphire", "treatment", "suggests high heat", "hot basalt does the same to sapphire"},
		{"tension halo", "ruby", "treatment", "suggests heated", "basalt does the same"},
		{"flash effect", "diamond", "treatment", "proves fracture filled", "the dispersion of the filler is not that of the stone"},
		{"laser drill hole", "diamond", "treatment", "proves laser drilled", "no natural channel is so straight"},
		{"dye in fractures", "quartz", "treatment", "proves dyed", "colour in the fractures alone came in with a liquid"},
		{"colour concentrated at facet junctions", "sapphire", "treatment", "proves surface diffusion", "the colour went in from the cut surface"},
		{"doubled facet edges", "diamond", "species", "excludes diamond", "diamond is singly refractive"},
		{"doubled facet edges", "diamond", "species", "suggests moissanite", "with a thermal tester this is moissanite"},
		{"doubled facet edges", "spessartine", "species", "excludes garnet", "garnet is singly refractive"},
		{"almandine lines", "ruby", "growth", "suggests composite", "garnet-topped doublet"},
		{"cape lines", "diamond", "growth", "proves natural", "nitrogen gathered over geological time, strong enough for a bench spectroscope"},
		{"415.5 nm line", "diamond", "growth", "suggests natural", "great heat and pressure has raised it weakly in a few grown diamonds"},
		{"glow at the surface alone", "sapphire", "treatment", "suggests surface diffusion", "a coating does the same"},
	}
	for _, tt := range tests {
		said := signsBy(t, table, tt.term, tt.material, tt.claim)
		if !slices.Contains(said, tt.want) {
			t.Errorf("%s in %s: says %q of %s, want %q: %s", tt.term, tt.material, said, tt.claim, tt.want, tt.why)
		}
	}
}

// What must never move a standing, in any material, because laboratory-grown
// and natural stones share it. Common practice, no source.
func TestSharedFeaturesOnlySuggest(t *testing.T) {
	table := mustLoad(t)
	for _, term := range []string{
		"fingerprint", "healed fracture", "two-phase inclusion", "three-phase inclusion", "wispy veils", "needles",
		"crystal inclusion", "negative crystal", "straight growth zoning", "lizard-skin cells", "nail-head spicules",
		"tension halo", "feather", "cloud", "liquid film", "growth tubes",
	} {
		f, err := table.Feature(term)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range table.evidence.signs[f.Term] {
			if s.Force == Proves || s.Force == Excludes {
				t.Errorf("%s in %s %s %s", term, s.Material, s.Force, s.About)
			}
		}
	}
}

func TestFillersSayNothingOfGrowth(t *testing.T) {
	table := mustLoad(t)
	for _, f := range table.Features() {
		for _, s := range table.evidence.signs[f.Term] {
			if f.Place == "filler" && s.Claim == "growth" {
				t.Errorf("%s in %s speaks of growth: what lies in a filler came after growth", f.Term, s.Material)
			}
		}
	}
}

// Diamond and pearl: what no bench test shows must not be proved by one, save
// the signs named here.
func TestNaturalIsProvedBy(t *testing.T) {
	table := mustLoad(t)
	want := map[string][]string{
		"diamond":   {"cape lines", "coloured mineral crystal"},
		"pearl":     nil, // by radiography in a laboratory only
		"corundum":  nil,
		"demantoid": {"horsetail"},
		"emerald":   {"actinolite stalks"},
		"opal":      nil,
		"quartz":    nil,
	}
	for material, allowed := range want {
		m, err := table.Find(material)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range table.Features() {
			for _, s := range table.SignsFor(f, m) {
				if s.Force == Proves && s.About == string(Natural) && !slices.Contains(allowed, f.Term) {
					t.Errorf("%s proves natural %s", f.Term, material)
				}
			}
		}
		for _, term := range allowed {
			if said := signsBy(t, table, term, material, "growth"); !slices.Contains(said, "proves natural") {
				t.Errorf("%s in %s says %q", term, material, said)
			}
		}
	}
}

// In no material may one feature prove what it also excludes, nor prove two
// growths that exclude each other.
func TestSignsDoNotClash(t *testing.T) {
	table := mustLoad(t)
	for _, m := range table.Materials() {
		for _, f := range table.Features() {
			signs := table.SignsFor(f, m)
			for i, a := range signs {
				for _, b := range signs[i+1:] {
					if a.Claim == b.Claim && table.clash(a, b) {
						t.Errorf("%s in %s: %s %s and %s %s", f.Term, m.Name, a.Force, a.About, b.Force, b.About)
					}
				}
			}
		}
	}
}

// clash reports whether two signs about the same claim cannot both be true.
func (t *Table) clash(a, b Sign) bool {
	if b.Force == Proves {
		a, b = b, a
	}
	if a.Force != Proves {
		return false
	}
	switch {
	case b.Force == Excludes:
		return t.aboutWithin(a, b)
	case b.Force == Proves && a.Claim == "growth":
		return !t.aboutWithin(a, b) && !t.aboutWithin(b, a)
	}
	return false
}

// aboutWithin reports whether what inner speaks of is a kind of what outer
// speaks of.
func (t *Table) aboutWithin(inner, outer Sign) bool {
	switch inner.Claim {
	case "growth":
		return inner.About == outer.About || strings.HasPrefix(inner.About, outer.About+": ")
	case "treatment":
		a, _ := t.evidence.treatments.find(inner.About)
		b, _ := t.evidence.treatments.find(outer.About)
		return t.TreatmentIsWithin(a, b)
	}
	return t.IsWithin(t.byName[fold(inner.About)], t.byName[fold(outer.About)])
}

// The reader of a document reads the reasons: plain sentences, no stock
// phrases of laboratory papers, no names of makers.
func TestReasonsCanBePrinted(t *testing.T) {
	stock := regexp.MustCompile(`(?i)evidence of|indications? of|see reverse|diagnostic|®|™`)
	for _, signs := range mustLoad(t).evidence.signs {
		for _, s := range signs {
			switch {
			case stock.MatchString(s.Because):
				t.Errorf("%s: stock phrase in %q", s.Feature, s.Because)
			case strings.HasSuffix(s.Because, "."):
				t.Errorf("%s: %q ends in a full stop", s.Feature, s.Because)
			case s.Because[:1] != strings.ToLower(s.Because[:1]):
				t.Errorf("%s: %q begins with a capital", s.Feature, s.Because)
			case len(s.Because) < 20:
				t.Errorf("%s: %q is no reason", s.Feature, s.Because)
			}
		}
	}
}

func TestSignsForNobody(t *testing.T) {
	table := mustLoad(t)
	f, err := table.Feature("gas bubbles")
	if err != nil {
		t.Fatal(err)
	}
	got := table.SignsFor(f, nil)
	if len(got) == 0 {
		t.Fatal("no sign that holds for every material")
	}
	for _, s := range got {
		if s.Material != anyMaterial {
			t.Errorf("%s %s holds for %s only", s.Force, s.About, s.Material)
		}
	}
}

func TestGrowthAbout(t *testing.T) {
	growth, method := Sign{About: "laboratory-grown: flame fusion"}.GrowthAbout()
	if growth != LaboratoryGrown || method != "flame fusion" {
		t.Errorf("got %q, %q", growth, method)
	}
	if growth, method = (Sign{About: "natural"}).GrowthAbout(); growth != Natural || method != "" {
		t.Errorf("got %q, %q", growth, method)
	}
}
