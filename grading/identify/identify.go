package identify

import (
	"slices"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
)

// An Identifier judges stones against a gem table. It is made once, never
// changes, and may be used from several goroutines.
type Identifier struct {
	table      *gem.Table
	candidates []candidate
	bySpectrum []*gem.Feature
	byLamp     []*gem.Feature
	guest      map[*gem.Feature]map[*gem.Material]finding // what features prove or exclude of a species
}

// candidate is a species that may be a rival, with the rows below it that have
// figures of their own.
type candidate struct {
	species *gem.Material
	rows    []*gem.Material
}

// New prepares a table for judging.
func New(table *gem.Table) *Identifier {
	d := &Identifier{table: table, guest: guestTable(table)}
	for _, m := range table.Materials() {
		if m.Level == gem.Species && m.Class != "composite" || m.Level == gem.Group && isRow(table, m) {
			d.candidates = append(d.candidates, candidate{m, rowsBelow(table, m)})
		}
	}
	for _, f := range table.Features() {
		switch f.SeenBy {
		case "spectrum":
			d.bySpectrum = append(d.bySpectrum, f)
		case "luminescence":
			d.byLamp = append(d.byLamp, f)
		}
	}
	return d
}

// isRow reports whether a group has figures of its own, as a series has.
func isRow(table *gem.Table, m *gem.Material) bool {
	leaves := table.Leaves(m)
	return len(leaves) == 1 && leaves[0] == m
}

// rowsBelow is a species with those of its varieties and counterparts whose
// figures differ from its own.
func rowsBelow(table *gem.Table, m *gem.Material) []*gem.Material {
	rows := []*gem.Material{m}
	if m.Level == gem.Group {
		return rows
	}
	var walk func(parent *gem.Material)
	walk = func(parent *gem.Material) {
		for _, child := range table.Members(parent) {
			if !sameFigures(child, parent) {
				rows = append(rows, child)
			}
			walk(child)
		}
	}
	walk(m)
	return rows
}

func sameFigures(a, b *gem.Material) bool {
	return a.Low == b.Low && a.High == b.High && a.SG == b.SG && a.Optic == b.Optic && a.Birefringence == b.Birefringence
}

// Identify judges one stone.
func (d *Identifier) Identify(c Case) Result {
	return d.survey(&c).judge(Resolve(c.Stone.Opinion, d.table))
}

// judgement is the work on one opinion of a surveyed stone.
type judgement struct {
	*survey
	opinion Opinion
	results []TestResult
	nearest []finding // each test against the best row of the species or below
	rivals  []Rival
}

func (s *survey) judge(o Opinion) Result {
	j := &judgement{survey: s, opinion: o}
	j.judgeTests()
	j.nameRivals()
	r := Result{Tests: j.results, Rivals: j.rivals, Noted: j.noted, Opinion: j.opinion}
	r.Species = j.species()
	r.Variety = j.variety(r.Species.Standing)
	r.Growth = j.growth(r.Species.Standing)
	r.Treatment = j.treatment()
	r.Findings = j.disagreements()
	r.Caveats = j.caveats()
	return r
}

// nameRivals are the materials left that the opinion does not cover.
func (j *judgement) nameRivals() {
	if !slices.ContainsFunc(j.evidence, func(e evidence) bool { return e.aside == "" && e.test != nil }) {
		return
	}
	for _, l := range j.left {
		if !j.opinion.covers(l.species, j.table) {
			j.rivals = append(j.rivals, Rival{l.row, l.because})
		}
	}
}

// whyNotExcluded names the figures that leave a rival standing.
func (s *survey) whyNotExcluded(m *gem.Material) phrase.Line {
	var fits, open []phrase.Line
	for _, e := range s.evidence {
		if e.aside != "" || e.test == nil {
			continue
		}
		switch f := e.judge(m); {
		case f.verdict == agrees && f.figure != "":
			fits = append(fits, f.because())
		case f.verdict == agrees:
			fits = append(fits, phrase.Say("%s agrees", e.name))
		default:
			open = append(open, e.name)
		}
	}
	if len(open) > 0 {
		fits = append(fits, phrase.Say("%s cannot exclude it", phrase.Commas(unique(open)...)))
	}
	return phrase.Semicolons(fits...)
}

func unique(list []phrase.Line) []phrase.Line {
	var out []phrase.Line
	for _, s := range list {
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}

// judgeTests makes the row of each test against the opinion.
func (j *judgement) judgeTests() {
	for i, e := range j.evidence {
		narrow := j.best(e, j.opinion.rows)
		wide := better(narrow, j.best(e, j.opinion.speciesRows))
		j.nearest = append(j.nearest, wide)
		if e.test == nil {
			continue
		}
		r := TestResult{Test: e.test, Kind: e.kind, Verdict: narrow.verdict.verdict(), Value: e.value, Because: narrow.because(), Telling: j.telling[i] && narrow.verdict == agrees}
		switch {
		case e.aside != "":
			r.Verdict, r.Because, r.Telling = CannotTell, phrase.Say("set aside: %s", e.aside), false
		case len(j.opinion.rows) == 0:
			r.Verdict, r.Because, r.Telling = CannotTell, "no opinion to compare with", false
		}
		r.Expected = j.expected(e)
		j.results = append(j.results, r)
	}
}

// best is the finding against the row that the test fits best; a group is
// judged as the union of its members. A test of one part of a composite is
// judged against that part.
func (j *judgement) best(e evidence, rows []*gem.Material) finding {
	if layer := j.layerAt(e.place); layer != nil {
		rows = j.table.Leaves(layer)
	}
	var best finding
	for i, m := range rows {
		f := e.judge(m)
		if i == 0 {
			best = f
		} else {
			best = better(best, f)
		}
	}
	return best
}

func (j *judgement) layerAt(place string) *gem.Material {
	for _, l := range j.opinion.Layers {
		at := l.Part == place || l.Part == "crown" && place == "table" || l.Part == "top" && (place == "table" || place == "crown") || l.Part == "back" && place == "pavilion"
		if place != "" && at {
			return l.Material
		}
	}
	return nil
}
