package main

import (
	"cmp"
	"fmt"
	"slices"

	"stonewrit/grading/identify"
)

// A prospect is what one kind of test would do for a folder of stones.
type prospect struct {
	test     string
	settles  []string       // references of the stones it would settle alone
	helps    int            // stones of which it would exclude a rival
	excludes map[string]int // rivals excluded, by name, with the number of stones
	rivals   int            // rivals excluded in all
	expected float64        // the same, whatever the stones turn out to be
	here     int            // stones whose bench can do it
	caution  string
}

// nextForAll tells which instrument would settle most of the undecided stones.
func (p *program) nextForAll(r *reader, stones []judgedStone) {
	undecided, rivals := 0, 0
	prospects := map[string]*prospect{}
	for _, j := range stones {
		if j.Verdict.Species.Standing != identify.Undecided {
			continue
		}
		undecided++
		rivals += len(j.Verdict.Rivals)
		r.add(prospects, j)
	}
	p.print("%s, %d of them undecided in species", count(len(stones), "stone", "stones"), undecided)
	if undecided > 0 {
		p.print(", with %s in all", count(rivals, "rival", "rivals"))
	}
	p.print("\n")
	for i, at := range ranked(prospects) {
		p.print("\n%s", at.text(i+1, rivals))
	}
	if undecided > 0 && len(prospects) == 0 {
		p.print("no test that is not done already would tell them apart\n")
	}
}

// add counts what each test would do for one stone.
func (r *reader) add(prospects map[string]*prospect, j judgedStone) {
	here := r.tables.Identifier().Next(j.at(), j.Verdict, owned(j.bench))
	for _, s := range r.tables.Identifier().Next(j.at(), j.Verdict, nil) {
		at := prospects[s.Test]
		if at == nil {
			at = &prospect{test: s.Test, excludes: map[string]int{}, caution: s.Caution.String()}
			prospects[s.Test] = at
		}
		at.expected += s.Expected
		at.rivals += len(s.Excludes)
		if len(s.Excludes) > 0 {
			at.helps++
		}
		for _, rival := range s.Excludes {
			at.excludes[rival]++
		}
		if len(s.Excludes) == len(j.Verdict.Rivals) {
			at.settles = append(at.settles, j.Examined.Stone.Reference)
		}
		if j.bench != nil && suggested(here, s.Test) {
			at.here++
		}
	}
}

// ranked orders the tests by the stones they settle, then by the rivals that
// they exclude on expectation.
func ranked(prospects map[string]*prospect) []*prospect {
	var list []*prospect
	for _, at := range prospects {
		list = append(list, at)
	}
	slices.SortFunc(list, func(a, b *prospect) int {
		return cmp.Or(cmp.Compare(len(b.settles), len(a.settles)), cmp.Compare(b.expected, a.expected), cmp.Compare(a.test, b.test))
	})
	return list
}

// text tells a test, whether the bench has it, and why it is worth doing.
func (at *prospect) text(place, rivals int) string {
	owned := "not on the bench"
	if at.here > 0 {
		owned = "on the bench"
	}
	text := wrapped(fmt.Sprintf("%d. ", place), "   ", fmt.Sprintf("%s (%s)", at.test, owned))
	if len(at.settles) > 0 {
		text += labelled("settles", count(len(at.settles), "stone", "stones")+": "+some(at.settles, 12))
	} else {
		text += labelled("settles", "none alone")
	}
	if at.rivals > 0 {
		text += labelled("because", fmt.Sprintf("it excludes %d of %s in %s, if the opinions are right: %s",
			at.rivals, count(rivals, "rival", "rivals"), count(at.helps, "stone", "stones"), some(at.often(), mostRivals)))
	} else {
		text += labelled("because", "it would show that an opinion is wrong, where one is")
	}
	if at.caution != "" {
		text += labelled("beware", at.caution)
	}
	return text
}

// often names the rivals excluded, those of most stones first.
func (at *prospect) often() []string {
	var names []string
	for name := range at.excludes {
		names = append(names, name)
	}
	slices.SortFunc(names, func(a, b string) int {
		return cmp.Or(cmp.Compare(at.excludes[b], at.excludes[a]), cmp.Compare(a, b))
	})
	for i, name := range names {
		if n := at.excludes[name]; n > 1 {
			names[i] = fmt.Sprintf("%s (in %d)", name, n)
		}
	}
	return names
}
