package desk

import (
	"strings"

	"stonewrit/cmd/stonewrit/desk/yamledit"
)

// nearest is the mark of the field that a problem is about, or of the nearest
// one above it; empty if the page has none.
func (v *viewer) nearest(name string) string { return v.known[v.nearestField(name)] }

// nearestField is nearest as the name of the field.
func (v *viewer) nearestField(name string) string {
	prefix := name[:1]
	p, err := yamledit.ParsePointer(strings.TrimPrefix(name, prefix))
	for ; err == nil && len(p) > 0; p = p[:len(p)-1] {
		if _, ok := v.known[prefix+p.Pointer()]; ok {
			return prefix + p.Pointer()
		}
	}
	return ""
}
