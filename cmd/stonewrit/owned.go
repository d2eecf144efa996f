package main

import (
	"maps"
	"slices"
)

// owned lists the kinds of instrument on the bench; nil, which asks for all,
// where there is no bench file.
func owned(b *benchFile) []string {
	if b == nil {
		return nil
	}
	kinds := []string{}
	for _, id := range slices.Sorted(maps.Keys(b.bench.Instruments)) {
		if in := b.bench.Instruments[id]; (in.Owned == nil || *in.Owned) && !slices.Contains(kinds, in.Kind) {
			kinds = append(kinds, in.Kind)
		}
	}
	return kinds
}
