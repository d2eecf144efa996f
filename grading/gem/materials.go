package gem

import (
	"cmp"
	"io/fs"
	"slices"
)

func (t *Table) readMaterials(fsys fs.FS) error {
	s := openSheet(fsys, "materials.csv",
		"name", "level", "parent", "class", "growth", "method", "grown_met", "grown_as_of",
		"optic", "sign", "small_axial_angle", "strain", "low", "high", "birefringence", "sg", "hardness", "dispersion",
		"joint_shape", "joint_sg", "thermal", "electrical", "magnet", "filter", "cleavage", "porous", "colours", "looks",
		"imitations", "note", "optics_source", "sg_source", "source")
	lines := map[string]row{}
	for _, r := range s.rows {
		m := readMaterial(r)
		if before, twice := lines[fold(m.Name)]; twice {
			r.fail("name", "%q is already there in line %d", m.Name, before.line)
			continue
		}
		lines[fold(m.Name)] = r
		t.materials = append(t.materials, m)
	}
	t.byName = make(map[string]*Material, len(t.materials))
	slices.SortFunc(t.materials, func(a, b *Material) int { return cmp.Compare(a.Name, b.Name) })
	for _, m := range t.materials {
		t.byName[fold(m.Name)] = m
	}
	for _, m := range t.materials {
		t.adopt(m, lines[fold(m.Name)])
	}
	t.checkCycles(lines)
	t.checkImitations(lines)
	return s.err()
}

func readMaterial(r row) *Material {
	m := &Material{
		Name: r.must("name"), Parent: r.text("parent"), Method: r.text("method"),
		Level:    Level(r.word("level", "group", "species", "variety", "counterpart")),
		Class:    r.word("class", "mineral", "rock", "organic", "glass", "plastic", "crystal", "composite", ""),
		Growth:   Growth(r.word("growth", "natural", "cultured", "laboratory-grown", "artificial", "composite")),
		GrownMet: r.word("grown_met", "yes", "no", ""), GrownAsOf: r.text("grown_as_of"),
		Imitations: r.list("imitations"), Note: r.text("note"),
		Source: r.source("source"),
	}
	readOptics(r, m)
	readBench(r, m)
	if m.GrownMet != "" && m.GrownAsOf == "" {
		r.fail("grown_as_of", "is empty although grown_met says %q", m.GrownMet)
	}
	if m.Level == Counterpart && m.Method == "" {
		r.fail("method", "a counterpart needs the method it is grown by")
	}
	return m
}

func readOptics(r row, m *Material) {
	m.Optic = Optic(r.word("optic", "isotropic", "uniaxial", "biaxial", "aggregate", "opaque", ""))
	m.Sign = r.word("sign", "+", "-", "+/-", "")
	m.SmallAxialAngle = r.yes("small_axial_angle")
	m.Strain = r.yes("strain")
	m.Low = r.span("low", 1.2, 3.6)
	m.High = r.span("high", 1.2, 3.6)
	m.Birefringence = r.span("birefringence", 0, 0.4)
	m.Dispersion = r.span("dispersion", 0, 0.5)
	m.JointShape = r.word("joint_shape", "line", "hull", "")
	m.JointSG = r.number("joint_sg")
	if r.text("low")+r.text("high")+r.text("birefringence") != "" {
		m.OpticsSource = r.source("optics_source")
	}
	switch {
	case m.Low.Known() != m.High.Known():
		r.fail("high", "the two edges are known together or not at all")
	case m.Low.Min > m.High.Min || m.Low.Max > m.High.Max:
		r.fail("high", "the range of the high edge begins or ends below that of the low edge")
	case m.Optic == Isotropic && m.Low != m.High:
		r.fail("high", "singly refractive material has one index")
	case m.Optic == Isotropic && m.Birefringence.Known():
		r.fail("birefringence", "singly refractive material has none")
	}
}

func readBench(r row, m *Material) {
	m.SG = r.span("sg", 0.8, 20)
	if m.SG.Known() {
		m.SGSource = r.source("sg_source")
	}
	m.Hardness = r.span("hardness", 0.5, 10)
	m.Thermal = r.word("thermal", "diamond", "not diamond", "")
	m.Electrical = r.word("electrical", "insulator", "conductor", "either", "")
	m.Magnet = r.word("magnet", "none", "weak", "strong", "either", "")
	m.Filter = r.words("filter", "red", "pink", "none", "green")
	m.Cleavage = r.text("cleavage")
	m.Porous = r.yes("porous")
	m.Colours = r.list("colours")
	m.Looks = r.words("looks", "transparent", "translucent", "opaque")
}

// adopt checks the parent of m and enters m among its children. What may stand
// below what: groups below groups, species below groups, varieties and
// counterparts below anything but a counterpart.
func (t *Table) adopt(m *Material, r row) {
	if m.Parent == "" {
		if m.Level == Variety || m.Level == Counterpart {
			r.fail("parent", "a %s needs a parent", m.Level)
		}
		return
	}
	parent := t.byName[fold(m.Parent)]
	switch {
	case parent == nil:
		r.fail("parent", "%q is not in the table", m.Parent)
		return
	case parent.Name != m.Parent:
		r.fail("parent", "%q is written %q there", m.Parent, parent.Name)
	case parent.Level == Counterpart && m.Level != Counterpart,
		(m.Level == Group || m.Level == Species) && parent.Level != Group:
		r.fail("parent", "a %s cannot stand below a %s", m.Level, parent.Level)
	}
	t.children[parent.Name] = append(t.children[parent.Name], m)
}

func (t *Table) checkCycles(lines map[string]row) {
	for _, m := range t.materials {
		up := m
		for steps := 0; up != nil; steps++ {
			if steps > len(t.materials) {
				lines[fold(m.Name)].fail("parent", "%q is its own ancestor", m.Name)
				break
			}
			up = t.byName[fold(up.Parent)]
		}
	}
}

func (t *Table) checkImitations(lines map[string]row) {
	for _, m := range t.materials {
		for _, name := range m.Imitations {
			if other := t.byName[fold(name)]; other == nil || other.Name != name {
				lines[fold(m.Name)].fail("imitations", "%q is not the name of a material", name)
			}
		}
	}
}
