package stone_test

import (
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"stonewrit/grading/stone"
)

// seeds are all example files, good and bad.
func seeds(f *testing.F) {
	f.Helper()
	names, err := filepath.Glob("testdata/*.yaml")
	more, err2 := filepath.Glob("testdata/schema/*.yaml")
	if err != nil || err2 != nil || len(names) == 0 || len(more) == 0 {
		f.Fatal(err, err2, len(names), len(more))
	}
	for _, name := range append(names, more...) {
		f.Add(readFile(f, name))
	}
	for name, head := range map[string]string{mistakes: stoneHead, pieceMistakes: pieceHead} {
		archive, err := txtar.ParseFile(name)
		if err != nil {
			f.Fatal(err)
		}
		for i := 0; i < len(archive.Files); i += 2 {
			f.Add(headed(archive.Files[i], head))
		}
	}
}

// Whatever the file holds: no panic, every problem at a place inside it, and a
// record that the next steps may look at.
func FuzzRead(f *testing.F) {
	seeds(f)
	table := loadTable(f)
	bench, _ := stone.ReadBench("bench.yaml", readFile(f, "testdata/bench.yaml"), table)
	f.Fuzz(func(t *testing.T, src []byte) {
		head := stone.Head(src)
		s, problems := stone.Read("a.yaml", src, table)
		if head.Sort == stone.SortStone && s.Reference != "" && head.Reference != s.Reference {
			t.Errorf("the head says that the reference is %q, reading says %q", head.Reference, s.Reference)
		}
		problems = append(problems, stone.Against(s, bench, today())...)
		placesInside(t, src, problems)
		for _, p := range problems {
			if p.Message == "" || p.Severity == "" {
				t.Errorf("nothing is told: %+v", p)
			}
		}
		s.Position("tests[0].readings[1]")
	})
}

func FuzzReadBench(f *testing.F) {
	seeds(f)
	table := loadTable(f)
	s, _ := stone.Read("hl-0412.yaml", readFile(f, "testdata/hl-0412.yaml"), table)
	f.Fuzz(func(t *testing.T, src []byte) {
		b, problems := stone.ReadBench("bench.yaml", src, table)
		placesInside(t, src, problems)
		stone.Against(s, b, today())
	})
}

func FuzzReadPiece(f *testing.F) {
	seeds(f)
	table := loadTable(f)
	bench, _ := stone.ReadBench("bench.yaml", readFile(f, "testdata/bench.yaml"), table)
	f.Fuzz(func(t *testing.T, src []byte) {
		p, problems := stone.ReadPiece("a.yaml", src, table)
		problems = append(problems, stone.AgainstPiece(p, bench, today())...)
		placesInside(t, src, problems)
		for _, s := range p.Stones {
			s.Record()
		}
	})
}
