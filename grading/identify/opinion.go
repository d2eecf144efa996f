package identify

import (
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
)

// Opinion is what the examiner says, resolved to rows of the gem table.
type Opinion struct {
	Species *gem.Material // species or group; nil for a composite or none
	Variety *gem.Material // nil if none
	Narrow  *gem.Material // the narrowest name given
	Growth  gem.Growth    // "" for undetermined or none
	Layers  []LayerOf     // of a composite
	Stated  bool          // as stated by the owner, not tested here

	rows        []*gem.Material // the rows of the narrowest name
	speciesRows []*gem.Material // the rows of the species
}

// LayerOf is one part of a composite.
type LayerOf struct {
	Part     string
	Material *gem.Material // nil for glue
}

// Resolve finds the rows of the gem table that an opinion names. A variety
// name in place of the species is read as its species with that variety.
func Resolve(o stone.Opinion, table *gem.Table) Opinion {
	r := Opinion{Stated: o.Basis == "stated"}
	if named := find(table, o.Species); named != nil {
		r.Species, r.Narrow = named, named
		if named.Level == gem.Variety || named.Level == gem.Counterpart {
			r.Species = table.SpeciesOf(named)
			r.Variety = named
		}
	}
	if v := find(table, o.Variety); v != nil {
		r.Variety, r.Narrow = v, v
		if r.Species == nil {
			r.Species = table.SpeciesOf(v)
		}
	}
	for _, l := range o.Layers {
		r.Layers = append(r.Layers, LayerOf{l.Part, find(table, l.Material)})
	}
	r.Growth = growthOf(o, r.Narrow)
	r.gather(o, table)
	return r
}

// find is nil for no name and for one that the table does not have.
func find(table *gem.Table, name string) *gem.Material {
	if name == "" {
		return nil
	}
	m, err := table.Find(name)
	if err != nil {
		return nil
	}
	return m
}

// growthOf reads "imitation" as what the material is.
func growthOf(o stone.Opinion, m *gem.Material) gem.Growth {
	switch o.Growth {
	case "imitation":
		if m == nil {
			return gem.Composite
		}
		return m.Growth
	case "undetermined":
		return ""
	}
	return gem.Growth(o.Growth)
}

// gather collects the rows to judge against. Grown material may have constants
// of its own, so its rows stand beside those of the species.
func (r *Opinion) gather(o stone.Opinion, table *gem.Table) {
	if r.Species == nil {
		for _, l := range r.Layers {
			if l.Material != nil {
				r.rows = append(r.rows, table.Leaves(l.Material)...)
			}
		}
		r.speciesRows = r.rows
		return
	}
	r.rows = table.Leaves(r.Narrow)
	r.speciesRows = table.Leaves(r.Species)
	if r.Growth == gem.Natural || r.Growth == gem.Cultured {
		return
	}
	for _, c := range table.CounterpartsOf(r.Species) {
		r.speciesRows = append(r.speciesRows, c)
		byMethod := o.Method == "" || o.Method == "undetermined" || strings.EqualFold(o.Method, c.Method)
		if r.Growth == gem.LaboratoryGrown && byMethod {
			r.rows = append(r.rows, c)
		}
	}
}

// covers reports whether a material is inside the opinion's own level, so that
// it is no rival of it.
func (r *Opinion) covers(m *gem.Material, table *gem.Table) bool {
	if r.Species == nil {
		return false
	}
	return table.IsWithin(m, r.Species) || table.IsWithin(r.Species, m)
}
