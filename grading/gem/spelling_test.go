package gem

import (
	"errors"
	"slices"
	"testing"
)

// The wordings that a bench types, with the term that says no more than they
// do. Common practice, no source.
func TestFeatureWordings(t *testing.T) {
	table := mustLoad(t)
	for _, tt := range []struct{ written, want string }{
		// number, spelling, hyphens
		{"fingerprints", "fingerprint"}, {"feathers", "feather"}, {"laser drill holes", "laser drill hole"},
		{"flux fingerprints", "flux fingerprint"}, {"tension halos", "tension halo"}, {"tension haloes", "tension halo"},
		{"chromite crystals", "chromite crystal"}, {"color concentrated at facet junctions", "colour concentrated at facet junctions"},
		{"partially dissolved silk", "partly dissolved silk"}, {"luster difference at fracture", "lustre difference at a fracture"},
		{"tremolite fibers", "tremolite fibres"}, {"hematite plates", "haematite plates"}, {"zircon haloes", "zircon halo"},
		{"glass-filled cavities", "glass-filled cavity"}, {"horse-tails", "horsetail"}, {"lily-pad inclusions", "lily pad"},
		{"flux inclusions", "flux residue"}, {"horsetail inclusions", "horsetail"}, {"needle inclusion", "needles"},
		// words that only count or measure
		{"a few small fingerprints", "fingerprint"}, {"numerous minute gas bubbles", "gas bubbles in the body"}, {"large feather", "feather"},
		// words of the trade
		{"curved growth striae", "curved striae"}, {"curved color banding", "curved colour bands"},
		{"spherical gas bubbles", "gas bubbles in the body"}, {"elongated bubbles", "drawn-out gas bubbles"}, {"swirl", "swirl marks"},
		{"roiled", "roiled look"}, {"heat waves", "roiled look"}, {"roiled effect", "roiled look"}, {"roiled appearance", "roiled look"},
		{"gas bubbles in fissures", "bubbles in a filler"}, {"bubbles in fractures", "bubbles in a filler"}, {"trapped bubbles in fissure", "bubbles in a filler"},
		{"dye concentrations in fissures", "dye in fractures"}, {"dye concentrated along grain boundaries", "dye along grain boundaries"},
		{"strong doubling", "doubled facet edges"}, {"facet doubling", "doubled facet edges"}, {"doubling of back facets", "doubled facet edges"},
		{"doubling of pavilion facets", "doubled facet edges"}, {"rounded facet junctions", "rounded facet edges"}, {"seed crystal", "seed plate"},
		{"chevrons", "chevron growth"}, {"chevron-like growth zoning", "chevron growth"}, {"veil-like inclusions", "wispy veils"},
		{"jagged three-phase inclusions", "three-phase inclusion"}, {"chrysotile fibers", "horsetail"}, {"byssolite", "horsetail"},
		{"discoid fractures", "tension halo"}, {"stress fractures around crystals", "strain cracks around crystals"},
		{"dissolved silk", "partly dissolved silk"}, {"unmelted alumina", "unmelted powder"}, {"chicken-wire", "lizard-skin cells"}, {"snakeskin", "lizard-skin cells"},
		{"nacre", "nacre layers"}, {"overlapping platelets", "nacre layers"}, {"bead nucleus in drill hole", "bead nucleus seen in the drill hole"},
		{"bead visible in drill hole", "bead nucleus seen in the drill hole"}, {"engine-turned", "schreger lines"},
		{"granular structure", "interlocking grains"}, {"interlocking", "interlocking grains"}, {"fibrous structure", "felted fibres"},
		{"acid etched surface", "etched grain boundaries"}, {"worm holes", "etched grain boundaries"}, {"bubbles in glue", "bubbles at the join"},
		{"filled fractures", "filled fracture"}, {"oil in fissures", "oil in fissures"}, {"polymer in fissures", "polymer in fissures"},
		// looked and found nothing
		{"none", "nothing seen"}, {"nothing seen", "nothing seen"}, {"clean", "nothing seen"}, {"inclusion-free", "nothing seen"},
		// wordings that do not say where or of what: terms of their own that prove nothing
		{"blue flash", "coloured flashes"}, {"colored flashes", "coloured flashes"}, {"flattened bubbles", "flattened bubbles"},
		{"blue halos", "blue halos"}, {"honeycomb", "honeycomb structure"}, {"dye concentrations", "dye concentrations"},
		// and wordings that say too little or doubt: refused
		{"no fingerprints", ""}, {"possible curved striae", ""}, {"weak cape lines", ""}, {"bubbles", ""}, {"small bubbles", ""},
		{"cross-hatching", ""}, {"seeds", ""}, {"two-phase", ""}, {"foil inclusion", ""}, {"inclusions", ""}, {"a", ""}, {"", ""},
	} {
		f, err := table.Feature(tt.written)
		var missing *FeatureNotFoundError
		switch {
		case tt.want == "" && !errors.As(err, &missing):
			t.Errorf("%q: got %v, %v; want it refused", tt.written, f, err)
		case tt.want != "" && (err != nil || f.Term != tt.want):
			t.Errorf("%q: got %v, %v; want %s", tt.written, f, err, tt.want)
		}
	}
}

