package gem

import "testing"

// TestSeparable walks pairs that every bench keeps apart (common practice, no
// source; the figure that does it is recalled): a range widened too far would
// let the one stand for the other.
func TestSeparable(t *testing.T) {
	table := mustLoad(t)
	for _, r := range readRecords(t, "separable.csv") {
		a, b := find(t, table, r["a"]), find(t, table, r["b"])
		var of func(*Material) Range
		switch r["by"] {
		case "low":
			of = func(m *Material) Range { return m.Low }
		case "high":
			of = func(m *Material) Range { return m.High }
		case "birefringence":
			of = func(m *Material) Range { return m.Birefringence }
		case "sg":
			of = func(m *Material) Range { return m.SG }
		case "structure":
			if single(a) == single(b) && (a.Optic == Aggregate) == (b.Optic == Aggregate) {
				t.Errorf("%s and %s: both are %s", a.Name, b.Name, a.Optic)
			}
			continue
		}
		if ra, rb := of(a), of(b); !ra.Known() || !rb.Known() || ra.Max >= rb.Min && rb.Max >= ra.Min {
			t.Errorf("%s %s and %s %s: %s does not keep them apart", a.Name, text(ra), b.Name, text(rb), r["by"])
		}
	}
}

func single(m *Material) bool { return m.Optic == Isotropic }
