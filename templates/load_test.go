package templates

import "testing"

func TestBuiltinLoads(t *testing.T) {
	set, err := Load(nil)
	if err != nil {
		t.Fatal(err)
	}
	w, err := set.Language("en")
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range Catalogue() {
		if !s.Optional && !w.Has(s.Name) {
			t.Errorf("English lacks the sentence %q", s.Name)
		}
	}
}
