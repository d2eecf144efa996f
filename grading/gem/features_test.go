package gem

import (
	"errors"
	"slices"
	"strings"
	"testing"
)

func TestFeatures(t *testing.T) {
	table := mustLoad(t)
	bySight := 0
	for _, f := range table.Features() {
		if f.SeenBy == "magnification" {
			bySight++
		}
		if len(table.evidence.signs[f.Term]) == 0 && !f.Nothing() {
			t.Errorf("%s: no sign says what it shows", f.Term)
		}
	}
	t.Logf("%d features, %d of them seen under magnification", len(table.Features()), bySight)
	if bySight < 80 {
		t.Errorf("%d features seen under magnification, want at least 80", bySight)
	}
}

// Terms of the trade that an examiner will write, in the forms in which he
// will write them. Common practice, no source.
func TestFeatureTerms(t *testing.T) {
	table := mustLoad(t)
	for written, want := range map[string]string{
		"partly dissolved silk":           "partly dissolved silk",
		"tension halo around crystal":     "tension halo",
		"Curved Striae":                   "curved striae",
		"nailhead spicules":               "nail-head spicules",
		"bubbles in a filled fracture":    "bubbles in a filler",
		"gas bubbles in the body":         "gas bubbles in the body",
		"two-phase":                       "",
		"two phase inclusions":            "two-phase inclusion",
		"horsetail inclusion":             "horsetail",
		"lizard-skin cells of opal":       "lizard-skin cells",
		"doubling of facet edges":         "doubled facet edges",
		"dye concentrated in fractures":   "dye in fractures",
		"colour along facet junctions":    "colour concentrated at facet junctions",
		"engine turning":                  "schreger lines",
		"bead in the drill hole":          "bead nucleus seen in the drill hole",
		"glue bubbles at the join":        "bubbles at the join",
		"growth rings of ivory":           "schreger lines",
		"415 nm line":                     "415.5 nm line",
		"surface-following glow":          "glow at the surface alone",
		"platinum platelets":              "platinum platelets",
		"wispy veils":                     "wispy veils",
		"zigzag growth":                   "chevron growth",
		"mold marks":                      "mould marks",
		"strain cracks around crystals":   "strain cracks around crystals",
		"snake-skin of agate":             "",
		"bubbles":                         "",
		"flash":                           "",
		"a small dark thing near the top": "",
	} {
		f, err := table.Feature(written)
		var missing *FeatureNotFoundError
		switch {
		case want == "" && !errors.As(err, &missing):
			t.Errorf("%q: got %v, %v; want it refused", written, f, err)
		case want != "" && (err != nil || f.Term != want):
			t.Errorf("%q: got %v, %v; want %s", written, f, err, want)
		}
	}
}

func TestFeatureNearest(t *testing.T) {
	table := mustLoad(t)
	tests := []struct{ written, near, why string }{
		{"curved stria", "curved striae", "one letter is wanting"},
		{"horse tial", "horsetail", "two letters changed places"},
		{"bubbles", "gas bubbles in the body", "where the bubbles are decides what they show"},
		{"bubbles", "bubbles in a filler", "where the bubbles are decides what they show"},
		{"bubbles", "bubbles at the join", "where the bubbles are decides what they show"},
		{"two-phase", "two-phase inclusion", "the word is part of a term"},
	}
	for _, tt := range tests {
		_, err := table.Feature(tt.written)
		var missing *FeatureNotFoundError
		if !errors.As(err, &missing) || !slices.Contains(missing.Nearest, tt.near) {
			t.Errorf("%q: got %+v, want %q among the nearest: %s", tt.written, err, tt.near, tt.why)
		}
		if missing != nil && !strings.Contains(missing.Error(), tt.written) {
			t.Errorf("%q: message %q does not name it", tt.written, missing)
		}
	}
}

func TestNotGlass(t *testing.T) {
	table := mustLoad(t)
	tests := []struct {
		term string
		want bool
		why  string
	}{
		{"doubled facet edges", true, "glass is singly refractive"},
		{"horsetail", true, "fibres of a mineral"},
		{"intact silk", true, "needles of a mineral in the directions of a crystal"},
		{"angular zoning", true, "glass has no crystal faces"},
		{"haversian canals", true, "structure of bone"},
		{"gas bubbles in the body", false, "the usual guest of glass"},
		{"swirl marks", false, "usual in glass"},
		{"fingerprint", false, "sheets of small bubbles in glass pass for it"},
		{"crystal inclusion", false, "glass can hold crystals grown in the melt"},
		{"copper platelets", false, "aventurine glass"},
		{"growth tubes", false, "drawn-out bubbles pass for them"},
		{"flash effect", false, "a filled fracture of any stone"},
		{"octahedral negative crystals", true, "glass has no crystal faces"},
		{"apatite crystal", true, "a mineral whose kind was made out"},
		{"roiled look", false, "swirls of glass look the same"},
		{"honeycomb structure", false, "packed fibres of glass"},
	}
	for _, tt := range tests {
		f, err := table.Feature(tt.term)
		if err != nil {
			t.Error(err)
			continue
		}
		if f.NotGlass != tt.want {
			t.Errorf("%s: not glass is %v, want %v: %s", tt.term, f.NotGlass, tt.want, tt.why)
		}
	}
}

// A pattern under the lamp must be told apart by what the reading holds: two
// features that ask for the same marks could not be.
func TestGlowMarksDiffer(t *testing.T) {
	seen := map[string]string{}
	for _, f := range mustLoad(t).Features() {
		marks := strings.Join([]string{f.Wave, strings.Join(f.Glow, "/"), f.Strength, f.Pattern, f.Afterglow}, "|")
		if f.SeenBy != "luminescence" || marks == "||||" {
			continue
		}
		if other := seen[marks]; other != "" {
			t.Errorf("%s and %s ask for the same marks %s", f.Term, other, marks)
		}
		seen[marks] = f.Term
	}
}
