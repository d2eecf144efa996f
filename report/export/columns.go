package export

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

//go:embed columns.csv
var columnsFile string

// A Column is one column of a table.
type Column struct {
	Key     string // its name in JSON and in a column map
	Head    string // its name in plain words
	Meaning string // what the head does not say, or ""
}

// Columns lists the columns of tables and workbooks, in order.
func Columns() ([]Column, error) {
	rows, err := csv.NewReader(strings.NewReader(columnsFile)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("columns.csv: %w", err)
	}
	var list []Column
	for _, row := range rows[1:] {
		list = append(list, Column{row[0], row[1], row[2]})
	}
	return list, nil
}

// kind of a cell, for workbooks.
type kind uint8

const (
	words kind = iota
	number
	date
)

// A cell is the content of a column: text, and what it is the text of.
type cell struct {
	text string
	kind kind
}

// several separates the entries of a cell that holds more than one.
const several = "; "

// cell is what an item has in a column. It panics for a key that no column has.
func (i Item) cell(key string) cell {
	switch key {
	case "reference":
		return cell{text: i.Reference}
	case "sort":
		return cell{text: i.Sort}
	case "document":
		return cell{text: i.Document}
	case "name":
		return cell{text: i.Name}
	case "species":
		return cell{text: i.Species}
	case "variety":
		return cell{text: i.Variety}
	case "growth":
		return cell{text: i.Growth}
	case "treatments":
		return cell{text: i.Treatments}
	case "species_standing":
		return cell{text: i.Standing.Species}
	case "variety_standing":
		return cell{text: i.Standing.Variety}
	case "growth_standing":
		return cell{text: i.Standing.Growth}
	case "treatment_standing":
		return cell{text: i.Standing.Treatment}
	case "count":
		return cell{strconv.Itoa(i.Count), number}
	case "carats":
		return cell{i.Carats, number}
	case "weight_is":
		return cell{text: i.WeightIs}
	case "shape":
		return cell{text: i.Shape}
	case "cut":
		return cell{text: i.Cut}
	case "colour":
		return cell{text: i.Colour}
	case "location":
		return cell{text: i.Location}
	case "piece":
		return cell{text: i.Piece}
	case "examined":
		return cell{i.Examined, date}
	case "examiner":
		return cell{text: i.Examiner}
	case "client":
		return cell{text: i.Client}
	case "undecided":
		return cell{text: strings.Join(i.Undecided, several)}
	case "contradicted":
		return cell{text: strings.Join(i.Contradicted, several)}
	case "out_of_date":
		return cell{text: strings.Join(i.OutOfDate, several)}
	case "to_mend":
		return cell{strconv.Itoa(i.ToMend), number}
	case "picture":
		return cell{text: i.Picture}
	case "file":
		return cell{text: i.File}
	}
	return i.moneyCell(key)
}

// moneyCell is cell for the columns about value and ownership.
func (i Item) moneyCell(key string) cell {
	v := i.Value
	switch key {
	case "value":
		return cell{v.Amount, number}
	case "value_low":
		return cell{v.Low, number}
	case "value_high":
		return cell{v.High, number}
	case "value_currency":
		if !v.Given() {
			return cell{}
		}
		return cell{text: v.Currency}
	case "value_is":
		return cell{text: v.Is}
	case "value_type":
		return cell{text: v.Type}
	case "value_date":
		return cell{v.Date, date}
	case "value_by":
		return cell{text: v.By}
	case "asking":
		return cell{i.Asking.Amount, number}
	case "asking_currency":
		return cell{text: i.Asking.Currency}
	case "insured":
		return cell{i.Insured.Amount, number}
	case "insured_currency":
		return cell{text: i.Insured.Currency}
	case "insured_until":
		return cell{i.InsuredUntil, date}
	case "paid":
		return cell{i.Paid.Amount, number}
	case "paid_currency":
		return cell{text: i.Paid.Currency}
	case "since":
		return cell{i.Since, date}
	case "receipt":
		return cell{text: i.Receipt}
	case "stock":
		return cell{text: i.Stock}
	}
	panic("export: no column " + key)
}
