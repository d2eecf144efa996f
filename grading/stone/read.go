package stone

import (
	"stonewrit/grading/gem"
)

// Read reads a stone file. name is used in messages alone. Problems of severity
// Error mean that the record is not to be used; warnings may stand beside a
// good record.
func Read(name string, src []byte, table *gem.Table) (*Stone, Problems) {
	s := &Stone{file: name}
	positions, problems := decodeDocument(src, s)
	s.positions = positions
	for i, t := range s.Tests {
		if t.Test != nil {
			t.Header().Index = i
		}
	}
	if !problems.Has(Error) {
		v := &validator{at: s.Position, table: table}
		v.stone(s)
		problems = append(problems, v.problems...)
	}
	problems.Sort()
	return s, problems
}

// ReadBench reads a bench file.
func ReadBench(name string, src []byte, table *gem.Table) (*Bench, Problems) {
	b := &Bench{file: name}
	positions, problems := decodeDocument(src, b)
	b.positions = positions
	if !problems.Has(Error) {
		v := &validator{at: b.Position, table: table}
		v.bench(b)
		problems = append(problems, v.problems...)
	}
	problems.Sort()
	return b, problems
}

// Sort of file by the key at its top.
const (
	SortStone = "stone"
	SortPiece = "piece"
	SortBench = "bench"
	SortOther = "" // YAML that is none of ours
)

// Sniff tells what a YAML file is by its top keys, without reading it. A file
// that is not YAML at all but names stonewrit in its first lines counts as a
// stone file, so that its mistake is told.
func Sniff(src []byte) string {
	keys := topKeys(src)
	switch {
	case keys["stonewrit"] && keys["piece"]:
		return SortPiece
	case keys["practice"] || keys["instruments"] || keys["examiners"]:
		return SortBench
	case keys["stonewrit"]:
		return SortStone
	}
	return SortOther
}

// File is the name the record was read under, as the user typed it.
func (s *Stone) File() string { return s.file }

// Position is the place of a key in the file, or of the nearest key above it
// that the file has.
func (s *Stone) Position(path string) Position { return nearestPosition(s.positions, path) }

// Has reports whether the key stands in the file.
func (s *Stone) Has(path string) bool {
	_, ok := s.positions[path]
	return ok
}

// Problem makes a problem at a key of the file.
func (s *Stone) Problem(severity Severity, path, message, hint string) Problem {
	at := s.Position(path)
	return Problem{Severity: severity, Path: path, Line: at.Line, Column: at.Column, Message: message, Hint: hint}
}

// Position is the place of a key in the bench file.
func (b *Bench) Position(path string) Position { return nearestPosition(b.positions, path) }

// File is the name the bench file was read under.
func (b *Bench) File() string { return b.file }

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

// topKeys finds the keys that stand at the margin.
func topKeys(src []byte) map[string]bool {
	keys := map[string]bool{}
	start := true
	word := 0
	for i, c := range src {
		switch {
		case c == '\n':
			start, word = true, i+1
		case start && c == ':':
			keys[string(src[word:i])] = true
			start = false
		case c == ' ' || c == '\t' || c == '#':
			start = false
		}
	}
	return keys
}
