package quality

import (
	"slices"
	"testing"
)

// 16 CFR 23.3 to 23.8; karats by the definition K x 1000 / 24.
func TestMetalNames(t *testing.T) {
	g := load(t)
	for _, c := range []struct {
		m         Metal
		want, why string
	}{
		{Metal{Name: "gold", Karat: 14}, "14 K gold", "the karat directly before the word"},
		{Metal{Name: "gold", PerMille: 750, Colour: "yellow"}, "yellow 18 K gold (750 per mille)", "750 is 18 K by definition"},
		{Metal{Name: "gold", PerMille: 585}, "14 K gold (585 per mille)", "585 is above 14/24"},
		{Metal{Name: "gold", PerMille: 375}, "9 K gold (375 per mille)", "by definition"},
		{Metal{Name: "gold", PerMille: 916}, "22 K gold (916 per mille)", "within the 3 per mille of 15 USC 295"},
		{Metal{Name: "gold", PerMille: 750, Plated: "rhodium", Colour: "white"}, "white 18 K gold (750 per mille), rhodium-plated", "23.8: the layer is told"},
		{Metal{Name: "gold"}, "gold of undetermined fineness", "nothing is known"},
		{Metal{Name: "silver", PerMille: 925}, "sterling silver (925 per mille)", "23.5(b)(2)"},
		{Metal{Name: "silver", PerMille: 830}, "830 silver", "23.5(b)(1): the number directly before"},
		{Metal{Name: "silver", PerMille: 900}, "900 silver", "coin silver may say so, the number tells more"},
		{Metal{Name: "platinum", PerMille: 950}, "platinum (950 per mille)", "23.6"},
		{Metal{Name: "platinum", PerMille: 900}, "900 platinum", "23.6: with its number"},
		{Metal{Name: "platinum", PerMille: 600, Alloy: "350 palladium"}, "600 platinum, 350 palladium", "23.6: the metals are named"},
		{Metal{Name: "palladium", PerMille: 950}, "950 palladium", "the number directly before"},
		{Metal{Name: "steel"}, "steel", "kept as it is"},
	} {
		got := g.MetalName(c.m)
		if got != c.want {
			t.Errorf("%+v: got %q, want %q: %s", c.m, got, c.want, c.why)
		}
		if found := g.RefusedMetal(got, c.m); len(found) > 0 && c.m.fineness() > 0 {
			t.Errorf("the own name %q is refused: %+v", got, found)
		}
	}
}

func TestMixedMetalsByFallingMass(t *testing.T) {
	g := load(t)
	gold, platinum := Metal{Name: "gold", Karat: 18, Grams: 1.2}, Metal{Name: "platinum", PerMille: 950, Grams: 3}
	names, known := g.MixedMetals([]Metal{gold, platinum})
	if want := []string{"platinum (950 per mille)", "18 K gold"}; !known || !slices.Equal(names, want) {
		t.Errorf("got %v, %v; want %v (16 CFR 23.7)", names, known, want)
	}
	gold.Grams = 0
	if names, known := g.MixedMetals([]Metal{gold, platinum}); known || names[0] != "18 K gold" {
		t.Errorf("without masses: %v, %v; want the order given", names, known)
	}
}

func TestVermeil(t *testing.T) {
	g := load(t)
	if list := g.NoVermeil(Metal{Name: "silver", PerMille: 925}, 10, 2.5); len(list) > 0 {
		t.Errorf("the limits themselves: %v", list)
	}
	if list := g.NoVermeil(Metal{Name: "brass"}, 9, 1); len(list) != 3 {
		t.Errorf("brass, 9 K, 1 um: %v, want three reasons", list)
	}
}

// A mark is judged by two laws, and they may differ: 582 under 585 holds by the
// law of the United States (3 per mille), not by ISO 9202.
func TestTwoLawsOfFineness(t *testing.T) {
	g := load(t)
	got := map[string]bool{}
	for _, j := range g.JudgeFineness("gold", 585, 582, PartWithoutSolder) {
		got[j.Law] = j.Holds
	}
	if !got["15 USC 295"] || got["ISO 9202"] {
		t.Errorf("582 under a mark of 585: %v", got)
	}
	if !g.Listed("gold", 585) || g.Listed("gold", 583) {
		t.Error("585 is a class of ISO 9202, 583 is none")
	}
	if !g.AssayExempt("spring") || g.AssayExempt("shank") {
		t.Error("a spring is left out of an assay, a shank is not")
	}
	if _, ok := g.MarkAllowed("gold", 300); ok {
		t.Error("300 per mille may be marked as gold")
	}
}
