package identify

import (
	"cmp"
	"slices"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
)

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
	because      phrase.Line
}

// survey judges all tests against all candidates: which are left, and which
// readings speak against at least a third of the materials.
func (d *Identifier) survey(c *Case) *survey {
	s := &survey{Identifier: d, c: c}
	s.evidence = d.evidenceOf(c)
	s.seen, s.noted = d.observedIn(c)
	against := make([]int, len(s.evidence))
	known := make([]int, len(s.evidence))
	clear, hues := lightPasses(c.Stone), []string(nil)
	if recorded := colours(c.Stone); len(recorded) > 0 {
		hues = huesOf(recorded[0])
	}
	for _, k := range s.candidates {
		best := standing{species: k.species}
		for n, row := range k.rows {
			misfit, excluded := s.against(row, n == 0, known, against)
			if !excluded && best.row == nil && !(clear && onlyOpaque(row)) && !looksOtherwise(c.Stone, hues, row) && !noEdge(&c.Values, row) {
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

// against judges every test against one row, counting for the species' own row
// how many materials a test has a figure of and speaks against. Of a row that
// is out already only the tests are judged on of which it is still open whether
// they are telling.
func (s *survey) against(m *gem.Material, count bool, known, against []int) (misfit float64, excluded bool) {
	for i := range s.evidence {
		e := &s.evidence[i]
		settled := e.kind == KindOther || 3*against[i] >= len(s.candidates)
		if e.aside != "" || excluded && (!count || settled) {
			continue
		}
		f := e.judge(m)
		if count && f.known && !settled {
			known[i]++
			if f.verdict == conflicts {
				against[i]++
			}
		}
		if f.verdict == conflicts {
			excluded = true
		} else if !excluded {
			misfit += f.misfit()
		}
	}
	return misfit, excluded
}
