package gem

import (
	"strings"
	"testing"
)

// Harm is a matter of test, material and mounting. Common practice where no
// source is named.
func TestHarmOf(t *testing.T) {
	table := mustLoad(t)
	tests := []struct {
		test, material string
		mounted, want  bool
		why            string
	}{
		{"polariscope", "opal", false, false, "light alone"},
		{"refractometer", "sapphire", false, false, "a drop on a polished facet"},
		{"refractometer", "sapphire", true, false, "a drop on a polished facet"},
		{"refractometer", "turquoise", false, true, "contact liquid in the pores"},
		{"refractometer", "cultured pearl, bead nucleus", false, true, "organic"},
		{"refractometer", "amber", false, true, "organic"},
		{"refractometer", "opal triplet", false, true, "glue"},
		{"refractometer", "emerald", false, false, "an emerald may be oiled, but the drop lies on a facet"},
		{"specific gravity: liquid", "emerald", false, true, "emerald is often oiled, and nobody has asked"},
		{"specific gravity: liquid", "spinel", false, false, "dense and not treated with anything soluble"},
		{"specific gravity: liquid", "spinel", true, true, "liquid stays behind in the setting"},
		{"specific gravity: hydrostatic", "spinel", false, false, "water"},
		{"specific gravity", "opal", false, true, "opal takes up water"},
		{"specific gravity", "jadeite", false, false, "weighing in water is its daily test"},
		{"specific gravity", "agate", false, false, "fine pores, and water does it no harm"},
		{"specific gravity", "white opal", false, true, "as opal"},
		{"specific gravity", "pearl", false, true, "water in the drill hole"},
		{"hardness", "diamond", false, true, "a scratch stays"},
		{"hot point", "sapphire", false, true, "marks the piece"},
		{"acid", "calcite", true, true, "eats the polish"},
		{"acetone wipe", "amber", false, true, "acetone spoils organic material"},
		{"acetone wipe", "diamond", false, false, "nothing in it dissolves"},
		{"acetone wipe", "diamond", true, true, "glued settings"},
		{"immersion", "coral", false, true, "organic"},
		{"immersion", "spinel", false, false, "dense"},
		{"ultraviolet", "maxixe-type beryl", false, true, "its colour fades"},
		{"ultraviolet", "ruby", false, false, "does nothing"},
		{"thermal conductivity", "amber", false, true, "a warm tip"},
		{"thermal conductivity", "diamond", true, false, "made for it"},
		{"carbonate flash", "malachite", false, true, "done on the refractometer, with its liquid"},
	}
	for _, tt := range tests {
		m, err := table.Find(tt.material)
		if err != nil {
			t.Error(err)
			continue
		}
		harm, got := table.HarmOf(tt.test, m, tt.mounted)
		if got != tt.want || got != (harm != "") {
			t.Errorf("%s on %s, mounted %v: %q, %v; want %v: %s", tt.test, tt.material, tt.mounted, harm, got, tt.want, tt.why)
		}
	}
}

// No cleaning bath for the stones that trade charts and handbooks warn of, nor
// for a material that the table knows nothing about. Common practice.
func TestCleaningIsHarmful(t *testing.T) {
	table := mustLoad(t)
	for _, name := range []string{
		"emerald", "opal", "pearl", "precious coral", "turquoise", "tanzanite", "malachite", "amber", "peridot", "iolite",
		"kunzite", "moonstone", "labradorite", "fluorite", "apatite", "andalusite", "titanite", "benitoite", "rhodochrosite",
		"lapis lazuli", "jet", "ivory", "tortoiseshell", "shell", "opal triplet", "garnet-topped doublet",
	} {
		m, err := table.Find(name)
		if err != nil {
			t.Error(err)
			continue
		}
		for _, bath := range []string{"ultrasonic", "steam"} {
			if harm, harmful := table.HarmOf(bath, m, false); !harmful || harm == "" {
				t.Errorf("%s of %s is said to do no harm", bath, name)
			}
		}
	}
	if _, harmful := table.HarmOf("ultrasonic", &Material{Name: "a material without a row"}, false); !harmful {
		t.Error("a material without care is said to stand ultrasonic cleaning")
	}
}

// A treatment that is customary is presumed where a liquid would dissolve it.
func TestHarmIfCustomary(t *testing.T) {
	table := mustLoad(t)
	tests := []struct {
		test      string
		treatment string
		customary Frequency
		want      bool
		why       string
	}{
		{"specific gravity: liquid", "oil", Often, true, "most stones of the kind are oiled, and nobody has asked"},
		{"acetone wipe", "resin", Always, true, "a kind of fracture filling"},
		{"specific gravity: liquid", "oil", Sometimes, false, "a rare treatment is not presumed"},
		{"specific gravity: liquid", "heated", Always, false, "nothing dissolves"},
		{"refractometer", "oil", Often, false, "a drop on a facet does no harm that is worth losing the index for"},
	}
	for _, tt := range tests {
		m := &Material{Name: "some stone", Treatments: []TreatmentUse{{Treatment: tt.treatment, Customary: tt.customary}}}
		if harm, got := table.HarmOf(tt.test, m, false); got != tt.want {
			t.Errorf("%s, %s %s: %q, %v; want %v: %s", tt.test, tt.customary, tt.treatment, harm, got, tt.want, tt.why)
		}
	}
}

