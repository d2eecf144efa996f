package quality

import (
	"stonewrit/grading/stone"
)

// pearl checks what has to be told of pearls.
func (r *review) pearl() {
	if !r.g.is(r.c.Subject, "pearl") {
		return
	}
	if r.c.Water == "" && r.g.Name(r.c.Subject).Water == "" {
		r.lack("pearl-qualifier", "opinion.water", "water: saltwater, freshwater or undetermined", "pearls are named with their water")
	}
	q := r.s.Quality.Pearl
	if q == nil {
		return
	}
	if q.Nacre != nil && q.Nacre.Words != "" && q.Nacre.Method == "" {
		r.lack("pearl-nacre", "quality.pearl.nacre.method", "method: drill hole", "nothing is said of nacre without how it was judged (16 CFR 23.22)")
	}
	if q.Matching != "" && max(q.Count, r.s.Size.Number()) <= 1 && len(q.Sizes.Items) < 2 {
		r.warning("", "quality.pearl.matching", "give the number: count: 63", "a single pearl matches nothing")
	}
	if q.Drilled == "undrilled" && r.sawDrillHole() {
		r.finding("", "quality.pearl.drilled", "", "undrilled, and a test looks into the drill hole")
	}
}

func (r *review) sawDrillHole() bool {
	for _, t := range r.s.Tests {
		if t.Test != nil && t.Header().Kind == stone.KindDrillHole && t.Header().SetAside == "" {
			return true
		}
	}
	return false
}
