package stone

import (
	"slices"
	"stonewrit/grading/phrase"
	"strings"

	"stonewrit/grading/gem"
)

// A Reader reads files whose names are those of one gem table. It remembers how
// records are written, so that the next file costs less than the first; several
// goroutines may share it.
type Reader struct {
	table   *gem.Table
	layouts layouts
}

// NewReader makes a reader for many files.
func NewReader(table *gem.Table) *Reader { return &Reader{table: table} }

// Read reads one stone file as Reader.Stone does.
func Read(name string, src []byte, table *gem.Table) (*Stone, Problems) {
	return NewReader(table).Stone(name, src)
}

// ReadPiece reads one piece file as Reader.Piece does.
func ReadPiece(name string, src []byte, table *gem.Table) (*Piece, Problems) {
	return NewReader(table).Piece(name, src)
}

// ReadBench reads one bench file as Reader.Bench does.
func ReadBench(name string, src []byte, table *gem.Table) (*Bench, Problems) {
	return NewReader(table).Bench(name, src)
}

// Stone reads a stone file. name is used in messages alone. Problems of severity
// Error mean that the record is not to be used; warnings may stand beside a
// good record.
func (r *Reader) Stone(name string, src []byte) (*Stone, Problems) {
	s := &Stone{source: source{file: name}}
	positions, problems := r.layouts.document(src, s)
	s.positions = positions
	for i, t := range s.Tests {
		if t.Test != nil {
			t.Header().Index = i
		}
	}
	v := &validator{at: s.Position, table: r.table, read: problems}
	v.stone(s)
	return s, problems.and(v.problems)
}

// Piece reads a piece file as Stone reads a stone file. The stone files that it
// names are not looked at.
func (r *Reader) Piece(name string, src []byte) (*Piece, Problems) {
	p := &Piece{source: source{file: name}}
	positions, problems := r.layouts.document(src, p)
	p.positions = positions
	v := &validator{at: p.Position, table: r.table, read: problems}
	v.piece(p)
	return p, problems.and(v.problems)
}

// Bench reads a bench file.
func (r *Reader) Bench(name string, src []byte) (*Bench, Problems) {
	b := &Bench{source: source{file: name}}
	positions, problems := r.layouts.document(src, b)
	b.positions = positions
	v := &validator{at: b.Position, table: r.table, read: problems}
	v.bench(b)
	return b, problems.and(v.problems)
}

// and adds what the validator found. It saw a record without the keys that
// could not be read, so what it says of those and of what holds them is left
// out.
func (ps Problems) and(more Problems) Problems {
	all := slices.Clone(ps)
	for _, p := range more {
		follows := slices.ContainsFunc(ps, func(q Problem) bool { return p.Severity == Error && (within(p.Path, q.Path) || within(q.Path, p.Path)) })
		if !follows {
			all = append(all, p)
		}
	}
	all.Sort()
	return all
}

// within reports whether one key is another or stands below it.
func within(inner, outer string) bool {
	rest, ok := strings.CutPrefix(inner, outer)
	return ok && (rest == "" || outer == "" || rest[0] == '.' || rest[0] == '[')
}

// source is where a record was read from.
type source struct {
	file      string
	positions map[string]Position
}

// File is the name the record was read under, as the user typed it.
func (s *source) File() string { return s.file }

// Named is the record as if it had been read under another name.
func (s *Stone) Named(name string) *Stone {
	named := *s
	named.file = name
	return &named
}

// Position is the place of a key in the file, or of the nearest key above it
// that the file has.
func (s *source) Position(path string) Position { return nearestPosition(s.positions, path) }

// Has reports whether the key stands in the file.
func (s *source) Has(path string) bool {
	_, ok := s.positions[path]
	return ok
}

// Problem makes a problem at a key of the file.
func (s *source) Problem(severity Severity, path string, message, hint phrase.Line) Problem {
	at := s.Position(path)
	return Problem{Severity: severity, Path: path, Line: at.Line, Column: at.Column, Message: message, Hint: hint}
}

func nearestPosition(positions map[string]Position, path string) Position {
	for p := path; ; p = parentPath(p) {
		if at, ok := positions[p]; ok {
			return at
		}
		if p == "" {
			return Position{1, 1}
		}
	}
}

func parentPath(path string) string {
	for i := len(path) - 1; i > 0; i-- {
		if path[i] == '.' || path[i] == '[' {
			return path[:i]
		}
	}
	return ""
}
