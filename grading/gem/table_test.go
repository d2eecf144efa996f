package gem

import "testing"

func mustLoad(t testing.TB) *Table {
	t.Helper()
	table, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	return table
}

func TestLoad(t *testing.T) {
	table := mustLoad(t)
	t.Log(len(table.Materials()), table.Version())
}