func TestHarmOfTheUnknown(t *testing.T) {
	table := mustLoad(t)
	tests := []struct {
		test string
		want bool
		why  string
	}{
		{"polariscope", false, "light alone"},
		{"hardness", true, "scratches anything"},
		{"steam", true, "nobody knows what the stone stands"},
		{"spectroscpe", true, "no such test: better refused than trusted"},
	}
	for _, tt := range tests {
		if harm, got := table.HarmOf(tt.test, nil, false); got != tt.want {
			t.Errorf("%s: %q, %v; want %v: %s", tt.test, harm, got, tt.want, tt.why)
		}
	}
}

func TestHarmToTreated(t *testing.T) {
	table := mustLoad(t)
	tests := []struct {
		test, treatment string
		want            bool
		why             string
	}{
		{"specific gravity: liquid", "oil", true, "a kind of fracture filling"},
		{"specific gravity: liquid", "lead-glass filled", true, "a kind of fracture filling"},
		{"specific gravity: liquid", "heated", false, "nothing dissolves"},
		{"refractometer", "oil", true, "known to be oiled: no liquid at all"},
		{"refractometer", "dyed", true, "dye comes out"},
		{"acetone wipe", "stabilised", true, "resin in the pores"},
		{"acetone wipe", "laser drilled", false, "nothing dissolves"},
		{"ultrasonic", "fracture filled", true, "care of the treatment"},
		{"polariscope", "oil", false, "light alone"},
		{"immersion", "coated", true, "liquids attack coatings"},
	}
	for _, tt := range tests {
		tr, err := table.Treatment(tt.treatment)
		if err != nil {
			t.Error(err)
			continue
		}
		if harm, got := table.HarmToTreated(tt.test, tr); got != tt.want || got != (harm != "") {
			t.Errorf("%s on %s: %q, %v; want %v: %s", tt.test, tt.treatment, harm, got, tt.want, tt.why)
		}
	}
}

// Every caution leaves the decision to those who may make it.
func TestCautionsDefer(t *testing.T) {
	for _, c := range mustLoad(t).evidence.cautions {
		if !strings.Contains(c.Wording, "local rules") && !strings.Contains(c.Wording, "practice's own rules") {
			t.Errorf("%s: %q defers to nobody", c.ID, c.Wording)
		}
		liquid := strings.Contains(strings.ToLower(c.Wording), "liquid") || c.ID == "bromoform" || c.ID == "acetone"
		if liquid && !strings.Contains(c.Wording, "safety data") {
			t.Errorf("%s: %q does not name the supplier's safety data", c.ID, c.Wording)
		}
	}
}

// The cautions that a bench needs, by test. Figures: ICNIRP 2004 as quoted in
// a lamp safety sheet (30 J/m2 effective, 10 kJ/m2 UV-A in eight hours); GHS
// statements of bromoform (H331 toxic if inhaled) and acetone (H225 highly
// flammable) from safety data; 29 CFR 1910.1053 (50 and 25 ug/m3, from memory).
func TestCautionsFor(t *testing.T) {
	table := mustLoad(t)
	tests := []struct{ test, id, says string }{
		{"ultraviolet", "uv-eyes", "30 J/m2"},
		{"ultraviolet", "uv-eyes", "10 kJ/m2"},
		{"ultraviolet", "uv-eyes", "goggles"},
		{"refractometer", "ri-liquid", "smallest drop"},
		{"refractometer", "ri-liquid-high", "poisonous"},
		{"carbonate flash", "ri-liquid", "smallest drop"},
		{"specific gravity: liquid", "dim", "irritates skin"},
		{"specific gravity: liquid", "bromoform", "toxic if inhaled"},
		{"specific gravity: liquid", "thallium salts", "through the skin"},
		{"immersion", "immersion", "ventilate"},
		{"acetone wipe", "acetone", "highly flammable"},
		{"hot point", "hot-point", "written consent"},
		{"hardness", "scratch", "not on cut stones"},
		{"acid", "acid-touch", "burns"},
		{"radioactivity", "radio-irradiated", "slightly radioactive"},
		{"radioactivity", "radio-natural", "uranium or thorium"},
		{"cutting", "dust", "50 ug/m3"},
	}
	for _, tt := range tests {
		found := false
		for _, c := range table.CautionsFor(tt.test) {
			found = found || c.ID == tt.id && strings.Contains(c.Wording, tt.says)
		}
		if !found {
			t.Errorf("%s: no caution %s that says %q", tt.test, tt.id, tt.says)
		}
	}
	if got := table.CautionsFor("polariscope"); len(got) != 0 {
		t.Errorf("polariscope: %v, want no caution", got)
	}
}

// Poisonous liquids and tests that spoil a stone are recorded, never suggested.
func TestNeverSuggested(t *testing.T) {
	never := map[string]float64{
		"ri-liquid-high": 1.81, "thallium salts": 3.4, "hot-point": 0, "scratch": 0, "acid-touch": 0, "heat": 0,
	}
	for _, c := range mustLoad(t).evidence.cautions {
		from, want := never[c.ID]
		if c.Never != want || want && c.From != from {
			t.Errorf("%s: never %v from %g, want %v from %g", c.ID, c.Never, c.From, want, from)
		}
	}
}
