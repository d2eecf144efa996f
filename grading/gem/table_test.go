package gem

import (
	"slices"
	"strings"
	"testing"
)

func mustLoad(t testing.TB) *Table {
	t.Helper()
	table, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	return table
}

// TestMaterials: at least 150, by name, none twice, and the families of the
// trade among them.
func TestMaterials(t *testing.T) {
	table := mustLoad(t)
	names := namesOf(table.Materials())
	if len(names) < 150 {
		t.Errorf("%d materials, want at least 150", len(names))
	}
	if !slices.IsSorted(names) || len(slices.Compact(slices.Clone(names))) != len(names) {
		t.Error("materials are not in the order of their names, or one is there twice")
	}
	for _, m := range table.Materials() {
		if m.Class == "" || m.Hardness == (Range{}) && m.Level != Group || len(m.Looks) == 0 || len(m.Colours) == 0 {
			t.Errorf("%s lacks class %q, hardness %s, transparency %v or colours %v", m.Name, m.Class, text(m.Hardness), m.Looks, m.Colours)
		}
		if m.Optic == "" && m.Class != "composite" && m.Level != Group && m.Name != "zircon" {
			t.Errorf("%s has no optic structure", m.Name)
		}
	}
	for class, least := range map[string]int{"mineral": 150, "organic": 25, "glass": 8, "plastic": 8, "crystal": 8, "composite": 12, "rock": 8} {
		n := 0
		for _, m := range table.Materials() {
			if m.Class == class {
				n++
			}
		}
		if n < least {
			t.Errorf("%d materials of class %s, want at least %d", n, class, least)
		}
	}
}

func TestVersion(t *testing.T) {
	table := mustLoad(t)
	if len(table.Version()) != 12 || table.Version() != mustLoad(t).Version() {
		t.Errorf("version %q is not twelve digits or not the same twice", table.Version())
	}
	other, err := load(withRow(t, "names.csv", "exemplite,synonym,beryl,,from memory"))
	if err != nil {
		t.Fatal(err)
	}
	if other.Version() == table.Version() {
		t.Error("one name more does not change the version")
	}
}

// TestSourcesAreUsed: an entry of SOURCES.md that no row names is dead weight,
// or a row has lost its source.
func TestSourcesAreUsed(t *testing.T) {
	ids, err := readSources(files)
	if err != nil {
		t.Fatal(err)
	}
	sheets, err := files.ReadDir("data")
	if err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	for _, sheet := range sheets {
		if strings.HasSuffix(sheet.Name(), ".csv") {
			raw, err := files.ReadFile("data/" + sheet.Name())
			if err != nil {
				t.Fatal(err)
			}
			all.Write(raw)
		}
	}
	for _, id := range ids {
		if !strings.Contains(all.String(), id) {
			t.Errorf("SOURCES.md: no row names %q", id)
		}
	}
	if !strings.Contains(Sources(), "## "+ids[0]) {
		t.Error("Sources does not give the text of the list")
	}
}

func BenchmarkLoad(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Load(); err != nil {
			b.Fatal(err)
		}
	}
}
