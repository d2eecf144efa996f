package gem

// SpeciesOf returns the species that m is or belongs to. For a variety of a
// series (rhodolite) that is the series, a group; a group is its own answer.
func (t *Table) SpeciesOf(m *Material) *Material {
	for m.Level == Variety || m.Level == Counterpart {
		m = t.parent(m)
	}
	return m
}

// GroupOf returns the widest group that m belongs to, or nil.
func (t *Table) GroupOf(m *Material) *Material {
	var widest *Material
	for ; m != nil; m = t.parent(m) {
		if m.Level == Group {
			widest = m
		}
	}
	return widest
}

// Members returns what stands directly below m, by name.
func (t *Table) Members(m *Material) []*Material {
	return append([]*Material(nil), t.children[m.Name]...)
}

// IsWithin reports whether inner is outer or stands anywhere below it.
func (t *Table) IsWithin(inner, outer *Material) bool {
	for ; inner != nil; inner = t.parent(inner) {
		if inner == outer {
			return true
		}
	}
	return false
}

// CounterpartsOf returns the products of people that have the constants of m
// or of a variety of it, by name.
func (t *Table) CounterpartsOf(m *Material) []*Material {
	var grown []*Material
	for _, c := range t.materials {
		if c.Level == Counterpart && c != m && t.IsWithin(c, m) {
			grown = append(grown, c)
		}
	}
	return grown
}

func (t *Table) parent(m *Material) *Material { return t.byName[fold(m.Parent)] }
