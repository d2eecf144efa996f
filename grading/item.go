package grading

import (
	"fmt"
	"strings"
	"time"

	"stonewrit/grading/phrase"
	"stonewrit/grading/quality"
	"stonewrit/grading/stone"
)

// An Item is one entry of a piece: a stone with a file of its own, or small ones
// counted together.
type Item struct {
	Number  int // from 1
	Entry   stone.SetStone
	Stone   *Examined // of counted ones: what they are and measure, without any test
	Counted bool
	Name    quality.Name
	Species string // by which weights may be added; "" for not named
	Count   int
	Carats  string // of all of them, as printed: decimal digits; "" for not known
	Basis   WeightBasis
}

// WeightBasis says how a weight is known.
type WeightBasis string

// The ways to a weight.
const (
	Weighed   WeightBasis = "weighed"
	Estimated WeightBasis = "estimated"
	Stated    WeightBasis = "stated"
)

// itemise examines the entries of a piece.
func (t *Tables) itemise(e *ExaminedPiece, stones []*Examined, today time.Time) {
	for i, entry := range e.Piece.Stones {
		at := fmt.Sprintf("stones[%d]", i)
		item := Item{Number: i + 1, Entry: entry, Counted: entry.File == "", Count: entry.Number()}
		if !item.Counted {
			if len(stones) > 0 {
				item.Stone, stones = stones[0], stones[1:]
			}
			if item.Stone == nil || item.Stone.Problems.Has(stone.Error) {
				e.Problems = append(e.Problems, e.Piece.Problem(stone.Error, at+".file", phrase.Say("%s cannot be used, so the piece cannot be examined", entry.File), "mend the stone file first"))
				continue
			}
			item.Count = item.Stone.Stone.Size.Number()
		} else {
			item.Stone = t.countedLine(e, at, entry, today)
		}
		t.describe(&item)
		e.Items = append(e.Items, item)
	}
}

// countedLine examines stones counted together, and tells what it finds at the
// keys of the piece file.
func (t *Tables) countedLine(e *ExaminedPiece, at string, entry stone.SetStone, today time.Time) *Examined {
	record := entry.Record()
	record.Assignment = e.Piece.Assignment
	record.Quality.Condition = entry.Condition
	counted := t.judge(record, e.Bench, today)
	if counted.Weight.Estimate == nil && counted.Weight.Measured == 0 && !entry.Weight.Stated.Given() && counted.Weight.NoEstimate != "" {
		e.Problems = append(e.Problems, e.line(t, at, "ct-estimated", phrase.Say("the stones have no weight: %s", counted.Weight.NoEstimate), "add diameter: or length: and width:, and depth:, or weight: {stated: …, by: …}"))
	}
	if entry.Growth == "" {
		e.Problems = append(e.Problems, e.line(t, at, "natural-or-not", "the stones need their growth, or undetermined", "growth: undetermined"))
	}
	if (entry.Colour != "" || entry.Clarity != "") && entry.System == "" && gradesOfDiamond(t, entry) {
		e.Problems = append(e.Problems, e.line(t, at, "grade-system", "grades need the name of their system", "system: the name of the grading system"))
	}
	for _, p := range counted.Problems {
		path := at + "." + strings.TrimPrefix(p.Path, "size.")
		if strings.HasPrefix(p.Path, "opinion.") || p.Path == "size" {
			path = at
		}
		moved := e.Piece.Problem(p.Severity, path, p.Message, p.Hint)
		moved.Statement = p.Statement
		if !againstPiece(p.Path) {
			e.Problems = append(e.Problems, moved)
		}
	}
	return counted
}

// againstPiece reports whether a problem is one of the piece as a whole, which
// has told it already.
func againstPiece(path string) bool {
	for _, key := range []string{"received", "examined", "examiner", "authorised_by"} {
		if strings.HasPrefix(path, key) {
			return true
		}
	}
	return false
}

func (e *ExaminedPiece) line(t *Tables, at, id string, message, hint phrase.Line) stone.Problem {
	severity := t.severity(id, e.Piece.Report)
	if severity == "" {
		severity = stone.Note
	}
	p := e.Piece.Problem(severity, at, message, hint)
	p.Statement = id
	return p
}

// gradesOfDiamond reports whether colour or clarity of a counted line are
// grades of a diamond, not words.
func gradesOfDiamond(t *Tables, s stone.SetStone) bool {
	_, colour := t.Quality.ParseDiamondColour(s.Colour)
	_, clarity := t.Quality.ParseDiamondClarity(s.Clarity)
	return colour == nil || clarity == nil
}

// describe names an item and takes its weight as it is printed.
func (t *Tables) describe(i *Item) {
	subject := t.Quality.SubjectOf(i.Stone.Stone)
	i.Name = t.Quality.Name(subject)
	if subject.Species != nil {
		i.Species = subject.Species.Name
	}
	carats, estimated := i.Stone.Printed()
	switch stated := i.Stone.Stone.Weight.Stated; {
	case carats != "" && estimated:
		i.Carats, i.Basis = carats, Estimated
	case carats != "":
		i.Carats, i.Basis = carats, Weighed
	case stated.Given():
		i.Carats, i.Basis = stated.Digits(), Stated
	}
}

// A Total is the weight of the stones of one name that stand in several items.
// Weights of different species are never added.
type Total struct {
	Name   quality.Name
	Items  []int
	Count  int
	Carats string
	Basis  WeightBasis // the least certain of the items
}

// totals adds up what may be added: items of one species and one name.
func totals(items []Item) []Total {
	var list []Total
	for n, i := range items {
		if i.Carats == "" || i.Species == "" || before(items[:n], i) {
			continue
		}
		total := Total{Name: i.Name, Basis: Weighed}
		var weights []string
		for _, j := range items[n:] {
			if j.Carats != "" && alike(i, j) {
				total.Items, total.Count = append(total.Items, j.Number), total.Count+j.Count
				total.Basis = lessCertain(total.Basis, j.Basis)
				weights = append(weights, j.Carats)
			}
		}
		sum, err := quality.Total(weights...)
		if len(weights) > 1 && err == nil {
			total.Carats, total.Name.Many = sum, true
			list = append(list, total)
		}
	}
	return list
}

func before(items []Item, i Item) bool {
	for _, j := range items {
		if j.Carats != "" && alike(i, j) {
			return true
		}
	}
	return false
}

// alike reports whether two items may be told as one weight.
func alike(i, j Item) bool {
	a, b := i.Name, j.Name
	a.Many, b.Many = false, false
	return i.Species == j.Species && a.String() == b.String()
}

func lessCertain(a, b WeightBasis) WeightBasis {
	for _, w := range []WeightBasis{Stated, Estimated} {
		if a == w || b == w {
			return w
		}
	}
	return Weighed
}
