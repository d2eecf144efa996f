package stone_test

import (
	"os"
	"testing"
	"time"

	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
)

func loadTable(t testing.TB) *gem.Table {
	t.Helper()
	table, err := gem.Load()
	if err != nil {
		t.Fatal(err)
	}
	return table
}

func readFile(t testing.TB, name string) []byte {
	t.Helper()
	src, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return src
}

func today() time.Time { return time.Date(2026, 10, 20, 0, 0, 0, 0, time.UTC) }

func report(t *testing.T, file string, problems stone.Problems) {
	t.Helper()
	for _, p := range problems {
		t.Errorf("%s: %s: %s\nhint: %s", p.Severity, p.Where(file), p.Message, p.Hint)
	}
}
