package grading

import (
	"time"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
	"stonewrit/grading/worth"
)

// A requirement is one statement of statements.csv, and the key that gives its
// input. Statements that every document makes without any input have no row
// here.
type requirement struct {
	id     string // of statements.csv, which says how strictly it is asked
	path   string
	lacks  func(m *matter) bool
	needed phrase.Line
	hint   phrase.Line
	// each tells of several places, instead of lacks, path, needed and hint.
	each func(m *matter) []lack
	// severity is other than the list asks for, for a reason told beside the row.
	severity stone.Severity
}

// A lack is one input that is not there.
type lack struct {
	path         string
	needed, hint phrase.Line
}

// A matter is what requirements look at: a document, or a stone told of in it.
type matter struct {
	*Tables
	kind  string // of the document
	today time.Time
	bench *stone.Bench
	file  interface {
		Has(path string) bool
		Problem(severity stone.Severity, path string, message, hint phrase.Line) stone.Problem
	}
	*stone.Assignment // of the document
	*stone.Account    // of the document
	sum               *worth.Result

	stone *Examined      // nil for a piece
	piece *ExaminedPiece // nil for a stone by itself
}

// alone is a stone with a document of its own.
func (t *Tables) alone(e *Examined, today time.Time) *matter {
	s := e.Stone
	return &matter{
		Tables: t, kind: s.Report, today: today, bench: e.Bench, file: s,
		Assignment: &s.Assignment, Account: &s.Account, sum: e.Worth, stone: e,
	}
}

// set is a stone told of in the document of a piece.
func (t *Tables) set(e *Examined, p *stone.Piece, today time.Time) *matter {
	return &matter{
		Tables: t, kind: p.Report, today: today, bench: e.Bench, file: e.Stone,
		Assignment: &p.Assignment, Account: &p.Account, stone: e, piece: &ExaminedPiece{Piece: p},
	}
}

// whole is a piece.
func (t *Tables) whole(p *ExaminedPiece, today time.Time) *matter {
	return &matter{
		Tables: t, kind: p.Piece.Report, today: today, bench: p.Bench, file: p.Piece,
		Assignment: &p.Piece.Assignment, Account: &p.Piece.Account, sum: p.Worth, piece: p,
	}
}

// required tells which required statements lack their input: issue stops on
// what must be there, draft does not.
func (t *Tables) required(m *matter) stone.Problems {
	var rows []requirement
	if m.stone == nil || m.piece == nil {
		rows = append(rows, documentRows()...)
		rows = append(rows, worthRows()...)
		rows = append(rows, certifiedRows()...)
	}
	if m.stone == nil {
		rows = append(rows, pieceRows()...)
		rows = append(rows, metalRows()...)
	} else {
		rows = append(rows, itemRows()...)
		rows = append(rows, measureRows()...)
		rows = append(rows, testRows()...)
		rows = append(rows, instrumentRows()...)
	}
	var list stone.Problems
	for _, r := range rows {
		list = append(list, t.missing(r, m)...)
	}
	if m.stone != nil {
		return append(list, t.described(m)...)
	}
	return append(list, t.refused(m.piece)...)
}

// described is what is wrong with naming, grading and wording of a stone, for
// the kind of document it is told of in.
func (t *Tables) described(m *matter) stone.Problems {
	s := *m.stone.Stone
	s.Report = m.kind
	return t.Quality.Findings(&s, m.stone.each())
}

// each is the weight of one stone in ct, 0 for not known.
func (e *Examined) each() float64 {
	n := float64(e.Stone.Size.Number())
	switch {
	case e.Weight.Measured > 0:
		return e.Weight.Measured / n
	case e.Weight.Estimate != nil:
		return e.Weight.Estimate.Chosen.Carats.Value / n
	}
	return e.Stone.Weight.Stated.Float() / n
}

func (t *Tables) missing(r requirement, m *matter) stone.Problems {
	severity := t.severity(r.id, m.kind)
	if severity == "" {
		return nil
	}
	if r.severity != "" {
		severity = r.severity
	}
	var lacks []lack
	switch {
	case r.each != nil:
		lacks = r.each(m)
	case r.lacks(m):
		lacks = []lack{{r.path, r.needed, r.hint}}
	}
	var list stone.Problems
	for _, l := range lacks {
		p := m.file.Problem(severity, l.path, l.needed, l.hint)
		p.Statement = r.id
		list = append(list, p)
	}
	return list
}

// severity is what a lack of the statement does to a kind of document; "" where
// the kind need not make it.
func (l lists) severity(id, kind string) stone.Severity {
	switch l.statement(id).Mark(kind) {
	case "M", "C":
		return stone.Missing
	case "S":
		return stone.Warning
	}
	return ""
}

func (m *matter) appraisal() bool { return m.kind == stone.Appraisal }
func (m *matter) record() bool    { return m.kind == stone.Record }
