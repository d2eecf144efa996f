package quality

import (
	"slices"
	"strings"

	"stonewrit/grading/phrase"
)

// A Grade is one step of a scale, as a grader wrote it.
type Grade struct {
	Written string // as written: P1
	Name    string // the scale's own word for it: I1
	rank    int    // from 0, the best
}

// Equal is the scale's own word where another was written, else "": P1 equals I1.
func (g Grade) Equal() string {
	if strings.EqualFold(g.Written, g.Name) {
		return ""
	}
	return g.Name
}

// Grades are one grade, or a range from the better to the worse one. A grade is
// an opinion; a borderline one, above all of a mounted stone, is a range.
type Grades struct{ Best, Worst Grade }

// Range reports whether the two differ.
func (g Grades) Range() bool { return g.Best.rank != g.Worst.rank }

// String is the grade or range as printed: "G", "F to H", "P1".
func (g Grades) String() string { return g.Line().String() }

// Line is what String is, in any language.
func (g Grades) Line() phrase.Line {
	if !g.Range() {
		return named(g.Best.Written)
	}
	return phrase.Say("%s to %s", phrase.Word(g.Best.Written), phrase.Word(g.Worst.Written))
}

// Better reports whether any part of the range is better than the grade named.
func (g Grades) better(than Grade) bool { return g.Best.rank < than.rank }

// A step is a row of a scale.
type step struct {
	name, equal, words string
	split              bool // half of a grade that may be split in two
}

// A scale is a list of grades, the best first.
type scale []step

// grade finds a step by its name or its equal.
func (s scale) grade(written string) (Grade, bool) {
	fold := strings.Join(strings.Fields(strings.ReplaceAll(written, "-", " ")), " ")
	i := slices.IndexFunc(s, func(t step) bool {
		return strings.EqualFold(t.name, fold) || t.equal != "" && strings.EqualFold(t.equal, fold)
	})
	if i < 0 {
		return Grade{}, false
	}
	return Grade{strings.TrimSpace(written), s[i].name, i}, true
}

// parse reads one grade, or two with "to" or a dash between them, in either
// order.
func (s scale) parse(text string) (Grades, error) {
	if one, ok := s.grade(text); ok {
		return Grades{one, one}, nil
	}
	for _, between := range []string{" to ", "–", " - ", "-"} {
		first, second, ok := strings.Cut(text, between)
		a, okA := s.grade(first)
		b, okB := s.grade(second)
		if ok && okA && okB {
			if b.rank < a.rank {
				a, b = b, a
			}
			return Grades{a, b}, nil
		}
	}
	return Grades{}, unread("%q is neither a grade from %s to %s nor a range of two of them", text, phrase.Word(s[0].name), phrase.Word(s[len(s)-1].name))
}

func readScale(table string, to *scale) error {
	return each(table, func(r *row) {
		t := step{name: r.text("grade")}
		if _, ok := r.columns["equal"]; ok {
			t.equal = r.text("equal")
		}
		if _, ok := r.columns["words"]; ok {
			t.words = r.text("words")
		}
		if _, ok := r.columns["split"]; ok {
			t.split = r.word("split", "", "yes") == "yes"
		}
		*to = append(*to, t)
	}, "grade")
}
