package grading_test

import (
	"os"
	"path/filepath"
	"testing"

	"stonewrit/grading/stone"
)

// FuzzExamine examines whatever can be read: no panic, and every problem has
// its place in the file.
func FuzzExamine(f *testing.F) {
	for _, pattern := range []string{"../testdata/demo/hl-*.yaml", "../testdata/wrong/*.yaml", "testdata/contract/*.yaml"} {
		names, err := filepath.Glob(pattern)
		if err != nil {
			f.Fatal(err)
		}
		for _, name := range names {
			src, err := os.ReadFile(name)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(src)
		}
	}
	tables := load(f)
	f.Fuzz(func(t *testing.T, src []byte) {
		s, problems := stone.Read("f.yaml", src, tables.Gems)
		if problems.Has(stone.Error) {
			return
		}
		e := tables.Examine(s, nil, today)
		if _, err := e.JSON(nil); err != nil {
			t.Fatal(err)
		}
		for _, p := range e.Problems {
			if p.Line < 1 || p.Column < 1 {
				t.Errorf("%+v has no place", p)
			}
		}
	})
}
