package worth_test

import (
	"os"
	"path/filepath"
	"testing"

	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
	"stonewrit/grading/worth"
)

// Whatever a stone file says of its worth: no panic, and every problem is below
// worth.
func FuzzAppraise(f *testing.F) {
	names, err := filepath.Glob("../stone/testdata/schema/*.yaml")
	if err != nil || len(names) == 0 {
		f.Fatal(err, len(names))
	}
	for _, name := range append(names, "../stone/testdata/hl-0412.yaml") {
		src, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(src, "1.520", "1.64")
	}
	table, err := gem.Load()
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, src []byte, weight, stones string) {
		s, _ := stone.Read("a.yaml", src, table)
		if s.Worth == nil {
			return
		}
		r, problems := worth.Appraise(s.Worth, worth.Subject{Weight: weight, Stones: stones})
		for _, p := range problems.At(s.Position) {
			if p.Message == "" || p.Line < 1 || len(p.Path) < len("worth") {
				t.Errorf("got %+v", p)
			}
		}
		if r.Conclusion.Amount != "" && r.Currency == "" {
			t.Errorf("an amount without a currency: %+v", r.Conclusion)
		}
	})
}
