package identify

import (
	"math"
	"slices"
	"strings"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// species weighs the claim of the species: contradicted when a test conflicts
// with every row of it, supported when tests of two kinds agree tellingly and
// no rival is left, undecided otherwise.
func (j *judgement) species() Claim {
	o := j.c.Stone.Opinion
	claim := Claim{Opinion: o.Species, Standing: Undecided}
	if claim.Opinion == "" && j.opinion.Species != nil {
		claim.Opinion = j.opinion.Species.Name
	}
	if claim.Opinion == "" && len(j.opinion.Layers) > 0 {
		claim.Opinion = j.layersText()
	}
	if claim.Opinion == "" {
		claim.Because = []phrase.Line{"no opinion given"}
		return claim
	}
	kinds, agree, against := j.tally()
	if len(against) > 0 {
		claim.Standing, claim.Because = Contradicted, against
		if len(against) == 1 && j.lowWeighing() {
			claim.Because = append(claim.Because, "a bubble under the stone lowers this figure, and nothing else conflicts: check for bubbles")
		}
		return claim
	}
	if row, conflict, none := j.noRowFits(); none {
		claim.Standing = Contradicted
		claim.Because = []phrase.Line{phrase.Say("each test fits some kind of it, and no kind fits them all; the nearest, %s, conflicts: %s", phrase.Word(row), conflict)}
		return claim
	}
	if len(agree) > 0 {
		claim.Because = append(claim.Because, phrase.Say("agree: %s", phrase.Commas(agree...)))
	}
	lacks := j.lacks(kinds)
	if len(lacks) == 0 {
		claim.Standing = Supported
		claim.Because = append(claim.Because, "no other species of the table is left")
		return claim
	}
	claim.Because = append(claim.Because, lacks...)
	return claim
}

// tally counts the kinds that agree tellingly and tells which tests agree and
// which conflict.
func (j *judgement) tally() (kinds map[Kind]bool, agree, against []phrase.Line) {
	kinds = map[Kind]bool{}
	for i, e := range j.evidence {
		if e.aside != "" || len(j.opinion.rows) == 0 {
			continue
		}
		f := j.nearest[i]
		label := phrase.Line("implied specific gravity")
		if e.test != nil {
			label = testLabel(e.test)
		}
		switch f.verdict {
		case conflicts:
			against = append(against, phrase.Say("%s: %s", label, f.because()))
		case agrees:
			if e.kind != KindOther && j.telling[i] {
				kinds[e.kind] = true
			}
			if e.test != nil {
				agree = append(agree, label)
			}
		}
	}
	return kinds, agree, against
}

// bubbleShare is how far, as a part of it, a bubble may lower a specific gravity
// (common practice, from memory).
const bubbleShare = 0.10

// lowWeighing reports whether a weighing in liquid conflicts on the low side.
func (j *judgement) lowWeighing() bool {
	for i, e := range j.evidence {
		f := j.nearest[i]
		g, ok := e.test.(*stone.Gravity)
		if ok && e.aside == "" && g.Method == "hydrostatic" && f.verdict == conflicts && f.value < f.low && f.d < bubbleShare*f.low {
			return true
		}
	}
	return false
}

// testLabel is a test by kind and place in the list, counted from 1 as people
// do.
func testLabel(t stone.Test) phrase.Line {
	return phrase.Say("%s (test %d)", phrase.Word(t.Header().Kind), t.Header().Index+1)
}

// lacks tells what keeps the species from being supported.
func (j *judgement) lacks(kinds map[Kind]bool) []phrase.Line {
	var lacks []phrase.Line
	switch tested := len(j.results) > 0; {
	case !tested:
		return []phrase.Line{"nothing was tested"}
	case j.opinion.Stated:
		lacks = append(lacks, "as stated by the owner, not tested here")
	case j.opinion.Species == nil:
		lacks = append(lacks, "a composite is shown by its join, not by figures")
	}
	switch len(kinds) {
	case 0:
		lacks = append(lacks, "no test agrees tellingly, that is, speaks at the same time against a third of the materials")
	case 1:
		lacks = append(lacks, "tests of one kind alone agree tellingly; two independent kinds are needed")
	}
	if len(j.rivals) > 0 {
		lacks = append(lacks, phrase.Say(rivalsLeft, j.rivalNames(8)))
		if j.c.Stone.Appearance.Transparency == "" {
			lacks = append(lacks, "the transparency is not recorded, so opaque and translucent materials count as well")
		}
	}
	return lacks
}

// noRowFits reports whether every row of the opinion conflicts with some test,
// and names the one that comes nearest with its conflict. Composites are spared,
// whose parts read differently.
func (j *judgement) noRowFits() (row string, conflict phrase.Line, none bool) {
	if j.opinion.Species == nil || j.opinion.Species.Class == "composite" {
		return "", "", false
	}
	least, nearest := math.Inf(1), finding{}
	for _, m := range slices.Concat(j.opinion.rows, j.opinion.speciesRows) {
		misfit, last := 0.0, finding{}
		for _, e := range j.evidence {
			if e.aside != "" {
				continue
			}
			if f := e.judge(m); f.verdict == conflicts {
				misfit += max(f.misfit(), 1)
				last = f
			}
		}
		if last.verdict != conflicts {
			return "", "", false
		}
		if misfit < least {
			least, row, nearest = misfit, m.Name, last
		}
	}
	if row == "" {
		return "", "", false
	}
	return row, nearest.because(), true
}

// rivalsLeft is the form of the reason that names the rivals.
const rivalsLeft phrase.Line = "not excluded: %s"

// NamesRivals reports whether a reason of a claim lists the rivals, which the
// result names one by one as well.
func NamesRivals(because phrase.Line) bool {
	form, _ := because.Form()
	return form == string(rivalsLeft)
}

func (j *judgement) rivalNames(most int) phrase.Line {
	var names []phrase.Line
	for i, r := range j.rivals {
		if i == most {
			return phrase.Say("%s and %d more", phrase.Commas(names...), len(j.rivals)-most)
		}
		names = append(names, word(r.Material.Name))
	}
	return phrase.Commas(names...)
}

func (j *judgement) layersText() string {
	var parts []string
	for _, l := range j.c.Stone.Opinion.Layers {
		parts = append(parts, l.Part+" "+l.Material)
	}
	return strings.Join(parts, ", ")
}
