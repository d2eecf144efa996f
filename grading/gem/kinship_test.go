package gem

import (
	"slices"
	"testing"
)

func find(t testing.TB, table *Table, name string) *Material {
	t.Helper()
	m, err := table.Find(name)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func namesOf(ms []*Material) []string {
	var names []string
	for _, m := range ms {
		names = append(names, m.Name)
	}
	return names
}

func TestSpeciesAndGroup(t *testing.T) {
	table := mustLoad(t)
	tests := []struct{ name, species, group string }{
		{"ruby", "corundum", ""},
		{"star ruby", "corundum", ""},
		{"flux-grown emerald", "beryl", ""},
		{"carnelian", "quartz", ""},
		{"rubellite", "tourmaline", "tourmaline"},
		{"almandine", "almandine", "garnet"},
		{"rhodolite", "pyrope-almandine", "garnet"},
		{"tsavorite", "grossular", "garnet"},
		{"garnet", "garnet", "garnet"},
		{"labradorite", "labradorite", "feldspar"},
		{"blue zircon", "zircon", ""},
		{"jadeite", "jadeite", "jade"},
	}
	for _, tt := range tests {
		m := find(t, table, tt.name)
		if got := table.SpeciesOf(m).Name; got != tt.species {
			t.Errorf("species of %s: got %s, want %s", tt.name, got, tt.species)
		}
		group := ""
		if g := table.GroupOf(m); g != nil {
			group = g.Name
		}
		if group != tt.group {
			t.Errorf("group of %s: got %q, want %q", tt.name, group, tt.group)
		}
		if !table.IsWithin(m, table.SpeciesOf(m)) || !table.IsWithin(m, m) {
			t.Errorf("%s is not within itself and its species", tt.name)
		}
	}
	if table.IsWithin(find(t, table, "corundum"), find(t, table, "ruby")) {
		t.Error("corundum is within ruby")
	}
}

func TestLeaves(t *testing.T) {
	table := mustLoad(t)
	tests := []struct {
		name    string
		has     []string
		hasNot  []string
		because string
	}{
		{"garnet", []string{"pyrope-almandine", "spessartine", "grossular", "hydrogrossular", "andradite", "grossular-andradite"}, []string{"garnet", "pyrope", "YAG"}, "a series is judged as itself, by its line"},
		{"feldspar", []string{"plagioclase", "orthoclase", "microcline", "moonstone"}, []string{"feldspar", "labradorite"}, "plagioclase has a line of its own"},
		{"quartz", []string{"quartz", "chalcedony", "tiger's-eye"}, []string{"amethyst", "hydrothermal quartz"}, "who says quartz may mean chalcedony"},
		{"zircon", []string{"high zircon", "medium zircon", "low zircon"}, []string{"zircon"}, "the species has no figures of its own"},
		{"ruby", []string{"ruby"}, nil, "a variety is judged by itself"},
		{"glass", []string{"crown or lead glass", "heavy lead-free glass", "fused silica"}, []string{"glass"}, "two curves"},
		{"tourmaline", []string{"tourmaline"}, []string{"elbaite"}, "the group has a row"},
		{"spinel", []string{"spinel", "gahnospinel", "black spinel"}, []string{"red spinel", "flame-fusion spinel"}, "only what reaches beyond the species"},
	}
	for _, tt := range tests {
		got := namesOf(table.Leaves(find(t, table, tt.name)))
		for _, name := range tt.has {
			if !slices.Contains(got, name) {
				t.Errorf("leaves of %s: %v lacks %s: %s", tt.name, got, name, tt.because)
			}
		}
		for _, name := range tt.hasNot {
			if slices.Contains(got, name) {
				t.Errorf("leaves of %s: %v has %s: %s", tt.name, got, name, tt.because)
			}
		}
	}
}

// TestLeavesHaveFigures: a leaf that could not be judged would make its group
// agree with nothing.
func TestLeavesHaveFigures(t *testing.T) {
	table := mustLoad(t)
	for _, m := range table.Materials() {
		leaves := table.Leaves(m)
		if len(leaves) == 0 {
			t.Errorf("%s has no leaves", m.Name)
		}
		for _, leaf := range leaves {
			if !leaf.Low.Known() && !leaf.SG.Known() {
				t.Errorf("%s: its leaf %s has neither index nor specific gravity", m.Name, leaf.Name)
			}
		}
		if !m.Low.Known() && !m.SG.Known() {
			t.Errorf("%s has neither index nor specific gravity", m.Name)
		}
	}
}

// TestCounterparts has the grown products of the trade by method, from memory.
func TestCounterparts(t *testing.T) {
	table := mustLoad(t)
	for species, methods := range map[string][]string{
		"corundum":    {"flame fusion", "flux", "hydrothermal", "pulled", "floating zone"},
		"beryl":       {"flux", "hydrothermal"},
		"spinel":      {"flame fusion", "flux"},
		"chrysoberyl": {"pulled", "flux", "floating zone"},
		"quartz":      {"hydrothermal"},
		"diamond":     {"high pressure", "vapour"},
		"rutile":      {"flame fusion"},
		"pearl":       {"bead nucleus", "without bead"},
		"opal":        {"precipitation"},
	} {
		var got []string
		for _, c := range table.CounterpartsOf(find(t, table, species)) {
			got = append(got, c.Method)
			if c.Growth != LaboratoryGrown && c.Growth != Cultured {
				t.Errorf("%s: growth %q is not that of a counterpart", c.Name, c.Growth)
			}
		}
		for _, method := range methods {
			if !slices.Contains(got, method) {
				t.Errorf("%s: methods %v lack %s", species, got, method)
			}
		}
	}
}

// TestGrownMetAgreesWithCounterparts: a species with a counterpart in the table
// cannot be marked as one of which none is met in the trade.
func TestGrownMetAgreesWithCounterparts(t *testing.T) {
	table := mustLoad(t)
	for _, m := range table.Materials() {
		for _, c := range table.CounterpartsOf(m) {
			if m.GrownMet == "no" && c.Growth == LaboratoryGrown {
				t.Errorf("%s is marked as never grown, yet there is %s", m.Name, c.Name)
			}
		}
	}
}
