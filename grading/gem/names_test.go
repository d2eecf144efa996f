package gem

import (
	"errors"
	"slices"
	"strings"
	"testing"
)

func TestFind(t *testing.T) {
	table := mustLoad(t)
	tests := []struct{ name, want, why string }{
		{"corundum", "corundum", "the name itself"},
		{"Corundum", "corundum", "case"},
		{"  tiger’s eye ", "tiger's-eye", "blanks, hyphen and the kind of apostrophe"},
		{"Paraíba Tourmaline", "paraiba tourmaline", "accents"},
		{"haüyne", "hauyne", "accents"},
		{"sphene", "titanite", "synonym"},
		{"HPHT-grown", "high-pressure diamond", "synonym of a grown product"},
		{"CZ", "cubic zirconia", "short name"},
		{"golden beryl", "heliodor", "the name that 16 CFR 23.26(b)(1) leaves to yellow beryl"},
	}
	for _, tt := range tests {
		m, err := table.Find(tt.name)
		if err != nil || m.Name != tt.want {
			t.Errorf("Find(%q) = %v, %v; want %s: %s", tt.name, m, err, tt.want, tt.why)
		}
	}
}

func TestFindNearest(t *testing.T) {
	table := mustLoad(t)
	tests := []struct{ name, first string }{
		{"corrundum", "corundum"}, {"saphire", "sapphire"}, {"tormaline", "tourmaline"}, {"alexandrit", "alexandrite"}, {"chyrsoberyl", "chrysoberyl"},
		{"toapz", "topaz"}, {"oapl", "opal"}, {"spniel", "spinel"},
	}
	for _, tt := range tests {
		_, err := table.Find(tt.name)
		var missing *NotFoundError
		if !errors.As(err, &missing) || len(missing.Nearest) == 0 || missing.Nearest[0] != tt.first {
			t.Errorf("Find(%q): got %v, want not found, with %q as the nearest", tt.name, err, tt.first)
		}
	}
	for _, name := range []string{"", "???", "qqqqqqqqqqqq", "宝石"} {
		_, err := table.Find(name)
		var missing *NotFoundError
		if !errors.As(err, &missing) || len(missing.Nearest) != 0 {
			t.Errorf("Find(%q): got %v, want not found, with nothing near", name, err)
		}
	}
}

// TestMisnomersAreRefused walks every misleading name of the table.
func TestMisnomersAreRefused(t *testing.T) {
	table := mustLoad(t)
	if len(table.misnomers) < 60 {
		t.Errorf("the table knows %d misleading names, want at least 60", len(table.misnomers))
	}
	for _, m := range table.misnomers {
		_, err := table.Find(m.name)
		var wrong *MisnomerError
		if !errors.As(err, &wrong) || wrong.Proper == "" || wrong.Reason == "" {
			t.Errorf("Find(%q): got %v, want a refusal with the proper name and the reason", m.name, err)
			continue
		}
		if _, err := table.Find(wrong.Proper); err != nil {
			t.Errorf("%q is refused for %q, which cannot be found either: %v", m.name, wrong.Proper, err)
		}
	}
}

// TestKnownMisnomers has the two names that 16 CFR 23.26(b) gives as examples
// of misuse, and others of the trade (common practice).
func TestKnownMisnomers(t *testing.T) {
	table := mustLoad(t)
	for name, proper := range map[string]string{
		"yellow emerald": "heliodor", "green amethyst": "prasiolite",
		"Bohemian ruby": "pyrope", "balas ruby": "red spinel", "Herkimer diamond": "rock crystal", "smoky topaz": "smoky quartz",
		"water sapphire": "iolite", "Korean jade": "bowenite", "Mexican onyx": "banded calcite", "German lapis": "jasper",
	} {
		_, err := table.Find(name)
		var wrong *MisnomerError
		if !errors.As(err, &wrong) || wrong.Proper != proper {
			t.Errorf("Find(%q): got %v, want a refusal in favour of %q", name, err, proper)
		}
	}
}

func FuzzFind(f *testing.F) {
	table, err := Load()
	if err != nil {
		f.Fatal(err)
	}
	for _, m := range table.Materials() {
		f.Add(m.Name)
		f.Add(strings.ToUpper(m.Name) + " ")
	}
	f.Add("green amethyst")
	f.Add("\xff\x00 saphire")
	f.Fuzz(func(t *testing.T, name string) {
		m, err := table.Find(name)
		var missing *NotFoundError
		var wrong *MisnomerError
		switch {
		case err == nil:
			names := append([]string{m.Name}, m.Synonyms...)
			if !slices.ContainsFunc(names, func(s string) bool { return fold(s) == fold(name) }) {
				t.Errorf("Find(%q) gave %q, which has no such name", name, m.Name)
			}
		case errors.As(err, &missing):
			for _, near := range missing.Nearest {
				if _, err := table.Find(near); err != nil {
					t.Errorf("Find(%q) offers %q, which cannot be found: %v", name, near, err)
				}
			}
		case !errors.As(err, &wrong):
			t.Errorf("Find(%q): undocumented error %v", name, err)
		}
		if fold(fold(name)) != fold(name) {
			t.Errorf("folding %q twice changes it again", name)
		}
	})
}
