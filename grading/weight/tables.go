package weight

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
)

//go:embed factors.csv
var factorsCSV []byte

//go:embed words.csv
var wordsCSV []byte

//go:embed makes.csv
var makesCSV []byte

//go:embed limits.csv
var limitsCSV []byte

//go:embed round_diamond.csv
var roundDiamondCSV []byte

// An Estimator holds the tables that a weight is worked out with. It is safe
// for use by several goroutines at once.
type Estimator struct {
	factors []factorRow
	words   map[wordKey]Measure
	makes   []makeRow
	round   roundModel
	limits  map[string]limit
}

// New reads the embedded tables. An error means that the tables themselves are
// broken, and names the row.
func New() (*Estimator, error) {
	factors, err := readFactors(factorsCSV)
	if err != nil {
		return nil, err
	}
	words, err := readWords(wordsCSV)
	if err != nil {
		return nil, err
	}
	makes, err := readMakes(makesCSV)
	if err != nil {
		return nil, err
	}
	round, err := readRoundModel(roundDiamondCSV)
	if err != nil {
		return nil, err
	}
	limits, err := readLimits(limitsCSV)
	if err != nil {
		return nil, err
	}
	return &Estimator{factors, words, makes, round, limits}, nil
}

// A record is one row of a table, read by column name. The first thing that is
// wrong stays in err.
type record struct {
	table  string
	line   int
	header map[string]int
	cells  []string
	err    error
}

// eachRow calls f for every row of a table and stops at the first error. A row
// without a source is an error.
func eachRow(table string, src []byte, f func(r *record)) error {
	rows, err := csv.NewReader(bytes.NewReader(src)).ReadAll()
	if err != nil {
		return fmt.Errorf("weight: %s: %v", table, err)
	}
	if len(rows) < 2 {
		return fmt.Errorf("weight: %s: no rows", table)
	}
	header := map[string]int{}
	for i, name := range rows[0] {
		header[name] = i
	}
	for i, cells := range rows[1:] {
		r := &record{table: table, line: i + 2, header: header, cells: cells}
		if r.text("source") == "" {
			r.fail("source", "is empty")
		}
		f(r)
		if r.err != nil {
			return r.err
		}
	}
	return nil
}

func (r *record) fail(column, what string) {
	if r.err == nil {
		r.err = fmt.Errorf("weight: %s:%d: %s: %s", r.table, r.line, column, what)
	}
}

func (r *record) text(column string) string {
	i, ok := r.header[column]
	if !ok {
		r.fail(column, "no such column")
		return ""
	}
	return r.cells[i]
}

// number reads a column that must lie from low to high.
func (r *record) number(column string, low, high float64) float64 {
	v, err := strconv.ParseFloat(r.text(column), 64)
	if err != nil {
		r.fail(column, "not a number")
		return 0
	}
	if !(v >= low && v <= high) {
		r.fail(column, fmt.Sprintf("%g is outside %g to %g", v, low, high))
	}
	return v
}
