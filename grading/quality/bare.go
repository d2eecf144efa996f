package quality

import (
	"slices"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
)

// A qualification is what has to stand directly before the names of a stone.
type qualification struct {
	names  [][]string // the names, as words
	allow  [][]string // any of these directly before a name
	proper string     // the first of them, as written
	clause phrase.Line
	id     string // requirement
	advice bool
}

// bareNames finds names of the stone that lack the qualifier they need.
func (g *Grader) bareNames(words []string, s Subject) []Refusal {
	var found []Refusal
	for _, q := range g.qualifications(s) {
		for i := 0; i < len(words); i++ {
			n := longest(words, q.names, i)
			if n == 0 {
				continue
			}
			if !g.excused(words, i, n) && !stands(words, q.allow, i) {
				name := strings.Join(words[i:i+n], " ")
				found = append(found, Refusal{name, Qualified(q.proper, named(name)), q.clause, q.id, q.advice})
			}
			i += n - 1
		}
	}
	return found
}

// longest is the length of the longest name at place i, 0 for none.
func longest(words []string, names [][]string, i int) int {
	n := 0
	for _, name := range names {
		if at(words, name, i) {
			n = max(n, len(name))
		}
	}
	return n
}

// stands reports whether one of the phrases stands directly before place i.
func stands(words []string, phrases [][]string, i int) bool {
	return slices.ContainsFunc(phrases, func(p []string) bool { return at(words, p, i-len(p)) })
}

// excused reports whether a name is used for something else than the stone: in
// emerald cut, mother-of-pearl, ruby red.
func (g *Grader) excused(words []string, i, n int) bool {
	return stands(words, g.before, i) || slices.ContainsFunc(g.after, func(p []string) bool { return at(words, p, i+n) })
}

// qualifications are what the names of a stone need before them.
func (g *Grader) qualifications(s Subject) []qualification {
	var list []qualification
	if s.Imitates != "" {
		posed := [][]string{tokens(s.Imitates), tokens(plural(s.Imitates))}
		list = append(list, g.posing(posed, strings.HasSuffix(strings.ToLower(s.Imitates), "pearl")))
	}
	if made, ok := g.imitationOf(s); ok {
		return append(list, g.posing([][]string{tokens(made.Noun), tokens(plural(made.Noun))}, made.Noun == "pearl"))
	}
	if q, ok := g.ownQualification(s); ok {
		q.names = g.namesOf(s)
		list = append(list, q)
	}
	return list
}

// facetless finds the word diamond for a stone of too few facets without their
// number or its shape beside it (16 CFR 23.12(b)-(c)).
func (g *Grader) facetless(words []string, s Subject) []Refusal {
	short := g.shortOfDiamond(s)
	if len(short) == 0 || !slices.ContainsFunc(words, func(w string) bool { return w == "diamond" || w == "diamonds" }) {
		return nil
	}
	if holdsPhrase(words, tokens(short[0].String())) {
		return nil
	}
	return []Refusal{{"diamond", phrase.Say("diamond with %s beside it", short[0]), "16 CFR 23.12(b)-(c)", "diamond-ftc", false}}
}

func (g *Grader) posing(names [][]string, pearl bool) qualification {
	q := qualification{names, phrases("imitation", "simulated"), imitation, "16 CFR 23.25(b) and note 1", "imitation-prefix", false}
	if pearl {
		q.allow, q.clause, q.id = append(q.allow, tokens("artificial")), "16 CFR 23.20(c)-(d)", "pearl-imitation"
	}
	return q
}

// ownQualification is what the material's own names need before them.
func (g *Grader) ownQualification(s Subject) (qualification, bool) {
	bound := slices.ContainsFunc(s.Treatments, func(t Treated) bool { return g.naming(t.Treatment).kind == composite })
	diamond, pearl := g.is(s, "diamond"), g.is(s, "pearl")
	switch {
	case s.Growth == gem.Composite || s.Growth == gem.Artificial || s.narrow() == nil:
		return qualification{}, false
	case bound:
		return qualification{nil, phrases("composite"), composite, "16 CFR 23.25(d)", "composite-filler", false}, true
	case s.Growth == gem.LaboratoryGrown:
		return qualification{nil, phrases("laboratory grown", "laboratory created", "created", "synthetic"), laboratoryGrown, "16 CFR 23.25(b); ISO 18323, 2", "lab-prefix", false}, true
	case s.Growth == gem.Cultured:
		return qualification{nil, phrases("cultured", "cultivated"), cultured, "16 CFR 23.20(b)", "pearl-cultured", false}, true
	case diamond && s.Growth == gem.Natural:
		return qualification{nil, phrases("natural"), natural, "ISO 18323, 2.2 note", "diamond-iso", true}, true
	case pearl && s.Growth == gem.Natural:
		return qualification{nil, phrases("natural"), natural, "CIBJO Pearl Book 4.2", "pearl-qualifier", true}, true
	case diamond && s.Growth == "":
		return qualification{nil, phrases("natural or laboratory grown", "laboratory grown"), naturalOrGrown, "ISO 18323, 2", "diamond-iso", false}, true
	case pearl && s.Growth == "":
		return qualification{nil, phrases("natural or cultured", "cultured"), naturalOrCultured, "16 CFR 23.20(a)-(b)", "pearl-bare", false}, true
	}
	return qualification{}, false
}

// namesOf are the names of the narrowest row and of what stands above it up to
// the species, with their synonyms, in one and in many. A pearl is any pearl.
func (g *Grader) namesOf(s Subject) [][]string {
	var names [][]string
	add := func(name string) {
		names = append(names, tokens(name), tokens(plural(name)))
	}
	for m := s.narrow(); m != nil; m = g.find(m.Parent) {
		add(m.Name)
		for _, synonym := range m.Synonyms {
			add(synonym)
		}
		if m == s.Species {
			break
		}
	}
	return slices.DeleteFunc(names, func(n []string) bool { return len(n) == 0 })
}

func phrases(list ...string) [][]string {
	var p [][]string
	for _, text := range list {
		p = append(p, tokens(text))
	}
	return p
}
