package gem

import (
	"slices"
	"strconv"
	"testing"
)

// TestCareIsStrict has the materials that must not go into an ultrasonic bath
// or under steam: trade cleaning charts, second hand, and common practice. Where
// charts disagree (topaz, jade, zircon; steam for garnet and quartz) the stricter
// one is followed.
func TestCareIsStrict(t *testing.T) {
	table := mustLoad(t)
	for _, name := range []string{
		"emerald", "opal", "pearl", "precious coral", "turquoise", "tanzanite", "malachite", "amber", "peridot", "iolite", "kunzite",
		"moonstone", "labradorite", "amazonite", "fluorite", "apatite", "andalusite", "titanite", "benitoite", "rhodochrosite", "lapis lazuli",
		"jet", "ivory", "tortoiseshell", "shell", "rubellite", "blue zircon", "topaz", "jadeite", "cultured pearl, bead nucleus", "copal",
	} {
		care := table.CareFor(find(t, table, name))
		if care.Ultrasonic != "no" || care.Steam != "no" {
			t.Errorf("%s: ultrasonic %q, steam %q; want no", name, care.Ultrasonic, care.Steam)
		}
	}
	for _, m := range table.Materials() {
		care := table.CareFor(m)
		if m.Class == "composite" && (care.Ultrasonic != "no" || care.Steam != "no" || care.Heat != "no") {
			t.Errorf("%s: a join or coat must meet neither bath, steam nor torch: %+v", m.Name, care)
		}
		if m.Porous && care.Ultrasonic == "yes" {
			t.Errorf("%s: porous, yet said to stand an ultrasonic bath", m.Name)
		}
		if care.Source == "" {
			t.Errorf("%s: care without a source", m.Name)
		}
	}
	for _, name := range []string{"garnet", "quartz"} {
		if care := table.CareFor(find(t, table, name)); care.Steam != "no" {
			t.Errorf("%s: steam %q, want no", name, care.Steam)
		}
	}
	if care := table.CareFor(find(t, table, "colourless sapphire")); care.Ultrasonic != "yes" {
		t.Errorf("corundum without fillers stands an ultrasonic bath (common practice), got %q", care.Ultrasonic)
	}
	if care := table.CareFor(&Material{Name: "exemplite"}); care.Ultrasonic != "no" || care.Heat != "no" || care.Solvents != "no" {
		t.Errorf("a material without a row: got %+v, want no throughout", care)
	}
}

func TestRules(t *testing.T) {
	table := mustLoad(t)
	tests := []struct {
		variety string
		facts   []string
	}{
		{"ruby", []string{"colour"}},
		{"emerald", []string{"colour", "absorption"}},
		{"alexandrite", []string{"colour change"}},
		{"cat's-eye", []string{"phenomenon"}},
		{"star ruby", []string{"colour", "phenomenon"}},
		{"black opal", []string{"phenomenon", "colour"}},
		{"hydrogrossular", nil},
	}
	for _, tt := range tests {
		var got []string
		for _, rule := range table.Rules(find(t, table, tt.variety)) {
			got = append(got, rule.Fact)
		}
		if !slices.Equal(got, tt.facts) {
			t.Errorf("rules of %s: got %v, want %v", tt.variety, got, tt.facts)
		}
	}
	// The two lines that the trade draws by convention must be said to be drawn so.
	for _, name := range []string{"ruby", "pink sapphire", "emerald", "green beryl"} {
		if table.Rules(find(t, table, name))[0].Convention == "" {
			t.Errorf("%s: the convention is not named", name)
		}
	}
}

// TestRulesCanBeMet: a fact is asked for in words that a stone file may use.
func TestRulesCanBeMet(t *testing.T) {
	table := mustLoad(t)
	// The words of a stone file for phenomena.
	phenomena := []string{"asterism", "chatoyancy", "adularescence", "labradorescence", "aventurescence", "play of colour", "iridescence"}
	for _, m := range table.Materials() {
		for _, rule := range table.Rules(m) {
			for _, word := range rule.Allowed {
				ok := true
				switch rule.Fact {
				case "feature":
					f, err := table.Feature(word)
					ok = err == nil && f.Term == word
				case "phenomenon":
					ok = slices.Contains(phenomena, word)
				case "colour change":
					ok = word == "yes"
				case "transparency":
					ok = slices.Contains(m.Looks, word)
				case "absorption":
					nm, err := strconv.ParseFloat(word, 64)
					ok = err == nil && nm >= 380 && nm <= 780
				}
				if !ok {
					t.Errorf("%s: no stone file can meet %s %q", m.Name, rule.Fact, word)
				}
			}
		}
	}
}

// TestTreatmentsInUseAreKnown: every treatment of a material is a word that a
// stone file may use.
func TestTreatmentsInUseAreKnown(t *testing.T) {
	table := mustLoad(t)
	for _, m := range table.Materials() {
		for _, use := range m.Treatments {
			if tr, err := table.Treatment(use.Treatment); err != nil || tr.Name != use.Treatment {
				t.Errorf("%s: treatment %q is not the proper word of the treatments table", m.Name, use.Treatment)
			}
		}
	}
	usual := func(name, treatment string) (use TreatmentUse) {
		for _, use := range find(t, table, name).Treatments {
			if use.Treatment == treatment {
				return use
			}
		}
		return use
	}
	// Common practice: heat in tanzanite is taken for granted and leaves nothing to see.
	if use := usual("tanzanite", "heated"); use.Seen != "nowhere" || use.Customary != Always {
		t.Errorf("tanzanite, heated: got %+v", use)
	}
	if use := usual("emerald", "oil"); use.Seen != "bench" || use.Customary != Often {
		t.Errorf("emerald, oil: got %+v", use)
	}
}
