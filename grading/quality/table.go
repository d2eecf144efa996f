package quality

import (
	"embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"regexp"
	"strconv"
	"strings"
)

// files holds the data of the package; read-only.
//
//go:embed data
var files embed.FS

// A row is one line of a table. The first thing that is wrong with it stays in
// err.
type row struct {
	table   string
	line    int
	columns map[string]int
	cells   []string
	err     error
}

// each calls f for every row of data/table of the embedded files; see eachOf.
func each(table string, f func(r *row), columns ...string) error {
	return eachOf(files, table, f, columns...)
}

// eachOf calls f for every row of data/table and returns what is wrong with
// them all. The header must hold every column named; a row without a source is
// an error.
func eachOf(fsys fs.FS, table string, f func(r *row), columns ...string) error {
	raw, err := fs.ReadFile(fsys, "data/"+table)
	if err != nil {
		return fmt.Errorf("quality: %w", err)
	}
	known, err := sources(fsys)
	if err != nil {
		return err
	}
	reader := csv.NewReader(strings.NewReader(string(raw)))
	header, err := reader.Read()
	if err != nil {
		return fmt.Errorf("quality: %s: %w", table, err)
	}
	at := map[string]int{}
	for i, name := range header {
		at[name] = i
	}
	for _, name := range append(columns, "source") {
		if _, ok := at[name]; !ok {
			return fmt.Errorf("quality: %s: the column %s is missing", table, name)
		}
	}
	var problems []error
	for {
		cells, err := reader.Read()
		if errors.Is(err, io.EOF) {
			return errors.Join(problems...)
		}
		if err != nil {
			return fmt.Errorf("quality: %s: %w", table, err)
		}
		line, _ := reader.FieldPos(0)
		r := &row{table: table, line: line, columns: at, cells: cells}
		r.checkSource(known)
		f(r)
		problems = append(problems, r.err)
	}
}

// checkSource refuses a row whose source is neither an entry of SOURCES.md,
// which a clause may follow, nor one of the two phrases for having none.
func (r *row) checkSource(known []string) {
	text := r.text("source")
	if text == "" {
		r.fail("source", "is empty")
	}
	for _, part := range strings.Split(text, ";") {
		part = strings.TrimSpace(part)
		ok := part == "from memory" || part == "common practice"
		for _, id := range known {
			ok = ok || part == id || strings.HasPrefix(part, id+" ")
		}
		if !ok {
			r.fail("source", fmt.Sprintf("%q is not an entry of SOURCES.md", part))
		}
	}
}

var entry = regexp.MustCompile(`(?m)^## (.+)$`)

// sources are the ids of the entries of SOURCES.md.
func sources(fsys fs.FS) ([]string, error) {
	raw, err := fs.ReadFile(fsys, "data/SOURCES.md")
	if err != nil {
		return nil, fmt.Errorf("quality: %w", err)
	}
	var ids []string
	for _, m := range entry.FindAllStringSubmatch(string(raw), -1) {
		ids = append(ids, m[1])
	}
	return ids, nil
}

func (r *row) fail(column, what string) {
	if r.err == nil {
		r.err = fmt.Errorf("quality: %s:%d: %s: %s", r.table, r.line, column, what)
	}
}

func (r *row) text(column string) string {
	i, ok := r.columns[column]
	if !ok {
		r.fail(column, "no such column")
		return ""
	}
	return r.cells[i]
}

// list reads a cell of parts between semicolons.
func (r *row) list(column string) []string {
	var parts []string
	for _, p := range strings.Split(r.text(column), ";") {
		if p = strings.TrimSpace(p); p != "" {
			parts = append(parts, p)
		}
	}
	return parts
}

// word reads a cell that must hold one of the words allowed.
func (r *row) word(column string, allowed ...string) string {
	text := r.text(column)
	for _, a := range allowed {
		if text == a {
			return text
		}
	}
	r.fail(column, fmt.Sprintf("%q is not one of %s", text, strings.Join(allowed, ", ")))
	return text
}

// number reads a cell that must hold a number from low to high.
func (r *row) number(column string, low, high float64) float64 {
	v, err := strconv.ParseFloat(r.text(column), 64)
	if err != nil {
		r.fail(column, fmt.Sprintf("%q is not a number", r.text(column)))
		return 0
	}
	if !(v >= low && v <= high) {
		r.fail(column, fmt.Sprintf("%g is outside %g to %g", v, low, high))
	}
	return v
}
