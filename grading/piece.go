package grading

import (
	"fmt"
	"path"
	"stonewrit/grading/phrase"
	"strings"
	"time"

	"stonewrit/grading/stone"
	"stonewrit/grading/worth"
)

// ExaminedPiece is a piece of jewellery with all that follows from its record
// and from those of its stones.
type ExaminedPiece struct {
	Piece    *stone.Piece
	Bench    *stone.Bench // nil without a bench file
	Items    []Item       // 1 to n, in the order of the file
	Totals   []Total      // of the stones of one name in several items
	Metals   []PartMetal
	ByMass   bool // the metals stand by falling mass; else as in the file
	Mass     Mass
	Worth    *worth.Result  // nil without worth in the piece file
	Problems stone.Problems // of the piece file; those of a stone file are with the stone
	Caveats  []phrase.Line
}

// ExaminePiece examines a piece that was read without errors. stones are those
// of piece.Files in their order, each from ExamineSet; nil stands for one that
// could not be read or that has errors.
func (t *Tables) ExaminePiece(p *stone.Piece, stones []*Examined, b *stone.Bench, today time.Time) *ExaminedPiece {
	e := &ExaminedPiece{Piece: p, Bench: b}
	e.Problems = append(e.Problems, stone.AgainstPiece(p, b, today)...)
	t.itemise(e, stones, today)
	if e.Problems.Has(stone.Error) {
		e.Problems.Sort()
		return e
	}
	e.Totals = totals(e.Items)
	e.Metals, e.ByMass = t.metals(p)
	e.Mass = massOf(e)
	e.value()
	e.Caveats = e.caveats()
	e.Problems = append(e.Problems, e.massFindings(t.limit("masses apart"))...)
	e.Problems = append(e.Problems, t.required(t.whole(e, today))...)
	e.Problems.Sort()
	return e
}

// value does the arithmetic of the appraisal of the piece.
func (e *ExaminedPiece) value() {
	if e.Piece.Worth == nil {
		return
	}
	subject := worth.Subject{Stones: e.stoneCarats()}
	for _, i := range e.Items {
		subject.Items = append(subject.Items, worth.Item{Carats: i.Carats, Estimated: i.Basis == Estimated})
	}
	result, problems := worth.Appraise(e.Piece.Worth, subject)
	e.Worth = result
	e.Problems = append(e.Problems, stone.Problems(problems).At(e.Piece.Position)...)
}

// stoneCarats is the weight of all stones, item by item; "" where one is not
// known.
func (e *ExaminedPiece) stoneCarats() string {
	var list []string
	for _, i := range e.Items {
		if i.Carats == "" {
			return ""
		}
		list = append(list, i.Carats)
	}
	if len(list) == 0 {
		return "0"
	}
	return strings.Join(list, " + ")
}

// caveats are the printed limits of the examination of the piece; those of a
// stone are with the stone.
func (e *ExaminedPiece) caveats() []phrase.Line {
	var list []phrase.Line
	for _, i := range e.Items {
		if i.Counted {
			list = append(list, phrase.Say("Item %d was counted and measured together; the stones were not examined one by one.", i.Number))
		}
	}
	for _, m := range e.Metals {
		if !m.Tested() && m.Fineness > 0 {
			list = append(list, phrase.Say("The fineness of the %s is taken from %s; the metal was not tested.", m.Part, phrase.Word(knownFrom(m.KnownBy))))
		}
	}
	if e.Bench != nil {
		list = append(list, phrase.Texts(e.Bench.Terms.Caveats)...)
	}
	return list
}

func knownFrom(knownBy string) string {
	switch knownBy {
	case "mark":
		return "its mark"
	case "paper":
		return "a paper"
	}
	return "what was stated"
}

// SetTwice tells of stones that are set in more than one piece, each at its key
// in every piece that names it. The stones are told apart by their files.
func SetTwice(pieces []*stone.Piece) map[*stone.Piece]stone.Problems {
	holders := map[string][]*stone.Piece{}
	for _, p := range pieces {
		for _, f := range p.Files() {
			name := besidePiece(p, f)
			holders[name] = append(holders[name], p)
		}
	}
	told := map[*stone.Piece]stone.Problems{}
	for _, p := range pieces {
		for i, s := range p.Stones {
			for _, other := range holders[besidePiece(p, s.File)] {
				if s.File == "" || other == p {
					continue
				}
				told[p] = append(told[p], p.Problem(stone.Error, fmt.Sprintf("stones[%d].file", i),
					phrase.Say("%s is set in %s too, which is %s", s.File, other.Reference, other.File()), "a stone is set once; mend one of the two pieces"))
			}
		}
	}
	return told
}

// besidePiece is the path of a stone file that a piece names.
func besidePiece(p *stone.Piece, file string) string {
	slashes := func(s string) string { return strings.ReplaceAll(s, `\`, "/") }
	return path.Join(path.Dir(slashes(p.File())), slashes(file))
}