// A wording that does not say where a thing lies may hint and no more.
func TestVagueTermsProveNothing(t *testing.T) {
	table := mustLoad(t)
	for _, term := range []string{
		"coloured flashes", "flattened bubbles", "blue halos", "honeycomb structure", "dye concentrations",
		"filled fracture", "oil in fissures", "polymer in fissures", "653.5 nm line", "rare earth lines", "nothing seen",
	} {
		f, err := table.Feature(term)
		if err != nil || f.Term != term {
			t.Errorf("%s: got %v, %v", term, f, err)
			continue
		}
		for _, s := range table.evidence.signs[term] {
			if s.Force == Proves || s.Force == Excludes {
				t.Errorf("%s in %s %s %s", term, s.Material, s.Force, s.About)
			}
		}
		if f.NotGlass || len(f.Lines) > 0 {
			t.Errorf("%s: not glass %v, lines %v; want a term that the examiner names and that leaves glass open", term, f.NotGlass, f.Lines)
		}
	}
	if f, err := table.Feature("none"); err != nil || !f.Nothing() || len(table.evidence.signs[f.Term]) > 0 {
		t.Errorf("none: got %v, %v; want a term that says nothing was seen and has no sign", f, err)
	}
	if f, err := table.Feature("feather"); err != nil || f.Nothing() {
		t.Errorf("feather: got %v, %v; want something seen", f, err)
	}
}

func TestSpelling(t *testing.T) {
	for _, tt := range []struct{ one, other string }{
		{"gray", "grey"}, {"colours", "color"}, {"cavities", "cavity"}, {"flashes", "flash"}, {"halos", "halo"}, {"haloes", "halo"},
		{"The Crosses", "cross"}, {"boundaries", "boundary"}, {"fissures", "fracture"}, {"fibers", "fibre"}, {"molds", "mould"}, {"centers", "centre"},
	} {
		if termKey(tt.one) != termKey(tt.other) {
			t.Errorf("%q is compared as %q, %q as %q", tt.one, termKey(tt.one), tt.other, termKey(tt.other))
		}
	}
	for _, w := range []string{"gas", "glass", "silk", "moss"} {
		if got := wordsOf(w); !slices.Equal(got, []string{w}) {
			t.Errorf("%q becomes %v", w, got)
		}
	}
}

func FuzzFeature(f *testing.F) {
	table, err := Load()
	if err != nil {
		f.Fatal(err)
	}
	for _, x := range table.Features() {
		f.Add("several " + x.Term + "s")
	}
	f.Add("\xff inclusions")
	f.Fuzz(func(t *testing.T, term string) {
		found, err := table.Feature(term)
		var missing *FeatureNotFoundError
		if err == nil {
			if again, err := table.Feature(found.Term); err != nil || again != found {
				t.Errorf("Feature(%q) gave %q, which finds %v, %v", term, found.Term, again, err)
			}
			return
		}
		if !errors.As(err, &missing) {
			t.Fatalf("Feature(%q): undocumented error %v", term, err)
		}
		for _, near := range missing.Nearest {
			if _, err := table.Feature(near); err != nil {
				t.Errorf("Feature(%q) offers %q, which cannot be found: %v", term, near, err)
			}
		}
	})
}
