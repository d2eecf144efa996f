package grading

import (
	"embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"stonewrit/grading/stone"
)

// files holds the tables of this package; read-only.
//
//go:embed data/*.csv
var files embed.FS

// A Statement is one thing that a document must show, and how strictly each
// kind of document must show it.
type Statement struct {
	ID                      string
	Section                 int
	Appraisal, Note, Record string // M must, S should, C when its condition holds, - not relevant
	Source                  string
	Basis                   string // how the source is known: seen, older, second, from memory
}

// Mark is how strictly a kind of document must show the statement.
func (s Statement) Mark(kind string) string {
	return map[string]string{stone.Appraisal: s.Appraisal, stone.ShortNote: s.Note, stone.Record: s.Record}[kind]
}

// Statements lists what documents must show, in the order of the list.
func (t *Tables) Statements() []Statement { return slices.Clone(t.statements) }

// statement finds one by its id.
func (l lists) statement(id string) Statement {
	i := slices.IndexFunc(l.statements, func(s Statement) bool { return s.ID == id })
	if i < 0 {
		panic("grading: statements.csv has no row " + id) // a test asks for every id that the code uses
	}
	return l.statements[i]
}

// lists are the small tables that the rows look into.
type lists struct {
	statements []Statement
	uses       [][2]string // use of an appraisal, and what its type of value must be
	safety     [][2]string // material, and the id of a caution
	limits     map[string]float64
}

func readLists() (lists, error) {
	l := lists{limits: map[string]float64{}}
	for name, add := range map[string]func(cells []string) error{
		"statements.csv": func(c []string) error {
			section, err := strconv.Atoi(c[1])
			for _, mark := range c[2:5] {
				if !strings.Contains("MSC-", mark) || len(mark) != 1 {
					err = fmt.Errorf("%q is no mark", mark)
				}
			}
			l.statements = append(l.statements, Statement{c[0], section, c[2], c[3], c[4], c[5], c[6]})
			return err
		},
		"uses.csv": func(c []string) error {
			l.uses = append(l.uses, [2]string{c[0], c[1]})
			return nil
		},
		"safety.csv": func(c []string) error {
			l.safety = append(l.safety, [2]string{c[0], c[1]})
			return nil
		},
		"limits.csv": func(c []string) (err error) {
			l.limits[c[0]], err = strconv.ParseFloat(c[1], 64)
			return err
		},
	} {
		if err := eachRow(name, add); err != nil {
			return lists{}, err
		}
	}
	return l, nil
}

// eachRow calls add for every row of a table below its header.
func eachRow(name string, add func(cells []string) error) error {
	src, err := files.ReadFile("data/" + name)
	if err != nil {
		return fmt.Errorf("grading: %w", err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(src))).ReadAll()
	if err != nil {
		return fmt.Errorf("grading: %s: %w", name, err)
	}
	for i, cells := range rows[1:] {
		if err := add(cells); err != nil {
			return fmt.Errorf("grading: %s: row %d: %w", name, i+2, err)
		}
	}
	return nil
}

// limit is a figure of limits.csv.
func (l lists) limit(name string) float64 {
	v, ok := l.limits[name]
	if !ok {
		panic("grading: limits.csv has no row " + name) // a test asks for every name that the code uses
	}
	return v
}
