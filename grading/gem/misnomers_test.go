package gem

import "testing"

// 16 CFR 23.26(b) names the first two; the others are right names or none.
func TestMisnomer(t *testing.T) {
	table, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	for name, proper := range map[string]string{"yellow emerald": "heliodor", "Green-Amethyst": "prasiolite", "emerald": "", "yellow stone": "", "": ""} {
		wrong, ok := table.Misnomer(name)
		if ok != (proper != "") || ok && wrong.Proper != proper {
			t.Errorf("%q: %v, %v; want %q", name, wrong, ok, proper)
		}
	}
}
