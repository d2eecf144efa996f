package quality

import (
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// A review collects what is wrong with the description of one stone.
type review struct {
	g    *Grader
	s    *stone.Stone
	c    Context
	each float64 // mass of one stone in ct, 0 for not known
	list stone.Problems
}

// Findings are what is wrong with naming, grading and wording in a stone file,
// each at its key: findings, statements that lack their input, warnings and
// notes. each is the mass of one stone in ct, weighed or estimated, 0 for not
// known.
//
// A statement that the kind of document must make is missing, one that it
// should make is a warning; the marks stand in data/requirements.csv.
func (g *Grader) Findings(s *stone.Stone, each float64) stone.Problems {
	r := &review{g: g, s: s, c: g.ContextOf(s), each: each}
	r.names()
	r.words()
	r.weight()
	r.relative()
	r.misplaced()
	r.diamond()
	r.colour()
	r.clarity()
	r.phenomena()
	r.pearl()
	return r.list
}

func (r *review) say(severity stone.Severity, id, path string, hint, form phrase.Line, parts ...any) {
	p := r.s.Problem(severity, path, phrase.Say(form, parts...), hint)
	p.Statement = id
	r.list = append(r.list, p)
}

func (r *review) finding(id, path string, hint, form phrase.Line, parts ...any) {
	r.say(stone.Finding, id, path, hint, form, parts...)
}

func (r *review) warning(id, path string, hint, form phrase.Line, parts ...any) {
	r.say(stone.Warning, id, path, hint, form, parts...)
}

// lack tells that a statement lacks its input: missing where the kind of
// document must make it, a warning where it should, nothing where the statement
// is not for that kind.
func (r *review) lack(id, path string, hint, form phrase.Line, parts ...any) {
	switch r.g.mark(id, r.s.Report) {
	case "M":
		r.say(stone.Missing, id, path, hint, form, parts...)
	case "S":
		r.warning(id, path, hint, form, parts...)
	}
}

// mark is how binding a statement is for a kind of document: M, S, C or -.
func (g *Grader) mark(id, report string) string {
	marks, ok := g.marks[id]
	if !ok {
		panic("quality: requirements.csv has no row " + id)
	}
	return marks[report]
}

func (g *Grader) readRequirements() error {
	g.marks = map[string]map[string]string{}
	return each("requirements.csv", func(r *row) {
		marks := map[string]string{}
		for column, kind := range map[string]string{"A": stone.Appraisal, "N": stone.ShortNote, "R": stone.Record} {
			marks[kind] = r.word(column, "M", "S", "C", "-")
		}
		g.marks[r.text("id")] = marks
	}, "id", "A", "N", "R")
}
