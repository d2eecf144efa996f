package grading_test

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"stonewrit/grading"
	"stonewrit/grading/identify"
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

const (
	demo  = "../testdata/demo"
	wrong = "../testdata/wrong"
)

// afterDemo is a day on which every stone of the two folders is examined.
var afterDemo = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)

// folder examines every stone of a folder, by file name; stones that are set in
// a piece as such.
func folder(t *testing.T, dir string) map[string]*grading.Examined {
	t.Helper()
	tables := load(t)
	src, err := os.ReadFile(filepath.Join(dir, "bench.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	bench, problems := stone.ReadBench("bench.yaml", src, tables.Gems)
	if len(problems) > 0 {
		t.Fatalf("%s: %+v", dir, problems)
	}
	files, err := filepath.Glob(filepath.Join(dir, "*.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]*grading.Examined{}
	holder := map[string]*stone.Piece{}
	var records []*stone.Stone
	for _, name := range files {
		base := filepath.Base(name)
		if src, err = os.ReadFile(name); err != nil {
			t.Fatal(err)
		}
		switch stone.Sniff(src) {
		case stone.SortStone:
			s, problems := stone.Read(base, src, tables.Gems)
			if len(problems) > 0 {
				t.Fatalf("%+v", problems)
			}
			records = append(records, s)
		case stone.SortPiece:
			p, problems := stone.ReadPiece(base, src, tables.Gems)
			if len(problems) > 0 {
				t.Fatalf("%+v", problems)
			}
			for _, f := range p.Files() {
				holder[f] = p
			}
		}
	}
	for _, s := range records {
		if p := holder[s.File()]; p != nil {
			all[s.File()] = tables.ExamineSet(s, p, bench, afterDemo)
			continue
		}
		all[s.File()] = tables.Examine(s, bench, afterDemo)
	}
	return all
}

// expected reads a table beside the stones, and tells of stones without a row.
func expected(t *testing.T, name string, stones map[string]*grading.Examined) [][]string {
	t.Helper()
	src, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(src))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		if stones[row[0]] == nil {
			t.Fatalf("%s: there is no %s", name, row[0])
		}
	}
	return rows[1:]
}

// Every stone of the demo reads, issues and has nothing to mend, and each claim
// stands as the table says, with the reason given there. The reasons are those
// of a gemmologist looking at the readings; where judging gets sharper, table
// and reason are mended together.
func TestDemoStandings(t *testing.T) {
	stones := folder(t, demo)
	rows := expected(t, filepath.Join(demo, "standings.csv"), stones)
	if len(rows) != len(stones) {
		t.Errorf("%d rows for %d stones", len(rows), len(stones))
	}
	for _, row := range rows {
		e := stones[row[0]]
		for _, p := range e.Problems {
			t.Errorf("%s:%d: %s: %s", row[0], p.Line, p.Severity, p.Message)
		}
		for i, c := range e.Claims() {
			if got := string(c.Claim.Standing); got != row[1+i] {
				t.Errorf("%s: %s is %s, want %s: %s\nfound: %s", row[0], c.Name, got, row[1+i], row[5], strings.Join(phrase.Strings(c.Claim.Because), "; "))
			}
		}
	}
}

// The values of the demo are those that a pencil finds; the working stands in
// the last column.
func TestDemoValues(t *testing.T) {
	stones := folder(t, demo)
	rows := expected(t, filepath.Join(demo, "values.csv"), stones)
	appraised := 0
	for _, e := range stones {
		if e.Worth != nil {
			appraised++
		}
	}
	if len(rows) != appraised {
		t.Errorf("%d rows for %d appraisals", len(rows), appraised)
	}
	for _, row := range rows {
		e := stones[row[0]]
		if e.Worth == nil {
			t.Errorf("%s has no value", row[0])
			continue
		}
		if e.Worth.Currency != row[1] || e.Worth.Conclusion.Amount != row[2] {
			t.Errorf("%s: %s %s, want %s %s: %s", row[0], e.Worth.Currency, e.Worth.Conclusion.Amount, row[1], row[2], row[3])
		}
	}
}

// Every wrong stone is contradicted in the claim that is wrong, for the reason
// that truly gives it away, and in no claim that is right.
func TestWrongStones(t *testing.T) {
	stones := folder(t, wrong)
	rows := expected(t, filepath.Join(wrong, "expected.csv"), stones)
	if len(rows) != len(stones) || len(rows) < 10 {
		t.Errorf("%d rows for %d stones", len(rows), len(stones))
	}
	for _, row := range rows {
		e := stones[row[0]]
		also := strings.Fields(row[4])
		if !e.Contradicted() || !e.Problems.Has(stone.Finding) {
			t.Errorf("%s is not contradicted: it would be issued", row[0])
		}
		for _, c := range e.Claims() {
			because := strings.Join(phrase.Strings(c.Claim.Because), "; ")
			stands := c.Claim.Standing != identify.Contradicted
			switch {
			case c.Name == row[1] && stands:
				t.Errorf("%s: %s is %s, want contradicted by %s: %s", row[0], c.Name, c.Claim.Standing, row[3], because)
			case c.Name == row[1] && !(strings.Contains(because, row[2]) && strings.Contains(because, row[3])):
				t.Errorf("%s: %s is contradicted by %q, want %s %s", row[0], c.Name, because, row[2], row[3])
			case c.Name != row[1] && stands == slices.Contains(also, c.Name):
				t.Errorf("%s: %s is %s: %s", row[0], c.Name, c.Claim.Standing, because)
			}
		}
	}
}

// What the stones of the wrong folder truly are is among the rivals where the
// bench was well enough equipped to see it.
func TestTruthOfWrongStones(t *testing.T) {
	stones := folder(t, wrong)
	for _, tt := range []struct{ file, truth, why string }{
		{"glass-as-ruby.yaml", "crown or lead glass", "index 1.635 with specific gravity 3.74 is lead glass"},
		{"spinel-as-ruby.yaml", "spinel", "index 1.718, singly refractive, 3.60"},
		{"quartz-as-topaz.yaml", "quartz", "1.544 to 1.553, open centre, 2.65"},
		{"moissanite-as-diamond.yaml", "moissanite", "conducts heat, doubles, 3.22"},
		{"zirconia-as-diamond.yaml", "cubic zirconia", "over the limit, 5.9"},
		{"yag-as-tsavorite.yaml", "YAG", "over the limit, singly refractive, 4.56"},
		{"magnesite-as-turquoise.yaml", "magnesite", "spot reading swings as a carbonate's, 3.01"},
		{"dyed-howlite-as-turquoise.yaml", "howlite", "1.59 and 2.56 are howlite's as well"},
	} {
		var names []string
		for _, r := range stones[tt.file].Verdict.Rivals {
			names = append(names, r.Material.Name)
		}
		if !slices.Contains(names, tt.truth) {
			t.Errorf("%s: %s is not among the rivals %v: %s", tt.file, tt.truth, names, tt.why)
		}
	}
}
