package gem

import (
	"embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strconv"
	"strings"
)

// files holds the data of the package; read-only.
//
//go:embed data/*.csv data/SOURCES.md
var files embed.FS

// A problem is one mistake in a data file. Line counts from 1; Column is the
// name in the header.
type problem struct {
	File   string
	Line   int
	Column string
	Msg    string
}

func (p problem) Error() string {
	if p.Column == "" {
		return fmt.Sprintf("%s:%d: %s", p.File, p.Line, p.Msg)
	}
	return fmt.Sprintf("%s:%d: %s: %s", p.File, p.Line, p.Column, p.Msg)
}

// A sheet is a CSV file with a header. Mistakes are collected while its rows
// are read, and err returns them all.
type sheet struct {
	file     string
	columns  map[string]int
	rows     []row
	sources  []string // ids of SOURCES.md
	problems []error
}

// A row is one line of a sheet.
type row struct {
	sheet *sheet
	line  int
	cells []string
}

// openSheet reads data/file from fsys. The header must hold exactly the columns
// given, in any order. Lines that start with # are remarks. Mistakes are kept
// for err, so the caller reads the rows first and asks once.
func openSheet(fsys fs.FS, file string, columns ...string) *sheet {
	s := &sheet{file: file, columns: map[string]int{}}
	raw, err := fs.ReadFile(fsys, "data/"+file)
	if err != nil {
		s.fail(1, "", "cannot read: %v", err)
		return s
	}
	if s.sources, err = readSources(fsys); err != nil {
		s.problems = append(s.problems, err)
	}
	s.parse(string(raw), columns)
	return s
}

func (s *sheet) parse(raw string, columns []string) {
	r := csv.NewReader(strings.NewReader(raw))
	r.Comment = '#'
	header, err := r.Read()
	if err != nil {
		s.fail(1, "", "no header: %v", err)
		return
	}
	if !s.header(header, columns) {
		return
	}
	for {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			return
		}
		line, _ := r.FieldPos(0)
		if err != nil {
			s.fail(line, "", "%v", err)
			return
		}
		s.rows = append(s.rows, row{s, line, cells})
	}
}

func (s *sheet) header(header, columns []string) bool {
	before := len(s.problems)
	for i, name := range header {
		if _, twice := s.columns[name]; twice {
			s.fail(1, name, "column is there twice")
		}
		if !slices.Contains(columns, name) {
			s.fail(1, name, "unknown column; known: %s", strings.Join(columns, ", "))
		}
		s.columns[name] = i
	}
	for _, name := range columns {
		if !slices.Contains(header, name) {
			s.fail(1, name, "column is missing")
		}
	}
	return len(s.problems) == before
}

func (s *sheet) fail(line int, column, format string, args ...any) {
	s.problems = append(s.problems, problem{"data/" + s.file, line, column, fmt.Sprintf(format, args...)})
}

// err returns all mistakes met so far, or nil.
func (s *sheet) err() error { return errors.Join(s.problems...) }

// fail notes a mistake in one cell of the row.
func (r row) fail(column, format string, args ...any) {
	r.sheet.fail(r.line, column, format, args...)
}

// text returns a cell without surrounding blanks; an unknown column panics,
// as that is a mistake of the caller.
func (r row) text(column string) string {
	i, ok := r.sheet.columns[column]
	if !ok {
		panic("gem: no column " + column + " in " + r.sheet.file)
	}
	return strings.TrimSpace(r.cells[i])
}

// must returns a cell that may not be empty.
func (r row) must(column string) string {
	s := r.text(column)
	if s == "" {
		r.fail(column, "is empty")
	}
	return s
}

// list returns the parts of a cell, which are separated by semicolons.
func (r row) list(column string) []string {
	var parts []string
	for part := range strings.SplitSeq(r.text(column), ";") {
		if part = strings.TrimSpace(part); part != "" {
			parts = append(parts, part)
		}
	}
	return parts
}

// word returns a cell that must be one of the allowed words; "" is allowed
// only if it is among them.
func (r row) word(column string, allowed ...string) string {
	s := r.text(column)
	if !slices.Contains(allowed, s) {
		r.fail(column, "%q is not known; known: %s", s, strings.Join(allowed, ", "))
	}
	return s
}

// words returns a list whose every part must be one of the allowed words.
func (r row) words(column string, allowed ...string) []string {
	parts := r.list(column)
	for _, s := range parts {
		if !slices.Contains(allowed, s) {
			r.fail(column, "%q is not known; known: %s", s, strings.Join(allowed, ", "))
		}
	}
	return parts
}

// yes reads "yes" as true, "no" and "" as false.
func (r row) yes(column string) bool { return r.word(column, "yes", "no", "") == "yes" }

// number returns a cell that holds a number; an empty one is 0.
func (r row) number(column string) float64 {
	s := r.text(column)
	if s == "" {
		return 0
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		r.fail(column, "%q is not a number", s)
	}
	return v
}

// span returns a cell that holds "1.544..1.553" or one number; an empty cell
// is the unknown Range. Limits are the lowest and highest value accepted.
func (r row) span(column string, lowest, highest float64) Range {
	s := r.text(column)
	if s == "" {
		return Range{}
	}
	from, to, wide := strings.Cut(s, "..")
	if !wide {
		to = from
	}
	low, errLow := strconv.ParseFloat(from, 64)
	high, errHigh := strconv.ParseFloat(to, 64)
	switch {
	case errLow != nil || errHigh != nil:
		r.fail(column, "%q is not a number or a range such as 1.544..1.553", s)
	case low > high:
		r.fail(column, "%q: the first number is the higher one", s)
	case low < lowest || high > highest:
		r.fail(column, "%q lies outside %g..%g", s, lowest, highest)
	}
	return Range{low, high}
}

// source returns a source cell after checking every part of it.
func (r row) source(column string) string {
	s := r.must(column)
	for part := range strings.SplitSeq(s, ";") {
		if !knownSource(strings.TrimSpace(part), r.sheet.sources) {
			r.fail(column, "%q is neither an entry of SOURCES.md nor %q nor %q", part, FromMemory, CommonPractice)
		}
	}
	return s
}
