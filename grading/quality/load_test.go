package quality

import (
	"encoding/csv"
	"os"
	"testing"

	"stonewrit/grading/gem"
)

func load(t testing.TB) *Grader {
	t.Helper()
	gems, err := gem.Load()
	if err != nil {
		t.Fatal(err)
	}
	g, err := New(gems)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// rowsOf are the rows of a file of testdata, by column name.
func rowsOf(t testing.TB, file string) []map[string]string {
	t.Helper()
	f, err := os.Open("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, cells := range all[1:] {
		row := map[string]string{}
		for i, name := range all[0] {
			row[name] = cells[i]
		}
		rows = append(rows, row)
	}
	if len(rows) == 0 {
		t.Fatalf("%s has no rows", file)
	}
	return rows
}
