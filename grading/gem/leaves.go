package gem

// Leaves returns the rows that m is judged as the union of.
//
// A material is judged by its own row, together with those of its varieties
// whose rows reach beyond it (chalcedony beyond quartz), for whoever names only
// the species may mean them. A group is judged by its own row if it has one (a
// series, tourmaline); a group or species without figures (garnet, zircon) by
// what stands below it. Counterparts are never among the leaves of what they
// have the constants of.
func (t *Table) Leaves(m *Material) []*Material {
	switch {
	case t.figured[m] && m.Level == Group:
		return []*Material{m}
	case t.figured[m] || m.Level == Variety || m.Level == Counterpart:
		return append([]*Material{m}, t.wider(m, m)...)
	}
	var leaves []*Material
	for _, child := range t.children[m.Name] {
		if child.Level != Counterpart {
			leaves = append(leaves, t.Leaves(child)...)
		}
	}
	return leaves
}

// wider returns the varieties below m whose own rows reach beyond that of top.
func (t *Table) wider(m, top *Material) []*Material {
	var found []*Material
	for _, v := range t.children[m.Name] {
		if v.Level != Variety {
			continue
		}
		if t.figured[v] && reachesBeyond(v, top) {
			found = append(found, v)
		}
		found = append(found, t.wider(v, top)...)
	}
	return found
}

func reachesBeyond(v, top *Material) bool {
	return v.Optic != top.Optic || beyond(v.Low, top.Low) || beyond(v.High, top.High) || beyond(v.SG, top.SG)
}

func beyond(a, b Range) bool {
	return a.Known() && b.Known() && (a.Min < b.Min || a.Max > b.Max)
}

// noteFigured remembers which rows have an index or a specific gravity of their
// own, before others get theirs handed down.
func (t *Table) noteFigured() {
	t.figured = map[*Material]bool{}
	for _, m := range t.materials {
		t.figured[m] = m.Low.Known() || m.SG.Known()
	}
}
