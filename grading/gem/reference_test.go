package gem

import (
	"encoding/csv"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"
)

// A record is one line of a test file by the names of its columns.
type record map[string]string

func readRecords(t *testing.T, file string) []record {
	t.Helper()
	f, err := os.Open("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var records []record
	for _, cells := range lines[1:] {
		r := record{}
		for i, name := range lines[0] {
			r[name] = cells[i]
		}
		records = append(records, r)
	}
	return records
}

// A comparer holds the rows of the two published files against the table and
// looks up in disagreements.csv what was decided where they differ.
type comparer struct {
	t        *testing.T
	table    *Table
	names    map[string]record
	decided  map[string]string // reason
	needed   map[string]bool
	compared int
}

func newComparer(t *testing.T) *comparer {
	c := &comparer{t: t, table: mustLoad(t), names: map[string]record{}, decided: map[string]string{}, needed: map[string]bool{}}
	for _, r := range readRecords(t, "reference-names.csv") {
		c.names[r["file"]+"/"+r["row"]] = r
	}
	for _, r := range readRecords(t, "disagreements.csv") {
		if r["reason"] == "" || r["follow"] != "table" && r["follow"] != "row" {
			t.Errorf("disagreements.csv: %s %s: says neither which figure is followed nor why", r["row"], r["figure"])
		}
		c.decided[figureKey(r["file"], r["row"], r["figure"])] = r["reason"]
	}
	return c
}

func figureKey(file, row, figure string) string { return file + "/" + row + "/" + figure }

func (c *comparer) material(file, row string) *Material {
	name := row
	if r, ok := c.names[file+"/"+row]; ok {
		if r["material"] == "" && r["because"] != "" {
			return nil
		}
		name = r["material"]
	}
	m, err := c.table.Find(name)
	if err != nil {
		c.t.Errorf("%s: %s: %v", file, row, err)
	}
	return m
}

// judge notes whether a figure agrees; a disagreement must have been decided.
func (c *comparer) judge(file, row, figure, got, want string, agrees bool) {
	c.t.Helper()
	c.compared++
	if agrees {
		return
	}
	k := figureKey(file, row, figure)
	c.needed[k] = true
	if c.decided[k] == "" {
		c.t.Errorf("%s: %s: %s: table has %s, the source %s, and disagreements.csv does not say which is followed and why", file, row, figure, got, want)
	}
}

// done fails on a decision that nothing needs any more.
func (c *comparer) done(file string) {
	for k := range c.decided {
		if strings.HasPrefix(k, file+"/") && !c.needed[k] {
			c.t.Errorf("disagreements.csv: %s: table and source agree, so the row is not needed", k)
		}
	}
	c.t.Logf("%s: %d figures compared, %d of them disagree", file, c.compared, len(c.needed))
}

func (r record) number(t *testing.T, column string) (float64, bool) {
	t.Helper()
	if r[column] == "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("%v: %s: %v", r, column, err)
	}
	return v, true
}

func (r Range) holds(v, tol float64) bool { return r.Distance(v) <= tol }

func text(r Range) string { return fmt.Sprintf("%g..%g", r.Min, r.Max) }

// TestComputedIndices holds every row of indices computed from published
// dispersion formulas (paper and DOI in the file) against the ray it belongs to.
func TestComputedIndices(t *testing.T) {
	const file = "refractive-index-589nm.csv"
	const half = 0.0005 // the table gives dispersion to three decimals
	c := newComparer(t)
	for _, r := range readRecords(t, file) {
		m := c.material(file, r["gem"])
		if m == nil {
			continue
		}
		ray := m.Low
		positive := m.Sign == "+"
		if r["direction"] == "o" && !positive || r["direction"] == "e" && positive {
			ray = m.High
		}
		row := r["gem"] + " " + r["direction"]
		n, _ := r.number(t, "n_589.3nm")
		c.judge(file, row, "index", text(ray), r["n_589.3nm"], ray.holds(n, 0))
		c.judge(file, row, "structure", string(m.Optic), r["direction"], (m.Optic == Isotropic) == (r["direction"] == "isotropic"))
		if d, ok := r.number(t, "dispersion_B686.7_to_G430.8nm"); ok && m.Dispersion.Known() {
			c.judge(file, row, "dispersion", text(m.Dispersion), r["dispersion_B686.7_to_G430.8nm"], m.Dispersion.holds(d, half))
		}
	}
	c.done(file)
}

// TestPublishedConstants holds every row of constants read on public pages (the
// page stands in the file) against the table: the ends of the index range each
// in the range of its own ray, the rest inside the table's range.
func TestPublishedConstants(t *testing.T) {
	const file = "species-constants.csv"
	c := newComparer(t)
	for _, r := range readRecords(t, file) {
		m := c.material(file, r["species"])
		if m == nil {
			continue
		}
		within := func(column string, want Range) {
			if v, ok := r.number(t, column); ok {
				c.judge(file, r["species"], column, text(want), r[column], want.holds(v, 1e-9))
			}
		}
		within("ri_low", m.Low)
		within("ri_high", m.High)
		within("birefringence_min", m.Birefringence)
		within("birefringence_max", m.Birefringence)
		within("sg_min", m.SG)
		within("sg_max", m.SG)
		within("hardness_min", m.Hardness)
		within("hardness_max", m.Hardness)
		if s := r["optic_character"]; s != "" {
			c.judge(file, r["species"], "optic_character", string(m.Optic), s, string(m.Optic) == s)
		}
		if s := r["optic_sign"]; s != "" {
			c.judge(file, r["species"], "optic_sign", m.Sign, s, m.Sign == s)
		}
	}
	c.done(file)
}

// TestSpreadIsNeverTooNarrow holds every range against the least natural spread
// of gem material: 0.003 in index, 0.001 for diamond, 0.02 in specific gravity.
// Common practice, no source; ranges of one value contradict true stones.
func TestSpreadIsNeverTooNarrow(t *testing.T) {
	const rounding = 1e-9
	table := mustLoad(t)
	diamond, err := table.Find("diamond")
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range table.Materials() {
		least := 0.003
		if table.IsWithin(m, diamond) || m.Name == "diamond doublet" {
			least = 0.001
		}
		for edge, r := range map[string]Range{"low": m.Low, "high": m.High} {
			if r.Known() && r.Max-r.Min < least-rounding {
				t.Errorf("%s: the %s index %s is narrower than %g", m.Name, edge, text(r), least)
			}
		}
		if m.SG.Known() && m.SG.Max-m.SG.Min < 0.02-rounding {
			t.Errorf("%s: the specific gravity %s is narrower than 0.02", m.Name, text(m.SG))
		}
		if spread := m.High.Max - m.Low.Min; m.Birefringence.Max > spread+rounding || m.Birefringence.Known() && m.High.Min-m.Low.Max > m.Birefringence.Max+rounding {
			t.Errorf("%s: a birefringence %s cannot be had from indices %s and %s", m.Name, text(m.Birefringence), text(m.Low), text(m.High))
		}
	}
}
