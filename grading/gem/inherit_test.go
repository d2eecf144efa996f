package gem

import (
	"math"
	"testing"
)

func TestInheritedFigures(t *testing.T) {
	table := mustLoad(t)
	at := func(name string) *Material { return find(t, table, name) }
	ruby, corundum := at("ruby"), at("corundum")
	if ruby.Low != corundum.Low || ruby.SG != corundum.SG || ruby.Optic != Uniaxial || ruby.Sign != "-" || ruby.Hardness != corundum.Hardness || ruby.OpticsSource != corundum.OpticsSource {
		t.Error("ruby has not the figures of corundum")
	}
	if at("carnelian").SG != at("chalcedony").SG || at("carnelian").Optic != Aggregate {
		t.Error("carnelian has not the figures of chalcedony")
	}
	if at("chalcedony").Optic != Aggregate || at("chalcedony").Sign != "" {
		t.Error("chalcedony took the structure of quartz although it has its own")
	}
	if len(at("flame-fusion corundum").Treatments) != 0 {
		t.Error("grown corundum took over the treatments of natural corundum")
	}
	if at("flame-fusion corundum").Growth != LaboratoryGrown || ruby.Growth != Natural {
		t.Error("growth was handed down")
	}
	if len(at("rhodolite").Joint) != 2 || at("rhodolite").JointSG != at("pyrope-almandine").JointSG {
		t.Error("rhodolite has not the line of its series")
	}
	if at("tanzanite").GrownMet != "no" || at("elbaite").GrownMet != "no" || at("emerald").GrownMet != "yes" {
		t.Error("whether grown material is met was not handed down")
	}
}

func TestGroupsAreTheUnionOfTheirLeaves(t *testing.T) {
	table := mustLoad(t)
	garnet := find(t, table, "garnet")
	for _, leaf := range table.Leaves(garnet) {
		if garnet.Low.Union(leaf.Low) != garnet.Low || garnet.SG.Union(leaf.SG) != garnet.SG {
			t.Errorf("garnet does not hold %s", leaf.Name)
		}
	}
	if garnet.Low.Max < 1.88 || garnet.SG.Max < 4.2 {
		t.Errorf("garnet ends at %g and %g, want andradite and almandine in it", garnet.Low.Max, garnet.SG.Max)
	}
}

// TestCounterpartsHaveTheConstantsOfTheirSpecies: a row that lies apart from
// its species would be a material of its own.
func TestCounterpartsHaveTheConstantsOfTheirSpecies(t *testing.T) {
	table := mustLoad(t)
	overlap := func(a, b Range) bool { return a.Min <= b.Max && b.Min <= a.Max }
	for _, m := range table.Materials() {
		if m.Level != Counterpart && m.Level != Variety {
			continue
		}
		fits := false
		for _, leaf := range table.Leaves(table.SpeciesOf(m)) {
			fits = fits || overlap(m.Low, leaf.Low) && overlap(m.High, leaf.High) && overlap(m.SG, leaf.SG)
		}
		if !fits {
			t.Errorf("%s (%s, %s, SG %s) lies apart from %s", m.Name, text(m.Low), text(m.High), text(m.SG), table.SpeciesOf(m).Name)
		}
	}
}

// TestMiddleLiesOnTheJoint: the middle of a row's own ranges is a stone that
// nobody may contradict, so the line or area of its series must pass there.
func TestMiddleLiesOnTheJoint(t *testing.T) {
	table := mustLoad(t)
	joints := 0
	for _, m := range table.Materials() {
		if len(m.Joint) == 0 {
			continue
		}
		joints++
		n, sg := (m.Low.Mid()+m.High.Mid())/2, m.SG.Mid()
		if d := jointDistance(m, n, sg); d > m.JointSG {
			t.Errorf("%s: its middle (%.4f, %.3f) lies %.3f in specific gravity from its joint, more than %g", m.Name, n, sg, d, m.JointSG)
		}
	}
	if joints < 20 {
		t.Errorf("%d rows have a joint, want at least 20", joints)
	}
}

// jointDistance is the distance in specific gravity at index n from sg to the
// nearest point of the line, or of the area, whose corners are m.Joint.
func jointDistance(m *Material, n, sg float64) float64 {
	at := Range{math.Inf(1), math.Inf(-1)}
	for i, a := range m.Joint {
		b := m.Joint[(i+1)%len(m.Joint)]
		if i == len(m.Joint)-1 && m.JointShape == "line" {
			break
		}
		if (n-a.Index)*(n-b.Index) > 0 || a.Index == b.Index {
			continue
		}
		v := a.SG + (b.SG-a.SG)*(n-a.Index)/(b.Index-a.Index)
		at.Min, at.Max = min(at.Min, v), max(at.Max, v)
	}
	return at.Distance(sg)
}
