package gem

import "slices"

// inherit fills blank figures, from the top of the table downwards, and after
// that the blank figures of groups from below.
//
// A variety or counterpart that leaves a figure blank has its parent's: class,
// optic structure and sign, axial angle and strain, index ranges and
// birefringence, specific gravity, joint figures, hardness, dispersion,
// thermal, electrical and magnetic behaviour, filter, cleavage, porosity, usual
// transparency, imitations, care. A list of colours, spectrum, luminescence,
// pleochroism or treatments is taken over whole, and only where the child has
// no row of its own; counterparts take over no treatments. Species take over
// from their group care, class and whether grown material is met.
//
// A group or species without figures gets the union of its children's; Leaves
// names the rows that it is to be judged by.
func (t *Table) inherit() {
	for _, m := range t.materials {
		if m.Parent == "" {
			t.inheritDown(m)
		}
	}
	for _, m := range t.materials {
		if !m.Low.Known() && !m.SG.Known() {
			t.unite(m)
		}
	}
}

func (t *Table) inheritDown(m *Material) {
	for _, child := range t.children[m.Name] {
		if child.Care == (Care{}) {
			child.Care = m.Care
		}
		child.Class = or(child.Class, m.Class)
		child.GrownMet, child.GrownAsOf = or(child.GrownMet, m.GrownMet), or(child.GrownAsOf, m.GrownAsOf)
		if child.Level == Variety || child.Level == Counterpart {
			takeOptics(child, m)
			takeBench(child, m)
			takeLists(child, m)
		}
		t.inheritDown(child)
	}
}

func or[T comparable](own, parent T) T {
	var blank T
	if own != blank {
		return own
	}
	return parent
}

// takeOptics hands down structure and index as one piece each. A joint line
// holds for every member of its series, whatever narrower range it has.
func takeOptics(child, m *Material) {
	if child.Optic == "" {
		child.Optic, child.Sign = m.Optic, or(child.Sign, m.Sign)
		child.SmallAxialAngle = child.SmallAxialAngle || m.SmallAxialAngle
		child.Strain = child.Strain || m.Strain
	}
	if len(child.Joint) == 0 {
		child.Joint, child.JointShape, child.JointSG = m.Joint, m.JointShape, m.JointSG
	}
	if !child.Low.Known() {
		child.Low, child.High = m.Low, m.High
		child.Birefringence = or(child.Birefringence, m.Birefringence)
		child.OpticsSource = or(child.OpticsSource, m.OpticsSource)
	}
	child.Dispersion = or(child.Dispersion, m.Dispersion)
}

func takeBench(child, m *Material) {
	if !child.SG.Known() {
		child.SG, child.SGSource = m.SG, m.SGSource
	}
	child.Hardness = or(child.Hardness, m.Hardness)
	child.Thermal = or(child.Thermal, m.Thermal)
	child.Electrical = or(child.Electrical, m.Electrical)
	child.Magnet = or(child.Magnet, m.Magnet)
	child.Cleavage = or(child.Cleavage, m.Cleavage)
	child.Porous = child.Porous || m.Porous
}

func takeLists(child, m *Material) {
	takeList(&child.Filter, m.Filter)
	takeList(&child.Colours, m.Colours)
	takeList(&child.Looks, m.Looks)
	takeList(&child.Imitations, m.Imitations)
	takeList(&child.Absorption, m.Absorption)
	takeList(&child.Glow, m.Glow)
	takeList(&child.Pleochroism, m.Pleochroism)
	if child.Level == Variety {
		takeList(&child.Treatments, m.Treatments)
	}
}

func takeList[T any](own *[]T, parent []T) {
	if len(*own) == 0 {
		*own = parent
	}
}

// unite gives a row without figures of its own the union of its leaves.
func (t *Table) unite(m *Material) {
	leaves := t.Leaves(m)
	for _, leaf := range leaves {
		m.Low, m.High = m.Low.Union(leaf.Low), m.High.Union(leaf.High)
		m.Birefringence = m.Birefringence.Union(leaf.Birefringence)
		m.SG, m.Hardness = m.SG.Union(leaf.SG), m.Hardness.Union(leaf.Hardness)
		m.Dispersion = m.Dispersion.Union(leaf.Dispersion)
	}
	other := func(leaf *Material) bool { return leaf.Optic != leaves[0].Optic }
	if m.Optic == "" && len(leaves) > 0 && !slices.ContainsFunc(leaves, other) {
		m.Optic = leaves[0].Optic
	}
}
