package identify

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
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

// survey is what the tests say by themselves, whatever the opinion: what each
// speaks against and which materials are left.
type survey struct {
	*Identifier
	c        *Case
	evidence []evidence
	seen     []observed
	noted    []string
	telling  []bool
	left     []standing // the best row of every species that no test excludes
}

// standing is a material that no test excludes.
type standing struct {
	species, row *gem.Material
	misfit       float64
	because      string
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

// survey judges all tests against all candidates: which are left, and which
// readings speak against at least a third of the materials.
func (d *Identifier) survey(c *Case) *survey {
	s := &survey{Identifier: d, c: c}
	s.evidence = d.evidenceOf(c)
	s.seen, s.noted = d.observedIn(c)
	against := make([]int, len(s.evidence))
	known := make([]int, len(s.evidence))
	clear := lightPasses(c.Stone)
	for _, k := range s.candidates {
		best := standing{species: k.species}
		for n, row := range k.rows {
			misfit, excluded := s.against(row, n == 0, known, against)
			if !excluded && best.row == nil && !(clear && onlyOpaque(row)) && !looksOtherwise(c.Stone, row) {
				best.row, best.misfit = row, misfit
			}
		}
		if best.row != nil {
			s.left = append(s.left, best)
		}
	}
	s.telling = make([]bool, len(s.evidence))
	for i := range s.evidence {
		s.telling[i] = known[i] > 0 && 3*against[i] >= known[i]
	}
	for i := range s.left {
		s.left[i].because = s.whyNotExcluded(s.left[i].row)
	}
	slices.SortStableFunc(s.left, func(a, b standing) int {
		return cmp.Or(cmp.Compare(a.misfit, b.misfit), strings.Compare(a.row.Name, b.row.Name))
	})
	return s
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

// looksOtherwise excludes a rival that is never met transparent where the stone
// is. It says nothing of the opinion itself, since looks vary.
func looksOtherwise(s *stone.Stone, m *gem.Material) bool {
	return s.Appearance.Transparency == "transparent" && len(m.Looks) > 0 && !slices.Contains(m.Looks, "transparent")
}

// onlyOpaque reports whether a material is never met but opaque.
func onlyOpaque(m *gem.Material) bool { return len(m.Looks) == 1 && m.Looks[0] == "opaque" }

// lightPasses reports whether the tests show that light passes the stone.
func lightPasses(s *stone.Stone) bool {
	if t := s.Appearance.Transparency; t != "" {
		return t != "opaque"
	}
	return slices.ContainsFunc(s.Tests, func(a stone.AnyTest) bool {
		switch t := a.Test.(type) {
		case *stone.Polariscope:
			return t.SetAside == "" && (t.Sees == "blinks" || t.Figure != "" && t.Figure != "none seen")
		case *stone.Dichroscope:
			return t.SetAside == "" && len(t.Colours.Items) > 1
		}
		return false
	})
}

// against judges every test against one row, counting for the species' own row
// how many materials a test has a figure of and speaks against. Of a row that
// is out already only the tests that can be telling are judged on.
func (s *survey) against(m *gem.Material, count bool, known, against []int) (misfit float64, excluded bool) {
	for i := range s.evidence {
		e := &s.evidence[i]
		if e.aside != "" || excluded && (!count || e.kind == KindOther) {
			continue
		}
		f := e.judge(m)
		if count && f.known && e.kind != KindOther {
			known[i]++
			if f.verdict == conflicts {
				against[i]++
			}
		}
		excluded = excluded || f.verdict == conflicts
		misfit += f.misfit()
	}
	return misfit, excluded
}

// whyNotExcluded names the figures that leave a rival standing.
func (s *survey) whyNotExcluded(m *gem.Material) string {
	var fits, open []string
	for _, e := range s.evidence {
		if e.aside != "" || e.test == nil {
			continue
		}
		switch f := e.judge(m); {
		case f.verdict == agrees && f.figure != "":
			fits = append(fits, f.because())
		case f.verdict == agrees:
			fits = append(fits, e.test.Header().Kind+" agrees")
		default:
			open = append(open, e.test.Header().Kind)
		}
	}
	var parts []string
	if len(fits) > 0 {
		parts = append(parts, strings.Join(fits, "; "))
	}
	if len(open) > 0 {
		parts = append(parts, strings.Join(unique(open), ", ")+" cannot exclude it")
	}
	return strings.Join(parts, "; ")
}

func unique(list []string) []string {
	var out []string
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
			r.Verdict, r.Because, r.Telling = CannotTell, "set aside: "+e.aside, false
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

// expected is what the table says of the opinion for this kind of test.
func (j *judgement) expected(e evidence) string {
	rows := j.opinion.rows
	if layer := j.layerAt(e.place); layer != nil {
		rows = j.table.Leaves(layer)
	}
	if len(rows) == 0 {
		return ""
	}
	var low, high, biref, sg gem.Range
	var optics []string
	for _, m := range rows {
		low, high, sg, biref = low.Union(m.Low), high.Union(m.High), sg.Union(m.SG), biref.Union(m.Birefringence)
		if m.Optic != "" {
			optics = append(optics, opticWords(m))
		}
	}
	switch e.kind {
	case KindIndex:
		if !low.Known() {
			return "not in the table"
		}
		text := span(low.Min, high.Max, 3)
		if biref.Known() && biref.Max > 0 {
			text = fmt.Sprintf("%s and %s, birefringence %s", span(low.Min, low.Max, 3), span(high.Min, high.Max, 3), span(biref.Min, biref.Max, 3))
		}
		return text
	case KindDensity:
		if !sg.Known() {
			return "not in the table"
		}
		return span(sg.Min, sg.Max, 2)
	case KindOptic:
		return strings.Join(unique(optics), " or ")
	case KindOther:
		return expectedOther(e.test, rows[0])
	}
	return ""
}

func opticWords(m *gem.Material) string {
	switch m.Optic {
	case gem.Isotropic:
		return "singly refractive"
	case gem.Aggregate:
		return "fine aggregate"
	case gem.Opaque:
		return "opaque"
	}
	if m.Sign != "" {
		return string(m.Optic) + " " + signWord(m.Sign)
	}
	return string(m.Optic)
}

// signWord is the optic sign in a word.
func signWord(sign string) string {
	switch sign {
	case "+":
		return "positive"
	case "-":
		return "negative"
	case "+/-":
		return "of either sign"
	}
	return ""
}

func expectedOther(t stone.Test, m *gem.Material) string {
	switch t.(type) {
	case *stone.Hardness:
		if m.Hardness.Known() {
			return "hardness " + span(m.Hardness.Min, m.Hardness.Max, 1)
		}
	case *stone.Thermal:
		return m.Thermal
	case *stone.Electrical:
		return m.Electrical
	case *stone.Magnet:
		return m.Magnet
	}
	return ""
}
