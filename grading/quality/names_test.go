package quality

import (
	"strings"
	"testing"

	"stonewrit/grading/stone"
)

// record reads a stone file of which only the parts under test are given.
func record(t testing.TB, g *Grader, body string) *stone.Stone {
	t.Helper()
	head := "stonewrit: 1\nstone: T-1\nexamined: 2026-10-14\nexaminer: okafor\n"
	if !strings.Contains(body, "report:") {
		head += "report: note\n"
	}
	if !strings.Contains(body, "opinion:") {
		head += "opinion: {species: corundum}\n"
	}
	s, problems := stone.Read("t.yaml", []byte(head+body), g.gems)
	if problems.Has(stone.Error) {
		t.Fatalf("%s\n%+v", body, problems)
	}
	return s
}

// Clauses as in data/SOURCES.md: 16 CFR 23 by its numbers of 2018, ISO 18323,
// CIBJO books. The wording is ours.
func TestNames(t *testing.T) {
	g := load(t)
	for _, c := range []struct{ body, want, why string }{
		{"opinion: {species: diamond, growth: natural}", "natural diamond", "never bare diamond: 23.12 and ISO 18323 2.2 taken together"},
		{"opinion: {species: diamond, growth: undetermined}", "natural or laboratory-grown diamond, growth not determined", "the growth is open, the word is not bare"},
		{"opinion: {species: diamond}", "natural or laboratory-grown diamond, growth not determined", "no growth given is no growth determined"},
		{"opinion: {species: diamond, growth: laboratory-grown, method: vapour}", "laboratory-grown diamond (vapour)", "23.25(b), ISO 18323: full prefix directly before the name"},
		{"opinion: {species: diamond, growth: natural, treatments: [laser drilled]}", "treated natural diamond, laser drilled", "23.14, ISO 18323 2.3: treated, at once apparent"},
		{"opinion: {species: diamond, growth: natural}\nsize: {facets: 16}", "natural diamond (16 facets)", "23.12(b)-(c): fewer than 17 facets are told"},
		{"opinion: {species: diamond, growth: natural}\nsize: {facets: 17}", "natural diamond", "23.12(b): 17 facets are enough"},
		{"opinion: {species: diamond, growth: natural}\nsize: {cut: rose}", "natural diamond (rose)", "23.12(c): or the shape"},
		{"opinion: {species: corundum, variety: ruby, growth: natural}", "ruby (natural corundum)", "23.25(a): the bare name is for the mined stone"},
		{"opinion: {species: ruby, growth: natural}", "ruby (natural corundum)", "a variety in place of the species"},
		{"opinion: {species: corundum, variety: ruby, growth: undetermined}", "corundum, variety ruby, growth not determined", "23.25(a): no bare ruby while the growth is open"},
		{"opinion: {species: corundum, growth: natural}", "natural corundum", "species alone"},
		{"opinion: {species: corundum, variety: ruby, growth: natural, treatments: [heated]}", "ruby (natural corundum), heated", "heating is always disclosed"},
		{"opinion: {species: beryl, variety: emerald, growth: natural, treatments: [{name: oil, amount: few}]}", "emerald (natural beryl), oil in few fissures", "our own words for amounts"},
		{"opinion: {species: corundum, variety: ruby, growth: laboratory-grown, method: flame fusion}", "laboratory-grown ruby (laboratory-grown corundum, flame fusion)", "23.25(b): the prefix stands before every name"},
		{"opinion: {species: flux-grown emerald, growth: laboratory-grown}", "laboratory-grown emerald (laboratory-grown beryl, flux)", "a row for grown material is named as what it is grown as"},
		{"opinion: {species: corundum, variety: ruby, growth: laboratory-grown}", "laboratory-grown ruby (laboratory-grown corundum, method not determined)", "what is not known is said"},
		{"opinion: {species: cubic zirconia, growth: artificial}", "cubic zirconia (artificial product)", "nature does not make it"},
		{"opinion: {species: cubic zirconia, growth: artificial, imitates: diamond}", "imitation diamond (cubic zirconia, artificial product)", "23.25(b) note 1: imitation directly before the name"},
		{"opinion: {species: spinel, growth: laboratory-grown, method: flame fusion, imitates: emerald}", "imitation emerald (laboratory-grown spinel, flame fusion)", "grown as one thing, sold as another"},
		{"opinion: {species: howlite, growth: natural, imitates: turquoise, treatments: [dyed]}", "imitation turquoise (natural howlite, dyed)", "natural howlite is no natural turquoise"},
		{"opinion: {species: glass, growth: imitation, imitates: ruby}", "imitation ruby (glass, artificial product)", "growth: imitation is read by the material's row"},
		{"opinion: {species: glass imitation of pearl, growth: artificial}", "imitation pearl (glass)", "23.20(c): imitation before pearl"},
		{"opinion: {growth: composite, layers: [{part: crown, material: almandine}, {part: pavilion, material: glass}, {part: join, material: glue}]}", "assembled doublet (crown almandine, pavilion glass, join glue)", "CIBJO Gemstone Book 3.2.1: every layer, and assembled"},
		{"opinion: {growth: composite, imitates: emerald, layers: [{part: crown, material: rock crystal}, {part: join, material: glue}, {part: pavilion, material: rock crystal}]}", "imitation emerald (assembled doublet, crown rock crystal of undetermined growth, join glue, pavilion rock crystal of undetermined growth)", "an assembled imitation"},
		{"opinion: {growth: composite, layers: [{part: top, material: diamond}, {part: middle, material: glass}, {part: back, material: flame-fusion corundum}]}", "assembled triplet (top diamond of undetermined growth, middle glass, back laboratory-grown corundum, flame fusion)", "no bare diamond among the layers"},
		{"opinion: {species: corundum, variety: ruby, growth: natural, treatments: [lead-glass filled]}", "composite ruby (held together by lead glass)", "23.25(d): neither the bare name nor treated ruby"},
		{"opinion: {species: corundum, variety: ruby, growth: natural, treatments: [lead-glass filled, heated]}", "composite ruby (held together by lead glass), heated", "other treatments are told as well"},
		{"opinion: {species: turquoise, growth: natural, treatments: [reconstructed]}", "reconstructed turquoise", "powder or pieces bound together"},
		{"opinion: {species: pearl, growth: cultured, water: saltwater, method: bead nucleus}", "saltwater cultured pearl (with bead nucleus)", "23.20(b), CIBJO Pearl Book 4.2"},
		{"opinion: {species: freshwater pearl, growth: cultured, method: without bead}\nquality: {pearl: {count: 40}}", "freshwater cultured pearls (without bead)", "a variety tells the water; several"},
		{"opinion: {species: pearl, growth: cultured}", "cultured pearl (method not determined, water not determined)", "what is not known is said"},
		{"opinion: {species: pearl, growth: natural, water: saltwater}", "saltwater natural pearl", "CIBJO Pearl Book 4.2: natural before pearl"},
		{"opinion: {species: pearl, growth: undetermined, water: saltwater}", "saltwater natural or cultured pearl, growth not determined", "23.20(a): no bare pearl"},
		{"opinion: {species: topaz, variety: pink topaz, growth: natural}", "natural pink topaz", "the variety names its species"},
		{"opinion: {species: garnet, variety: rhodolite, growth: natural}\nsize: {count: 12}", "rhodolites (natural pyrope-almandine)", "several stones"},
		{"opinion: {species: corundum, variety: ruby, growth: natural, treatments_stated: [heated]}", "ruby (natural corundum), heated, as told", "what was told is disclosed as told"},
	} {
		got := g.Name(g.SubjectOf(record(t, g, c.body)))
		if got.String() != c.want {
			t.Errorf("%s\n got %s\nwant %s: %s", c.body, got, c.want, c.why)
		}
	}
}

