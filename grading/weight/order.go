package weight

import (
	"cmp"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// sortBy sorts points by a key that is worked out once for each.
func sortBy(points []r3.Vec, key func(r3.Vec) float64) {
	type keyed struct {
		p r3.Vec
		k float64
	}
	ks := make([]keyed, len(points))
	for i, p := range points {
		ks[i] = keyed{p, key(p)}
	}
	slices.SortFunc(ks, func(a, b keyed) int { return cmp.Compare(a.k, b.k) })
	for i, k := range ks {
		points[i] = k.p
	}
}
