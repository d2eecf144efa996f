package reading

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

//go:embed data/uncertainty.csv
var uncertaintyFile string

// Figures are the method's own uncertainties and limits, by name. They stand
// in data/uncertainty.csv with their sources.
type Figures map[string]float64

// LoadFigures reads the embedded table. An error means a faulty table.
func LoadFigures() (Figures, error) {
	rows, err := csv.NewReader(strings.NewReader(uncertaintyFile)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("uncertainty.csv: %w", err)
	}
	figures := Figures{}
	for i, row := range rows[1:] {
		v, err := strconv.ParseFloat(row[1], 64)
		if err != nil || v <= 0 || row[4] == "" {
			return nil, fmt.Errorf("uncertainty.csv:%d: %q needs a figure above 0 and a source", i+2, row[0])
		}
		figures[row[0]] = v
	}
	return figures, nil
}