// Whatever the opinion, the name never holds a bare diamond, pearl or, for a
// stone that people made, the bare name of the mined one.
func TestNoNameIsBare(t *testing.T) {
	g := load(t)
	for _, m := range g.gems.Materials() {
		for _, growth := range []string{"natural", "laboratory-grown", "artificial", "undetermined", "cultured"} {
			s := Subject{Species: g.gems.SpeciesOf(m), Growth: growthOf(growth, m)}
			if m != s.Species {
				s.Variety = m
			}
			for _, told := range []string{"", "lead-glass filled", "dyed", "heated"} {
				if tr, err := g.gems.Treatment(told); err == nil {
					s.Treatments = []Treated{{Treatment: tr}}
				}
				text := g.Name(s).String()
				for _, word := range []string{"diamond", "pearl"} {
					if text == word || strings.HasPrefix(text, word+" (") || strings.HasPrefix(text, word+",") {
						t.Errorf("%s, %s, %s: the name is %q", m.Name, growth, told, text)
					}
				}
			}
		}
	}
}

func TestCompositeNotice(t *testing.T) {
	g := load(t)
	for body, want := range map[string]Notice{
		"opinion: {species: corundum, variety: ruby, growth: natural, treatments: [lead-glass filled]}": CompositeNotice,
		"opinion: {species: corundum, variety: ruby, growth: natural, treatments: [glass filled]}":      "",
		"opinion: {species: corundum, variety: ruby, growth: natural, treatments: [heated]}":            "",
	} {
		if got := g.Name(g.SubjectOf(record(t, g, body))).Notice; got != want {
			t.Errorf("%s: notice %q, want %q", body, got, want)
		}
	}
}
