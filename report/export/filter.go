package export

import (
	"strings"

	"stonewrit/grading/gem"
)

// A Filter keeps some items of a collection. The zero filter keeps all.
type Filter struct {
	Material  *gem.Material // this one, or what stands below it
	Gems      *gem.Table    // of Material
	Location  string        // part of it, capitals or not
	Document  string        // appraisal, note, record
	Undecided bool          // species or variety open or contradicted
}

// Keeps reports whether an item passes.
func (f Filter) Keeps(i Item) bool {
	switch {
	case f.Material != nil && (i.material == nil || !f.Gems.IsWithin(i.material, f.Material)):
		return false
	case f.Location != "" && !strings.Contains(strings.ToLower(i.Location), strings.ToLower(f.Location)):
		return false
	case f.Document != "" && i.Document != f.Document:
		return false
	}
	return !f.Undecided || i.Unjudged()
}
