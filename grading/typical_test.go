package grading_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"strings"
	"testing"

	"stonewrit/grading/gem"
	"stonewrit/grading/identify"
)

// Stones with the figures that handbooks print for them (recalled, as the table
// says) are never contradicted under their own name. Every other species of
// the list offered for the same readings is never supported.
func TestTypicalStones(t *testing.T) {
	src, err := os.ReadFile("testdata/typical-stones.csv")
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(src))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	tables := load(t)
	supported := 0
	for _, row := range rows[1:] {
		m, err := tables.Gems.Find(row[0])
		if err != nil {
			t.Errorf("%s: %v", row[0], err)
			continue
		}
		e := read(t, tables, typical(row, row[0]))
		switch e.Verdict.Species.Standing {
		case identify.Contradicted:
			t.Errorf("%s %s %s is contradicted: %v", row[0], row[1], row[2], e.Verdict.Species.Because)
		case identify.Supported:
			supported++
		}
		if e.Verdict.Variety.Standing == identify.Contradicted {
			t.Errorf("%s %s %s: its variety is contradicted: %v", row[0], row[1], row[2], e.Verdict.Variety.Because)
		}
		for _, other := range rows[1:] {
			o, err := tables.Gems.Find(other[0])
			if err != nil || related(tables.Gems, m, o) {
				continue
			}
			wrong := read(t, tables, typical(row, other[0]))
			if wrong.Verdict.Species.Standing == identify.Supported {
				t.Errorf("%s %s %s offered as %s is supported", row[0], row[1], row[2], other[0])
			}
		}
	}
	t.Logf("%d of %d supported on one turn of the refractometer and a specific gravity alone", supported, len(rows)-1)
}

func related(table *gem.Table, a, b *gem.Material) bool {
	sa, sb := table.SpeciesOf(a), table.SpeciesOf(b)
	return table.IsWithin(sa, sb) || table.IsWithin(sb, sa)
}

func typical(row []string, name string) string {
	readings := row[1]
	method := "facet"
	if low, high, two := strings.Cut(row[1], "/"); two {
		readings = "[" + low + ", " + high + "]"
	} else if len(row[1]) == len("1.54") {
		method = "spot"
	}
	return fmt.Sprintf("opinion: {species: %q}\ntests:\n  - {test: refractometer, light: sodium, method: %s, readings: [%s]}\n  - {test: specific gravity, method: value, value: %s}\n", name, method, readings, row[2])
}
